"""The bevels drawn at true size: a template for the plate, one for the side, and the pattern of the veneer.

Each lies with the plate's edge up, seen from outside. On a right-handed guitar the arm's template has its neck end to
the left; the ribs' template, at the other edge of the same side, has it to the right.
"""

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.drawings.kerf import Machine, cut_by
from gramil.drawings.marks import Drawing, Label, Line, Mark, Marks, Point, Polyline, Words
from gramil.drawings.pen import sides_changed
from gramil.parts.bevel_records import BevelLaid, BevelPattern
from gramil.quantities import Mm

OWNS = ("drawing_", "piece_")

Array = NDArray[np.float64]
APART = 18.0
"""Between two templates on a sheet, in mm."""
ASIDE = 100.0
"""From where a template's words begin to where the bevel's measures do, in mm."""


def piece_bevels_on_face(bevel_laid: tuple[BevelLaid, ...]) -> Marks:
    """The line of the arm's bevel on the top, in body coordinates."""
    return tuple(
        Polyline(tuple((x, -y) for x, y in _points(each.shape.face_line[:, :2])), "markers")
        for each in bevel_laid
        if each.asked.plate == "top"
    )


def piece_bevels_on_back(bevel_laid: tuple[BevelLaid, ...]) -> Marks:
    """The line of the ribs' bevel on the back, in body coordinates."""
    return tuple(
        Polyline(tuple((x, -y) for x, y in _points(each.shape.face_line[:, :2])), "markers")
        for each in bevel_laid
        if each.asked.plate == "back"
    )


def piece_bevels_on_side(bevel_laid: tuple[BevelLaid, ...], piece_bass_turned: bool) -> Marks:
    """Where each bevel comes down on the flat bass side: its line, as far as it lies on the side."""
    marks: list[Mark] = []
    for each in bevel_laid:
        reach = each.shape.reach()
        if reach is not None:
            marks.append(_on_side(each, reach, piece_bass_turned))
    return tuple(marks)


def _on_side(laid: BevelLaid, reach: tuple[Mm, Mm], turned: bool) -> Polyline:
    shape, side = laid.shape, laid.shape.side
    inner = shape.along[(shape.along > reach[0]) & (shape.along < reach[1])]
    along = np.concatenate((reach[:1], inner, reach[1:]))
    down = shape.drop * shape.share(along) - shape.over
    heights = side.upper_edge(along) - down if shape.upper else side.lower_edge(along) + down
    places = side.length - along if turned else along
    return Polyline(_points(np.column_stack((places, heights))), "markers")


def drawing_bevel_arm(
    instrument_name: str,
    instrument_handed: str,
    bevel_laid: tuple[BevelLaid, ...],
    bevel_patterns: tuple[BevelPattern, ...],
    piece_laser: Machine,
) -> Drawing:
    """The arm's bevel: what lies on the top, what on the side, and its veneer.

    Used at: bevel_blocks_glued, bevels_cut, bevels_veneered.
    """
    title = f"{instrument_name}, the bevel for the arm"
    marks = _templates("arm", bevel_laid, bevel_patterns, instrument_handed == "left")
    return cut_by(piece_laser, Drawing("bevel-arm", title, "the side", marks, pieces_apart=True))


def drawing_bevel_rib(
    instrument_name: str,
    instrument_handed: str,
    bevel_laid: tuple[BevelLaid, ...],
    bevel_patterns: tuple[BevelPattern, ...],
    piece_laser: Machine,
) -> Drawing:
    """The ribs' bevel: what lies on the back, what on the side, and its veneer.

    Used at: bevel_blocks_glued, bevels_cut, bevels_veneered.
    """
    title = f"{instrument_name}, the bevel for the ribs"
    marks = _templates("rib", bevel_laid, bevel_patterns, instrument_handed != "left")
    return cut_by(piece_laser, Drawing("bevel-rib", title, "the side", marks, pieces_apart=True))


