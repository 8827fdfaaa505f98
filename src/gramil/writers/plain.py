"""A drawing reduced to plain marks: figures looked up, dimensions and hatches turned into lines, title and view
below.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import chain
from math import isfinite

from gramil.drawings.marks import Arc, Circle, Drawing, Label, Line, Mark, Point, Polyline, Span, Words
from gramil.measure import LengthUnit
from gramil.notice import NOTICE
from gramil.reference import filled
from gramil.writers.extents import bounds
from gramil.writers.hatches import hatched, left_clear
from gramil.writers.lettering import Lettering, clean, corners
from gramil.writers.spans import Resolve, drawn

Plain = Line | Arc | Circle | Polyline | Lettering
CLEAR_OF_HATCH = 0.6
"""Room in mm that a hatch leaves round words."""


def plain(drawing: Drawing, resolve: Resolve) -> tuple[Plain, ...]:
    """Every mark of the drawing in order, with no address left in it; the hatch lines come first, beneath the rest.

    A mark whose place is not known is left out.
    """
    return with_hatches([piece for mark in drawing.marks if has_place(mark) for piece in pieces(mark, resolve)])


def with_hatches(marks: Sequence[Plain]) -> tuple[Plain, ...]:
    """The marks, preceded by their hatch lines, which stay clear of the words and of what is to be left clear."""
    words = (corners(mark, CLEAR_OF_HATCH) for mark in marks if isinstance(mark, Lettering))
    clear = [*words, *(outline for outline in map(left_clear, marks) if outline is not None)]
    lines = [line for mark in marks if isinstance(mark, Polyline) for line in hatched(mark, clear)]
    return (*lines, *marks)


def has_place(mark: Mark) -> bool:
    """Whether it is known where a mark lies."""
    match mark:
        case Line() | Span():
            points: Sequence[Point] = (mark.start, mark.end)
        case Polyline():
            points = mark.points
        case Arc():
            points = (mark.centre, (mark.radius, mark.start_angle), (mark.end_angle, 0.0))
        case Circle():
            points = (mark.centre, (mark.radius, 0.0))
        case _:
            points = (mark.at, (mark.height, mark.angle))
    return isfinite(sum(chain.from_iterable(points)))  # a sum is a number only if every part is one


def pieces(mark: Mark, resolve: Resolve) -> Sequence[Plain]:
    """One mark without its hatch: a dimension as lines and a figure, a figure as letters."""
    match mark:
        case Span():
            lines, figure = drawn(mark, resolve)
            return (*lines, figure)
        case Label():
            text = clean(f"{mark.before}{resolve(mark.figure)}{mark.after}")
            return (Lettering(mark.at, text, mark.height, mark.angle, mark.anchor, mark.layer, figure=True),)
        case Words():
            text = clean(mark.text)
            return (Lettering(mark.at, text, mark.height, mark.angle, mark.anchor, mark.layer),)
        case _:
            return (mark,)


def seen_from(drawing: Drawing) -> str:
    """From where the drawing is seen, as a sentence."""
    if drawing.seen_from == "either side":
        return "The same from either side."
    if drawing.seen_from == "as each says":
        return "Each card says from where it is seen."
    return f"Seen from {drawing.seen_from}."


def true_or_stretched(drawing: Drawing, unit: LengthUnit = "mm") -> str:
    """Whether the drawing may be measured, as a sentence, and a second one if something on it is not known."""
    missing = "" if all(map(has_place, drawing.marks)) else " Something is left out: it is not known where it lies."
    return f"{_scale(drawing, unit)}{missing}"


def _scale(drawing: Drawing, unit: LengthUnit) -> str:
    if drawing.scale == 0.0:
        return "A sketch, not to be measured."
    if drawing.scale != 1.0:
        return f"Drawn {drawing.scale:g} times life size."
    if drawing.stretch == 1.0:
        return "True scale, in millimetres." if unit == "mm" else "True scale."
    return f"Not true scale: heights are drawn {drawing.stretch:g} times too tall."


def kerf_of(drawing: Drawing, resolve: Resolve) -> str:
    """Who allows for the width of the cut, as a sentence; empty for a drawing that is not one to cut by."""
    return clean(filled(drawing.kerf, resolve))


def caption(
    drawing: Drawing, marks: Sequence[Plain], resolve: Resolve, unit: LengthUnit = "mm"
) -> tuple[Lettering, ...]:
    """The title, the view and the scale, the kerf, and that nothing is promised, line by line below everything."""
    left, low, _, _ = bounds(marks)
    view = f"{seen_from(drawing)} {true_or_stretched(drawing, unit)}"
    lines = [(9.0, clean(drawing.title), 4.0), (15.0, view, 2.5)]
    lines += [(20.0, kerf, 2.5)] if (kerf := kerf_of(drawing, resolve)) else []
    lines += [(lines[-1][0] + 5.0, NOTICE, 2.0)]
    return tuple(Lettering((left, low - down), text, height, 0.0, "left", "text") for down, text, height in lines)


@dataclass(frozen=True)
class Figure:
    """One figure of a drawing in words: where it comes from and what it reads."""

    address: str
    text: str


def figures(drawing: Drawing, resolve: Resolve) -> tuple[Figure, ...]:
    """Every figure on the drawing once, in order: its text twin."""
    found: dict[str, Figure] = {}
    for mark in drawing.marks:
        if isinstance(mark, Label):
            text = f"{mark.before}{resolve(mark.figure)}{mark.after}"
            found.setdefault(mark.figure.address, Figure(mark.figure.address, text))
        elif isinstance(mark, Span):
            text = f"{mark.before}{resolve(mark.figure)}"
            found.setdefault(mark.figure.address, Figure(mark.figure.address, text))
    return tuple(found.values())
