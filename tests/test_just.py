"""A maker's day in one command: the templates and sheets that are named, and nothing else."""

import io
from importlib.resources import as_file, files
from pathlib import Path

import pikepdf
import pytest

from gramil.cli.options import opened_with_work
from gramil.cli.pack import write_pack
from gramil.faults import MakersFault
from gramil.formatter import Formatter
from gramil.pack import chosen_makers
from gramil.shop.operations import Work
from gramil.writers.files import write_files


@pytest.fixture(scope="module")
def opened() -> tuple[Formatter, Work]:
    with as_file(files("gramil") / "data" / "examples") as examples:
        _, formatter, work = opened_with_work(Path(examples / "tarn.toml"), Path(examples / "shop.toml"))
    return formatter, work


def sheets_in(pdf: bytes) -> int:
    with pikepdf.open(io.BytesIO(pdf)) as document:
        return len(document.pages)


def test_three_sheets_and_a_template_are_two_files(opened: tuple[Formatter, Work]) -> None:
    formatter, work = opened
    makers = chosen_makers(formatter.figures, formatter, work, ["neck-gauges", "slot", "taper", "ledge"], "letter")
    assert list(makers) == ["templates.pdf", "sheets.pdf"]
    assert sheets_in(makers["templates.pdf"]()) == 1
    assert 4 <= sheets_in(makers["sheets.pdf"]()) <= 7


def test_one_template_alone_asks_for_no_sheets(opened: tuple[Formatter, Work]) -> None:
    formatter, work = opened
    assert list(chosen_makers(formatter.figures, formatter, work, ["neck-gauges"], "a4")) == ["templates.pdf"]


def test_a_name_that_there_is_not_says_the_nearest(opened: tuple[Formatter, Work]) -> None:
    formatter, work = opened
    with pytest.raises(MakersFault, match="neck-gauges"):
        chosen_makers(formatter.figures, formatter, work, ["neck-gauge"], "a4")


def test_what_is_named_goes_beside_an_earlier_pack(opened: tuple[Formatter, Work], tmp_path: Path) -> None:
    formatter, work = opened
    earlier = {"board.dxf": b"one", "templates.pdf": b"of yesterday"}
    write_files(tmp_path, earlier)
    write_pack(formatter.figures, formatter, work, tmp_path, "a4", just=["neck-gauges"])
    assert (tmp_path / "board.dxf").read_bytes() == b"one"
    assert (tmp_path / "templates.pdf").read_bytes() != earlier["templates.pdf"]
