"""What the board's parts choose from a shop, and the neck's back-bow, worked by hand on a shop made up for it."""

import math
from collections.abc import Callable
from itertools import pairwise

import numpy as np
import pytest

from gramil.description.records import Cutter
from gramil.graph import Figures
from gramil.parts.edge_records import best_ledge, ledges

SHOP = """
gramil = 1
[shop]
name = "choices"
units = "mm"
[[wire]]
name = "medium"
crown_width = 2.4
crown_height = 1.15
tang_thickness = 0.54
bead_thickness = 0.78
tang_depth = 1.6
[[saw]]
name = "fine"
kerf = 0.50
cuts = "face down"
[[saw]]
name = "near"
kerf = 0.56
cuts = "face down"
[[saw]]
name = "above"
kerf = 0.62
cuts = "from above"
[[saw]]
name = "riding"
kerf = 0.60
cuts = "from above"
rides_arch = true
[[saw]]
name = "riding wide"
kerf = 0.66
cuts = "from above"
rides_arch = true
[[cutter]]
name = "half inch"
diameter = 12.7
bearings = [8.9, 9.3, 12.7, 15.0]
[[block]]
name = "twelve"
radius = "12 in"
[[block]]
name = "sixteen"
radius = "16 in"
[[template]]
name = "648"
scale = 648
frets = 20
pin = 4
[[template]]
name = "630 too short"
scale = 630
frets = 18
pin = 4
[[template]]
name = "630 other pin"
scale = 630
frets = 24
pin = 5
[[template]]
name = "630"
scale = 630.06
frets = 24
pin = 4
[[blank]]
name = "long"
wood = "persimmon"
length = 600
width = 70
thickness = 8
[[blank]]
name = "snug"
wood = "persimmon"
length = 470
width = 66
thickness = 7
[[blank]]
name = "thin"
wood = "persimmon"
length = 465
width = 66
thickness = 6.4
[[blank]]
name = "other wood"
wood = "hornbeam"
length = 465
width = 66
thickness = 7
[[blank]]
name = "used up"
wood = "persimmon"
length = 460
width = 66
thickness = 7
count = 0
"""


