"""The body's edge cut across: shapes against one another by their areas, worked by hand, and in the whole section."""

from collections.abc import Callable, Sequence
from dataclasses import replace

import pytest
import shapely
from shapely import Polygon, union_all
from tests.drawings.conftest import figures_for

from gramil.drawings.hull import hull_at
from gramil.drawings.marks import Label, Polyline, Span
from gramil.drawings.rim import Rim
from gramil.drawings.rim_at import edges_at, rims_at
from gramil.drawings.section_at import cut_at
from gramil.graph import Figures
from gramil.parts.edge_records import Edge

EDGE = Edge("top", 2.5, 6.5, 1.5, 1.6, "maple", 3.0, "wood")


def rim(edge: Edge = EDGE, wall: float = 2.0, linings: float = 8.0, high: float = 14.0) -> Rim:
    """Level, its side's face at 100."""
    inset = edge.thickness + edge.purfling
    places = (100.0, 100.0 - edge.thickness, 100.0 - inset, 100.0 - wall, 100.0 - wall - linings)
    return Rim(edge, lambda _: 0.0, *places, high)


def plate(cut: Rim) -> Polygon:
    return Polygon(((80.0, 0.0), *cut.plate_end(), (80.0, -cut.edge.plate)))


def side(cut: Rim) -> Polygon:
    return Polygon((*cut.side_top(), (100.0, -40.0), (98.0, -40.0)))


def shapes(cut: Rim) -> list[Polygon]:
    rings = [each for each in (cut.lining(), cut.binding(), cut.purfling()) if each]
    return [plate(cut), side(cut), *(Polygon(ring) for ring in rings)]


@pytest.mark.parametrize(
    "edge",
    [
        EDGE,
        replace(EDGE, purfling=0.0),
        replace(EDGE, thickness=1.5),
        replace(EDGE, purfling_depth=3.0),
        replace(EDGE, purfling_depth=3.8),
        replace(EDGE, height=2.0, purfling=0.0),
        replace(EDGE, thickness=0.0, purfling=0.0),
    ],
)
def test_no_wood_is_there_twice_and_none_is_missing(edge: Edge) -> None:
    """Whatever is cut and let in, together they fill what plate, side and lining filled uncut, and touch at edges."""
    found, whole = shapes(rim(edge)), shapes(rim(replace(EDGE, thickness=0.0, purfling=0.0)))
    assert all(each.is_valid for each in found)
    assert sum(each.area for each in found) == pytest.approx(20 * 3 + 2 * 37 + 8 * 14 / 2)
    assert union_all(found).symmetric_difference(union_all(whole)).area == pytest.approx(0.0, abs=1e-9)


def test_linings_of_no_height_are_none() -> None:
    """The key allows it; the inside of the side is then what is cut to, at any height."""
    cut = rim(high=0.0)
    assert [cut.slope(z) for z in (-40.0, -3.0, 0.0)] == [98.0] * 3


def test_channels_take_what_they_are_wide_and_deep() -> None:
    """Plate: 20 x 3, less 2.5 x 3 and 1.5 x 1.6. Side, 2 x 37: 3.5 of it down, all of its 2 across, gone. Lining,
    8 x 14 / 2: 0.5 x 3.5 gone."""
    cut = rim()
    assert plate(cut).area == pytest.approx(60 - 7.5 - 2.4)
    assert side(cut).area == pytest.approx(74 - 7)
    assert Polygon(cut.lining()).area == pytest.approx(56 - 1.75)
    assert Polygon(cut.binding()).bounds == pytest.approx((97.5, -6.5, 100.0, 0.0))
    assert Polygon(cut.purfling()).bounds == pytest.approx((96.0, -1.6, 97.5, 0.0))


def test_the_linings_slope_is_a_straight_line() -> None:
    """8 wide under the plate at -3, nothing 14 lower: half way, at -10, 4."""
    assert rim().slope(-10.0) == pytest.approx(98.0 - 4.0)
    assert rim().slope(-30.0) == 98.0


def test_binding_stands_in_the_body_where_it_is_cut(example_body: Callable[[str], Figures]) -> None:
    """At the widest of the lower bout the cut is square to the outline: 2.0 of binding, 1.5 of purfling on Tarn's top,
    6.5 and 6.0 down from either face."""
    tarn = example_body("tarn")
    bout = tarn.at('body_bouts["lower bout"].x')
    cut = cut_at(tarn, float(tarn["body_edge"]) + float(bout))
    hull = hull_at(tarn, cut)
    assert hull is not None
    found = [each for each in edges_at(tarn, hull) if isinstance(each, Polyline)]
    bone = [each for each in found if each.hatch == "bone" and min(y for y, _ in each.points) > 0]
    top, back = sorted(bone, key=lambda each: -max(z for _, z in each.points))
    for strip, height in ((top, 6.5), (back, 6.0)):
        across = [y for y, _ in strip.points]
        assert max(across) - min(across) == pytest.approx(2.0, abs=0.01)
        at_face = [z for y, z in strip.points if y == max(across)]
        assert max(at_face) - min(at_face) == pytest.approx(height, abs=1e-9)
    (lines,) = (each for each in found if each.hatch == "along the grain" and min(y for y, _ in each.points) > 0)
    assert max(y for y, _ in lines.points) - min(y for y, _ in lines.points) == pytest.approx(1.5, abs=0.01)


