"""The build book: the whole instrument on paper, from its title page to every sheet in order.

It shows what the graph gives and works nothing out: a title page with the drawing, findings, strings, heights, cut
lists, woods, every dimension by part, then the order of work and the sheets, the owner's air last.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields
from itertools import groupby
from typing import Any

from gramil import names as n
from gramil.change.whole import dimensions_of, findings_of, setups_of
from gramil.drawings.marks import Drawing
from gramil.faults import MakersFault
from gramil.findings.finding import in_words
from gramil.graph import Figures
from gramil.reason import read_doc
from gramil.reference import EACH, Ref, in_row
from gramil.rows import headings
from gramil.sheets.bench_sheets import Paper, sheets_pdf
from gramil.sheets.pages import FrontPage, FrontTable, safe
from gramil.show import NOT_KNOWN, Shower
from gramil.sources import cited
from gramil.wood.species import Published, Remark, Species, find_species

FACTS = (
    ("Scale", n.scale_bass),
    ("Frets", n.scale_frets),
    ("Body at fret", n.scale_join),
    ("Hand", n.instrument_handed),
    ("Board", n.board_wood),
    ("Neck angle", n.neck_angle_target),
    ("All strings pull", n.string_pull_total),
)
FANNED = (("Scale, bass", n.scale_bass), ("Scale, treble", n.scale_treble))
"""What a fanned board says of its scale."""
STRINGS = (
    ("thick", n.strings_gauges),
    ("sounds", n.strings_frequency),
    ("weighs", n.string_weight),
    ("pulls", n.string_pull),
    ("strength left", n.string_reserve),
    ("saddle back", n.saddle_set_back),
    ("nut slot over board", n.nut_slot_over_board),
)
HEIGHTS = (
    ("Action at fret 12, each string", n.action_wanted),
    ("Relief", n.heights_relief),
    ("String over the crest plane at the saddle", n.height_at_saddle),
    ("Neck angle", n.neck_angle_target),
    ("Straightedge over the bridge", n.neck_set_straightedge),
    ("Wedge at the heel", n.heel_wedge),
    ("Saddle showing", n.saddle_exposed),
)
CUT_LISTS = (
    ("Board: pieces in stock that yield it, and what each has over", n.blank_options),
    ("Neck", n.plank_pieces),
    ("Braces and other sticks", n.stick_list),
)
"""Words, and the dimension that lists the pieces as records."""
Columns = tuple[tuple[str, Ref[Any]], ...]
_BRACE = n.brace_list[EACH]
ENDS = (
    ("first end, along", _BRACE.start_x),
    ("across", _BRACE.start_y),
    ("second end, along", _BRACE.stop_x),
    ("across", _BRACE.stop_y),
)
LISTS: Sequence[tuple[str, Sequence[tuple[str, Ref[Any], Columns]]]] = (
    (
        "Board",
        (
            (
                "Four ways of cutting the slots",
                n.cutting_options,
                (
                    ("set to", n.cutting_options[EACH].setting),
                    ("measured from", n.cutting_options[EACH].measured_from),
                    ("cut at its ends", n.cutting_options[EACH].pilot_at_end),
                    ("and then", n.cutting_options[EACH].then),
                    ("left at the crest", n.cutting_options[EACH].left_at_crest),
                    ("left at its ends", n.cutting_options[EACH].left_at_end),
                    ("kept of the stiffness", n.cutting_options[EACH].stiffness_kept),
                    ("the same with the neck", n.cutting_options[EACH].stiffness_kept_with_neck),
                ),
            ),
        ),
    ),
    (
        "Body and braces",
        (
            (
                "Bouts and waist",
                n.body_bouts,
                (
                    ("from the neck", n.body_bouts[EACH].x),
                    ("wide", n.body_bouts[EACH].width),
                    ("round the outline", n.body_bouts[EACH].along),
                    ("bend's radius", n.body_bouts[EACH].radius),
                ),
            ),
            (
                "The side, flat",
                n.side_stations,
                (("from the neck", n.side_stations[EACH].along), ("deep", n.side_stations[EACH].depth)),
            ),
            (
                "Strips for the bindings",
                n.strip_list,
                (
                    ("how many", n.strip_list[EACH].count),
                    ("long", n.strip_list[EACH].length),
                    ("high", n.strip_list[EACH].height),
                    ("thick", n.strip_list[EACH].thickness),
                    ("of", n.strip_list[EACH].wood),
                ),
            ),
            (
                "Rosette",
                n.rosette_rings,
                (
                    ("inner", n.rosette_rings[EACH].inner),
                    ("outer", n.rosette_rings[EACH].outer),
                    ("deep", n.rosette_rings[EACH].depth),
                ),
            ),
            (
                "Braces",
                n.brace_list,
                (
                    ("glued to", n.brace_list[EACH].plate),
                    ("held to", n.brace_list[EACH].held_to),
                    ("long", n.brace_list[EACH].length),
                    ("wide", n.brace_list[EACH].width),
                    ("high", n.brace_list[EACH].height),
                    ("ends", n.brace_list[EACH].ends),
                    ("foot's sagitta", n.brace_list[EACH].sagitta),
                ),
            ),
            ("Braces' ends: along from the body's edge, across to the treble positive", n.brace_list, ENDS),
            (
                "Notches: their middles from each brace's first end",
                n.brace_crossings,
                (
                    ("lower, at", n.brace_crossings[EACH].along_under),
                    ("wide", n.brace_crossings[EACH].width_under),
                    ("from above", n.brace_crossings[EACH].depth_under),
                    ("upper, at", n.brace_crossings[EACH].along_over),
                    ("wide", n.brace_crossings[EACH].width_over),
                    ("from its foot", n.brace_crossings[EACH].depth_over),
                ),
            ),
        ),
    ),
    (
        "Neck",
        (
            (
                "The neck's back",
                n.carve_stations,
                (
                    ("from the zero line", n.carve_stations[EACH].position),
                    ("wide", n.carve_stations[EACH].width),
                    ("deep with the board", n.carve_stations[EACH].whole),
                    ("deep without it", n.carve_stations[EACH].depth),
                ),
            ),
            (
                "The edges between its flats",
                n.carve_lines,
                (("from the centre", n.carve_lines[EACH].centre), ("below the joint", n.carve_lines[EACH].joint)),
            ),
        ),
    ),
)
"""Pages of lists: words, the dimension that holds the records, and its columns by field."""
WOOD_UNITS = {"density": "kg/m³", "modulus": "MPa", "strength_across": "MPa"} | dict.fromkeys(
    ("shrinkage_radial", "shrinkage_tangential", "shrinkage_volumetric"), "%"
)
"""Units of a wood's figures; the rest are plain ratios, movement a part of the size for each % of moisture."""
SINGLE = (
    ("Board's blank", n.blank_length, n.blank_width, n.blank_thickness),
    ("Sides, two, bookmatched", n.side_blank_length, n.side_blank_width, n.body_wall),
    ("Top, joined", n.body_plate_length, n.body_plate_width, n.top_thickness),
    ("Back, joined", n.body_plate_length, n.body_plate_width, n.body_back_thickness),
    ("Bridge", n.bridge_length, n.bridge_width, n.bridge_thickness),
    ("Bridge plate", n.plate_length, n.plate_width, n.bridge_plate_thickness),
)
"""Pieces that are cut one at a time: words, length, width, and thickness where the description has one."""
WOODS = (n.board_wood, n.carve_wood)
"""Where the woods stand that every instrument has."""
PLANS: Sequence[tuple[str, tuple[Ref[Drawing], ...], float]] = (
    ("Top and back from the inside", (n.drawing_top_inside, n.drawing_back_inside), 116),
    ("Neck and head", (n.drawing_neck_plank, n.drawing_head), 116),
    ("Neck and board cut across", (n.drawing_plan_sections,), 225),
    ("Flats of the neck's back", (n.drawing_neck_facets,), 225),
)
"""Pages of drawings: words, the drawings on it, and how tall each may be, in mm. Where nothing is drawn, no page."""
TITLE: Sequence[tuple[Ref[Drawing], float]] = (
    (n.drawing_plan_face, 108),
    (n.drawing_plan_side, 108),
    (n.drawing_board, 108),
)
"""What the title page shows: plan and side, or the board where there is no plan."""
LETTERED: Mapping[Ref[Drawing], float] = {
    n.drawing_plan_face: 3.0,
    n.drawing_plan_side: 3.0,
    n.drawing_neck_plank: 1.4,
    n.drawing_top_inside: 1.5,
    n.drawing_back_inside: 1.5,
}
"""How much larger figures are written on drawings that a page shows much smaller than they are."""
SHOWN = (n.drawing_heights, *(name for name, _ in TITLE), *(name for _, names, _ in PLANS for name in names))
"""Every drawing that the book shows besides those of its sheets."""


