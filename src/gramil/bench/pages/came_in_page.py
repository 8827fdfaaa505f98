"""A guitar that came in: begun from its frets and strings, and its scale if that is known."""

import re
from collections.abc import Mapping

from starlette.responses import Response

from gramil.acts.descriptions import begin
from gramil.bench.field_words import at_fields
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest, go
from gramil.bench.pages.beginning import QuestionAsked
from gramil.bench.pages.tools_page import unit_of_shop
from gramil.description.questions import STRINGS, TWELVE, usual_answer
from gramil.description.reading import parse_description
from gramil.description.repair.writing import FRETS, MAY_BE_EMPTY, REPAIRED, repair_description
from gramil.faults import MakersFault
from gramil.measure import LengthUnit

CHOICES: Mapping[str, tuple[str, ...]] = {"instrument.handed": ("right", "left"), STRINGS: ("steel", "nylon", TWELVE)}
"""Questions that have a few answers, which are offered."""
TO_ANSWER = tuple(each for each in REPAIRED if each.key != "instrument.units")
"""The unit is the shop's."""
KEYS = tuple(each.key for each in TO_ANSWER)
NAMED = "A guitar that came in"


def questions_asked(
    unit: LengthUnit, answers: Mapping[str, str] | None = None, faults: Mapping[str, str] | None = None
) -> tuple[QuestionAsked, ...]:
    """The questions, in order, with what is usual in a unit; nothing is usual of a scale, or of how many frets."""
    given, wrong, first = answers or {}, faults or {}, {"instrument.units": unit}
    return tuple(
        QuestionAsked(
            each.key,
            re.sub(r" \([^)]*\)$", "", each.ask) if each.key in CHOICES else each.ask,
            _usual(each.key, usual_answer(each, first)),
            CHOICES.get(each.key, ()),
            given.get(each.key, ""),
            wrong.get(each.key, ""),
        )
        for each in TO_ANSWER
    )


def _usual(key: str, usual: str) -> str:
    if key == "instrument.name":
        return NAMED
    if key == FRETS:
        return ""
    return "not known yet" if key in MAY_BE_EMPTY else usual


def came_in_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The questions of a guitar that came in."""
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
    return request.page("came_in.html", title=NAMED, questions=questions_asked(unit), faults=())


def take_in(request: PageRequest, _: OpenInstruments) -> Response:
    """A guitar that came in, from the answers; faults come back with what was typed."""
    answers = {key: request.one(key) for key in KEYS if request.one(key)}
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
    try:
        text = repair_description({"instrument.units": unit, **answers})
        name = parse_description(text).instrument.instrument.name
        with request.record.opened() as store:
            made = begin(store, name, text, request.hand)
    except MakersFault as fault:
        found, rest = at_fields(fault.faults, KEYS)
        shown = questions_asked(unit, answers, found)
        return request.page("came_in.html", 422, title=NAMED, questions=shown, faults=rest if not found else ())
    return go(f"/instrument/{made.id}")
