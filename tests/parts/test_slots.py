"""Slots of any valid board: on the core, in order, deep enough everywhere, and what is left under them.

The shop's steps are followed here on points of the board: a kerf as deep as the setting says, then the arch.
"""

import math
from collections.abc import Callable
from itertools import pairwise
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from gramil.graph import Figures, Pin, derive

POINTS = 50


def half_width(figures: Figures, x: float, inset: float = 0.0) -> float:
    """Centreline to an edge at x, by proportion between nut and station; `inset` is square to the tapered edge."""
    station = figures["board_width_station"]
    assert station.beyond == 0
    run = [math.sqrt(figures[f"scale_{side}"] ** 2 - figures["scale_sideways"] ** 2) for side in ("bass", "treble")]
    low, high = (
        sum(run) / 2 * (1 - 0.5 ** (fret / 12)) for fret in (math.floor(station.fret), math.ceil(station.fret))
    )
    to_station = low + (high - low) * (station.fret % 1)
    rise = (figures["board_width"] - figures["nut_width"]) / 2
    slant = math.hypot(to_station, rise) / to_station
    return figures["nut_width"] / 2 + rise * x / to_station - inset * slant


def fall(figures: Figures, x: float, y: float) -> float:
    """The arch's fall below its crest: the radius grows straight from zero line to tail end."""
    if figures["board_curvature_nut"] == 0:
        return 0.0
    nut, end = 1 / figures["board_curvature_nut"], 1 / figures["board_curvature_end"]
    radius = nut + (end - nut) * x / figures["board_tail_position"]
    return radius - math.sqrt(radius**2 - y**2)


def ends(figures: Figures, fret: int) -> tuple[tuple[float, float], tuple[float, float]]:
    """A slot's bass and treble end."""
    bass, treble = (
        (float(figures[f"core_x_{side}"][fret]), float(figures[f"core_y_{side}"][fret])) for side in ("bass", "treble")
    )
    return bass, treble


def points(figures: Figures, fret: int) -> list[tuple[float, float]]:
    """Points along a slot, from end to end."""
    (x0, y0), (x1, y1) = ends(figures, fret)
    return [(x0 + part * (x1 - x0), y0 + part * (y1 - y0)) for part in np.linspace(0, 1, POINTS).tolist()]


def cut_depth(figures: Figures, x: float, y: float) -> float:
    """Depth at a point of the finished board, after the main kerf alone and after all is done."""
    setting, falls = figures["slot_depth_setting"], fall(figures, x, y)
    before = figures["slots_cut"] == "before arching"
    below_crest = setting - figures["slots_crest_loss"] if before else setting
    if figures["slots_bottom"] == "straight":
        return below_crest - falls
    if before:
        deepened = figures["wire_tang_depth"] + figures["slots_clearance"]
        return max(below_crest - falls, deepened)
    return setting


def slotted(figures: Figures) -> range:
    """The frets that have a slot."""
    return range(0 if figures["scale_zero_fret"] else 1, figures["scale_frets"] + 1)


@given(data=st.data())
def test_slots_end_on_the_core_inside_the_outline_in_rising_order(
    data: st.DataObject, boards: Any, as_file: Callable[..., str], derive_text: Callable[..., Figures]
) -> None:
    figures = derive_text(as_file(data.draw(boards()), "mm"))
    inset = figures["binding_thickness"] + figures["binding_purfling"]
    for side, sign in (("bass", -1), ("treble", 1)):
        previous = figures[f"edge_x_{side}"][0] if not figures["scale_zero_fret"] else -math.inf
        for fret in slotted(figures):
            x, y = figures[f"core_x_{side}"][fret], figures[f"core_y_{side}"][fret]
            assert sign * y == pytest.approx(half_width(figures, x, inset), abs=1e-9)
            x, y = figures[f"edge_x_{side}"][fret], figures[f"edge_y_{side}"][fret]
            assert sign * y == pytest.approx(half_width(figures, x), abs=1e-9)
            assert x > previous
            previous = x
    for fret in slotted(figures):
        for x, y in ends(figures, fret):
            assert inside(x, y, figures["core_outline"].corners)
            assert inside(x, y, figures["board_outline"].corners)


def inside(x: float, y: float, corners: tuple[tuple[float, float], ...], slack: float = 1e-9) -> bool:
    """Whether a point lies in a quadrilateral, once round: on the same side of every edge."""
    turns = [(bx - ax) * (y - ay) - (by - ay) * (x - ax) for (ax, ay), (bx, by) in pairwise((*corners, corners[0]))]
    return all(turn <= slack for turn in turns) or all(turn >= -slack for turn in turns)


@given(data=st.data())
def test_core_lies_inside_the_outline_by_the_inset_square_to_the_edge(
    data: st.DataObject, boards: Any, as_file: Callable[..., str], derive_text: Callable[..., Figures]
) -> None:
    figures = derive_text(as_file(data.draw(boards()), "mm"))
    inset = figures["binding_thickness"] + figures["binding_purfling"]
    core, whole = figures["core_outline"].corners, figures["board_outline"].corners
    assert all(inside(x, y, whole) for x, y in core)
    for edge, wanted in (((0, 3), inset), ((1, 2), inset), ((2, 3), inset if figures["binding_tail"] else 0)):
        for point in edge:
            gap = distance(core[point], whole[edge[0]], whole[edge[1]])
            assert gap == pytest.approx(wanted, abs=1e-9)


