"""Papers: what is told as differing is exactly what differs in what the maker gets, over every key that is changed.

The oracle is the SVG text of every drawing and the typesetter's input of every sheet and page, before and after; the
lines that stand alike on every page (the instrument's, the revision) and the name are left out.
"""

import os
import re
import tomllib
from collections.abc import Container, Iterable, Iterator
from dataclasses import dataclass
from importlib.resources import files
from typing import Any
from zlib import crc32

import pytest

from gramil import names as n
from gramil.description.reading import parse_description, parse_shop
from gramil.faults import MakersFault
from gramil.findings.finding import in_words
from gramil.formatter import formatter_of
from gramil.graph import Figures, same
from gramil.prints.book_pages import front_pages
from gramil.prints.papers import ON_SHEETS, Paper, changed, papers_that_differ
from gramil.prints.whole import dimensions_of, drawings_of, figures_of, findings_of
from gramil.sheets.own_sheet import every_sheet, setup_sheets
from gramil.sheets.sheet_pages import book, sheet_text
from gramil.shop.operations import Work, needed
from gramil.shop.operations_file import usual_work
from gramil.writers.cents_map import cents_map_svg
from gramil.writers.svg import svg_text

from .every_key import INSTRUMENT, SHOP, changes
from .idle_keys import EVERYWHERE, IDLE

EXAMPLES = files("gramil") / "data" / "examples"
NUMBER = re.compile(r"(-?\d+(?:\.\d+)?)")
FRAME = re.compile(r'<svg [^>]*>|<g id="hatch".*?</g>', re.DOTALL)
"""What follows from the marks: the size of the sheet about them, and how many lines a hatch takes."""
PORTIONS = 3
"""In so many runs each walk is shared out, so that several processors can take them."""
HAIR = 0.00099
"""Coordinates, of three decimals and more, that differ by no more than this in mm are drawn alike."""
EVERY = ("tarn", "fell", "scree", "mere")
WHOLE_WALK = bool(os.environ.get("GRAMIL_WALK"))
"""Set by `make walk`: every example is walked, not one alone."""
WALKS = [(name, of) for name in (EVERY if WHOLE_WALK else EVERY[:1]) for of in ("instrument", "shop")]
THE_SHOP = (EXAMPLES / "shop.toml").read_text(encoding="utf-8")


def given(figures: Figures, work: Work) -> dict[str, object]:
    """All that the maker gets, by paper."""
    formatter = formatter_of(figures)
    svg = {each.name: svg_text(each, formatter.text) for each in drawings_of(figures)}
    svg = {name: text.replace(f"{figures[n.instrument_name]}, ", "") for name, text in svg.items()}
    found = every_sheet(figures, work)
    sheets = {
        f"sheet {sheet.setup.name}": (
            sheet_text(sheet, formatter),
            svg.get("" if sheet.setup.drawing is None else figures[sheet.setup.drawing].name),
        )
        for sheet in found
        if not sheet.setup.closed
    }
    order = [(row["title"], row["closed"]) for row in book(setup_sheets(figures, work), formatter, "")["order"]]
    also = {"Order of work": str(order), "cents-map": cents_map_svg(figures).replace(figures[n.instrument_name], "")}
    pages = {page["title"]: page for page in front_pages(formatter) if page["title"] != figures[n.instrument_name]}
    return {**{name: text for name, text in svg.items() if not name.startswith(ON_SHEETS)}, **sheets, **pages, **also}


def named(paper: Paper) -> str:
    """What a paper goes by among all of them: a sheet and a drawing may have one name."""
    return f"sheet {paper.name}" if paper.kind == "sheet" else paper.name


def drawn_alike(one: object, other: object) -> bool:
    """Whether two texts are the same but for coordinates that differ by less than a hair."""
    pieces, others = NUMBER.split(str(one)), NUMBER.split(str(other))
    if pieces[::2] != others[::2]:
        return False
    pairs = zip(pieces[1::2], others[1::2], strict=True)
    return all(a == b or (fine(a, b) and abs(float(a) - float(b)) <= HAIR) for a, b in pairs)


def fine(*numbers: str) -> bool:
    return any(len(number.partition(".")[2]) >= 3 for number in numbers)


def differing(old: dict[str, object], new: dict[str, object]) -> set[str]:
    return {name for name in {**old, **new} if otherwise(old.get(name), new.get(name))}


def otherwise(one: object, other: object) -> bool:
    """Whether a paper differs: its words by a letter, its drawing by more than a hair."""
    if isinstance(one, tuple) and isinstance(other, tuple):
        return any(map(otherwise, one, other))
    if isinstance(one, str) and isinstance(other, str):
        return not drawn_alike(FRAME.sub("", one), FRAME.sub("", other))
    return one != other


