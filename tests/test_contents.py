"""The pack's folders and its page of contents: every file there once, every drawing pictured, every link leads on."""

import re
from collections.abc import Iterator, Mapping
from html import unescape
from importlib.resources import as_file, files
from itertools import pairwise
from pathlib import Path
from urllib.parse import unquote

import pytest

from gramil.cli.options import opened_with_work
from gramil.cli.pack import write_pack
from gramil.contents import what_is_in
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.notice import NOTICE
from gramil.pack import Maker, pack_makers
from gramil.prints.used_at import told_of
from gramil.prints.whole import names_of
from gramil.shop.operations import Work
from gramil.shop.operations_file import usual_work
from gramil.writers.files import LIST, write_files

Opened = tuple[Figures, Formatter, Work]


@pytest.fixture(scope="module", params=["tarn", "fell", "scree", "mere"])
def opened(request: pytest.FixtureRequest) -> Iterator[Opened]:
    with as_file(files("gramil") / "data" / "examples") as examples:
        yield opened_with_work(Path(examples / f"{request.param}.toml"), Path(examples / "shop.toml"))


@pytest.fixture(scope="module")
def makers(opened: Opened) -> Mapping[str, Maker]:
    return pack_makers(*opened, "a4")


@pytest.fixture(scope="module")
def page(makers: Mapping[str, Maker]) -> str:
    return makers["contents.html"]().decode()


def test_every_file_but_the_contents_lies_in_a_folder_by_what_is_done_with_it(makers: Mapping[str, Maker]) -> None:
    assert {name.partition("/")[0] for name in makers if name != "contents.html"} == {"cut", "print", "read"}
    plain = [name.rpartition("/")[2] for name in makers]
    assert len(plain) == len(set(plain))
    assert all(name.endswith(".pdf") for name in makers if name.startswith("print/"))


def test_the_page_of_contents_leads_to_every_file_and_to_nothing_else(makers: Mapping[str, Maker], page: str) -> None:
    links = {unquote(unescape(each)).partition("#")[0] for each in re.findall(r'(?:href|src)="([^"]*)"', page)}
    assert {each for each in links if not each.endswith("/")} == set(makers) - {"contents.html"}


def test_every_file_that_is_no_drawing_says_what_is_in_it(makers: Mapping[str, Maker]) -> None:
    drawn = {name.rpartition("/")[2].partition(".")[0] for name in makers if name.endswith((".dxf", ".svg"))}
    own = [name for name in makers if name.rpartition("/")[2].partition(".")[0] not in drawn - {"cents-map"}]
    assert len(own) > 6
    for name in own:
        assert name == "contents.html" or what_is_in(name.rpartition("/")[2]), f"a line in WHAT of contents.py: {name}"


def test_the_page_of_contents_promises_nothing(page: str) -> None:
    assert NOTICE in unescape(page)


def test_every_drawing_is_pictured_with_its_use_and_its_scale(makers: Mapping[str, Maker], page: str) -> None:
    sections = re.findall(r"<section>(.*?)</section>", page, re.DOTALL)
    pictured = [re.search(r'<img src="([^"]+)"', each) for each in sections]
    drawings = [name for name in makers if name.endswith(".svg") and name != "read/cents-map.svg"]
    assert sorted(each[1] for each in pictured if each) == sorted(drawings)
    for each in sections:
        assert "Used at: " in each, each
        assert "scale" in each or "life size" in each, each


def test_a_guitar_that_came_in_is_told_where_its_drawings_are_used(tmp_path: Path) -> None:
    """Its work has other names than a new one's, and only what is drawn of it is pictured."""
    text = (files("gramil") / "data" / "examples" / "tarn.toml").read_text(encoding="utf-8")
    (tmp_path / "old.toml").write_text(f"{text}\n[repair]\nreset = true\n", encoding="utf-8")
    with as_file(files("gramil") / "data" / "examples" / "shop.toml") as shop:
        makers = pack_makers(*opened_with_work(tmp_path / "old.toml", Path(shop)), "a4")
    sections = re.findall(r"<section>(.*?)</section>", makers["contents.html"]().decode(), re.DOTALL)
    assert sections
    assert [each for each in sections if "Used at: " not in each] == []


def test_pages_of_templates_follow_one_another_without_a_gap(page: str) -> None:
    said = re.findall(r"pages? (\d+)(?: to (\d+))? of the templates on A4", page)
    spans = sorted({(int(first), int(last or first)) for first, last in said})
    assert spans[0][0] == 1
    assert all(after[0] == before[1] + 1 for before, after in pairwise(spans))


def test_every_drawing_outside_the_sheets_says_where_it_is_used(opened: Opened) -> None:
    figures, _, _ = opened
    drawn = [figures[name] for name in names_of(figures, "drawing_")]
    named = {each.name: told_of(each, figures).used_at for each in drawn}
    assert [name for name, used in named.items() if bool(used) == name.startswith("setup-")] == []
    known = set(usual_work().operations)
    assert not {name for used in named.values() for name in used} - known


def test_a_pack_written_flat_gives_way_to_one_in_folders(tmp_path: Path) -> None:
    """What was ours and as we wrote it goes; what the maker changed or put there stays, and the first is told."""
    write_files(tmp_path, {"board.dxf": b"flat", "board.svg": b"flat too", "old/one.svg": b"in a folder"})
    (tmp_path / "board.svg").write_bytes(b"with my notes")
    (tmp_path / "mine.txt").write_bytes(b"mine")
    lines = write_pack({"cut/board.dxf": lambda: b"new", "cut/board.svg": lambda: b"new too"}, tmp_path)
    found = {each.relative_to(tmp_path).as_posix() for each in tmp_path.rglob("*") if each.name != LIST}
    assert found == {"cut", "cut/board.dxf", "cut/board.svg", "board.svg", "mine.txt"}
    assert (tmp_path / "board.svg").read_bytes() == b"with my notes"
    assert [line for line in lines if "left as it is" in line and "board.svg" in line]
    gone = [str(tmp_path / name) for name in ("board.dxf", "old/one.svg")]
    assert [line.removesuffix("  removed: no longer made") for line in lines if "removed" in line] == gone
