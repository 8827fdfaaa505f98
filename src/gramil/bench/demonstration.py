"""The demonstration shop, laid out as of today: its air was read this morning, its work is under way."""

import re
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date, datetime, timedelta
from importlib.resources import files
from pathlib import Path
from tempfile import TemporaryDirectory

from starlette.responses import Response

from gramil.bench.asking import Asked, go
from gramil.bench.shelf import Shelf
from gramil.description.reading import parse_description, parse_shop
from gramil.prints.whole import figures_of
from gramil.shop.air_of_places import load_air
from gramil.shop.instruments import add_instrument, instruments
from gramil.shop.made_file import made_beside, read_made
from gramil.shop.on_hand import bring_in_shop, shop_description
from gramil.shop.opening import Store
from gramil.shop.places import import_air, place
from gramil.shop.working_files import bring_in_made

EXAMPLES = ("tarn", "fell", "scree")
WRITTEN = datetime(2026, 1, 19, 9, 0)
"""The moment at which the examples stand as their files say: the last reading of their air is an hour old."""
DAY = re.compile(r"\b20\d\d-\d\d-\d\d")


def lay_out_demo(asked: Asked, _: Shelf) -> Response:
    """The demonstration shop, its air, its instruments and what is done on each, all invented, into an empty store."""
    with asked.keeping.opened() as store:
        if not instruments(store):
            with examples_of(asked.now) as folder:
                _lay_out(store, folder, asked.now)
    return go("/")


@contextmanager
def examples_of(now: datetime) -> Iterator[Path]:
    """The bundled files in a folder that is gone afterwards, every day in them moved so that they stand as of now."""
    moved = timedelta(days=(now.replace(tzinfo=None) - WRITTEN) // timedelta(days=1))
    with TemporaryDirectory() as folder:
        for file in (files("gramil") / "data" / "examples").iterdir():
            text = file.read_text(encoding="utf-8")
            later = DAY.sub(lambda found: (date.fromisoformat(found[0]) + moved).isoformat(), text)
            Path(folder, file.name).write_text(later, encoding="utf-8", newline="\n")
        yield Path(folder)


def _lay_out(store: Store, folder: Path, now: datetime) -> None:
    text = (folder / "shop.toml").read_text(encoding="utf-8")
    bring_in_shop(store, text, "shop.toml", now)
    for row in parse_shop(text, "shop.toml").shop.place:
        if row.log:
            history, _report = load_air(folder / row.log)
            import_air(store, place(store, row.name).id, history, now, file=row.log)
    for name in EXAMPLES:
        _example(store, folder / f"{name}.toml", now)


def _example(store: Store, file: Path, now: datetime) -> None:
    """An example as it stands on the bench: its description, and the work that is done on it."""
    text = file.read_text(encoding="utf-8")
    described = parse_description(text, file.name, file.parent)
    name = described.instrument.instrument.name
    made = add_instrument(store, name, text, now, why="laid out as an example")
    bring_in_made(store, made, read_made(made_beside(file)), figures_of(described, shop_description(store)), now)
