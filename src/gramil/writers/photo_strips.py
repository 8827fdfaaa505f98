"""The printed strips that are laid round a plan before it is photographed, and the frame that does the same.

Each strip has two tags and a bar between them, which the maker measures: all lengths read from a photograph go by it.
"""

from collections.abc import Sequence
from io import BytesIO

from reportlab.pdfgen.canvas import Canvas

from gramil.drawings.marks import Line, Point, Polyline
from gramil.notice import NOTICE
from gramil.photographs.pieces import APART, STRIPS, TAG, frame_middles
from gramil.photographs.tags import ACROSS, black_cells
from gramil.quantities import Mm
from gramil.writers.lettering import Lettering
from gramil.writers.paper import MARGIN, sheets
from gramil.writers.pdf_ink import BOLD, PT, WORDS, Placed, fitted, ink, letter, open_page, page_canvas

QUIET: Mm = TAG / ACROSS
"""White round a tag: a cell."""
TALL: Mm = TAG + 2 * QUIET
STEP: Mm = TALL + 14.0
"""From one strip to the next on a page."""
ON_A_PAGE = 2
OVERLAP: Mm = 0.02
"""White cells reach so far over one another, so that no hair of black shows between them."""
HOW = (
    "Print at 100 %, no fit to page; print all strips together, on one printer. Cut along the thin lines.",
    "Measure the bar on one strip, between its end lines, and type what it measures: every length goes by it.",
    "Lay the four strips flat round the plan, one at each side, none bent, all of each in the picture.",
    "Stand back and use the longer lens; hold the phone level over the middle, in even light, without flash.",
    "Flatten the plan: what it stands off the table is what the photograph cannot see.",
)


def strips_pdf(paper: str, printer_scale: tuple[float, float] = (1.0, 1.0)) -> bytes:
    """The four strips, two a page, on a paper by its name. Raises MakersFault for a paper that is too small."""
    stream = BytesIO()
    canvas = page_canvas(stream, "Strips to photograph by")
    for first in range(0, STRIPS, ON_A_PAGE):
        sheet = sheets(paper, APART + TAG, 2 * STEP, printer_scale)[1]
        open_page(canvas, sheet)
        left = (sheet.width - APART - TAG) / 2
        place = Placed((0.0, 0.0), (left, sheet.height - MARGIN), sheet.stretch)
        for row in range(ON_A_PAGE):
            _strip(canvas, place, first + row, -STEP * row - TALL)
        _how(
            canvas, Placed((0.0, 0.0), (MARGIN, 0.0)), sheet.width - 2 * MARGIN, sheet.height - MARGIN - 2 * STEP - 4.0
        )
        canvas.showPage()
    canvas.save()
    return stream.getvalue()


def frame_pdf(width: Mm, height: Mm) -> bytes:
    """The frame of twelve tags, `width` by `height` between the middles of its corner tags, on a page of its size."""
    stream = BytesIO()
    canvas = page_canvas(stream, "Frame to photograph by")
    edge = TAG / 2 + QUIET + MARGIN
    canvas.setPageSize(((width + 2 * edge) * PT, (height + 2 * edge) * PT))
    place = Placed((0.0, 0.0), (width / 2 + edge, height / 2 + edge))
    for number, middle in frame_middles(width, height).items():
        _tag(canvas, place, number, (middle[0] - TAG / 2, middle[1] - TAG / 2))
    _bar(canvas, place, (-width / 2 - TAG / 2, -height / 2 - TAG / 2 - QUIET / 2), width)
    _how(canvas, Placed((0.0, 0.0), (edge + TAG, 0.0)), width - 2 * TAG, height / 2 + edge)
    canvas.showPage()
    canvas.save()
    return stream.getvalue()


def _strip(canvas: Canvas, place: Placed, number: int, low: Mm) -> None:
    """One strip, its first tag's left edge at 0."""
    right = APART + TAG
    ends = (-QUIET / 2, right + QUIET / 2)
    edge = ((ends[0], low), (ends[1], low), (ends[1], low + TALL), (ends[0], low + TALL))
    ink(canvas, Polyline(edge, "pins", closed=True), place)
    for tag, x in ((2 * number, 0.0), (2 * number + 1, APART)):
        _tag(canvas, place, tag, (x, low + QUIET))
    middle = low + TALL / 2
    _bar(canvas, place, (0.0, low + QUIET / 2), APART)
    words = f"Strip {number + 1} of {STRIPS}, tags {2 * number + 1} and {2 * number + 2}"
    room = APART - TAG - 2 * QUIET
    letter(
        canvas,
        Lettering(((APART + TAG) / 2, middle + 2.0), *fitted(words, 4.0, BOLD, room), 0.0, "middle", "text"),
        place,
        BOLD,
    )
    told = f"from left edge to left edge of the tags: {APART:g} mm"
    letter(
        canvas,
        Lettering(((APART + TAG) / 2, low + QUIET + 4.0), *fitted(told, 2.6, WORDS, room), 0.0, "middle", "text"),
        place,
    )


def _bar(canvas: Canvas, place: Placed, start: Point, length: Mm) -> None:
    """The bar to be measured, with a line at each end."""
    (x, y), reach = start, QUIET / 2 - 0.3
    ink(canvas, Line((x, y), (x + length, y), "pins"), place)
    for at in (x, x + length):
        ink(canvas, Line((at, y - reach), (at, y + reach), "pins"), place)


def _tag(canvas: Canvas, place: Placed, number: int, low_left: Point) -> None:
    """A tag: a black square, its white cells laid over it, so that its outer edges are single lines."""
    x, y = low_left
    cell = TAG / ACROSS
    _filled(canvas, place, (x, y), (x + TAG, y + TAG), 0.0)
    black = set(black_cells(number))
    for column in range(ACROSS):
        for row in range(ACROSS):
            if (column, row) not in black:
                at = (x + column * cell, y + TAG - (row + 1) * cell)
                far = (at[0] + cell + OVERLAP, at[1] + cell + OVERLAP)
                _filled(canvas, place, (at[0] - OVERLAP, at[1] - OVERLAP), far, 1.0)


def _filled(canvas: Canvas, place: Placed, low: Point, high: Point, grey: float) -> None:
    """A rectangle filled with a grey, 0 black and 1 white."""
    (x, y), (u, v) = place(low), place(high)
    canvas.setFillGray(grey)
    canvas.rect(x, y, u - x, v - y, stroke=0, fill=1)


def _how(canvas: Canvas, place: Placed, room: Mm, top: Mm) -> None:
    """How it is used, line under line."""
    lines: Sequence[tuple[str, str]] = (*((line, WORDS) for line in HOW), (NOTICE, WORDS))
    for row, (line, face) in enumerate(lines):
        at = (0.0, top - 6.0 * (row + 1))
        letter(canvas, Lettering(at, *fitted(line, 3.0, face, room), 0.0, "left", "text"), place, face)
