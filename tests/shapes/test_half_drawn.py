"""Half an outline, drawn to its middle line: the same outline as the whole, however it lies; and what is no half."""

import numpy as np
import pytest

from gramil.faults import MakersFault
from gramil.shapes.chains import Drawing, Trace
from gramil.shapes.outline_through import through_half_widths
from gramil.shapes.traced_outline import Reading, traced_outline

X = (0, 15, 50, 100, 150, 200, 240, 290, 340, 400, 450, 480, 492)
WAISTED = through_half_widths(X, (0, 70, 128, 148, 140, 124, 120, 135, 170, 196, 170, 110, 0))
HALF = WAISTED.half.place(WAISTED.half.sample(0.01, 2.0))
MIRRORS = Reading(mirrors=True)


def drawn(points: np.ndarray, straight: int = 0) -> Drawing:
    """A line; its last steps are straight, so many of them."""
    flags = np.arange(len(points) - 1) >= len(points) - 1 - straight
    return Drawing((Trace(points, flags, (), "the half"),), 1.0)


@pytest.mark.parametrize("turn", [np.eye(2), [[0, 1], [1, 0]], [[-1, 0], [0, -1]], [[0, -1], [1, 0]]])
@pytest.mark.parametrize("middle", [False, True], ids=["open", "middle line drawn"])
def test_a_half_is_mirrored(turn: object, middle: bool) -> None:
    points = HALF @ np.array(turn) + (37.0, -12.0)
    half = drawn(np.vstack((points, points[:1])), 1) if middle else drawn(points)
    found = traced_outline(half, MIRRORS)
    assert found.outline.length == pytest.approx(492.0, abs=0.02)
    assert found.outline.width == pytest.approx(WAISTED.width, abs=0.02)
    assert found.outline.area == pytest.approx(WAISTED.area, rel=2e-4)
    assert found.outline.half_width(240) == pytest.approx(120.0, abs=0.05)


def test_ends_a_hair_off_the_middle_line_are_brought_to_it() -> None:
    points = HALF.copy()
    points[-1, 1] = 0.08
    assert traced_outline(drawn(points), MIRRORS).outline.width == pytest.approx(WAISTED.width, abs=0.15)


def test_a_whole_outline_with_a_gap_is_no_half() -> None:
    ring = np.vstack((HALF, HALF[-2:0:-1] * (1, -1)))
    with pytest.raises(MakersFault, match="not closed"):
        traced_outline(drawn(ring[1:-1]), MIRRORS)


def test_a_half_that_stops_short_of_the_middle_line_is_refused() -> None:
    with pytest.raises(MakersFault, match="not closed"):
        traced_outline(drawn(HALF[: len(HALF) * 3 // 4]), MIRRORS)


def test_nearly_alike_is_refused_by_how_much_and_made_alike_on_the_makers_word() -> None:
    """One half 5 mm wider at its widest than the other: refused with that figure, half-way when it is let pass."""
    wider = HALF * (1, -(201 / 196))
    ring = np.vstack((HALF, wider[-2::-1]))
    with pytest.raises(MakersFault, match=r"differ by \d\.\d\d mm.*alike ="):
        traced_outline(drawn(ring), MIRRORS)
    found = traced_outline(drawn(ring), Reading(mirrors=True, asymmetry=3.0))
    assert 0.5 < found.asymmetry < 3.0
    assert found.outline.width == pytest.approx(WAISTED.width * (1 + 2.5 / 196), abs=0.05)
