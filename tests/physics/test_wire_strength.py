"""Strength and stretch of wire: identities, and no verdict where the law says nothing."""

import math

import numpy as np
import pytest

from gramil.physics import stiff_string
from gramil.physics.materials import materials
from gramil.physics.wire_strength import StrengthLaw, breaking_load, elongation, stress

FLAT = StrengthLaw(coefficient=2000.0, exponent=0.0, smallest=0.1, largest=2.0, source="made up", flag="memory")


def test_the_breaking_load_is_strength_times_section() -> None:
    assert float(breaking_load(0.3, FLAT)) == pytest.approx(2000.0 * math.pi * 0.09 / 4.0, rel=1e-14)


def test_pitch_at_breaking_hangs_on_length_alone_when_strength_is_the_same() -> None:
    """f = sqrt(S / rho) / (2 L), whatever the diameter: sqrt(2000 MPa / 8000 kg/m3) / 1.3 m = 500 / 1.3 Hz."""
    for diameter in (0.2, 0.4, 0.9):
        density = stiff_string.plain_density(diameter, 8000.0)
        pull = float(stiff_string.tension(density, 650.0, 500.0 / 1.3))
        assert pull == pytest.approx(float(breaking_load(diameter, FLAT)))


def test_nothing_is_said_outside_the_law() -> None:
    law = materials()["music_wire"].strength
    assert law is not None
    assert np.isnan(law.strength([0.05, 7.0])).all()
    assert np.isfinite(law.strength([0.1, 6.5])).all()


def test_elongation_is_strain_times_length() -> None:
    strain = float(stress(100.0, 0.4)) / 200000.0
    assert float(elongation(100.0, 650.0, 0.4, 200000.0)) == pytest.approx(650.0 * strain, rel=1e-14)
