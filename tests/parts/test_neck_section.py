"""The neck's layered section against sums done here, and what slots, bars and the rod's channel do to it."""

import math
from collections.abc import Callable

import numpy as np
import pytest

from gramil.graph import Figures

Make = Callable[..., Figures]
USUAL = 10_000.0
"""MPa, common practice: the neck of an example is of maple, of no kind that a source gives the stiffness of."""
MAHOGANY = 10_300.0
"""MPa along the grain: Wood Handbook (2010), table 5-5, read in a transcription; 1.50 million psi."""
PERSIMMON = 13_900.0
"""MPa along the grain: H. A. Alden, Hardwoods of North America (1995), from memory; 2.01 million psi."""
LOCUST = 15_700.0
"""MPa along the grain: Pollet and others (2012), grown in Belgium."""


@pytest.fixture
def flat(derive_text: Callable[..., Figures], text_of: Callable[[str], str]) -> Make:
    """Tarn unbound and flat, so that its board is a rectangle; more text goes under [neck]."""
    text = text_of("tarn").replace('arch = { nut = "320 mm", end = "390 mm" }', 'arch = "flat"')
    text = text.replace("thickness = 1.8 ", "thickness = 0 ")
    return lambda more="": derive_text(text + "\n[neck]\n" + more)


@pytest.fixture
def named(derive_text: Callable[..., Figures], text_of: Callable[[str], str]) -> Make:
    """The same of woods by name, without a rod."""
    text = text_of("tarn").replace('arch = { nut = "320 mm", end = "390 mm" }', 'arch = "flat"')
    text = text.replace("thickness = 1.8 ", "thickness = 0 ")

    def make(board: str, neck: str, more: str = "", board_more: str = "", shop_more: str = "") -> Figures:
        told = text.replace('[board]\nwood = "persimmon"', f'[board]\n{board_more}\nwood = "{board}"')
        tables = f'\n[carve]\nwood = "{neck}"\n[neck]\nrod = "none"\n{more}'
        return derive_text(told + tables, text_of("shop") + shop_more)

    return make


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
    stiffness, axis = layered([half_ellipse(USUAL, wide / 2, deep), rectangle(PERSIMMON, wide, 6.3, 3.15)])
    assert figures["neck_section_stiffness"][1] == pytest.approx(stiffness, rel=1e-9)
    assert figures["neck_section_axis"][1] == pytest.approx(axis, abs=1e-9)


def test_slotted_board_is_a_thinner_one(flat: Make) -> None:
    figures = flat('rod = "none"')
    wide, deep = at_fret_one(figures)
    left = 6.3 - figures["slot_depth_at_crest"]
    stiffness, _ = layered([half_ellipse(USUAL, wide / 2, deep), rectangle(PERSIMMON, wide, left, left / 2)])
    assert figures["neck_section_stiffness_slotted"][1] == pytest.approx(stiffness, rel=1e-9)
    assert (figures["neck_section_slots_keep"] < 1).all()


def test_bars_and_channel_take_the_place_of_wood(flat: Make) -> None:
    figures = flat('bars = 2\nbar_width = 3\nbar_depth = 8\nbar_modulus = "130 GPa"\nrod_width = 6\nrod_depth = 10')
    wide, deep = at_fret_one(figures)
    stiffness, axis = layered(
        [
            half_ellipse(USUAL, wide / 2, deep),
            rectangle(PERSIMMON, wide, 6.3, 3.15),
            rectangle(130_000 - USUAL, 6, 8, -4),
            rectangle(-USUAL, 6, 10, -5),
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
    neck = (USUAL, area, -first / area, second - first**2 / area)
    stiffness, axis = layered([neck, rectangle(PERSIMMON, wide, 6.3, 3.15)])
    assert figures["neck_section_stiffness"][1] == pytest.approx(stiffness, rel=1e-6)
    assert figures["neck_section_axis"][1] == pytest.approx(axis, abs=1e-6)
    assert (figures["neck_section_stiffness"] > 1.1 * flat('rod = "none"')["neck_section_stiffness"]).all()


@pytest.mark.parametrize(
    ("board", "neck", "board_stiff", "neck_stiff"),
    [
        ("persimmon", "mahogany", PERSIMMON, MAHOGANY),
        ("black locust", "sugar maple", LOCUST, 12_600.0),
        ("African ebony", "Spanish cedar", 17_600.0, 9_900.0),
        ("a wood of no book", "another of none", 12_000.0, 10_000.0),
    ],
)
def test_woods_are_as_stiff_as_their_names_say(
    named: Make, board: str, neck: str, board_stiff: float, neck_stiff: float
) -> None:
    """The Wood Handbook's table 5-3 for maple, 5-5 for the cedar, Chudnoff (1984) for the ebony."""
    figures = named(board, neck)
    wide, deep = at_fret_one(figures)
    stiffness, _ = layered([half_ellipse(neck_stiff, wide / 2, deep), rectangle(board_stiff, wide, 6.3, 3.15)])
    assert figures["neck_section_stiffness"][1] == pytest.approx(stiffness, rel=1e-9)


def test_the_range_of_relief_covers_the_spread_of_woods_and_not_that_of_bars(named: Make) -> None:
    """ASTM D2555: clear wood differs by 22 %; a bar is what it is. Layers laid out anew, moduli at either end."""
    figures = named("black locust", "mahogany", "bars = 1\nbar_width = 4\nbar_depth = 8")
    wide, deep = at_fret_one(figures)
    left = 6.3 - figures["slot_depth_at_crest"]
    for share, thick, name in (
        (0.78, left, "neck_section_stiffness_least"),
        (1.22, 6.3, "neck_section_stiffness_most"),
    ):
        layers = [
            half_ellipse(share * MAHOGANY, wide / 2, deep),
            rectangle(share * LOCUST, wide, thick, thick / 2),
            rectangle(120_000 - share * MAHOGANY, 4, 8, -4),
        ]
        assert figures[name][1] == pytest.approx(layered(layers)[0], rel=1e-9)
    bowed = figures["relief_under_pull_least"], figures["relief_under_pull_most"]
    stations, stiff = figures["relief_stations"], figures["neck_section_stiffness"]
    assert bowed[0] < bowed[1]
    np.testing.assert_array_less(figures["relief_neck"].softest[: len(stations) - 1], stiff[: len(stations) - 1])


def test_a_stiffness_that_was_measured_counts_before_the_woods(named: Make) -> None:
    measured = named("black locust", "mahogany", 'modulus = "9.1 GPa"', board_more='modulus = "14.2 GPa"')
    assert (measured["board_modulus"], measured["neck_modulus"]) == (14_200.0, 9_100.0)
    assert measured.origins["board_modulus"].line is not None


def test_a_wood_of_the_makers_own_is_as_stiff_as_he_says(named: Make) -> None:
    own = '\n[[wood]]\nname = "plum"\nlike = "black cherry"\nmodulus = "11.4 GPa"\n'
    assert named("plum", "mahogany", shop_more=own)["board_modulus"] == 11_400.0


def test_a_wood_whose_stiffness_nobody_gives_is_told(named: Make) -> None:
    told = {each.name: each for each in named("koa", "a wood of no book")["finding_wood_stiffness"]}
    assert [each.severity for each in told.values()] == ["note", "note"]
    assert told["stiffness of the board's wood"].value == 12_000.0
    assert named("persimmon", "mahogany")["finding_wood_stiffness"] == ()
    assert "no source gives it for koa" in named("koa", "mahogany").origins["board_modulus"].text