def distance(point: tuple[float, float], one: tuple[float, float], other: tuple[float, float]) -> float:
    """A point's distance from a line, square to it."""
    (x, y), (ax, ay), (bx, by) = point, one, other
    return abs((bx - ax) * (ay - y) - (ax - x) * (by - ay)) / math.dist(one, other)


@given(data=st.data())
def test_the_tang_never_bottoms_anywhere_along_a_slot(
    data: st.DataObject, boards: Any, as_file: Callable[..., str], derive_text: Callable[..., Figures]
) -> None:
    figures = derive_text(as_file(data.draw(boards()), "mm"))
    need = figures["wire_tang_depth"] + figures["slots_clearance"]
    shallowest = math.inf
    for fret in slotted(figures):
        depths = [cut_depth(figures, x, y) for x, y in points(figures, fret)]
        assert min(depths) >= need - 1e-9
        shallowest = min(shallowest, *depths)
        assert figures["slot_depth_at_end"][fret] == pytest.approx(min(depths[0], depths[-1]), abs=1e-9)
    assert shallowest == pytest.approx(need, abs=1e-9), "one setting serves all, and none is deeper than it must be"


@given(data=st.data())
def test_what_is_left_under_a_slot_is_thickness_less_depth(
    data: st.DataObject, boards: Any, as_file: Callable[..., str], derive_text: Callable[..., Figures]
) -> None:
    figures = derive_text(as_file(data.draw(boards()), "mm"))
    for fret in slotted(figures):
        left = [
            underside(figures, x) - fall(figures, x, y) - cut_depth(figures, x, y) for x, y in points(figures, fret)
        ]
        middle = float(figures["fret_position"][fret])
        crest = underside(figures, middle) - cut_depth(figures, middle, 0.0)
        assert figures["slot_left_at_crest"][fret] == pytest.approx(crest, abs=1e-9)
        assert figures["slot_left_at_end"][fret] == pytest.approx(min(left[0], left[-1]), abs=1e-9), "of one end"
        assert figures["slot_left_least"][fret] <= min(left) + 1e-9
        assert figures["slot_left_least"][fret] == pytest.approx(min(left), abs=0.01)
        if not figures["board_level_underside"]:
            assert figures["slot_left_least"][fret] == pytest.approx(min(left), abs=1e-9)


def underside(figures: Figures, x: float) -> float:
    """Crest to underside at x: level, or along the plane on which the edges of both ends are equally thick."""
    thickness, tail = figures["board_thickness"], figures["board_tail_position"]
    if not figures["board_level_underside"]:
        return thickness
    corners = figures["board_outline"].corners
    falls = [fall(figures, x, y) for x, y in corners]
    nut = -figures["nut_behind"] if figures["scale_zero_fret"] else figures["nut_set_forward"]
    wedge = (falls[2] + falls[3] - falls[0] - falls[1]) / 2
    return thickness - wedge * (tail - x) / (tail - nut)


@given(data=st.data())
def test_levelled_edges_agree_at_both_ends(
    data: st.DataObject, boards: Any, as_file: Callable[..., str], derive_text: Callable[..., Figures]
) -> None:
    board = data.draw(boards(fanned=False))
    board["board"]["level_underside"] = True
    figures = derive_text(as_file(board, "mm"))
    corners = figures["board_outline"].corners
    edges = [underside(figures, x) - fall(figures, x, y) for x, y in corners]
    assert max(edges) == pytest.approx(min(edges), abs=1e-9)
    for side in ("treble", "bass"):
        for fret in slotted(figures):
            x, y = figures[f"edge_x_{side}"][fret], figures[f"edge_y_{side}"][fret]
            edge = underside(figures, x) - fall(figures, x, y)
            assert figures[f"thickness_at_edge_{side}"][fret] == pytest.approx(edge, abs=1e-9)


@given(data=st.data())
def test_the_way_chosen_among_the_four_says_what_the_slots_say(
    data: st.DataObject, boards: Any, as_file: Callable[..., str], derive_text: Callable[..., Figures]
) -> None:
    figures = derive_text(as_file(data.draw(boards(fanned=False)), "mm"))
    chosen = figures.at(f'cutting_options["{figures["slots_bottom"]}, {figures["slots_cut"]}"]')
    frets = slotted(figures)
    assert chosen.setting == pytest.approx(figures["slot_depth_setting"], abs=1e-12)
    crest = [underside(figures, x) - cut_depth(figures, x, 0.0) for x in figures["fret_position"][frets.start :]]
    assert chosen.left_at_crest == pytest.approx(min(crest), abs=1e-9)
    at_ends = [(x, y) for fret in frets for x, y in ends(figures, fret)]
    left = [underside(figures, x) - fall(figures, x, y) - cut_depth(figures, x, y) for x, y in at_ends]
    assert chosen.left_at_end == pytest.approx(min(left), abs=1e-9)
    assert figures["slot_kerf_at_end"][frets.start :].min() == pytest.approx(chosen.pilot_at_end, abs=1e-9)


def test_a_saw_set_deeper_leaves_less_under_every_slot(example: Callable[[str], Figures]) -> None:
    """0.1 mm deeper than drawn, as measured at the saw: 0.1 mm less is left, and the kerf is that much deeper."""
    drawn = example("tarn")
    measured = {"slot_depth_setting": Pin(drawn["slot_depth_setting"] + 0.1, "measured")}
    made = derive(drawn.graph, drawn.base, drawn.origins, measured, drawn.lengths)
    assert drawn["slot_left_least"][7] - made["slot_left_least"][7] == pytest.approx(0.1)
    assert made["slot_kerf_at_end"][7] - drawn["slot_kerf_at_end"][7] == pytest.approx(0.1)
