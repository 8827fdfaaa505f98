"""Marks inked on a PDF page: from millimetres of the drawing to points of the page, true curves, embedded faces."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from importlib.resources import files
from io import BytesIO
from math import ceil, cos, degrees, pi, sin, tan

from reportlab import rl_config
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen.canvas import Canvas
from reportlab.pdfgen.pathobject import PDFPathObject

from gramil.drawings.marks import SMALLEST, Arc, Circle, Line, Point, Polyline
from gramil.layers import LAYERS
from gramil.writers.arcs import Run, pieces_of, run_of
from gramil.writers.extents import Box, sweep, touches
from gramil.writers.ink import DARK, grey
from gramil.writers.lettering import Lettering, type_size
from gramil.writers.paper import Sheet
from gramil.writers.plain import Plain

PT = 72.0 / 25.4
"""Points to the millimetre."""
WORDS, BOLD, FIGURES = "Gramil words", "Gramil bold", "Gramil figures"
FACES = ((WORDS, "B612-Regular.ttf"), (BOLD, "B612-Bold.ttf"), (FIGURES, "B612Mono-Regular.ttf"))
PIECE = pi / 6
"""A circle is written in cubic pieces of this turn: they are true to 4e-7 of the radius."""
BLEED = 0.5
"""Ink past the edge of a page's window in mm, so that a line on the edge keeps its width."""


@dataclass(frozen=True)
class Placed:
    """Where drawing millimetres fall on a page: `at` of the drawing lies at `on` of the page, both in mm."""

    at: Point
    on: Point
    stretch: Point = (1.0, 1.0)

    def __call__(self, point: Point) -> Point:
        """The point on the page, in points; shrunk by as much as the printer stretches."""
        x = self.on[0] + (point[0] - self.at[0]) / self.stretch[0]
        y = self.on[1] + (point[1] - self.at[1]) / self.stretch[1]
        return (x * PT, y * PT)


Place = Callable[[Point], Point]


def load_faces() -> None:
    """Register the shipped typefaces with the PDF library, once."""
    known = set(pdfmetrics.getRegisteredFontNames())
    for name, file in FACES:
        if name not in known:
            data = files("gramil").joinpath("fonts", file).read_bytes()
            pdfmetrics.registerFont(TTFont(name, BytesIO(data)))


def page_canvas(stream: BytesIO, title: str) -> Canvas:
    """An empty file that asks the printing program for no scaling and carries no date."""
    load_faces()
    rl_config.useA85 = 0  # binary streams, not ASCII-encoded ones: a fifth smaller, and faster to write
    canvas = Canvas(stream, invariant=1, pageCompression=1, initialFontName=WORDS, lang="en")
    canvas.setTitle(title)
    canvas.setCreator("Gramil")
    canvas.setViewerPreference("PrintScaling", "None")
    return canvas


def open_page(canvas: Canvas, sheet: Sheet) -> None:
    """A new page of the sheet's size."""
    canvas.setPageSize((sheet.width * PT, sheet.height * PT))


def ink_marks(canvas: Canvas, marks: Sequence[Plain], place: Place, window: Box) -> None:
    """The marks that reach into `window` (mm of the drawing), clipped to it and half a millimetre more."""
    left, low, right, high = window
    wider = (left - BLEED, low - BLEED, right + BLEED, high + BLEED)
    canvas.saveState()
    path = canvas.beginPath()
    trace(path, place, ((wider[0], wider[1]), (wider[2], wider[1]), (wider[2], wider[3]), (wider[0], wider[3])), True)
    canvas.clipPath(path, stroke=0, fill=0)
    for mark in marks:
        if touches(mark, wider):
            ink(canvas, mark, place)
    canvas.restoreState()


def ink(canvas: Canvas, mark: Plain, place: Place) -> None:
    """One mark in its layer's weight, dashes and grey."""
    stroke = LAYERS[mark.layer]
    if isinstance(mark, Lettering):
        letter(canvas, mark, place)
        return
    pen(canvas, stroke.weight, stroke.dashes, grey(mark.layer))
    shape(canvas, mark, place)


