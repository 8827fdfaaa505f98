"""Openings on an instrument: where they lie, how near they come to what is there, and the air that sounds in them."""

import math
from collections.abc import Callable
from itertools import product

import numpy as np
import pytest
import shapely
import tomlkit
from scipy.special import ellipe
from tests.with_openings import opened, oval

from gramil.graph import Figures
from gramil.parts.opening_records import nearest_gap
from gramil.prints.whole import findings_of

TextOf = Callable[[str], str]
Derive = Callable[..., Figures]
SPEED = 1000 * math.sqrt(1.4 * 8.314462618 * 293.15 / 0.028965)
"""Of sound in dry air at 20 degrees, mm/s, by the ideal gas."""


@pytest.fixture(scope="module")
def tarn(text_of: TextOf, derive_text: Derive) -> Figures:
    return derive_text(text_of("tarn"))


@pytest.fixture(scope="module")
def several(text_of: TextOf, derive_text: Derive) -> Figures:
    return derive_text(opened(text_of("tarn")))


def polygon(opening: object) -> shapely.Polygon:
    return shapely.Polygon(opening.outline)  # type: ignore[attr-defined]


def test_the_air_of_two_openings_by_the_closed_form(text_of: TextOf, derive_text: Derive, tarn: Figures) -> None:
    """Two round holes of radii 46 in the top (2.8 thick) and 12.5 in the side (2.1): their conductances add."""
    port = '\n[[port]]\nname = "port"\nside = "bass"\ncentre = 560\ndiameter = 25\npatch = 0\n'
    figures = derive_text(text_of("tarn") + port)
    holes = [math.pi * r**2 / (t + 1.7 * r) for r, t in ((46.0, 2.8), (12.5, 2.1))]
    volume = figures["body_air_volume"]
    assert figures["body_air_openings"] == pytest.approx(holes)
    assert figures["body_air_rigid"] == pytest.approx(SPEED / (2 * math.pi) * math.sqrt(sum(holes) / volume))
    assert tarn["body_air_rigid"] == pytest.approx(SPEED / (2 * math.pi) * math.sqrt(holes[0] / volume))
    assert figures["body_air_rigid"] > tarn["body_air_rigid"]


def test_an_oval_by_its_hydraulic_radius(several: Figures) -> None:
    """Half axes 48 and 38: pi a b over half of 4 a E(1 - b²/a²), in a top 2.8 thick."""
    area, edge = math.pi * 48 * 38, 4 * 48 * float(ellipe(1 - (38 / 48) ** 2))
    radius = 2 * area / edge
    main = several["opening_list"][0]
    assert (main.area, main.radius) == pytest.approx((area, radius))
    assert several["body_air_openings"][0] == pytest.approx(area / (2.8 + 1.7 * radius))


def test_a_port_through_side_and_patch(several: Figures) -> None:
    """A 60 by 36 oval in a side 2.1 thick with 1.5 of patch."""
    area, edge = math.pi * 30 * 18, 4 * 30 * float(ellipe(1 - 0.36))
    port = several["port_list"][0]
    assert port.plug == pytest.approx(3.6 + 1.7 * 2 * area / edge)
    assert several["body_air_openings"][3] == pytest.approx(area / port.plug)


def test_without_a_hole_no_air_sounds(text_of: TextOf, derive_text: Derive) -> None:
    text = text_of("tarn")
    start, stop = text.index("[soundhole]"), text.index("# Distances along are from what a brace is held to")
    figures = derive_text(text[:start] + text[stop:].replace('held_to = "soundhole"', 'held_to = "saddle"'))
    assert math.isnan(figures["body_air_rigid"])
    assert figures["body_air_openings"] == ()


def test_where_it_lies_is_seen_by_its_middle(several: Figures) -> None:
    for each, x, y in zip(several["opening_list"], (165, 118, 130), (0, -84, 90), strict=True):
        assert (each.x, each.y) == (x, y)
        assert polygon(each).contains(shapely.Point(x, y))


def test_to_braces_as_a_library_has_it(several: Figures) -> None:
    braces = [shapely.Polygon(each.footprint) for each in several["brace_list"] if each.plate == "top"]
    for gap in several["opening_to_braces"]:
        hole = next(polygon(each) for each in several["opening_list"] if each.name == gap.name)
        assert gap.room == pytest.approx(min(hole.distance(each) for each in braces), abs=0.01)
    legs = [shapely.Polygon(each.footprint) for each in several["brace_list"] if each.name in several["brace_legs"]]
    main = polygon(several["opening_list"][0])
    assert several["room_crossing_to_hole"] == pytest.approx(min(main.distance(each) for each in legs), abs=0.01)


