"""Which hand each part is for once it is made: figures are alike for both hands, and a part that is cut is not.

A part that is its own mirror image serves either.
"""

from dataclasses import dataclass

import numpy as np

from gramil.parts.body_records import Brace
from gramil.quantities import Mm, PerFret, PerString, Ratio
from gramil.shapes.mirrored import alike, turned_over

OWNS = ("hand_",)

SQUARE_FRET = 0.00025
"""A fret's slant of no more than this is square: turned over, it is still within what passes of a slot."""
SQUARE_SADDLE = 0.0025
"""A saddle's slant of no more than this is square: turned over, it is still within what passes of its slot."""


@dataclass(frozen=True)
class Handed:
    """The hand that a part is for: right, left or either."""

    hand: str


def hand_strings(instrument_handed: str) -> Handed:
    """Which hand the strings' order is for, and what is cut to it: nut, saddle, side dots.

    Method: the instrument's own; for the other hand the strings lie in the opposite order.
    Source: common practice.
    """
    return Handed(instrument_handed)


def hand_frets(fret_slant: PerFret[Ratio], instrument_handed: str) -> Handed:
    """Which hand a board with these frets is for: either, if all of them are square to the centreline.

    Method: the greatest slant of any fret, against what still passes as square once it is turned over.
    Source: plane geometry.
    """
    return Handed("either" if np.abs(fret_slant).max() <= SQUARE_FRET else instrument_handed)


def hand_saddle(saddle_slant: Ratio, instrument_handed: str) -> Handed:
    """Which hand a bridge with this saddle's slot is for: either, if the slot is square to the centreline.

    Method: the saddle's slant, against what still passes as square once it is turned over.
    Source: plane geometry.
    """
    return Handed("either" if abs(saddle_slant) <= SQUARE_SADDLE else instrument_handed)


def hand_braces(brace_list: tuple[Brace, ...], instrument_handed: str) -> Handed:
    """Which hand the top's braces are for: either, if each has its mirror image among them.

    Method: both ends of each, turned over at the centreline, against both ends of every other.
    Source: plane geometry.
    """
    ends = [np.array([each.start, each.stop]) for each in brace_list if each.plate == "top"]
    paired = all(any(alike(turned_over(one), other) for other in ends) for one in ends)
    return Handed("either" if paired else instrument_handed)


def hand_posts(head_posts_x: PerString[Mm], head_posts_y: PerString[Mm], instrument_handed: str) -> Handed:
    """Which hand a head with these posts is for: either, if each post has its mirror image among them.

    Method: each post, turned over at the centreline, against every other.
    Source: plane geometry.
    """
    posts = np.stack((head_posts_x, head_posts_y), axis=-1)
    return Handed("either" if alike(turned_over(posts), posts) else instrument_handed)