def shape(canvas: Canvas, mark: Line | Arc | Circle | Polyline, place: Place) -> None:
    """The line of a mark in the pen that is in use."""
    path = canvas.beginPath()
    match mark:
        case Line():
            trace(path, place, (mark.start, mark.end))
        case Polyline():
            _trace_run(path, place, run_of(mark), mark.layer)
        case Circle():
            _curve(path, place, Arc(mark.centre, mark.radius, 0.0, 2 * pi, mark.layer))
            path.close()
        case Arc():
            _curve(path, place, mark)
    canvas.drawPath(path, stroke=1, fill=0)


def pen(canvas: Canvas, weight: float, dashes: Sequence[float] = (), shade: float = DARK) -> None:
    """Weight and dashes in mm, shade from 0 (black) to 1."""
    canvas.setLineWidth(weight * PT)
    canvas.setDash([dash * PT for dash in dashes])
    canvas.setStrokeGray(shade)


def trace(path: PDFPathObject, place: Place, points: Sequence[Point], closed: bool = False) -> None:
    """Straight runs through the points."""
    if not points:
        return
    path.moveTo(*place(points[0]))
    for point in points[1:]:
        path.lineTo(*place(point))
    if closed:
        path.close()


def _trace_run(path: PDFPathObject, place: Place, run: Run, layer: str) -> None:
    """Straight pieces and true curves, one after another."""
    if not run.points:
        return
    path.moveTo(*place(run.points[0]))
    ends = (*run.points[1:], *run.points[: run.closed])
    for at, (end, bulge, piece) in enumerate(zip(ends, run.bulges, pieces_of(run, layer), strict=True), 1):
        if isinstance(piece, Line):
            if at < len(run.points):  # closing the path draws the piece back to the first point
                path.lineTo(*place(end))
        else:
            _curve_on(path, place, piece, bulge > 0)
    if run.closed:
        path.close()


def _curve_on(path: PDFPathObject, place: Place, arc: Arc, forward: bool) -> None:
    """An arc from the current point, in either direction."""
    pieces = list(_cubics(arc))
    for start, first, second, end in pieces if forward else reversed(pieces):
        a, b, c = (first, second, end) if forward else (second, first, start)
        path.curveTo(*place(a), *place(b), *place(c))


def _curve(path: PDFPathObject, place: Place, arc: Arc) -> None:
    pieces = list(_cubics(arc))
    path.moveTo(*place(pieces[0][0]))
    for _, first, second, end in pieces:
        path.curveTo(*place(first), *place(second), *place(end))


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


def letter(canvas: Canvas, mark: Lettering, place: Place, face: str = "") -> None:
    """Words as words, in the face for figures or for words unless another is named."""
    x, y = place(mark.at)
    canvas.saveState()
    canvas.setFillGray(DARK)
    canvas.setFont(face or (FIGURES if mark.figure else WORDS), type_size(mark.height) * PT)
    canvas.translate(x, y)
    if mark.angle:
        canvas.rotate(degrees(mark.angle))
    draw = {"left": canvas.drawString, "middle": canvas.drawCentredString, "right": canvas.drawRightString}
    draw[mark.anchor](0, 0, mark.text)
    canvas.restoreState()


def fitted(text: str, height: float, face: str, room: float) -> tuple[str, float]:
    """The text and the height of its capitals in mm at which it is no wider than `room` mm, `height` at the most.

    It gets no smaller than can be read; text that is still too long is cut off.
    """
    if (wide := _wide(text, height, face)) <= room:
        return text, height
    smaller = max(height * room / wide, SMALLEST)
    while len(text) > 1 and _wide(text, smaller, face) > room:
        text = text[:-2].rstrip() + "…"
    return text, smaller


def _wide(text: str, height: float, face: str) -> float:
    wide: float = pdfmetrics.stringWidth(text, face, type_size(height))
    return wide
