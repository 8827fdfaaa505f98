"""When work that needs a band of air may start: by an outlook as far as it reaches, then by the place's own record.

Where an outlook is given one is taken to be given of the days beyond it too, before they come: what is begun on them is
what then holds, by the record. From tomorrow on a place's machines count: what they can bring into the band in a night
is open.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

from gramil.air.air_bands import Limits
from gramil.now.air_now import PlaceNow, may_begin
from gramil.now.chances import drawn, evenly, expected

Span = tuple[int, int]
DAY = 1440


@dataclass(frozen=True)
class Luck:
    """One way in which the days to come may turn out: a number from 0 to 1 for each."""

    days: tuple[float, ...]


def spans(
    place: PlaceNow, limits: Limits, now: datetime, minutes: int, end: int, luck: Luck | None = None
) -> tuple[Span, ...]:
    """The spans, in minutes from `now`, in which work may start that needs the band for a number of minutes.

    Without `luck` the days beyond the outlook are those that are to be expected, spread evenly by their chances.
    """
    until = _reach(place, now)
    count = max(0, -(-(end - _minute(until, now)) // DAY))
    reached = place.reached(limits)
    chances = (
        ()
        if place.record is None
        else place.record.ahead(reached, minutes / 60.0, until.date(), count + 1, foretold=place.outlook.said)
    )
    said_days = luck.days if luck and place.outlook.until else None
    if not chances:
        return () if place.old else tuple(_by_outlook(place, limits, now, minutes, None, said_days))
    was_open = chances[0].share if place.old else float(_was_open(place, reached, minutes / 60.0, until))
    rest = luck.days[(until.date() - now.date()).days if said_days else 0 :] if luck else ()
    days = evenly(expected(chances[:count], was_open)) if luck is None else drawn(chances[:count], was_open, rest)
    return (*_known(place, limits, now, minutes, until, said_days), *_by_day(days, _minute(until, now)))


def _known(
    place: PlaceNow, limits: Limits, now: datetime, minutes: int, until: datetime, luck: Sequence[float] | None
) -> Iterator[Span]:
    """What is known of the air: an outlook as far as it reaches; without one, whether work may begin today.

    On a day whose air was not read nothing begins, whatever was said of the days to come.
    """
    if place.outlook.said:
        tonight = _minute(_midnight_after(now), now)
        for begin, last in _by_outlook(place, limits, now, minutes, until, luck):
            if not place.old or last >= tonight:
                yield max(begin, tonight) if place.old else begin, last
    elif may_begin(place, limits, now, minutes / 60.0):
        yield 0, _minute(until, now) - 1


def _reach(place: PlaceNow, now: datetime) -> datetime:
    """Until when the outlook speaks; without one, until tonight."""
    tonight = _midnight_after(now)
    return max(tonight, place.outlook.reach) if place.outlook.said else tonight


def _midnight_after(now: datetime) -> datetime:
    return (now + timedelta(days=1)).replace(hour=0, minute=0, second=0, microsecond=0)


def _by_outlook(
    place: PlaceNow,
    limits: Limits,
    now: datetime,
    minutes: int,
    until: datetime | None,
    luck: Sequence[float] | None = None,
) -> Iterator[Span]:
    """By spells: today those in the band, from tonight on also those that the place's machines can bring into it."""
    tonight = _minute(_midnight_after(now), now)
    for begin, last in _windows(place, limits, now, minutes, until, luck):
        if begin < tonight:
            yield begin, min(last, tonight - 1)
    for begin, last in _windows(place, place.reached(limits), now, minutes, until, luck):
        if last >= tonight:
            yield max(begin, tonight), last


def _windows(
    place: PlaceNow,
    limits: Limits,
    now: datetime,
    minutes: int,
    until: datetime | None,
    luck: Sequence[float] | None,
) -> Iterator[Span]:
    """By spells. What begins before `until` may end after it, if the spell is still on then."""
    for begins, ends in place.outlook.windows(limits, luck):
        last = 10**7 if ends is None else _minute(ends, now) - minutes
        if until is not None:
            still = ends is None or ends >= until
            last = min(10**7 if still else last, _minute(until, now) - 1)
        begin = max(0, _minute(begins, now))
        if begin <= last:
            yield begin, last


def _was_open(place: PlaceNow, limits: Limits, hours: float, until: datetime) -> bool:
    """Whether the last air that is known before a moment was open to work of so many hours, by the place's record."""
    # by the measure of the plan's own days, whose chances hang on whether the day before was open
    if place.outlook.said:
        last = [each for each in place.outlook.spells if each.begins < until][-1]
        return limits.holds(last.temperature, last.humidity)
    stays = place.record.stays(limits, hours) if place.record else None
    return limits.inside(place.temperature, place.humidity) >= (stays.inside if stays else 0.0)


def _by_day(days: Sequence[bool], first: int) -> Iterator[Span]:
    """The open days, of which the first begins at a minute, as spans."""
    yield from ((first + day * DAY, first + (day + 1) * DAY - 1) for day, is_open in enumerate(days) if is_open)


def _minute(moment: datetime, start: datetime) -> int:
    return -int(-((moment - start).total_seconds()) // 60)
