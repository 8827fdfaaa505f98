"""Relief under the strings' pull: against formulas for an even neck, and its range."""

import math
from collections.abc import Callable

import numpy as np
import pytest
from tests.textbooks.beam_column import first_order_pinned

from gramil.graph import Figures
from gramil.parts.relief import PulledNeck, relief_rod_moment_most, relief_under_pull_least, relief_under_pull_most

EI, LEVER, LENGTH = 3.0e8, 12.0, 330.0


def even(points: int = 200, far_end: float = 630.0, stiff: float = EI) -> PulledNeck:
    """An even neck with its strings at one height over it; fret 1 at its very start, so that the span is all of it."""
    stations = np.linspace(0.0, LENGTH, points)
    return PulledNeck(stations, np.full(points, stiff), np.full(points, stiff), np.full(points, LEVER), 0.0, far_end)


def test_a_small_pull_bends_an_even_neck_as_first_order_says() -> None:
    """P e L^2 / (8 EI): an even moment bends an arc, whichever way it is held."""
    wanted = float(first_order_pinned(1.0, LEVER, LENGTH, EI))
    assert wanted == pytest.approx(1.0 * 12.0 * 330.0**2 / (8 * 3.0e8), rel=1e-12)
    assert relief_under_pull_least(even(), 1.0) == pytest.approx(wanted, rel=2e-3)


def test_at_full_pull_an_even_neck_bends_as_its_differential_equation_says() -> None:
    """EI v'' = P (e + v0 (F - x) / F - v), v(0) = v0, clamped at L, solved by hand.

    v = -e cos kx + B sin kx + e + v0 (F - x) / F with k^2 = P / EI; v(L) = 0 and v'(L) = 0 give B and v0.
    """
    pull, far = 700.0, 630.0
    k = math.sqrt(pull / EI)
    cos, sin = math.cos(k * LENGTH), math.sin(k * LENGTH)
    matrix = np.array([[sin, (far - LENGTH) / far], [k * cos, -1 / far]])
    b, v0 = np.linalg.solve(matrix, [LEVER * cos - LEVER, -LEVER * k * sin])
    half = LENGTH / 2
    middle = -LEVER * math.cos(k * half) + b * math.sin(k * half) + LEVER + v0 * (far - half) / far
    assert relief_under_pull_least(even(), pull) == pytest.approx(v0 / 2 - middle, rel=1e-3)
    assert v0 / 2 - middle > float(first_order_pinned(pull, LEVER, LENGTH, EI)), "bending adds to the lever"


def test_stiffer_by_a_fifth_bends_less() -> None:
    stiff, soft = even(stiff=1.2 * EI), even(stiff=0.8 * EI)
    assert relief_under_pull_least(stiff, 100.0) == pytest.approx(relief_under_pull_least(even(), 100.0) / 1.2, 1e-2)
    assert relief_under_pull_most(soft, 700.0) > relief_under_pull_least(stiff, 700.0)


def test_a_pull_that_folds_the_neck_up_is_without_end() -> None:
    assert math.isinf(relief_under_pull_most(even(), 1e6))


def test_the_rods_moment_takes_out_the_bend_that_it_is_asked_to() -> None:
    """An even moment M bends an even neck by M L^2 / (8 EI)."""
    assert relief_rod_moment_most(0.5, even(), "two way") == pytest.approx(0.5 * 8 * EI / LENGTH**2, rel=1e-3)


@pytest.mark.parametrize("name", ["tarn", "fell", "scree", "mere"])
def test_a_real_neck_is_near_its_own_mean(example: Callable[[str], Figures], name: str) -> None:
    """Within a fifth of the first-order bend with the mean lever and mean flexibility between fret 1 and the join."""
    figures = example(name)
    neck = figures["relief_neck"]
    inside = neck.stations >= neck.first
    bend = float((neck.lever / neck.stiffest)[inside].mean())
    span = neck.stations[-1] - neck.first
    rough = figures["string_pull_total"] * bend * span**2 / 8
    assert figures["relief_under_pull_least"] == pytest.approx(rough, rel=0.2)
    assert figures["relief_under_pull_least"] < figures["relief_under_pull_most"]
    assert figures["relief_predicted_least"] < figures["relief_predicted_most"]


def test_frets_rod_and_target_share_the_bend(example: Callable[[str], Figures]) -> None:
    figures = example("tarn")
    whole = figures["relief_for_rod_most"] + figures["heights_relief"] + figures["back_bow_least"]
    assert whole == pytest.approx(figures["relief_under_pull_most"], abs=1e-12)


def test_bars_make_the_neck_bend_less(derive_text: Callable[..., Figures], text_of: Callable[[str], str]) -> None:
    plain, barred = (derive_text(text_of("tarn") + f"\n[neck]\nbars = {bars}") for bars in (0, 2))
    assert barred["relief_under_pull_most"] < plain["relief_under_pull_most"]
