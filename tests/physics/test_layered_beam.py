"""Layered sections: what must hold whatever the figures, and cases done by hand."""

import numpy as np
import pytest

from gramil.physics.layered_beam import (
    free_strain_curvature,
    rectangles,
    sagitta,
    section,
    stacked,
)

THREE = stacked([9000.0, 140000.0, 12000.0], [50.0, 10.0, 50.0], [14.0, 3.0, 6.0])


def test_one_stuff_in_slices_is_one_beam() -> None:
    """10 GPa, 50 wide, 22 deep: EI = 10000 x 50 x 22^3 / 12 N mm2, however it is sliced."""
    whole = section(stacked(10000.0, 50.0, [22.0]))
    sliced = section(stacked(10000.0, 50.0, [3.0, 8.0, 11.0]))
    assert float(whole.bending_stiffness) == pytest.approx(10000.0 * 50.0 * 22.0**3 / 12.0, rel=1e-14)
    assert float(sliced.bending_stiffness) == pytest.approx(float(whole.bending_stiffness), rel=1e-13)
    assert float(sliced.neutral_axis) == pytest.approx(11.0, rel=1e-14)


def test_two_layers_by_hand() -> None:
    """1 x 1 of modulus 3 on 1 x 1 of modulus 1: axis at (0.5 + 3 x 1.5) / 4 = 1.25.

    EI = (3 + 1)/12 + 1 x 0.75^2 + 3 x 0.25^2 = 0.33333 + 0.5625 + 0.1875 = 1.083333.
    """
    found = section(stacked([1.0, 3.0], 1.0, [1.0, 1.0]))
    assert float(found.neutral_axis) == pytest.approx(1.25, rel=1e-14)
    assert float(found.bending_stiffness) == pytest.approx(1.0833333333, rel=1e-9)


def test_alike_strains_bend_nothing() -> None:
    assert float(free_strain_curvature(THREE, [2e-4, 2e-4, 2e-4])) == pytest.approx(0.0, abs=1e-18)


def test_growth_above_bows_the_ends_down() -> None:
    assert float(free_strain_curvature(THREE, [0.0, 0.0, 1e-4])) < 0.0
    assert float(free_strain_curvature(THREE, [1e-4, 0.0, 0.0])) > 0.0


def test_no_force_and_no_moment_is_left() -> None:
    """Glued layers left alone: their stresses balance, in pull and in moment with each layer's own bending."""
    strain = np.array([1e-4, 0.0, -3e-4])
    curvature = float(free_strain_curvature(THREE, strain))
    axial = THREE.modulus * THREE.area
    neutral = (axial * THREE.centroid).sum() / axial.sum()
    stress = THREE.modulus * ((axial * strain).sum() / axial.sum() - curvature * (THREE.centroid - neutral) - strain)
    assert float((stress * THREE.area).sum()) == pytest.approx(0.0, abs=1e-9)
    own = -curvature * (THREE.modulus * THREE.inertia).sum()
    assert float((stress * THREE.area * THREE.centroid).sum() + own) == pytest.approx(0.0, abs=1e-7)


def test_stations_at_once_are_stations_one_by_one() -> None:
    width, depth = np.array([44.0, 50.0, 56.0])[:, None], np.array([14.0, 15.0, 17.0])
    thickness = np.column_stack([depth, np.full(3, 6.0)])
    together = section(stacked([9000.0, 12000.0], width, thickness))
    for station in range(3):
        alone = section(stacked([9000.0, 12000.0], float(width[station, 0]), thickness[station]))
        assert together.bending_stiffness[station] == pytest.approx(float(alone.bending_stiffness), rel=1e-14)


def test_height_of_the_reference_line_does_not_matter() -> None:
    low = rectangles([9000.0, 12000.0], 50.0, [14.0, 6.0], [7.0, 17.0])
    high = rectangles([9000.0, 12000.0], 50.0, [14.0, 6.0], [107.0, 117.0])
    assert float(free_strain_curvature(low, [0.0, 1e-4])) == pytest.approx(
        float(free_strain_curvature(high, [0.0, 1e-4])), rel=1e-10
    )


def test_doubling_every_length_halves_curvature() -> None:
    small = free_strain_curvature(stacked([9000.0, 12000.0], 50.0, [14.0, 6.0]), [0.0, 1e-4])
    large = free_strain_curvature(stacked([9000.0, 12000.0], 100.0, [28.0, 12.0]), [0.0, 1e-4])
    assert float(large) == pytest.approx(float(small) / 2.0, rel=1e-13)


def test_sagitta_is_signed_and_flat_is_flat() -> None:
    for curvature in (-0.004, -1e-9, 0.0, 1e-6, 0.004):
        depth = sagitta(curvature, 400.0)
        back = 2.0 * float(depth) / (200.0**2 + float(depth) ** 2)  # of the arc under a chord of 400
        assert back == pytest.approx(curvature, rel=1e-12, abs=1e-20)
    assert float(sagitta(0.01, 200.0)) == 100.0  # half a circle of radius 100
    with pytest.raises(ValueError, match="chord"):
        sagitta(0.01, 201.0)
