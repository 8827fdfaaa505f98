"""The body drawn: outlines, braces and the side lie where the dimensions say, and read back from the DXF."""

import io
import math
from collections.abc import Callable
from itertools import pairwise

import ezdxf
import pytest
from tests.drawings.conftest import shop_allowing

from gramil.drawings.marks import Circle, Line, Polyline, Words
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.writers.dxf import dxf_bytes


@pytest.fixture
def whole(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Callable[..., Figures]:
    def derived(*changes: tuple[str, str]) -> Figures:
        text = text_of("tarn")
        for old, new in changes:
            text = text.replace(old, new)
        return derive_text(text, shop_allowing(text_of("shop"), "the machine"))

    return derived


def layer(drawing, name, kind=Polyline):
    return [mark for mark in drawing.marks if isinstance(mark, kind) and mark.layer == name]


def read_back(figures: Figures, name: str):
    text = dxf_bytes(figures[name], Formatter(figures).text).decode("utf-8")
    return ezdxf.read(io.StringIO(text))


def length_of(points) -> float:
    return sum(math.dist(one, other) for one, other in zip(points, [*points[1:], points[0]], strict=True))


def test_the_faces_outline_has_the_bodys_perimeter_in_the_dxf(whole) -> None:
    tarn = whole()
    runs = list(read_back(tarn, "drawing_face_plan").modelspace().query("LWPOLYLINE"))
    (outline,) = [each for each in runs if each.dxf.layer == "outline"]
    assert outline.closed
    pieces = [
        list(each.flattening(1e-4)) if each.dxftype() == "ARC" else [each.dxf.start, each.dxf.end]
        for each in outline.virtual_entities()
    ]
    long = sum(math.dist(one, other) for piece in pieces for one, other in pairwise(piece))
    assert long == pytest.approx(tarn["body_perimeter"], abs=0.5)
    assert max(place.x for piece in pieces for place in piece) == pytest.approx(490.0, abs=0.05)


def test_soundhole_and_pins_are_circles_in_the_dxf(whole) -> None:
    tarn = whole()
    circles = list(read_back(tarn, "drawing_face_plan").modelspace().query("CIRCLE"))
    (hole,) = [each for each in circles if each.dxf.layer == "outline"]
    assert (hole.dxf.center.x, hole.dxf.center.y, hole.dxf.radius) == pytest.approx((165.0, 0.0, 46.0))
    pins = sorted((each.dxf.center.y, each.dxf.center.x) for each in circles if each.dxf.layer == "pins")
    assert [y for y, _ in pins] == pytest.approx([-28.25, -16.95, -5.65, 5.65, 16.95, 28.25])
    assert [x for _, x in pins] == pytest.approx([300.42 + 13.0] * 6, abs=0.2)


def test_the_top_from_the_inside_is_the_face_turned_over(whole) -> None:
    tarn = whole()
    face = {mark.points for mark in layer(tarn["drawing_face_plan"], "hidden")}
    inside = layer(tarn["drawing_top_inside"], "outline")[1:]
    assert len(inside) == 9
    for brace in inside:
        assert tuple((x, -y) for x, y in brace.points) in face


def test_a_left_handed_face_is_turned_over_and_its_inside_turned_back(whole) -> None:
    right, left = whole(), whole(('handed = "right"', 'handed = "left"'))
    for name in ("drawing_face_plan", "drawing_top_inside", "drawing_back_inside"):
        one, other = layer(right[name], "outline"), layer(left[name], "outline")
        assert [tuple((x, -y) for x, y in mark.points) for mark in one] == [mark.points for mark in other]


def test_the_side_is_as_long_and_as_deep_as_its_figures(whole) -> None:
    tarn = whole()
    (ring,) = layer(tarn["drawing_side"], "cut")
    assert max(x for x, _ in ring.points) == pytest.approx(tarn["side_length"])
    at_neck = [y for x, y in ring.points if x == 0]
    at_tail = [y for x, y in ring.points if x == max(x for x, _ in ring.points)]
    assert max(at_neck) - min(at_neck) == pytest.approx(94.0, abs=1e-9)
    assert max(at_tail) - min(at_tail) == pytest.approx(104.0, abs=1e-6)


@pytest.mark.parametrize("name", ["tarn", "fell", "mere"])
def test_a_card_for_each_brace_as_long_and_as_tall_as_it(example, name: str) -> None:
    """Tall from the foot's lowest to the upper edge. Tilted 4 mm in 240 it is 0.03 longer."""
    figures = example(name)
    cards = layer(figures["drawing_braces"], "cut")
    for brace, card in zip(figures["brace_list"], cards, strict=True):
        xs, ys = zip(*card.points, strict=True)
        assert max(xs) - min(xs) == pytest.approx(brace.length, abs=0.05), brace.name
        assert max(ys) - min(ys) == pytest.approx(brace.height, abs=0.005), brace.name
        assert card.closed


def test_the_cards_of_the_x_are_notched_half_and_half(whole) -> None:
    """13 tall in the middle; 35.24 off it a straight edge is 35.24^2 / (2 x 7620) = 0.0815 nearer the dome: 12.9185."""
    tarn = whole()
    (crossing,) = tarn["brace_crossings"]
    cards = {brace.name: card.points for brace, card in zip(tarn["brace_list"], cards_of(tarn), strict=True)}
    for name, along in ((crossing.under, crossing.along_under), (crossing.over, crossing.along_over)):
        walls = [(x, y) for x, y in cards[name] if abs(abs(x - along) - crossing.width_under / 2) < 0.1]
        heights = sorted(y for _, y in walls)
        assert len(walls) == 4
        assert heights[2] - heights[1] == pytest.approx(12.9185 / 2, abs=0.05), "the foot rises beside the middle"
        assert max(x for x, _ in walls) - min(x for x, _ in walls) == pytest.approx(crossing.width_under, abs=0.1)
    assert crossing.depth_over == pytest.approx(12.9185 / 2, abs=1e-3)
    assert crossing.depth_under == pytest.approx(12.9185 / 2, abs=1e-3)


def cards_of(figures: Figures) -> list[Polyline]:
    return layer(figures["drawing_braces"], "cut")


def test_the_mould_goes_round_the_outline(whole) -> None:
    tarn = whole()
    upper, lower = layer(tarn["drawing_mould"], "cut")
    wide = tarn["body_mould_half_width"]
    for half, side in ((upper, 1), (lower, -1)):
        xs, ys = zip(*half.points, strict=True)
        assert max(xs) - min(xs) == pytest.approx(490 + 2 * 60)
        assert max(ys) - min(ys) == pytest.approx(wide)
        assert min(side * y for y in ys) > 0, "the halves lie apart"
        boards = 490 + 2 * 60 + 2 * wide + 2 * 60
        assert length_of(half.points) == pytest.approx(boards + tarn["body_perimeter"] / 2, abs=0.5)


def test_no_braces_leave_plans_of_the_outline_and_no_cards(whole, text_of, derive_text) -> None:
    plain = derive_text(text_of("tarn").partition("[soundhole]")[0], text_of("shop"))
    assert not plain["drawing_braces"].marks
    assert layer(plain["drawing_top_inside"], "outline")
    assert not layer(plain["drawing_face_plan"], "outline", Circle)


def test_the_saddle_on_the_face_slants_as_its_slot_does(whole) -> None:
    """Its ends are those of the slot in the bridge's own drawing, moved to the body."""
    fanned = whole(("length = 630 ", "bass = 650\ntreble = 630\nsquare_at = 7 "))
    edge, reach = fanned["body_edge"], fanned["saddle_reach"]
    expected = ((fanned["saddle_end_bass"] - edge, -reach), (fanned["saddle_end_treble"] - edge, reach))
    (line,) = layer(fanned["drawing_face_plan"], "strings", Line)
    assert (line.start, line.end) == (pytest.approx(expected[0]), pytest.approx(expected[1]))
    assert line.start[0] > line.end[0] + 15.0


@pytest.mark.parametrize(("hand", "as_drawn"), [("right", "bass"), ("left", "treble")])
def test_the_sides_template_says_which_side_it_is(whole, hand: str, as_drawn: str) -> None:
    """Outside up, top above and neck to the left is the side below the centreline in the plan of the face."""
    figures = whole(('handed = "right"', f'handed = "{hand}"'))
    words = " ".join(mark.text for mark in figures["drawing_side"].marks if isinstance(mark, Words))
    assert f"outside up, the {as_drawn} side" in words
