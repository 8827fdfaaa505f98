"""The carved neck: flats that touch the back all round, edges worked by hand, the heel's line between its ends."""

import math
from collections.abc import Callable

import numpy as np
import pytest

from gramil.graph import Figures
from gramil.shapes.facets import even_angles, facets

Carved = Callable[..., Figures]


@pytest.fixture
def carved(derive_text: Callable[..., Figures], text_of: Callable[[str], str]) -> Carved:
    return lambda more="", name="tarn": derive_text(text_of(name) + "\n[carve]\n" + more)


@pytest.mark.parametrize("count", [5, 7, 9])
@pytest.mark.parametrize("shape", ["", "exponent_at_1 = 1.7\nexponent_at_10 = 2.6\nblend_at_10 = 0.4\n"])
def test_flats_touch_the_back_and_hold_all_of_it(carved: Carved, count: int, shape: str) -> None:
    figures = carved(f"facets = {count}\n{shape}")
    assert len(figures["carve_stations"]) == 3
    for station in figures["carve_stations"]:
        around = station.profile.points(4001)
        for flat in facets(station.profile, even_angles(count)):
            out = np.array([math.cos(flat.angle), math.sin(flat.angle)])
            reach = around @ out
            assert reach.max() == pytest.approx(float(np.array(flat.touch) @ out), abs=1e-4)
            assert (np.array(flat.start) @ out, np.array(flat.end) @ out) == pytest.approx((reach.max(),) * 2, abs=1e-4)


def test_lines_on_an_ellipse_by_hand(carved: Carved) -> None:
    """A flat at 45 degrees touches the ellipse |y/a|^2 + |z/d|^2 = 1 where y + z is the square root of a^2 + d^2.

    It meets the side y = a at z = sqrt(a^2 + d^2) - a, and the back z = d at y = sqrt(a^2 + d^2) - d.
    """
    figures = carved()
    for station in figures["carve_stations"]:
        a, d = station.width / 2, station.depth
        side, back = (line for line in figures["carve_lines"] if line.station == station.name)
        assert (side.centre, side.joint) == pytest.approx((a, math.hypot(a, d) - a), abs=1e-6)
        assert (back.centre, back.joint) == pytest.approx((math.hypot(a, d) - d, d), abs=1e-6)
    assert figures["carve_flat_back"] == pytest.approx(2 * figures["carve_lines"][1].centre)


def test_stations_are_as_wide_as_the_board_and_as_deep_as_asked(carved: Carved) -> None:
    """Tarn: 45.5 at the nut, 56 at fret 12; 21 mm with the board at fret 1; the board about 6.3 thick."""
    figures = carved("stations = [0, 1, 5.5]")
    zero, first, between = figures["carve_stations"]
    assert (zero.name, first.name, between.name) == ("zero line", "fret 1", "fret 5.5")
    assert zero.width == pytest.approx(45.5)
    assert first.whole == pytest.approx(21.0)
    assert first.position == pytest.approx(630 * (1 - 2 ** (-1 / 12)))
    fret_5, fret_6 = 630 * (1 - 2 ** (-5 / 12)), 630 * (1 - 2 ** (-6 / 12))
    assert between.position == pytest.approx((fret_5 + fret_6) / 2)
    assert between.width == pytest.approx(45.5 + 10.5 / 315 * (fret_5 + fret_6) / 2)


def test_the_shape_changes_in_a_straight_line_and_is_level_outside(carved: Carved) -> None:
    figures = carved("exponent_at_1 = 2\nexponent_at_10 = 3\nstations = [0, 1, 5, 10]\nheel_length = 30")
    zero, first, fifth, tenth = (station.exponent for station in figures["carve_stations"])
    places = [630 * (1 - 2 ** (-fret / 12)) for fret in (1, 5, 10)]
    assert (zero, first, tenth) == pytest.approx((2.0, 2.0, 3.0))
    assert fifth == pytest.approx(2 + (places[1] - places[0]) / (places[2] - places[0]))


def test_stations_in_the_heel_are_left_out(carved: Carved) -> None:
    """The heel begins 50 mm before fret 13, at 282.68; fret 11 lies at 296.27."""
    figures = carved("stations = [1, 9, 11]")
    assert figures["carve_heel_start"] == pytest.approx(630 * (1 - 2 ** (-13 / 12)) - 50)
    assert [station.name for station in figures["carve_stations"]] == ["fret 1", "fret 9"]
    assert figures["carve_gauged"] == 2


def test_the_heel_runs_from_the_back_to_the_cap(carved: Carved) -> None:
    figures = carved("heel_length = 60\nheel_cap = 20")
    line = figures["carve_heel_curve"].points
    back = figures["carve_form"].at(figures["carve_heel_start"]).depth
    assert line[0] == pytest.approx((figures["carve_heel_start"], -back))
    assert line[-1] == pytest.approx((figures["carve_heel_start"] + 40, -95.0))
    for x, z in line:
        a, b = (x - figures["carve_heel_start"]) / 40, (95 + z) / (95 - back)
        assert a**2 + b**2 == pytest.approx(1.0)


def test_a_fanned_left_handed_neck_is_carved_too(carved: Carved) -> None:
    figures = carved(name="scree")
    assert figures["carve_gauged"] == 3
    assert all(station.depth > 0 for station in figures["carve_stations"])
