"""The first page: what is on the bench, what could be done next; with an empty store, how to begin."""

from collections.abc import Mapping
from dataclasses import dataclass
from importlib.resources import files

from starlette.responses import Response

from gramil.bench.asking import Asked, go, own_address
from gramil.bench.shelf import Held, Shelf
from gramil.change.whole import findings_of, setups_of
from gramil.description.reading import parse_description
from gramil.description.writing import QUESTIONS, Question, new_description
from gramil.faults import Fault, MakersFault
from gramil.setups.setup import Setup
from gramil.shop.instruments import add_instrument, instruments
from gramil.shop.on_hand import bring_in_shop
from gramil.shop.opening import Store
from gramil.shop.operations_done import operations_done
from gramil.shop.places import latest_reading, places

ASKED = ("instrument.name", "scale.length", "scale.join", "nut.width", "instrument.handed")
"""The five questions of a new instrument; all else is left usual and can be changed on its page."""
EXAMPLES = ("tarn", "fell", "scree")


@dataclass(frozen=True)
class OnBench:
    """An instrument as a row: what would be done next, what is done, and how many findings ask for something."""

    id: int
    name: str
    revision: int
    next: Setup | None
    later: tuple[Setup, ...]
    done: int
    stops: int
    cautions: int
    faults: tuple[Fault, ...] = ()


def first_page(asked: Asked, shelf: Shelf) -> Response:
    """What is on the bench now."""
    with asked.keeping.opened() as store:
        rows = [_row(store, shelf, each.id, each.name) for each in instruments(store) if each.standing != "done"]
        air = [(place, latest_reading(store, place.id)) for place in places(store)]
    if not rows:
        return asked.page("empty.html", title="Begin", questions=five(), answers={}, faults=())
    return asked.page("bench.html", title="On the bench", rows=rows, air=air, now=asked.now)


def _row(store: Store, shelf: Shelf, number: int, name: str) -> OnBench:
    done = {each.operation for each in operations_done(store, number)}
    try:
        held = shelf.held(store, number)
    except MakersFault as fault:
        return OnBench(number, name, 0, None, (), len(done), 0, 0, fault.faults)
    return _bench_row(held, done)


def _bench_row(held: Held, done: set[str]) -> OnBench:
    waiting = [each for each in setups_of(held.figures) if not each.closed and each.name not in done]
    severities = [each.severity for each in findings_of(held.figures)]
    return OnBench(
        held.seen.id,
        held.seen.name,
        held.revision.number,
        waiting[0] if waiting else None,
        tuple(waiting[1:]),
        len(done),
        severities.count("stop"),
        severities.count("caution"),
    )


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
    """The demonstration shop and its three instruments, all invented, into an empty store."""
    folder = files("gramil") / "data" / "examples"
    with asked.keeping.opened() as store:
        if instruments(store):
            return go("/")
        bring_in_shop(store, (folder / "shop.toml").read_text(encoding="utf-8"), "shop.toml", asked.now)
        for name in EXAMPLES:
            text = (folder / f"{name}.toml").read_text(encoding="utf-8")
            title = parse_description(text, f"{name}.toml").instrument.instrument.name
            add_instrument(store, title, text, asked.now, why="laid out as an example")
    return go("/")


def swap_unit(asked: Asked, _: Shelf) -> Response:
    """Millimetres or inches first, for this browser."""
    if asked.one("unit") in ("mm", "in"):
        asked.session.unit = asked.one("unit")
    return go(own_address(asked.one("back", "/")))
