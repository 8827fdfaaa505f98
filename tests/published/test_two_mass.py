"""A plate over a box of air: O. Christensen and B. B. Vistisen, "Simple model for low-frequency guitar function",
J. Acoust. Soc. Am. 68 (1980). Its two identities are exact; the worked case was computed elsewhere.
"""

import math

import pytest

from gramil.physics.two_mass import Box, Piston, two_mass

BOX = Box(volume=12.5e6, hole=math.pi * 50.0**2, plug=1.7 * 50.0, density=1.2, speed=343e3)
PISTON = Piston(frequency=170.0, area=0.05e6, mass=0.100)


def test_the_worked_case() -> None:
    """12.5 l, a hole of radius 50 mm, plug 1.7 radii, 0.05 m2 and 100 g of plate at 170 Hz."""
    found = two_mass(PISTON, BOX)
    assert found.box == pytest.approx(148.421, abs=5e-4)
    assert found.closed == pytest.approx(189.874, abs=5e-4)
    assert found.lower == pytest.approx(121.090, abs=5e-4)
    assert found.upper == pytest.approx(208.370, abs=5e-4)


@pytest.mark.parametrize("volume", [6e6, 12.5e6, 20e6])
@pytest.mark.parametrize("frequency", [90.0, 170.0, 260.0])
def test_identities(volume: float, frequency: float) -> None:
    found = two_mass(Piston(frequency, 0.04e6, 0.08), Box(volume, BOX.hole, BOX.plug, 1.2, 343e3))
    assert found.lower * found.upper == pytest.approx(found.box * frequency, rel=1e-12)
    assert found.lower**2 + found.upper**2 == pytest.approx(found.box**2 + found.closed**2, rel=1e-12)


def test_a_heavy_plate_leaves_the_rigid_box() -> None:
    found = two_mass(Piston(500.0, 0.05e6, 1e6), BOX)
    assert found.lower == pytest.approx(found.box, rel=1e-5)
    assert found.upper == pytest.approx(500.0, rel=1e-5)
