"""Addresses in a maker's own list of operations: each fault is told with its line, and what might be meant."""

from collections.abc import Callable
from importlib.resources import files
from pathlib import Path

import pytest
from click.testing import CliRunner

from gramil.cli.done import command as done
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.prints.own_addresses import checked_work, wrong_addresses

EXAMPLES = Path(str(files("gramil") / "data" / "examples"))
LIST = """
[operation.head_inlaid]
what = "Let the inlay into the head"
part = "neck"
hands = 240
figures = [
  "head_thickness",
  {figure},
]
measure = ["fret_position[12]"]
"""


def wrong(address: str, figures: Figures | None = None) -> list[str]:
    """What is said of a list with one address in its eighth line."""
    quote = "'" if '"' in address else '"'
    text = LIST.replace("{figure}", f"{quote}{address}{quote}")
    return [str(each) for each in wrong_addresses(("own.toml", text), figures)]


@pytest.mark.parametrize(
    ("address", "said"),
    [
        ("fret_postion[3]", "there is no figure fret_postion"),
        ("fret position", "fret position is no address"),
        ("fret_position[3, 1]", "fret_position[3, 1] is not a single figure"),
        ('fret_position["third"]', 'fret_position["third"] is not a single figure'),
        ("height_over_crown[1]", "height_over_crown[1] is not a single figure"),
        ("board_thickness[2]", "board_thickness[2]: there is nothing to count in it"),
        ("board_thickness.most", "board_thickness.most: there is no .most"),
        ('brace_list["X treble"].hieght', 'brace_list["X treble"].hieght: there is no .hieght'),
    ],
)
def test_what_no_instrument_has_is_told_with_its_line(address: str, said: str) -> None:
    (fault,) = wrong(address)
    assert fault.startswith("own.toml:8: operation.head_inlaid.figures: " + said)


@pytest.mark.parametrize(
    ("address", "said"),
    [
        ("action_wanted", []),
        ("fret_position", ["fret_position is not a figure with a row for each string"]),
        ("heights_relief", ["heights_relief is not a figure with a row for each string"]),
        ("action_wnated", ["there is no figure action_wnated"]),
    ],
)
def test_what_is_measured_at_the_outer_strings_is_of_every_string(address: str, said: list[str]) -> None:
    text = LIST.replace("{figure}", '"head_thickness"').replace("measure = ", "measure_outer = ")
    wrong = wrong_addresses(("own.toml", text.replace("fret_position[12]", address)))
    assert [each.what for each in wrong] == said


def test_what_is_measured_is_one_figure() -> None:
    text = LIST.replace("{figure}", '"fret_position"').replace("fret_position[12]", "fret_position")
    (fault,) = wrong_addresses(("own.toml", text))
    assert str(fault).startswith("own.toml:10: operation.head_inlaid.measure: fret_position is not a single figure")


@pytest.mark.parametrize(
    "address", ["fret_position[12]", "height_over_crown[1, 12]", 'brace_list["X treble"].height', "board_thickness"]
)
def test_what_is_right_is_let_be(address: str, example: Callable[[str], Figures]) -> None:
    assert wrong(address) == []
    assert wrong(address, example("tarn")) == []


@pytest.mark.parametrize(
    ("address", "remedy"),
    [('brace_list["Y"].height', "X treble"), ("fret_position[40]", "Take it out"), ("string_pull[7]", "Take it out")],
)
def test_what_this_instrument_lacks_is_told_of_its_own_list_alone(
    address: str, remedy: str, example: Callable[[str], Figures]
) -> None:
    assert wrong(address) == []
    (fault,) = wrong(address, example("tarn"))
    assert fault.startswith(f"own.toml:8: operation.head_inlaid.figures: {address} is not on this instrument")
    assert remedy in fault


def test_the_packages_own_list_has_no_fault() -> None:
    text = (files("gramil") / "data" / "operations.toml").read_text(encoding="utf-8")
    assert [*wrong_addresses(("operations.toml", text))] == []


def test_every_fault_is_told_at_once_and_the_shops_list_serves_every_instrument(
    example: Callable[[str], Figures],
) -> None:
    bad = LIST.replace("{figure}", "'brace_list[\"Y\"].height'")
    worse = bad.replace("fret_position[12]", "fret_places[12]")
    with pytest.raises(MakersFault) as told:
        checked_work(
            [("shop.operations.toml", worse), ("tarn.operations.toml", bad)], example("tarn"), "tarn.operations.toml"
        )
    assert [(each.file, each.line) for each in told.value.faults] == [
        ("shop.operations.toml", 10),
        ("tarn.operations.toml", 8),
    ]


def test_done_tells_it(tmp_path: Path) -> None:
    (tmp_path / "tarn.toml").write_bytes((EXAMPLES / "tarn.toml").read_bytes())
    text = LIST.replace("{figure}", '"head_thikness"')
    (tmp_path / "tarn.operations.toml").write_text(text, encoding="utf-8")
    told = CliRunner().invoke(done, ["head_inlaid", str(tmp_path / "tarn.toml")])
    assert isinstance(told.exception, MakersFault)
    assert "tarn.operations.toml:8: " in str(told.exception)
    assert "head_thickness" in str(told.exception)
    assert not (tmp_path / "tarn.made.toml").exists()
