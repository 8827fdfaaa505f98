"""A bar on a dome, by hand: 3-4-5 triangles on a ball of 500."""

import math

import numpy as np
import pytest

from gramil.shapes.arched_bar import ArchedBar, Notch


def bar(**changes: float) -> ArchedBar:
    """600 long over the apex of a ball of 500: sqrt(500^2 - 300^2) = 400, so that its foot hangs 100 at its middle."""
    sizes = {"length": 600.0, "height": 150.0, "end_height": 20.0, "end_run": 140.0, "curvature": 1 / 500}
    return ArchedBar(**{**sizes, "scalloped": False, "nearest": 300.0, **changes})  # type: ignore[arg-type]


def test_the_foot_hangs_below_its_chord() -> None:
    """160 from the middle, sqrt(500^2 - 160^2) = 473.70877 stands 73.70877 over the 400 of the ends."""
    assert bar().hang == pytest.approx(100.0)
    assert bar().foot([0, 140, 300, 600]).tolist() == pytest.approx([0, -73.70877, -100, 0], abs=1e-5)
    assert bar(curvature=0.0).foot([0, 300]).tolist() == [0, 0]


def test_the_upper_edge_is_straight_and_as_high_over_the_plate_in_the_middle_as_described() -> None:
    """150 over the plate in the middle is 50 over the chord, all along between the worked ends."""
    edge = bar().edge([0, 70, 140, 300, 460, 600]).tolist()
    assert edge == pytest.approx([20, 35, 50, 50, 50, 20])
    assert bar().over_plate([0, 140, 300]).tolist() == pytest.approx([20, 123.70877, 150], abs=1e-5)
    assert bar(end_run=0.0).edge([0, 300, 600]).tolist() == pytest.approx([50, 50, 50])


def test_a_scalloped_end_is_hollow_and_meets_the_edge_smoothly() -> None:
    """Half a wave of a cosine: a quarter of the way up at 60 degrees of 180, half at 90."""
    edge = bar(scalloped=True).edge([0, 140 / 3, 70, 140]).tolist()
    assert edge == pytest.approx([20, 27.5, 35, 50])


def test_a_bar_aside_of_the_apex_is_tilted_and_straight_all_the_same() -> None:
    """Beginning over the apex and 300 long, its second end is 100 higher: a slope of 1 in 3, its edge beside it."""
    aside = bar(length=300.0, nearest=0.0, end_run=0.0, height=60.0)
    assert aside.tilt == pytest.approx(math.atan(1 / 3))
    edge = aside.edge([0, 150, 300])
    assert (edge[1] - edge[0], edge[2] - edge[1]) == (pytest.approx(50), pytest.approx(50))
    over = [float(aside.over_plate(x)) for x in range(301)]
    assert max(over) == pytest.approx(60.0, abs=1e-3)
    ((along, height),) = aside.laid([(300.0, 100.0)])
    assert (along, height) == (pytest.approx(math.hypot(300, 100)), pytest.approx(0, abs=1e-9))


def test_a_low_bar_on_a_strong_dome_follows_the_plate() -> None:
    """50 high, its foot hangs 100: a straight edge would pass 50 under the ends, so it is 20 over the plate there.

    200 along, 100 from the middle, the foot hangs sqrt(500^2 - 100^2) - 400 = 89.89795; the straight edge clears it by
    39.89795.
    """
    low = bar(height=50.0, end_run=0.0)
    assert low.over_plate([0, 100, 200, 300, 600]).tolist() == pytest.approx([20, 20, 39.89795, 50, 20])
    assert low.tallest == pytest.approx(120.0)
    outline = low.outline()
    edge = outline[[x for x, _ in outline].index(600.0) + 1 :]
    xs, zs = (np.array(each)[::-1] for each in zip(*edge, strict=True))
    along = np.linspace(0.0, 600.0, 5001)
    drawn = np.interp(along, xs, zs)
    assert drawn == pytest.approx(low.edge(along), abs=0.01), "also where it leaves the plate for the straight"
    assert bar().tallest == pytest.approx(150.0)


def test_once_round_with_a_notch_from_above_and_one_from_the_foot() -> None:
    plain = bar(curvature=0.0, end_run=0.0, height=40.0)
    assert plain.outline() == ((0, 0), (600, 0), (600, 40), (0, 40))
    notched = plain.outline([Notch(100, 110, 25, True), Notch(300, 320, 15, False)])
    assert notched == (
        *((0, 0), (300, 0), (300, 15), (320, 15), (320, 0), (600, 0)),
        *((600, 40), (110, 40), (110, 25), (100, 25), (100, 40), (0, 40)),
    )


def test_a_notch_at_the_very_end_takes_the_corner_off() -> None:
    plain = bar(curvature=0.0, end_run=0.0, height=40.0)
    assert plain.outline([Notch(-5, 10, 25, True)])[-3:] == ((10, 40), (10, 25), (0, 25))
