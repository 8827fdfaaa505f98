"""The build book's own pages: title page, findings, strings, heights, cut lists, woods, every dimension by part.

They show what the graph gives and calculate nothing. The sheets follow them in the book.
"""

import re
from collections.abc import Iterator, Sequence
from dataclasses import fields
from itertools import groupby
from typing import Any

from gramil import names as n
from gramil.drawings.marks import Drawing
from gramil.faults import MakersFault
from gramil.findings.finding import in_words
from gramil.formatter import NOT_KNOWN, Formatter
from gramil.graph import Figures
from gramil.in_shop_units import in_shop_units
from gramil.measure import LengthUnit
from gramil.prints.book_lists import (
    BODY,
    BUILT_ON,
    CUT_LISTS,
    FACTS,
    FANNED,
    HEIGHTS,
    HEIGHTS_TALL,
    LISTS,
    PLANS,
    SET_ON,
    SINGLE,
    STRINGS,
    TITLE,
    TUNERS,
    WOOD_UNITS,
    WOODS,
    Columns,
    SinglePiece,
)
from gramil.prints.lazily import Lazily
from gramil.prints.listed import headings_of
from gramil.prints.pages import FrontPage, FrontTable, safe
from gramil.prints.whole import dimensions_of, findings_of
from gramil.reason import read_doc
from gramil.reference import Ref, in_row
from gramil.sources import cited
from gramil.wood.species import Published, Remark, Species, find_species


def front_pages(formatter: Formatter) -> Iterator[FrontPage]:
    """The pages ahead of the sheets, in order."""
    figures = formatter.figures
    named = FACTS if figures[n.scale_bass] == figures[n.scale_treble] else (*FANNED, *FACTS[1:])
    body = [(words, address) for words, address in BODY if formatter.text(address) != NOT_KNOWN]
    facts = [[words, *formatter.both(address)] for words, address in (*named, *body)]
    whole = _drawn([each for each, _ in TITLE[:2]], figures)
    plans = whole or _drawn([each for each, _ in TITLE[2:]], figures)
    yield _page(figures[n.instrument_name], [_table("", ["", "", ""], facts, (2, 2, 2))], plans, 108)
    if not figures[n.repair_described]:
        yield from _to_make(formatter)
    yield _page("What was found", [_findings(formatter)], lines=(_found_fine(figures),))
    neck = BUILT_ON if figures[n.foot_there] else SET_ON
    heights = [[words, *formatter.both(address)] for words, address in (*HEIGHTS, neck)]
    tables = [_table("", ["", "", ""], heights, (3, 2, 2)), _by_string("Strings", STRINGS, formatter)]
    yield _page("Heights and strings", tables, (figures[n.drawing_heights].name,), HEIGHTS_TALL)
    yield _cut_lists_and_woods(formatter)
    yield _page("Dimensions by part", Lazily(_dimensions(formatter)))


def _to_make(formatter: Formatter) -> Iterator[FrontPage]:
    """Drawings and lists of what is made for a new guitar; of one that came in it is made already."""
    for words, names, tall in PLANS:
        if shown := _drawn(names, formatter.figures):
            tuners = [_by_string("Tuners, plus toward the treble", TUNERS, formatter)] * (n.drawing_head in names)
            yield _page(words, tuners, shown, tall)
    yield from _lists(formatter)


def _cut_lists_and_woods(formatter: Formatter) -> FrontPage:
    figures = formatter.figures
    woods = _wood_tables(_woods(figures), formatter.first)
    if figures[n.repair_described]:
        return _page("Woods", woods, together=len(woods))
    lists = [table for words, name in CUT_LISTS for table in _cut_list(words, figures, name, formatter)]
    return _page("Cut lists and woods", [_single(formatter), *lists, *woods], together=len(woods))


