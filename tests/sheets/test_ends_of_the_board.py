"""The board's ends: slanted where the frets fan, past the zero line where a zero fret is; each sheet says which."""

import re
from collections.abc import Callable

import pytest

from gramil.description.reading import parse_description
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.sheets.own_sheet import sheet_named
from gramil.sheets.sheet_pages import sheet_text
from gramil.shop.operations import needed
from gramil.shop.operations_file import usual_work

Words = Callable[[str, str], str]
SQUARE, FANNED = "tarn", "scree"
ZERO = "+ zero fret"


@pytest.fixture
def words(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Words:
    """All that stands on a sheet of an example, by its name, with a zero fret if that is asked for."""

    def on(sheet: str, instrument: str) -> str:
        name, _, zero = instrument.partition(" ")
        text = text_of(name)
        if zero:
            text = re.sub(r"^zero_fret = .*\n", "", text, flags=re.MULTILINE)
            text = text.replace("[scale]\n", "[scale]\nzero_fret = true\n")
        figures = derive_text(text, text_of("shop"))
        page = sheet_named(sheet, figures, needed(usual_work(), parse_description(text).instrument))
        return str(sheet_text(page, Formatter(figures))).replace("\N{NO-BREAK SPACE}", " ")

    return on


@pytest.mark.parametrize("instrument", [f"{SQUARE} {ZERO}", f"{FANNED} {ZERO}"])
def test_a_board_with_a_zero_fret_is_not_proved_by_half_its_scale(words: Words, instrument: str) -> None:
    """Half the scale from fret 12 is the zero fret's own slot: an end cut there has lost it."""
    said = words("nut_end_cut", instrument)
    assert "half the scale" not in said
    assert "the zero fret's slot" in said
    assert "toward the head is negative" in said


def test_an_end_that_slants_is_proved_at_both_edges(words: Words) -> None:
    for instrument in (FANNED, f"{FANNED} {ZERO}"):
        said = words("nut_end_cut", instrument)
        assert "slanted line" in said
        assert "at both edges" in said
    assert "slant" not in words("nut_end_cut", SQUARE)
    assert "alongside the last fret" in words("tail_end_cut", FANNED)


def test_nobody_is_told_to_square_a_zero_line_that_slants(words: Words) -> None:
    assert "Square the zero line" in words("layout", SQUARE)
    said = words("layout", FANNED)
    assert "Square the zero line" not in said
    assert "zero line itself slants" in said


def test_a_slanted_nut_is_measured_from_where_it_crosses_the_centreline(words: Words) -> None:
    assert "Nut's face, on the centreline, to the first string's post" in words("neck-head", FANNED)
    assert "on the centreline, to" not in words("neck-head", SQUARE)


def test_a_figure_that_may_be_negative_says_what_that_means(words: Words) -> None:
    assert "if negative wood in the way" in words("board_trued", SQUARE)
