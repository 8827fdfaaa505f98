"""Rows of a CSV text: their lines, and what spreadsheets do to one."""

import pytest

from gramil.csv_text import named_rows, rows_of
from gramil.faults import MakersFault


@pytest.mark.parametrize("end", ["\n", "\r\n", "\r"])
def test_every_row_stands_after_its_line_whatever_ends_a_line(end: str) -> None:
    text = end.join(["\ufeffa,b", "", '1,"two', 'lines"', " , ", "3,4"])
    found = [(line, [cell.replace(end, "|") for cell in row]) for line, row in rows_of(text, "x.csv")]
    assert found == [(1, ["a", "b"]), (3, ["1", "two|lines"]), (6, ["3", "4"])]


def test_cells_go_by_their_columns_names_and_those_that_lack_are_empty() -> None:
    assert list(named_rows("x, Fret ,Position\n9,1,2,8\n9,3\n", "x.csv", ("fret", "position"))) == [
        (2, {"x": "9", "fret": "1", "position": "2"}),
        (3, {"x": "9", "fret": "3", "position": ""}),
    ]


@pytest.mark.parametrize(("text", "says"), [("", "empty"), ("a,b\n", "a, b"), ("fret,b\n", "fret, b")])
def test_a_heading_without_a_column_is_told(text: str, says: str) -> None:
    with pytest.raises(MakersFault, match=f"first line is {says}. Write fret,position"):
        list(named_rows(text, "x.csv", ("fret", "position")))


def test_what_is_no_csv_is_told_with_its_line() -> None:
    with pytest.raises(MakersFault, match=r"x\.csv:2: is not CSV"):
        list(rows_of("a\n" + "9" * 200_000, "x.csv"))
