"""Stiffness from readings: made-up errors come back out, and the error stated is the error found."""

import math

import numpy as np
import pytest
from tests.textbooks.flat_plane import equal_steps, flat_plane

from gramil.faults import MakersFault
from gramil.physics.stopped_string import StringStiffness, deviation, moved
from gramil.physics.stretch_fit import fit_stretch

PATHS = flat_plane([640.0, 650.0], 0.6, [4.0, 5.0], equal_steps(15), 6.0)
TRUE = StringStiffness(np.array([160.0, 310.0]), np.array([0.16, 0.21]))
GUESS = StringStiffness(np.array([300.0, 120.0]), TRUE.bending_radius)


def test_true_stiffness_comes_back_from_a_wrong_guess() -> None:
    fit = fit_stretch(PATHS, GUESS, deviation(PATHS, TRUE).total)
    assert fit.stretch == pytest.approx(TRUE.stretch, rel=1e-9)
    assert fit.rms == pytest.approx([0.0, 0.0], abs=1e-9)
    assert np.all(fit.uncertainty > 0.0)


def test_unread_stops_are_left_out() -> None:
    readings = np.full((2, 15), np.nan)
    readings[:, [0, 11]] = deviation(PATHS, TRUE).total[:, [0, 11]]
    assert fit_stretch(PATHS, GUESS, readings).stretch == pytest.approx(TRUE.stretch, rel=1e-9)


def test_saddle_out_of_place_is_told_from_stiffness() -> None:
    readings = deviation(moved(PATHS, 0.0, [-0.8, 1.1]), TRUE).total
    fit = fit_stretch(PATHS, GUESS, readings, seek_saddle=True)
    assert fit.stretch == pytest.approx(TRUE.stretch, rel=1e-8)
    assert fit.saddle_error == pytest.approx([-0.8, 1.1], abs=1e-8)
    alone = fit_stretch(PATHS, GUESS, readings)
    assert np.all(alone.rms > 0.2)


@pytest.mark.parametrize("seek_saddle", [False, True])
def test_stated_error_is_the_scatter_of_many_fits(seek_saddle: bool) -> None:
    """300 sets of readings with a normal error of half a cent (fixed seed): within a fifth of the error stated."""
    noise = np.random.default_rng(7).normal(0.0, 0.5, (300, 15))
    one = flat_plane(np.full(300, 650.0), 0.6, 5.0, equal_steps(15), 6.0)
    true = StringStiffness(np.full(300, 250.0), np.full(300, 0.2))
    fit = fit_stretch(one, true, deviation(one, true).total + noise, reading_error=0.5, seek_saddle=seek_saddle)
    assert float(fit.stretch.std()) == pytest.approx(float(np.median(fit.uncertainty)), rel=0.2)
    assert float(fit.stretch.mean()) == pytest.approx(250.0, abs=4.0 * float(fit.stretch.std()) / math.sqrt(300))
    if seek_saddle:
        assert float(fit.saddle_error.std()) == pytest.approx(float(np.median(fit.saddle_uncertainty)), rel=0.2)


def test_scatter_beyond_the_reading_error_widens_the_uncertainty() -> None:
    readings = deviation(PATHS, TRUE).total
    rough = readings + 4.0 * (-1.0) ** np.arange(15)
    assert np.all(fit_stretch(PATHS, GUESS, rough).uncertainty > 3.0 * fit_stretch(PATHS, GUESS, readings).uncertainty)


def test_too_few_readings_name_the_string() -> None:
    readings = deviation(PATHS, TRUE).total.copy()
    readings[1] = np.nan
    with pytest.raises(MakersFault, match="string 2"):
        fit_stretch(PATHS, GUESS, readings)
    readings[1, 3] = 2.0
    with pytest.raises(MakersFault, match="string 2"):
        fit_stretch(PATHS, GUESS, readings, seek_saddle=True)


def test_readings_that_no_stiffness_explains_are_refused() -> None:
    with pytest.raises(MakersFault, match="no stretch stiffness"):
        fit_stretch(PATHS, GUESS, np.full((2, 15), -30.0))
