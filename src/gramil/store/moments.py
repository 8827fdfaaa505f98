"""Moments as the store keeps them: ISO 8601 texts with their offset from UTC."""

from datetime import datetime

FIRST_YEAR, LAST_YEAR = 1900, 2199
"""What is reckoned ahead of a moment, or back from it, stays a date: wood takes years to settle."""


def moment_text(moment: datetime) -> str:
    """A moment as it is kept. Raises ValueError when it has no offset."""
    if moment.utcoffset() is None:
        raise ValueError("a moment in the store has an offset from universal time")
    return moment.isoformat()


def is_moment(text: str) -> bool:
    """Whether a text is a moment as the store keeps it."""
    return read_moment(text) is not None


def read_moment(text: str) -> datetime | None:
    """The moment that a text from the store stands for, or None if it is not a moment."""
    try:
        moment = datetime.fromisoformat(text)
    except ValueError:
        return None
    return moment if moment.tzinfo is not None and FIRST_YEAR <= moment.year <= LAST_YEAR else None
