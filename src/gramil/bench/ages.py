"""Moments in words: how long ago something was read, and a moment by the clock on the wall."""

from datetime import datetime

WEEKS_FROM = 21.0
"""Days from which weeks are counted."""


def ago(now: datetime, then: datetime) -> str:
    """How long ago: `5 minutes ago`, `3 hours ago`, `4 days ago`, `44 weeks ago`."""
    minutes = max((now - then).total_seconds() / 60.0, 0.0)
    days = minutes / 1440.0
    if minutes < 90.0:
        return _counted(minutes, "minute")
    if days < 2.0:
        return _counted(minutes / 60.0, "hour")
    return _counted(days, "day") if days < WEEKS_FROM else _counted(days / 7.0, "week")


def _counted(value: float, word: str) -> str:
    number = int(value + 0.5)
    return f"{number} {word}{'' if number == 1 else 's'} ago" if number else "just now"


def clock(at: str, now: datetime) -> str:
    """A moment kept with its offset from UTC, as the clock on the wall shows it: `2026-11-25 09:00`."""
    return f"{datetime.fromisoformat(at).astimezone(now.tzinfo):%Y-%m-%d %H:%M}"
