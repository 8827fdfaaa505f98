"""Which words lie over a line or over other words, as the ink falls: measured on marks by an independent geometry."""

from collections.abc import Sequence

import numpy as np
from shapely import STRtree
from shapely.geometry import LineString, Point, Polygon

from gramil.drawings.marks import Arc, Circle, Line, Polyline
from gramil.writers.extents import sweep
from gramil.writers.lettering import Lettering, corners
from gramil.writers.plain import Plain

SLACK = 0.1
"""The box round words is larger than their ink by so much of a capital's height, on each side."""
TAILS = set("gjpqyQ,;()")
"""Letters that reach under the line; the box of a word without them ends at the line."""
TAIL = 0.3
TOUCH = 0.05
"""In mm2: boxes of words are a little larger than the words."""


def lying_over(marks: Sequence[Plain]) -> list[tuple[str, str]]:
    """Each word with what it lies over: a layer's name, or the other words; a hatch keeps clear of words by itself."""
    words = [each for each in marks if isinstance(each, Lettering) and each.text.strip()]
    drawn = [each for each in marks if not isinstance(each, Lettering) and each.layer != "hatch"]
    lines, boxes = [line_of(each) for each in drawn], [Polygon(corners(each)) for each in words]
    tree, others = STRtree(lines), STRtree(boxes)
    found = [(each.text, drawn[at].layer) for each in words for at in tree.query(ink_of(each), predicate="intersects")]
    return found + [
        (each.text, words[at].text)
        for own, each in enumerate(words)
        for at in others.query(boxes[own], predicate="intersects")
        if at > own and boxes[own].intersection(boxes[at]).area > TOUCH
    ]


def ink_of(word: Lettering) -> Polygon:
    """The box that the ink of a word fills."""
    low_left, low_right, high_right, high_left = map(np.array, corners(word, -SLACK * word.height))
    up = (high_left - low_left) / np.linalg.norm(high_left - low_left)
    raised = up * TAIL * word.height * (not TAILS & set(word.text))
    return Polygon([low_left + raised, low_right + raised, high_right, high_left])


def line_of(mark: Plain) -> LineString | Polygon:
    """The line of a mark."""
    match mark:
        case Line():
            return LineString([mark.start, mark.end])
        case Polyline():
            return LineString([*mark.points, *mark.points[: mark.closed]])
        case Circle():
            return Point(mark.centre).buffer(mark.radius, quad_segs=64).exterior
        case Arc():
            turns = mark.start_angle + np.linspace(0.0, sweep(mark), 128)
            x, y = mark.centre
            return LineString(np.stack((x + mark.radius * np.cos(turns), y + mark.radius * np.sin(turns)), axis=1))
    raise TypeError(mark)
