"""Outlines read from drawings: shapes of known size in every kind of line, and each fault with its place."""

import io
import math
from collections.abc import Callable
from itertools import pairwise

import ezdxf
import numpy as np
import pytest
from ezdxf.layouts import Modelspace

from gramil.faults import MakersFault
from gramil.shapes.outline_through import through_half_widths
from gramil.shapes.traced_outline import Reading, Traced, read_outline

X = (0, 15, 50, 100, 150, 200, 240, 290, 340, 400, 450, 480, 492)
WAISTED = through_half_widths(X, (0, 70, 128, 148, 140, 124, 120, 135, 170, 196, 170, 110, 0))
STADIUM_AREA = 200 * 100 + math.pi * 50**2
STADIUM_ROUND = 400 + 2 * math.pi * 50


def dxf(draw: Callable[[Modelspace], object], insunits: int = 4, version: str = "R2010") -> str:
    document = ezdxf.new(version)
    document.header["$INSUNITS"] = insunits
    draw(document.modelspace())
    stream = io.StringIO()
    document.write(stream)
    return stream.getvalue()


def svg(body: str, page: str = 'width="400mm" height="300mm" viewBox="0 0 400 300"') -> str:
    return f'<svg xmlns="http://www.w3.org/2000/svg" {page}>{body}</svg>'


def from_dxf(draw: Callable[[Modelspace], object], reading: Reading | None = None, insunits: int = 4) -> Traced:
    return read_outline(dxf(draw, insunits), "plan.dxf", reading or Reading())


def from_svg(body: str, reading: Reading | None = None) -> Traced:
    return read_outline(svg(body), "plan.svg", reading or Reading())


def faults_of(text: str, name: str, reading: Reading | None = None) -> list[str]:
    with pytest.raises(MakersFault) as caught:
        read_outline(text, name, reading or Reading())
    return [str(fault) for fault in caught.value.faults]


def stadium_lines(space: Modelspace) -> None:
    """200 x 100 with half circles at its ends, drawn in disorder and each line its own way round."""
    space.add_arc((250, 70), 50, 270, 90)
    space.add_line((50, 120), (250, 120))
    space.add_arc((50, 70), 50, 90, 270)
    space.add_line((50, 20), (250, 20))


def stadium_polyline(space: Modelspace) -> None:
    space.add_lwpolyline([(50, 20, 0), (250, 20, 1), (250, 120, 0), (50, 120, 1)], format="xyb", close=True)


def stadium_other_way_round(space: Modelspace) -> None:
    space.add_lwpolyline([(50, 20, -1), (50, 120, 0), (250, 120, -1), (250, 20, 0)], format="xyb", close=True)


def stadium_old_polyline(space: Modelspace) -> None:
    space.add_polyline2d([(50, 20, 0), (250, 20, 1), (250, 120, 0), (50, 120, 1)], format="xyb", close=True)


def stadium_in_a_block(space: Modelspace) -> None:
    assert space.doc is not None
    stadium_lines(space.doc.blocks.new("BODY"))  # type: ignore[arg-type]  # a block takes entities as a space does
    space.add_blockref("BODY", (1000, 500), dxfattribs={"rotation": 90})


def stadium_from_below(space: Modelspace) -> None:
    """Drawn on a plane that faces down: x runs the other way, and so do the arcs."""
    places = [(-50, 20, 0), (-250, 20, -1), (-250, 120, 0), (-50, 120, -1)]
    space.add_lwpolyline(places, format="xyb", close=True, dxfattribs={"extrusion": (0, 0, -1)})


def stadium_of_an_array(space: Modelspace) -> None:
    """Both long sides are one block, shown in two rows."""
    assert space.doc is not None
    space.doc.blocks.new("SIDE").add_line((0, 0), (200, 0))
    space.add_blockref("SIDE", (50, 20), dxfattribs={"row_count": 2, "row_spacing": 100})
    space.add_arc((250, 70), 50, 270, 90)
    space.add_arc((50, 70), 50, 90, 270)


STADIUM_DXF = [
    stadium_from_below,
    stadium_of_an_array,
    stadium_lines,
    stadium_polyline,
    stadium_other_way_round,
    stadium_old_polyline,
    stadium_in_a_block,
]


