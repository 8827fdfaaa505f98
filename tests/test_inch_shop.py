"""An inch shop reads inches: every sheet, drawing, finding, reason and page of the book of four instruments is walked.

No millimetre, newton or degree Celsius is said anywhere; 64ths read back to their figure; a figure past its limit is
told in decimals that tell the two apart.
"""

import math
import re
from collections.abc import Callable, Iterator
from dataclasses import replace

import pytest
from tests.walks import sample

from gramil import names as n
from gramil.findings.finding import Finding, in_words
from gramil.formatter import Formatter, formatter_of
from gramil.graph import Figures
from gramil.measure import read_length
from gramil.prints.book_pages import front_pages
from gramil.prints.pages import page_text, safe
from gramil.prints.whole import dimensions_of, drawings_of, findings_of, setups_of
from gramil.reason import why
from gramil.rows import rows
from gramil.sources import cited, sources
from gramil.writers.beside import labels_on
from gramil.writers.lettering import Lettering
from gramil.writers.plain import caption, plain
from gramil.writers.svg import described

EXAMPLES = ("tarn", "fell", "scree", "mere")
METRIC = re.compile(r"\d\s*(?:mm|cm|MPa|N|N m|N mm)(?![\w-])|\bmm\b|millimet|\bnewton|°\s?C\b|\d C\b")
"""What an inch shop never reads."""
FRACTION = re.compile(r"(-?\d[\d.]*) in \((-?[\d/ ]+?(?: [+-] 0\.\d{3})?)\)")
"""Decimals and the 64ths beside them."""
HALF_A_64TH = 25.4 / 128
LAST_DIGIT = 0.0005 * 25.4
"""Half of the last digit of what is told to a thou, in mm."""


@pytest.fixture(scope="module", params=EXAMPLES)
def shop(request: pytest.FixtureRequest, example: Callable[[str], Figures]) -> Formatter:
    """An instrument as an inch shop that reads Fahrenheit has it: the same figures, said in its units."""
    figures = example(request.param)
    units = {"instrument_units": "in", "shop_units": "in", "shop_temperature": "F"}
    return formatter_of(figures.with_base({**figures.base, **units}))


def texts(value: object) -> Iterator[str]:
    """Every text in a page, however deep."""
    if isinstance(value, str):
        yield value.replace("\N{NO-BREAK SPACE}", " ").replace("\N{ZERO WIDTH SPACE}", "")
    elif isinstance(value, dict):
        yield from (text for each in value.values() for text in texts(each))
    elif isinstance(value, list | tuple):
        yield from (text for each in value for text in texts(each))


def on_sheets(shop: Formatter) -> Iterator[str]:
    for setup in setups_of(shop.figures):
        yield from texts(shop.filled(setup.closed) if setup.closed else page_text(setup, shop))


def on_drawings(shop: Formatter) -> Iterator[str]:
    drawings = drawings_of(shop.figures)
    labels = labels_on(drawings, shop)
    for drawing in drawings:
        marks = plain(drawing, labels)
        said = (*marks, *caption(drawing, marks, labels, "in"))
        yield from (each.text for each in said if isinstance(each, Lettering))
        yield described(drawing, labels, "in")


def in_findings(shop: Formatter) -> Iterator[str]:
    for each in findings_of(shop.figures):
        told = in_words(each, shop)
        yield from (told.says, told.remedy, told.shown, told.limit_shown, told.limit_from)


def in_reasons(shop: Formatter) -> Iterator[str]:
    for name in sample(dimensions_of(shop.figures), 4):
        reason = why(shop.figures, name, shop.text).said_in(shop.first)
        yield from (reason.what, reason.method, reason.numbers, *shop.both(name))
        yield from map(shop.origin, shop.figures.graph.inputs.keys() & {each.address for each in reason.follows})


def in_the_book(shop: Formatter) -> Iterator[str]:
    """The book's own pages, but for the names of published sources, which keep the units that they are known by."""
    published = {safe(cited(key)) for key in sources()}
    return (text for text in texts(list(front_pages(shop))) if text not in published)


WALKS = {"sheets": on_sheets, "drawings": on_drawings, "findings": in_findings, "why": in_reasons, "book": in_the_book}


