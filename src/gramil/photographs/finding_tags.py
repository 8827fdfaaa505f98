"""Tags found in a picture, each with its corners to a small part of a pixel.

Dark spots are taken at half size, those that are four-cornered are fitted at full size edge by edge (the place of the
steepest change on many lines across each edge, one straight line through them), and the cells inside say which tag it
is. Anything that is not one of our tags is left out silently: pictures are full of dark squares.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy import ndimage
from scipy.spatial import ConvexHull, QhullError

from gramil.photographs.tags import ACROSS, CELLS, Known, known

Array = NDArray[np.float64]
Grey = NDArray[np.float32]
"""A picture's light, rows from the top, 0 (black) to 255."""
SMALLEST = 12.0
"""Side of a spot in pixels at half size: below it no cell can be read."""
NEIGHBOURHOOD = 0.06
"""Share of the picture's longer side over which light is levelled out before dark is told from bright."""
DARK = 0.72
"""A pixel is dark under this share of the light about it."""
ACROSS_EDGE = 40
"""Lines across each edge on which its place is sought."""
REACH = 0.45
"""How far to either side of an edge it is sought, in cells."""


@dataclass(frozen=True)
class FoundTag:
    """A tag in the picture: its number, and its corners (4, 2) in pixels (x right, y down, 0 the middle of the first
    pixel) in the order top left, top right, bottom right, bottom left as it is printed.

    `side` is its shortest side in pixels; `blur` the width in pixels over which its edges go from dark to bright.
    """

    number: int
    corners: Array
    mirrored: bool
    side: float
    blur: float


def tags_in(grey: Grey) -> tuple[FoundTag, ...]:
    """Every tag in a picture, by number; of two with the same number, the one that is seen larger."""
    found: dict[int, FoundTag] = {}
    for rough in _four_cornered(grey):
        tag = _tag(grey, rough)
        if tag is not None and (tag.number not in found or found[tag.number].side < tag.side):
            found[tag.number] = tag
    return tuple(found[number] for number in sorted(found))


def _four_cornered(grey: Grey) -> list[Array]:
    """Rough corners (4, 2) in pixels of every dark spot that has four, going round with the clock."""
    half = _halved(grey)
    about = ndimage.uniform_filter(half, max(int(NEIGHBOURHOOD * max(half.shape)), 15))
    labels, _ = ndimage.label(half < DARK * about)
    found = []
    for number, place in enumerate(ndimage.find_objects(labels), start=1):
        height, width = (each.stop - each.start for each in place)
        if min(height, width) < SMALLEST or max(height, width) > max(half.shape) / 2:
            continue
        corners = _corners_of(np.argwhere(labels[place] == number)[:, ::-1].astype(np.float64))
        if corners is not None:
            start = np.array([place[1].start, place[0].start])
            found.append((corners + start) * 2 + 0.5)
    return found


