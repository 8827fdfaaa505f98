"""The sections on a page: the neck and board enlarged, and the body where it is cut, with the old in grey under the
new.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Any

from gramil import names as n
from gramil.address import parse_address
from gramil.bench.svg_in_page import box_of, boxed, inlined
from gramil.drawings.body_at import DEPTH, WIDTH, body_drawing, body_marks, read_at
from gramil.drawings.marks import Arc, Drawing, Marks, unhatched
from gramil.drawings.section_at import BETWEEN, Cut, over_board, section_drawing, section_marks, turned_over
from gramil.formatter import Formatter, parted, shown
from gramil.graph import Figures
from gramil.quantities import axes_of
from gramil.reference import Ref
from gramil.writers.plain import figures as figures_on
from gramil.writers.svg import svg_text

Old = tuple[Figures, Cut] | None
Reader = Callable[[Ref[Any]], str]
DASHED = "What is dashed is not described: it is drawn as it usually is."


@dataclass(frozen=True)
class Section:
    """A section as a page shows it: what it shows, what to know about it, its picture, and the same in words."""

    name: str
    note: str
    svg: str
    words: str


def sections_at(figures: Figures, cut: Cut, old: Old, formatter: Formatter) -> tuple[Section, ...]:
    """Neck and board if there is a board here, the body if there is one; the strings alone if there is neither."""
    reader = reader_at(figures, cut, formatter)
    body = body_drawing(figures, cut)
    found: list[Section] = []
    if over_board(figures, cut) or body is None:
        under = _in_grey(section_marks(*old), old[0]) if old else ()
        found.append(
            _section("Neck and board", section_drawing(figures, cut), under, "section-drawing", reader, formatter)
        )
    if body is not None:
        under = _in_grey(body_marks(*old), old[0]) if old else ()
        found.append(_section("Body", body, under, "section-drawing body-drawing", reader, formatter))
    return tuple(found)


def _section(name: str, drawing: Drawing, under: Marks, kind: str, reader: Reader, formatter: Formatter) -> Section:
    whole = replace(drawing, marks=(*under, *drawing.marks))
    svg = inlined(svg_text(whole, lambda address: parted(reader(address))[0], captioned=False, unit=formatter.first))
    note = DASHED if any(mark.layer == "core" for mark in drawing.marks) else ""
    return Section(name, note, boxed(svg, box_of(svg), kind), _in_words(drawing, reader, formatter.figures))


def _in_grey(marks: Marks, figures: Figures) -> Marks:
    """The old section's lines, turned over for the left hand, without their hatch."""
    turned = turned_over(marks) if figures[n.instrument_handed] == "left" else marks
    return tuple(replace(unhatched(mark), layer="old") for mark in turned if not isinstance(mark, Arc))


def cut_through(figures: Figures, cut: Cut) -> Marks:
    """Everything that is cut through, to be turned into the drawing; mirrored for the left hand."""
    marks = (*body_marks(figures, cut), *section_marks(figures, cut))
    return marks if figures[n.instrument_handed] != "left" else turned_over(marks)


def reader_at(figures: Figures, cut: Cut, formatter: Formatter) -> Reader:
    """A reader of addresses that also knows those between frets, and figures that exist only at the cut."""

    def read(figure: Ref[Any]) -> str:
        address = figure.address
        if figure in (WIDTH, DEPTH):
            return shown(read_at(figures, address, cut), "mm", formatter.first)
        if not address.endswith(BETWEEN):
            return formatter.text(address)
        unit = figures.unit_at(address.removesuffix(BETWEEN))
        return shown(read_at(figures, address, cut), unit, formatter.first)

    return read


def _in_words(drawing: Drawing, reader: Reader, figures: Figures) -> str:
    """The section in words, every figure by what it is."""
    told = "; ".join(f"{address_in_words(each.address, figures)} {each.text}" for each in figures_on(drawing, reader))
    return f"{drawing.title}. {told}." if told else f"{drawing.title}. Only the strings are cut here."


def address_in_words(address: str, figures: Figures) -> str:
    """An address in words: `slot left at crest at fret 7`, `height over crown string 6 at fret 12`."""
    plain = address.removesuffix(BETWEEN)
    if plain in (WIDTH.address, DEPTH.address):
        return plain
    name, steps = parse_address(plain)
    if name not in figures:
        return plain
    axes = axes_of(figures.graph.annotation(name))
    rows = [f"at fret {step}" if axis == "fret" else f"string {step}" for axis, step in zip(axes, steps, strict=False)]
    if steps and not axes:
        rows = [str(getattr(step, "name", step)).replace("_", " ") for step in steps]
    return " ".join((name.replace("_", " "), *rows))