@pytest.mark.parametrize("draw", STADIUM_DXF)
def test_a_stadium_in_every_dxf_way(draw: Callable[[Modelspace], None]) -> None:
    traced = from_dxf(draw)
    assert traced.outline.area == pytest.approx(STADIUM_AREA, rel=2e-5)
    assert traced.outline.perimeter == pytest.approx(STADIUM_ROUND, rel=2e-5)
    assert (traced.outline.length, traced.outline.width) == pytest.approx((300, 100), abs=5e-3)
    assert (traced.scale, traced.left_out) == (1, ())
    assert traced.asymmetry < 1e-3


STADIUM_SVG = [
    '<path d="M50 20 L250 20 A50 50 0 0 1 250 120 L50 120 A50 50 0 0 1 50 20 Z"/>',
    '<rect x="0" y="20" width="300" height="100" rx="50"/>',
    '<g transform="translate(10, 5) scale(2)"><rect x="0" y="20" width="150" height="50" rx="25"/></g>',
    '<rect x="0" y="20" width="300" height="100" rx="50" transform="rotate(90 100 100)"/>',
    '<path d="M50 20 L250 20 A50 50 0 0 1 250 120"/><path d="M50 20 A50 50 0 0 0 50 120 L250 120"/>',
]


@pytest.mark.parametrize("body", STADIUM_SVG)
def test_a_stadium_in_every_svg_way(body: str) -> None:
    traced = from_svg(body)
    assert traced.outline.area == pytest.approx(STADIUM_AREA, rel=2e-5)
    assert traced.outline.perimeter == pytest.approx(STADIUM_ROUND, rel=2e-5)


def test_ellipses_and_circles() -> None:
    area = math.pi * 150 * 90
    assert from_svg('<ellipse cx="200" cy="150" rx="150" ry="90"/>').outline.area == pytest.approx(area, rel=1e-6)
    drawn = from_dxf(lambda space: space.add_ellipse((20, 30), major_axis=(0, 150), ratio=0.6))
    assert drawn.outline.area == pytest.approx(area, rel=1e-6)
    assert drawn.outline.length == pytest.approx(300, abs=1e-3)
    ring = from_svg('<circle cx="200" cy="150" r="80"/>').outline
    assert ring.perimeter == pytest.approx(160 * math.pi, rel=1e-6)
    assert from_dxf(lambda space: space.add_circle((5, 5), 80)).outline.perimeter == pytest.approx(
        160 * math.pi, rel=1e-6
    )


def test_a_cubic_path_by_its_formula() -> None:
    """Control points (0, 0) (0, h) (l, h) (l, 0) for each half: as high as 3 h / 4 in the middle."""
    drawn = from_svg('<path d="M20 150 C20 50 320 50 320 150 C320 250 20 250 20 150 Z"/>')
    assert drawn.outline.area == pytest.approx(2 * _bezier_area(300, 100), rel=1e-5)
    assert drawn.outline.width == pytest.approx(150, abs=1e-3)


def _bezier_area(length: float, height: float) -> float:
    """x = l (3 t^2 - 2 t^3), y = 3 h t (1 - t): integral of y x' = 18 l h int t^2 (1 - t)^2 = 18 l h / 30."""
    return 18 * length * height / 30


def test_a_waisted_outline_through_a_spline_entity() -> None:
    upper = WAISTED.half.polyline(0.5)
    points = np.vstack((upper, upper[-2::-1] * [1, -1]))
    traced = from_dxf(lambda space: space.add_spline([(x, y, 0) for x, y in points], degree=3))
    assert traced.outline.half_width(np.linspace(5, 487, 60)) == pytest.approx(
        WAISTED.half_width(np.linspace(5, 487, 60)), abs=0.15
    )


def test_a_run_of_short_lines_is_a_smooth_outline() -> None:
    """Traced at about 8 mm: the curve goes through the points and bulges out between them as the original does."""
    run = WAISTED.point(np.linspace(0, WAISTED.perimeter, 190)[:-1])
    traced = from_dxf(lambda space: space.add_lwpolyline([(x + 40, y - 7) for x, y in run], close=True))
    assert traced.outline.area == pytest.approx(WAISTED.area, rel=1e-5)
    assert traced.outline.perimeter == pytest.approx(WAISTED.perimeter, rel=1e-5)
    assert [each.kind for each in traced.outline.stations] == ["widest", "narrowest", "widest"]
    assert traced.outline.stations[1].half_width == pytest.approx(WAISTED.stations[1].half_width, abs=0.01)


