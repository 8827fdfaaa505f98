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


@pytest.mark.parametrize("parter", [";", "\t"])
def test_what_a_spreadsheet_saves_where_a_comma_is_the_decimal_mark(parter: str) -> None:
    """Cells parted by semicolons or tabs, 35.4 mm as 35,4 mm, 25 1/2 in as 25,5 in; words keep their commas."""
    text = "\ufeff" + "\r\n".join(
        parter.join(row) for row in [('"fret"', "Position", "note"), ("1", "35,4 mm", "wide, clean"), ("2", "-0,5", "")]
    )
    assert list(named_rows(text, "x.csv", ("fret", "position"))) == [
        (2, {"fret": "1", "position": "35.4 mm", "note": "wide, clean"}),
        (3, {"fret": "2", "position": "-0.5", "note": ""}),
    ]


def test_where_numbers_have_points_a_comma_is_left_for_the_reader_of_numbers_to_question() -> None:
    rows = list(named_rows("fret;position\n1;35.4\n2;1,068.8\n", "x.csv", ("fret", "position")))
    assert [row["position"] for _, row in rows] == ["35.4", "1,068.8"]


@pytest.mark.parametrize(("text", "says"), [("", "empty"), ("a,b\n", "a, b"), ("fret,b\n", "fret, b")])
def test_a_heading_without_a_column_is_told(text: str, says: str) -> None:
    with pytest.raises(MakersFault, match=f"first line is {says}. Write fret,position"):
        list(named_rows(text, "x.csv", ("fret", "position")))


def test_what_is_no_csv_is_told_with_its_line() -> None:
    with pytest.raises(MakersFault, match=r"x\.csv:2: is not CSV"):
        list(rows_of("a\n" + "9" * 200_000, "x.csv"))
