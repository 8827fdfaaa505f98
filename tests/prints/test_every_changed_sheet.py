"""Every sheet that a change spoils is told, on each of the examples: the whole walk over every key is on one of them.

The oracle is what the maker gets: a sheet by the text that goes to the typesetter, and by its drawing's SVG.
"""

import re
from collections.abc import Callable, Mapping
from functools import cache

import pytest
from tests.walks import sample

from gramil import names as n
from gramil.change.shift import shift
from gramil.description.writing import set_key
from gramil.formatter import formatter_of
from gramil.graph import Figures
from gramil.prints.whole import drawings_of
from gramil.sheets.own_sheet import setup_sheets
from gramil.sheets.sheet_pages import sheet_text
from gramil.shop.operations_file import usual_work
from gramil.writers.svg import svg_text

CHANGES = (
    ("tarn", "scale.length", "650 mm"),
    ("tarn", "scale.join", "12"),
    ("tarn", "board.thickness", "6 mm"),
    ("tarn", "board.wood", "hornbeam"),
    ("tarn", "board.arch", "flat"),
    ("tarn", "nut.width", "46.5 mm"),
    ("tarn", "nut.set_forward", "0.4 mm"),
    ("tarn", "binding.thickness", "0"),
    ("tarn", "slots.cut", "after arching"),
    ("tarn", "slots.bottom", "follows the arch"),
    ("tarn", "wire.use", "large"),
    ("tarn", "body.wall", "2.4 mm"),
    ("fell", "scale.frets", "21"),
    ("fell", "board.level_underside", "false"),
    ("fell", "board.width", "2.3 in"),
    ("fell", "instrument.handed", "left"),
    ("scree", "scale.square_at", "9"),
    ("scree", "neck.depth_at_1", "22 mm"),
    ("scree", "binding.purfling", "1 mm"),
    ("mere", "scale.length", "640 mm"),
    ("mere", "heights.relief", "0.2 mm"),
    ("mere", "bridge.spread", "60 mm"),
    ("mere", "board.beyond_last_fret", "12 mm"),
)
Prints = Mapping[str, str]
FRAME = re.compile(r'<svg [^>]*>|<g id="hatch".*?</g>', re.DOTALL)
"""What follows from the marks: the size of the sheet about them, and how many lines a hatch takes."""
COORDINATE = re.compile(r"-?\d+\.?\d*(?=[\s\",a-zA-Z])")


def prints(figures: Figures) -> Prints:
    """What each sheet that is needed would print, by its title: its page, and its drawing."""
    formatter, name = formatter_of(figures), f"{figures[n.instrument_name]}, "
    drawn = {each.name: svg_text(each, formatter.said, captioned=False) for each in drawings_of(figures)}
    found = {}
    for sheet in setup_sheets(figures, usual_work()):
        page = sheet_text(sheet, formatter)
        picture = FRAME.sub("", drawn.get(page["drawing"], "").replace(name, ""))
        found[sheet.setup.title] = "" if sheet.setup.closed else f"{page} {picture}"
    return found


def otherwise(one: str, other: str) -> bool:
    """Whether two prints differ: in words, or in a coordinate by more than a thousandth of a millimetre."""
    if one == other:
        return False
    if COORDINATE.sub("", one) != COORDINATE.sub("", other):
        return True
    pairs = zip(COORDINATE.findall(one), COORDINATE.findall(other), strict=True)
    return any(abs(float(first) - float(second)) > 0.001 for first, second in pairs)


@pytest.fixture(scope="module")
def before(example: Callable[[str], Figures]) -> Callable[[str], tuple[Figures, Prints]]:
    """An example as it stands, with what it prints; worked out once."""

    @cache
    def found(name: str) -> tuple[Figures, Prints]:
        figures = example(name)
        return figures, prints(figures)

    return found


@pytest.mark.parametrize(("name", "key", "value"), sample(CHANGES, 2), ids=str)
def test_every_sheet_that_would_print_otherwise_is_told_and_no_other(
    name: str,
    key: str,
    value: str,
    before: Callable[[str], tuple[Figures, Prints]],
    text_of: Callable[[str], str],
    derive_text: Callable[..., Figures],
) -> None:
    old, was = before(name)
    new = derive_text(set_key(text_of(name), key, value), text_of("shop"))
    now = prints(new)
    differing = {title for title in was if otherwise(was[title], now[title])}
    told = {paper.title for paper in shift(old, new).papers if paper.kind == "sheet"}
    assert differing  # each of these changes spoils something
    assert differing - told == set()
    assert all(was[title] != now[title] for title in told)
