"""A top that is thinner at its rim: mean thickness and weight by counting, and what goes by its rim or its middle."""

import math
from collections.abc import Callable

import numpy as np
import pytest

from gramil.graph import Figures
from gramil.prints.solved import with_top

EDGE, RUN, MIDDLE = 1.8, 80.0, 2.3


@pytest.fixture(scope="module")
def thinned(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Figures:
    return derive_text(text_of("mere").replace("[top]\n", f"[top]\nedge_thickness = {EDGE}\nedge_run = {RUN}\n"))


def distance_in(points: np.ndarray, ring: np.ndarray) -> np.ndarray:
    """How far points lie from the nearest of a ring's points."""
    return np.array([np.hypot(*(ring - point).T).min() for point in points])


def test_the_mean_is_that_of_a_grid_of_places(thinned: Figures) -> None:
    """Each mm2 of a coarse grid by its own distance from the outline: within a hundredth of a mm."""
    (outline,) = thinned["body_outlines"]
    along, across = np.meshgrid(np.arange(2.0, 488.0, 4.0), np.arange(-184.0, 184.0, 4.0))
    places = np.stack([along.ravel(), across.ravel()], axis=1)
    inside = places[outline.contains(places)]
    ring = outline.polyline(0.01)
    ring = np.concatenate([np.linspace(a, b, 9)[:-1] for a, b in zip(ring, np.roll(ring, -1, axis=0), strict=True)])
    thick = EDGE + (MIDDLE - EDGE) * np.minimum(distance_in(inside, ring) / RUN, 1.0)
    assert thinned["graduated_mean"] == pytest.approx(float(thick.mean()), abs=0.01)


def test_it_weighs_less_by_what_was_taken_off(thinned: Figures, example: Callable[[str], Figures]) -> None:
    """By volume and density: the hole is as thick as the middle on both."""
    even = example("mere")
    (outline,) = even["body_outlines"]
    density = even["timber_top"].timber.density * 1e-6
    taken = (MIDDLE - thinned["graduated_mean"]) * outline.area
    assert even["graduated_mean"] == MIDDLE
    hole = math.pi * 43**2
    assert even["graduated_weight"] == pytest.approx((outline.area - hole) * MIDDLE * density)
    assert even["graduated_weight"] - thinned["graduated_weight"] == pytest.approx(taken * density)
    assert math.isnan(even["graduated_run"])


def test_what_is_at_the_rim_goes_by_the_rim_and_the_bridge_by_the_middle(
    thinned: Figures, example: Callable[[str], Figures]
) -> None:
    even = example("mere")
    assert thinned["foot_step"] == EDGE
    assert thinned["channel_edge_top"].plate == EDGE
    assert list(thinned["bridge_lever"]) == list(even["bridge_lever"])


def test_the_solved_top_is_as_thick_at_each_place_as_it_is_worked(
    thinned: Figures, example: Callable[[str], Figures]
) -> None:
    """At the rim its edge's, in the middle the middle's, half way in between; and it gives more than an even one."""
    solved, even = with_top(thinned), with_top(example("mere"))
    (plate,) = solved["braced_plate"]
    (outline,) = thinned["body_outlines"]
    widest = float(outline.width) / 2
    at = float(thinned["across_station"])
    places = np.array([[at, widest], [at, widest - RUN / 2], [at, 0.0]])
    assert callable(plate.thickness)
    assert plate.thickness(places) == pytest.approx([EDGE, (EDGE + MIDDLE) / 2, MIDDLE], abs=0.01)
    assert even["braced_plate"][0].thickness == MIDDLE
    more, less = (each["braced_quick"][0] for each in (solved, even))
    assert abs(more.moved.turn) > abs(less.moved.turn)
