"""The SVG read back as XML: millimetres on the sheet, coordinates to a millionth, words escaped, a text twin."""

import xml.etree.ElementTree as ET
from math import cos, hypot, pi, sin

import pytest

from gramil.drawings.marks import Arc, Drawing, Words
from gramil.layers import LAYERS
from gramil.writers.svg import svg_bytes, svg_text

NS = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module")
def root(board, resolve):
    return ET.fromstring(svg_bytes(board, resolve))


def group(root, name):
    return root.find(f"{NS}g[@id='{name}']")


def test_one_unit_is_one_millimetre(root):
    left, top, wide, tall = map(float, root.get("viewBox").split())
    assert root.get("width") == f"{wide:g}mm"
    assert root.get("height").endswith("mm")
    assert float(root.get("height")[:-2]) == tall
    assert left < -8.0
    assert left + wide > 500.0
    assert top < -30.0
    assert top + tall > 38.0


def test_slots_in_order_to_a_millionth(root, board):
    lines = group(root, "slots").findall(f"{NS}line")
    drawn = [mark for mark in board.marks if mark.layer == "slots"]
    for line, mark in zip(lines, drawn, strict=True):
        read = [float(line.get(key)) for key in ("x1", "y1", "x2", "y2")]
        assert read == pytest.approx([mark.start[0], -mark.start[1], mark.end[0], -mark.end[1]], abs=1e-6)


def test_nothing_but_words_is_transformed(root):
    turned = [element for element in root.iter() if element.get("transform")]
    assert {element.tag for element in turned} == {f"{NS}text"}


def test_layers_are_groups_with_their_ink(root, board):
    groups = root.findall(f"{NS}g")
    doubled = {"nut"}  # it lies on the board's own end: that line is the outline's alone
    used = {mark.layer for mark in board.marks} - doubled | {"text"}
    assert [each.get("id") for each in groups] == [name for name in LAYERS if name in used]
    for each in groups:
        stroke = LAYERS[each.get("id")]
        assert float(each.get("stroke-width")) == stroke.weight
        dashes = tuple(float(dash) for dash in (each.get("stroke-dasharray") or "").split())
        assert dashes == stroke.dashes


def test_words_are_escaped_and_figures_have_their_face(root):
    texts = {text.text: text for text in root.iter(f"{NS}text")}
    assert "bass <side> & 100 %" in texts
    assert texts["depth 3.25 mm."].get("font-family").startswith("'B612 Mono'")
    assert texts["depth 3.25 mm."].get("font-family").endswith("monospace")
    assert texts["bass <side> & 100 %"].get("font-family") == "B612, sans-serif"
    assert texts["45.50 mm"].get("transform").startswith("rotate(-90 ")


def test_the_text_twin_names_every_figure(root):
    assert root.find(f"{NS}title").text == "Tarn, fretboard"
    told = root.find(f"{NS}desc").text
    assert told.startswith("Tarn, fretboard. Seen from the face. True scale")
    for words in ("nut_width: 45.50 mm", "board_length: 500.00 mm", "slot_depth[7]: depth 3.25 mm."):
        assert words in told


def test_a_stretched_drawing_says_so(section, resolve):
    assert "heights are drawn 4 times too tall" in ET.fromstring(svg_bytes(section, resolve)).find(f"{NS}desc").text


def arc_points(path):
    """The points that an arc path goes through, and for each piece radius, large-arc and sweep flags."""
    start, *pieces = path.split("A")
    points = [tuple(map(float, start.removeprefix("M").split()))]
    flags = []
    for piece in pieces:
        rx, ry, turn, large, sweep, x, y = map(float, piece.split())
        assert rx == ry
        assert turn == 0
        flags.append((rx, large, sweep))
        points.append((x, y))
    return points, flags


@pytest.mark.parametrize("turn", [0.01, 1.5, pi, 4.0, 2 * pi])
def test_arcs_go_through_their_ends_the_right_way_round(turn, resolve):
    arc = Arc((10.0, 20.0), 7.0, 0.4, 0.4 + turn, "cut")
    root = ET.fromstring(svg_bytes(Drawing("a", "a", "the face", (arc,)), resolve))
    points, flags = arc_points(group(root, "cut").find(f"{NS}path").get("d"))
    for (x, y), angle in ((points[0], 0.4), (points[-1], 0.4 + turn)):
        assert (x, y) == pytest.approx((10.0 + 7.0 * cos(angle), -20.0 - 7.0 * sin(angle)), abs=1e-6)
    assert all(flag == (7.0, 0.0, 0.0) for flag in flags)
    assert all(hypot(x - 10.0, y + 20.0) == pytest.approx(7.0, abs=1e-5) for x, y in points)


def test_any_words_leave_a_whole_document(resolve):
    drawing = Drawing("a", "]]> <\x00\x0b\ud800￿ \"'& é", "the face", (Words((0.0, 0.0), "a\x1fb<"),))
    root = ET.fromstring(svg_bytes(drawing, resolve))
    assert root.find(f"{NS}title").text == "]]> <   \"'& é"
    assert "a b<" in [text.text for text in root.iter(f"{NS}text")]


def test_a_page_may_leave_the_caption_out(board, resolve):
    words = [text.text for text in ET.fromstring(svg_text(board, resolve, captioned=False)).iter(f"{NS}text")]
    assert "Tarn, fretboard" not in words


def test_an_empty_drawing_is_still_a_drawing(resolve):
    root = ET.fromstring(svg_bytes(Drawing("a", "Nothing yet", "the face", ()), resolve))
    assert root.find(f"{NS}title").text == "Nothing yet"