def _halved(grey: Grey) -> Grey:
    """The picture at half size, each pixel the mean of four."""
    rows, columns = (each // 2 * 2 for each in grey.shape)
    whole = grey[:rows, :columns]
    return (whole[::2, ::2] + whole[1::2, ::2] + whole[::2, 1::2] + whole[1::2, 1::2]) / np.float32(4)


def _corners_of(points: Array) -> Array | None:
    """The four corners of a spot's pixels (x, y); None if its hull is not four-cornered."""
    try:
        hull = points[ConvexHull(points).vertices]
    except QhullError:
        return None
    four = _largest_four(hull)
    area, whole = _area(four), _area(hull)
    sides = np.hypot(*(four - np.roll(four, -1, axis=0)).T)
    if whole < SMALLEST**2 or whole > 1.12 * area or sides.min() < max(SMALLEST, 0.4 * sides.max()):
        return None
    # The frame and its pattern fill at least half of a tag; a line drawn round a square does not.
    return four if len(points) > 0.4 * area else None


def _largest_four(hull: Array) -> Array:
    """Four corners of a convex ring: the two farthest apart, and on either side the farthest from the line of them."""
    apart = hull[:, None] - hull[None, :]
    first, second = np.unravel_index(int((apart**2).sum(axis=-1).argmax()), (len(hull), len(hull)))
    one, other = hull[first], hull[second]
    along = other - one
    off = along[0] * (hull[:, 1] - one[1]) - along[1] * (hull[:, 0] - one[0])
    four = np.array([one, hull[off.argmin()], other, hull[off.argmax()]])
    return four if _signed(four) > 0 else four[::-1]


def _signed(ring: Array) -> float:
    """The area of a ring, positive where it goes round with the clock as seen (y down)."""
    (x, y), (u, v) = ring.T, np.roll(ring, -1, axis=0).T
    return float((x * v - u * y).sum()) / 2


def _area(ring: Array) -> float:
    """The area of a ring."""
    return abs(_signed(ring))


def _tag(grey: Grey, rough: Array) -> FoundTag | None:
    """The tag within rough corners; None if it is not one of ours."""
    corners, blur = rough, 0.0
    for _ in range(2):
        fitted = _fitted(grey, corners)
        if fitted is None:
            return None
        corners, blur = fitted
    which = _read(grey, corners)
    if which is None:
        return None
    side = float(np.hypot(*(corners - np.roll(corners, -1, axis=0)).T).min())
    return FoundTag(which.number, _as_printed(corners, which), which.mirrored, side, blur)


def _as_printed(corners: Array, which: Known) -> Array:
    """Corners that begin at the printed top left, whichever way round the tag is seen."""
    return np.roll(corners, -which.turned, axis=0)


def _fitted(grey: Grey, corners: Array) -> tuple[Array, float] | None:
    """Corners where lines through the edges' steepest places meet; with the width of the edges."""
    lines, widths = [], []
    for start, end in zip(corners, np.roll(corners, -1, axis=0), strict=True):
        edge = _edge(grey, start, end)
        if edge is None:
            return None
        lines.append(edge[0])
        widths.append(edge[1])
    moved = [_meeting(before, line) for before, line in zip((lines[-1], *lines[:-1]), lines, strict=True)]
    if any(point is None for point in moved):
        return None
    return np.array(moved), float(np.median(widths))


def _edge(grey: Grey, start: Array, end: Array) -> tuple[tuple[Array, Array], float] | None:
    """The line of an edge (a point and its direction), the width over which it turns bright."""
    length = float(np.hypot(*(end - start)))
    if length < 2 * SMALLEST:
        return None
    along = (end - start) / length
    out = np.array([along[1], -along[0]])
    reach = max(REACH * length / ACROSS, 2.0)
    steps = np.arange(-reach, reach + 0.25, 0.5)
    bases = start + np.linspace(0.1, 0.9, ACROSS_EDGE)[:, None] * (end - start)
    places = bases[:, None] + steps[None, :, None] * out
    light = sampled(grey, places)
    rise = np.clip(np.diff(light, axis=1), 0, None)
    contrast = light[:, -2:].mean(axis=1) - light[:, :2].mean(axis=1)
    sure = contrast > 0.4 * max(float(np.median(contrast)), 25.0)
    if sure.sum() < ACROSS_EDGE // 2:
        return None
    middle = (steps[:-1] + steps[1:]) / 2
    peak = middle[rise.argmax(axis=1)]
    near = np.exp(-(((middle[None, :] - peak[:, None]) / 2.0) ** 2))
    weight = rise**2 * near
    total = weight.sum(axis=1)
    sure &= total > 0
    at = (weight * middle).sum(axis=1) / np.where(total > 0, total, 1)
    points = bases + at[:, None] * out
    fitted = _straight(points[sure])
    steepest = rise.max(axis=1)[sure] / 0.5
    width = float(np.median(contrast[sure] / np.maximum(steepest, 1e-6)))
    return fitted, width


def _straight(points: Array) -> tuple[Array, Array]:
    """The line nearest to points (n, 2), those left out that stand apart from the rest."""
    kept = points
    for _ in range(3):
        middle = kept.mean(axis=0)
        along = np.linalg.svd(kept - middle, full_matrices=False)[2][0]
        off = np.abs((points - middle) @ np.array([-along[1], along[0]]))
        bound = max(3 * 1.4826 * float(np.median(off)), 0.05)
        kept = points[off <= bound]
    middle = kept.mean(axis=0)
    return middle, np.linalg.svd(kept - middle, full_matrices=False)[2][0]


def _meeting(one: tuple[Array, Array], other: tuple[Array, Array]) -> Array | None:
    """Where two lines meet; None if they run alike."""
    matrix = np.stack((one[1], -other[1]), axis=-1)
    if abs(float(np.linalg.det(matrix))) < 0.2:
        return None
    return one[0] + np.linalg.solve(matrix, other[0] - one[0])[0] * one[1]


def _read(grey: Grey, corners: Array) -> Known | None:
    """Which tag the cells within corners are; None if their frame is not black, or the pattern is not one of ours."""
    across = (np.arange(ACROSS) + 0.5) / ACROSS
    inner = np.array([-0.2, 0.0, 0.2]) / ACROSS
    u = (across[:, None] + inner).ravel()
    grid = np.stack(np.meshgrid(u, u), axis=-1).reshape(-1, 2)
    light = sampled(grey, _within_square(corners, grid)).reshape(ACROSS, 3, ACROSS, 3).mean(axis=(1, 3))
    outside = (np.array([-0.5, ACROSS + 0.5])) / ACROSS
    rim = np.stack(np.meshgrid(outside, across), axis=-1).reshape(-1, 2)
    bright = float(np.median(sampled(grey, _within_square(corners, np.concatenate((rim, rim[:, ::-1]))))))
    frame = np.ones((ACROSS, ACROSS), dtype=bool)
    frame[1:-1, 1:-1] = False
    dark = float(np.median(light[frame]))
    between = (bright + dark) / 2
    if bright - dark < 20 or (light[frame] > between).any():
        return None
    return known(np.ascontiguousarray(light[1:-1, 1:-1] < between).reshape(CELLS, CELLS))


def _within_square(corners: Array, places: Array) -> Array:
    """Places of the unit square (y down) seen in the square's corners, as perspective has it."""
    return through_perspective(
        plane_to_picture(np.array([(0, 0), (1, 0), (1, 1), (0, 1)], dtype=np.float64), corners), places
    )


def plane_to_picture(flat: Array, seen: Array) -> Array:
    """The perspective (3, 3) that takes points of a plane (n, 2), four or more, to where they are seen (n, 2).

    Least squares on scaled points. Source: R. Hartley and A. Zisserman, Multiple View Geometry in Computer Vision,
    2nd edition, 2004, section 4.1 and 4.4 (from memory).
    """
    one, other = _scaling(flat), _scaling(seen)
    (x, y), (u, v) = through_perspective(one, flat).T, through_perspective(other, seen).T
    nothing, unit = np.zeros_like(x), np.ones_like(x)
    rows = np.concatenate(
        (
            np.stack((x, y, unit, nothing, nothing, nothing, -u * x, -u * y, -u), axis=-1),
            np.stack((nothing, nothing, nothing, x, y, unit, -v * x, -v * y, -v), axis=-1),
        )
    )
    middle = np.linalg.svd(rows)[2][-1].reshape(3, 3)
    whole = np.linalg.inv(other) @ middle @ one
    return np.asarray(whole / whole[2, 2])


def through_perspective(perspective: Array, points: Array) -> Array:
    """Points (n, 2) through a perspective (3, 3)."""
    spread = points @ perspective[:, :2].T + perspective[:, 2]
    return np.asarray(spread[:, :2] / spread[:, 2:])


def _scaling(points: Array) -> Array:
    """The matrix that moves points about zero, at a mean distance of the root of 2."""
    middle = points.mean(axis=0)
    scale = np.sqrt(2) / max(float(np.hypot(*(points - middle).T).mean()), 1e-12)
    return np.array([(scale, 0, -scale * middle[0]), (0, scale, -scale * middle[1]), (0, 0, 1)])


def sampled(grey: Grey, places: Array) -> Array:
    """The picture's light at places (..., 2) in pixels, between pixels linearly; beyond its edge that of the edge."""
    flat = places.reshape(-1, 2)
    light = ndimage.map_coordinates(grey, flat[:, ::-1].T, order=1, mode="nearest")
    return light.reshape(places.shape[:-1]).astype(np.float64)
