"""How sure a place read from a photograph is, in mm.

What the corners scatter says least: a sheet that waves by a millimetre moves what lies at the picture's rim by more,
and the fit hides it. So three things are allowed for: cameras as likely as the solved one, the waving seen at a slant,
and how far each tag is off when all the others say where it lies.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from gramil.photographs.solving import NotSolvedError, Picture, Solved, camera_of, laid, place_of, solved
from gramil.quantities import Mm

Array = NDArray[np.float64]
WAVING: Mm = 1.0
"""How high paper stands off the table where nobody said."""
OF_WAVING = 0.6
"""Share of the waving that a place is off by, one standard deviation, seen at 45 degrees. Tried on waving sheets."""
APART_FROM_REST = 4.0
"""A tag that is off by this many times the median of all is out of its place."""
OUT_OF_PLACE_LEAST: Mm = 0.35
BESIDE_THE_WORST = 0.6
"""A tag that is off by less than this share of the worst may be off by the worst alone, which lies beside it."""


@dataclass(frozen=True)
class View:
    """One picture of a solved plan: what is traced lies `height` mm over the tags, paper stands off by `waving`;
    `left_out` is what each tag is off when the others say where it lies.
    """

    answer: Solved
    left_out: Mapping[int, Mm]
    picture: int = 0
    waving: Mm = WAVING
    height: Mm = 0.0


def unsure(view: View, pixels: Array) -> Array:
    """One standard deviation of the places (n) at which pixels (n, 2) meet the plane, mm; at least three of them.

    Where the whole plan lies does not matter: what moves and turns all places together is left out.
    """
    slant = view.answer.camera(view.picture).slant(pixels)
    reckoned = np.hypot(_by_corners(view, pixels), OF_WAVING * view.waving * slant)
    square = [off**2 for off in view.left_out.values()]
    floor = float(np.sqrt(np.mean(square))) / 2 if square else 0.0
    return np.asarray(np.maximum(reckoned, floor))


def _by_corners(view: View, pixels: Array) -> Array:
    """What the corners' scatter leaves open, to first order: every way in which all numbers may be off together."""
    values, ways = np.linalg.eigh(view.answer.spread)
    here = view.answer.camera(view.picture).on_plane(pixels, view.height)
    square = np.zeros(len(pixels))
    for value, way in zip(values, ways.T, strict=True):
        if value > 0:
            step = way * np.sqrt(value) * 1e-2
            ahead, behind = (
                camera_of(view.answer.numbers + each, view.picture).on_plane(pixels, view.height)
                for each in (step, -step)
            )
            square += (_without_moving(here, (ahead - behind) / 2e-2) ** 2).sum(axis=1) / 2
    return np.asarray(np.sqrt(square))


def _without_moving(points: Array, moves: Array) -> Array:
    """Moves of points (n, 2) without what moves and turns them together."""
    about = points - points.mean(axis=0)
    rest = moves - moves.mean(axis=0)
    turned = np.column_stack((-about[:, 1], about[:, 0]))
    return np.asarray(rest - turned * ((turned * rest).sum() / max(float((turned**2).sum()), 1e-12)))


def off_when_left_out(answer: Solved) -> Mapping[int, Mm]:
    """By tag, how far its corners lie from where all other tags say (root mean square, mm), pictures together.

    A tag that is alone on its piece is left out of the list: nothing else says where it lies.
    """
    found = {}
    for number in sorted({tag.number for picture in answer.pictures for tag in picture.tags}):
        off = _left_out(answer, number)
        if off is not None:
            found[number] = off
    return found


def _left_out(answer: Solved, number: int) -> Mm | None:
    """How far a tag is off where all others say that it is."""
    piece = next(index for index, each in enumerate(answer.pieces) if number in each.tags)
    if not _seen_besides(answer, piece, number):
        return None
    without = [
        Picture(picture.size, tuple(tag for tag in picture.tags if tag.number != number)) for picture in answer.pictures
    ]
    try:
        other = solved(answer.pieces, without, answer.numbers)
    except NotSolvedError:
        return None
    place = place_of(other.numbers, len(without), piece)
    square = []
    for index, picture in enumerate(answer.pictures):
        for tag in picture.tags:
            if tag.number == number:
                there = other.camera(index).on_plane(tag.corners)
                square.append(((there - laid(place, answer.pieces[piece].tags[number])) ** 2).sum(axis=1))
    return float(np.sqrt(np.mean(square)))


def _seen_besides(answer: Solved, piece: int, number: int) -> bool:
    """Whether another tag of the piece is seen in some picture."""
    others = set(answer.pieces[piece].tags) - {number}
    return any(tag.number in others for picture in answer.pictures for tag in picture.tags)


def out_of_place(off: Mapping[int, Mm]) -> tuple[int, ...]:
    """Tags that lie elsewhere than the others say, by what each is off when left out, the worst first."""
    if len(off) < 4:
        return ()
    worst = BESIDE_THE_WORST * max(off.values())
    bound = max(APART_FROM_REST * float(np.median(list(off.values()))), OUT_OF_PLACE_LEAST, worst)
    return tuple(sorted((number for number in off if off[number] > bound), key=lambda number: -off[number]))