@pytest.mark.parametrize("turn", [0, 90, 180, 270])
def test_the_narrow_end_comes_first_however_it_lies(turn: int) -> None:
    run = WAISTED.polyline(0.05)
    c, s = round(math.cos(math.radians(turn))), round(math.sin(math.radians(turn)))
    points = [(c * x - s * y, s * x + c * y) for x, y in run.tolist()]
    traced = from_dxf(lambda space: space.add_lwpolyline(points, close=True))
    first, waist, last = traced.outline.stations
    assert first.half_width < last.half_width
    assert waist.x == pytest.approx(WAISTED.stations[1].x, abs=0.1)
    other = from_dxf(lambda space: space.add_lwpolyline(points, close=True), Reading(narrow_end_first=False))
    assert other.outline.stations[1].x == pytest.approx(492 - WAISTED.stations[1].x, abs=0.1)


def test_a_box_keeps_its_corners() -> None:
    box = from_svg('<polygon points="10,10 210,10 210,130 10,130"/>').outline
    assert (box.area, box.perimeter) == pytest.approx((24000, 640), rel=1e-9)


def test_a_stated_length_scales_all() -> None:
    """The stadium drawn 300 long and stated as 450: half as long again, whatever units the drawing claims."""
    for units in (0, 1, 4):
        traced = from_dxf(stadium_lines, Reading(length=450), insunits=units)
        assert traced.scale == pytest.approx(1.5, rel=1e-5)
        assert traced.outline.length == pytest.approx(450, abs=1e-6)
        assert traced.outline.area == pytest.approx(1.5**2 * STADIUM_AREA, rel=3e-5)


def test_units_of_the_drawing() -> None:
    assert from_dxf(lambda space: space.add_circle((0, 0), 4), insunits=1).outline.length == pytest.approx(
        203.2, rel=1e-6
    )
    assert from_dxf(lambda space: space.add_circle((0, 0), 4), insunits=5).outline.length == pytest.approx(80, rel=1e-6)
    small = Reading(least=1.0)
    pages = {
        'width="8in" height="4in" viewBox="0 0 800 400"': 0.254,
        'width="80mm" height="40mm" viewBox="0 0 800 400"': 0.1,
        'width="80mm" height="40mm"': 25.4 / 96,
    }
    for page, unit in pages.items():
        traced = read_outline(svg('<circle cx="200" cy="150" r="80"/>', page), "plan.svg", small)
        assert traced.outline.length == pytest.approx(160 * unit, rel=1e-6)


def test_no_units_is_said() -> None:
    (fault,) = faults_of(dxf(stadium_lines, insunits=0), "plan.dxf")
    assert "does not say its units" in fault
    for page in ('width="400" height="300"', 'viewBox="0 0 400 300"', 'width="100%" height="100%" viewBox="0 0 1 1"'):
        (fault,) = faults_of(svg('<circle cx="200" cy="150" r="80"/>', page), "plan.svg")
        assert "does not say its units" in fault


def test_a_gap_is_named_with_its_ends_and_its_width() -> None:
    def draw(space: Modelspace) -> None:
        space.add_arc((250, 70), 50, 270, 90)
        space.add_line((50, 120), (248.75, 120))
        space.add_arc((50, 70), 50, 90, 270)
        space.add_line((50, 20), (250, 20))

    (fault,) = faults_of(dxf(draw), "plan.dxf", Reading(where="body.outline"))
    assert fault.startswith("body.outline: the outline is not closed: a gap of 1.25 mm")
    assert "from (248.750, 120.000) to (250.000, 120.000)" in fault
    assert from_dxf(draw, Reading(gap=1.5)).outline.area == pytest.approx(STADIUM_AREA, rel=1e-3)


def test_two_gaps_are_both_named() -> None:
    body = '<path d="M50 20 L250 20 A50 50 0 0 1 250 118"/><path d="M250 120 L50 120 A50 50 0 0 1 47 21"/>'
    first, second = faults_of(svg(body), "plan.svg")
    assert "a gap of 2.00 mm" in first
    assert "(250.000, 118.000)" in first
    assert "a gap of 3.16 mm" in second


def test_a_line_on_its_own_is_left_out_and_said() -> None:
    def draw(space: Modelspace) -> None:
        stadium_lines(space)
        space.add_line((-50, 70), (400, 70), dxfattribs={"layer": "MIDDLE"})

    assert from_dxf(draw).left_out == ("LINE on layer MIDDLE",)


