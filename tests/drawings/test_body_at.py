"""The body cut across, against the description's own stations, braces and radii, and domes worked out here."""

from importlib.resources import files
from math import cos, sqrt

import numpy as np
import pytest

from gramil.description.reading import parse_description, read_shop
from gramil.drawings.body_at import (
    DEPTH,
    WIDTH,
    across,
    body_drawing,
    body_marks,
    braces_at,
    read_at,
)
from gramil.drawings.hull import hull_at
from gramil.drawings.marks import Polyline
from gramil.drawings.section_at import Cut, cut_at, section_marks
from gramil.graph import Figures
from gramil.prints.whole import figures_of, figures_of_files

EXAMPLES = files("gramil") / "data" / "examples"


@pytest.fixture(scope="module")
def tarn() -> Figures:
    return figures_of_files(str(EXAMPLES / "tarn.toml"), str(EXAMPLES / "shop.toml"))


def at_body(figures: Figures, along: float) -> Cut:
    """The cut that goes through the body so far from its edge: the body leans by the neck's set."""
    return cut_at(figures, float(figures["body_edge"]) + along * cos(float(figures["neck_angle_face"])))


def shapes(figures: Figures, along: float) -> list[Polyline]:
    return [each for each in body_marks(figures, at_body(figures, along)) if isinstance(each, Polyline)]


def widths(shape: Polyline) -> tuple[float, float]:
    return min(y for y, _ in shape.points), max(y for y, _ in shape.points)


def test_it_is_as_wide_as_its_stations_say(tarn: Figures) -> None:
    """The outline passes 117 at 185 and 186 at 350."""
    assert read_at(tarn, WIDTH, at_body(tarn, 185.0)) == pytest.approx(2 * 117, abs=1e-6)
    assert read_at(tarn, WIDTH, at_body(tarn, 350.0)) == pytest.approx(2 * 186, abs=1e-6)


def test_the_top_stands_on_its_dome(tarn: Figures) -> None:
    """Half way along, 245 from either end, a sphere of 7620 stands R - sqrt(R^2 - 245^2) over the rim's ends."""
    hull = hull_at(tarn, at_body(tarn, 245.0))
    assert hull is not None
    y = np.array([0.0, 100.0])
    over = hull.over(y) - hull.rim
    radius = 7620.0
    assert over[0] == pytest.approx(radius - sqrt(radius**2 - 245.0**2), abs=1e-6)
    assert over[1] == pytest.approx(sqrt(radius**2 - 100.0**2) - sqrt(radius**2 - 245.0**2), abs=1e-6)
    assert (hull.over(y) - hull.under(y)).tolist() == pytest.approx([2.8, 2.8]), "as thick as a top is left to be"


def test_inside_it_is_as_deep_as_side_and_domes_make_it(tarn: Figures) -> None:
    """Sides of 94 and 104, half way 99; the domes of 7620 and 15 feet (4572) stand out on both faces."""
    domes = sum(r - sqrt(r**2 - 245.0**2) for r in (7620.0, 15 * 304.8))
    assert read_at(tarn, DEPTH, at_body(tarn, 245.0)) == pytest.approx(99.0 + domes, abs=1e-6)


def test_the_soundhole_parts_the_top(tarn: Figures) -> None:
    """92 across its middle at 165; 40 off the middle a chord of 2 sqrt(46^2 - 40^2)."""
    for aside, half in ((0.0, 46.0), (40.0, sqrt(46.0**2 - 40.0**2))):
        plates = [each for each in shapes(tarn, 165.0 + aside) if len(each.points) > 90 and not each.hatch]
        tops = [each for each in plates if max(z for _, z in each.points) > -60]
        assert sorted(widths(tops[0]) + widths(tops[1]))[1:3] == pytest.approx([-half, half], abs=1e-6)
    assert sum(each.layer == "slots" for each in shapes(tarn, 165.0)) == 2, "a ring on both sides"


def test_braces_are_cut_where_they_lie(tarn: Figures) -> None:
    """The second of the back runs square across at 185, 7 wide; at 72 the upper transverse one, 12 wide."""
    assert [each.name for each in braces_at(tarn, at_body(tarn, 185.0)) if each.plate == "back"] == ["back 2"]
    assert [each.name for each in braces_at(tarn, at_body(tarn, 188.0)) if each.plate == "back"] == ["back 2"]
    assert [each.name for each in braces_at(tarn, at_body(tarn, 190.0)) if each.plate == "back"] == []
    assert "upper transverse" in [each.name for each in braces_at(tarn, at_body(tarn, 72.0 + 5.9))]
    assert "upper transverse" not in [each.name for each in braces_at(tarn, at_body(tarn, 72.0 + 6.1))]


def test_a_brace_is_as_high_as_it_is_there(tarn: Figures) -> None:
    """13 in the middle of the second of the back, on the back's inside; its ends are worked down."""
    cut = at_body(tarn, 185.0)
    hull = hull_at(tarn, cut)
    assert hull is not None
    grained = [each for each in shapes(tarn, 185.0) if each.hatch == "across the grain"]
    brace = next(each for each in grained if max(z for _, z in each.points) < -60)
    highest = max(brace.points, key=lambda point: point[1] - float(hull.back(np.array([point[0]]))[0]))
    assert highest[1] - float(hull.back(np.array([highest[0]]))[0]) == pytest.approx(13.0, abs=1e-6)
    ends = [point for point in brace.points if abs(point[0]) > 100]
    assert all(z - float(hull.back(np.array([y]))[0]) < 13.0 for y, z in ends)


