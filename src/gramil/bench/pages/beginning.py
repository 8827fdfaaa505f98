"""How to begin: a new instrument from six questions; and the unit that is shown first."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from starlette.responses import Response

from gramil.acts.descriptions import begin
from gramil.bench.field_words import at_fields
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest, go, own_address
from gramil.bench.pages.tools_page import unit_of_shop
from gramil.description.questions import QUESTIONS, STRINGS, usual_answer
from gramil.description.reading import parse_description
from gramil.description.writing import new_description
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit

ASKED = ("instrument.name", STRINGS, "scale.length", "scale.join", "nut.width", "instrument.handed")
"""The six questions of a new instrument; all else is left usual and can be changed on its page."""


CHOICES: Mapping[str, tuple[str, ...]] = {"instrument.handed": ("right", "left"), STRINGS: ("steel", "nylon")}
"""Questions that have a few answers, which are offered."""


@dataclass(frozen=True)
class Asked:
    """A question on the page: its words, what is usual or may be chosen, what was typed and what is wrong with it."""

    key: str
    ask: str
    usual: str
    choices: tuple[str, ...] = ()
    typed: str = ""
    fault: str = ""


def six(
    unit: LengthUnit, answers: Mapping[str, str] | None = None, faults: Mapping[str, str] | None = None
) -> tuple[Asked, ...]:
    """The six questions, in order, with what is usual in a unit."""
    known = {question.key: question for question in QUESTIONS}
    given, wrong, first = answers or {}, faults or {}, _begun_in(unit)
    return tuple(
        Asked(
            key,
            re.sub(r" \([^)]*\)$", "", known[key].ask) if key in CHOICES else known[key].ask,
            usual_answer(known[key], first),
            CHOICES.get(key, ()),
            given.get(key, ""),
            wrong.get(key, ""),
        )
        for key in ASKED
    )


def _begun_in(unit: LengthUnit) -> dict[str, str]:
    return {"instrument.units": unit}


def new_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The six questions."""
    with request.keeping.opened() as store:
        unit = unit_of_shop(request, store)
    return request.page("new.html", title="New instrument", questions=six(unit), faults=())


def make_new(request: PageRequest, _: OpenInstruments) -> Response:
    """A new instrument from the answers; faults come back with what was typed."""
    answers: Mapping[str, str] = {key: request.one(key) for key in ASKED if request.one(key)}
    with request.keeping.opened() as store:
        unit = unit_of_shop(request, store)
    try:
        text = new_description({**_begun_in(unit), **answers})
        name = parse_description(text).instrument.instrument.name
        with request.keeping.opened() as store:
            made = begin(store, name, text, request.hand)
    except MakersFault as fault:
        found, rest = at_fields((*_each_alone(unit, answers), *fault.faults), ASKED)
        questions = six(unit, answers, found)
        return request.page(
            "new.html", 422, title="New instrument", questions=questions, faults=rest if not found else ()
        )
    return go(f"/instrument/{made.id}")


def _each_alone(unit: LengthUnit, answers: Mapping[str, str]) -> Iterator[Fault]:
    """What is wrong with each answer by itself, so that all of it is told at once."""
    for key, answer in answers.items():
        try:
            parse_description(new_description({**_begun_in(unit), key: answer}))
        except MakersFault as fault:
            yield replace(fault.faults[0], where=key)


def swap_unit(request: PageRequest, _: OpenInstruments) -> Response:
    """Millimetres or inches first, for this browser."""
    if request.one("unit") in ("mm", "in"):
        request.session.unit = request.one("unit")
    return go(own_address(request.one("back", "/")))