def read(text: str, shop: str) -> Figures | None:
    try:
        return figures_of(parse_description(text), parse_shop(shop))
    except MakersFault:
        return None


@dataclass(frozen=True)
class Tried:
    """One key changed: what would be printed otherwise, what is told so, and whether anything moved at all."""

    key: str
    what: str
    differs: frozenset[str]
    told: frozenset[str]
    moves: bool


def walked(name: str, of: str, only: Container[str] | None = None) -> Iterator[Tried]:
    """Every key of an example, or of its shop, or `only` some, changed in turn; what the reader refuses is left out."""
    own, model = (text_of(name), INSTRUMENT) if of == "instrument" else (THE_SHOP, SHOP)
    old = read(text_of(name), THE_SHOP)
    assert old is not None
    work = needed(usual_work(), parse_description(text_of(name)).instrument)
    before, said = given(old, work), verdicts(old)
    for what, text in changes(tomllib.loads(own), model):
        key = re.sub(r"\.\d+", "", what.partition(" = ")[0])
        if only is not None and key not in only:
            continue
        new = read(text, THE_SHOP) if of == "instrument" else read(text_of(name), text)
        if new is None:
            continue
        told = set(map(named, papers_that_differ(old, new, work)))
        told -= {new[n.instrument_name]}
        is_so = differing(before, given(new, work))
        moves = bool(is_so) or said != verdicts(new) or moved(old, new)
        yield Tried(key, what, frozenset(is_so), frozenset(told), moves)


def moved(old: Figures, new: Figures) -> bool:
    """Whether any figure that hangs on what was changed is another."""
    touched = old.graph.hung_from(changed(old, new))
    return any(not alike(old[each], new[each]) for each in dimensions_of(old) if each in touched)


def verdicts(figures: Figures) -> list[tuple[str, ...]]:
    """Every verdict as it is told, with its limit."""
    formatter = formatter_of(figures)
    limits = ("" if each.limit is None else formatter.text(each.limit) for each in findings_of(figures))
    words = (in_words(each, formatter) for each in findings_of(figures))
    return [(told.name, told.severity, told.says, limit) for told, limit in zip(words, limits, strict=True)]


def alike(one: Any, other: Any) -> bool:
    """Whether two figures are the same, records with arrays in them by what they say."""
    try:
        return same(one, other)
    except ValueError:
        return repr(one) == repr(other)


def text_of(name: str) -> str:
    return (EXAMPLES / f"{name}.toml").read_text(encoding="utf-8")


def idle(tried: Iterable[Tried]) -> set[str]:
    """The keys that were changed and moved nothing: no figure, no verdict, no paper."""
    found = [*tried]
    return {each.key for each in found} - {each.key for each in found if each.moves}


class Portion:
    """The keys that one run of several takes."""

    def __init__(self, number: int) -> None:
        self.number = number

    def __contains__(self, key: object) -> bool:
        return crc32(str(key).encode()) % PORTIONS == self.number


@pytest.mark.parametrize("number", range(PORTIONS))
@pytest.mark.parametrize(("name", "of"), WALKS)
def test_what_differs_is_told_and_nothing_else(name: str, of: str, number: int) -> None:
    """And on *Tarn*, what changes nothing at all has its reason; where it begins to move something its row goes."""
    portion = Portion(number)
    tried = tuple(walked(name, of, portion))
    wrong = {each.what: (each.differs - each.told, each.told - each.differs) for each in tried}
    told = [f"{what}: untold {sorted(un)}, in vain {sorted(vain)}" for what, (un, vain) in wrong.items() if un or vain]
    assert len(tried) > 100 / PORTIONS
    assert not told, "\n".join(told)
    if name == "tarn":
        assert sorted(idle(tried)) == sorted(key for key in listed(of) if key in portion), (
            "moves nothing without a reason, or moves in spite of one"
        )


def listed(of: str) -> set[str]:
    """The keys of a description that are said to change nothing."""
    assert all(why for _, why in IDLE.values())
    return {key for key, (whose, _) in IDLE.items() if whose == of}


@pytest.mark.skipif(not WHOLE_WALK, reason="the walk over all examples: make walk")
@pytest.mark.parametrize("of", ["instrument", "shop"])
def test_what_changes_nothing_on_any_example_says_so(of: str) -> None:
    """What *Tarn* does not have another example has; the rest are for what a description alone cannot show."""
    tried = [each for name in EVERY[1:] for each in walked(name, of, listed(of))]
    moved_elsewhere = {each.key for each in tried if each.moves}
    assert sorted(listed(of) - moved_elsewhere) == sorted(EVERYWHERE & listed(of))