def build_book_pdf(shower: Shower, drawings: Mapping[str, str], title: str, paper: Paper = "a4") -> bytes:
    """The whole book; `drawings` holds SVG text by drawing name. The same bytes for the same input."""
    figures = shower.figures
    return sheets_pdf(setups_of(figures), shower, drawings, title, paper, tuple(front_pages(shower, drawings, title)))


def front_pages(shower: Shower, drawings: Mapping[str, str], title: str) -> Iterator[FrontPage]:
    """The pages ahead of the sheets, in order."""
    figures = shower.figures
    named = FACTS if figures[n.scale_bass] == figures[n.scale_treble] else (*FANNED, *FACTS[1:])
    facts = [[words, *shower.both(address)] for words, address in named]
    whole = _drawn([each for each, _ in TITLE[:2]], figures, drawings)
    plans = whole or _drawn([each for each, _ in TITLE[2:]], figures, drawings)
    yield _page(figures[n.instrument_name], [_table("", ["", "", ""], facts, (2, 2, 2))], plans, 108)
    for words, names, tall in PLANS:
        if shown := _drawn(names, figures, drawings):
            yield _page(words, [], shown, tall)
    yield from _lists(shower)
    yield _page("What was found", [_findings(shower)], lines=(_found_fine(figures),))
    yield _page("Strings", [_strings(shower)])
    heights = [[words, *shower.both(address)] for words, address in HEIGHTS]
    yield _page("Heights", [_table("", ["", "", ""], heights, (3, 2, 2))], (figures[n.drawing_heights].name,), 120)
    lists = [table for words, name in CUT_LISTS for table in _cut_list(words, figures, name, shower)]
    yield _page("Cut lists", [_single(shower), *lists])
    yield _page("Woods", _wood_tables(_woods(figures)))
    yield _page("Dimensions by part", list(_dimensions(shower)))


