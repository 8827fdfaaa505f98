"""Where on a page there is blank room for something: rectangles that no mark reaches into."""

import numpy as np
from numpy.typing import NDArray

from gramil.drawings.marks import Point
from gramil.writers.extents import Box, Vectors

CELL = 2.0
"""Side in mm of the cells in which a page is seen to be blank or not; marks are seen by points half as far apart."""


def blank_rooms(inked: Vectors, window: Box, size: Point, step: float) -> NDArray[np.float64]:
    """Upper left corners of rectangles of one size within which none of the points lies; a row each, along and up.

    They are tried every `step` mm of the window, a multiple of `CELL`, and given from the top down and from the left.
    """
    wide, tall = (int(np.ceil(each / CELL - 1e-9)) for each in size)
    every = int(step / CELL)
    across, down = (
        int((window[axis + 2] - window[axis] - cells * CELL) // step) + 1 for axis, cells in ((0, wide), (1, tall))
    )
    if across < 1 or down < 1:
        return np.empty((0, 2))
    summed = _counted(inked, window, (every * (across - 1) + wide, every * (down - 1) + tall))
    left, right = slice(0, summed.shape[0] - wide, every), slice(wide, None, every)
    high, low = slice(0, summed.shape[1] - tall, every), slice(tall, None, every)
    found = summed[right, low] - summed[left, low] - summed[right, high] + summed[left, high]
    rows = np.argwhere(found.T == 0)
    return np.stack((window[0] + step * rows[:, 1], window[3] - step * rows[:, 0]), axis=1)


def _counted(inked: Vectors, window: Box, size: tuple[int, int]) -> NDArray[np.int64]:
    """How many points lie left of and above each corner of the cells, counted from the window's upper left."""
    places = np.floor((inked - (window[0], window[3])) / (CELL, -CELL)).astype(int)
    inside = places[((places >= 0) & (places < size)).all(axis=1)]
    corners = (inside[:, 0] + 1) * (size[1] + 1) + inside[:, 1] + 1
    counted = np.bincount(corners, minlength=(size[0] + 1) * (size[1] + 1)).reshape(size[0] + 1, size[1] + 1)
    summed: NDArray[np.int64] = counted.cumsum(axis=0).cumsum(axis=1)
    return summed
