"""The build book holds the instrument's figures, its lists and every sheet, and is the same bytes each time."""

import io
import re
import shutil
import subprocess
from importlib.resources import as_file, files

import pikepdf
import pytest
from tests.walks import these

from gramil.formatter import formatter_of
from gramil.graph import Figures
from gramil.pack import build_book
from gramil.prints.book_pages import front_pages
from gramil.prints.whole import figures_of_files, setups_of
from gramil.shop.operations_file import usual_work
from gramil.sources import cited

EXAMPLES = files("gramil") / "data" / "examples"


@pytest.fixture(scope="module", params=these(["tarn", "fell", "scree"], ["tarn"]))
def figures(request: pytest.FixtureRequest) -> Figures:
    with as_file(files("gramil") / "data" / "examples") as examples:
        return figures_of_files(examples / f"{request.param}.toml", examples / "shop.toml")


@pytest.fixture(scope="module")
def made(figures: Figures) -> bytes:
    return build_book(figures, formatter_of(figures), usual_work(), "a4")


def test_every_sheet_follows_the_front_pages(figures: Figures, made: bytes) -> None:
    assert made == build_book(figures, formatter_of(figures), usual_work(), "a4")
    needed = [setup for setup in setups_of(figures) if not setup.closed]
    front = list(front_pages(formatter_of(figures)))
    with pikepdf.open(io.BytesIO(made)) as book:
        assert len(book.pages) >= len(front) + 1 + len(needed)


def test_front_pages_hold_figures_lists_and_sources(figures: Figures) -> None:
    formatter = formatter_of(figures)
    pages = {page["title"]: page for page in front_pages(formatter)}
    said = {title: re.sub("\u200b", "", str(page["tables"])).replace("\\xa0", " ") for title, page in pages.items()}
    assert formatter.text("string_pull_said") in said[figures["instrument_name"]]
    assert formatter.text("scale_bass") in said[figures["instrument_name"]]
    assert formatter.text("scale_treble") in said[figures["instrument_name"]]
    for number in range(1, figures["strings_count"] + 1):
        assert formatter.text(f"string_pull[{number}]") in said["Heights and strings"]
    assert all(brace.name in said["Cut lists and woods"] for brace in figures["stick_list"])
    assert formatter.text("slot_depth_setting") in said["Dimensions by part"]
    assert cited("equal_temperament").split(",")[0] in said["Dimensions by part"]
    assert figures["board_wood"] in said["Cut lists and woods"]
    single = next(table for table in pages["Cut lists and woods"]["tables"] if table["title"] == "Single pieces")
    woods = {row[0]: row[-1] for row in single["rows"]}
    assert woods["Board's blank"] == figures["board_wood"]
    assert woods.get("Back, joined", figures["body_side_wood"]) == figures["body_side_wood"]
    ways = pages["Board and neck"]["tables"][0]
    assert len(ways["rows"]) == 4
    chosen = next(row for row in ways["rows"] if row[0] == f"{figures['slots_bottom']}, {figures['slots_cut']}")
    assert formatter.text("slot_depth_setting") == chosen[1].replace("\xa0", " ")


@pytest.mark.skipif(shutil.which("pdftotext") is None, reason="pdftotext is not installed")
def test_the_printed_words(figures: Figures, made: bytes) -> None:
    text = subprocess.run(["pdftotext", "-", "-"], input=made, capture_output=True, check=True).stdout.decode()
    for heading in ("What was found", "Heights and strings", "Strings", "Cut lists and woods", "Order of work"):
        assert heading in text


def test_the_neck_and_its_wood_are_in_it(figures: Figures) -> None:
    formatter = formatter_of(figures)
    pages = {page["title"]: str(page["tables"]).replace("\\xa0", " ") for page in front_pages(formatter)}
    for piece in figures["plank_pieces"]:
        assert piece.name in pages["Cut lists and woods"]
        assert formatter.text(f'plank_pieces["{piece.name}"].length') in pages["Cut lists and woods"]
    assert figures["carve_wood"] in pages["Cut lists and woods"]


def test_every_woods_figure_names_a_source_of_the_list(figures: Figures) -> None:
    (woods,) = (page for page in front_pages(formatter_of(figures)) if page["title"] == "Cut lists and woods")
    assert all(table["rows"] for table in woods["tables"]), "no heading stands over nothing"
    tables = [table for table in woods["tables"] if table["heads"][1:] == ["", "source"]]
    numbers = [row[0] for table in woods["tables"] if table["title"] == "Sources" for row in table["rows"]]
    assert numbers == [str(number) for number in range(1, len(numbers) + 1)]
    marks = {row[2].split(",")[0] for table in tables for row in table["rows"] if row[0] != "not known"}
    assert marks == set(numbers)


