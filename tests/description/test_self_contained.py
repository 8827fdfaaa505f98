"""A description whose drawings became points in its text, its scale table cents: the same, with no file beside it."""

import re
import tomllib
from pathlib import Path

import numpy as np
import pytest

from gramil.description.reading import parse_description
from gramil.description.self_contained import self_contained
from gramil.description.writing import new_description
from gramil.faults import MakersFault

from ..conftest import EXAMPLES

TARN = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8")
BODY = '<svg xmlns="http://www.w3.org/2000/svg" width="480mm" height="300mm" viewBox="0 0 480 300">'
BODY += '<path d="M 0 150 L 20 40 L 200 60 L 460 10 L 480 150 L 460 290 L 200 240 L 20 260 Z"/></svg>'
HEAD = '<svg xmlns="http://www.w3.org/2000/svg" width="170mm" height="64mm" viewBox="0 0 170 64">'
HEAD += '<path d="M 0 10 L 160 0 L 170 32 L 160 64 L 0 54 Z"/></svg>'


def drawn(units: str) -> str:
    """A new board in a file of a unit, with its body and its head as drawings."""
    board = new_description({"instrument.units": units})
    tables = ['[body]\nfile = "body.svg"   # traced\nlayer = ""\n', '[head]\nfile = "head.svg"\nlength = "170 mm"\n']
    return "\n".join([board, *tables])


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "body.svg").write_text(BODY)
    (tmp_path / "head.svg").write_text(HEAD)
    return tmp_path


@pytest.mark.parametrize("units", ["mm", "in"])
def test_the_outlines_are_the_same_without_the_drawings(folder: Path, units: str) -> None:
    text = drawn(units)
    before = parse_description(text, "tarn.toml", folder)
    after = parse_description(self_contained(text, "tarn.toml", folder), "tarn.toml")
    np.testing.assert_array_equal(after.outlines[0].points, before.outlines[0].points)
    assert after.outlines[0].corners == before.outlines[0].corners
    np.testing.assert_array_equal(after.head.points, before.head.points)
    assert after.head.corners == before.head.corners


def test_the_pitches_are_the_same_without_the_scale_table(tmp_path: Path) -> None:
    """A fifth of 3/2 is 1200 log2(3/2) = 701.955 cents, of which no decimals end: it reads back to the last bit."""
    just = ["16/15", "9/8", "6/5", "5/4", "4/3", "45/32", "3/2", "8/5", "5/3", "9/5", "15/8", "2/1"]
    (tmp_path / "just.scl").write_text("\n".join(["just", "12", *just]))
    text = new_description({}).replace('"12-equal"', '"just.scl"')
    alone = self_contained(text, "tarn.toml", tmp_path)
    assert re.search(r"degrees = \[.*, 701\.95500086538\d*, .*, 1200\.0\] # from just\.scl", alone)
    assert "temperament" not in tomllib.loads(alone)["scale"]
    assert parse_description(alone).tuning.cents == parse_description(text, "tarn.toml", tmp_path).tuning.cents
    assert self_contained(alone, "tarn.toml", None) == alone


def test_a_text_without_drawings_stays_as_it_is() -> None:
    assert self_contained(TARN, "tarn.toml", None) == TARN


def test_a_drawing_that_is_not_there_is_told(tmp_path: Path) -> None:
    with pytest.raises(MakersFault, match="no such file beside the description"):
        self_contained(drawn("mm"), "tarn.toml", tmp_path)
