"""Offsets off a plan: a slip stands out against the smooth curve of the others, and sound ones do not."""

import tomllib
from importlib.resources import files
from pathlib import Path

import pytest
from click.testing import CliRunner

from gramil.cli import new
from gramil.description.plan.tables import outline_of
from gramil.description.whole.offsets import standing_out
from gramil.faults import MakersFault

EXAMPLES = files("gramil") / "data" / "examples"
PLAN = [
    *((0, 38), (12, 82), (30, 107.4), (45, 119), (70, 129.3), (95, 133), (118, 130.5), (140, 125), (162, 119.4)),
    *((185, 117), (207, 121), (230, 130), (257, 147.5), (285, 165), (317, 179.4), (350, 186), (380, 183.4)),
    *((410, 172), (435, 153), (455, 131), (470, 105), (482, 72), (490, 0)),
]
"""The body of Tarn, with stations between its own measured off its drawing."""


def as_csv(plan: list[tuple[float, float]]) -> str:
    return "station,half_width\n" + "".join(f"{x},{half}\n" for x, half in plan)


@pytest.mark.parametrize("name", ["tarn", "mere", "fell"])
def test_nothing_stands_out_of_a_sound_body(name: str) -> None:
    outline = tomllib.loads((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8"))["body"]["outline"]
    assert standing_out([(float(x), float(half)) for x, half in outline]) == ()
    assert standing_out(PLAN) == ()


@pytest.mark.parametrize("row", [3, 6, 9, 12, 15, 18])
@pytest.mark.parametrize("slip", [10.0, -10.0])
def test_a_wrong_number_stands_out_and_the_others_tell_what_it_was(row: int, slip: float) -> None:
    plan = [(float(x), float(half)) for x, half in PLAN]
    plan[row] = (plan[row][0], plan[row][1] + slip)
    ((found, there),) = standing_out(plan)
    assert found == row
    assert there == pytest.approx(PLAN[row][1], abs=2.0)


def test_offsets_are_read_in_the_files_unit() -> None:
    inches = "Station, Half_width\n" + "".join(f"{each},{each / 2 + 1}\n" for each in range(8))
    assert outline_of(inches, "plan.csv", "in").points[2] == pytest.approx((50.8, 50.8))


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("x,y\n0,1\n", "Write station,half_width"),
        (as_csv(PLAN[:4]), "4 stations"),
        (as_csv(PLAN).replace("117", "wide"), "plan.csv:11"),
        (as_csv([PLAN[1], PLAN[0], *PLAN[2:]]), "comes after"),
        (as_csv([*PLAN[:5], (95, -133), *PLAN[6:]]), "-133"),
    ],
)
def test_what_cannot_be_is_refused(text: str, told: str) -> None:
    with pytest.raises(MakersFault, match=told):
        outline_of(text, "plan.csv", "mm")


def test_a_slip_is_asked_about_and_the_rest_is_written(tmp_path: Path) -> None:
    (tmp_path / "plan.csv").write_text(as_csv(PLAN).replace("285,165", "285,156"), encoding="utf-8")
    words = [str(tmp_path / "moss.toml"), "--start", "small", "--offsets", str(tmp_path / "plan.csv")]
    told = CliRunner().invoke(new.command, words, input="\n" * 7 + "165\n")
    assert told.exit_code == 0, told.output
    assert "At station 285.00 mm the half-width 156.00 mm stands out" in told.output
    outline = tomllib.loads((tmp_path / "moss.toml").read_text(encoding="utf-8"))["body"]["outline"]
    assert outline == [list(each) for each in PLAN]
