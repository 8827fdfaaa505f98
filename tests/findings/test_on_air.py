"""Verdicts on air and wood: in the band, outside it on either side, and not judged where nothing was read."""

import math

import pytest

from gramil.description.wood.air_values import WoodState
from gramil.findings.on_air import finding_board_moisture, finding_gluing_air
from gramil.parts.records import BlankChoice

BLANK = BlankChoice("rack 3", "persimmon", 1.0, 1.0, 1.0, 1.0)


def piece(least: float, likely: float, most: float) -> WoodState:
    return WoodState("rack 3", "persimmon", "board", "", "shop", least, likely, most, "Lay it in the cupboard.")


@pytest.mark.parametrize(
    ("humidity", "severity", "word"), [(29.0, "caution", "dry"), (45.0, "fine", "Good"), (58.0, "caution", "damp")]
)
def test_the_air(humidity: float, severity: str, word: str) -> None:
    (found,) = finding_gluing_air(True, "", humidity, 40.0, 50.0)
    assert found.severity == severity
    assert word in found.says


def test_air_that_nobody_read_is_not_judged() -> None:
    (air,) = finding_gluing_air(False, "because the shop has no air readings", math.nan, 40.0, 50.0)
    (board,) = finding_board_moisture(False, "because it was not read", (), (), math.nan, BLANK, 40.0, 50.0)
    assert air.severity == board.severity == "not judged"
    assert air.says.startswith("because")


@pytest.mark.parametrize(
    ("state", "severity"),
    [
        (piece(8.0, 8.4, 8.9), "fine"),  # table 4-2 at 21.1 C: 7.7 % at 40 % humidity, 9.2 % at 50 %
        (piece(7.0, 8.0, 8.9), "note"),
        (piece(6.0, 6.4, 7.1), "caution"),
        (piece(9.9, 10.4, 11.0), "caution"),
    ],
)
def test_the_board(state: WoodState, severity: str) -> None:
    (found,) = finding_board_moisture(True, "", (state,), (), 21.0, BLANK, 40.0, 50.0)
    assert found.severity == severity


def test_a_board_whose_past_is_not_told_is_not_judged() -> None:
    (found,) = finding_board_moisture(True, "", (), ("rack 3: it lay nowhere",), 21.0, BLANK, 40.0, 50.0)
    assert found.severity == "not judged"
    assert "it lay nowhere" in found.says
    (other,) = finding_board_moisture(True, "", (), (), 21.0, BLANK, 40.0, 50.0)
    assert other.severity == "not judged"
