"""The build book: the whole instrument on paper, from its title page to every sheet in order.

It shows what the graph gives and works nothing out: a title page with the drawing, findings, strings, heights, cut
lists, woods, every dimension by part, then the order of work and the sheets, the owner's air last.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields
from itertools import groupby

from gramil.change.whole import dimensions_of, findings_of, setups_of
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.reason import read_doc
from gramil.rows import headings
from gramil.sheets.bench_sheets import Paper, sheets_pdf
from gramil.sheets.pages import FrontPage, FrontTable, safe
from gramil.show import NOT_KNOWN, Shower
from gramil.sources import cited
from gramil.wood.species import Published, Remark, Species, find_species

FACTS = (
    ("Scale", "scale_bass"),
    ("Frets", "scale_frets"),
    ("Body at fret", "scale_join"),
    ("Hand", "instrument_handed"),
    ("Board", "board_wood"),
    ("Neck angle", "neck_angle_target"),
    ("All strings pull", "string_pull_total"),
)
STRINGS = (
    ("thick", "strings_gauges"),
    ("sounds", "strings_frequency"),
    ("weighs", "string_weight"),
    ("pulls", "string_pull"),
    ("strength left", "string_reserve"),
    ("saddle back", "saddle_set_back"),
    ("nut slot over board", "nut_slot_over_board"),
)
HEIGHTS = (
    ("Action at fret 12, each string", "action_wanted"),
    ("Relief", "heights_relief"),
    ("String over the crest plane at the saddle", "height_at_saddle"),
    ("Neck angle", "neck_angle_target"),
    ("Straightedge over the bridge", "neck_set_straightedge"),
    ("Wedge at the heel", "heel_wedge"),
    ("Saddle showing", "saddle_exposed"),
)
CUT_LISTS = (
    ("Board: pieces in stock that yield it, and what each has over", "blank_options"),
    ("Neck", "plank_pieces"),
    ("Braces and other sticks", "stick_list"),
)
"""Words, and the dimension that lists the pieces as records."""
WOOD_UNITS = {"density": "kg/m³", "modulus": "MPa", "strength_across": "MPa"} | dict.fromkeys(
    ("shrinkage_radial", "shrinkage_tangential", "shrinkage_volumetric"), "%"
)
"""Units of a wood's figures; the rest are plain ratios, movement a part of the size for each % of moisture."""
PICTURES = ("face-plan", "board")
"""What the title page shows: the first of these that has anything on it."""


def build_book_pdf(shower: Shower, drawings: Mapping[str, str], title: str, paper: Paper = "a4") -> bytes:
    """The whole book; `drawings` holds SVG text by drawing name. The same bytes for the same input."""
    figures = shower.figures
    return sheets_pdf(setups_of(figures), shower, drawings, title, paper, tuple(front_pages(shower, drawings, title)))


def front_pages(shower: Shower, drawings: Mapping[str, str], title: str) -> Iterator[FrontPage]:
    """The pages ahead of the sheets, in order."""
    figures = shower.figures
    facts = [[words, *shower.both(address)] for words, address in FACTS]
    picture = next((name for name in PICTURES if name in drawings), "")
    yield _page(figures["instrument_name"], [_table("", ["", "", ""], facts, (2, 2, 2))], picture, 150)
    yield _page("What was found", [_findings(shower)])
    yield _page("Strings", [_strings(shower)])
    heights = [[words, *shower.both(address)] for words, address in HEIGHTS]
    yield _page("Heights", [_table("", ["", "", ""], heights, (3, 2, 2))], "heights", 120)
    lists = [table for words, name in CUT_LISTS for table in _cut_list(words, figures, name, shower)]
    yield _page("Cut lists", lists)
    yield _page("Woods", [_wood(name) for name in _woods(figures)])
    yield _page("Dimensions by part", list(_dimensions(shower)))


def _page(title: str, tables: Sequence[FrontTable], drawing: str = "", tall: float = 0) -> FrontPage:
    return FrontPage(title=safe(title), drawing=drawing if tall else "", tall=tall, lines=[], tables=list(tables))


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
        for each in findings_of(shower.figures)
        if each.severity != "fine"
    ]
    return _table("", ["", "what", "is", "limit", "and then"], rows, (1.6, 2.4, 1.8, 1.6, 6), words=True)


def _strings(shower: Shower) -> FrontTable:
    count = shower.figures["strings_count"]
    rows = [[str(number), *(shower.text(f"{name}[{number}]") for _, name in STRINGS)] for number in range(1, count + 1)]
    return _table("", ["string", *(words for words, _ in STRINGS)], rows, (1, *(2 for _ in STRINGS)))


def _cut_list(words: str, figures: Figures, name: str, shower: Shower) -> Iterator[FrontTable]:
    pieces = figures[name]
    if not pieces:
        return
    names = [each.name for each in fields(pieces[0]) if isinstance(getattr(pieces[0], each.name), str | float | int)]
    rows = [[shower.text(f'{name}["{piece.name}"].{each}') for each in names] for piece in pieces]
    yield _table(words, [each.replace("_", " ") for each in names], rows, [2, *(1 for _ in names[1:])], words=True)


def _woods(figures: Figures) -> list[str]:
    """The woods that the description names, each once: the board's, and those of the pieces in the cut lists."""
    named = [figures["board_wood"]]
    for _, name in CUT_LISTS[1:]:
        named += [piece.wood for piece in figures[name] if hasattr(piece, "wood")]
    return list(dict.fromkeys(named))


def _wood(name: str) -> FrontTable:
    heads = [name, "", "from"]
    try:
        species = find_species(name)
    except MakersFault as fault:
        return _table("", heads, [[str(fault), "", ""]], (4, 2, 4), words=True)
    return _table("", heads, [list(row) for row in _properties(species)], (4, 2, 4), words=True)


def _properties(species: Species) -> Iterator[tuple[str, str, str]]:
    for each in fields(species):
        value, words = getattr(species, each.name), each.name.replace("_", " ")
        if isinstance(value, Published):
            yield words, f"{value.value:g} {WOOD_UNITS.get(each.name, '')}".strip(), _seen(value)
        elif isinstance(value, Remark):
            yield words, value.text, _seen(value)


def _seen(figure: Published | Remark) -> str:
    return f"{cited(figure.source)} ({figure.flag})"


def _dimensions(shower: Shower) -> Iterator[FrontTable]:
    found = sorted(headings(shower.figures, dimensions_of(shower.figures)), key=lambda each: each.part)
    for part, group in groupby(found, key=lambda each: each.part):
        rows = [row for each in group if (row := _dimension(shower, each.name, each.what))]
        if rows:
            yield _table(part.capitalize(), ["", "", "", "source"], rows, (6, 3, 3, 2.4), words=True)


def _dimension(shower: Shower, name: str, what: str) -> list[str]:
    """A dimension's row; none for records, which stand in the lists, and for what is not known."""
    figures = shower.figures
    if figures.unit_at(name) is None or shower.text(name) == NOT_KNOWN:
        return []
    source = read_doc(figures.graph.dimensions[name].what).source.split(";")[0].split(":")[0]
    return [what.split(".")[0].split(":")[0], *shower.both(name), source]
