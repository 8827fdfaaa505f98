"""Doubtful readings on a page: the question stands under the field, and a second tap accepts the reading."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from gramil.bench.page_request import PageRequest
from gramil.change.questioned import Question, Reading, meaning, questions, sentence
from gramil.graph import Figures
from gramil.measure import LengthUnit
from gramil.shop.operations_done import Measurement

AS_READ = "as_read"
"""The field that says what was asked about once: sent again with the same reading, it is taken as read."""


@dataclass(frozen=True)
class Doubt:
    """A question in words, and what the field AS_READ must hold for the reading to be accepted."""

    text: str
    answer: str


def doubts(request: PageRequest, found: Iterable[Question], unit: LengthUnit) -> dict[str, Doubt]:
    """The questions not asked yet, in words, by the address or name of what was read.

    What several of them mean together is said once.
    """
    answered = set(request.many(AS_READ))
    told, together = dict[str, Doubt](), set[str]()
    for each in found:
        told[each.reading.address] = doubt_of(
            each if each.together not in together else replace(each, together=""), unit
        )
        together |= {each.together} - {""}
    return {address: doubt for address, doubt in told.items() if doubt.answer not in answered}


def doubt_of(question: Question, unit: LengthUnit) -> Doubt:
    """One question in words, with what the reading would mean if it is right."""
    reading = question.reading
    text = " ".join(filter(None, (sentence(question, unit), meaning(question))))
    return Doubt(text, f"{reading.address}={reading.value!r}")


def moment_doubt(request: PageRequest, against: str) -> dict[str, Doubt]:
    """The question about the moment of this form, if anything speaks against it and it was not asked before.

    Asked anew on another day: the answer is that day's.
    """
    doubt = Doubt(f"{against}. Is the day right?", f"moment={request.now:%Y-%m-%d}")
    return {} if not against or doubt.answer in request.many(AS_READ) else {"moment": doubt}


def measured_doubts(
    request: PageRequest, figures: Figures, measured: Iterable[Measurement], operation: str, unit: LengthUnit
) -> dict[str, Doubt]:
    """The questions about measurements that were typed, by their addresses."""
    readings = [Reading(each.address, each.value, each.written) for each in measured]
    return doubts(request, questions(figures, readings, operation), unit)
