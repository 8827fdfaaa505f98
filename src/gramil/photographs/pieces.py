"""What is printed to be laid round a plan: four loose strips of two tags each, or one frame of twelve.

All in mm as it should come out of the printer; what the maker measured on the print scales it.
"""

import numpy as np

from gramil.faults import MakersFault
from gramil.measure import LengthUnit, MeasureError, read_length, show
from gramil.photographs.tags import Piece, corners
from gramil.quantities import Mm

TAG: Mm = 36.0
"""Side of a tag."""
APART: Mm = 220.0
"""From the middle of a strip's one tag to that of its other: the bar that the maker measures."""
STRIPS = 4
SMALLEST_FRAME, LARGEST_FRAME = 200.0, 2000.0
"""Sides of a frame, mm."""
ANOTHER_BAR = 0.06
"""A bar that is longer or shorter than printed by this share is not a print of it."""
IN_FRAME = tuple(range(8, 20))
"""Numbers of the frame's tags, those of the strips being 0 to 7."""


def strips(measured: Mm = APART) -> tuple[Piece, ...]:
    """The four strips, `measured` long from middle to middle: strip i has the tags 2 i (left) and 2 i + 1."""
    share = measured / APART
    square, half = corners(TAG), np.array([APART / 2, 0.0])
    return tuple(Piece({2 * each: (square - half) * share, 2 * each + 1: (square + half) * share}) for each in range(4))


def as_measured(bar: Mm, printed: Mm, unit: LengthUnit = "mm") -> Mm:
    """The length that the maker measured of a bar. Raises MakersFault if no print of it is as long as that."""
    if abs(bar / printed - 1) > ANOTHER_BAR:
        raise MakersFault.of(
            f"the bar is {show(printed, unit)} on paper printed at 100 %, and {show(bar, unit)} is another bar",
            "or a print that was fitted to its page",
            "Print it anew at 100 %, or measure it again",
        )
    return bar


def frame_sides(written: str, unit: LengthUnit) -> tuple[Mm, Mm]:
    """Width and height of a frame, as "700 x 500 mm". Raises MakersFault."""
    one, _, other = written.lower().replace("×", "x").partition("x")
    tail = other.strip().lstrip("0123456789.,/ ")
    try:
        wide, tall = (
            float(read_length(each.strip() if each.strip()[-1:].isalpha() else each.strip() + tail, unit))
            for each in (one, other)
        )
    except MeasureError:
        wide, tall = 0.0, 0.0
    if not all(SMALLEST_FRAME <= each <= LARGEST_FRAME for each in (wide, tall)):
        raise MakersFault.of(
            f'"{written}" is not the size of a frame',
            f"one is {show(SMALLEST_FRAME, unit)} to {show(LARGEST_FRAME, unit)} wide and tall",
            f"Write its width and its height, such as {'700 x 500 mm' if unit == 'mm' else '28 x 20 in'}",
        )
    return wide, tall


def frame_middles(width: Mm, height: Mm) -> dict[int, tuple[Mm, Mm]]:
    """The middles of the frame's tags about its own middle, y up: four along top and bottom, two more up each side.

    `width` and `height` are between the middles of the tags at its corners.
    """
    across = [width * (step / 3 - 0.5) for step in range(4)]
    up = [height * (0.5 - step / 3) for step in (1, 2)]
    places = [(x, height / 2) for x in across] + [(width / 2, y) for y in up]
    places += [(-x, -y) for x, y in places]
    return dict(zip(IN_FRAME, places, strict=True))


def frame_piece(width: Mm, height: Mm, measured: Mm | None = None) -> Piece:
    """The frame as one piece; `measured` is what its width is on the print."""
    share = (measured or width) / width
    square = corners(TAG)
    middles = frame_middles(width, height)
    return Piece({number: (square + np.array(middle)) * share for number, middle in middles.items()})
