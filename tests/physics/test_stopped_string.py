"""Stopped strings with stops of their own: what must hold whatever the figures."""

from dataclasses import replace

import numpy as np
import pytest
from tests.textbooks.flat_plane import equal_steps, flat_plane

from gramil.physics.stopped_string import (
    StringPaths,
    StringStiffness,
    deviation,
    held_length,
    moved,
    open_length,
    speaking_length,
    stretch,
    stretch_here,
    stretch_stiffness,
    string_paths,
)

RATIO = equal_steps(20)
STRINGS = StringStiffness(np.array([143.0, 255.0]), np.array([0.1524, 0.2032]))
LENGTH = np.array([640.0, 655.0])


def two_strings(top: np.ndarray | float = 0.0, depth: float = 0.0) -> StringPaths:
    """Two strings of their own lengths over stops whose tops lie at `top`."""
    x = LENGTH[:, None] * (1.0 - 1.0 / RATIO)
    return string_paths((0.0, 0.5), (LENGTH, [4.5, 5.5]), (x, top), RATIO, 6.0, depth)


def test_flat_plane_is_stops_at_one_height() -> None:
    flat = flat_plane(LENGTH, 0.5, [4.0, 5.0], RATIO, 6.0)
    assert np.array_equal(deviation(flat, STRINGS).total, deviation(two_strings(), STRINGS).total)


def test_raising_everything_changes_nothing() -> None:
    low = two_strings()
    high = replace(
        low, nut_height=low.nut_height + 3, saddle_height=low.saddle_height + 3, stop_height=low.stop_height + 3
    )
    assert deviation(high, STRINGS).total == pytest.approx(deviation(low, STRINGS).total, abs=1e-8)


def test_tilting_the_reference_line_changes_nothing() -> None:
    """Every point turned by 0.01 rad about the origin, the finger at its stop: all lengths stay."""
    level = replace(two_strings(), finger_offset=np.zeros((2, 20)))
    cos, sin = np.cos(0.01), np.sin(0.01)

    def turned(x: np.ndarray, height: np.ndarray) -> tuple[np.ndarray, np.ndarray]:
        return x * cos - height * sin, x * sin + height * cos

    tilted = string_paths(
        turned(level.nut_x, level.nut_height),
        turned(level.saddle_x, level.saddle_height),
        turned(level.stop_x, level.stop_height),
        RATIO,
    )
    assert deviation(tilted, STRINGS).total == pytest.approx(deviation(level, STRINGS).total, abs=1e-8)


def test_doubling_every_length_changes_no_cents() -> None:
    small = two_strings()
    large = StringPaths(
        *(2.0 * getattr(small, name) if name != "ratio" else small.ratio for name in StringPaths.__dataclass_fields__)
    )
    thick = replace(STRINGS, bending_radius=2.0 * STRINGS.bending_radius)
    assert deviation(large, thick).total == pytest.approx(deviation(small, STRINGS).total, abs=1e-8)


def test_causes_add_up_to_the_pitch_of_the_stopped_string() -> None:
    """Pitch from first principles: sqrt(T/mu) / 2L times the stiffness factor, with E, T and mu put in."""
    paths, pull, modulus = two_strings(), np.array([104.4, 104.2]), 205000.0
    radius = STRINGS.bending_radius
    kappa = stretch_stiffness(modulus, radius, pull)
    strain = stretch(paths)
    new_pull = pull[:, None] + modulus * np.pi * radius[:, None] ** 2 * strain
    bending = modulus * np.pi * radius**4 / 4.0

    def pitch(tension: np.ndarray, weight: np.ndarray, length: np.ndarray) -> np.ndarray:
        end = np.sqrt((bending / tension.T).T / length.T if tension.ndim == 1 else bending[:, None] / tension) / length
        return np.sqrt(tension / weight) / (2.0 * length) * (1.0 + end + (1.0 + np.pi**2 / 2.0) * end**2)

    weight = np.full((2, 1), 0.6)
    sounding = pitch(new_pull, weight / (1.0 + strain), speaking_length(paths))
    at_rest = pitch(pull[:, None] + 0.0 * weight, weight, open_length(paths)[:, None])
    cents = 1200.0 * np.log2(sounding / at_rest / RATIO)
    found = deviation(paths, StringStiffness(kappa, radius)).total
    assert found == pytest.approx(cents, abs=1e-9)


