"""Which braces of a plan cross, so that they are notched into each other."""

from collections.abc import Iterator, Sequence
from itertools import product

import numpy as np

from gramil.description.plan.parts import RUNS_ON, PlanBrace, Point

Line = tuple[Point, Point]
ENDS_THERE = 0.04
"""By which share of its length a line may run past its point and still cross there."""


def crossed_by(braces: Sequence[PlanBrace], half: Sequence[Point]) -> tuple[tuple[str, ...], ...]:
    """For each brace the names of earlier ones on its plate that it crosses within the outline's half, (along, across).

    A brace that ends against another is not notched into it.
    """
    found = []
    for row, each in enumerate(braces):
        before = [other for other in braces[:row] if other.plate == each.plate]
        found.append(tuple(dict.fromkeys(name for other in before for name in _met(each, other, half))))
    return tuple(found)


def _met(each: PlanBrace, other: PlanBrace, half: Sequence[Point]) -> Iterator[str]:
    """The names of another brace, or of its twin, that a brace or its twin crosses."""
    for mine, (name, its) in product(_sides(each), _sides(other)):
        if name not in (each.start, each.stop) and _cross(mine[1], each, its, other, half):
            yield name


def _sides(brace: PlanBrace) -> tuple[tuple[str, Line], ...]:
    """Its line under its name; with a twin, both by the side on which their second ends lie."""
    (x, y), (u, v) = brace.line
    if not brace.twin:
        return ((brace.name, brace.line),)
    own, twin = ("treble", "bass") if v >= 0 else ("bass", "treble")
    return ((f"{brace.name} {own}", brace.line), (f"{brace.name} {twin}", ((x, -y), (u, -v))))


def _cross(mine: Line, each: PlanBrace, its: Line, other: PlanBrace, half: Sequence[Point]) -> bool:
    """Whether two lines meet within both braces and within the body."""
    start, run = np.array(mine[0]), np.subtract(mine[1], mine[0])
    begin, way = np.array(its[0]), np.subtract(its[1], its[0])
    turn = run[0] * way[1] - run[1] * way[0]
    if abs(turn) < 1e-9 * float(np.hypot(*run) * np.hypot(*way)):
        return False
    apart = begin - start
    shares = ((apart[0] * way[1] - apart[1] * way[0]) / turn, (apart[0] * run[1] - apart[1] * run[0]) / turn)
    along, across = start + shares[0] * run
    inside = half[0][0] < along < half[-1][0] and abs(across) < np.interp(
        along, [x for x, _ in half], [y for _, y in half]
    )
    return bool(inside and _reaches(each, shares[0]) and _reaches(other, shares[1]))


def _reaches(brace: PlanBrace, share: float) -> bool:
    """Whether a brace reaches a place at that distance along its line."""
    after = brace.start == RUNS_ON or share > -ENDS_THERE
    return after and (brace.stop == RUNS_ON or share < 1 + ENDS_THERE)
