"""The printed strips that are laid round a plan before it is photographed, and the frame that does the same.

Each strip has two tags and a bar between them, which the maker measures: all lengths read from a photograph go by it.
"""

from collections.abc import Iterator

from gramil.drawings.marks import Line, Point, Polyline
from gramil.faults import MakersFault
from gramil.inches import in_64ths, in_inches
from gramil.measure import LengthUnit
from gramil.notice import NOTICE
from gramil.photographs.pieces import APART, STRIPS, TAG, frame_middles
from gramil.photographs.tags import ACROSS, black_cells
from gramil.quantities import Mm
from gramil.typeset import typeset
from gramil.writers.ink import in_grey
from gramil.writers.leaf import Ink, Leaf, Stroke, leaf
from gramil.writers.lettering import Lettering
from gramil.writers.paper import MARGIN, Sheet, sheets
from gramil.writers.pdf_ink import Placed, fitted, inked, letter, straight
from gramil.writers.type_widths import BOLD, WORDS

QUIET: Mm = TAG / ACROSS
"""White round a tag: a cell."""
TALL: Mm = TAG + 2 * QUIET
STEP: Mm = TALL + 14.0
"""From one strip to the next on a page."""
ON_A_PAGE = 2
NEEDS: tuple[Mm, Mm] = (APART + TAG + QUIET + 8.0, 2 * MARGIN + ON_A_PAGE * STEP + 40.0)
"""Width and height of the smallest page, lying, that holds two strips and how they are used."""
OVERLAP: Mm = 0.02
"""White cells reach so far over one another, so that no hair of black shows between them."""
HOW = (
    "Print at 100 %, no fit to page; print all strips together, on one printer. Cut along the thin lines.",
    "Measure the bar on one strip, between its end lines, and type what it measures: every length goes by it.",
    "Lay the four strips flat round the plan, one at each side, none bent, all of each in the picture.",
    "Stand back and use the longer lens; hold the phone level over the middle, in even light, without flash.",
    "Flatten the plan: what it stands off the table is what a photograph cannot show.",
)


def hold_strips(paper: str) -> bool:
    """Whether a paper is large enough for the strips."""
    lying = sheets(paper, APART + TAG, ON_A_PAGE * STEP, (1.0, 1.0))[1]
    return lying.width >= NEEDS[0] and lying.height >= NEEDS[1]


def strips_pdf(paper: str, printer_scale: tuple[float, float] = (1.0, 1.0), unit: LengthUnit = "mm") -> bytes:
    """The four strips, two a page, on a paper by its name, the bar told in the unit of the rule that measures it.

    Raises MakersFault for a paper that is too small.
    """
    if not hold_strips(paper):
        raise MakersFault.of(f"{paper} is too small for the strips", remedy="print them on A4 or letter")
    sheet = sheets(paper, APART + TAG, ON_A_PAGE * STEP, printer_scale)[1]
    title = "Strips to photograph by"
    pages = [
        leaf(
            (sheet.width, sheet.height),
            _strips(sheet, first, unit),
            "Strips to photograph by, each with two tags and a bar",
            "" if first else title,
        )
        for first in range(0, STRIPS, ON_A_PAGE)
    ]
    return _pdf(title, pages)


def frame_pdf(width: Mm, height: Mm) -> bytes:
    """The frame of twelve tags, `width` by `height` between the middles of its corner tags, on a page of its size."""
    edge = TAG / 2 + QUIET + MARGIN
    size = (width + 2 * edge, height + 2 * edge)
    title = "Frame to photograph by"
    page = leaf(size, _frame(width, height, edge), f"{title}: twelve tags and a bar", title)
    return _pdf(title, [page])


def _pdf(title: str, pages: list[Leaf]) -> bytes:
    return typeset("templates.typ", {"title": title, "leaves": pages})


def _strips(sheet: Sheet, first: int, unit: LengthUnit) -> Iterator[Ink]:
    """One page of strips, from the number of its first on."""
    left = (sheet.width - APART - TAG) / 2
    place = Placed((0.0, 0.0), (left, sheet.height - MARGIN), sheet.stretch)
    for row in range(ON_A_PAGE):
        yield from _strip(place, first + row, -STEP * row - TALL, unit)
    room, top = sheet.width - 2 * MARGIN, sheet.height - MARGIN - 2 * STEP - 4.0
    yield from _how(Placed((0.0, 0.0), (MARGIN, 0.0)), room, top)


