"""Words that grew until they lay over a line, put beside where they stood, where there is room."""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from math import cos, hypot, pi, sin

from gramil.drawings.marks import Arc, Circle, Line, Point, Polyline
from gramil.writers.extents import Box, box_round, touches
from gramil.writers.lettering import Lettering
from gramil.writers.plain import Plain
from gramil.writers.proof_square import meet

STEPS = (0.5, 1.0, 1.5, 2.0, 2.5, 3.0, 3.5)
"""How far from their place words may stand, in heights of a capital, tried in turn."""
FEW, NEXT, WAYS = 12, 2, 12
"""Words of more letters than this are put at most this many steps away: further off they would seem to be said of
something else.
"""
ROOM = 0.1
"""Room round words, as a share of the height of their capitals."""

Stroked = Line | Arc | Circle | Polyline


def clear_of_lines(marks: Sequence[Plain]) -> tuple[list[Plain], list[Lettering]]:
    """The marks with no words over a line, and those words for which there is no room near their place, left out.

    Numbers in rings stay: they have been given their places already.
    """
    rings = [mark for mark in marks if isinstance(mark, Circle)]
    placed = {at: mark for at, mark in enumerate(marks) if isinstance(mark, Lettering)}
    lines = boxed(mark for mark in marks if not isinstance(mark, Lettering))
    homeless: list[Lettering] = []
    for at, word in list(placed.items()):
        if _in_a_ring(word, rings) or not over_a_line(box_of(word), lines):
            continue
        others = [box_of(other) for place, other in placed.items() if place != at]
        place = next((each for each in _near(word) if _is_free(box_of(each), lines, others)), None)
        if place is None:
            homeless.append(placed.pop(at))
        else:
            placed[at] = place
    kept = (placed.get(at) if isinstance(mark, Lettering) else mark for at, mark in enumerate(marks))
    return [mark for mark in kept if mark is not None], homeless


def boxed(marks: Iterator[Plain]) -> list[tuple[Plain, Box]]:
    """Lines with the boxes round them; a hatch keeps clear of words by itself."""
    return [(mark, box_round(mark)) for mark in marks if mark.layer != "hatch"]


def over_a_line(box: Box, lines: Sequence[tuple[Plain, Box]]) -> bool:
    """Whether a line runs through a box."""
    left, low, right, high = box
    return any(
        touches(mark, box)
        for mark, its in lines
        if its[0] <= right and its[2] >= left and its[1] <= high and its[3] >= low
    )


def box_of(word: Lettering) -> Box:
    """The box round words, with a little room."""
    left, low, right, high = box_round(word)
    room = ROOM * word.height
    return (left - room, low - room, right + room, high + room)


def _is_free(box: Box, lines: Sequence[tuple[Plain, Box]], others: Sequence[Box]) -> bool:
    return not any(meet(box, other) for other in others) and not over_a_line(box, lines)


def _near(word: Lettering) -> Iterator[Lettering]:
    for step in STEPS if len(word.text) <= FEW else STEPS[:NEXT]:
        for way in range(WAYS):
            turn = 2 * pi * way / WAYS + pi / 2
            yield replace(word, at=_by(word.at, step * word.height, turn))


def _by(at: Point, far: float, turn: float) -> Point:
    return (at[0] + far * cos(turn), at[1] + far * sin(turn))


def _in_a_ring(word: Lettering, rings: Sequence[Circle]) -> bool:
    middle = (word.at[0], word.at[1] + word.height / 2)
    return word.anchor == "middle" and any(
        hypot(ring.centre[0] - middle[0], ring.centre[1] - middle[1]) < 1e-6 for ring in rings
    )
