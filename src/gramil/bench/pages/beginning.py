"""How to begin: a new instrument from six questions; and the unit that is shown first."""

from collections.abc import Mapping
from dataclasses import replace

from starlette.responses import Response

from gramil.acts.descriptions import begin
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest, go, own_address
from gramil.description.questions import QUESTIONS, STRINGS, Question, usual_answer
from gramil.description.reading import parse_description
from gramil.description.writing import new_description
from gramil.faults import MakersFault
from gramil.store.items import shop_unit

ASKED = ("instrument.name", STRINGS, "scale.length", "scale.join", "nut.width", "instrument.handed")
"""The six questions of a new instrument; all else is left usual and can be changed on its page."""


def six(unit: str) -> tuple[Question, ...]:
    """The six questions, in order, with what is usual in a unit, if one is chosen."""
    known = {question.key: question for question in QUESTIONS}
    first = _begun_in(unit)
    return tuple(replace(known[key], usual=usual_answer(known[key], first)) for key in ASKED)


def _begun_in(unit: str) -> dict[str, str]:
    return {"instrument.units": unit} if unit else {}


def _unit(request: PageRequest) -> str:
    """The unit that this browser shows first, or inches if the shop's record is in them; empty if neither is chosen."""
    if request.session.unit:
        return request.session.unit
    with request.keeping.opened() as store:
        return "in" if shop_unit(store) == "in" else ""


def new_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The six questions."""
    return request.page("new.html", title="New instrument", questions=six(_unit(request)), answers={}, faults=())


def make_new(request: PageRequest, _: OpenInstruments) -> Response:
    """A new instrument from the answers; faults come back with what was typed."""
    answers: Mapping[str, str] = {key: request.one(key) for key in ASKED if request.one(key)}
    try:
        text = new_description({**_begun_in(_unit(request)), **answers})
        name = parse_description(text).instrument.instrument.name
        with request.keeping.opened() as store:
            made = begin(store, name, text, request.hand)
    except MakersFault as fault:
        values = {"questions": six(_unit(request)), "answers": answers, "faults": fault.faults}
        return request.page("new.html", 422, title="New instrument", **values)
    return go(f"/instrument/{made.id}")


def swap_unit(request: PageRequest, _: OpenInstruments) -> Response:
    """Millimetres or inches first, for this browser."""
    if request.one("unit") in ("mm", "in"):
        request.session.unit = request.one("unit")
    return go(own_address(request.one("back", "/")))