def _drawn(wanted: Sequence[Ref[Drawing]], figures: Figures) -> list[str]:
    """The names of those drawings that exist."""
    drawings = (figures[each] for each in wanted)
    return [drawing.name for drawing in drawings if drawing.marks]


def _lists(formatter: Formatter) -> Iterator[FrontPage]:
    """A page each for the records of board and neck and of the body, if there are any."""
    for title, lists in LISTS:
        tables = [table for words, records, columns in lists for table in _records(words, records, columns, formatter)]
        if tables:
            yield _page(title, tables)


def _records(words: str, records: Ref[Any], columns: Columns, formatter: Formatter) -> Iterator[FrontTable]:
    """One row for each record, by its name; nothing if there is none."""
    rows = [
        [record.name, *(formatter.text(in_row(figure, record.name)) for _, figure in columns)]
        for record in formatter.figures[records]
    ]
    if rows:
        yield _table(words, ["", *(head for head, _ in columns)], rows, (2, *(1 for _ in columns)), words=True)


def _page(
    title: str,
    tables: Sequence[FrontTable],
    drawings: Sequence[str] = (),
    tall: float = 0,
    lines: Sequence[str] = (),
    together: int = 0,
) -> FrontPage:
    return FrontPage(
        title=safe(title), together=together, drawings=list(drawings), tall=tall, lines=list(lines), tables=tables
    )


def _table(
    title: str, heads: Sequence[str], rows: Sequence[Sequence[str]], widths: Sequence[float], words: bool = False
) -> FrontTable:
    return FrontTable(
        title=title,
        heads=list(heads),
        widths=list(widths),
        words=words,
        rows=[[safe(cell) for cell in row] for row in rows],
    )


def _findings(formatter: Formatter) -> FrontTable:
    rows = [
        [
            each.severity,
            each.name,
            each.shown,
            each.limit_shown,
            f"{each.says} {each.remedy}".strip(),
        ]
        for each in (in_words(found, formatter) for found in findings_of(formatter.figures))
        if each.severity != "fine"
    ]
    return _table("", ["", "what", "is", "limit", "and then"], rows, (1.6, 2.4, 1.8, 1.6, 6), words=True)


def _found_fine(figures: Figures) -> str:
    count = sum(each.severity == "fine" for each in findings_of(figures))
    return f"Not listed: {count} verdicts that found all well."


def _single(formatter: Formatter) -> FrontTable:
    """The pieces that the instrument has: without a body there are no sides."""
    rows = [
        [
            each.words,
            str(each.pieces),
            *(formatter.text(size) for size in (each.length, each.width, each.thickness)),
            formatter.text(each.wood) if each.wood else "",
        ]
        for each in single_pieces(formatter)
    ]
    heads = ["", "pieces", "length", "width", "thickness", "wood"]
    return _table("Single pieces", heads, rows, (2, 1, 1, 1, 1, 1), words=True)


def single_pieces(formatter: Formatter) -> Iterator[SinglePiece]:
    """The single pieces that the instrument has."""
    for each in SINGLE:
        if NOT_KNOWN not in (formatter.text(each.length), formatter.text(each.width)):
            yield each


def _by_string(title: str, columns: Sequence[tuple[str, Ref[Any]]], formatter: Formatter) -> FrontTable:
    count = formatter.figures[n.strings_count]
    rows = [[str(number), *(formatter.text(figure[number]) for _, figure in columns)] for number in range(1, count + 1)]
    return _table(title, ["string", *(words for words, _ in columns)], rows, (1, *(2 for _ in columns)))


def _cut_list(words: str, figures: Figures, pieces_of: Ref[Any], formatter: Formatter) -> Iterator[FrontTable]:
    pieces = figures[pieces_of]
    if not pieces:
        return
    names = [each.name for each in fields(pieces[0]) if isinstance(getattr(pieces[0], each.name), str | float | int)]
    rows = [[formatter.text(f"{pieces_of[piece.name]}.{each}") for each in names] for piece in pieces]
    yield _table(words, [each.replace("_", " ") for each in names], rows, [2, *(1 for _ in names[1:])], words=True)


