"""`gramil new` with what a plan gives: braces, hole, bridge and head as tables, and a drawing by its layers."""

import tomllib
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from gramil.cli import new

from ..conftest import EXAMPLES
from ..description.plan import plans

BRACES = """name,plate,held_to,along_1,across_1,along_2,across_2,width
X,top,saddle,227,-66.6,407,133.2,7
bar,top,saddle,415,30,470,-60,6
"""


def run(folder: Path, *words: str) -> Result:
    return CliRunner().invoke(new.command, [str(folder / "wren.toml"), "--name", "Wren", "--usual", *words])


def made(folder: Path) -> dict[str, Any]:
    return tomllib.loads((folder / "wren.toml").read_text(encoding="utf-8"))


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "plan.dxf").write_text(plans.dxf(), encoding="utf-8")
    (tmp_path / "braces.csv").write_text(BRACES, encoding="utf-8")
    return tmp_path


def test_a_drawing_begins_a_guitar_and_a_table_goes_before_it(folder: Path) -> None:
    drawing = ("--plan", str(folder / "plan.dxf"))
    told = run(folder, "--start", "small", *drawing, "--hole", "150 mm, 90 mm")
    assert told.exit_code == 0, told.output
    assert "Left: 2 lines on DIMS." in told.output
    assert "Outline: 1 line on OUTLINE" in told.output
    text = made(folder)
    assert (text["soundhole"]["centre"], text["soundhole"]["diameter"]) == (150, 90)
    assert text["bridge"]["length"] == pytest.approx(152, abs=0.05)
    top = [each for each in text["brace"] if each["plate"] == "top"]
    assert [each.get("twin", False) for each in top] == [True, False]
    assert text["body"]["points"][-1] == pytest.approx([490, 0], abs=0.1)


def test_layers_are_named(folder: Path) -> None:
    words = ("--start", "small", "--plan", str(folder / "plan.dxf"), "--take", "outline=OUTLINE", "--take")
    told = run(folder, *words, "back braces=BACK_BRACES")
    assert told.exit_code == 0, told.output
    assert "Left: 2 lines on HOLE." in told.output
    assert [each["name"] for each in made(folder)["brace"] if each["plate"] == "back"] == ["back 1"]
    for wrong, said in (("hole=HOLES", "nothing is drawn on HOLES"), ("hole", "write PART=LAYER")):
        (folder / "wren.toml").unlink(missing_ok=True)
        refused = run(folder, *words, wrong)
        assert refused.exit_code != 0
        assert said in f"{refused.output}{refused.exception}"
        assert not (folder / "wren.toml").exists()


def test_ones_own_instrument_takes_a_plan(folder: Path) -> None:
    own = ("--from", str(EXAMPLES / "tarn.toml"))
    told = run(folder, *own, "--braces", str(folder / "braces.csv"), "--bridge", "150,32,8.5")
    assert told.exit_code == 0, told.output
    text, tarn = made(folder), tomllib.loads((EXAMPLES / "tarn.toml").read_text(encoding="utf-8"))
    assert text["bridge"]["front"] == 8.5
    assert text["body"] == tarn["body"]
    (x, bar) = (each for each in text["brace"] if each["plate"] == "top")
    assert x["ends"] == "scalloped"  # as Tarn's X has them
    assert x["height"] == 13
    assert bar["crosses"] == ["X"]
    assert "Out of the description for them: tone bar 1" in told.output


def test_a_brace_off_the_body_is_refused_in_words(folder: Path) -> None:
    (folder / "braces.csv").write_text(BRACES.replace("saddle", "body").replace("227", "827"), encoding="utf-8")
    refused = run(folder, "--start", "small", "--braces", str(folder / "braces.csv"))
    assert refused.exit_code != 0
    assert "inside the body" in str(refused.exception).lower()