def _drawn(wanted: Sequence[Ref[Drawing]], figures: Figures, drawings: Mapping[str, str]) -> list[str]:
    """The names of those drawings that there are."""
    names = (figures[each].name for each in wanted)
    return [name for name in names if name in drawings]


def _lists(shower: Shower) -> Iterator[FrontPage]:
    """A page each for the records of board, body and neck, where there are any."""
    for title, lists in LISTS:
        tables = [table for words, records, columns in lists for table in _records(words, records, columns, shower)]
        if tables:
            yield _page(title, tables)


def _records(words: str, records: Ref[Any], columns: Columns, shower: Shower) -> Iterator[FrontTable]:
    """One row a record, by its name; nothing where there is none."""
    rows = [
        [record.name, *(shower.text(in_row(figure, record.name)) for _, figure in columns)]
        for record in shower.figures[records]
    ]
    if rows:
        yield _table(words, ["", *(head for head, _ in columns)], rows, (2, *(1 for _ in columns)), words=True)


def _page(
    title: str,
    tables: Sequence[FrontTable],
    drawings: Sequence[str] = (),
    tall: float = 0,
    lines: Sequence[str] = (),
) -> FrontPage:
    return FrontPage(title=safe(title), drawings=list(drawings), tall=tall, lines=list(lines), tables=list(tables))


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


def _findings(shower: Shower) -> FrontTable:
    rows = [
        [
            each.severity,
            each.name,
            "" if each.severity == "not judged" else shower.text(each.address),
            shower.text(each.limit) if each.limit else "",
            f"{each.says} {each.remedy}".strip(),
        ]
        for each in (in_words(found, shower.filled) for found in findings_of(shower.figures))
        if each.severity != "fine"
    ]
    return _table("", ["", "what", "is", "limit", "and then"], rows, (1.6, 2.4, 1.8, 1.6, 6), words=True)


def _found_fine(figures: Figures) -> str:
    count = sum(each.severity == "fine" for each in findings_of(figures))
    return f"Not listed: {count} verdicts that found all well."


def _single(shower: Shower) -> FrontTable:
    """The pieces that are there at all: without a body there are no sides."""
    rows = [
        [words, *(shower.text(address) if address else "" for address in addresses)]
        for words, *addresses in SINGLE
        if NOT_KNOWN not in (shower.text(addresses[0]), shower.text(addresses[1]))
    ]
    return _table("Single pieces", ["", "length", "width", "thickness"], rows, (2, 1, 1, 1), words=True)


