"""Which hand each part is for once it is made: figures are alike for both hands, and a part that is cut is not.

A part that is its own mirror image serves either.
"""

from dataclasses import dataclass

import numpy as np

from gramil.parts.body_records import Brace
from gramil.quantities import Mm, PerFret, PerString, Ratio
from gramil.shapes.mirrored import Points, alike, turned_over

OWNS = ("hand_",)

SQUARE_FRET = 0.00025
"""A fret's slant of no more than this is square: turned over, it is still within what passes of a slot."""
SQUARE_SADDLE = 0.0025
"""A saddle's slant of no more than this is square: turned over, it is still within what passes of its slot."""


@dataclass(frozen=True)
class Handed:
    """A part, and the hand that it is for: right, left or either."""

    name: str
    hand: str


def hand_list(
    fret_slant: PerFret[Ratio],
    saddle_slant: Ratio,
    brace_list: tuple[Brace, ...],
    head_posts_x: PerString[Mm],
    head_posts_y: PerString[Mm],
    instrument_handed: str,
) -> tuple[Handed, ...]:
    """Which hand each part is for that may be for one only: strings, frets, saddle, the top's braces, tuners' posts.

    Method: frets and saddle by their slant; braces and posts against their mirror images at the centreline.
    Source: plane geometry.
    """
    ends = [np.array([each.start, each.stop]) for each in brace_list if each.plate == "top"]
    either = {
        "strings": False,
        "frets": bool(np.abs(fret_slant).max() <= SQUARE_FRET),
        "saddle": abs(saddle_slant) <= SQUARE_SADDLE,
        "braces": all(any(alike(turned_over(one), other) for other in ends) for one in ends),
        "posts": _own_mirror(np.stack((head_posts_x, head_posts_y), axis=-1)),
    }
    return tuple(Handed(name, "either" if both else instrument_handed) for name, both in either.items())


def _own_mirror(points: Points) -> bool:
    return alike(turned_over(points), points)
