"""The end of a sheet's air by itself: Crank's closed form, and the same as going all the way there."""

import numpy as np
import pytest
from tests.textbooks.crank_sheet import centre, uptake

from gramil.physics.diffusion import SEALED, Layer, Sheet, course, modes_of
from gramil.physics.diffusion_end import in_held_air, profile_at_end

SPRUCE = Layer(20.0, 1e-4)


@pytest.mark.parametrize("number", [0.02, 0.1, 0.5])
def test_a_plane_sheet_after_one_change(number: float) -> None:
    """J. Crank, The Mathematics of Diffusion, 1975, pages 47 and 48: from 4 to 10 % at the faces."""
    modes = modes_of(Sheet((SPRUCE,)))
    end = number * 20.0**2 / 1e-4
    profile = profile_at_end(modes, 4.0, [0.0, 0.3 * end, end], [10.0, 10.0, 10.0])
    mean = modes.stores @ profile / modes.stores.sum()
    assert mean == pytest.approx(4.0 + 6.0 * float(uptake(number)), abs=1e-3)
    assert modes.middle @ profile == pytest.approx(4.0 + 6.0 * float(centre(number)), abs=1e-3)


@pytest.mark.parametrize("faces", [(np.inf, np.inf), (2e-4, 5e-5), (SEALED, 1e-4), (SEALED, SEALED)])
def test_as_going_there_reading_by_reading(faces: tuple[float, float]) -> None:
    drawn = np.random.default_rng(7)
    times = np.concatenate([[0.0], np.cumsum(drawn.choice([600.0, 600.0, 1200.0, 86400.0], 3000))])
    air = drawn.uniform(5.0, 12.0, (times.size, 2))
    modes = modes_of(Sheet((SPRUCE, Layer(3.0, 4e-5)), *faces))
    start = drawn.uniform(6.0, 9.0, modes.stores.size)
    there = course([modes], [start], times, air[:, None, :]).profiles[0]
    assert profile_at_end(modes, start, times, air) == pytest.approx(there, abs=1e-9)


def test_times_that_fall_are_refused() -> None:
    with pytest.raises(ValueError, match="fall"):
        profile_at_end(modes_of(Sheet((SPRUCE,))), 8.0, [0.0, 10.0, 5.0], [8.0, 8.0, 8.0])


@pytest.mark.parametrize("faces", [(np.inf, np.inf), (2e-4, SEALED), (SEALED, SEALED)])
def test_held_air_is_readings_that_stay(faces: tuple[float, float]) -> None:
    modes = modes_of(Sheet((SPRUCE,), *faces))
    start = np.linspace(6.0, 11.0, modes.stores.size)
    times = np.array([0.0, 3600.0, 86400.0, 30 * 86400.0])
    run = course([modes], [start], times, np.full(4, 8.5))
    found = in_held_air(modes, start, times, 8.5)
    assert found[:, 0] == pytest.approx(run.mean[:, 0], abs=1e-9)
    assert found[:, 1] == pytest.approx(run.centre[:, 0], abs=1e-9)
    assert found[1:, 2:] == pytest.approx(run.faces[1:, 0], abs=1e-9)


def test_a_sheet_dries_in_held_air_as_crank_says() -> None:
    """J. Crank, The Mathematics of Diffusion, 1975, page 48, at D t / L2 of 0.2."""
    found = in_held_air(modes_of(Sheet((SPRUCE,))), 12.0, [0.2 * 400.0 / 1e-4], 7.0)
    assert found[0, 0] == pytest.approx(12.0 - 5.0 * float(uptake(0.2)), abs=1e-3)
    assert found[0, 1] == pytest.approx(12.0 - 5.0 * float(centre(0.2)), abs=1e-3)
