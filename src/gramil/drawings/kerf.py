"""One rule of kerf for every drawing that a machine cuts by: allowed for in the drawing or left to the machine, and the
drawing says which.

A cut takes half its width on either side of its middle. Where the drawing allows for it, closed lines of the layer
"cut" lie half a kerf outside the finished edge, holes (of that layer within another, and circles of "pins") half a
kerf inside theirs. An open line is a mark, cut or scribed along its middle, and stays.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Any

from gramil.drawings.marks import Circle, Drawing, Mark, Marks, Polyline
from gramil.quantities import Mm
from gramil.reference import Ref, Says, says
from gramil.shapes.kerf import moved_out
from gramil.shapes.planar import polygon_contains


@dataclass(frozen=True)
class Machine:
    """A machine that cuts by a drawing: the width of its cut, who allows for it, and where that width stands."""

    kerf: Mm
    allowed_in: str
    figure: Ref[Any]


FINISHED = says("Kerf: none in the drawing; lines are the finished edge.")
"""On what no machine of the shop cuts by, but somebody may."""


def cut_by(machine: Machine, drawing: Drawing) -> Drawing:
    """A drawing of finished edges as this machine is to have it, with a sentence on its kerf where it cuts anything."""
    if not any(_is_cut(mark) for mark in drawing.marks):
        return drawing
    if machine.kerf == 0:
        return replace(drawing, kerf=says("Kerf: none given; lines are the finished edge, cut on their waste side."))
    if machine.allowed_in == "the machine":
        left = "Kerf: left to the machine; lines are the finished edge, and its cut, {} wide, runs beside them."
        return replace(drawing, kerf=says(left, machine.figure))
    moved = _moved(drawing.marks, machine.kerf / 2)
    if moved is None:
        return replace(drawing, kerf=_too_wide(machine))
    inside = "Kerf: in the drawing; its lines lie half of {} outside the finished edge, in holes inside it."
    return replace(drawing, marks=moved, kerf=says(inside, machine.figure))


def as_cut(marks: Marks) -> Marks:
    """Marks of a part with its outline as a line to cut by."""
    return tuple(
        replace(mark, layer="cut") if isinstance(mark, Polyline) and mark.closed and mark.layer == "outline" else mark
        for mark in marks
    )


def _too_wide(machine: Machine) -> Says:
    return says(
        "Kerf: left to the machine; {} is too wide for some place here, and lines are the finished edge.",
        machine.figure,
    )


def _is_cut(mark: Mark) -> bool:
    """Whether a machine goes once round it."""
    match mark:
        case Polyline():
            return mark.layer == "cut" and mark.closed
        case Circle():
            return mark.layer in ("cut", "pins")
    return False


def _moved(marks: Marks, aside: Mm) -> Marks | None:
    """The marks with every cut one moved by half a kerf; None where one of them cannot be."""
    rings = [mark for mark in marks if isinstance(mark, Polyline) and _is_cut(mark)]
    found = tuple(_aside(mark, aside, rings) for mark in marks)
    return None if None in found else tuple(_present(found))


def _present(found: tuple[Mark | None, ...]) -> Iterator[Mark]:
    return (mark for mark in found if mark is not None)


def _aside(mark: Mark, aside: Mm, rings: list[Polyline]) -> Mark | None:
    if not _is_cut(mark):
        return mark
    if isinstance(mark, Circle):
        return replace(mark, radius=mark.radius - aside) if mark.radius > aside else None
    assert isinstance(mark, Polyline)
    hole = any(polygon_contains(other.points, mark.points[0]) for other in rings if other is not mark)
    points = moved_out(mark.points, -aside if hole else aside)
    return None if points is None else replace(mark, points=points)