def test_to_linings_blocks_board_and_one_another(several: Figures) -> None:
    (shell,) = several["body_shells"]
    lined = shapely.Polygon(shell.lined.polyline(0.001)).exterior
    board = shapely.Polygon([(x - several["body_edge"], y) for x, y in several["board_outline"].corners])
    holes = {each.name: polygon(each) for each in several["opening_list"]}
    for gap in several["opening_to_linings"]:
        assert gap.room == pytest.approx(holes[gap.name].distance(lined), abs=0.01)
    assert {each.name for each in several["opening_to_board"]} == {"ear", "eye"}
    for gap in several["opening_to_board"]:
        assert gap.room == pytest.approx(holes[gap.name].distance(board), abs=0.01)
    ringed = {"soundhole": holes["soundhole"].buffer(12, 200), "ear": holes["ear"].buffer(7, 200), "eye": holes["eye"]}
    for gap in several["opening_to_others"]:
        assert gap.room == pytest.approx(ringed[gap.name].distance(ringed[gap.to]), abs=0.02)
    rim = shapely.Polygon(shell.side.outline.polyline(0.001)).exterior
    edges = {each.name: each.room for each in several["opening_to_edge"]}
    assert edges == {name: pytest.approx(ringed[name].distance(rim), abs=0.06) for name in ("soundhole", "ear")}


def test_a_port_on_its_side(several: Figures) -> None:
    """Half way down where it does not say; its room is what the side's own edges leave, 14 of linings taken off."""
    (side,) = several["body_sides"]
    port, peep = several["port_list"]
    upper, lower = float(side.upper_edge(210.0)), float(side.lower_edge(210.0))
    assert port.below == pytest.approx((upper - lower) / 2)
    assert peep.height == pytest.approx(float(side.upper_edge(560.0)) - 40)
    along = np.linspace(180, 240, 2001)
    half = 18 * np.sqrt(np.maximum(0, 1 - ((along - 210) / 30) ** 2))
    over = side.upper_edge(along) - (port.height + half) - 14
    under = (port.height - half) - side.lower_edge(along) - 14
    assert several["port_to_linings"][0].room == pytest.approx(min(over.min(), under.min()), abs=0.005)
    bend = 1 / np.abs(side.outline.curvature(np.linspace(168, 252, 4001))).max()
    assert several["port_bends"][0].room == pytest.approx(bend, rel=0.01)


def test_a_port_keeps_off_a_bevels_block(text_of: TextOf, derive_text: Derive) -> None:
    """Corrie's port lies beside its bevel, which is 300 long: told once, by a library's distance between the two on the
    flat side."""
    figures = derive_text(text_of("corrie"), text_of("shop"))
    (gap,), (bevel,), (block,) = (figures[name] for name in ("bevelled_ports", "bevel_list", "bevelled_blocks"))
    along = np.linspace(bevel.middle - 150, bevel.middle + 150, 3001)
    edge = figures["body_sides"][0].upper_edge(along)
    ring = [*zip(along, edge, strict=True), *zip(along[::-1], edge[::-1] - block.height, strict=True)]
    wanted = shapely.Polygon(figures["port_bass"][0].outline).distance(shapely.Polygon(ring))
    assert (gap.to, gap.room) == ("arm bevel's block", pytest.approx(wanted, abs=0.01))
    said = [each.name for each in findings_of(figures) if "port and" in each.name and "bevel" in each.name]
    assert said == ["port and arm bevel's block"]


def test_a_ports_patch_ends_at_the_linings(several: Figures) -> None:
    port = several["port_list"][0]
    assert (port.patch_along, port.patch_across) == pytest.approx((84.0, 60.0))


def test_what_is_drawn_of_a_hole_is_that_hole(several: Figures) -> None:
    """Areas of the plan's edges and of the templates' windows, by a library."""
    edges = [each for each in several["piece_openings"] if each.layer == "outline"]
    areas = [shapely.Polygon(each.points).area for each in edges if hasattr(each, "points")]
    assert areas == pytest.approx([each.area for each in several["opening_list"][:2]], rel=1e-3)
    cut = [shapely.Polygon(each.points).area for each in several["drawing_openings"].marks if each.layer == "cut"]
    for each in several["opening_list"][:2]:
        assert min(abs(area / each.area - 1) for area in cut) < 1e-4


def mirrored(text: str) -> str:
    return (
        opened(text)
        .replace("aside = -84", "aside = 84").replace("aside = 90", "aside = -90").replace("lean = 20", "lean = -20")
        .replace('side = "bass"', 'side = "TREBLE"').replace('side = "treble"', 'side = "bass"')
        .replace("TREBLE", "treble")
    )  # fmt: skip


