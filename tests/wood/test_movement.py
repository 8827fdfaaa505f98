"""Movement: signs, the flag outside the coefficients' range, and the handbook's form by total shrinkage."""

import pytest
from tests.textbooks.total_shrinkage import size_from_shrinkage

from gramil.wood.movement import coefficient_from_shrinkage, free_strain, movement


def test_a_top_by_hand() -> None:
    """400 mm of quartersawn Sitka, C_R 0.00148, from 8 to 6.5 %: 400 x 0.00148 x -1.5 = -0.888 mm."""
    moved = movement(400.0, 0.00148, 8.0, 6.5)
    assert moved.change == pytest.approx(-0.888)
    assert not moved.extrapolated


@pytest.mark.parametrize(("moisture", "later"), [(8.0, 5.9), (5.0, 8.0), (12.0, 14.1), (15.0, 10.0)])
def test_moisture_outside_six_to_fourteen_is_marked(moisture: float, later: float) -> None:
    assert movement(100.0, 0.002, moisture, later).extrapolated


def test_the_coefficient_is_the_slope_of_shrinkage_at_ten_percent() -> None:
    slope = (size_from_shrinkage(1.0, 5.5, 10.0, 10.5) - size_from_shrinkage(1.0, 5.5, 10.0, 9.5)) / 1.0
    assert coefficient_from_shrinkage(5.5) == pytest.approx(slope, rel=1e-9)


def test_free_strain_takes_arrays() -> None:
    assert free_strain(0.0015, 8.0, [6.0, 8.0, 10.0]) == pytest.approx([-0.003, 0.0, 0.003])
