"""The DXF read back with its library: every coordinate to a millionth of a millimetre, the audit clean."""

from io import StringIO
from math import cos, degrees, hypot, pi, sin

import ezdxf
import pytest

from gramil import names as n
from gramil.drawings.marks import LAYERS, Arc, Circle, Drawing, Line, Polyline, Span, Words
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
    used = {mark.layer for mark in board.marks} | {"text"}
    found = {layer.dxf.name: layer for layer in document.layers if layer.dxf.name not in ("0", "Defpoints")}
    assert found.keys() == used
    for name, layer in found.items():
        assert layer.dxf.color == LAYERS[name].colour
        assert layer.dxf.lineweight == round(100 * LAYERS[name].weight)
    chain = document.linetypes.get(found["centreline"].dxf.linetype)
    assert [tag.value for tag in chain.pattern_tags.tags if tag.code == 49] == [12.0, -2.0, 1.0, -2.0]
    assert found["slots"].dxf.linetype == "Continuous"


def test_figures_are_text_in_the_shipped_face(document):
    texts = {text.dxf.text: text for text in document.modelspace().query("TEXT")}
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
    lines = [line for line in document.modelspace().query('LINE[layer=="dimensions"]') if line.dxf.start.x < -5]
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
    (text,) = [t for t in read(dxf_bytes(drawing, resolve)).modelspace().query("TEXT") if t.dxf.text == "45.50 mm"]
    half = hypot(8 * 3.0 / 0.76 * 0.65, 0.0) / 2
    assert text.dxf.align_point.x - half > 3.0
    assert text.dxf.align_point.y > 5.0


def test_a_polyline_keeps_every_point(resolve):
    points = tuple((i * 0.123457, i * i * 0.01) for i in range(300))
    drawing = Drawing("a", "a", "the face", (Polyline(points, "outline"), Circle((0.0, 0.0), 2.0, "pins")))
    (line,) = read(dxf_bytes(drawing, resolve)).modelspace().query("LWPOLYLINE")
    assert not line.closed
    for point, expected in zip(line.get_points("xy"), points, strict=True):
        assert point == pytest.approx(expected, abs=TO_THE_MILLIONTH)