def test_the_title_page_shows_plan_and_side(figures: Figures) -> None:
    assert next(iter(front_pages(formatter_of(figures))))["drawings"] == ["plan-face", "plan-side"]


def test_pieces_that_are_not_there_are_not_listed(figures: Figures) -> None:
    (lists,) = (page for page in front_pages(formatter_of(figures)) if page["title"] == "Cut lists and woods")
    single = {row[0] for row in lists["tables"][0]["rows"]}
    assert ("Sides, bookmatched" in single) == bool(figures["body_outlines"])
    assert {"Board's blank", "Bridge"} <= {name.replace("\u200b", "") for name in single}


def test_body_braces_and_stations_stand_in_lists(figures: Figures) -> None:
    formatter = formatter_of(figures)
    pages = {page["title"]: page for page in front_pages(formatter)}
    lists = [
        table for title in ("Body and braces", "Board and neck") if title in pages for table in pages[title]["tables"]
    ]
    said = str(lists).replace("\u200b", "").replace("\\xa0", " ")
    for station in figures["carve_stations"]:
        assert formatter.text(f'carve_stations["{station.name}"].whole') in said
    for brace in figures["brace_list"]:
        assert formatter.text(f'brace_list["{brace.name}"].stop_x') in said
    for bout in figures["body_bouts"]:
        assert formatter.text(f'body_bouts["{bout.name}"].width') in said


FULL = 0.4
"""At least this share of a page is used, counted to its lowest line."""


@pytest.mark.skipif(shutil.which("pdftotext") is None, reason="pdftotext is not installed")
def test_no_page_is_nearly_blank_but_the_last_and_no_heading_stands_alone_at_its_foot(made: bytes) -> None:
    told = subprocess.run(["pdftotext", "-bbox-layout", "-", "-"], input=made, capture_output=True, check=True).stdout
    ahead, _, _ = told.decode().partition(">Order</word>")
    for page in ahead.split("<page ")[1:-2]:
        tall = float(re.findall(r'height="([\d.]+)"', page)[0])
        found = re.findall(
            r'<line xMin="[\d.]+" yMin="([\d.]+)" xMax="[\d.]+" yMax="([\d.]+)">(.*?)</line>', page, re.S
        )
        foot = min(float(high) for high, _, words in found if ">Everything</word>" in words)
        lowest, words = max((float(low), words) for high, low, words in found if float(high) < foot - 1.0)
        assert lowest > FULL * tall, page[:200]
        assert ">Sources</word>" not in words


@pytest.mark.skipif(shutil.which("pdftotext") is None, reason="pdftotext is not installed")
def test_drawings_give_way_rather_than_send_a_row_of_the_title_page_on() -> None:
    """*Fell* on letter: the last of its facts had a page to itself."""
    with as_file(files("gramil") / "data" / "examples") as examples:
        fell = figures_of_files(examples / "fell.toml", examples / "shop.toml")
    book = build_book(fell, formatter_of(fell), usual_work(), "letter", with_sheets=False)
    told = subprocess.run(["pdftotext", "-layout", "-", "-"], input=book, capture_output=True, check=True).stdout
    first, second = told.decode().split("\f")[:2]
    assert "and at most at" in first
    assert "Top and back from the inside" in second


def test_every_tuner_stands_beside_the_head(figures: Figures) -> None:
    """Its place from the nut and the middle, and its string's bend: the drawing itself has no list on a page."""
    (page,) = [each for each in front_pages(formatter_of(figures)) if each["title"] == "Neck and head"]
    (tuners,) = page["tables"]
    text = formatter_of(figures).text
    wanted = [
        [str(row), text(f"head_posts_x[{row}]"), text(f"head_posts_y[{row}]"), text(f"head_sideways_bend[{row}]")]
        for row in range(1, figures["strings_count"] + 1)
    ]
    assert [[cell.replace("\u200b", "").replace("\xa0", " ") for cell in row] for row in tuners["rows"]] == wanted


def test_of_a_guitar_that_came_in_nothing_is_listed_that_is_made_already() -> None:
    """Its neck's sections stood on blank pages, and its board's blank among the pieces to cut."""
    with as_file(files("gramil") / "data" / "examples") as examples:
        moor = figures_of_files(examples / "moor.toml", examples / "shop.toml")
    titles = [page["title"] for page in front_pages(formatter_of(moor))]
    assert titles == ["Moor", "What was found", "Heights and strings", "Woods", "Dimensions by part"]
