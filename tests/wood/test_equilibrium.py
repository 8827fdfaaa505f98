"""Equilibrium moisture: its direction, and what it refuses."""

import numpy as np
import pytest

from gramil.wood.equilibrium import equilibrium_moisture


def test_damper_is_wetter_and_warmer_is_drier() -> None:
    assert (np.diff(equilibrium_moisture(20.0, np.arange(0.0, 101.0))) > 0).all()
    assert (np.diff(equilibrium_moisture(np.arange(10.0, 41.0), 50.0)) < 0).all()


def test_dry_air_dries_fully() -> None:
    assert float(equilibrium_moisture(20.0, 0.0)) == 0.0


def test_the_fahrenheit_form_of_the_same_equation_agrees() -> None:
    """FPL-GTR-282, equation 4-5, coefficients for F: another fit of the same tables, within 0.01 % of moisture."""
    for celsius in (10.0, 20.0, 30.0):
        for humidity in (20.0, 45.0, 70.0):
            assert float(equilibrium_moisture(celsius, humidity)) == pytest.approx(
                _fahrenheit(celsius, humidity), abs=0.02
            )


def _fahrenheit(celsius: float, humidity: float) -> float:
    t, h = celsius * 1.8 + 32, humidity / 100
    w = 330 + 0.452 * t + 0.00415 * t**2
    k = 0.791 + 0.000463 * t - 0.000000844 * t**2
    k1 = 6.34 + 0.000775 * t - 0.0000935 * t**2
    k2 = 1.09 + 0.0284 * t - 0.0000904 * t**2
    bound = (k1 * k * h + 2 * k1 * k2 * k**2 * h**2) / (1 + k1 * k * h + k1 * k2 * k**2 * h**2)
    return 1800 / w * (k * h / (1 - k * h) + bound)


def test_impossible_air_and_wood_are_refused() -> None:
    for humidity in (-1.0, 101.0):
        with pytest.raises(ValueError, match="0 to 100"):
            equilibrium_moisture(20.0, humidity)
