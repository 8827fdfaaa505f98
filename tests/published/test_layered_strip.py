"""Strips of two layers against Timoshenko's bimetal formula, and sagittas against Euclid.

S. Timoshenko, "Analysis of bi-metal thermostats", J. Opt. Soc. Am. & Rev. Sci. Instr. 11, 233-255 (1925). The opening
and notation were read; equations (4) and (5) are from memory, confirmed by composite-beam solves elsewhere.
"""

import pytest

from gramil.physics.layered_beam import free_strain_curvature, sagitta, stacked

STRAIN = 1e-3


def timoshenko(h1: float, h2: float, n: float) -> float:
    """Equation (4): m = h1/h2, n = E1/E2, for a free strain of layer 2 over layer 1."""
    m = h1 / h2
    lever = 3.0 * (1.0 + m) ** 2 + (1.0 + m * n) * (m**2 + 1.0 / (m * n))
    return 6.0 * STRAIN * (1.0 + m) ** 2 / ((h1 + h2) * lever)


def strip(h1: float, h2: float, e1: float, e2: float) -> float:
    """Layer 1 lies on layer 2 and layer 2 grows: its side is the outer one, so the ends rise."""
    return float(free_strain_curvature(stacked([e2, e1], 10.0, [h2, h1]), [STRAIN, 0.0]))


# Curvature in 1/mm, worked out elsewhere from equation (4). h1, h2 in mm, moduli in MPa.
CASES = [
    (1.0, 1.0, 10000.0, 10000.0, 7.5e-4),
    (1.0, 1.0, 1000.0, 10000.0, 4.979253e-4),
    (1.0, 4.0, 10000.0, 10000.0, 1.92e-4),
    (6.0, 20.0, 10000.0, 1200.0, 5.747973e-5),
    (3.0, 2.8, 12000.0, 840.0, 1.359230e-4),
]


@pytest.mark.parametrize(("h1", "h2", "e1", "e2", "curvature"), CASES)
def test_two_layers(h1: float, h2: float, e1: float, e2: float, curvature: float) -> None:
    assert strip(h1, h2, e1, e2) == pytest.approx(curvature, rel=2e-7)
    assert strip(h1, h2, e1, e2) == pytest.approx(timoshenko(h1, h2, e1 / e2), rel=1e-12)


@pytest.mark.parametrize("h", [0.5, 3.0])
def test_equal_layers(h: float) -> None:
    """Equation (5): 1.5 strain / h over the whole thickness h, for equal layers of one stuff."""
    assert strip(h / 2.0, h / 2.0, 9000.0, 9000.0) == pytest.approx(1.5 * STRAIN / h, rel=1e-13)


# Radius, chord, sagitta in mm: R - sqrt(R^2 - c^2/4) worked out elsewhere; exact geometry.
SAGITTAS = [
    (304.8, 50.0, 1.02699),
    (254.0, 42.0, 0.86960),
    (406.4, 56.0, 0.96571),
    (508.0, 56.0, 0.77224),
    (7620.0, 400.0, 2.62512),
    (4572.0, 300.0, 2.46129),
    (184.15, 42.0, 1.20131),
]


@pytest.mark.parametrize(("radius", "chord", "depth"), SAGITTAS)
def test_sagitta(radius: float, chord: float, depth: float) -> None:
    assert float(sagitta(1.0 / radius, chord)) == pytest.approx(depth, abs=6e-6)