@pytest.mark.parametrize("walk", WALKS.values(), ids=WALKS)
def test_nothing_is_said_in_millimetres_newtons_or_celsius(
    shop: Formatter, walk: Callable[[Formatter], Iterator[str]]
) -> None:
    said = list(walk(shop))
    assert any(" in" in each for each in said)
    assert [each for each in said if METRIC.search(each)] == []


def test_64ths_beside_a_figure_read_back_to_it(shop: Formatter) -> None:
    """Within half a 64th; with what is left over, within its last digit."""
    read = 0
    for row in rows(shop.figures, dimensions_of(shop.figures)):
        beside = shop.other(row.address)
        if " in" in beside and isinstance(row.value, float):
            near = LAST_DIGIT if re.search(r"[+-] 0", beside) else HALF_A_64TH
            assert abs(read_length(beside, "mm") - row.value) <= near + 1e-9, (row.address, row.value, beside)
            read += 1
    assert read > 50


def test_64ths_within_words_read_back_to_the_decimals_before_them(shop: Formatter) -> None:
    found = [pair for walk in (on_sheets, on_drawings) for text in walk(shop) for pair in FRACTION.findall(text)]
    assert len(found) > 20
    for decimals, fraction in found:
        number, _, left = fraction.partition(" +") if " +" in fraction else fraction.partition(" -")
        sign = "-" if " -" in fraction else "+"
        written = f"{number} in" + (f" {sign}{left}" if left else "")
        near = 2 * LAST_DIGIT if left else HALF_A_64TH + LAST_DIGIT
        assert abs(read_length(written, "mm") - float(decimals) * 25.4) <= near + 1e-9, (decimals, fraction)


def test_what_is_measured_with_a_rule_has_64ths_and_what_with_calipers_none(shop: Formatter) -> None:
    """An outline is known to half a millimetre, a thickness to a tenth; half a 64th is 0.198 mm."""
    assert shop.other(n.board_length).endswith(" in")
    assert shop.other(n.board_thickness) == ""


def test_the_tool_that_a_sheet_names_reads_what_it_says(shop: Formatter) -> None:
    """Where a sheet says rule and nothing else, 64ths stand beside the figure; where it says feelers, none do."""
    for setup in setups_of(shop.figures):
        for each in setup.figures:
            if shop.figures.unit_at(each.figure) == "mm" and math.isfinite(float(shop.figures.at(each.figure))):
                tool, beside = shop.filled(each.measured_with), shop.other(each.figure)
                assert beside or tool not in ("rule", "rule from the pack"), (each.figure, tool)
                assert not beside or not re.search(r"feeler|depth gauge|micrometer", tool), (each.figure, tool)


def test_a_figure_past_its_limit_never_shows_as_the_limit(shop: Formatter) -> None:
    told = [in_words(each, shop) for each in findings_of(shop.figures)]
    past = [each for each in told if each.severity in ("stop", "caution", "note") and each.limit_shown]
    assert [each.name for each in past if each.shown == each.limit_shown] == []


def test_a_hair_past_the_limit_is_told_apart_in_either_unit(shop: Formatter) -> None:
    """A figure a micrometre over its limit: two decimals of a millimetre and three of an inch show the two alike."""
    limit = float(shop.figures[n.limit_under_slot])
    board = n.board_thickness
    close = shop.figures.with_base({**shop.figures.base, "board_thickness": limit + 0.001})
    for first in ("mm", "in"):
        told = in_words(
            Finding("a hair", "caution", board, limit + 0.001, n.limit_under_slot, "So much."),
            replace(shop, figures=close, first=first),
        )
        assert told.shown != told.limit_shown
        unit = f" {first}"
        assert told.shown.endswith(unit)
        assert told.limit_shown.endswith(unit)


def test_a_dish_is_told_in_feet(shop: Formatter) -> None:
    if n.top_radius.address in shop.figures.base and shop.figures[n.top_radius] > 0:
        feet = float(shop.figures[n.top_radius]) / 304.8
        assert shop.other(n.top_radius) == f"{feet:.1f}".removesuffix(".0") + " ft"