def test_the_back_has_its_thickness(example_body: Callable[[str], Figures]) -> None:
    tarn = example_body("tarn")
    hull = hull_at(tarn, cut_at(tarn, float(tarn["body_edge"]) + 300.0))
    assert hull is not None
    _, back = rims_at(tarn, hull)
    assert back.face(0.0) - back.under(0.0) == pytest.approx(2.5)


def test_the_sheets_drawing_shows_each_channels_figures(example_body: Callable[[str], Figures]) -> None:
    tarn, fell = example_body("tarn"), example_body("fell")
    for figures, edges in (
        (tarn, ("top purfling", "top binding", "back binding")),
        (fell, ("top binding", "back binding")),
    ):
        said = {
            each.figure.address for each in figures["drawing_setup_channels"].marks if isinstance(each, Label | Span)
        }
        for name in edges:
            assert {f'channel_cuts["{name}"].inset', f'channel_cuts["{name}"].depth'} <= said
        assert ('channel_cuts["top purfling"].depth' in said) == ("top purfling" in edges)


def test_a_bare_body_says_so(example_body: Callable[[str], Figures]) -> None:
    marks = example_body("scree")["drawing_setup_channels"].marks
    assert [each.text for each in marks] == ["The body is not bound: no channels to cut."]


def test_the_plan_shows_the_insides_of_binding_and_purfling(example_body: Callable[[str], Figures]) -> None:
    """Half of Tarn's 372.2 of lower bout, less 2.0 and less 3.5."""
    tarn = example_body("tarn")
    half = float(tarn["body_width"]) / 2
    rings = [each for each in tarn["piece_binding_lines"] if isinstance(each, Polyline)]
    assert [max(y for _, y in ring.points) for ring in rings] == pytest.approx([half - 2.0, half - 3.5], abs=0.01)
    assert len(example_body("fell")["piece_binding_lines"]) == 1


def test_the_bindings_line_stops_at_a_bevel() -> None:
    """Corrie's: nothing of binding or purfling within the bevel; the wood ends at its line, drawn once on the plan."""
    figures = figures_for(
        "corrie",
        (
            "height = 6.5                     # from the plate's face down the side\npurfling = 0",
            "height = 6.5\npurfling = 1.2",
        ),
    )
    (laid,) = figures["bevel_laid"]
    line, edge = (shapely.LineString(rows[:, :2] * (1, -1)) for rows in (laid.shape.face_line, laid.shape.edge_line))
    bevel = shapely.Polygon((*line.coords, *reversed(edge.coords))).buffer(-0.05)
    outer, wood = figures["piece_binding_lines"]
    assert (outer.closed, wood.closed) == (False, True)
    assert not shapely.LineString(outer.points).intersects(bevel)
    assert not shapely.LineString(wood.points).intersects(bevel)
    for points, inset in ((outer.points, 1.8), (wood.points, 3.0)):
        assert max(y for _, y in points) == pytest.approx(205.0 - inset, abs=0.01)
    assert shapely.hausdorff_distance(shapely.LineString(wood.points).intersection(line.buffer(0.01)), line) < 1.0
    twice = [each for each in figures["piece_face_plan"] if each in figures["piece_bevels_on_face"]]
    assert twice == []


@pytest.fixture(scope="module")
def example_body() -> Callable[[str], Figures]:
    from importlib.resources import files

    from gramil.prints.whole import figures_of_files

    folder = files("gramil") / "data" / "examples"
    return lambda name: figures_of_files(str(folder / f"{name}.toml"), str(folder / "shop.toml"))


def test_points_turn_over_both_ways(example_body: Callable[[str], Figures]) -> None:
    """Bass and treble edge are each other's mirror image."""
    tarn = example_body("tarn")
    hull = hull_at(tarn, cut_at(tarn, float(tarn["body_edge"]) + 250.0))
    assert hull is not None
    found: Sequence[Polyline] = [each for each in edges_at(tarn, hull) if isinstance(each, Polyline)]
    for bass, treble in zip(found[::2], found[1::2], strict=True):
        assert [(-y, z) for y, z in bass.points] == list(treble.points)
