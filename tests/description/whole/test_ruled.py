"""The body by a ruler: what was measured is read back off the curve, which has no wiggles."""

import math
from dataclasses import replace

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from gramil.description.whole.ruled import Ruled, half_through
from gramil.faults import MakersFault
from gramil.shapes.outline import Outline
from gramil.shapes.outline_through import through_half_widths

MIDDLE = Ruled(495, 280, 238, 172, 385, 328)


def written(ruled: Ruled) -> Outline:
    """The outline through the stations as a description holds them, to 0.01 mm."""
    points = [(round(x, 2), round(y, 2)) for x, y in half_through(ruled)]
    return through_half_widths([x for x, _ in points], [y for _, y in points])


def bodies() -> st.SearchStrategy[Ruled]:
    """Bodies of every size that a starting point takes, and some beside; whole millimetres, as a ruler gives them."""
    return st.builds(
        Ruled,
        length=st.integers(470, 535),
        upper=st.integers(235, 320),
        waist=st.integers(205, 280),
        waist_at=st.integers(165, 195),
        lower=st.integers(335, 435),
        lower_at=st.integers(320, 365),
    ).filter(lambda each: each.waist + 10 <= each.upper < each.lower)


@settings(max_examples=40, deadline=None)
@given(bodies())
def test_bouts_and_waist_are_read_back(ruled: Ruled) -> None:
    outline = written(ruled)
    upper, waist, lower = outline.stations
    assert [upper.kind, waist.kind, lower.kind] == ["widest", "narrowest", "widest"]
    assert 2 * upper.half_width == pytest.approx(ruled.upper, abs=0.02)
    assert 2 * waist.half_width == pytest.approx(ruled.waist, abs=0.02)
    assert 2 * lower.half_width == pytest.approx(ruled.lower, abs=0.02)
    assert (waist.x, lower.x) == pytest.approx((ruled.waist_at, ruled.lower_at), abs=1.0)
    assert outline.length == pytest.approx(ruled.length, abs=0.01)
    assert outline.half_width(ruled.waist_at) * 2 == pytest.approx(ruled.waist, abs=0.02)


@settings(max_examples=40, deadline=None)
@given(bodies())
def test_it_bends_inward_at_the_waist_and_nowhere_else(ruled: Ruled) -> None:
    half = written(ruled).half
    places = half.place(np.linspace(half.breaks[0], half.breaks[-1], 4001))
    sides = places[places[:, 0] > 0.5]
    ways = np.unwrap(np.arctan2(*np.diff(sides, axis=0)[:, ::-1].T))
    turns = np.sign(np.diff(ways)[np.abs(np.diff(ways)) > 1e-6])
    assert (np.diff(turns) != 0).sum() == 2


def test_its_area_against_shapely() -> None:
    outline = written(MIDDLE)
    polygon = shapely.Polygon(outline.polyline(0.002))
    assert outline.area == pytest.approx(polygon.area, rel=1e-4)
    box = MIDDLE.length * MIDDLE.lower
    assert 0.6 < polygon.area / box < math.pi / 4 + 0.05


@pytest.mark.parametrize(
    ("wrong", "where"),
    [
        ({"waist": 290.0}, r"body\.waist"),
        ({"waist": 400.0}, r"body\.waist"),
        ({"waist_at": 330.0}, r"body\.waist_at"),
        ({"lower_at": 500.0}, r"body\.lower_at"),
        ({"flat": 280.0}, r"body\.upper"),
        ({"length": math.nan}, "not a length over 0"),
        ({"upper": -1.0}, "not a length over 0"),
    ],
)
def test_measures_that_contradict_each_other(wrong: dict[str, float], where: str) -> None:
    with pytest.raises(MakersFault, match=where):
        half_through(replace(MIDDLE, **wrong))


def test_no_wiggle_is_drawn_to_please_a_slip() -> None:
    """A waist a finger's breadth from the lower bout: either a curve without wiggles, or it is said."""
    with pytest.raises(MakersFault, match="without wiggles"):
        half_through(replace(MIDDLE, waist_at=318.0, lower_at=328.0))