def test_left_is_the_mirror_of_right(text_of: TextOf, derive_text: Derive, several: Figures) -> None:
    """Each to its mirror's place on a body alike left and right: the same rooms, and the same air."""
    text = "\n".join(line for line in text_of("tarn").split("\n"))
    other = derive_text(mirrored(text))
    for name in ("opening_to_linings", "opening_to_blocks", "port_to_linings", "port_to_blocks", "port_bends"):
        ours, theirs = ([each.room for each in figures[name]] for figures in (several, other))
        assert theirs == pytest.approx(ours, abs=1e-6), name
    assert other["body_air_rigid"] == pytest.approx(several["body_air_rigid"])
    for one, two in zip(several["opening_list"], other["opening_list"], strict=True):
        turned = shapely.Polygon([(x, -y) for x, y in one.outline])
        assert polygon(two).symmetric_difference(turned).area < 1e-6


def test_a_left_handed_guitars_templates_are_turned_over(
    text_of: TextOf, derive_text: Derive, several: Figures
) -> None:
    text = opened(text_of("tarn")).replace('handed = "right"', 'handed = "left"')
    left = derive_text(text)
    assert left["opening_list"] == several["opening_list"]
    ours, theirs = (
        [np.array(each.points) for each in figures["drawing_openings"].marks if each.layer == "cut"]
        for figures in (several, left)
    )
    for one, two in zip(ours, theirs, strict=True):
        assert two == pytest.approx(one * (1.0, -1.0))


def test_the_plans_oval_is_as_long_and_wide_as_the_text_says(text_of: TextOf, derive_text: Derive) -> None:
    figures = derive_text(oval(text_of("tarn")))
    assert (figures["soundhole_long"], figures["soundhole_wide"]) == (76, 96)
    assert figures["soundhole_edge_neck"] == 165 - 38
    (ring,) = figures["rosette_rings"]
    assert (ring.inner, ring.outer) == (108, 120)


LENGTHS = {
    "body": ("depth_neck", "depth_tail", "wall", "linings", "linings_height", "neck_block", "neck_block_width",
             "tail_block", "tail_block_width"),
    "top": ("thickness",),
    "soundhole": ("centre", "along", "across"),
    "opening": ("centre", "aside", "along", "across", "diameter", "corner"),
    "rosette": ("gap", "width"),
    "port": ("centre", "below", "along", "across", "diameter", "patch", "patch_reach"),
}  # fmt: skip


def test_all_lengths_doubled_double_all_lengths(text_of: TextOf, derive_text: Derive) -> None:
    """Of the body and what is open in it, under flat plates; the air then sounds an octave lower."""
    text = tomlkit.parse(opened(text_of("tarn")))
    text["top"] = {"radius": "flat", "thickness": 2.8}
    text["body"]["back_radius"] = "flat"
    text["body"] |= {"linings": 6, "linings_height": 14, "neck_block_width": 75, "tail_block_width": 80}
    text["opening"][0]["corner"] = 5
    for port in text["port"]:
        port["patch_reach"] = 12
    text["port"][0]["patch"] = 1.5
    text.pop("brace")
    one = derive_text(tomlkit.dumps(text))
    text["body"]["outline"] = [[2 * x, 2 * y] for x, y in text["body"]["outline"]]
    for table, keys in LENGTHS.items():
        rows = text[table] if isinstance(text[table], list) else [text[table]]
        for row, key in product(rows, keys):
            if key in row:
                row[key] = 2 * row[key]
    two = derive_text(tomlkit.dumps(text))
    for name in ("opening_to_linings", "opening_to_blocks", "opening_to_others", "opening_to_edge", "opening_reach",
                 "port_to_linings", "port_to_blocks", "port_bends"):  # fmt: skip
        ours, theirs = ([each.room for each in figures[name]] for figures in (one, two))
        assert theirs == pytest.approx([2 * each for each in ours], rel=2e-3, abs=0.02), name
    for ours, theirs in zip(
        (*one["opening_list"], *one["port_list"]), (*two["opening_list"], *two["port_list"]), strict=True
    ):
        assert (theirs.radius, theirs.plug, theirs.edge) == pytest.approx(
            (2 * ours.radius, 2 * ours.plug, 2 * ours.edge)
        )
        assert theirs.area == pytest.approx(4 * ours.area)
    assert two["body_air_rigid"] == pytest.approx(one["body_air_rigid"] / 2, rel=1e-6)


@pytest.mark.parametrize("hair", [0.0, 1e-13, -1e-13])
def test_rounding_does_not_choose_between_two_as_near_as_each_other(hair: float) -> None:
    """A guitar and its mirror image name the same of two braces that lie alike to the left and to the right."""
    for rooms in ((("treble leg", 7.0 + hair), ("bass leg", 7.0)), (("bass leg", 7.0), ("treble leg", 7.0 + hair))):
        assert [each.to for each in nearest_gap("hole", rooms)] == ["bass leg"]
    assert [each.to for each in nearest_gap("hole", (("treble leg", 6.99), ("bass leg", 7.0)))] == ["treble leg"]
