"""Readings of slots are questioned together: what one cause explains is one question, which says what it would mean.

A board cut to another scale, by the rule of 18, or after a slip of the index has most of its slots far from where they
are drawn. None of them is by itself what was read wrong, and none by itself is to be filled.
"""

from dataclasses import replace

import numpy as np

from gramil import names as n
from gramil.change.questioned import TIMES, Question, questions
from gramil.change.slot_readings import SlotsReadback, as_readings
from gramil.change.slot_report import cause_sentence, what_to_do
from gramil.formatter import Formatter

AT = "slotted"
"""The work at which slots are read."""
COMMON = 2
"""Slots that a cause must put out to be common to them."""


def slot_questions(found: SlotsReadback, formatter: Formatter) -> tuple[Question, ...]:
    """The questions that readings of slots raise: one by one, or all with what they mean together if they do."""
    asked = questions(formatter.figures, as_readings(found), AT)
    if any(each.slip in ("millimetres", "inches") for each in asked) or not _explained(found, formatter, asked):
        return asked
    together = " ".join((cause_sentence(found.cause, formatter), *what_to_do(found, formatter)))
    return tuple(replace(each, slip="far", stands=(), together=together) for each in asked)


def _explained(found: SlotsReadback, formatter: Formatter, asked: tuple[Question, ...]) -> bool:
    """Whether the likely cause is common to several slots and leaves nothing that would still be asked about."""
    if not asked or np.count_nonzero(found.cause.explained) < COMMON:
        return False
    within = TIMES * formatter.figures[n.limit_slot_position]
    return all(abs(each.error - each.explained) <= within for each in found.slots)
