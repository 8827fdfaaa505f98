"""The cut list as a spreadsheet takes it: the pieces that the build book lists, their sizes in the shop's unit."""

import csv
import io

import pytest

from gramil import names as n
from gramil.description.reading import parse_description, parse_shop
from gramil.description.writing import set_key
from gramil.formatter import formatter_of
from gramil.graph import Figures
from gramil.prints.book_pages import front_pages
from gramil.prints.papers import papers_that_differ
from gramil.prints.whole import figures_of, figures_of_files
from gramil.writers.cut_list import cut_list_csv

from ..conftest import EXAMPLES


def rows(figures: Figures) -> list[dict[str, str]]:
    text = cut_list_csv(formatter_of(figures)).decode("utf-8-sig")
    return list(csv.DictReader(io.StringIO(text)))


def of(name: str) -> Figures:
    return figures_of_files(EXAMPLES / f"{name}.toml", EXAMPLES / "shop.toml")


@pytest.fixture(scope="module")
def tarn() -> Figures:
    return of("tarn")


def test_sizes_that_the_maker_wrote_come_out_as_written(tarn: Figures) -> None:
    """`tarn.toml` has a bridge 152 x 33 x 9 mm, walnut sides 2.1 mm thick, and bindings of persimmon 2 mm thick."""
    found = {row["piece"]: row for row in rows(tarn)}
    bridge = found["Bridge"]
    assert [float(bridge[each]) for each in ("length", "width", "thickness")] == [152.0, 33.0, 9.0]
    sides = found["Sides, bookmatched"]
    assert (sides["pieces"], sides["wood"], float(sides["thickness"]), sides["unit"]) == ("2", "walnut", 2.1, "mm")
    strips = found["top binding"]
    assert (strips["pieces"], strips["wood"], float(strips["thickness"])) == ("2", "persimmon", 2.0)


def test_an_inch_shop_gets_inches() -> None:
    """`fell.toml` has its back 0.105 in thick."""
    found = {row["piece"]: row for row in rows(of("fell"))}
    assert (float(found["Back, joined"]["thickness"]), found["Back, joined"]["unit"]) == (0.105, "in")
    assert {row["unit"] for row in found.values()} == {"in"}


@pytest.mark.parametrize("name", ["tarn", "fell", "scree", "mere", "corrie"])
def test_every_piece_of_the_book_is_there_and_every_cell_but_the_wood_is_filled(name: str) -> None:
    figures = of(name)
    listed = rows(figures)
    page = next(each for each in front_pages(formatter_of(figures)) if each["title"] == "Cut lists and woods")
    tables = {table["title"]: table["rows"] for table in page["tables"]}
    wanted = [row[0] for words in ("Single pieces", "Neck", "Braces and other sticks") for row in tables.get(words, ())]
    pieces = [row["piece"].removeprefix("Neck: ") for row in listed]
    assert pieces == [each.replace("\u200b", "") for each in wanted] + [strip.name for strip in figures[n.strip_list]]
    for row in listed:
        assert row["instrument"] == figures[n.instrument_name]
        assert int(row["pieces"]) >= 1
        assert all(float(row[size]) > 0 for size in ("length", "width", "thickness")), row


def test_a_guitar_that_came_in_has_nothing_to_cut() -> None:
    assert rows(of("moor")) == []


@pytest.mark.parametrize(
    ("key", "value"), [("top.wood", '"cedar"'), ("bridge.thickness", '"8 mm"'), ("top_binding.thickness", '"1.5 mm"')]
)
def test_a_change_of_it_is_told_with_the_pages_that_list_the_same(key: str, value: str) -> None:
    text, shop = ((EXAMPLES / f"{each}.toml").read_text(encoding="utf-8") for each in ("tarn", "shop"))
    was, now = (figures_of(parse_description(each), parse_shop(shop)) for each in (text, set_key(text, key, value)))
    assert rows(was) != rows(now)
    assert {each.name for each in papers_that_differ(was, now)} & {"Cut lists and woods", "Body and braces"}