def _templates(name: str, laid: tuple[BevelLaid, ...], patterns: tuple[BevelPattern, ...], turned: bool) -> Marks:
    """The three templates under one another; `turned`: the neck's end to the right. Nothing where there is no bevel.

    What each is called stands in short lines: a page has no room for a long one, and a page with half a template on it
    has none for half a line.
    """
    mine = next((each for each in laid if each.asked.name == name), None)
    if mine is None:
        return ()
    pattern = next(each for each in patterns if each.name == name)
    plate, neck = mine.asked.plate, f"neck end to the {'right' if turned else 'left'}"
    high, left, marks = 0.0, 0.0, list[Mark]()
    for (ring, middle), words in (
        (_on_plate(mine), (f"lies on the {plate}, outer face up", f"{neck}, the edge below")),
        (_on_wall(mine), ("lies on the side, outside up", f"{neck}, the {plate}'s face above")),
        (_flat(pattern), ("the veneer net, its face up", f"{neck}, the {plate}'s line above")),
    ):
        shift = (0.0, high - float(ring[:, 1].max()))
        low = float(ring[:, 1].min()) + shift[1]
        left = -float(ring[:, 0].max()) if turned else float(ring[:, 0].min())
        shape: Marks = (
            Polyline(_points(ring + shift), "cut", closed=True),
            Line(_point(middle[0] + shift), _point(middle[1] + shift), "centreline"),
        )
        marks += [
            *(sides_changed(shape) if turned else shape),
            Words((left, low - 5.0), f"{name} bevel: {words[0]}", 2.6),
            Words((left, low - 9.5), words[1], 2.6),
        ]
        high = low - APART
    return (*marks, *_sizes(name, (left + ASIDE, high + APART - 5.0)))


def _sizes(name: str, at: Point) -> Marks:
    """Its measures, under the templates, beside what the last one is called: a page has no room for more lines."""
    bevel = n.bevel_list[name]
    rows = (
        ("wide on the plate ", bevel.width),
        ("down from its face ", bevel.drop),
        ("middle from the neck ", bevel.middle),
    )
    return tuple(
        Label((at[0], at[1] - 4.5 * row), figure, f"{name} bevel, {before}", height=2.6)
        for row, (before, figure) in enumerate(rows)
    )


def _on_plate(laid: BevelLaid) -> tuple[Array, Array]:
    """The template for the plate as it lies on it: the edge below, its ends level, what is inward above."""
    edge, line = laid.shape.edge_line[:, :2], laid.shape.face_line[:, :2]
    over = np.array([1.0, -1.0])
    return _ring(_levelled(edge, edge) * over, _levelled(line, edge) * over)


def _on_wall(laid: BevelLaid) -> tuple[Array, Array]:
    """The template for the side laid flat, hung from the plate's face: its edge up."""
    shape = laid.shape
    along = shape.along - shape.start
    edge = np.column_stack((along, shape.edge_line[:, 2]))
    line = np.column_stack((along, shape.wall_line[:, 2]))
    return _ring(edge - edge[0], line - edge[0])


def _flat(pattern: BevelPattern) -> tuple[Array, Array]:
    upper, lower = np.array(pattern.upper), np.array(pattern.lower)
    middle = len(upper) // 2
    return np.vstack((lower, upper[-2:0:-1])), np.array((lower[middle], upper[middle]))


def _levelled(points: Array, edge: Array) -> Array:
    """Points turned so that the edge's ends lie level, the first at (0, 0).

    The half is drawn above the axis, so that what lies inward of the edge comes to lie below it.
    """
    x, y = (edge[-1] - edge[0]) / np.hypot(*(edge[-1] - edge[0]))
    return np.asarray((points - edge[0]) @ np.array([[x, -y], [y, x]]))


def _ring(edge: Array, line: Array) -> tuple[Array, Array]:
    """A template's ring, between edge and line, and the line across its middle."""
    middle = len(edge) // 2
    return np.vstack((edge, line[-2:0:-1])), np.array((edge[middle], line[middle]))


def _points(rows: Array) -> tuple[Point, ...]:
    return tuple((float(x), float(y)) for x, y in rows)


def _point(row: Array) -> Point:
    return (float(row[0]), float(row[1]))
