"""Bevels for arm and ribs on *Tarn*: what they take of rim, side and binding, reckoned by hand or by a library."""

import math
import re
from collections.abc import Callable

import numpy as np
import pytest
import shapely

from gramil.change.settled import settled
from gramil.faults import MakersFault
from gramil.graph import Figures, Pin
from gramil.prints.whole import findings_of

ARM = '\n[arm_bevel]\nwidth = 28\ndrop = 16\nlength = 320\nplace = -15\nveneer_wood = "walnut"\n'
RIB = '\n[rib_bevel]\nwidth = 18\ndrop = 12\nlength = 240\nplace = -60\nblock = "laminated"\nbinding = "both"\n'

TOP = '\n[top]\nradius = "flat"\n'


@pytest.fixture(scope="module")
def bevelled(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Figures:
    return derive_text(text_of("tarn") + ARM + RIB)


@pytest.fixture(scope="module")
def plain(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Figures:
    return derive_text(text_of("tarn"))


def named(rows, name: str):
    return next(each for each in rows if each.name == name)


def half_of(figures: Figures) -> shapely.LineString:
    """The bass half as the library has it, drawn above the axis, from the neck on."""
    (outline,) = figures["body_outlines"]
    return shapely.LineString(outline.half.polyline(1e-4))


def test_their_middles_lie_from_the_widest_place(bevelled: Figures) -> None:
    half = half_of(bevelled)
    along = np.arange(300.0, 700.0, 0.05)
    widest = along[np.argmax([half.interpolate(each).y for each in along])]
    arm, rib = bevelled["bevel_list"]
    assert (arm.middle, rib.middle) == pytest.approx((widest - 15, widest - 60), abs=0.3)
    assert (arm.start, arm.stop) == (arm.middle - 160, arm.middle + 160)
    assert (arm.plate, rib.plate) == ("top", "back")
    assert math.tan(arm.slope) == pytest.approx(16 / 28)
    assert arm.across == pytest.approx(math.hypot(28, 16))


def test_the_block_is_larger_than_the_lining_by_what_is_cut(bevelled: Figures) -> None:
    """Similar triangles: under a plate t thick the cut is w (d - t) / d wide, inside a wall d (w - wall) / w deep."""
    wall, linings, high = (float(bevelled[each]) for each in ("body_wall", "body_linings", "body_linings_height"))
    top, back = float(bevelled["top_thickness"]), float(bevelled["body_back_thickness"])
    arm, rib = bevelled["bevelled_blocks"]
    assert arm.width == pytest.approx(linings + 28 * (16 - top) / 16 - wall)
    assert arm.height == pytest.approx(high + 16 * (28 - wall) / 28 - top)
    assert (arm.glued, arm.under) == pytest.approx((linings, high))
    reach = 2.0
    assert float(bevelled["back_binding_thickness"]) == reach
    assert rib.width == pytest.approx(linings + 18 * (12 - back) / 12 + reach - wall)
    assert rib.glued == pytest.approx(linings)
    assert (arm.layers, rib.layers) == (1, math.ceil(rib.width / 2))


@pytest.mark.parametrize(
    ("address", "read", "key"),
    [
        ('bevelled_blocks["arm"].width', 25.5, "block_width = 25.5"),
        ('bevelled_blocks["arm"].height', 24.0, "block_height = 24"),
        ('bevel_list["arm"].length', 312.0, "length = 312"),
        ('bevel_list["arm"].middle', 5.0, "place = -10"),
    ],
)
def test_what_is_read_is_as_if_it_had_been_described_so(
    address: str, read: float, key: str, bevelled: Figures, text_of, derive_text
) -> None:
    """The middle is read 5 mm farther from the neck than it was drawn."""
    value = bevelled.at(address) + read if address.endswith("middle") else read
    made = settled(bevelled.with_pins({address: Pin(value, "today")}))
    name = key.partition(" ")[0]
    own = re.sub(rf"\n{name} = .*", "", ARM) + key
    wanted = derive_text(text_of("tarn") + own + RIB)
    for each in ("bevel_list", "bevelled_blocks", "bevelled_bindings", "bevel_marks"):
        for one, other in zip(made[each], wanted[each], strict=True):
            for field, got in vars(one).items():
                assert got == pytest.approx(vars(other)[field], abs=1e-6) if not isinstance(got, str) else True, field
    assert made["body_air_volume"] == pytest.approx(wanted["body_air_volume"], rel=1e-9)


def test_the_blocks_take_air(bevelled: Figures, plain: Figures) -> None:
    """By hand: each block runs from the lining's width to its own and back, (1 + cos) / 2, so half way in the mean.

    The air's spring is stiffer by as much as there is less of it, and its pitch goes by the root of that.
    """
    linings, high = float(bevelled["body_linings"]), float(bevelled["body_linings_height"])
    blocks = zip(bevelled["bevelled_blocks"], (320, 240), strict=True)
    more = sum(length * ((linings + each.width) / 2 * each.height - linings * high / 2) for each, length in blocks)
    taken = plain["body_air_volume"] - bevelled["body_air_volume"]
    assert taken == pytest.approx(more, rel=1e-6)
    assert 0.05e6 < taken < 0.4e6
    share = plain["body_air_volume"] / bevelled["body_air_volume"]
    assert bevelled["body_air_rigid"] / plain["body_air_rigid"] == pytest.approx(math.sqrt(share), rel=1e-9)


def test_a_block_as_described_is_judged(text_of, derive_text) -> None:
    """24 mm from the side's face to the block's inside, 23 of them cut under the top: too little is left."""
    figures = derive_text(text_of("tarn") + ARM + "block_width = 22\nblock_height = 15\n")
    (block,) = figures["bevelled_blocks"]
    wall, top = float(figures["body_wall"]), float(figures["top_thickness"])
    assert block.glued == pytest.approx(wall + 22 - 28 * (16 - top) / 16)
    found = {each.name: each.severity for each in findings_of(figures)}
    assert found["plate inside the arm bevel"] == "stop"
    assert found["block under the arm bevel"] == "caution"


def test_the_side_left_beneath_both(bevelled: Figures) -> None:
    """Depth by depth along the side, less both bevels or the other edge's binding: hundredths of a millimetre."""
    (side,) = bevelled["body_sides"]
    along = np.linspace(200.0, 700.0, 4001)
    taken = []
    for row, plate in zip(bevelled["bevel_list"], ("top_thickness", "body_back_thickness"), strict=True):
        share = np.where(
            abs(along - row.middle) < row.length / 2, np.cos(math.pi * (along - row.middle) / row.length), 0
        )
        taken.append(np.maximum(0.0, row.drop * share**2 - float(bevelled[plate])))
    depth = side.depth(along)
    covers = {each.name: each.cover for each in bevelled["channel_edges"]}
    arm, rib = bevelled["bevel_list"]
    at = abs(along - arm.middle) <= arm.length / 2
    assert arm.left == pytest.approx((depth - taken[0] - np.maximum(taken[1], covers["back"]))[at].min(), abs=0.02)
    at = abs(along - rib.middle) <= rib.length / 2
    assert rib.left == pytest.approx((depth - taken[1] - np.maximum(taken[0], covers["top"]))[at].min(), abs=0.02)


def test_the_binding_stops_or_is_led_round(bevelled: Figures) -> None:
    over, length = float(bevelled["limit_strip_over"]), float(bevelled["side_length"])
    arm, rib = bevelled["bevel_list"]
    first, second = bevelled["bevelled_bindings"]
    assert (first.before, first.after) == pytest.approx((arm.start + over, length - arm.stop + over))
    assert (first.on_plate, first.on_side) == (0.0, 0.0)
    assert (second.on_plate, second.on_side) == pytest.approx((rib.on_plate + 2 * over, rib.on_side + 2 * over))


def test_braces_in_the_block_by_a_library(bevelled: Figures) -> None:
    """Each brace's strip to the linings less the block's plan, drawn by the library's own offsets."""
    half, arm = half_of(bevelled), named(bevelled["bevel_list"], "arm")
    wall, linings = float(bevelled["body_wall"]), float(bevelled["body_linings"])
    more = named(bevelled["bevelled_blocks"], "arm").width - linings
    dots = []
    for along in np.linspace(arm.start, arm.stop, 1200):
        deep = wall + linings + more * math.cos(math.pi * (along - arm.middle) / arm.length) ** 2
        place = half.interpolate(along)
        dots.append(shapely.Point(place.x, -place.y).buffer(deep, 32))
    block = shapely.union_all(dots)
    told = {each.name: each.inside for each in bevelled["bevelled_braces"] if each.bevel == "arm"}
    for brace in bevelled["brace_list"]:
        strip = shapely.Polygon(brace.footprint)
        if brace.plate != "top" or not strip.intersects(block):
            assert brace.name not in told or told[brace.name] < 0.05 or brace.plate == "back"
            continue
        unit = np.array([brace.stop_x - brace.start_x, brace.stop_y - brace.start_y]) / brace.length
        lost = strip.intersection(block)
        across = [np.dot(point, unit) for point in lost.exterior.coords] if lost.area > 0.5 else [0.0, 0.0]
        assert max(across) - min(across) >= told.get(brace.name, 0.0) - 0.5, brace.name
        if lost.area > 20:
            assert brace.name in told


def test_the_veneer_net_on_its_drawing(bevelled: Figures) -> None:
    """The drawing's third ring is the net: as large as the face, and the blank goes round it with 8 mm over."""
    for name, kerf in (("arm", 0.15), ("rib", 0.15)):
        rings = [
            shapely.Polygon(mark.points)
            for mark in bevelled[f"drawing_bevel_{name}"].marks
            if getattr(mark, "layer", "") == "cut"
        ]
        assert len(rings) == 3
        row = named(bevelled["bevel_list"], name)
        allowed = row.area + (row.on_plate + row.on_side) * kerf / 2
        assert rings[2].area == pytest.approx(allowed, rel=2e-3)
        low_x, low_y, high_x, high_y = rings[2].bounds
        veneer = named(bevelled["bevel_veneers"], name)
        assert (veneer.length - 16, veneer.width - 16) == pytest.approx((high_x - low_x, high_y - low_y), abs=0.6)
        assert float(bevelled[f"bevel_veneer_length_{name}"]) == veneer.length
        assert float(bevelled[f"bevel_veneer_width_{name}"]) == veneer.width


def test_the_lines_on_plans_and_on_the_flat_side(bevelled: Figures) -> None:
    """On the face plan, where the bound top's inner line goes along it, and from inside 28 mm from the outline on the
    bass side at most, and 18 on the back; it begins on the outline. On the flat side 16 less the top."""
    (outline,) = bevelled["body_outlines"]
    ring = shapely.LinearRing(outline.polyline(1e-4))
    for drawing, bass, deep in (
        ("drawing_face_plan", -1.0, 28.0),
        ("drawing_top_inside", 1.0, 28.0),
        ("drawing_back_inside", -1.0, 18.0),
    ):
        marked = [each for each in bevelled[drawing].marks if getattr(each, "layer", "") == "markers"]
        *_, line = [each.points for each in marked if len(getattr(each, "points", ())) >= 257]
        assert drawing == "drawing_face_plan" or all(bass * y > 0 for _, y in line)
        apart = [ring.distance(shapely.Point(x, y)) for x, y in line if bass * y > 0]
        assert (min(apart), max(apart)) == (pytest.approx(0.0, abs=0.01), pytest.approx(deep, abs=0.01))
    on_side = [each for each in bevelled["drawing_side"].marks if getattr(each, "layer", "") == "markers"]
    assert len(on_side) == 2
    lines = [shapely.LineString(each.points) for each in on_side]
    for words in (each for each in bevelled["drawing_side"].marks if getattr(each, "text", "").endswith("'s edge")):
        box = shapely.box(words.at[0], words.at[1], words.at[0] + 25, words.at[1] + 2.6)
        assert min(box.distance(each) for each in lines) > 1.0
    arm = named(bevelled["bevel_list"], "arm")
    x, y = max(on_side[0].points, key=lambda point: -abs(point[0] - arm.middle))
    (side,) = bevelled["body_sides"]
    assert y == pytest.approx(float(side.upper_edge(x)) - (16 - float(bevelled["top_thickness"])), abs=0.01)


def test_a_left_handed_one_is_its_mirror_image(text_of, derive_text, bevelled: Figures) -> None:
    left = derive_text(text_of("tarn").replace('handed = "right"', 'handed = "left"') + ARM + RIB)
    assert left["bevel_list"] == bevelled["bevel_list"]
    assert left["bevelled_blocks"] == bevelled["bevelled_blocks"]
    for name in ("drawing_bevel_arm", "drawing_bevel_rib"):
        ours, theirs = (
            [mark.points for mark in each[name].marks if getattr(mark, "layer", "") == "cut"]
            for each in (bevelled, left)
        )
        for one, other in zip(ours, theirs, strict=True):
            mirrored = shapely.Polygon([(-x, y) for x, y in one])
            assert mirrored.symmetric_difference(shapely.Polygon(other)).area < 0.01


def test_all_lengths_doubled_double_all_lengths(text_of, derive_text) -> None:
    """Of the outline, the depths and the bevels, under flat plates; other lengths stay."""
    flat = text_of("tarn").replace('back_radius = "15 ft"', 'back_radius = "flat"') + TOP
    one, text = derive_text(flat + ARM + RIB), flat + ARM + RIB
    rows = re.search(r"\[body\]\noutline = \[.*?\n\]", text, re.DOTALL)
    assert rows is not None
    doubled = re.sub(r"\[(\d+), (\d+)\]", lambda pair: f"[{2 * int(pair[1])}, {2 * int(pair[2])}]", rows[0])
    text = text.replace(rows[0], doubled)
    text = text.replace("depth_neck = 94", "depth_neck = 188").replace("depth_tail = 104", "depth_tail = 208")
    for key, value in (("width", 28), ("drop", 16), ("length", 320), ("place", -15)):
        text = text.replace(f"\n{key} = {value}\n", f"\n{key} = {2 * value}\n")
    for key, value in (("width", 18), ("drop", 12), ("length", 240), ("place", -60)):
        text = text.replace(f"\n{key} = {value}\n", f"\n{key} = {2 * value}\n")
    twice = derive_text(text)
    for ours, theirs in zip(one["bevel_list"], twice["bevel_list"], strict=True):
        for field in ("width", "drop", "length", "start", "middle", "stop", "across", "on_plate"):
            assert getattr(theirs, field) == pytest.approx(2 * getattr(ours, field), rel=2e-5), field
        assert theirs.area == pytest.approx(4 * ours.area, rel=2e-5)


def test_nothing_of_them_stands_on_a_body_without(plain: Figures) -> None:
    for name in ("bevel_laid", "bevel_list", "bevel_marks", "bevel_patterns", "bevel_veneers"):
        assert plain[name] == ()
    assert (plain["bevelled_blocks"], plain["bevelled_bindings"], plain["bevelled_braces"]) == ((), (), ())
    assert not plain["drawing_bevel_arm"].marks
    assert plain["setup_bevel"].closed == plain["setup_bevel_block"].closed == "the body has no bevel"
    assert not {each.name for each in findings_of(plain) if "bevel" in each.name}


@pytest.mark.parametrize(
    ("table", "words"),
    [
        ("width = 28\ndrop = 16\n", "width, drop and length together"),
        ("width = 28\ndrop = 16\nlength = 320\nplace = 300\n", "mm past the middle of the tail"),
        ("width = 28\ndrop = 16\nlength = 700\nplace = -200\n", "mm past the middle of the neck"),
        ("width = 160\ndrop = 16\nlength = 320\n", "bends too tightly"),
        ("width = 28\ndrop = 110\nlength = 320\n", "Less than side and plate"),
    ],
)
def test_what_cannot_be_is_refused(table: str, words: str, text_of, derive_text) -> None:
    with pytest.raises(MakersFault, match=words):
        derive_text(text_of("tarn") + "\n[arm_bevel]\n" + table)


def test_a_bevel_on_no_body_is_refused(text_of, derive_text) -> None:
    text = re.sub(r"\[body\].*?(?=\n\[work\])", "", text_of("tarn"), flags=re.DOTALL)
    with pytest.raises(MakersFault, match="there is no body to bevel"):
        derive_text(text + ARM)


def test_one_in_the_plate_alone_is_told(text_of, derive_text) -> None:
    figures = derive_text(text_of("tarn") + "\n[arm_bevel]\nwidth = 5\ndrop = 2\nlength = 200\n")
    (found,) = (each for each in findings_of(figures) if each.name == "slope of the arm bevel")
    assert found.severity == "note"
    assert "round-over" in str(found.says)
    assert figures["bevelled_blocks"][0].width == float(figures["body_linings"])


PORT = '\n[[port]]\nname = "ear"\nside = "bass"\ncentre = {}\nbelow = 45\nalong = 40\nacross = 30\n'


def test_a_port_under_the_bevel_keeps_off_its_block(text_of, derive_text, bevelled: Figures) -> None:
    """Straight down the flat side: from 30 below the top's edge, where the port's edge is, less the block's height."""
    arm, block = bevelled["bevel_list"][0], bevelled["bevelled_blocks"][0]
    figures = derive_text(text_of("tarn") + ARM + PORT.format(arm.middle))
    (gap,) = figures["bevelled_ports"]
    assert gap.to == "arm bevel's block"
    assert gap.room == pytest.approx(45 - 15 - block.height, abs=0.15)
    found = {each.name: each.severity for each in findings_of(figures)}
    assert found["ear and arm bevel's block"] == "caution"
    cut = derive_text(text_of("tarn") + ARM + PORT.format(arm.middle).replace("below = 45", "below = 32"))
    assert {each.name: each.severity for each in findings_of(cut)}["ear and arm bevel's block"] == "stop"


def test_holes_and_the_block_by_a_library(bevelled: Figures) -> None:
    """The soundhole's edge to the block, whose inside is laid off square to short chords of the outline."""
    half, arm = half_of(bevelled), named(bevelled["bevel_list"], "arm")
    deep = float(bevelled["body_wall"]) + float(bevelled["body_linings"])
    more = bevelled["bevelled_blocks"][0].width - float(bevelled["body_linings"])
    inner = []
    for along in np.linspace(arm.start, arm.stop, 600):
        before, place, after = (np.array(half.interpolate(along + step).coords[0]) for step in (-0.2, 0.0, 0.2))
        onward = (after - before) / math.dist(after, before)
        reach = deep + more * math.cos(math.pi * (along - arm.middle) / arm.length) ** 2
        inner.append((place[0] + reach * onward[1], -(place[1] - reach * onward[0])))
    hole = bevelled["opening_list"][0]
    disc = shapely.Point(hole.x, hole.y).buffer(hole.along / 2, 128)
    gap = bevelled["bevelled_holes"][0]
    assert gap.room == pytest.approx(disc.distance(shapely.LineString(inner)), abs=0.05)


def test_the_veneer_follows_the_bevel_as_it_was_cut(bevelled: Figures, text_of, derive_text) -> None:
    """A bevel read 27 mm wide and 15 mm down has the veneer of one described so."""
    made = settled(
        bevelled.with_pins({"arm_bevel_width": Pin(27.0, "2026-11-02"), "arm_bevel_drop": Pin(15.0, "2026-11-02")})
    )
    as_cut = ARM.replace("width = 28", "width = 27").replace("drop = 16", "drop = 15")
    wanted = derive_text(text_of("tarn") + as_cut + RIB)
    assert made["bevel_veneers"] == wanted["bevel_veneers"]
    assert made["bevel_veneers"] != bevelled["bevel_veneers"]


@pytest.mark.parametrize(("past", "below"), [(0.0, 52.0), (26.0, 35.0), (-26.0, 35.0), (200.0, 40.0)])
def test_a_ports_patch_ends_at_the_block_behind_a_bevel(
    past: float, below: float, text_of: Callable[[str], str], derive_text: Callable[..., Figures], bevelled: Figures
) -> None:
    """Under it, past either end of it (counted from that end), or far off: two rectangles on the flat side that touch
    at the most. No patch is cut smaller than its port, and none that lies clear is cut at all."""
    arm = bevelled["bevel_list"][0]
    along = arm.middle if past == 0 else arm.stop + past if past > 0 else arm.start + past
    figures = derive_text(text_of("tarn") + ARM + PORT.format(along).replace("45", str(below)))
    (port,), (block,) = figures["port_list"], figures["bevelled_blocks"]
    top = port.height + port.below
    patch = shapely.Polygon(port.patch_corners)
    behind = shapely.box(arm.start, top - block.height, arm.stop, top)
    assert patch.intersection(behind).area == pytest.approx(0, abs=1e-6)
    assert port.patch_along >= port.along
    assert port.patch_across >= port.across
    without = derive_text(text_of("tarn") + PORT.format(along).replace("45", str(below)))["port_list"][0]
    assert (port.patch_along * port.patch_across < without.patch_along * without.patch_across) == (abs(past) < 100)
