"""No sheet, page, verdict or drawing speaks of pins, posts, tone bars, rods or a neck's joint where there are none."""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass

import pytest

from gramil.description.instrument import Instrument
from gramil.description.reading import parse_description
from gramil.drawings.marks import Label, Mark, Span, Words
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.prints.book_pages import front_pages
from gramil.prints.whole import drawings_of, findings_of
from gramil.sheets.own_sheet import every_sheet
from gramil.sheets.sheet_pages import sheet_text
from gramil.shop.operations import Work, needed
from gramil.shop.operations_file import usual_work

ABSENT = re.compile(r"\b(pins?|posts?|tone bars?|(truss )?rods?|tenons?|neck block)\b", re.IGNORECASE)
OF_A_JIG = re.compile(r"(locating|index)[ -]pins?\b|pins? less blade|on its pins\b", re.IGNORECASE)
"""Pins that are there: a jig's, and those that hold a board in register while it is glued."""
OF_THE_TEMPLATE = ("template", "board_registered", "slot", "index-template")
"""Sheets on which a pin is the jig's, or the one that registers the board."""


@dataclass(frozen=True)
class Built:
    """An instrument with nylon strings, its figures and its work."""

    figures: Figures
    work: Work


@pytest.fixture(scope="module", params=["mere", "fell"])
def built(request: pytest.FixtureRequest, text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Built:
    """*Mere*, and *Fell* strung with nylon on a head with rollers."""
    text = text_of(request.param)
    if request.param == "fell":
        strung = 'plain = "nylon"\nwound = [4, 5, 6]\ngauges = [0.028, 0.032, 0.040, 0.029, 0.035, 0.043]'
        text = text.replace("gauges = [0.013, 0.017, 0.026, 0.035, 0.045, 0.056]", strung)
        text += '\n[head]\ntuners = "across"\n'
    instrument: Instrument = parse_description(text).instrument
    return Built(derive_text(text, text_of("shop")), needed(usual_work(), instrument))


def strings_in(page: object) -> Iterator[str]:
    """Every text in what a page says, in whatever it is held."""
    if isinstance(page, str):
        yield page.replace("\N{NO-BREAK SPACE}", " ")
    elif isinstance(page, dict):
        yield from (text for each in page.values() for text in strings_in(each))
    elif isinstance(page, tuple | list):
        yield from (text for each in page for text in strings_in(each))


def pages(built: Built) -> Iterator[tuple[str, object]]:
    """Every page by its name: sheets, those not needed with why, verdicts, work, and the build book's own."""
    show = Formatter(built.figures)
    for sheet in every_sheet(built.figures, built.work):
        closed = (sheet.setup.title, show.filled(sheet.setup.closed))
        yield sheet.setup.name, closed if sheet.setup.closed else sheet_text(sheet, show)
    for each in findings_of(built.figures):
        yield f"finding {each.name}", (each.name, show.filled(each.says), show.filled(each.remedy))
    for operation in built.work.operations.values():
        yield operation.name, (operation.what, operation.prove)
    for number, page in enumerate(front_pages(show)):
        yield f"front page {number}", page
    closed = {each.setup.name for each in every_sheet(built.figures, built.work) if each.setup.closed}
    for drawing in drawings_of(built.figures):
        if drawing.name.removeprefix("setup-") not in closed:
            yield drawing.name, (drawing.title, [words for mark in drawing.marks for words in words_of(mark)])


def words_of(mark: Mark) -> tuple[str, ...]:
    """What a mark on a drawing says, its figure left out."""
    match mark:
        case Words():
            return (mark.text,)
        case Label():
            return (mark.before, mark.after)
        case Span():
            return (mark.before,)
        case _:
            return ()


def test_no_page_speaks_of_what_is_not_there(built: Built) -> None:
    wrong = [
        (name, text)
        for name, page in pages(built)
        if name not in OF_THE_TEMPLATE
        for text in strings_in(page)
        if ABSENT.search(OF_A_JIG.sub("", text))
    ]
    assert wrong == []


def test_the_walk_would_find_such_words(example: Callable[[str], Figures]) -> None:
    """The same pages of a steel-string guitar with rod and pins are full of them."""
    steel = Built(example("tarn"), usual_work())
    found = {
        match.group().lower()
        for _, page in pages(steel)
        for text in strings_in(page)
        for match in ABSENT.finditer(text)
    }
    assert {"pins", "post", "truss rod", "rod"} <= found


def test_side_dots_alone_are_usual_for_nylon(built: Built, example: Callable[[str], Figures]) -> None:
    """No hole in the face, no work and no sheet for it; the edge has its dots, and steel has both."""
    assert built.figures["piece_markers"] == ()
    assert built.figures["piece_side_dots"]
    assert "markers_set" in built.work.left_out
    assert "side_dots_set" in built.work.operations
    assert example("tarn")["piece_markers"]
