"""Going on anyway: what happens if a top, a bound board, a bridge or a board on its neck is glued with the wood as it
is.

Each case says, for the airs that the instrument will meet, what moves, what stress is held in, and a verdict; none of
it is a guarantee, and the assumptions are stated.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from gramil.decimals import fixed
from gramil.formatter import shown
from gramil.in_shop_units import in_shop_units
from gramil.measure import LengthUnit
from gramil.wood.air import Air
from gramil.wood.movement import FIBRE_SATURATION, SHRINKAGE_ALONG, free_strain
from gramil.wood.restraint import (
    CREEP,
    STRIP,
    Judgement,
    Plate,
    StripLayer,
    dome_radius,
    held,
    strip_bow,
    verdict,
)
from gramil.wood.species import Direction, Species

Answer = Literal["go", "wait", "do this first"]
DOME_BY_STRIP = (
    f"dome: one strip across the grain, as wide as the braces are apart, {STRIP[0]:g} to {STRIP[1]:g} of it in a whole "
    "plate; the last figure is an upper bound: nothing crept, and the frame around does not hold it"
)
DOME_NOT_JUDGED = "dome: not judged, because no braces across the grain hold the top near its widest part"
GRAVITY: tuple[Judgement, ...] = ("holds", "likely to hold", "pressed", "not judged", "may crack", "cracks")
"""From what may stand to what must not happen."""


@dataclass(frozen=True)
class Figure:
    """One figure of a case: what it is, least and most (equal if there is only one value), and its
    unit ("mm", "MPa", "%").
    """

    what: str
    least: float
    most: float
    unit: str


@dataclass(frozen=True)
class Later:
    """What happens in one air: its relative humidity %, the moisture % that the wood comes to, figures, a verdict."""

    humidity: float
    moisture: float
    figures: tuple[Figure, ...]
    judgement: Judgement
    why: str


@dataclass(frozen=True)
class Case:
    """A glue-up at a moisture (%), what happens to it in each air, and what was assumed, in words."""

    what: str
    moisture: float
    laters: tuple[Later, ...]
    assumptions: tuple[str, ...]

    @property
    def worst(self) -> Judgement:
        """The gravest judgement over the airs."""
        return max((each.judgement for each in self.laters), key=GRAVITY.index)


@dataclass(frozen=True)
class Sized:
    """A piece that is glued: wood, how its width is sawn, moisture %, and length, width, thickness mm."""

    species: Species
    direction: Direction
    moisture: float
    length: float
    width: float
    thickness: float


def braced_plate(plate: Plate, moisture: float, airs: Sequence[Air], across: bool = True) -> Case:
    """A plate glued to its braces at a moisture (%): strain and stress held in, and what its dome becomes.

    across: whether its braces run across the grain near its widest part; for a fan-braced top no dome is told.
    """
    laters, words = [], dict[str, None]()
    for air in airs:
        state = held(plate.species, plate.direction, moisture, air.moisture)
        judged = verdict(state)
        words |= dict.fromkeys(judged.assumptions)
        dome = _dome(plate, moisture, air.moisture) if across else []
        figures = [*_strain(state.strain), *_stress(state.stress), *dome]
        laters.append(Later(air.humidity, air.moisture, tuple(figures), judged.judgement, judged.why))
    words[DOME_BY_STRIP if across else DOME_NOT_JUDGED] = None
    return Case("the plate with its braces", moisture, tuple(laters), tuple(words))


def bound_board(board: Sized, binding: float, airs: Sequence[Air]) -> Case:
    """A board glued and bound at a moisture (%): its width, its fret ends, and its face against the binding's."""
    laters = [_board_later(board, binding, air) for air in airs]
    words = ("the binding keeps its size", "frets keep their length", *_sources(board))
    return Case("the bound board", board.moisture, tuple(laters), words)


