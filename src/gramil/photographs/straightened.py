"""How pictures were read, as a picture: the plan straightened, a grid over it, the tags, and the line that was
followed.
"""

from io import BytesIO

import numpy as np
from numpy.typing import NDArray
from PIL import Image, ImageDraw

from gramil.photographs.ground import Photograph
from gramil.photographs.plan import Grounds, TracedPlan

Array = NDArray[np.float64]
LONGEST = 1600
"""Pixels of the picture's longer side."""
GRID = 50.0
"""From line to line of the grid, mm."""
LINE, TAG, FAINT = (200, 40, 20), (20, 90, 170), (190, 190, 190)


def straightened_png(ground: Grounds, found: TracedPlan | None) -> bytes:
    """The straightened plan as a PNG file: a pixel is the same length everywhere on it."""
    low, high = _reach(ground)
    scale = LONGEST / float((high - low).max())
    width, height = (int(each) for each in np.round((high - low) * scale))
    columns, rows = np.meshgrid(np.arange(width), np.arange(height))
    places = np.column_stack((low[0] + columns.ravel() / scale, high[1] - rows.ravel() / scale))
    light = np.concatenate([ground.light(part) for part in np.array_split(places, max(len(places) // 500_000, 1))])
    picture = Image.fromarray(light.reshape(height, width).clip(0, 255).astype(np.uint8)).convert("RGB")
    pen = ImageDraw.Draw(picture)

    def on(points: Array) -> list[tuple[float, float]]:
        return [((x - low[0]) * scale, (high[1] - y) * scale) for x, y in points.tolist()]

    for x in np.arange(np.ceil(low[0] / GRID) * GRID, high[0], GRID):
        pen.line(on(np.array([(x, low[1]), (x, high[1])])), FAINT)
    for y in np.arange(np.ceil(low[1] / GRID) * GRID, high[1], GRID):
        pen.line(on(np.array([(low[0], y), (high[0], y)])), FAINT)
    for corners in _tags(ground):
        pen.polygon(on(corners), outline=TAG, width=2)
    if found is not None:
        pen.line([*on(found.line.points), on(found.line.points[:1])[0]], LINE, 2)
    out = BytesIO()
    picture.save(out, "PNG")
    return out.getvalue()


def _tags(ground: Grounds) -> list[Array]:
    """Corners of the tags where they were worked out to lie."""
    return [
        each.stretch.drawn(each.view.answer.corners(tag.number))
        for each in ground.each
        if isinstance(each, Photograph)
        for tag in each.tags
    ]


def _reach(ground: Grounds) -> tuple[Array, Array]:
    """The lower left and upper right of what the pictures show (of the tags, for photographs), with room round it."""
    tags = _tags(ground)
    if tags:
        points = np.concatenate(tags)
        return points.min(axis=0) - 20.0, points.max(axis=0) + 20.0
    rows, columns = ground.each[0].grey.shape
    points = ground.each[0].on_plane(np.array([(0, 0), (columns, 0), (columns, rows), (0, rows)], dtype=np.float64))
    return points.min(axis=0), points.max(axis=0)