@pytest.fixture(scope="module")
def of(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Callable[..., Figures]:
    """Tarn in this shop, with words of its description changed."""

    def changed(**words: str) -> Figures:
        text = text_of("tarn")
        for key, new in words.items():
            old = {"bottom": 'bottom = "straight"', "cut": 'cut = "before arching"', "arch": ARCH}[key]
            assert old in text
            text = text.replace(old, f"{key} = {new}")
        return derive_text(text, SHOP)

    return changed


ARCH = 'arch = { nut = "320 mm", end = "390 mm" }'


@pytest.mark.parametrize(
    ("bottom", "cut", "main", "deepening"),
    [
        ("straight", "before arching", "near", "none"),
        ("straight", "after arching", "above", "none"),
        ("follows the arch", "before arching", "near", "riding"),
        ("follows the arch", "after arching", "riding", "none"),
    ],
)
def test_saws(bottom: str, cut: str, main: str, deepening: str, of: Callable[..., Figures]) -> None:
    """Of those that can make the cut, the kerf nearest the 0.54 tang; the deepening saw is nearest the main kerf."""
    figures = of(bottom=f'"{bottom}"', cut=f'"{cut}"')
    assert (figures["saw_main"].name, figures["saw_deepening"].name) == (main, deepening)


@pytest.mark.parametrize("bottom", ["straight", "follows the arch"])
def test_any_saw_serves_a_board_that_stays_flat(bottom: str, of: Callable[..., Figures]) -> None:
    """Nothing is arched, so nothing is in the way of the saw whose kerf is nearest the 0.54 tang."""
    figures = of(arch='"flat"', bottom=f'"{bottom}"', cut='"after arching"')
    assert figures["saw_main"].name == "near"


def test_ledge(of: Callable[..., Figures]) -> None:
    """Binding 1.8: (12.7 - 8.9) / 2 = 1.9 cuts 0.1 too deep, (12.7 - 9.3) / 2 = 1.7 leaves 0.1 proud, and is taken.

    A bearing as large as the cutter cuts no ledge; a larger one cannot.
    """
    figures = of()
    assert [each.bearing for each in figures["ledge_options"]] in ([8.9, 9.3], [9.3, 8.9])
    assert figures["ledge_choice"].bearing == 9.3
    assert figures["ledge_choice"].proud == pytest.approx(0.1)


@pytest.mark.parametrize(
    ("binding", "bearing"), [(1.8034, 9.5), (1.84, 9.0), (1.9, 9.0), (2.2, 9.0), (1.81, 9.5), (1.58, 9.5), (1.3, 9.5)]
)
def test_a_ledge_when_none_is_within_bounds(binding: float, bearing: float) -> None:
    """Bearings of 9.0 and 9.5 under 12.7 cut 1.85 and 1.6, and strips may stand 0 to 0.2 proud.

    Binding of 1.8034, as an inch shop's 0.071 in, is 0.0034 too proud with the one and lies 0.0466 under with the
    other: what misses the bounds by least is taken, not what is most nearly flush.
    """
    pairs = ledges((Cutter("ledge", 12.7, (9.0, 9.5)),), binding, "mm")
    assert best_ledge(pairs, 0.2).bearing == bearing


def test_blanks(of: Callable[..., Figures]) -> None:
    """6.5 mm of this wood is wanted, so the thin piece is too thin; the snug one wastes least."""
    figures = of()
    assert figures["blank_thickness"] == pytest.approx(6.3 + 0.2)
    assert [each.name for each in figures["blank_options"]] == ["snug", "long"]
    assert figures["blank_choice"].name == "snug"
    tail = 630 * (1 - 2 ** (-19 / 12)) + 8
    wide = 45.5 + (56 - 45.5) / 315 * tail
    assert figures["blank_choice"].waste == pytest.approx(470 * 66 - (tail + 20) * (wide + 6), abs=1e-9)


def test_templates(of: Callable[..., Figures]) -> None:
    """630.06 is out by 0.06 (1 - 2^(-19/12)) = 0.04 at the last notch, within 0.05; the others lack frets or pin."""
    matches = {each.name: each for each in of()["template_matches"]}
    assert [name for name, each in matches.items() if each.serves] == ["630"]
    assert matches["630"].worst == pytest.approx(0.06 * (1 - 2 ** (-19 / 12)), abs=1e-9)
    assert matches["648"].worst == pytest.approx(18 * (1 - 2 ** (-19 / 12)), abs=1e-9)
    assert matches["630 other pin"].worst == 0


@pytest.mark.parametrize(("arch", "name"), [('"12 in"', "twelve"), ('"13 in"', "twelve"), ('"15 in"', "sixteen")])
def test_blocks(arch: str, name: str, of: Callable[..., Figures]) -> None:
    """The block whose edge gap is least; on a wide arch a block of less radius is hollower, so it is proud outside."""
    figures = of(arch=arch)
    inches = float(arch.strip('"').split()[0])
    for station, half in (("nut", 22.75), ("middle", 28.0)):
        block = figures[f"block_at_{station}"]
        assert block.name == name
        falls = [radius - math.sqrt(radius**2 - half**2) for radius in (inches * 25.4, block.radius)]
        assert block.misfit == pytest.approx(falls[0] - falls[1], abs=1e-9)


def test_markers(of: Callable[..., Figures]) -> None:
    """Half way between two frets, doubles a quarter of the width out: at fret 12 14 mm of 56."""
    figures = of()
    places = [630 * (1 - 2 ** (-fret / 12)) for fret in range(20)]
    middles = [(low + high) / 2 for low, high in pairwise(places)]
    np.testing.assert_allclose(figures["marker_position"][1:], middles, rtol=0, atol=1e-10)
    assert figures["marker_offset"][12] == pytest.approx(14.0, abs=1e-12)


def test_back_bow_by_hand(of: Callable[..., Figures]) -> None:
    """A neck of three layers at fret 6 of 630 mm, half way to the join at 13.

    Half ellipse below: a = w / 2 wide, b deep, area pi a b / 2, centroid 4 b / (3 pi) down, pi a b^3 / 8 about its flat
    face. Board above it in two: below the tangs, 6.3 - 1.6 = 4.7, and the tangs' 1.6. Moduli 10 GPa (the usual neck)
    and 13.9 (persimmon). The tangs' layer wants to be longer by e; equilibrium gives E A e z / EI, z its height over
    the neutral axis.
    """
    figures = of()
    x = [630 * (1 - 2 ** (-fret / 12)) for fret in range(20)]
    width = 45.5 + 10.5 / 315 * x[6]
    depth = 21 + (23 - 21) * (x[6] - x[1]) / (x[10] - x[1]) - 6.3
    layers = [
        (10000.0, math.pi * width * depth / 4, -4 * depth / (3 * math.pi), None),
        (13_900.0, width * 4.7, 4.7 / 2, width * 4.7**3 / 12),
        (13_900.0, width * 1.6, 4.7 + 1.6 / 2, width * 1.6**3 / 12),
    ]
    own = math.pi * (width / 2) * depth**3 / 8 - layers[0][1] * layers[0][2] ** 2
    axial = sum(modulus * area for modulus, area, _, _ in layers)
    neutral = sum(modulus * area * height for modulus, area, height, _ in layers) / axial
    bending = sum(
        modulus * ((own if inertia is None else inertia) + area * (height - neutral) ** 2)
        for modulus, area, height, inertia in layers
    )
    curvature = 13_900 * width * 1.6 * (5.5 - neutral) / bending
    assert figures["back_bow_curvature"] == pytest.approx(curvature, rel=1e-10)
    # The near saw, 0.56: nothing wedged by the tang, beads (0.78 - 0.56) x 0.2 = 0.044 a slot, 13 slots on x_13.
    row = 13 / x[13] * curvature
    assert figures["back_bow_row"] == pytest.approx(row, rel=1e-10)
    assert figures["back_bow_least"] == 0
    bend, span = 0.044 * row, x[13] - x[1]
    arc = 1 / bend - math.sqrt(1 / bend**2 - span**2 / 4)
    assert figures["back_bow_most"] == pytest.approx(arc, rel=1e-6)


def test_equal_gaps_and_equal_centres(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> None:
    gaps = derive_text(text_of("tarn"))
    centres = derive_text(text_of("tarn").replace('"equal gaps"', '"equal centres"'))
    np.testing.assert_allclose(centres["string_y_nut"], [19.25, 11.55, 3.85, -3.85, -11.55, -19.25], atol=1e-12)
    edges = gaps["string_y_nut"][:, None] + np.array([0.5, -0.5]) * gaps["strings_gauges"][:, None]
    air = edges[:-1, 1] - edges[1:, 0]
    np.testing.assert_allclose(air, air[0], atol=1e-12)
    assert gaps["string_y_nut"][0] - gaps["string_y_nut"][-1] == pytest.approx(38.5, abs=1e-12)


def test_hump_on_a_cylinder(of: Callable[..., Figures]) -> None:
    """Common practice: dy^2 / (8 R), dy the way that the string moves out between zero line and last fret."""
    figures = of(arch='"320 mm"')
    moved = 9 * (1 - 2 ** (-19 / 12))
    assert figures["arch_hump"][0] == pytest.approx(moved**2 / (8 * 320), rel=0.05)
    assert figures["arch_hump"][5] == pytest.approx(figures["arch_hump"][0], rel=1e-9)
    assert (figures["arch_over_chord"] > -1e-12).all(), "a convex surface never falls below its chord"
