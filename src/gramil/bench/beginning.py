"""How to begin: a new instrument from five questions; and the unit that is shown first."""

from collections.abc import Mapping

from starlette.responses import Response

from gramil.bench.asking import Asked, go, own_address
from gramil.bench.shelf import Shelf
from gramil.description.reading import parse_description
from gramil.description.writing import QUESTIONS, Question, new_description
from gramil.faults import MakersFault
from gramil.shop.instruments import add_instrument

ASKED = ("instrument.name", "scale.length", "scale.join", "nut.width", "instrument.handed")
"""The five questions of a new instrument; all else is left usual and can be changed on its page."""


def five() -> tuple[Question, ...]:
    """The five questions, in order."""
    known = {question.key: question for question in QUESTIONS}
    return tuple(known[key] for key in ASKED)


def new_page(asked: Asked, _: Shelf) -> Response:
    """The five questions."""
    return asked.page("new.html", title="New instrument", questions=five(), answers={}, faults=())


def make_new(asked: Asked, _: Shelf) -> Response:
    """A new instrument from the answers; faults come back with what was typed."""
    answers: Mapping[str, str] = {key: asked.one(key) for key in ASKED if asked.one(key)}
    try:
        text = new_description(answers)
        name = parse_description(text).instrument.instrument.name
        with asked.keeping.opened() as store:
            made = add_instrument(store, name, text, asked.now, who=asked.session.who, why="begun")
    except MakersFault as fault:
        values = {"questions": five(), "answers": answers, "faults": fault.faults}
        return asked.page("new.html", 422, title="New instrument", **values)
    return go(f"/instrument/{made.id}")


def swap_unit(asked: Asked, _: Shelf) -> Response:
    """Millimetres or inches first, for this browser."""
    if asked.one("unit") in ("mm", "in"):
        asked.session.unit = asked.one("unit")
    return go(own_address(asked.one("back", "/")))
