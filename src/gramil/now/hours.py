"""When the maker works: working days and hours as sessions, in minutes from the plan's start."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime, time, timedelta

from gramil.faults import MakersFault

DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
DAY = 1440
"""Minutes."""


@dataclass(frozen=True)
class Hours:
    """Working hours of a day, one session after another, and the days of the week (Monday 0)."""

    sessions: tuple[tuple[time, time], ...]
    days: frozenset[int]


def read_hours(hours: str = "08:30-12:30 13:30-17:30", days: str = "mon-fri") -> Hours:
    """Hours such as `08:30-12:30 13:30-17:30` and days such as `mon-fri` or `tue thu sat`.

    Raises MakersFault if they cannot be read, and for sessions that end before they begin, or overlap.
    """
    sessions = tuple(sorted(_session(text) for text in hours.replace(",", " ").split()))
    ends = [time.min, *(end for _, end in sessions)]
    if not sessions or any(begin >= end for begin, end in sessions):
        raise MakersFault.of(f'"{hours}" are not working hours', remedy='write them like "08:30-12:30 13:30-17:30"')
    if any(begin < end for (begin, _), end in zip(sessions, ends, strict=False)):
        raise MakersFault.of(f'"{hours}" overlap')
    return Hours(sessions, frozenset(day for text in days.replace(",", " ").lower().split() for day in _days(text)))


def _session(text: str) -> tuple[time, time]:
    try:
        begin, end = (time.fromisoformat(part if len(part) == 5 else f"0{part}") for part in text.split("-"))
    except ValueError:
        remedy = 'write hours like "08:30-12:30 13:30-17:30"'
        raise MakersFault.of(f'"{text}" is not a time to work', remedy=remedy) from None
    return begin, end


def _days(text: str) -> range:
    first, _, last = text.partition("-")
    try:
        begin, end = DAYS.index(first[:3]), DAYS.index((last or first)[:3])
    except ValueError:
        raise MakersFault.of(f'"{text}" is no day', remedy='write days like "mon-fri" or "tue thu"') from None
    return range(begin, end + 1)


def sessions(hours: Hours, start: datetime, days: int) -> tuple[tuple[int, int], ...]:
    """Every session of these days in minutes from `start`, the first one shortened if it has begun already."""
    found = []
    for ahead in range(days + 1):
        day = (start + timedelta(days=ahead)).date()
        for begin, end in hours.sessions if day.weekday() in hours.days else ():
            span = _minutes(datetime.combine(day, begin) - start), _minutes(datetime.combine(day, end) - start)
            if span[1] > 0 and span[0] < days * DAY:
                found.append((max(0, span[0]), min(span[1], days * DAY)))
    return tuple(found)


def hours_in(spans: Sequence[tuple[int, int]]) -> float:
    """Working hours in the sessions."""
    return sum(end - begin for begin, end in spans) / 60.0


def _minutes(span: timedelta) -> int:
    return round(span.total_seconds() / 60.0)
