"""The table of dimensions as a spreadsheet takes it."""

import csv
import io
from itertools import pairwise

import pytest

from gramil.formatter import formatter_of
from gramil.prints.whole import dimensions_of, figures_of_files
from gramil.writers.tables import dimensions_csv

from ..conftest import EXAMPLES


@pytest.fixture(scope="module")
def tables() -> dict[str, str]:
    figures = figures_of_files(EXAMPLES / "mere.toml", EXAMPLES / "shop.toml")
    formatter, names = formatter_of(figures), dimensions_of(figures)
    return {each: dimensions_csv(figures, formatter, names, each) for each in (",", ";", "tab")}


def rows(text: str, delimiter: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text.removeprefix("\ufeff")), delimiter=delimiter))


def test_it_says_that_it_is_utf_8_and_is_sorted_by_part(tables: dict[str, str]) -> None:
    assert tables[","].encode("utf-8").startswith(b"\xef\xbb\xbf")
    parts = [row["part"] for row in rows(tables[","], ",")]
    assert all(one <= other for one, other in pairwise(parts))


def test_numbers_stand_apart_from_words(tables: dict[str, str]) -> None:
    for row in rows(tables[","], ","):
        assert bool(row["number"]) != bool(row["words"]) or row["words"] == row["number"] == "", row
        if row["number"]:
            float(row["number"])


def test_with_semicolons_numbers_have_a_decimal_comma(tables: dict[str, str]) -> None:
    """The same rows, and the same numbers, whatever parts them."""
    plain, german, tabs = rows(tables[","], ","), rows(tables[";"], ";"), rows(tables["tab"], "\t")
    assert plain == tabs
    assert [row["number"].replace(",", ".") for row in german] == [row["number"] for row in plain]
    assert not any("." in row["number"] for row in german)
