"""The DXF read back with its library: every coordinate to a millionth of a millimetre, the audit clean."""

import math
from collections.abc import Callable
from io import StringIO
from itertools import pairwise
from math import cos, degrees, hypot, pi, sin

import ezdxf
import pytest
from ezdxf.path import make_path
from shapely import LineString, Point, unary_union
from tests.walks import these

from gramil import names as n
from gramil.drawings.marks import Arc, Circle, Drawing, Line, Polyline, Span, Words
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.layers import LAYERS
from gramil.prints.whole import drawings_of
from gramil.writers.dxf import dxf_bytes

TO_THE_MILLIONTH = 1e-6


def read(data: bytes):
    return ezdxf.read(StringIO(data.decode("utf-8")))


@pytest.fixture(scope="module")
def document(board, resolve):
    return read(dxf_bytes(board, resolve))


def test_the_audit_finds_nothing(document, section, resolve):
    for each in (document, read(dxf_bytes(section, resolve))):
        audit = each.audit()
        assert not audit.errors
        assert not audit.fixes


def test_it_is_r2010_in_millimetres(document):
    assert document.dxfversion == "AC1024"
    assert document.header["$INSUNITS"] == 4
    assert document.header["$MEASUREMENT"] == 1


def test_slots_are_true_lines_in_order(document, board):
    lines = list(document.modelspace().query('LINE[layer=="slots"]'))
    drawn = [mark for mark in board.marks if mark.layer == "slots"]
    assert len(lines) == len(drawn) == 22
    for line, mark in zip(lines, drawn, strict=True):
        assert tuple(line.dxf.start)[:2] == pytest.approx(mark.start, abs=TO_THE_MILLIONTH)
        assert tuple(line.dxf.end)[:2] == pytest.approx(mark.end, abs=TO_THE_MILLIONTH)


def test_outline_is_one_closed_polyline(document, board):
    (outline,) = document.modelspace().query('LWPOLYLINE[layer=="outline"]')
    assert outline.closed
    for point, expected in zip(outline.get_points("xy"), board.marks[0].points, strict=True):
        assert point == pytest.approx(expected, abs=TO_THE_MILLIONTH)


def test_circle_and_arcs_are_true(document):
    space = document.modelspace()
    (circle,) = space.query("CIRCLE")
    assert tuple(circle.dxf.center)[:2] == pytest.approx((70.123456, 0.0), abs=TO_THE_MILLIONTH)
    assert circle.dxf.radius == pytest.approx(3.1, abs=TO_THE_MILLIONTH)
    (arch,) = space.query('ARC[layer=="hidden"]')
    (x, y), r, angle = (250.0, -300.0), 320.0, pi / 2 - 0.08
    assert tuple(arch.start_point)[:2] == pytest.approx((x + r * cos(angle), y + r * sin(angle)), abs=TO_THE_MILLIONTH)
    (half,) = space.query('ARC[layer=="cut"]')
    assert tuple(half.start_point)[:2] == pytest.approx((480.0, -10.0), abs=TO_THE_MILLIONTH)
    assert tuple(half.end_point)[:2] == pytest.approx((480.0, 10.0), abs=TO_THE_MILLIONTH)


def test_layers_carry_colour_and_line_type(document, board):
    doubled = {"nut"}  # it lies on the board's own end: that line is the outline's alone
    used = {mark.layer for mark in board.marks} - doubled | {"text"}
    found = {layer.dxf.name: layer for layer in document.layers if layer.dxf.name not in ("0", "Defpoints")}
    assert found.keys() == used
    for name, layer in found.items():
        assert layer.dxf.color == LAYERS[name].colour
        assert layer.dxf.lineweight == round(100 * LAYERS[name].weight)
    chain = document.linetypes.get(found["centreline"].dxf.linetype)
    assert [tag.value for tag in chain.pattern_tags.tags if tag.code == 49] == [12.0, -2.0, 1.0, -2.0]
    assert found["slots"].dxf.linetype == "Continuous"


def all_texts(document):
    """The file's words, those of its dimensions too."""
    space = document.modelspace()
    within = (each for dimension in space.query("DIMENSION") for each in dimension.virtual_entities())
    return [*space.query("TEXT"), *(each for each in within if each.dxftype() == "TEXT")]


def test_figures_are_text_in_the_shipped_face(document):
    texts = {text.dxf.text: text for text in all_texts(document)}
    assert {"depth 3.25 mm.", "500.00 mm", "45.50 mm", "bass <side> & 100 %", "Tarn, fretboard"} <= texts.keys()
    assert document.styles.get(texts["45.50 mm"].dxf.style).dxf.font == "B612Mono-Regular.ttf"
    assert document.styles.get(texts["Tarn, fretboard"].dxf.style).dxf.font == "B612-Regular.ttf"
    assert texts["depth 3.25 mm."].dxf.height == 3.5
    assert texts["45.50 mm"].dxf.rotation == pytest.approx(90.0)


