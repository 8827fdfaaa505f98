"""The neck's layered section against sums done here, and what slots, bars and the rod's channel do to it."""

import math
from collections.abc import Callable

import numpy as np
import pytest

from gramil.graph import Figures

Make = Callable[..., Figures]


@pytest.fixture
def flat(derive_text: Callable[..., Figures], text_of: Callable[[str], str]) -> Make:
    """Tarn unbound and flat, so that its board is a rectangle; more text goes under [neck]."""
    text = text_of("tarn").replace('arch = { nut = "320 mm", end = "390 mm" }', 'arch = "flat"')
    text = text.replace("thickness = 1.8 ", "thickness = 0 ")
    return lambda more="": derive_text(text + "\n[neck]\n" + more)


def layered(layers: list[tuple[float, float, float, float]]) -> tuple[float, float]:
    """EI and neutral axis of layers (modulus, area, centroid, own inertia), by the parallel-axis rule."""
    stiff = sum(e * a for e, a, _, _ in layers)
    axis = sum(e * a * z for e, a, z, _ in layers) / stiff
    return sum(e * (i + a * (z - axis) ** 2) for e, a, z, i in layers), axis


def half_ellipse(modulus: float, a: float, b: float) -> tuple[float, float, float, float]:
    """A half ellipse under the joint: area pi a b / 2, centroid 4 b / 3 pi, inertia by the parallel-axis rule."""
    area, centroid = math.pi * a * b / 2, 4 * b / (3 * math.pi)
    return modulus, area, -centroid, math.pi * a * b**3 / 8 - area * centroid**2


def rectangle(modulus: float, wide: float, deep: float, middle: float) -> tuple[float, float, float, float]:
    return modulus, wide * deep, middle, wide * deep**3 / 12


def at_fret_one(figures: Figures) -> tuple[float, float]:
    """Width of the board there, and depth of the neck's wood under a board of 6.3 mm in 21 mm together."""
    x1 = 630 * (1 - 2 ** (-1 / 12))
    return 45.5 + (56 - 45.5) * x1 / 315, 21 - 6.3


def test_neck_and_board_without_a_rod(flat: Make) -> None:
    figures = flat('rod = "none"')
    wide, deep = at_fret_one(figures)
    stiffness, axis = layered([half_ellipse(10_000, wide / 2, deep), rectangle(12_000, wide, 6.3, 3.15)])
    assert figures["neck_section_stiffness"][1] == pytest.approx(stiffness, rel=1e-9)
    assert figures["neck_section_axis"][1] == pytest.approx(axis, abs=1e-9)


def test_slotted_board_is_a_thinner_one(flat: Make) -> None:
    figures = flat('rod = "none"')
    wide, deep = at_fret_one(figures)
    left = 6.3 - figures["slot_depth_at_crest"]
    stiffness, _ = layered([half_ellipse(10_000, wide / 2, deep), rectangle(12_000, wide, left, left / 2)])
    assert figures["neck_section_stiffness_slotted"][1] == pytest.approx(stiffness, rel=1e-9)
    assert (figures["neck_section_slots_keep"] < 1).all()


def test_bars_and_channel_take_the_place_of_wood(flat: Make) -> None:
    figures = flat('bars = 2\nbar_width = 3\nbar_depth = 8\nbar_modulus = "130 GPa"\nrod_width = 6\nrod_depth = 10')
    wide, deep = at_fret_one(figures)
    stiffness, axis = layered(
        [
            half_ellipse(10_000, wide / 2, deep),
            rectangle(12_000, wide, 6.3, 3.15),
            rectangle(120_000, 6, 8, -4),
            rectangle(-10_000, 6, 10, -5),
        ]
    )
    assert figures["neck_section_stiffness"][1] == pytest.approx(stiffness, rel=1e-9)
    assert figures["neck_section_axis"][1] == pytest.approx(axis, abs=1e-9)
    assert figures["neck_section_under_channel"][1] == pytest.approx(deep - 10, abs=1e-9)


def test_bars_of_the_necks_own_wood_change_nothing(flat: Make) -> None:
    plain, barred = flat(), flat('bars = 2\nbar_modulus = "10 GPa"')
    np.testing.assert_allclose(barred["neck_section_stiffness"], plain["neck_section_stiffness"], rtol=1e-12)


def test_more_neck_is_stiffer(flat: Make) -> None:
    usual = flat()["neck_section_stiffness"]
    assert (flat("depth_at_1 = 22\ndepth_at_10 = 24")["neck_section_stiffness"] > usual).all()
    assert (flat('modulus = "12 GPa"')["neck_section_stiffness"] > usual).all()
    assert (flat("bars = 1")["neck_section_stiffness"] > usual).all()
    assert (flat("rod_width = 8")["neck_section_stiffness"] < usual).all()


def test_a_squarer_back_is_stiffer_by_its_own_section(flat: Make) -> None:
    """Exponent 4 at every fret, its moments by the trapezium rule on a fine grid of this test's own."""
    figures = flat('rod = "none"\n[carve]\nexponent_at_1 = 4\nexponent_at_10 = 4')
    wide, deep = at_fret_one(figures)
    across = np.cos(np.linspace(0, np.pi, 20_001))
    z = deep * (1 - np.abs(across) ** 4) ** 0.25
    area, first, second = (float(np.trapezoid(z**p / p, across * -wide / 2)) for p in (1, 2, 3))
    neck = (10_000.0, area, -first / area, second - first**2 / area)
    stiffness, axis = layered([neck, rectangle(12_000, wide, 6.3, 3.15)])
    assert figures["neck_section_stiffness"][1] == pytest.approx(stiffness, rel=1e-6)
    assert figures["neck_section_axis"][1] == pytest.approx(axis, abs=1e-6)
    assert (figures["neck_section_stiffness"] > 1.1 * flat('rod = "none"')["neck_section_stiffness"]).all()
