"""What to ask for a whole guitar, and what is wrong with one answer before the others are known."""

from collections.abc import Mapping
from dataclasses import replace

from gramil.description.questions import QUESTIONS, Question
from gramil.description.whole.starting import RULED, START, STARTING_POINTS
from gramil.description.whole.writing import whole_description
from gramil.faults import MakersFault

STARTS = Question(START, f"Begin from ({', '.join(STARTING_POINTS)})", "middle")
"""The first question."""
RULER: tuple[Question, ...] = tuple(Question(key, ask, "") for key, ask in RULED.items())
"""What a ruler tells of the body; the usual answers are the starting point's."""
_OF_ALL = ("instrument.name", "instrument.units", "instrument.handed", "scale.length", "scale.frets", "scale.join")
ASKED: tuple[Question, ...] = (
    *(each for key in (*_OF_ALL, "nut.width") for each in QUESTIONS if each.key == key),
    *RULER,
)
"""In the order to ask them; all else is the starting point's."""
_BY = (START, "instrument.units")
"""Answers by which others are read."""


def wrong_alone(key: str, answer: str, so_far: Mapping[str, str]) -> MakersFault | None:
    """What is wrong with an answer by itself: faults of keys that are still to be asked do not count."""
    try:
        whole_description({each: so_far[each] for each in _BY if each in so_far} | {key: answer})
    except MakersFault as fault:
        own = [each for each in fault.faults if each.where.startswith(key)]
        return MakersFault(replace(each, line=None, file=None) for each in own) if own else None
    return None
