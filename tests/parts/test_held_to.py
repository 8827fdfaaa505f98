"""Every feature moves by exactly what it is held to, whatever the scale, the join or the body does."""

import math
from collections.abc import Callable
from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st

from gramil.change.shift import shift
from gramil.description.writing import set_key
from gramil.graph import Figures

HOLDS = ("body", "join", "tail", "soundhole", "saddle")
STATION = {"body": 150.0, "join": 150.0, "tail": -340.0, "soundhole": -10.0, "saddle": -130.0}
"""Where the brace of each kind crosses the centreline, from what it is held to: all inside the body."""


def described(text: str) -> str:
    """Tarn with one plain brace for each thing that a brace may be held to, on the back."""
    board = text.partition("[[brace]]")[0]
    braces = [
        f'[[brace]]\nname = "to the {to}"\nplate = "back"\nheld_to = "{to}"\nstation = {STATION[to]}\nlean = 10\n'
        "width = 6\nheight = 10\n"
        for to in HOLDS
    ]
    plate = "[bridge_plate]\nahead = 12\nbehind = 25\nlength_front = 60\n"
    return board + "\n".join(braces) + plate


def crossing_of_the_centreline(figures: Figures, to: str) -> float:
    """Where the brace's middle line crosses the centreline, from the body's edge."""
    brace = next(each for each in figures["brace_list"] if each.name == f"to the {to}")
    share = -brace.start_y / (brace.stop_y - brace.start_y)
    return float(brace.start_x + share * (brace.stop_x - brace.start_x))


@cache
def once(text: str, derive_text: Callable[..., Figures]) -> Figures:
    """The figures before any change, the same at every try."""
    return derive_text(text)


@given(
    scale=st.floats(600.0, 660.0),
    join=st.floats(12.0, 14.0),
    beyond=st.integers(-3000, 3000).map(lambda each: each / 1000),
    hole=st.floats(150.0, 180.0),
    tail=st.floats(480.0, 500.0),
)
def test_a_brace_moves_by_exactly_what_it_is_held_to(
    text_of: Callable[[str], str],
    derive_text: Callable[..., Figures],
    scale: float,
    join: float,
    beyond: float,
    hole: float,
    tail: float,
) -> None:
    text = described(text_of("tarn"))
    old = once(text, derive_text)
    for key, value in (("scale.length", scale), ("scale.join", join), ("body.beyond_join", beyond)):
        text = set_key(text, key, f"{value!r}")
    text = set_key(text, "soundhole.centre", f"{hole!r}")
    new = derive_text(text.replace("[482, 72], [490, 0]", f"[{tail - 8!r}, 72], [{tail!r}, 0]"))
    edge = new["body_edge"] - old["body_edge"]
    wanted = {
        "body": 0.0,
        "join": -(beyond - 0.0),
        "tail": new["body_length"] - old["body_length"],
        "soundhole": hole - 165.0,
        "saddle": new["saddle_position"] - old["saddle_position"] - edge,
    }
    for to in HOLDS:
        moved = crossing_of_the_centreline(new, to) - crossing_of_the_centreline(old, to)
        assert moved == pytest.approx(wanted[to], abs=1e-7), to
        assert crossing_of_the_centreline(old, to) - STATION[to] == pytest.approx(old["brace_zeros"].of(to), abs=1e-7)
    assert new["plate_front"] - old["plate_front"] == pytest.approx(wanted["saddle"], abs=1e-9)
    assert new["soundhole_centre"] - old["soundhole_centre"] == pytest.approx(wanted["soundhole"], abs=1e-9)


def test_a_longer_scale_at_fret_12_moves_the_bridge_by_half(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    """By hand: 12 mm more at a 12-fret join carries the scale's end 6 mm toward the tail of the body."""
    plan = text_of("tarn-plan")
    old, new = derive_text(plan), derive_text(set_key(plan, "scale.length", "642"))
    assert new["scale_run"] - new["body_edge"] - (old["scale_run"] - old["body_edge"]) == pytest.approx(6.0)


def test_from_fret_12_to_13_the_bridge_moves_toward_the_neck(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    """By hand: 630 (2^(-12/12) - 2^(-13/12)) = 17.68 mm; the set-back found anew adds hundredths."""
    old, new = derive_text(text_of("tarn-plan")), derive_text(text_of("tarn"))
    assert old["body_saddle"] - new["body_saddle"] == pytest.approx(17.68, abs=0.1)
    moved = {move.name: move for move in shift(old, new).moves}
    assert moved["plate_front"].difference == pytest.approx(new["body_saddle"] - old["body_saddle"])
    assert "body_perimeter" not in moved
    assert "brace_places_back" not in moved
    assert [each.name for each in shift(old, new).came] == ["bridge in the lower bout"]
    assert not shift(new, derive_text(text_of("tarn"))).moves


def test_the_plate_slants_as_the_bridge_unless_it_is_told_otherwise(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    """On a fanned board its edges run along the ends of the scales; 10 degrees are a tangent of 0.17633.

    Along the longer edge of 176 mm across, the piece is 176 sqrt(1 + slant^2) long, and 40 / sqrt(1 + slant^2) wide.
    """
    fanned = text_of("tarn").replace("length = 630 ", "bass = 650\ntreble = 630\nsquare_at = 7 ")
    figures = derive_text(fanned, text_of("shop"))
    (plate,) = figures["plate_shapes"]
    (x0, y0), _, _, (x1, y1) = plate.corners
    low, high = figures["bridge_outline"].corners[:2]
    assert (x1 - x0) / (y1 - y0) == pytest.approx((high[0] - low[0]) / (high[1] - low[1]))
    told = derive_text(fanned.replace("thickness = 2.4", "thickness = 2.4\nlean = 10"), text_of("shop"))
    assert told["plate_slant"] == pytest.approx(0.17633, abs=1e-5)
    assert told["plate_length"] == pytest.approx(176 * math.sqrt(1 + 0.17633**2), abs=1e-3)
    assert told["plate_width"] == pytest.approx(40 / math.sqrt(1 + 0.17633**2), abs=1e-3)
    square = derive_text(text_of("tarn"), text_of("shop"))
    assert (square["plate_slant"], square["plate_length"], square["plate_width"]) == pytest.approx((0.0, 176, 40))
