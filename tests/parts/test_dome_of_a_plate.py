"""The rule for a top's dome, one strip across its widest part, against whole tops solved as plates.

The plate is solved here by the method of Ritz, on its own: in-plane displacements and deflection are polynomials over
the body's true outline, the soundhole left out, free all round; its energy is that of an orthotropic plate (Kirchhoff),
whose wood wants another size across the grain, with bars of their own height along them glued under it. What its edges
across the widest part rise over the middle is told as a curvature, as the rule tells it. Nothing of the rule is used.

Stiffness is that of Sitka spruce, and its ratios: Forest Products Laboratory, Wood Handbook, table 5-1, from memory.
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
import pytest
from numpy.polynomial import legendre

from gramil.description.body.records import BraceAsked
from gramil.graph import Figures
from gramil.parts.body_records import Brace, Shell, Zeros
from gramil.parts.braces import brace_list
from gramil.parts.dome_year import dome_brace_spacing, dome_brace_width, dome_curl
from gramil.parts.top_across import (
    across_area,
    across_covered,
    across_height,
    across_holders,
    across_lean,
    across_near,
    across_station,
    across_unheld,
)
from gramil.wood.restraint import STRIP

ALONG, ACROSS, SHEAR, POISSON = 10_800.0, 842.4, 691.2, 0.37
THICK = 2.8
DEGREE, POINTS = 11, 36

Array = np.ndarray


@dataclass(frozen=True)
class Body:
    """The outline's half-width at a place along, its length and greatest half-width, and the soundhole."""

    half: Callable[[float], float]
    length: float
    widest: float
    hole: tuple[float, float]


@dataclass(frozen=True)
class Shapes:
    """Polynomials of two places, each up to a degree: values, slopes and bends at points, one column a polynomial."""

    body: Body

    def at(self, x: Array, y: Array) -> dict[str, Array]:
        across, along = self.body.widest, self.body.length / 2
        one = [each / along**order for order, each in enumerate(_bends(x / along - 1.0))]
        other = [each / across**order for order, each in enumerate(_bends(y / across))]
        terms = [(i, j) for i in range(DEGREE + 1) for j in range(DEGREE + 1 - i)]
        first, second = [i for i, _ in terms], [j for _, j in terms]
        named = {"o": (0, 0), "x": (1, 0), "y": (0, 1), "xx": (2, 0), "yy": (0, 2), "xy": (1, 1)}
        return {name: one[p][:, first] * other[q][:, second] for name, (p, q) in named.items()}


def _bends(place: Array) -> list[Array]:
    """Legendre polynomials at places in -1 to 1, their first and their second derivatives."""
    values, whole = legendre.legvander(place, DEGREE), np.eye(DEGREE + 1)
    orders = [
        np.array([np.pad(each, (0, DEGREE + 1 - len(each))) for each in (legendre.legder(row, order) for row in whole)])
        for order in (1, 2)
    ]
    return [values, *(values @ each.T for each in orders)]


