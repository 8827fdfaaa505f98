"""Movement: signs, the flag outside the coefficients' range, and identities between the two forms."""

import pytest

from gramil.wood.movement import coefficient_from_shrinkage, free_strain, movement, movement_along, size_from_shrinkage


def test_a_top_by_hand() -> None:
    """400 mm of quartersawn Sitka, C_R 0.00148, from 8 to 6.5 %: 400 x 0.00148 x -1.5 = -0.888 mm."""
    moved = movement(400.0, 0.00148, 8.0, 6.5)
    assert moved.change == pytest.approx(-0.888)
    assert not moved.extrapolated


@pytest.mark.parametrize(("moisture", "later"), [(8.0, 5.9), (5.0, 8.0), (12.0, 14.1), (15.0, 10.0)])
def test_moisture_outside_six_to_fourteen_is_marked(moisture: float, later: float) -> None:
    assert movement(100.0, 0.002, moisture, later).extrapolated


def test_there_and_back_by_shrinkage_is_exact() -> None:
    dry = size_from_shrinkage(300.0, 7.8, 12.0, 6.0)
    assert dry < 300.0
    assert size_from_shrinkage(dry, 7.8, 6.0, 12.0) == pytest.approx(300.0, rel=1e-14)
    assert size_from_shrinkage(100.0, 7.8, 30.0, 0.0) == pytest.approx(92.2)


def test_wood_above_fibre_saturation_stays() -> None:
    assert size_from_shrinkage(100.0, 8.0, 60.0, 35.0) == 100.0


def test_the_coefficient_is_the_slope_of_shrinkage_at_ten_percent() -> None:
    slope = (size_from_shrinkage(1.0, 5.5, 10.0, 10.5) - size_from_shrinkage(1.0, 5.5, 10.0, 9.5)) / 1.0
    assert coefficient_from_shrinkage(5.5) == pytest.approx(slope, rel=1e-9)


def test_along_the_grain_is_a_few_hundredths_of_across() -> None:
    """650 mm from 8 to 6 %: 0.1 to 0.2 % x 2/30 is -0.04 to -0.09 mm."""
    least, most = movement_along(650.0, 8.0, 6.0)
    assert (least, most) == pytest.approx((-0.0867, -0.0433), abs=2e-4)


def test_free_strain_takes_arrays() -> None:
    assert free_strain(0.0015, 8.0, [6.0, 8.0, 10.0]) == pytest.approx([-0.003, 0.0, 0.003])