def test_a_branch_is_named_with_its_place() -> None:
    def draw(space: Modelspace) -> None:
        stadium_lines(space)
        space.add_line((250, 20), (300, 0))

    (fault,) = faults_of(dxf(draw), "plan.dxf")
    assert "three lines or more end at (250.000, 20.000)" in fault


def test_several_outlines_are_named_with_their_sizes() -> None:
    def draw(space: Modelspace) -> None:
        space.add_ellipse((20, 30), major_axis=(150, 0), ratio=0.6, dxfattribs={"layer": "BODY"})
        space.add_circle((20, 30), 50, dxfattribs={"layer": "HOLE"})

    (fault,) = faults_of(dxf(draw), "plan.dxf")
    assert (
        "2 closed outlines: 300.0 x 180.0 mm (ELLIPSE on layer BODY); 100.0 x 100.0 mm (CIRCLE on layer HOLE)" in fault
    )
    assert from_dxf(draw, Reading(layer="BODY")).outline.length == pytest.approx(300, abs=1e-3)
    (fault,) = faults_of(dxf(draw), "plan.dxf", Reading(layer="TOP"))
    assert "nothing is drawn on TOP" in fault
    assert "BODY, HOLE" in fault


def test_an_svg_group_or_shape_is_picked_by_its_id() -> None:
    hole = '<g id="plan"><circle id="hole" cx="150" cy="90" r="50"/></g>'
    body = hole + '<ellipse id="body" cx="150" cy="90" rx="150" ry="90"/>'
    assert from_svg(body, Reading(layer="plan")).outline.length == pytest.approx(100, abs=1e-3)
    assert from_svg(body, Reading(layer="body")).outline.length == pytest.approx(300, abs=1e-3)


def test_a_crossing_is_named_with_its_place() -> None:
    """A bow tie whose legs cross in its middle, at (150, 75)."""
    faults = faults_of(svg('<polygon points="50,25 250,125 250,25 50,125"/>'), "plan.svg")
    assert ["crosses itself at (150.000, 75.000)" in fault for fault in faults] == [True]


def test_lopsided_by_how_much_and_where() -> None:
    """A box 300 x 100 with a tooth 10 high on one side: its mirror image leaves the tooth out, near x = 220."""
    run = [(0, 0), (300, 0), (300, 100), (230, 100), (220, 110), (210, 100), (0, 100)]
    text = dxf(lambda space: space.add_lwpolyline(run, close=True))
    (fault,) = faults_of(text, "plan.dxf")
    difference = float(fault.split("differ by ")[1].split(" mm")[0])
    place = [float(figure) for figure in fault.split(" at (")[1].split(")")[0].split(",")]
    middle = (300 * 100 * 50 + 100 * (100 + 10 / 3)) / (300 * 100 + 100)  # the axis, through the area's centroid
    assert difference == pytest.approx(110 - middle - middle, abs=0.01)
    assert place == pytest.approx([220, 110], abs=0.01)


def test_a_little_lopsided_comes_out_half_way() -> None:
    """Upper half 80 wide, lower 80.4: an outline of 80.2, the difference said."""
    angles = np.linspace(0, 2 * math.pi, 121)[:-1]
    run = [(150 * math.cos(a), (80.0 if a < math.pi else 80.4) * math.sin(a)) for a in angles]
    traced = from_dxf(lambda space: space.add_lwpolyline(run, close=True))
    assert traced.outline.width == pytest.approx(160.4, abs=0.02)
    assert 0.1 < traced.asymmetry < 0.45


@pytest.mark.parametrize(
    ("text", "name", "words"),
    [
        ("not a drawing", "plan.dxf", "not a DXF drawing"),
        ("<svg", "plan.svg", "not an SVG drawing"),
        ("<html/>", "plan.svg", "Its outermost element is html"),
        ("", "plan.pdf", "neither a .dxf nor an .svg"),
        (svg("<text>outline</text>"), "plan.svg", "no lines, arcs or curves"),
        (svg('<path style="display:none" d="M0 0 L9 0 L9 9 Z"/>'), "plan.svg", "no lines, arcs or curves"),
    ],
)
def test_what_is_no_drawing_is_said(text: str, name: str, words: str) -> None:
    (fault,) = faults_of(text, name)
    assert words in fault