def bridge(top: Sized, foot: Sized, airs: Sequence[Air]) -> Case:
    """A bridge of a length glued across a top at the top's moisture (%): how far the top under it would move, and the
    bow.

    foot: the bridge; its length lies across the top's grain, along its own.
    """
    laters, words = [], dict[str, None]()
    for air in airs:
        state = held(top.species, top.direction, top.moisture, air.moisture)
        judged = verdict(state)
        words |= dict.fromkeys(judged.assumptions)
        figures = [
            *_footprint(state.strain, foot.length),
            *_stress(state.stress),
            *_bridge_bow(top, foot, state.strain),
        ]
        laters.append(Later(air.humidity, air.moisture, tuple(figures), judged.judgement, judged.why))
    words["the bridge keeps its length; the top's braces do not hold it"] = None
    return Case("the bridge on its top", top.moisture, tuple(laters), tuple(words))


def neck_and_board(board: Sized, neck: Sized, airs: Sequence[Air]) -> Case:
    """A board glued to a neck, each at its own moisture (%): the bow along their length, and the step across."""
    laters = [_neck_later(board, neck, air) for air in airs]
    low, high = SHRINKAGE_ALONG
    words = (
        f"along straight grain {low:g} to {high:g} % from green to dry, straight with moisture; more in wild grain",
        f"bow: two layers, elastic, {CREEP[0]:g} to 1 of it left by creep (assumed)",
        *_sources(board),
    )
    return Case("the board on its neck", board.moisture, tuple(laters), words)


def answer(case: Case, band: tuple[float, float]) -> tuple[Answer, str]:
    """Go, wait, or do this first, and why, in a sentence; band is that of the wood's moisture for gluing (%)."""
    inside = band[0] <= case.moisture <= band[1]
    side = "drier" if case.moisture < band[0] else "damper"
    grave = [each for each in case.laters if each.judgement == case.worst]
    where = " and ".join(f"{each.humidity:g} %" for each in grave)
    if case.worst in ("cracks", "may crack"):
        word = "is likely to crack" if case.worst == "cracks" else "may crack"
        if inside:
            return "go", f"settled as practice wants it; even so it {word} at {where}: say so to its owner"
        return "do this first", f"at {where} it {word}: settle the wood first"
    if inside:
        return "go", "the wood is settled as practice wants it" + _unjudged(case)
    return "wait", f"the wood is {side} than practice wants it, {band[0]:.1f} to {band[1]:.1f} %" + _unjudged(case)


def _unjudged(case: Case) -> str:
    return "; cracks are not judged" if case.worst == "not judged" else ""


def _strain(strain: float | None) -> list[Figure]:
    return [] if strain is None else [Figure("wants to move, across the grain", 100 * strain, 100 * strain, "%")]


def _stress(stress: tuple[float, float] | None) -> list[Figure]:
    return [] if stress is None else [Figure("stress held in, pull positive", *stress, "MPa")]


def _dome(plate: Plate, moisture: float, later: float) -> list[Figure]:
    """The dome's radius, with creep at its most and at none; nothing where a figure is missing."""
    radii = [dome_radius(plate, moisture, later, kept) for kept in (CREEP[0] * STRIP[0], STRIP[1])]
    known = [radius for radius in radii if radius is not None]
    if len(known) < len(radii):
        return []
    return [Figure("radius of the dome, hollow negative", known[0], known[1], "radius")]


def _board_later(board: Sized, binding: float, air: Air) -> Later:
    across, through = _ways(board.direction)
    width = _grows(board, across, board.width - 2 * binding, air)
    thick = _grows(board, through, board.thickness, air) if binding else None
    figures = [] if width is None else [
        Figure("change of width between the bindings" if binding else "change of width", width, width, "mm"),
        Figure("fret ends stand out of each edge", max(0.0, -width / 2), max(0.0, -width / 2), "mm"),
    ]  # fmt: skip
    if thick is not None:
        figures.append(Figure("board over its binding, under it negative", thick, thick, "mm"))
    return Later(
        air.humidity, air.moisture, tuple(figures), "not judged", "no crack is judged: nothing holds the board"
    )


