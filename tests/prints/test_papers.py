"""Papers: what is told as differing is exactly what differs in what the maker gets, over every key that is changed.

The oracle is the SVG text of every drawing and the typesetter's input of every sheet and page, before and after; the
lines that stand alike on every page (the instrument's, the revision) and the name are left out.
"""

import re
import tomllib
from importlib.resources import files

import pytest

from gramil import names as n
from gramil.description.reading import parse_description, parse_shop
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.prints.book_pages import front_pages
from gramil.prints.pages import page_text
from gramil.prints.papers import ON_SHEETS, papers_that_differ
from gramil.prints.whole import drawings_of, figures_of, setups_of
from gramil.show import shower_of
from gramil.writers.svg import svg_text

from .every_key import INSTRUMENT, SHOP, changes

EXAMPLES = files("gramil") / "data" / "examples"
NUMBER = re.compile(r"(-?\d+(?:\.\d+)?)")
FRAME = re.compile(r'<svg [^>]*>|<g id="hatch".*?</g>', re.DOTALL)
"""What follows from the marks: the size of the sheet about them, and how many lines a hatch takes."""
PORTIONS = 8
"""In so many runs each walk is shared out, so that several processors can take them."""
HAIR = 0.00099
"""Coordinates, of three decimals and more, that differ by no more than this in mm are drawn alike."""
TARN = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8")
THE_SHOP = (EXAMPLES / "shop.toml").read_text(encoding="utf-8")


def given(figures: Figures) -> dict[str, object]:
    """All that the maker gets, by paper."""
    shower = shower_of(figures)
    svg = {each.name: svg_text(each, shower.text) for each in drawings_of(figures)}
    svg = {name: text.replace(f"{figures[n.instrument_name]}, ", "") for name, text in svg.items()}
    needed = [setup for setup in setups_of(figures) if not setup.closed]
    sheets = {
        f"sheet {setup.name}": (
            page_text(setup, shower),
            svg.get("" if setup.drawing is None else figures[setup.drawing].name),
        )
        for setup in needed
    }
    pages = {page["title"]: page for page in front_pages(shower) if page["title"] != figures[n.instrument_name]}
    return {**{name: text for name, text in svg.items() if not name.startswith(ON_SHEETS)}, **sheets, **pages}


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


@pytest.mark.parametrize("portion", range(PORTIONS))
@pytest.mark.parametrize("of", ["instrument", "shop"])
def test_what_differs_is_told_and_nothing_else(of: str, portion: int) -> None:
    text, model = (TARN, INSTRUMENT) if of == "instrument" else (THE_SHOP, SHOP)
    old = read(TARN, THE_SHOP)
    assert old is not None
    before, wrong, tried = given(old), {}, 0
    for what, changed in list(changes(tomllib.loads(text), model))[portion::PORTIONS]:
        new = read(changed, THE_SHOP) if of == "instrument" else read(TARN, changed)
        if new is None:
            continue
        tried += 1
        papers = papers_that_differ(old, new)
        told = {f"sheet {paper.name}" if paper.kind == "sheet" else paper.name for paper in papers}
        told -= {new[n.instrument_name]}
        is_so = differing(before, given(new))
        if told != is_so:
            wrong[what] = {"untold": sorted(is_so - told), "in vain": sorted(told - is_so)}
    assert tried > 100 / PORTIONS
    assert not wrong, "\n".join(f"{what}: {how}" for what, how in wrong.items())