def test_read_back_what_was_written() -> None:
    """A polyline of an outline, to 0.001 mm, gives the outline again."""
    run = WAISTED.polyline(0.001)
    traced = from_dxf(lambda space: space.add_lwpolyline(run.tolist(), close=True))
    along = np.linspace(0, WAISTED.perimeter, 99)
    away = np.hypot(*(traced.outline.point(along) - WAISTED.point(along)).T)
    assert away.max() < 5e-3
    assert max(abs(a.x - b.x) for a, b in zip(traced.outline.stations, WAISTED.stations, strict=True)) < 0.05
    assert all(one.x < other.x for one, other in pairwise(traced.outline.stations))


def ring(times: float) -> str:
    return dxf(lambda space: space.add_circle((0, 0), 250 * times))


def page(size: str) -> str:
    return svg('<circle r="150" cx="200" cy="150"/>', size)


@pytest.mark.parametrize(
    ("text", "name", "words"),
    [
        (ring(1e6), "plan.dxf", "the outline is 5e+08 mm long"),
        (ring(1e-6), "plan.dxf", "the outline is 0.0005 mm long"),
        (dxf(stadium_polyline).replace("250.0", "nan"), "plan.dxf", "is not a number"),
        (ring(1).replace("\nENTITIES\n", "\nENTITIES\n\x00\x07" + "x" * 500 + "\n"), "plan.dxf", "not a DXF drawing"),
        (svg('<path d="M 10 10 L 300 10 L 150 10 Z"/>'), "plan.svg", "encloses nothing"),
        (svg('<g id="a"><use href="#a"/></g>'), "plan.svg", "uses itself"),
        (svg('<g transform="scale(1e-300)"><circle r="90"/></g>'), "plan.svg", "of the drawing's units long"),
        (svg("<g>" * 3000 + "</g>" * 3000), "plan.svg", "too deep"),
        (page('width="0mm" height="0mm" viewBox="0 0 400 300"'), "plan.svg", "does not say its units"),
        (page('width="400mm" height="300mm" viewBox="0 0 0 0"'), "plan.svg", "does not say its units"),
        (page('width="400mm" height="300mm" viewBox="a b c d"'), "plan.svg", "does not say its units"),
        ('<svg xmlns="http://elsewhere"><circle r="150"/></svg>', "plan.svg", "not an SVG drawing"),
    ],
)
def test_drawings_that_mean_nothing(text: str, name: str, words: str) -> None:
    (fault,) = faults_of(text, name)
    assert words in fault
    assert fault.isprintable()
    assert len(fault) < 400


def test_a_stated_length_makes_any_size_right() -> None:
    assert read_outline(ring(1e6), "plan.dxf", Reading(length=500)).outline.width == pytest.approx(500, abs=0.01)


def test_a_used_shape_and_a_label_shown_for_a_group() -> None:
    shape = '<defs><circle id="o" r="150" cx="200" cy="150"/></defs><use href="#o"/>'
    assert from_svg(shape).outline.width == pytest.approx(300, abs=1e-3)
    labelled = '<g xmlns:x="http://example.org/x" x:label="The body" id="g1"><circle r="150"/></g><circle r="20"/>'
    assert from_svg(labelled, Reading(layer="The body")).outline.width == pytest.approx(300, abs=1e-3)


@pytest.mark.parametrize(("code", "read"), [(310, True), (319, True), (1004, True), (1000, False), (40, False)])
def test_pictures_kept_as_digits_are_no_numbers(code: int, read: bool) -> None:
    """A preview that a drawing program saves with a drawing is bytes in hexadecimal digits, many of them 0 to 9."""
    text = dxf(stadium_polyline).replace("AcDbPolyline\n", f"AcDbPolyline\n{code}\n{'28' * 60}\n")
    assert str(code) in text
    if read:
        assert read_outline(text, "plan.dxf", Reading()).outline.area == pytest.approx(STADIUM_AREA, rel=2e-5)
    else:
        assert "more than 40 digits" in faults_of(text, "plan.dxf")[0]


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_line_ends_of_every_system(end: str) -> None:
    text = dxf(stadium_polyline).replace("\n", end)
    assert read_outline(text, "plan.dxf", Reading()).outline.area == pytest.approx(STADIUM_AREA, rel=2e-5)
    page = svg('<rect width="300" height="100"/>').replace(">", f">{end}")
    assert read_outline(page, "plan.svg", Reading()).outline.area == pytest.approx(30_000, rel=2e-5)
