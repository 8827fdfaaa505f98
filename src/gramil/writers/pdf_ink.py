"""Marks inked on a page of a PDF: from millimetres of the drawing to millimetres of the page, true curves, words in
the shipped faces.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from math import ceil, cos, pi, sin, tan

from gramil.drawings.marks import SMALLEST, Arc, Circle, Line, Point, Polyline
from gramil.layers import LAYERS
from gramil.writers.arcs import Run, pieces_of, run_of
from gramil.writers.extents import Box, sweep, touches
from gramil.writers.ink import DARK, grey, in_grey
from gramil.writers.leaf import Ink, Stroke, Word
from gramil.writers.lettering import Lettering, type_size
from gramil.writers.plain import Plain
from gramil.writers.svg import number
from gramil.writers.type_widths import FIGURES, WORDS, Face, words_wide

PIECE = pi / 6
"""A circle is written in cubic pieces of this turn: they are true to 4e-7 of the radius."""
BLEED = 0.5
"""Ink past the edge of a page's window in mm, so that a line on the edge keeps its width."""
ROOM_BEHIND = 5.0
"""Room left behind words in mm, so that a letter that no face has breaks no line."""


@dataclass(frozen=True)
class Placed:
    """Where drawing millimetres fall on a page: `at` of the drawing lies at `on` of the page, both in mm."""

    at: Point
    on: Point
    stretch: Point = (1.0, 1.0)

    def __call__(self, point: Point) -> Point:
        """The point on the page, in mm from its lower left corner; shrunk by as much as the printer stretches."""
        x = self.on[0] + (point[0] - self.at[0]) / self.stretch[0]
        y = self.on[1] + (point[1] - self.at[1]) / self.stretch[1]
        return (x, y)


Place = Callable[[Point], Point]


def ink_marks(marks: Sequence[Plain], place: Place, window: Box) -> Iterator[Ink]:
    """The marks that reach into `window` (mm of the drawing), lines clipped to it and half a millimetre more."""
    left, low, right, high = window
    wider = (left - BLEED, low - BLEED, right + BLEED, high + BLEED)
    seen = [mark for mark in marks if touches(mark, wider)]
    corners = ((wider[0], wider[1]), (wider[2], wider[1]), (wider[2], wider[3]), (wider[0], wider[3]))
    yield Stroke(f'<clipPath id="window"><path d="{straight(place, corners, True)}"/></clipPath>')
    yield Stroke('<g clip-path="url(#window)">')
    for mark in seen:
        if not isinstance(mark, Lettering):
            yield inked(mark, place)
    yield Stroke("</g>")
    for mark in seen:
        if isinstance(mark, Lettering):
            yield letter(mark, place)


def inked(mark: Line | Arc | Circle | Polyline, place: Place) -> Stroke:
    """The line of one mark in its layer's weight, dashes and grey."""
    stroke = LAYERS[mark.layer]
    return shape(mark, place, pen(stroke.weight, stroke.dashes, grey(mark.layer)))


def shape(mark: Line | Arc | Circle | Polyline, place: Place, with_pen: str) -> Stroke:
    """The line of a mark drawn with this pen."""
    match mark:
        case Line():
            path = straight(place, (mark.start, mark.end))
        case Polyline():
            path = _run(place, run_of(mark), mark.layer)
        case Circle():
            path = _curve(place, Arc(mark.centre, mark.radius, 0.0, 2 * pi, mark.layer)) + " Z"
        case Arc():
            path = _curve(place, mark)
    return stroked(path, with_pen)


def stroked(path: str, with_pen: str) -> Stroke:
    """A path drawn with this pen."""
    return Stroke(f'<path d="{path}" {with_pen}/>')


def pen(weight: float, dashes: Sequence[float] = (), shade: float = DARK) -> str:
    """Weight and dashes in mm, shade from 0 (black) to 1."""
    dashed = f' stroke-dasharray="{" ".join(number(dash) for dash in dashes)}"' if dashes else ""
    return f'stroke="{in_grey(shade)}" stroke-width="{number(weight)}"{dashed}'


def straight(place: Place, points: Sequence[Point], closed: bool = False) -> str:
    """Straight runs through the points."""
    path = " L ".join(_xy(place(point)) for point in points)
    return f"M {path}{' Z' if closed else ''}" if path else ""


def _xy(point: Point) -> str:
    return f"{number(point[0])} {number(point[1])}"


def _run(place: Place, run: Run, layer: str) -> str:
    """Straight pieces and true curves, one after another."""
    if not run.points:
        return ""
    path = [f"M {_xy(place(run.points[0]))}"]
    ends = (*run.points[1:], *run.points[: run.closed])
    for at, (end, bulge, piece) in enumerate(zip(ends, run.bulges, pieces_of(run, layer), strict=True), 1):
        if isinstance(piece, Line):
            if at < len(run.points):  # closing the path draws the piece back to the first point
                path.append(f"L {_xy(place(end))}")
        else:
            path += _curve_on(place, piece, bulge > 0)
    return " ".join((*path, "Z")) if run.closed else " ".join(path)


def _curve_on(place: Place, arc: Arc, forward: bool) -> Iterator[str]:
    """An arc from the current point, in either direction."""
    pieces = list(_cubics(arc))
    for start, first, second, end in pieces if forward else reversed(pieces):
        three = (first, second, end) if forward else (second, first, start)
        yield f"C {' '.join(_xy(place(point)) for point in three)}"


def _curve(place: Place, arc: Arc) -> str:
    start = place(next(_cubics(arc))[0])
    return " ".join((f"M {_xy(start)}", *_curve_on(place, arc, True)))


def _cubics(arc: Arc) -> Iterator[tuple[Point, Point, Point, Point]]:
    """The arc as cubic pieces: start, two handles (4/3 tan(turn/4) of the radius along the tangents), end."""
    count = ceil(sweep(arc) / PIECE)
    turn = sweep(arc) / count
    reach = 4.0 / 3.0 * tan(turn / 4)
    (x, y), r = arc.centre, arc.radius
    for i in range(count):
        a, b = arc.start_angle + i * turn, arc.start_angle + (i + 1) * turn
        start, end = (x + r * cos(a), y + r * sin(a)), (x + r * cos(b), y + r * sin(b))
        first = (start[0] - reach * r * sin(a), start[1] + reach * r * cos(a))
        second = (end[0] + reach * r * sin(b), end[1] - reach * r * cos(b))
        yield start, first, second, end


def letter(mark: Lettering, place: Place, face: Face | None = None) -> Word:
    """Words as words, in the face for figures or for words unless another is named."""
    used = face or (FIGURES if mark.figure else WORDS)
    wide = words_wide(mark.text, mark.height, used)
    back = {"left": 0.0, "middle": wide / 2, "right": wide}[mark.anchor]
    x, y = place(mark.at)
    return Word(
        x=x - back * cos(mark.angle), y=y - back * sin(mark.angle), wide=wide + ROOM_BEHIND, text=mark.text,
        face=used.family, weight=used.weight, size=type_size(mark.height), turn=-mark.angle, shade=DARK,
    )  # fmt: skip


def fitted(text: str, height: float, face: Face, room: float) -> tuple[str, float]:
    """The text and the height of its capitals in mm at which it is no wider than `room` mm, `height` at the most.

    It gets no smaller than can be read; text that is still too long is cut off.
    """
    if (wide := words_wide(text, height, face)) <= room:
        return text, height
    smaller = max(height * room / wide, SMALLEST)
    while len(text) > 1 and words_wide(text, smaller, face) > room:
        text = text[:-2].rstrip() + "…"
    return text, smaller