def solved(body: Body, braces: Sequence[Brace], where: float) -> float:
    """Curvature across at `where` along when the plate wants to be longer across by its own width."""
    shapes = Shapes(body)
    stiff, load = _plate(body, shapes)
    for brace in braces:
        stiff += _bar(brace, shapes)
    scale = np.sqrt(np.diag(stiff))
    scale[scale == 0] = 1.0
    moved = np.linalg.lstsq(stiff / np.outer(scale, scale), load / scale, rcond=1e-11)[0] / scale
    out = 0.97 * body.half(where)
    lifted = shapes.at(np.full(3, where), np.array([0.0, out, -out]))["o"] @ moved[2 * len(moved) // 3 :]
    return float(2 * (lifted[0] - (lifted[1] + lifted[2]) / 2) / out**2)


def _plate(body: Body, shapes: Shapes) -> tuple[Array, Array]:
    """Stiffness of the plate, and what pulls at it."""
    places, weights = legendre.leggauss(POINTS)
    rows = [
        (x, y * body.half(x), wx * wy * body.half(x) * body.length / 2)
        for x, wx in zip((places + 1) * body.length / 2, weights, strict=True)
        for y, wy in zip(places, weights, strict=True)
        if math.hypot(x - body.hole[0], y * body.half(x)) > body.hole[1]
    ]
    x, y, weight = np.array(rows).T
    each = shapes.at(x, y)
    nothing = np.zeros_like(each["o"])
    flat = [(each["x"], nothing), (nothing, each["y"]), (each["y"], each["x"])]
    strains = [np.hstack((*one, nothing)) for one in flat]
    bends = [np.hstack((nothing, nothing, -times * each[key])) for key, times in (("xx", 1), ("yy", 1), ("xy", 2))]
    back = POISSON * ACROSS / ALONG
    wood = np.array([[ALONG, back * ALONG, 0], [back * ALONG, ACROSS, 0], [0, 0, SHEAR * (1 - POISSON * back)]])
    wood /= 1 - POISSON * back
    size = 3 * each["o"].shape[1]
    stiff, load = np.zeros((size, size)), np.zeros(size)
    for i in range(3):
        load += THICK * wood[i, 1] * (strains[i].T @ weight)
        for j in range(3):
            if wood[i, j]:
                stiff += wood[i, j] * THICK * (strains[i].T * weight) @ strains[j]
                stiff += wood[i, j] * THICK**3 / 12 * (bends[i].T * weight) @ bends[j]
    return stiff, load


def _bar(brace: Brace, shapes: Shapes) -> Array:
    """Stiffness of a brace glued under the plate, as high as it is at each place."""
    places, weights = legendre.leggauss(60)
    along, weight = (places + 1) * brace.length / 2, weights * brace.length / 2
    c, s = (brace.stop_x - brace.start_x) / brace.length, (brace.stop_y - brace.start_y) / brace.length
    each = shapes.at(brace.start_x + along * c, brace.start_y + along * s)
    high = np.asarray(brace.bar.over_plate(along))
    nothing = np.zeros_like(each["o"])
    bend = np.hstack((nothing, nothing, -(c * c * each["xx"] + s * s * each["yy"] + 2 * c * s * each["xy"])))
    strain = np.hstack((c * c * each["x"] + c * s * each["y"], s * s * each["y"] + c * s * each["x"], nothing))
    strain = strain - ((THICK + high) / 2)[:, None] * bend
    area = weight * brace.width * high * ALONG
    return (strain.T * area) @ strain + (bend.T * (area * high**2 / 12)) @ bend


def ruled(shells: tuple[Shell, ...], braces: tuple[Brace, ...], bouts: tuple, width: float) -> tuple[str, float]:
    """Why the rule does not stand for these braces (empty where it does), and the curvature that it would give."""
    station, area = across_station(bouts), across_area(shells, across_station(bouts), width)
    strip, near = across_holders(braces, station, width), across_near(braces, station, width)
    high = across_height(strip)
    why = across_unheld(braces, across_covered(near), across_lean(strip), high, across_height(near), width)
    wide, apart = dome_brace_width(strip, "", math.nan), dome_brace_spacing(strip, "", area, math.nan)
    return why, dome_curl(wide, high, apart, THICK, ACROSS, ALONG)


@pytest.fixture(scope="module")
def tarn(example: Callable[[str], Figures]) -> Figures:
    return example("tarn")


def body_of(figures: Figures) -> Body:
    (shell,) = figures["body_shells"]
    outline = shell.side.outline
    hole = (float(figures["soundhole_centre"]), float(figures["soundhole_diameter"]) / 2)
    return Body(lambda x: float(outline.half_width(x)), float(outline.end), float(figures["body_width"]) / 2, hole)


def top_of(figures: Figures) -> tuple[Brace, ...]:
    return tuple(each for each in figures["brace_list"] if each.plate == "top")


def test_a_square_plate_of_two_layers_is_a_strip() -> None:
    """The method itself: bars side by side over the whole of a narrow plate are a layer, as in Timoshenko's formula.

    For layers 3 and 2.8 of 12 000 and 840 MPa the curvature is 1.359230e-4 for a strain of 1e-3 (worked out elsewhere,
    see the published layered strips); here the plate's 842.4 across, bars of 10 800, 12 high: equation (4) below.
    """
    body = Body(lambda x: 100.0, 60.0, 100.0, (-500.0, 1.0))
    bars = [_square_bar(x) for x in np.arange(2.5, 60.0, 5.0)]
    m, n = THICK / 12.0, ACROSS / ALONG
    expected = 6 * (1 + m) ** 2 / ((12.0 + THICK) * (3 * (1 + m) ** 2 + (1 + m * n) * (m**2 + 1 / (m * n))))
    assert solved(body, bars, 30.0) == pytest.approx(expected, rel=0.02)


def _square_bar(x: float) -> Brace:
    ends = ((x - 2.5, -100.0), (x + 2.5, -100.0), (x + 2.5, 100.0), (x - 2.5, 100.0))
    sizes = (200.0, 5.0, 12.0, 12.0, 0.0, 0.0, math.inf, 100.0, math.pi / 2)
    return Brace("bar", "top", "body", "spruce", "square", x, -100.0, x, 100.0, *sizes, ends)


@pytest.mark.parametrize("name", ["tarn", "fell"])
def test_the_rule_is_near_the_examples_tops_solved(example: Callable[[str], Figures], name: str) -> None:
    figures = example(name)
    braces, width = top_of(figures), float(figures["body_width"])
    why, rule = ruled(figures["body_shells"], braces, figures["body_bouts"], width)
    assert not why
    plate = solved(body_of(figures), braces, float(figures["across_station"]))
    assert STRIP[0] * rule < plate < STRIP[1] * rule


def bars(*rows: tuple[float, float, float, float]) -> tuple[BraceAsked, ...]:
    """Bars to the linings: where each crosses the centreline, its lean in degrees, width and height."""
    return tuple(_asked(f"bar {row}", *each) for row, each in enumerate(rows, 1))


def _asked(name: str, x: float, lean: float, width: float, height: float) -> BraceAsked:
    out = 50 * math.tan(math.radians(lean))
    ends = ((x - out, -50.0), (x + out, 50.0))
    return BraceAsked(
        name, "top", "body", *ends, "linings", "linings", width, height, "tapered", 2.5, 45.0, "spruce", (), ""
    )


LAID = {
    "two, far apart": bars((240, 0, 8, 14), (430, 0, 8, 12)),
    "one in the middle": bars((355, 0, 9, 15)),
    "five close": bars((200, 0, 7, 10), (260, 0, 7, 12), (320, 0, 7, 12), (380, 0, 7, 10), (430, 0, 7, 9)),
    "taller at the widest": bars((180, 0, 7, 10), (260, 0, 7, 10), (350, 0, 9, 14)),
    "zigzag": bars((230, 25, 8, 12), (310, -25, 8, 13), (390, 25, 8, 12)),
    "an X": bars((240, 44, 7, 13), (240, -44, 7, 13)),
    "an X and bars": bars((230, 40, 7, 13), (230, -40, 7, 13), (345, 0, 8, 10), (420, 0, 8, 9)),
    "leaning together a little": bars((250, 10, 8, 12), (330, 10, 8, 12), (410, 10, 8, 12)),
}


@pytest.mark.parametrize("name", LAID)
def test_the_rule_is_near_other_tops_solved(tarn: Figures, name: str) -> None:
    """On Tarn's outline: the rule stands, and a whole plate bends within its range."""
    shells, width = tarn["body_shells"], float(tarn["body_width"])
    braces = brace_list(LAID[name], Zeros(0.0, 490.0, 300.0), shells, 0.5)
    why, rule = ruled(shells, braces, tarn["body_bouts"], width)
    assert not why
    plate = solved(body_of(tarn), braces, float(tarn["across_station"]))
    assert STRIP[0] * rule < plate < STRIP[1] * rule, plate / rule


UNHELD = {
    "lean one way": bars((250, 35, 8, 12), (330, 35, 8, 12), (410, 35, 8, 12)),
    "lower or taller": bars((180, 0, 10, 17), (260, 0, 10, 16), (350, 0, 7, 9)),
    "near its widest part": bars((185, 0, 9, 13), (200, 0, 9, 13)),
}


@pytest.mark.parametrize("words", UNHELD)
def test_where_the_rule_does_not_stand_it_would_be_wrong(tarn: Figures, words: str) -> None:
    """A top so braced bends by more or less than the rule's range: it is told why it is not judged."""
    shells, width = tarn["body_shells"], float(tarn["body_width"])
    braces = brace_list(UNHELD[words], Zeros(0.0, 490.0, 300.0), shells, 0.5)
    why, rule = ruled(shells, braces, tarn["body_bouts"], width)
    assert words in why
    plate = solved(body_of(tarn), braces, float(tarn["across_station"]))
    assert not STRIP[0] * rule < plate < STRIP[1] * rule, plate / rule
