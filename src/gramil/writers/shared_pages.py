"""Small cards on one page: drawings too small for a page of their own, side by side and in rows, with their names.

Tall ones first, as many to a page as fit.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from textwrap import wrap

from gramil.drawings.marks import Arc, Circle, Drawing, Line, Point, Polyline, SeenFrom
from gramil.writers.extents import bounds
from gramil.writers.lettering import Lettering, clean, width
from gramil.writers.paper import card_sheets
from gramil.writers.plain import Plain, seen_from
from gramil.writers.proof_square import ROOM_ROUND_SQUARE

APART = 5.0
"""Room between two cards and round each, in mm."""
SMALL = 0.75
"""A card no taller than this share of a page may share it."""
TITLE, VIEW, LINE = 2.6, 2.0, 3.6
"""Height of a card's name and of its view under it, and from one line to the next, in mm."""
NARROW = 60.0
"""Words under a card may always be so wide, in mm."""


@dataclass(frozen=True)
class Card:
    """A drawing with its marks, its name under it; `names` are those of all drawings on it."""

    drawing: Drawing
    marks: tuple[Plain, ...]
    names: tuple[str, ...]

    @property
    def size(self) -> Point:
        """Width and height, in mm."""
        left, low, right, high = bounds(self.marks)
        return (right - left, high - low)


def card_of(drawing: Drawing, marks: Sequence[Plain]) -> Card:
    """A drawing as a card; under it what it is, from where it is seen, and its kerf, which is in words already.

    Its words do not make it wider, unless it is very narrow.
    """
    left, low, right, _ = bounds(marks)
    words = ((clean(drawing.title), TITLE), (seen_from(drawing), VIEW), (str(drawing.kerf), VIEW))
    wide = max(right - left, NARROW)
    lines = ((line, height) for text, height in words for line in _wrapped(text, height, wide))
    said = (
        Lettering((left, low - 5.0 - LINE * row), text, height, 0.0, "left", "text")
        for row, (text, height) in enumerate(lines)
    )
    return Card(drawing, (*marks, *said), (drawing.name,))


def _wrapped(text: str, height: float, wide: float) -> list[str]:
    return wrap(text, max(1, int(wide / width("n", height, figure=False))))


def is_small(card: Card, paper: str, printer_scale: tuple[float, float]) -> bool:
    """Whether a card leaves room on a page of this paper, upright, for another."""
    wide, tall = _window(paper, printer_scale)
    return card.size[0] <= wide and card.size[1] <= SMALL * tall


def shared(cards: Sequence[Card], paper: str, printer_scale: tuple[float, float]) -> list[Card]:
    """The cards in rows on as few pages as possible, each page as one card; a card alone on a page stays as it was.

    Each page keeps room for the smaller square that proves its print: without it there would be one page more.
    """
    sheet, window = card_sheets(paper, printer_scale)[0], _window(paper, printer_scale)
    side = min(sheet.squares) + 2 * ROOM_ROUND_SQUARE
    pages: list[list[tuple[Card, Point]]] = []
    for card in sorted(cards, key=lambda card: -card.size[1]):
        place = next(((page, at) for page in pages if (at := _fits(page, card, window, side)) is not None), None)
        if place is None:
            pages.append([(card, (0.0, 0.0))])
        else:
            place[0].append((card, place[1]))
    return [_together(page) for page in pages]


def _window(paper: str, printer_scale: tuple[float, float]) -> Point:
    wide, tall = card_sheets(paper, printer_scale)[0].window
    return (wide - 2.0, tall - 2.0)


Laid = tuple[Point, Point]
"""Size of what lies on a page, and its upper left corner, from the page's, down negative."""


def _fits(page: Sequence[tuple[Card, Point]], card: Card, window: Point, side: float) -> Point | None:
    """The upper left corner where a card goes, if there is room for the square then, too."""
    laid = [(each.size, at) for each, at in page]
    at = _room_on(laid, card.size, window)
    if at is None or _room_on([*laid, (card.size, at)], (side, side), window) is None:
        return None
    return at


def _room_on(laid: Sequence[Laid], size: Point, window: Point) -> Point | None:
    """Where something goes: beside the last of a row, no deeper than it unless it is the lowest, or below."""
    lowest = min(at[1] for _, at in laid)
    for row in sorted({at[1] for _, at in laid}, reverse=True):
        beside = [(each, at) for each, at in laid if at[1] == row]
        across = max(at[0] + each[0] for each, at in beside) + APART
        deep = max(each[1] for each, _ in beside) if row > lowest else window[1] + row
        if across + size[0] <= window[0] and size[1] <= deep:
            return (across, row)
    low = min(at[1] - each[1] for each, at in laid) - APART
    return (0.0, low) if size[1] - low <= window[1] else None


def _together(page: Sequence[tuple[Card, Point]]) -> Card:
    first = page[0][0]
    if len(page) == 1:
        return first
    marks = tuple(mark for card, at in page for mark in _laid(card, at))
    names = tuple(name for card, _ in page for name in card.names)
    title = f"small cards: {', '.join(names)}"
    views = {card.drawing.seen_from for card, _ in page}
    seen: SeenFrom = views.pop() if len(views) == 1 else "as each says"
    return Card(replace(first.drawing, title=title, seen_from=seen, kerf=""), marks, names)


def _laid(card: Card, at: Point) -> tuple[Plain, ...]:
    left, _, _, high = bounds(card.marks)
    by = (at[0] - left, at[1] - high)
    return tuple(moved(mark, by) for mark in card.marks)


def moved(mark: Plain, by: Point) -> Plain:
    """A mark moved by so many mm along and up."""

    def to(point: Point) -> Point:
        return (point[0] + by[0], point[1] + by[1])

    match mark:
        case Line():
            return replace(mark, start=to(mark.start), end=to(mark.end))
        case Polyline():
            return replace(mark, points=tuple(map(to, mark.points)))
        case Arc() | Circle():
            return replace(mark, centre=to(mark.centre))
        case Lettering():
            return replace(mark, at=to(mark.at))