def _frame(width: Mm, height: Mm, edge: Mm) -> Iterator[Ink]:
    place = Placed((0.0, 0.0), (width / 2 + edge, height / 2 + edge))
    for number, middle in frame_middles(width, height).items():
        yield from _tag(place, number, (middle[0] - TAG / 2, middle[1] - TAG / 2))
    yield from _bar(place, (-width / 2 - TAG / 2, -height / 2 - TAG / 2 - QUIET / 2), width)
    yield from _how(Placed((0.0, 0.0), (edge + TAG, 0.0)), width - 2 * TAG, height / 2 + edge)


def _strip(place: Placed, number: int, low: Mm, unit: LengthUnit) -> Iterator[Ink]:
    """One strip, its first tag's left edge at 0."""
    right = APART + TAG
    ends = (-QUIET / 2, right + QUIET / 2)
    edge = ((ends[0], low), (ends[1], low), (ends[1], low + TALL), (ends[0], low + TALL))
    yield inked(Polyline(edge, "pins", closed=True), place)
    for tag, x in ((2 * number, 0.0), (2 * number + 1, APART)):
        yield from _tag(place, tag, (x, low + QUIET))
    middle = low + TALL / 2
    yield from _bar(place, (0.0, low + QUIET / 2), APART)
    words = f"Strip {number + 1} of {STRIPS}, tags {2 * number + 1} and {2 * number + 2}"
    room = APART - TAG - 2 * QUIET
    yield letter(
        Lettering(((APART + TAG) / 2, middle + 2.0), *fitted(words, 4.0, BOLD, room), 0.0, "middle", "text"),
        place,
        BOLD,
    )
    apart = f"{APART:g} mm" if unit == "mm" else f"{in_inches(APART, 3)} ({in_64ths(APART)})"
    told = f"from left edge to left edge of the tags: {apart}"
    yield letter(
        Lettering(((APART + TAG) / 2, low + QUIET + 4.0), *fitted(told, 2.6, WORDS, room), 0.0, "middle", "text"),
        place,
    )


def _bar(place: Placed, start: Point, length: Mm) -> Iterator[Ink]:
    """The bar to be measured, with a line at each end."""
    (x, y), reach = start, QUIET / 2 - 0.3  # a tag is found by the white round it
    yield inked(Line((x, y), (x + length, y), "pins"), place)
    for at in (x, x + length):
        yield inked(Line((at, y - reach), (at, y + reach), "pins"), place)


def _tag(place: Placed, number: int, low_left: Point) -> Iterator[Ink]:
    """A tag: a black square, its white cells laid over it, so that its outer edges are single lines."""
    x, y = low_left
    cell = TAG / ACROSS
    yield _filled(place, (x, y), (x + TAG, y + TAG), 0.0)
    black = set(black_cells(number))
    for column in range(ACROSS):
        for row in range(ACROSS):
            if (column, row) not in black:
                at = (x + column * cell, y + TAG - (row + 1) * cell)
                far = (at[0] + cell + OVERLAP, at[1] + cell + OVERLAP)
                yield _filled(place, (at[0] - OVERLAP, at[1] - OVERLAP), far, 1.0)


def _filled(place: Placed, low: Point, high: Point, grey: float) -> Stroke:
    """A rectangle filled with a grey, 0 black and 1 white."""
    corners = (low, (high[0], low[1]), high, (low[0], high[1]))
    return Stroke(f'<path d="{straight(place, corners, True)}" fill="{in_grey(grey)}"/>')


def _how(place: Placed, room: Mm, top: Mm) -> Iterator[Ink]:
    """How it is used, line under line."""
    for row, line in enumerate((*HOW, NOTICE)):
        at = (0.0, top - 6.0 * (row + 1))
        yield letter(Lettering(at, *fitted(line, 3.0, WORDS, room), 0.0, "left", "text"), place)
