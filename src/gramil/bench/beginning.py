"""How to begin: the demonstration shop, or a new instrument from five questions; and the unit that is shown first."""

from collections.abc import Mapping
from importlib.resources import as_file, files
from pathlib import Path

from starlette.responses import Response

from gramil.bench.asking import Asked, go, own_address
from gramil.bench.shelf import Shelf
from gramil.change.whole import figures_of
from gramil.description.reading import parse_description, parse_shop
from gramil.description.writing import QUESTIONS, Question, new_description
from gramil.faults import MakersFault
from gramil.shop.air_of_places import load_air
from gramil.shop.instruments import add_instrument, instruments
from gramil.shop.made_file import made_beside, read_made
from gramil.shop.on_hand import bring_in_shop, shop_description
from gramil.shop.places import import_air, place
from gramil.shop.working_files import bring_in_made

ASKED = ("instrument.name", "scale.length", "scale.join", "nut.width", "instrument.handed")
"""The five questions of a new instrument; all else is left usual and can be changed on its page."""
EXAMPLES = ("tarn", "fell", "scree")


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


def lay_out_demo(asked: Asked, _: Shelf) -> Response:
    """The demonstration shop, its air, its instruments and what is done on each, all invented, into an empty store."""
    with as_file(files("gramil") / "data" / "examples") as folder, asked.keeping.opened() as store:
        if instruments(store):
            return go("/")
        text = (folder / "shop.toml").read_text(encoding="utf-8")
        bring_in_shop(store, text, "shop.toml", asked.now)
        for row in parse_shop(text, "shop.toml").shop.place:
            if row.log:
                history, _report = load_air(folder / row.log)
                import_air(store, place(store, row.name).id, history, asked.now, file=row.log)
        for name in EXAMPLES:
            _example(asked, folder, name)
    return go("/")


def _example(asked: Asked, folder: Path, name: str) -> None:
    """An example as it stands on the bench: its description, and the work that is done on it."""
    file = folder / f"{name}.toml"
    text = file.read_text(encoding="utf-8")
    described = parse_description(text, file.name, folder)
    with asked.keeping.opened() as store:
        title = described.instrument.instrument.name
        made = add_instrument(store, title, text, asked.now, why="laid out as an example")
        figures = figures_of(described, shop_description(store))
        bring_in_made(store, made, read_made(made_beside(file)), figures, asked.now)


def swap_unit(asked: Asked, _: Shelf) -> Response:
    """Millimetres or inches first, for this browser."""
    if asked.one("unit") in ("mm", "in"):
        asked.session.unit = asked.one("unit")
    return go(own_address(asked.one("back", "/")))
