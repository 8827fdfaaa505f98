"""The demonstration shop, laid out as of today: its air was read this morning, its work is under way."""

import re
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import date, datetime, timedelta
from importlib.resources import files
from pathlib import Path
from tempfile import TemporaryDirectory

from starlette.responses import Response

from gramil.acts.bringing_in import bring_in
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest, go
from gramil.shop.instruments import instruments

EXAMPLES = ("tarn", "fell", "scree")
WRITTEN = datetime(2026, 1, 19, 9, 0)
"""The moment at which the examples stand as their files say: the last reading of their air is an hour old."""
DAY = re.compile(r"\b20\d\d-\d\d-\d\d")


def lay_out_demo(request: PageRequest, _: OpenInstruments) -> Response:
    """The demonstration shop, its air, its instruments and what is done on each, all invented, into an empty store."""
    with request.keeping.opened() as store:
        if not instruments(store):
            with examples_of(request.now) as folder:
                bring_in(store, [folder / f"{name}.toml" for name in ("shop", *EXAMPLES)], request.hand)
    return go("/")


@contextmanager
def examples_of(now: datetime) -> Iterator[Path]:
    """The bundled files in a temporary folder, every date in them moved so that they are up to date."""
    moved = timedelta(days=(now.replace(tzinfo=None) - WRITTEN) // timedelta(days=1))
    with TemporaryDirectory() as folder:
        for file in (files("gramil") / "data" / "examples").iterdir():
            text = file.read_text(encoding="utf-8")
            later = DAY.sub(lambda found: (date.fromisoformat(found[0]) + moved).isoformat(), text)
            Path(folder, file.name).write_text(later, encoding="utf-8", newline="\n")
        yield Path(folder)