def _strings(shower: Shower) -> FrontTable:
    count = shower.figures[n.strings_count]
    rows = [[str(number), *(shower.text(figure[number]) for _, figure in STRINGS)] for number in range(1, count + 1)]
    return _table("", ["string", *(words for words, _ in STRINGS)], rows, (1, *(2 for _ in STRINGS)))


def _cut_list(words: str, figures: Figures, pieces_of: Ref[Any], shower: Shower) -> Iterator[FrontTable]:
    pieces = figures[pieces_of]
    if not pieces:
        return
    names = [each.name for each in fields(pieces[0]) if isinstance(getattr(pieces[0], each.name), str | float | int)]
    rows = [[shower.text(f"{pieces_of[piece.name]}.{each}") for each in names] for piece in pieces]
    yield _table(words, [each.replace("_", " ") for each in names], rows, [2, *(1 for _ in names[1:])], words=True)


def _woods(figures: Figures) -> list[str]:
    """The woods that the description names, each once: board, neck, sides, bindings, the cut lists' pieces."""
    named = [figures[name] for name in WOODS] + [figures[n.body_side_wood]] * bool(figures[n.body_outlines])
    for _, name in CUT_LISTS[1:]:
        named += [piece.wood for piece in figures[name] if hasattr(piece, "wood")]
    named += [each.wood for each in figures[n.strip_list] if each.bends_as_wood]
    return list(dict.fromkeys(named))


def _wood_tables(names: Sequence[str]) -> list[FrontTable]:
    """A table a wood, each figure with the number of its source, and a last table that names the sources."""
    found: list[str] = []
    tables = [_wood(name, found) for name in names]
    sources = [[str(number), cited(key)] for number, key in enumerate(found, 1)]
    return [*tables, _table("Sources", ["", ""], sources, (0.5, 9.5), words=True)]


def _wood(name: str, sources: list[str]) -> FrontTable:
    """A wood's figures; a source that is not among `sources` yet is added to them."""
    heads, widths = [name, "", "source"], (3, 5, 2)
    try:
        species = find_species(name)
    except MakersFault as fault:
        return _table("", heads, [["not known", str(fault), ""]], widths, words=True)
    return _table("", heads, list(_properties(species, sources)), widths, words=True)


def _properties(species: Species, sources: list[str]) -> Iterator[list[str]]:
    for each in fields(species):
        value, words = getattr(species, each.name), each.name.replace("_", " ")
        if isinstance(value, Published):
            shown = f"{value.value:g} {WOOD_UNITS.get(each.name, '')}".strip()
            yield [words, shown, _mark(value, sources)]
        elif isinstance(value, Remark):
            yield [words, value.text, _mark(value, sources)]


def _mark(figure: Published | Remark, sources: list[str]) -> str:
    """The number of a figure's source in the list below, and how well it is known."""
    if figure.source not in sources:
        sources.append(figure.source)
    return f"{sources.index(figure.source) + 1}, {figure.flag}"


def _dimensions(shower: Shower) -> Iterator[FrontTable]:
    found = sorted(headings(shower.figures, dimensions_of(shower.figures)), key=lambda each: each.part)
    sources: list[str] = []
    for part, group in groupby(found, key=lambda each: each.part):
        rows = [row for each in group if (row := _dimension(shower, each.name, each.what, sources))]
        if rows:
            yield _table(part.capitalize(), ["", "", "", "source"], rows, (6, 3, 3, 2.4), words=True)
    named = [[str(number), cited(key)] for number, key in enumerate(sources, 1)]
    yield _table("Sources of the formulas", ["", ""], named, (0.5, 9.5), words=True)


def _dimension(shower: Shower, name: str, what: str, sources: list[str]) -> list[str]:
    """A dimension's row; none for records, which stand in the lists, and for what is not known.

    A published source stands as its number in `sources`, and is added to them where it is new.
    """
    figures = shower.figures
    if figures.unit_at(name) is None or shower.text(name) == NOT_KNOWN:
        return []
    source = read_doc(figures.graph.dimensions[name].what).source.split(";")[0].split(":")[0]
    if cited(source) != source:
        sources += [source] * (source not in sources)
        source = f"see {sources.index(source) + 1}"
    return [what.split(".")[0].split(":")[0], *shower.both(name), source]
