"""The marks that a drawing is made of, each on a layer of `layers`.

Coordinates are millimetres, x to the right (along the centreline, head to the left), y up. A figure on a drawing
is a `Label` that holds a reference, never a number: the writer looks it up when the drawing is written.
"""

from dataclasses import dataclass, replace
from functools import cached_property
from math import cos, sin
from typing import Any, Literal

from gramil.reference import Ref, Text

Point = tuple[float, float]
SeenFrom = Literal["the face", "the underside", "the inside", "the side", "the end", "either side", "as each says"]
Anchor = Literal["left", "middle", "right"]


@dataclass(frozen=True)
class Line:
    """A straight line."""

    start: Point
    end: Point
    layer: str


@dataclass(frozen=True)
class Arc:
    """A circular arc, anticlockwise from `start_angle` to `end_angle`, in radians from the x axis."""

    centre: Point
    radius: float
    start_angle: float
    end_angle: float
    layer: str


@dataclass(frozen=True)
class Circle:
    """A whole circle; `hatch` says whether what is round it leaves its inside clear."""

    centre: Point
    radius: float
    layer: str
    hatch: Literal["", "left clear"] = ""


@dataclass(frozen=True)
class Polyline:
    """Straight runs through points; `closed` joins the last to the first; `hatch` names the material inside.

    Inside one that is "left clear" no other shape's hatch is drawn.
    """

    points: tuple[Point, ...]
    layer: str
    closed: bool = False
    hatch: Literal["", "along the grain", "across the grain", "metal", "bone", "void", "left clear"] = ""

    @cached_property
    def box(self) -> tuple[float, float, float, float]:
        """Left, bottom, right and top of its points, of which there must be one.

        Cached, since words that look for room ask for the same outline's box again and again.
        """
        xs, ys = zip(*self.points, strict=True)
        return (min(xs), min(ys), max(xs), max(ys))


@dataclass(frozen=True)
class Words:
    """Plain words, with no figure in them. `height` is the height of a capital in mm, `angle` in radians."""

    at: Point
    text: str
    height: float = 3.0
    angle: float = 0.0
    anchor: Anchor = "left"
    layer: str = "text"


@dataclass(frozen=True)
class Label:
    """One figure, shown in the maker's unit between `before` and `after`."""

    at: Point
    figure: Ref[Any]
    before: str = ""
    after: str = ""
    height: float = 3.0
    angle: float = 0.0
    anchor: Anchor = "left"
    layer: str = "text"


@dataclass(frozen=True)
class Span:
    """A dimension line between two points, `offset` mm to its left; on it `before` and the figure."""

    start: Point
    end: Point
    offset: float
    figure: Ref[Any]
    height: float = 3.0
    layer: str = "dimensions"
    before: str = ""


CAPITAL = 0.76
"""Height of a capital over the size of the type, measured on the outlines of both shipped faces (B612)."""
SMALLEST = 7.0 * 25.4 / 72.0 * CAPITAL
"""Height of the smallest capital on any drawing or page, in mm: of type of seven points, read at arm's length."""

Mark = Line | Arc | Circle | Polyline | Words | Label | Span
Marks = tuple[Mark, ...]


@dataclass(frozen=True)
class Drawing:
    """One drawing at true scale. `name` is its file's stem, `title` what is written on it.

    `scale` is drawn size over true size (2: twice as large as life; 0: a sketch, not to be measured), and `stretch` is
    how many times heights are drawn too tall (1: true), so that a writer can say so. `kerf` says, on a drawing that a
    machine cuts by, who allows for the width of its cut. `told_at` is where in its title block a page says of itself
    how large it is and which revision.
    """

    name: str
    title: str
    seen_from: SeenFrom
    marks: Marks
    stretch: float = 1.0
    scale: float = 1.0
    kerf: Text = ""
    told_at: Point | None = None
    pieces_apart: bool = False


def figures_in(marks: Marks) -> tuple[Ref[Any], ...]:
    """Every figure that the marks show, each once."""
    return tuple(dict.fromkeys(mark.figure for mark in marks if isinstance(mark, Label | Span)))


def unhatched(mark: Mark) -> Mark:
    """The mark without the material inside it."""
    return replace(mark, hatch="") if isinstance(mark, Polyline | Circle) else mark


def shifted(mark: Mark, x: float, y: float) -> Mark:
    """The mark moved by a distance along each axis, in mm."""

    def to(point: Point) -> Point:
        return (point[0] + x, point[1] + y)

    match mark:
        case Line() | Span():
            return replace(mark, start=to(mark.start), end=to(mark.end))
        case Polyline():
            return replace(mark, points=tuple(map(to, mark.points)))
        case Circle() | Arc():
            return replace(mark, centre=to(mark.centre))
        case Words() | Label():
            return replace(mark, at=to(mark.at))


def mirrored(drawing: Drawing) -> Drawing:
    """The drawing turned over about the centreline (y to -y): the left-handed twin.

    Words stay readable, and fill the place that their mirror image would fill: what stood clear of a line still does.
    """
    return replace(drawing, marks=tuple(_mirrored(mark) for mark in drawing.marks))


def _flip(point: Point) -> Point:
    return (point[0], -point[1])


def _mirrored(mark: Mark) -> Mark:
    match mark:
        case Span():
            return replace(mark, start=_flip(mark.start), end=_flip(mark.end), offset=-mark.offset)
        case Line():
            return replace(mark, start=_flip(mark.start), end=_flip(mark.end))
        case Arc():
            return replace(mark, centre=_flip(mark.centre), start_angle=-mark.end_angle, end_angle=-mark.start_angle)
        case Circle():
            return replace(mark, centre=_flip(mark.centre))
        case Polyline():
            return replace(mark, points=tuple(_flip(point) for point in mark.points))
        case _:
            x, y = mark.at
            foot = (x - mark.height * sin(mark.angle), -y - mark.height * cos(mark.angle))
            return replace(mark, at=foot, angle=-mark.angle)
