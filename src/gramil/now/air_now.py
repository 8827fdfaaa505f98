"""The air of a place as it is now, and whether work that needs a band of it may begin: the one answer, for what is open
today and for the days of a plan.
"""

from dataclasses import dataclass
from datetime import datetime

from gramil.air.air_bands import Limits
from gramil.now.chances import Record, Stays
from gramil.now.outlook import Outlook


@dataclass(frozen=True)
class PlaceNow:
    """A place's air as last read, its span over the day before (%), and what is ahead; `old` if read too long ago.

    `record` says how often its air was in a band; `opening` is what would bring it into the band for gluing, in words.
    """

    name: str
    read_at: datetime
    temperature: float
    humidity: float
    day: tuple[float, float]
    outlook: Outlook
    old: bool = False
    record: Record | None = None
    opening: str = ""

    def by_record(self, limits: Limits, hours: float) -> Stays | None:
        """How the band held through a number of hours; None with an outlook given, or too few days on record."""
        return None if self.outlook.said or self.record is None else self.record.stays(limits, hours)


def may_begin(air: PlaceNow, limits: Limits, now: datetime, hours: float) -> bool:
    """Whether work that needs the band for so many hours may begin now.

    Without an outlook it is begun in air that lies so far inside the band that by the place's record it then mostly
    stays there for long enough; with one, or without a record, if the band is to hold through.
    """
    if air.old:
        return False
    stays = air.by_record(limits, hours)
    if stays is None:
        opens = air.outlook.first(limits, now, hours)
        return opens is not None and opens <= now
    return limits.inside(air.temperature, air.humidity) >= stays.inside
