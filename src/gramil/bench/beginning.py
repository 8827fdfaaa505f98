"""How to begin: a new instrument from six questions; and the unit that is shown first."""

from collections.abc import Mapping
from dataclasses import replace

from starlette.responses import Response

from gramil.acts.descriptions import begin
from gramil.bench.asking import Asked, go, own_address
from gramil.bench.shelf import Shelf
from gramil.description.questions import QUESTIONS, STRINGS, Question, usual_answer
from gramil.description.reading import parse_description
from gramil.description.writing import new_description
from gramil.faults import MakersFault

ASKED = ("instrument.name", STRINGS, "scale.length", "scale.join", "nut.width", "instrument.handed")
"""The six questions of a new instrument; all else is left usual and can be changed on its page."""


def six(unit: str) -> tuple[Question, ...]:
    """The six questions, in order, with what is usual in the unit that this browser shows first, if it has one."""
    known = {question.key: question for question in QUESTIONS}
    first = _begun_in(unit)
    return tuple(replace(known[key], usual=usual_answer(known[key], first)) for key in ASKED)


def _begun_in(unit: str) -> dict[str, str]:
    return {"instrument.units": unit} if unit else {}


def new_page(asked: Asked, _: Shelf) -> Response:
    """The six questions."""
    return asked.page("new.html", title="New instrument", questions=six(asked.session.unit), answers={}, faults=())


def make_new(asked: Asked, _: Shelf) -> Response:
    """A new instrument from the answers; faults come back with what was typed."""
    answers: Mapping[str, str] = {key: asked.one(key) for key in ASKED if asked.one(key)}
    try:
        text = new_description({**_begun_in(asked.session.unit), **answers})
        name = parse_description(text).instrument.instrument.name
        with asked.keeping.opened() as store:
            made = begin(store, name, text, asked.now, who=asked.session.who)
    except MakersFault as fault:
        values = {"questions": six(asked.session.unit), "answers": answers, "faults": fault.faults}
        return asked.page("new.html", 422, title="New instrument", **values)
    return go(f"/instrument/{made.id}")


def swap_unit(asked: Asked, _: Shelf) -> Response:
    """Millimetres or inches first, for this browser."""
    if asked.one("unit") in ("mm", "in"):
        asked.session.unit = asked.one("unit")
    return go(own_address(asked.one("back", "/")))
