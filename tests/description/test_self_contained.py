"""A description whose drawings became points in its text, its scale table cents: the same, with no file beside it."""

import re
import tomllib
from pathlib import Path

import numpy as np
import pytest

from gramil.description.base import base_values
from gramil.description.reading import parse_description, read_shop
from gramil.description.self_contained import self_contained, with_outline
from gramil.description.writing import new_description
from gramil.faults import MakersFault
from gramil.measure import LengthUnit

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


HALF = [(0.0, 0.0), (0.0, 38.0), (45.0, 119.0), (185.0, 117.0), (350.0, 186.0), (455.0, 131.0), (490.0, 0.0)]


@pytest.mark.parametrize(("name", "unit"), [("tarn", "mm"), ("fell", "in")])
def test_a_traced_outline_takes_the_place_of_the_one_described_and_says_how_near_it_is(
    name: str, unit: LengthUnit
) -> None:
    text = with_outline((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8"), HALF, (1,), 0.2, unit)
    described = parse_description(text)
    body = described.instrument.body
    assert (body.outline, body.file) == (None, None)
    assert np.allclose(body.points, HALF)
    assert body.corners == (2,)
    assert body.traced_within == pytest.approx(0.2)
    note = base_values(described, read_shop()).origins["body_outlines"].note
    assert note == "from a photograph or a scan, within 0.20 mm"


def test_how_near_it_is_goes_with_points_alone() -> None:
    with pytest.raises(MakersFault, match="traced_within goes with points"):
        parse_description(TARN.replace("[body]", "[body]\ntraced_within = 0.2"))
