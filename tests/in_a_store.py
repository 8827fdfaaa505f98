"""What the store's tests share: a moment in a zone ahead of universal time, a new store, the example shop in one."""

from collections.abc import Iterator, Mapping
from datetime import datetime, timedelta, timezone
from pathlib import Path

import numpy as np
import pytest

from gramil.graph import Figures, Input, Pin, derive
from gramil.quantities import Mm, PerFret, Radians
from gramil.shop.sheets_given import Sheet
from gramil.shop.shop_in_store import bring_in_shop
from gramil.store.opening import Store, create_store
from gramil.store.rows import records
from gramil.store.writing import Hand
from gramil.wiring import build

NOW = datetime(2026, 11, 2, 9, 30, tzinfo=timezone(timedelta(hours=1)))
SHOP = """\
# A shop of the tests' own.
gramil = 1

[shop]
name = "north light"
units = "mm"
pin_clearance = "0.03 mm"

[[wire]]
name = "medium"
crown_width = 2.4
crown_height = 1.15
tang_thickness = 0.54
bead_thickness = 0.78
tang_depth = 1.6
on_hand = "6 m"

[[saw]]
name = "table saw"
kerf = 0.58
cuts = "face down"

[[saw]]
name = "hand saw"
kerf = 0.57
cuts = "from above"
rides_arch = true

[[cutter]]
name = "ledge cutter"
diameter = "1/2 in"
bearings = [9.0, "3/8 in", 11.1]

[[block]]
name = "flat"
radius = "flat"

[[block]]
name = "16 inch"
radius = "16 in"

[[template]]
name = "648"
scale = 648
frets = 20
pin = 4

[[jig]]
name = "taper sled"
for = "taper"
constant = 62.4
checked = 2026-10-14

[[jig]]
name = "slotting rail"
for = "slots"
constant = 58.3
checked = "2026-11-02"

[[blank]]
name = "hornbeam"
wood = "hornbeam"
length = 500
width = 72
thickness = 8
count = 2

[[blank]]
name = "locust"
wood = "black locust"
length = 540
width = 76
thickness = 8.5

[limits]
under_slot = 2.2
"""


def core_width_at_fret(board_width: Mm) -> PerFret[Mm]:
    """A board's core, as wide at every fret."""
    return np.full(21, board_width - 3.0)


def head_angle_rise(head_angle: Radians) -> Radians:
    """Something that follows from an angle."""
    return head_angle / 2


def figures_with(pins: Mapping[str, Pin]) -> Figures:
    """Figures of a board of three inputs, with measurements in the place of some."""
    inputs = {
        "board_thickness": Input(Mm, "thickness"),
        "board_width": Input(Mm, "width"),
        "head_angle": Input(Radians, "angle"),
    }
    base = {"board_thickness": 6.4, "board_width": 55.0, "head_angle": 0.25}
    return derive(build([core_width_at_fret, head_angle_rise], inputs), base, pins=pins, lengths={"fret": 21})


@pytest.fixture
def figures() -> Figures:
    return figures_with({})


@pytest.fixture
def now() -> datetime:
    return NOW


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "shop.gramil"


@pytest.fixture
def store(path: Path) -> Iterator[Store]:
    with create_store(path) as opened:
        yield opened


@pytest.fixture
def stocked(store: Store, now: datetime) -> Store:
    """The store with the example shop in it."""
    bring_in_shop(store, SHOP, "shop.toml", Hand(now))
    return store


def sheets_given(store: Store) -> list[Sheet]:
    """Every sheet handed out that the store knows of, in the order in which they were."""
    return records(store, Sheet, "sheet", "ORDER BY id")