def test_it_says_from_where_it_is_seen(document, section, resolve):
    said = [text.dxf.text for text in document.modelspace().query("TEXT")]
    assert "Seen from the face. True scale, in millimetres." in said
    stretched = [text.dxf.text for text in read(dxf_bytes(section, resolve)).modelspace().query("TEXT")]
    assert "Seen from the end. Not true scale: heights are drawn 4 times too tall." in stretched


def test_a_dimension_stands_beside_what_it_measures(document):
    """The dimension of the nut: 8 mm to the left of a line going up, that is at x = -8."""
    (nut,) = [each for each in document.modelspace().query("DIMENSION") if each.dxf.text == "45.50 mm"]
    assert nut.get_measurement() == pytest.approx(45.5)
    lines = [line for line in nut.virtual_entities() if line.dxftype() == "LINE" and line.dxf.start.x < -5]
    along = [line for line in lines if abs(line.dxf.start.x + 8) < 1e-9 and abs(line.dxf.end.x + 8) < 1e-9]
    assert [(line.dxf.start.y, line.dxf.end.y) for line in along] == [(-22.75, 22.75)]


def test_hatches_are_lines_inside_their_shape_and_clear_of_words(section, resolve):
    lines = list(read(dxf_bytes(section, resolve)).modelspace().query('LINE[layer=="hatch"]'))
    assert len(lines) > 50
    for line in lines:
        for x, y, _ in (line.dxf.start, line.dxf.end):
            inside = (x + 1.0) % 30.0 - 1.0
            assert -1e-9 <= inside <= 25.0 + 1e-9
            assert -1e-9 <= y <= 12.0 + inside * 6.0 / 20.0 + 1e-9
    through = [line for line in lines if line.dxf.start.x < 12.0 < line.dxf.end.x and 4.6 < line.dxf.start.y < 7.9]
    assert not through


def test_signs_that_the_format_reads_as_codes_stay_signs(resolve):
    drawing = Drawing("a", "50 %%u of ^J\n0\nEOF", "the face", (Words((0.0, 0.0), "tab\there\ud800\x00"),))
    document = read(dxf_bytes(drawing, resolve))
    texts = [text.plain_text() for text in document.modelspace().query("TEXT")]
    assert texts[:2] == ["tab here ", "50 %%u of ^J 0 EOF"]


def test_a_layer_that_is_not_listed_is_refused(resolve):
    with pytest.raises(KeyError, match="slotz"):
        dxf_bytes(Drawing("a", "a", "the face", (Line((0, 0), (1, 1), "slotz"),)), resolve)


def test_the_library_is_left_as_it_was(board, resolve):
    before = ezdxf.options.write_fixed_meta_data_for_testing
    dxf_bytes(board, resolve)
    assert ezdxf.options.write_fixed_meta_data_for_testing == before


@pytest.mark.parametrize("sweep", [0.3, pi, 2 * pi - 0.2])
def test_arcs_keep_their_turn(sweep, resolve):
    arc = Arc((1.0, 2.0), 5.0, 0.7, 0.7 + sweep, "cut")
    (read_back,) = read(dxf_bytes(Drawing("a", "a", "the face", (arc,)), resolve)).modelspace().query("ARC")
    turned = (read_back.dxf.end_angle - read_back.dxf.start_angle) % 360.0
    assert turned == pytest.approx(degrees(sweep), abs=1e-9)


def test_a_short_dimension_sets_its_figure_beyond_its_end(resolve):
    drawing = Drawing("a", "a", "the face", (Span((0.0, 0.0), (3.0, 0.0), 5.0, n.nut_width),))
    (text,) = [each for each in all_texts(read(dxf_bytes(drawing, resolve))) if each.dxf.text == "45.50 mm"]
    half = hypot(8 * 3.0 / 0.76 * 0.65, 0.0) / 2
    assert text.dxf.align_point.x - half > 3.0
    assert text.dxf.align_point.y > 5.0


def bulged(entity):
    """Where a polyline of a file runs, walked by the reader's own arcs, whose chords lie within 1e-5 mm of them."""
    found = []
    for piece in entity.virtual_entities():
        places = piece.flattening(1e-5) if piece.dxftype() == "ARC" else (piece.dxf.start, piece.dxf.end)
        found.append([(each.x, each.y) for each in places])
    return [place for run in _end_to_end(found) for place in run]


def _end_to_end(runs):
    """Each run turned so that it goes on where the one before it ended: a reader's arcs run anticlockwise."""
    last = runs[0][0] if len(runs) == 1 or math.dist(runs[0][-1], runs[1][0]) < 1e-6 else None
    for at, run in enumerate(runs):
        ahead = runs[at + 1] if last is None and at + 1 < len(runs) else None
        near = min(math.dist(run[-1], end) for end in (ahead[0], ahead[-1])) if ahead else math.dist(run[0], last)
        yield (turned := run if near < 1e-6 else run[::-1])
        last = turned[-1]


