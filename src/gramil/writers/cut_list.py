"""The cut list as a table for a spreadsheet, a timber merchant or a printer of labels: a row for each kind of piece.

It lists what the build book's pages list, by the same references; lengths in the shop's unit, as they are shown.
"""

import csv
import io
from collections.abc import Iterator

from gramil import names as n
from gramil.formatter import Formatter, parted
from gramil.prints.book_pages import single_pieces
from gramil.reference import Ref
from gramil.writers.tables import MARK

HEADS = ("instrument", "piece", "pieces", "wood", "length", "width", "thickness", "unit")
Piece = tuple[str, int, Ref[str] | None, tuple[Ref[float], Ref[float], Ref[float]]]
"""A piece's words, how many there are, its wood, and its length, width and thickness; a stick's height is the last."""


def cut_list_csv(formatter: Formatter) -> bytes:
    """Every piece that is sawn for the instrument; of a guitar that came in there is none but the heads."""
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow(HEADS)
    owner = formatter.figures[n.instrument_name]
    for words, pieces, wood, sizes in _pieces(formatter):
        shown = [parted(formatter.text(size)) for size in sizes]
        named = formatter.text(wood) if wood else ""
        writer.writerow([owner, words, pieces, named, *(number for number, _ in shown), shown[0][1]])
    return (MARK + text.getvalue()).encode()


def _pieces(formatter: Formatter) -> Iterator[Piece]:
    figures = formatter.figures
    if figures[n.repair_described]:
        return
    for each in single_pieces(formatter):
        yield each.words, each.pieces, each.wood, (each.length, each.width, each.thickness)
    for piece in figures[n.plank_pieces]:
        sawn = n.plank_pieces[piece.name]
        yield f"Neck: {piece.name}", 1, n.carve_wood, (sawn.length, sawn.width, sawn.thickness)
    for stick in figures[n.stick_list]:
        split = n.stick_list[stick.name]
        yield stick.name, 1, split.wood, (split.length, split.width, split.height)
    for strip in figures[n.strip_list]:
        bent = n.strip_list[strip.name]
        yield strip.name, strip.count, bent.wood, (bent.length, bent.height, bent.thickness)