def _woods(figures: Figures) -> list[str]:
    """The woods that the description names, each once: board, neck, sides, bindings, the cut lists' pieces."""
    named = [figures[name] for name in WOODS] + [figures[n.body_side_wood]] * bool(figures[n.body_outlines])
    for _, name in CUT_LISTS[1:]:
        named += [piece.wood for piece in figures[name] if hasattr(piece, "wood")]
    named += [each.wood for each in figures[n.strip_list] if each.bends_as_wood]
    named += [figures[n.binding_wood]] * bool(figures[n.core_inset] and figures[n.binding_material] == "wood")
    return list(dict.fromkeys(named))


def _wood_tables(names: Sequence[str], first: LengthUnit) -> list[FrontTable]:
    """A table for each wood, every figure with the number of its source.

    A last table names the sources, if there are any.
    """
    found: list[str] = []
    tables = [_wood(name, found, first) for name in names]
    sources = [[str(number), cited(key)] for number, key in enumerate(found, 1)]
    return [*tables, *([_table("Sources", ["", ""], sources, (0.5, 9.5), words=True)] if sources else [])]


def _wood(name: str, sources: list[str], first: LengthUnit) -> FrontTable:
    """A wood's figures; a source that is not yet in `sources` is added."""
    heads, widths = [name, "", "source"], (3, 5, 2)
    try:
        species = find_species(name)
    except MakersFault as fault:
        return _table("", heads, [["not known", str(fault), ""]], widths, words=True)
    return _table("", heads, list(_properties(species, sources, first)), widths, words=True)


def _properties(species: Species, sources: list[str], first: LengthUnit) -> Iterator[list[str]]:
    for each in fields(species):
        value, words = getattr(species, each.name), each.name.replace("_", " ")
        if isinstance(value, Published):
            shown = f"{value.value:g} {WOOD_UNITS.get(each.name, '')}".strip()
            yield [words, in_shop_units(shown, first), _mark(value, sources)]
        elif isinstance(value, Remark):
            yield [words, value.text, _mark(value, sources)]


def _mark(figure: Published | Remark, sources: list[str]) -> str:
    """The number of a figure's source in the list below, and how well it is known."""
    if figure.source not in sources:
        sources.append(figure.source)
    return f"{sources.index(figure.source) + 1}, {figure.flag}"


def _dimensions(formatter: Formatter) -> Iterator[FrontTable]:
    found = sorted(headings_of(formatter.figures, dimensions_of(formatter.figures)), key=lambda each: each.part)
    sources: list[str] = []
    for part, group in groupby(found, key=lambda each: each.part):
        rows = [
            row
            for each in group
            if (row := _dimension(formatter, each.name, f"{each.what} {each.remark}".strip(), sources))
        ]
        if rows:
            yield _table(part.capitalize(), ["", "", "", "source"], rows, (6, 3, 3, 2.4), words=True)
    named = [[str(number), cited(key)] for number, key in enumerate(sources, 1)]
    yield _table("Sources of the formulas", ["", ""], named, (0.5, 9.5), words=True)


def _dimension(formatter: Formatter, name: str, what: str, sources: list[str]) -> list[str]:
    """A dimension's row; none for records, which are in the lists, or for unknown values.

    A published source is given by its number in `sources`, and added there if new.
    """
    figures = formatter.figures
    if figures.unit_at(name) is None:
        return []
    shown, other = formatter.both(name)
    if shown == NOT_KNOWN:
        return []
    source = read_doc(figures.graph.dimensions[name].what).source.split(";")[0].split(":")[0]
    if cited(source) != source:
        sources += [source] * (source not in sources)
        source = f"see {sources.index(source) + 1}"
    return [in_shop_units(re.split(r"\.(?!\d)|:", what)[0], formatter.first), shown, other, source]