def _ways(direction: Direction) -> tuple[Direction, Direction]:
    """Across the width, and through the thickness."""
    return ("radial", "tangential") if direction == "radial" else ("tangential", "radial")


def _grows(board: Sized, way: Direction, size: float, air: Air) -> float | None:
    coefficient = board.species.movement(way)
    if coefficient is None:
        return None
    return size * float(free_strain(coefficient.value, board.moisture, air.moisture))


def _footprint(strain: float | None, length: float) -> list[Figure]:
    if strain is None:
        return []
    return [Figure("the top wants to move under the bridge", strain * length, strain * length, "mm")]


def _bridge_bow(top: Sized, foot: Sized, strain: float | None) -> list[Figure]:
    across, along = top.species.modulus_across(top.direction), foot.species.modulus
    if strain is None or across is None or along is None:
        return []
    layers = [
        StripLayer(foot.width, top.thickness, across.value, strain),
        StripLayer(foot.width, foot.thickness, along.value, 0.0),
    ]
    bow = strip_bow(layers, foot.length)
    return [Figure("bow along the bridge, ends up positive", min(CREEP[0] * bow, bow), max(CREEP[0] * bow, bow), "mm")]


def _neck_later(board: Sized, neck: Sized, air: Air) -> Later:
    figures = [*_neck_bow(board, neck, air), *_step_across(board, neck, air)]
    return Later(
        air.humidity, air.moisture, tuple(figures), "not judged", "no crack is judged: both run along the grain"
    )


def _neck_bow(board: Sized, neck: Sized, air: Air) -> list[Figure]:
    """Bow of neck (below) and board over the neck's length, for each way that the two may shrink along the grain."""
    stiff, stiff_neck = board.species.modulus, neck.species.modulus
    if stiff is None or stiff_neck is None:
        return []
    bows = []
    for own in SHRINKAGE_ALONG:
        for its in SHRINKAGE_ALONG:
            layers = [
                StripLayer(neck.width, neck.thickness, stiff_neck.value, _along(its, neck.moisture, air.moisture)),
                StripLayer(board.width, board.thickness, stiff.value, _along(own, board.moisture, air.moisture)),
            ]
            bow = strip_bow(layers, neck.length)
            bows += [bow, CREEP[0] * bow]
    return [Figure("bow of the neck, ends toward the strings positive", min(bows), max(bows), "mm")]


def _along(share: float, moisture: float, later: float) -> float:
    return share / 100.0 * (later - moisture) / FIBRE_SATURATION


def _step_across(board: Sized, neck: Sized, air: Air) -> list[Figure]:
    own = _grows(board, board.direction, board.width, air)
    its = _grows(neck, neck.direction, board.width, air)
    if own is None or its is None:
        return []
    return [Figure("board wider than the neck, if both were free", own - its, own - its, "mm")]


def _sources(board: Sized) -> tuple[str, ...]:
    figure = board.species.movement(board.direction)
    if figure is None:
        return (f"no source gives how {board.species.name} moves",)
    note = f": {figure.note}" if figure.note else ""
    return (f"movement {figure.value:.3g} {board.direction} ({figure.flag}{note})",)


def figure_text(figure: Figure, units: LengthUnit) -> str:
    """A figure of a case in words, least to most; a dome's radius in metres or feet."""
    least, most = (_value_text(each, figure.unit, units) for each in (figure.least, figure.most))
    return least if least == most else f"{least} to {most}"


def _value_text(value: float, unit: str, units: LengthUnit) -> str:
    if unit == "radius":
        return "flat" if _flat(value) else f"{value / 304.8:.1f} ft" if units == "in" else f"{value / 1000:.2f} m"
    return shown(value, unit, units) if unit == "mm" else in_shop_units(f"{fixed(value, 2)} {unit}", units)


def _flat(radius: float) -> bool:
    """Whether a dome is as good as flat: a radius over 100 m."""
    return math.isinf(radius) or abs(radius) > 1e5
