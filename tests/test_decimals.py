"""Numbers as text: never minus zero, on any paper, in any verdict, list or line of a command."""

import re
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

import pytest

import gramil
from gramil.decimals import fixed, signed, twelve_digits
from gramil.findings.finding import in_words
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.prints.book_pages import front_pages
from gramil.prints.papers import one_print
from gramil.prints.whole import dimensions_of, findings_of, names_of
from gramil.rows import rows
from gramil.wood.restraint import held, verdict
from gramil.wood.species import find_species

MINUS_ZERO = re.compile(r"(?<![\w.,+\-])[-\N{MINUS SIGN}]0(?:\.0*)?(?![\d.]*[1-9])(?![\w-])")


@pytest.mark.parametrize(
    ("value", "plain", "with_sign"),
    [
        (-0.004, "0.00", "0.00"),
        (0.004, "0.00", "0.00"),
        (-0.0, "0.00", "0.00"),
        (-0.006, "-0.01", "-0.01"),
        (1.2, "1.20", "+1.20"),
    ],
)
def test_nothing_has_no_sign(value: float, plain: str, with_sign: str) -> None:
    assert (fixed(value, 2), signed(value, 2)) == (plain, with_sign)


def test_no_sign_is_written_but_by_the_one_that_leaves_it_off_nothing() -> None:
    """A format that always writes a sign writes it on nothing too."""
    signs = re.compile(r"\{[^{}]*:[^{}]*\+[\d.]*[fge]\}")
    root = Path(gramil.__file__).parent
    assert not [path.name for path in root.rglob("*.py") if signs.search(path.read_text(encoding="utf-8"))]


def texts(value: Any) -> Iterator[str]:
    """Every text in plain values that hold others."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        yield from (text for each in value.values() for text in texts(each))
    elif isinstance(value, tuple | list):
        yield from (text for each in value for text in texts(each))
    elif hasattr(value, "__dataclass_fields__"):
        yield from (text for name in value.__dataclass_fields__ for text in texts(getattr(value, name)))


@pytest.mark.parametrize("name", ["tarn", "fell", "scree", "mere"])
def test_no_text_of_any_paper_verdict_or_list_has_a_minus_zero(example: Callable[[str], Figures], name: str) -> None:
    figures = example(name)
    papers = [one_print(figures, each) for each in (*names_of(figures, "setup_"), *names_of(figures, "drawing_"))]
    said = list(texts([[*each.printed, *each.drawn] for each in papers if each is not None]))
    listed = list(rows(figures, dimensions_of(figures)))
    for first in ("mm", "in"):
        formatter = Formatter(figures, first)
        said += [text for each in listed for text in formatter.both_of(each.address, each.value, each.unit)]
        said += [formatter.text(each) for each in dimensions_of(figures)]
        said += list(texts([in_words(each, formatter) for each in findings_of(figures)]))
    said += list(texts(list(front_pages(Formatter(figures, figures["instrument_units"])))))
    assert len(said) > 3000
    assert not [each for each in said if MINUS_ZERO.search(each)]


def test_the_pattern_finds_what_it_is_to_find() -> None:
    for bad in ("-0.0 to -0.0 MPa", "by \N{MINUS SIGN}0.00 mm", "-0", "(-0.0)"):
        assert MINUS_ZERO.search(bad), bad
    for good in ("-0.01 mm", "M4-0", "0.00", "-0.5", "2026-0", "10-0"):
        assert not MINUS_ZERO.search(good), good


def test_wood_that_stays_as_it_is_holds_in_nothing_without_a_sign() -> None:
    why = verdict(held(find_species("Sitka spruce"), "radial", 9.0, 9.0)).why
    assert "0.0 to 0.0 MPa" in why
    assert not MINUS_ZERO.search(why)


@pytest.mark.parametrize(
    ("one", "other"),
    [(9.691458059006234, 9.691458059006235), (-0.0004416158876496273, -0.00044161588764962743), (0.1 + 0.2, 0.3)],
)
def test_what_programs_read_does_not_hang_on_how_a_python_adds_up(one: float, other: float) -> None:
    """Pairs that Python 3.11 and 3.12 gave for one figure."""
    assert one != other
    assert twelve_digits(one) == twelve_digits(other)
    assert twelve_digits(one) == pytest.approx(one, rel=1e-11)


@pytest.mark.parametrize("value", [0.0, 640.0, 3.175, -12.7, 1e-9, float("inf"), 123456789.125])
def test_a_number_of_few_digits_is_told_as_it_is(value: float) -> None:
    assert twelve_digits(value) == value