def test_a_limp_slack_string_in_a_line_is_in_tune() -> None:
    """Stops on the open string's own line, no stiffness to stretch or bend: nothing is sharp."""
    x = 650.0 * (1.0 - 1.0 / RATIO)
    paths = string_paths((0.0, 0.0), (650.0, 0.0), (x, 0.0), RATIO)
    assert deviation(paths, StringStiffness(np.zeros(1), np.zeros(1))).total == pytest.approx(
        np.zeros((1, 20)), abs=1e-9
    )


def test_lower_stops_stretch_more_and_pressing_deeper_stretches_more() -> None:
    assert np.all(stretch(two_strings(-0.3)) > stretch(two_strings()))
    assert np.all(stretch(two_strings(depth=0.4)) > stretch(two_strings()))


def test_each_stop_answers_to_its_own_height_alone() -> None:
    top = np.zeros(20)
    top[7] = -0.25
    change = deviation(two_strings(top), STRINGS).total - deviation(two_strings(), STRINGS).total
    assert np.all(change[:, 7] > 0.0)
    assert np.all(np.delete(change, 7, axis=1) == 0.0)


def test_pressed_lengths_by_hand() -> None:
    """3-4-5 triangles: nut (0, 8), stop (60, 0), saddle (100, 30), finger at the stop.

    Speaking sqrt(40^2 + 30^2) = 50; held sqrt(60^2 + 8^2); open sqrt(100^2 + 22^2).
    """
    paths = string_paths((0.0, 8.0), (100.0, 30.0), ([60.0], [0.0]), [2.0])
    assert float(speaking_length(paths)[0, 0]) == 50.0
    assert float(held_length(paths)[0, 0]) == pytest.approx(3664.0**0.5, rel=1e-15)
    assert float(open_length(paths)[0]) == pytest.approx(10484.0**0.5, rel=1e-15)


def test_finger_behind_the_stop_by_hand() -> None:
    """As before with the finger 20 mm behind and 1 deeper: the line runs on down 15 mm, and 1 more, to (40, -16)."""
    paths = string_paths((0.0, 8.0), (100.0, 30.0), ([60.0], [0.0]), [2.0], 20.0, 1.0)
    assert float(held_length(paths)[0, 0]) == pytest.approx((400.0 + 256.0) ** 0.5 + (1600.0 + 576.0) ** 0.5, rel=1e-15)


def test_moved_ends_are_outward() -> None:
    paths = moved(two_strings(), -0.4, [1.5, 2.5])
    assert paths.nut_x.tolist() == [0.4, 0.4]
    assert paths.saddle_x.tolist() == [641.5, 657.5]


def test_ends_that_follow_the_string_leave_it_where_it_is() -> None:
    """A rise of 1 in 100 by hand: 2 mm back the saddle stands 0.02 higher, 0.5 mm forward the nut 0.005."""
    level = string_paths((0.0, 1.0), (650.0, 7.5), ([325.0], [0.0]), [2.0])
    paths = moved(replace(level, end_slope=np.array([0.01])), -0.5, 2.0)
    assert paths.saddle_height == pytest.approx([7.52], abs=1e-12)
    assert paths.nut_height == pytest.approx([1.005], abs=1e-12)
    rise = (paths.saddle_height - paths.nut_height) / (paths.saddle_x - paths.nut_x)
    over_the_stop = paths.nut_height + rise * (325.0 - paths.nut_x)
    assert over_the_stop == pytest.approx([4.25], abs=1e-12), "half of the way from 1 to 7.5, as before"


def test_a_longer_string_of_one_modulus_gains_a_lesser_share_of_its_pull() -> None:
    """E A / T, T growing with the square of the length: 100 at 650 mm is 100 (650 / 663)^2 = 96.117 at 663."""
    paths = string_paths((0.0, 0.0), (663.0, 0.0), ([325.0], [-1.0]), [2.0])
    strings = StringStiffness(np.array([100.0]), np.array([0.2]), np.array([650.0]))
    assert stretch_here(paths, strings) == pytest.approx([96.117], abs=1e-3)
    assert stretch_here(paths, replace(strings, at_length=np.zeros(1))) == pytest.approx([100.0], rel=1e-15)


def test_impossible_places_are_refused() -> None:
    with pytest.raises(ValueError, match="finger"):
        flat_plane(650.0, 1.0, 4.0, RATIO, 40.0)
    with pytest.raises(ValueError, match="between the nut and the saddle"):
        string_paths((0.0, 0.0), (650.0, 4.0), ([300.0, 660.0], 0.0), [2.0, 3.0])
