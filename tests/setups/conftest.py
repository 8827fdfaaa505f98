"""Boards and a shop that the set-ups are tried on; the shop's data are invented."""

from collections.abc import Callable
from importlib.resources import files

import pytest

from gramil.description.base import base_values
from gramil.description.reading import parse_description, parse_shop, read_shop
from gramil.graph import Figures, derive
from gramil.prints.whole import whole_graph

TARN = (files("gramil") / "data" / "examples" / "tarn.toml").read_text(encoding="utf-8")
SHOP = """
gramil = 1
[shop]
name = "cold shed"
units = "mm"
[[wire]]
name = "medium"
crown_width = 2.4
crown_height = 1.15
tang_thickness = 0.54
bead_thickness = 0.78
tang_depth = 1.6
on_hand = "6 m"
[[saw]]
name = "bench saw"
kerf = 0.58
cuts = "face down"
what = "thin blade in a saw bench"
[[saw]]
name = "long saw"
kerf = 0.62
cuts = "from above"
what = "saw in a guide over a cradle"
[[saw]]
name = "dovetail saw"
kerf = 0.6
cuts = "from above"
rides_arch = true
what = "hand saw, its stop rides on the face"
[[cutter]]
name = "ledge cutter"
diameter = 12.7
bearings = [9.1, 9.5]
[[block]]
name = "long block"
radius = 355
[[jig]]
name = "taper sled"
for = "taper"
constant = 96.4
checked = 2026-01-12
[[jig]]
name = "index fence"
for = "slots"
constant = 60.15
[[template]]
name = "old rail"
scale = 630
frets = 20
pin = 4
[[blank]]
name = "rack three, lower {nut_width}"
wood = "persimmon"
length = 510
width = 72
thickness = 8.5
"""
EDITS: dict[str, tuple[tuple[str, str], ...]] = {
    "fanned": (
        ("length = 630", "bass = 690\ntreble = 640\nsquare_at = 7"),
        ("beyond_last_fret = 8", "beyond_last_fret = 14"),
    ),
    "left": (('handed = "right"', 'handed = "left"'),),
    "unbound": (("thickness = 1.8", "thickness = 0"),),
    "levelled": (("level_underside = false", "level_underside = true"),),
    "following": (('bottom = "straight"', 'bottom = "follows the arch"'),),
    "after": (('cut = "before arching"', 'cut = "after arching"'),),
    "flat": (('{ nut = "320 mm", end = "390 mm" }', '"flat"'),),
    "cylinder": (('{ nut = "320 mm", end = "390 mm" }', '"355 mm"'),),
    "unmarked": (("frets = [3, 5, 7, 9, 12, 15, 17]", "frets = []"), ("double = [12]", "double = []")),
    "zero fret": (("zero_fret = false", "zero_fret = true"),),
    "set forward": (("set_forward = 0", "set_forward = 0.4"),),
}
"""What is written otherwise on each kind of board."""

Trial = Callable[..., Figures]


def figures_of(*edits: str, shop: str | None = SHOP, wood: str = "persimmon") -> Figures:
    """The bundled board with some of its lines changed, in the invented shop or the one that stands in."""
    text = TARN.replace('wood = "persimmon"', f'wood = "{wood}"')
    for old, new in (pair for edit in edits for pair in EDITS[edit]):
        assert old in text
        text = text.replace(old, new, 1)
    base = base_values(parse_description(text), read_shop() if shop is None else parse_shop(shop))
    return derive(whole_graph(), base.values, base.origins, lengths=base.lengths)


@pytest.fixture(scope="session")
def trial() -> Trial:
    """`figures_of`."""
    return figures_of


@pytest.fixture(scope="session")
def shop() -> str:
    """The invented shop as its maker wrote it."""
    return SHOP


BOARDS = (
    "",
    "fanned, left",
    "unbound",
    "levelled, following",
    "after",
    "following, after",
    "flat, levelled, unmarked",
    "cylinder, zero fret",
    "set forward",
)


@pytest.fixture(params=[*BOARDS, "the usual shop"])
def any_board(request: pytest.FixtureRequest) -> Figures:
    """Every kind of board."""
    if request.param == "the usual shop":
        return figures_of(shop=None)
    return figures_of(*filter(None, request.param.split(", ")))
