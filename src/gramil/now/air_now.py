"""The air of a place as it is now, and whether work that needs a band of it may begin: the one answer, for what is open
today and for the days of a plan.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from gramil.air.air_bands import Limits
from gramil.now.chances import Record, Stays
from gramil.now.outlook import Outlook


@dataclass(frozen=True)
class PlaceNow:
    """A place's air as last read, its span over the day before (%), and what is ahead; `old` if read too long ago.

    `record` says how often its air was in a band; `opening` is what would bring it into a band, in words, by the band.
    `machines` tells by how much (%) a humidifier of its own makes it damper in a night, and a dryer drier.
    """

    name: str
    read_at: datetime
    temperature: float
    humidity: float
    day: tuple[float, float]
    outlook: Outlook
    old: bool = False
    record: Record | None = None
    opening: Mapping[str, str] = field(default_factory=dict)
    machines: tuple[float, float] = (0.0, 0.0)

    def reached(self, limits: Limits) -> Limits:
        """Which of its own air its machines can bring into a band, and hold there."""
        return limits.reached(*self.machines)

    def by_record(self, limits: Limits, hours: float) -> Stays | None:
        """How the band held through a number of hours; None with an outlook given, or too few days on record."""
        if self.outlook.said or self.record is None:
            return None
        return self.record.stays(self.reached(limits), hours)


def by_outlook(air: PlaceNow, limits: Limits, now: datetime, hours: float) -> tuple[str, ...]:
    """In words, how likely the band holds for so many hours by what somebody said; nothing where nothing is doubted."""
    if not air.outlook.told:
        return ()
    chance = air.outlook.chance(air.reached(limits), now, hours)
    return (f"by the outlook it stays right so long in {10 * chance:.0f} of 10 cases",)


def may_begin(air: PlaceNow, limits: Limits, now: datetime, hours: float) -> bool:
    """Whether work that needs the band for so many hours may begin now.

    Without an outlook it is begun in air that lies so far inside the band that by the place's record it then mostly
    stays there for long enough; with one, or without a record, if the band is to hold through. Where the place's own
    machines can bring its air back, it counts as staying.
    """
    if air.old or not limits.holds(air.temperature, air.humidity):
        return False
    reached = air.reached(limits)
    stays = air.by_record(limits, hours)
    if stays is None:
        opens = air.outlook.first(reached, now, hours)
        return opens is not None and opens <= now
    return reached.inside(air.temperature, air.humidity) >= stays.inside
