"""The demonstration shop, laid out as of today: its air was read this morning, its work is under way."""

import re
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime, timedelta
from importlib.resources import files
from pathlib import Path
from tempfile import TemporaryDirectory

from starlette.responses import Response

from gramil.acts.bringing_in import bring_in
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest, go
from gramil.shop.instruments import instruments

EXAMPLES = ("tarn", "fell", "scree")
WRITTEN = datetime(2026, 1, 19, 8, 0)
"""The moment at which the examples stand as their files say: that of the last reading of their air."""
MOMENT = re.compile(r"\b(20\d\d-\d\d-\d\d)(?:([T ])(\d\d:\d\d)(:\d\d)?)?")
JUST_READ = timedelta(minutes=1)
"""The last reading is at least so old: what the maker reads now comes after it."""
YEAR = timedelta(days=365)


def lay_out_demo(request: PageRequest, _: OpenInstruments) -> Response:
    """The demonstration shop, its air, its instruments and what is done on each, all invented, into an empty store."""
    with request.record.opened() as store:
        if not instruments(store):
            with examples_of(request.now) as folder:
                bring_in(store, [folder / f"{name}.toml" for name in ("shop", *EXAMPLES)], request.hand)
    return go("/")


@contextmanager
def examples_of(now: datetime) -> Iterator[Path]:
    """The bundled files in a temporary folder, every date in them moved so that they are up to date."""
    with TemporaryDirectory() as folder:
        for file in (files("gramil") / "data" / "examples").iterdir():
            text = file.read_text(encoding="utf-8")
            Path(folder, file.name).write_text(brought_up(text, now), encoding="utf-8", newline="\n")
        yield Path(folder)


def brought_up(text: str, now: datetime) -> str:
    """A text of the examples with its moments moved to now: the last reading of air is an hour old at most, and what
    was checked, done or weighed lies in the past.
    """
    moved = timedelta(hours=(now.replace(tzinfo=None) - WRITTEN - JUST_READ) // timedelta(hours=1))
    return MOMENT.sub(lambda found: _moved(found, moved), text)


def _moved(found: re.Match[str], moved: timedelta) -> str:
    day, between, clock, seconds = found.groups()
    if clock:
        later = datetime.fromisoformat(f"{day} {clock}") + moved
        return f"{later:%Y-%m-%d}{between}{later:%H:%M}{seconds or ''}"
    then = datetime.fromisoformat(day)
    if then > WRITTEN:
        then -= YEAR * ((then - WRITTEN) // YEAR + 1)
    return (then.date() + timedelta(days=moved // timedelta(days=1))).isoformat()
