"""Numbers in rings, in place of words for which a drawing has no room; what is a number itself is set aside."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import cos, hypot, pi, sin

from gramil.drawings.marks import Circle, Line, Point
from gramil.writers.clear_of_lines import over_a_line
from gramil.writers.extents import Box
from gramil.writers.lettering import Lettering, corners
from gramil.writers.plain import Plain
from gramil.writers.proof_square import meet as boxes_meet
from gramil.writers.slanted import Corners, hits, meet, upright

RING = (1.0, 1.2, 1.6)
"""Radius of the ring round a number, by its count of digits, in heights of a capital."""
THIN = 0.1
"""Half the room that a line from a number to its words takes, in mm."""
WAYS = 8
STEPS = (0.0, 1.7, 2.6, 3.5, 5.0, 6.5, 8.0, 10.0, 13.0, 16.0, 20.0, 25.0, 30.0)
"""How far from the words that it stands for a number may stand, in heights of a capital, tried in turn, and how many
ways from there."""


def numbered(text: Lettering, number: str, taken: list[Corners], lines: Sequence[tuple[Plain, Box]]) -> Iterator[Plain]:
    """The number as near the middle of the words as there is room, with a line to it if it stands aside.

    Clear of words and lines if it can be, else of words.
    """
    middle, reach = _pointed_at(text, taken), RING[min(len(number), len(RING)) - 1] * text.height
    at = _place(middle, text.height, reach, taken, lines)
    taken.append(_square(at, reach))
    yield Lettering((at[0], at[1] - text.height / 2), number, text.height, 0.0, "middle", text.layer, True)
    yield Circle(at, reach, "dimensions")
    if hypot(at[0] - middle[0], at[1] - middle[1]) > 2 * reach:
        yield Line(_toward(at, middle, reach), middle, "dimensions")


def set_aside(text: Lettering, taken: list[Corners], lines: Sequence[tuple[Plain, Box]]) -> Iterator[Plain]:
    """A number or a name of a few letters, moved as little as there is room for, with a line to its place."""
    middle, reach = _pointed_at(text, taken), RING[min(len(text.text), len(RING)) - 1] * text.height
    at = _place(middle, text.height, reach, taken, lines)
    taken.append(_square(at, reach))
    yield replace(text, at=(at[0], at[1] - text.height / 2), angle=0.0, anchor="middle")
    if hypot(at[0] - middle[0], at[1] - middle[1]) > 2 * reach:
        yield Line(_toward(at, middle, reach), middle, "dimensions")


def _pointed_at(text: Lettering, taken: Sequence[Corners]) -> Point:
    """What a number's line leads to: the middle of the words that it stands for or, where others have grown over that,
    one of their ends."""
    low_left, low_right, high_right, high_left = corners(text)
    ends = ((low_left, high_right), (low_left, high_left), (low_right, high_right))
    points = [((one[0] + other[0]) / 2, (one[1] + other[1]) / 2) for one, other in ends]
    free = (at for at in points if not any(meet(_square(at, THIN), other) for other in taken))
    return next(free, points[0])


def _place(
    middle: Point, height: float, reach: float, taken: Sequence[Corners], lines: Sequence[tuple[Plain, Box]]
) -> Point:
    """Where a number stands: the first place clear of words, its line too, and of lines; else the first clear of words,
    else the last."""
    free, at, far = None, middle, STEPS[-1] * height + reach
    near = [(upright(other), other) for other in taken if meet(_square(middle, far), other)]
    lines = [each for each in lines if boxes_meet(each[1], _round(middle, far))]
    for at in _places(middle, height):
        if hits(_square(at, reach), near):
            continue
        free = free or at
        led = at == middle or not hits(_band(at, middle), near)
        if led and not over_a_line(_round(at, reach), lines):
            return at
    return free or at


def _places(middle: Point, height: float) -> Iterator[Point]:
    yield middle
    for step in STEPS[1:]:
        for part in range(WAYS):
            turn = 2 * pi * part / WAYS
            yield (middle[0] + step * height * cos(turn), middle[1] + step * height * sin(turn))


def _square(at: Point, reach: float) -> Corners:
    (x, y), r = at, reach
    return ((x - r, y - r), (x + r, y - r), (x + r, y + r), (x - r, y + r))


def _round(at: Point, reach: float) -> Box:
    return (at[0] - reach, at[1] - reach, at[0] + reach, at[1] + reach)


def _band(start: Point, end: Point) -> Corners:
    """A narrow band round a line, as a box."""
    far = hypot(end[0] - start[0], end[1] - start[1])
    aside = (-(end[1] - start[1]) / far * THIN, (end[0] - start[0]) / far * THIN)
    return (
        (start[0] - aside[0], start[1] - aside[1]),
        (end[0] - aside[0], end[1] - aside[1]),
        (end[0] + aside[0], end[1] + aside[1]),
        (start[0] + aside[0], start[1] + aside[1]),
    )


def _toward(start: Point, end: Point, by: float) -> Point:
    far = hypot(end[0] - start[0], end[1] - start[1])
    return (start[0] + (end[0] - start[0]) * by / far, start[1] + (end[1] - start[1]) * by / far)