def test_a_polygon_is_met_from_edge_to_edge() -> None:
    square = ((0.0, -1.0), (2.0, -1.0), (2.0, 3.0), (0.0, 3.0))
    assert across(square, 1.0) == (-1.0, 3.0)
    assert across(square, 2.5) is None
    slanted = ((0.0, 0.0), (4.0, 4.0), (3.0, 5.0), (-1.0, 1.0))
    assert across(slanted, 2.0) == pytest.approx((2.0, 4.0))


def test_bridge_and_saddle_stand_on_the_top(tarn: Figures) -> None:
    """The bridge, 9 thick, is cut through where its saddle is; a plate 2.4 thick lies under the top."""
    cut = cut_at(tarn, float(tarn["saddle_position"]))
    hull = hull_at(tarn, cut)
    assert hull is not None
    middle = [
        each for each in body_marks(tarn, cut) if isinstance(each, Polyline) and widths(each)[0] < 0 < widths(each)[1]
    ]
    along = [each for each in middle if each.hatch == "along the grain"]
    plate, bridge = sorted(along, key=lambda each: max(z for _, z in each.points))
    face = float(hull.over(np.zeros(1))[0])
    assert max(z for _, z in bridge.points) - face == pytest.approx(9.0, abs=1e-6)
    assert face - 2.8 - min(z for y, z in plate.points if abs(y) < 2) == pytest.approx(2.4, abs=0.01)
    saddle = [each for each in middle if each.hatch == "bone"]
    assert len(saddle) == 1


def test_blocks_are_cut_at_both_ends_and_nowhere_between(tarn: Figures) -> None:
    """32 long at the neck, 20 at the tail of a body of 490."""
    for along, there in ((20.0, True), (31.0, True), (60.0, False), (300.0, False), (475.0, True)):
        deep = [
            each
            for each in shapes(tarn, along)
            if each.hatch == "across the grain" and np.ptp([z for _, z in each.points]) > 60
        ]
        assert bool(deep) == there, along


def test_where_no_body_is_described_there_is_none() -> None:
    scree = figures_of_files(str(EXAMPLES / "scree.toml"), str(EXAMPLES / "shop.toml"))
    cut = cut_at(scree, 520.0)
    assert hull_at(scree, cut) is None
    assert body_marks(scree, cut) == ()
    assert body_drawing(scree, cut) is None
    with pytest.raises(KeyError):
        read_at(scree, WIDTH, cut)


def test_a_left_handed_body_is_the_right_one_turned_over(tarn: Figures) -> None:
    """The tone bars lie aslant, so that the two differ."""
    text = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8").replace('handed = "right"', 'handed = "left"')
    left = figures_of(parse_description(text), read_shop(str(EXAMPLES / "shop.toml")))
    pictures = [body_drawing(each, at_body(each, 420.0)) for each in (tarn, left)]
    found = []
    for picture in pictures:
        assert picture is not None
        found.append(sorted(sum(widths(each)) for each in picture.marks if isinstance(each, Polyline)))
    assert found[0] != pytest.approx(found[1])
    assert found[0] == pytest.approx(sorted(-each for each in found[1]))


def test_the_neck_is_carved_as_deep_as_it_is_and_the_heel_as_its_line(tarn: Figures) -> None:
    """At fret 7 the back lies under the joint by the neck's own depth; at the cap the heel is as deep as asked."""
    seventh = cut_at(tarn, 630 * (1 - 2 ** (-7 / 12)))
    assert lowest(section_marks(tarn, seventh)) == pytest.approx(-6.3 - float(tarn["section_neck_depth"][7]), abs=1e-6)
    cap = cut_at(tarn, float(tarn["back_bow_length"]) - 1.0)
    deepest = float(tarn["neck_heel_depth"])
    assert lowest(section_marks(tarn, cap)) == pytest.approx(-6.3 - deepest, abs=1e-6)
    heel = next(each for each in section_marks(tarn, cap) if isinstance(each, Polyline) and each.layer == "core")
    foot = [y for y, z in heel.points if z == pytest.approx(-6.3 - deepest)]
    assert max(foot) - min(foot) == pytest.approx(float(tarn["carve_heel_width"]), abs=1e-6)


def lowest(marks: tuple[object, ...]) -> float:
    return min(z for each in marks if isinstance(each, Polyline) for _, z in each.points)


def test_the_rod_is_cut_only_where_it_runs_and_bars_lie_beside_it(tarn: Figures) -> None:
    def voids(figures: Figures, x: float) -> int:
        return sum(
            isinstance(each, Polyline) and each.hatch == "void" for each in section_marks(figures, cut_at(figures, x))
        )

    start, end = float(tarn["rod_start"]), float(tarn["rod_end"])
    assert voids(tarn, (start + end) / 2) == 1
    assert voids(tarn, end + 1.0) == 0
    text = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8") + '\n[neck]\nrod = "none"\nbars = 2\n'
    barred = figures_of(parse_description(text), read_shop(str(EXAMPLES / "shop.toml")))
    assert voids(barred, 100.0) == 0
    metal = [
        each
        for each in section_marks(barred, cut_at(barred, 100.0))
        if isinstance(each, Polyline) and each.hatch == "metal"
    ]
    assert sorted(round(sum(widths(each)) / 2, 6) for each in metal) == [-6.6, 6.6], "5 of wood, then 3.2 of bar"
