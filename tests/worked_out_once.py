"""What the tests share, once in a process: figures of the same description in the same shop, a logger's file, the
moisture of a piece at a moment, the places of the same text's keys, and a PDF typeset from the same data.

Most tests look at one of the four examples in the example shop, and what takes their time is the same few hundred
figures, drawings and set-ups each time. A figure is a pure function of what it follows from, so those of another test
serve, but for what hangs on a base value that differs or on what was measured. Who asks whether that is so sets out
with nothing known: `from_the_beginning`.
"""

import hashlib
import subprocess
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import datetime
from functools import lru_cache
from pathlib import Path
from types import SimpleNamespace
from unittest.mock import patch

from gramil import graph
from gramil.address import parse_address
from gramil.air.air_of_places import PlaceAir, Places, own_air
from gramil.air.pieces_now import PieceNow, _piece_now
from gramil.description.locate import locate
from gramil.description.wood.tables import PieceTable
from gramil.graph import Figures, same
from gramil.prints.solved import with_top
from gramil.wood.air import AirHistory
from gramil.wood.species import Species

KEPT = 12
"""So many instruments' figures are kept, those that were asked for last."""
KEPT_TEXTS = 64
"""So many texts of descriptions, and so many PDFs, are kept."""
SHORT = 100_000
"""Bytes of a logger's file that is kept at the most."""


@contextmanager
def worked_out_once() -> Iterator[None]:
    """Figures that are asked for again within are those of the first time, with the origins of the last."""
    kept, tops = list[Figures](), list[Figures]()
    with (
        patch("gramil.prints.whole.derive", lambda *given: taken_over(graph.derive(*given), kept)),
        patch("gramil.prints.solved.with_top", lambda figures: taken_over(with_top(figures), tops)),
        patch("gramil.air.air_of_places.own_air", read_once()),
        patch("gramil.air.pieces_now._piece_now", dried_once()),
        patch("gramil.description.reading.locate", lru_cache(KEPT_TEXTS)(locate)),
        patch("gramil.typeset.subprocess", SimpleNamespace(run=typeset_once())),
    ):
        yield


def taken_over(new: Figures, kept: list[Figures]) -> Figures:
    """The figures with all that is known already of those that are kept and are most like them."""
    like = [each for each in kept if each.graph is new.graph and each.lengths == new.lengths]
    if not like:
        kept.append(replace(new, pins={}))
        return replace(new, known=kept[-1].known) if not new.pins else new
    differing, before = min(((differences(each, new), each) for each in reversed(like)), key=lambda pair: len(pair[0]))
    kept[:] = [*(each for each in kept if each is not before), before]
    if new.pins or differing:
        measured = {parse_address(each)[0] for each in new.pins}
        still = before._known_still(differing | measured)
        new = replace(new, known={**still, **new.known})
        if not new.pins:
            kept.append(new)
    else:
        new = replace(new, known=before.known)
    del kept[:-KEPT]
    return new


def differences(one: Figures, other: Figures) -> set[str]:
    """The base values in which two differ."""
    pairs = ((name, one.base[name], other.base[name]) for name in one.graph.inputs)
    return {name for name, value, another in pairs if value is not another and not same(value, another)}


def from_the_beginning(figures: Figures) -> Figures:
    """The same figures, of which none is known."""
    return replace(figures, known={})


def read_once() -> Callable[[Path], AirHistory]:
    """Readings of a file, taken over from one of the same name in which the same stood."""
    kept: dict[tuple[str, bytes], AirHistory] = {}

    def read(path: Path) -> AirHistory:
        key = (path.name, path.read_bytes()) if path.is_file() and path.stat().st_size < SHORT else None
        if key is None:
            return own_air(path)
        if key not in kept:
            kept[key] = own_air(path)
        return kept[key]

    return read


def dried_once() -> Callable[..., PieceNow]:
    """A piece's moisture, taken over from the same piece at the same moment after the same readings."""
    kept: dict[tuple[object, ...], PieceNow] = {}

    def piece_now(row: PieceTable, species: Species, places: Places, now: datetime) -> PieceNow:
        key = (repr(row), repr(species), now, *(readings(places.known.get(stay.place)) for stay in row.lay))
        if key not in kept:
            kept[key] = _piece_now(row, species, places, now)
        return kept[key]

    return piece_now


def readings(place: PlaceAir | None) -> bytes:
    """What tells the readings of a place from others."""
    if place is None:
        return b""
    of = place.history
    texts = (str(of.origin).encode(), *(each.tobytes() for each in (of.times, of.temperature, of.humidity)))
    return hashlib.blake2b(b"|".join(texts)).digest()


def typeset_once() -> Callable[..., subprocess.CompletedProcess[bytes]]:
    """Runs the typesetter, but not again for the same template and data."""

    @lru_cache(KEPT_TEXTS)
    def known(command: tuple[str, ...], given: bytes) -> subprocess.CompletedProcess[bytes]:
        return subprocess.run(command, input=given, capture_output=True, check=False)

    def run(command: list[str], *, input: bytes, **_: bool) -> subprocess.CompletedProcess[bytes]:
        return known(tuple(command), input)

    return run
