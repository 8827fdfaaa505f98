"""Diffusion: what must hold for any sheet under any air, and limits that have a closed form."""

import math

import numpy as np
import pytest
from tests.textbooks.crank_sheet import centre, short_time_uptake, uptake

from gramil.physics.diffusion import OPEN, SEALED, Layer, Modes, Sheet, course, modes_of

RAGGED_TIMES = np.cumsum(np.random.default_rng(4).integers(60, 90000, 400)).astype(float)
RAGGED_AIR = np.random.default_rng(5).uniform(4.0, 16.0, 400)
SPRUCE = Layer(3.0, 1e-4, 400.0)
ROSEWOOD = Layer(7.0, 3e-5, 800.0)


def _modes(*layers: Layer, first: float = OPEN, last: float = OPEN) -> Modes:
    return modes_of(Sheet(layers, first, last))


@pytest.mark.parametrize("first", [OPEN, 5e-5, SEALED])
@pytest.mark.parametrize("last", [OPEN, 2e-4, SEALED])
@pytest.mark.parametrize("layers", [(SPRUCE,), (SPRUCE, ROSEWOOD), (ROSEWOOD, SPRUCE, ROSEWOOD)])
def test_what_went_in_is_what_is_there(layers: tuple[Layer, ...], first: float, last: float) -> None:
    """To 1e-10 of what the sheet holds, over 400 uneven readings of some 200 days."""
    modes = _modes(*layers, first=first, last=last)
    run = course([modes], [9.0], RAGGED_TIMES, RAGGED_AIR)
    held = run.mean[:, 0] * sum(layer.thickness * layer.capacity for layer in layers)
    assert held[-1] - held[0] == pytest.approx(run.taken_up.sum(), abs=1e-10 * held[0])


def test_a_sealed_sheet_keeps_its_content() -> None:
    run = course([_modes(SPRUCE, first=SEALED, last=SEALED)], [11.0], RAGGED_TIMES, RAGGED_AIR)
    assert run.mean[:, 0] == pytest.approx(11.0, abs=1e-10)
    assert run.taken_up[0] == pytest.approx([0.0, 0.0], abs=1e-10 * 11.0 * 3.0 * 400.0)


def test_one_sealed_face_is_half_of_a_double_sheet() -> None:
    single = course([_modes(Layer(4.0, 1e-4), last=SEALED)], [8.0], RAGGED_TIMES, RAGGED_AIR)
    double = course([_modes(Layer(8.0, 1e-4))], [8.0], RAGGED_TIMES, RAGGED_AIR)
    assert single.mean[1:] == pytest.approx(double.mean[1:], abs=2e-3)
    assert single.faces[1:, :, 1] == pytest.approx(double.centre[1:], abs=2e-2)


def test_steps_may_be_split_at_will() -> None:
    modes = _modes(SPRUCE, first=5e-5, last=SEALED)
    fine_times = np.unique(np.concatenate([RAGGED_TIMES, RAGGED_TIMES[:-1] + 0.37 * np.diff(RAGGED_TIMES)]))
    fine = course([modes], [9.0], fine_times, np.interp(fine_times, RAGGED_TIMES, RAGGED_AIR))
    coarse = course([modes], [9.0], RAGGED_TIMES, RAGGED_AIR)
    assert fine.mean[-1] == pytest.approx(coarse.mean[-1], abs=1e-11)
    assert fine.taken_up == pytest.approx(coarse.taken_up, abs=1e-6)


def test_a_course_can_be_taken_up_where_it_was_left() -> None:
    modes = _modes(SPRUCE, ROSEWOOD, first=5e-5)
    whole = course([modes], [9.0], RAGGED_TIMES, RAGGED_AIR)
    early = course([modes], [9.0], RAGGED_TIMES[:150], RAGGED_AIR[:150])
    late = course([modes], early.profiles, RAGGED_TIMES[149:], RAGGED_AIR[149:])
    assert late.profiles[0] == pytest.approx(whole.profiles[0], abs=1e-10)


def test_a_layer_cut_in_two_is_the_same_layer() -> None:
    whole = _modes(Layer(6.0, 1e-4), first=2e-4, last=2e-4)
    parts = _modes(Layer(2.0, 1e-4), Layer(4.0, 1e-4), first=2e-4, last=2e-4)
    run = course([whole, parts], [9.0, 9.0], RAGGED_TIMES, RAGGED_AIR)
    assert run.mean[:, 1] == pytest.approx(run.mean[:, 0], abs=1e-3)
    assert run.taken_up[1] == pytest.approx(run.taken_up[0], abs=1e-3)


