"""Openings in the drawings: the body cut across through them, the side's template with its port, kerf in holes."""

from collections.abc import Callable

import pytest
import shapely
from tests.drawings.conftest import figures_for
from tests.lying_over import lying_over
from tests.with_openings import opened

from gramil import names as n
from gramil.bench.pages.instrument_page import _over_body
from gramil.bench.things import things_on
from gramil.drawings.body_at import body_marks
from gramil.drawings.marks import Circle, Line, Polyline
from gramil.drawings.section_at import cut_at
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.writers.lettering import Lettering, corners
from gramil.writers.plain import plain

TextOf = Callable[[str], str]
KERF = 'router_kerf = 0.4\nrouter_kerf_in = "the drawing"\n'


@pytest.fixture(scope="module")
def several(text_of: TextOf, derive_text: Callable[..., Figures]) -> Figures:
    return derive_text(opened(text_of("tarn")), text_of("shop"))


def across(figures: Figures, along: float) -> list[tuple[float, float]]:
    """From where to where the pieces of the top lie at a place along the body: those as thick as it that reach up."""
    cut = cut_at(figures, float(figures[n.body_edge]) + along)
    shapes = [
        each.points for each in body_marks(figures, cut) if isinstance(each, Polyline) and each.layer == "outline"
    ]
    high = max(z for points in shapes for _, z in points)
    top = [points for points in shapes if max(z for _, z in points) > high - 4.0]
    spans = sorted((min(y for y, _ in points), max(y for y, _ in points)) for points in top)
    return [each for each in spans if each[1] - each[0] > 20]


def test_the_top_is_cut_into_as_many_pieces_as_holes_leave(several: Figures) -> None:
    """At 130 from the body's edge lie the ear, the oval and the eye; their chords are a library's."""
    pieces = across(several, 130.0)
    line = shapely.LineString([(130.0, -400.0), (130.0, 400.0)])
    chords = sorted(shapely.Polygon(each.outline).intersection(line).bounds[1::2] for each in several["opening_list"])
    assert len(pieces) == 4
    for (_, end), (start, _), (low, high) in zip(pieces[:-1], pieces[1:], chords, strict=True):
        assert (end, start) == pytest.approx((low, high), abs=0.6)


def test_the_bench_names_what_the_section_goes_through(several: Figures) -> None:
    cut = cut_at(several, float(several[n.body_edge]) + 130.0)
    assert _over_body(several, cut) == "over the body, through the soundhole, through the ear, through the eye"
    words = {each.words for each in things_on(several, 1.0)}
    assert {"the soundhole", "the ear", "the eye"} <= words


def test_a_port_is_a_hole_in_the_sides_template_and_smaller_by_the_kerf(
    several: Figures, text_of: TextOf, derive_text: Callable[..., Figures]
) -> None:
    """Half of 0.4 inside all round, where the drawing allows for the cut; the window of the oval too."""
    shop = text_of("shop")
    kerfed = derive_text(opened(text_of("tarn")), shop.replace("[shop]\n", f"[shop]\n{KERF}", 1))
    for drawing, name in (("drawing_side", "port"), ("drawing_openings", "soundhole")):
        rings, moved = (
            [
                shapely.Polygon(each.points)
                for each in figures[drawing].marks
                if isinstance(each, Polyline) and each.layer == "cut"
            ]
            for figures in (several, kerfed)
        )
        wanted = next(each.area for each in (*several["port_list"], *several["opening_list"]) if each.name == name)
        row = min(range(len(rings)), key=lambda row: abs(rings[row].area - wanted))
        assert rings[row].area == pytest.approx(wanted, rel=1e-4)
        assert moved[row].area == pytest.approx(rings[row].buffer(-0.2, quad_segs=64).area, rel=1e-4)
    circles = [each for each in several["drawing_side"].marks if isinstance(each, Circle)]
    assert [each.radius for each in circles] == [12.5]


@pytest.mark.parametrize("moved", ["220 mm", "262 mm", "300 mm"])
def test_a_stations_words_keep_off_a_port(moved: str) -> None:
    """Beside Corrie's port stand waist and upper bout: moved to either, none of their words lies over the port's edge,
    the corners of its patch or its own words.
    """
    figures = figures_for("corrie", ("centre = 236                     # along", f'centre = "{moved}"  # along'))
    drawing = figures["drawing_side"]
    marks = plain(drawing, Formatter(figures, "mm").text)
    said = [each for each in marks if isinstance(each, Lettering)]
    upright = [shapely.Polygon(corners(each)) for each in said if abs(each.angle) > 1.0]
    lying = [shapely.Polygon(corners(each)) for each in said if abs(each.angle) <= 1.0]
    ports = figures["piece_ports_on_side"]
    lines = [shapely.LineString(each.points) for each in ports if isinstance(each, Polyline)]
    lines += [shapely.LineString((each.start, each.end)) for each in ports if isinstance(each, Line)]
    assert len(upright) > 8
    assert len(lines) == 11, "an oval, a cross and two pieces at each of four corners"
    for words in upright:
        assert not any(words.intersects(each) for each in (*lines, *lying))


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_a_port_of_60_by_38_mm_in_whole_hundredths_of_an_inch_has_its_words_in_it(unit: str) -> None:
    """A little less than 60 mm, it had them beside it, over the waist's line and words."""
    figures = figures_for("corrie", ("along = 64\nacross = 40", "along = 59.9\nacross = 37.8"))
    text = Formatter(figures, "in" if unit == "in" else "mm").text
    (port,) = figures["port_list"]
    assert port.along == 59.9
    assert lying_over(plain(figures["drawing_side"], text)) == []


@pytest.mark.parametrize("size", ["along = 40\nacross = 24", "along = 25\nacross = 25", "along = 58\nacross = 36"])
@pytest.mark.parametrize("middle", [60, 236, 300, 560, 690])
def test_a_small_port_has_its_words_where_nothing_lies_under_them(size: str, middle: int) -> None:
    """Wherever on the side it is: a station's line ran through them, and its words through the port."""
    text = "along = 64\nacross = 40"
    figures = figures_for("corrie", (text, size), ("centre = 236  ", f"centre = {middle}  "))
    (port,) = figures["port_list"]
    assert port.centre == middle
    marks = plain(figures["drawing_side"], Formatter(figures, "mm").text)
    told = [each.text for each in marks if isinstance(each, Lettering)]
    assert any(each.startswith("port: the bass side") for each in told)
    assert lying_over(marks) == []