def far_from(place, run):
    """How far a place lies from a run of straight pieces."""
    x, y = place
    least = math.inf
    for (x0, y0), (x1, y1) in pairwise(run):
        long = math.hypot(x1 - x0, y1 - y0) or 1.0
        share = min(1.0, max(0.0, ((x - x0) * (x1 - x0) + (y - y0) * (y1 - y0)) / long**2))
        least = min(least, math.hypot(x - x0 - share * (x1 - x0), y - y0 - share * (y1 - y0)))
    return least


def test_a_curve_is_a_few_true_arcs(resolve):
    """A parabola: its arcs' ends are on it to a millionth, between them they lie within a hundredth of it."""
    points = tuple((i * 0.5, (i * 0.5) ** 2 / 150) for i in range(300))
    drawing = Drawing("a", "a", "the face", (Polyline(points, "outline"), Circle((0.0, 0.0), 2.0, "pins")))
    (line,) = read(dxf_bytes(drawing, resolve)).modelspace().query("LWPOLYLINE")
    assert not line.closed
    corners = line.get_points("xyb")
    assert len(corners) < 60
    assert sum(bulge != 0 for _, _, bulge in corners) >= len(corners) - 5
    for x, y, _ in corners:
        assert y == pytest.approx(x**2 / 150, abs=TO_THE_MILLIONTH)
    for x, y in bulged(line):
        assert abs(y - x**2 / 150) / math.hypot(1, x / 75) < 0.01
    assert all(far_from(point, bulged(line)) < 0.01 for point in points)


@pytest.mark.parametrize("turned", [0, 3])
def test_a_circle_in_chords_is_arcs_and_a_square_stays_one(resolve, turned):
    ring = [(40 * math.cos(math.tau * i / 90), 40 * math.sin(math.tau * i / 90)) for i in range(90)]
    ring, square = [*ring[turned:], *ring[:turned]], ((0.0, 0.0), (9.0, 0.0), (9.0, 9.0), (0.0, 9.0))
    marks = (Polyline(tuple(ring), "cut", closed=True), Polyline(square, "outline", closed=True))
    found = read(dxf_bytes(Drawing("a", "a", "the face", marks), resolve)).modelspace().query("LWPOLYLINE")
    arcs, straight = sorted(found, key=lambda each: each.dxf.layer)
    assert len(arcs.get_points("xyb")) <= 5
    assert all(abs(math.hypot(*place) - 40) < 0.001 for place in bulged(arcs))
    assert [tuple(map(float, each)) for each in straight.get_points("xyb")] == [(*place, 0.0) for place in square]


def test_every_line_is_drawn_once(resolve):
    """A line on a rectangle's edge, one without length, a circle twice, and a box that shares an edge with another."""
    left = ((0.0, 0.0), (10.0, 0.0), (10.0, 10.0), (0.0, 10.0))
    right = ((10.0, 0.0), (20.0, 0.0), (20.0, 10.0), (10.0, 10.0))
    marks = (
        Line((10.0, 0.0), (0.0, 0.0), "nut"),
        Polyline(left, "cut", closed=True),
        Line((5.0, 5.0), (5.0, 5.0), "slots"),
        Circle((3.0, 3.0), 1.0, "pins"),
        Circle((3.0, 3.0), 1.0, "cut"),
        Polyline(right, "hidden", closed=True),
    )
    space = read(dxf_bytes(Drawing("a", "a", "the face", marks), resolve)).modelspace()
    assert not space.query("LINE")
    assert [each.dxf.layer for each in space.query("CIRCLE")] == ["cut"]
    whole, rest = sorted(space.query("LWPOLYLINE"), key=lambda each: each.dxf.layer)
    assert whole.closed
    assert not rest.closed
    assert [(float(x), float(y)) for x, y in rest.get_points("xy")] == [(10, 0), (20, 0), (20, 10), (10, 10)]


@pytest.mark.parametrize("name", these(["tarn", "fell", "scree", "mere"], ["fell"]))
def test_no_arc_leaves_what_is_drawn(example: Callable[[str], Figures], name: str) -> None:
    """Every outline to cut, read back by another library: within 0.06 mm of the chords that it was drawn in."""
    figures = example(name)
    checked = 0
    for drawing in drawings_of(figures):
        drawn = [LineString([*m.points, *m.points[: m.closed]]) for m in drawing.marks if isinstance(m, Polyline)]
        if not drawn:
            continue
        every = unary_union([each for each in drawn if each.length])
        text = dxf_bytes(drawing, Formatter(figures).text).decode("utf-8")
        for run in ezdxf.read(StringIO(text)).modelspace().query("LWPOLYLINE"):
            points = [(point.x, point.y) for point in make_path(run).flattening(1e-3)]
            assert max(every.distance(Point(*each)) for each in points) < 0.06, drawing.name
            checked += 1
    assert checked > 10