def test_steady_flow_through_layers_and_surfaces_in_series() -> None:
    """Flow is the difference over the sum of resistances: 1/(s c) at each face, thickness/(D c) in each layer."""
    modes = _modes(SPRUCE, ROSEWOOD, first=5e-5, last=2e-4)
    days = np.array([0.0, 3e8, 3e8 + 1000.0])
    air = np.broadcast_to([[14.0, 6.0]], (3, 1, 2))
    resistance = 1 / (5e-5 * 400) + 3.0 / (1e-4 * 400) + 7.0 / (3e-5 * 800) + 1 / (2e-4 * 800)
    settled = course([modes], [9.0], days[:2], air[:2]).profiles
    run = course([modes], settled, days[1:], air[1:])
    assert run.taken_up[0] == pytest.approx([8.0 / resistance * 1000.0, -8.0 / resistance * 1000.0], rel=1e-9)
    assert run.faces[-1, 0] == pytest.approx(
        [14.0 - 8.0 / resistance / (5e-5 * 400), 6.0 + 8.0 / resistance / 160e-3 * 1]
    )


def test_a_thin_sheet_with_slow_faces_decays_as_one_lump() -> None:
    """Where the surface resists far more than the wood, the whole sheet goes as exp(-2 s t / h)."""
    modes = _modes(Layer(1.0, 1e-3), first=1e-7, last=1e-7)
    times = np.linspace(0.0, 1e7, 6)
    run = course([modes], [10.0], times, np.full(6, 6.0))
    assert run.mean[:, 0] == pytest.approx(6.0 + 4.0 * np.exp(-2e-7 * times), rel=1e-4)


def test_surface_resistance_by_the_roots_of_the_transcendental_equation() -> None:
    """Sheet of half thickness a with surface resistance: Crank's roots of b tan b = L, L = a s / D (series by hand)."""
    biot, half, diffusion = 0.8, 1.5, 1e-4
    roots = [_root(biot, order) for order in range(40)]
    times = half**2 / diffusion * np.array([0.0, 0.05, 0.2, 1.0, 3.0])
    series = [
        1
        - sum(
            2 * biot**2 * math.exp(-(b**2) * t * diffusion / half**2) / (b**2 * (b**2 + biot**2 + biot)) for b in roots
        )
        for t in times[1:]
    ]
    face = biot * diffusion / half
    run = course([_modes(Layer(2 * half, diffusion), first=face, last=face)], [0.0], times, np.ones(5))
    assert run.mean[1:, 0] == pytest.approx(series, abs=2e-6)


def _root(biot: float, order: int) -> float:
    low, high = order * math.pi + 1e-12, (order + 0.5) * math.pi - 1e-12
    for _ in range(200):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if middle * math.tan(middle) < biot else (low, middle)
    return low


def test_slow_swings_of_the_air_reach_the_middle_late_and_small() -> None:
    """Sealed middle plane, air as sin(w t): the mean follows Re[tanh(q)/q], q = a sqrt(i w / D) (closed form)."""
    half, diffusion, period = 5.0, 1e-4, 10 * 86400.0
    pulse = 2 * math.pi / period
    times = np.linspace(0.0, 12 * period, 12 * 400 + 1)
    run = course([_modes(Layer(2 * half, diffusion))], [0.0], times, np.sin(pulse * times))
    q = half * np.sqrt(1j * pulse / diffusion)
    wanted = np.imag(np.tanh(q) / q * np.exp(1j * pulse * times))
    assert run.mean[-400:, 0] == pytest.approx(wanted[-400:], abs=1e-4)


def test_many_at_once_are_as_each_alone() -> None:
    sheets = [_modes(SPRUCE), _modes(SPRUCE, ROSEWOOD, first=5e-5), _modes(ROSEWOOD, last=SEALED)]
    together = course(sheets, [9.0, 8.0, 10.0], RAGGED_TIMES, RAGGED_AIR)
    for row, (modes, start) in enumerate(zip(sheets, [9.0, 8.0, 10.0], strict=True)):
        alone = course([modes], [start], RAGGED_TIMES, RAGGED_AIR)
        assert together.mean[:, row] == pytest.approx(alone.mean[:, 0], abs=1e-12)
        assert together.profiles[row] == pytest.approx(alone.profiles[0], abs=1e-12)


def test_air_may_jump_when_a_piece_is_moved() -> None:
    """Two readings at one time: the piece leaves one place's air for another's."""
    moved = course([_modes(SPRUCE)], [9.0], [0.0, 5e4, 5e4, 9e4], [9.0, 9.0, 13.0, 13.0])
    number = 4e4 * 1e-4 / 9.0
    assert moved.mean[-1, 0] == pytest.approx(9.0 + 4.0 * float(uptake(number)), abs=1e-4)


def test_bad_sheets_and_times_are_refused() -> None:
    for layers in ((), (Layer(0.0, 1e-4),), (Layer(3.0, -1e-4),)):
        with pytest.raises(ValueError, match="above 0"):
            Sheet(layers)
    with pytest.raises(ValueError, match="must not fall"):
        course([_modes(SPRUCE)], [9.0], [0.0, 10.0, 5.0], [9.0, 9.0, 9.0])


def test_closed_form_series_meets_its_own_limits() -> None:
    early = np.array([1e-4, 1e-3, 5e-3])
    assert uptake(early) == pytest.approx(short_time_uptake(early), rel=1e-6)
    assert float(uptake(3.0)) == pytest.approx(1.0, abs=1e-12)
    assert float(centre(1e-4)) == pytest.approx(0.0, abs=1e-12)
