"""The strip at the foot of a template's page: which instrument, how to print it, a bar to check the print, and the
map.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from gramil.drawings.marks import SMALLEST, Line
from gramil.notice import NOTICE
from gramil.writers.leaf import Ink, Word
from gramil.writers.lettering import Lettering
from gramil.writers.page_map import page_map
from gramil.writers.paper import FOOT, MARGIN, Sheet
from gramil.writers.pdf_ink import Placed, fitted, inked, letter
from gramil.writers.plain import Plain
from gramil.writers.tiles import Tile, Tiling
from gramil.writers.type_widths import BOLD, WORDS, Face

TICKS = {"mm": (10.0, 5), "in": (6.35, 4)}
"""From tick to tick of the bar in mm, and how many of them to a long one: a centimetre and five, a quarter and an
inch."""
MAP_ROOM = (38.0, 23.0)
NAME_ROOM = 16.0
NO_FIT = "Print at 100 %, no fit to page."


@dataclass(frozen=True)
class Foot:
    """What is written at the foot: the instrument, the drawing and its sheet, view and kerf; `tile` is this page."""

    heading: str
    title: str
    view: str
    kerf: str
    tile: Tile | None


def page_foot(tiling: Tiling, foot: Foot, marks: Sequence[Plain]) -> Iterator[Ink]:
    """The strip on this page, with the map if it is one of several."""
    sheet = tiling.sheet
    room = sheet.width - 2 * MARGIN
    if len(tiling.tiles) > 1 and foot.tile is not None:
        room -= MAP_ROOM[0] + NAME_ROOM
        yield from page_map(tiling, marks, foot.tile, (sheet.width - MARGIN - MAP_ROOM[0], MARGIN), MAP_ROOM)
        yield _written(foot.tile.name, 6.0, BOLD, NAME_ROOM - 4.0, (MARGIN + room + 2.0, MARGIN + 12.0))
    lines = (
        (13.7, foot.heading, 3.0, BOLD),
        (9.7, f"{foot.title}. {foot.view}", 2.2, WORDS),
        (6.2, foot.kerf, 2.2, WORDS),
        (2.7, f"{NO_FIT} {corrected(sheet)}", 2.2, BOLD),
        (-0.5, NOTICE, SMALLEST, WORDS),
    )
    for up, text, height, face in lines:
        yield _written(text, height, face, room, (MARGIN, MARGIN + up))
    yield from _bar(sheet)


def corrected(sheet: Sheet) -> str:
    """How the drawing was corrected for an inexact printer, as a sentence; empty for an exact one."""
    if sheet.stretch == (1.0, 1.0):
        return "Prove it with a rule before you cut."
    along, up = (f"{_printed(off, sheet)} {name}" for off, name in zip(sheet.stretch, sheet.sides, strict=True))
    return f"Corrected for a printer that makes {sheet.said(sheet.bar)} {along} and {up}."


def _printed(off: float, sheet: Sheet) -> str:
    """How long the printer makes the bar."""
    return f"{100 * off:.2f} mm" if sheet.unit == "mm" else f"{4 * off:.4f} in"


def _written(text: str, height: float, face: Face, room: float, at: tuple[float, float]) -> Word:
    """One line at a place on the page, made smaller if it is long, and cut off if it could then not be read."""
    mark = Lettering(at, *fitted(text, height, face, room), 0.0, "left", "text")
    return letter(mark, Placed((0.0, 0.0), (0.0, 0.0)), face)


def _bar(sheet: Sheet) -> Iterator[Ink]:
    place = Placed((0.0, 0.0), (MARGIN, MARGIN + FOOT - 7.5), sheet.stretch)
    yield inked(Line((0.0, 0.0), (sheet.bar, 0.0), "pins"), place)
    apart, long = TICKS[sheet.unit]
    for number in range(round(sheet.bar / apart) + 1):
        at = number * apart
        yield inked(Line((at, 0.0), (at, 2.0 if number % long == 0 else 1.0), "pins"), place)
    text = f"{sheet.said(sheet.bar)} {sheet.sides[0]}"
    yield letter(Lettering((sheet.bar / 2, 3.0), text, 2.2, 0.0, "middle", "text"), place)
