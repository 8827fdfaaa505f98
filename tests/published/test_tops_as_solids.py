"""Two whole braced tops against solid finite elements: an X with its bridge plate, flat and domed, and a nylon fan.

Solved once in CalculiX 2.20 (Debian's package, 2.20-1) by wedges of fifteen nodes, three displacements zero round the
edge; the described tops, the script that writes the decks, and what came out stand in `solids/`. The same X was solved
elsewhere too, in the same program, with constants of bridge and plate that were not written down: its modes are asked
for as well.
"""

import importlib.util
import math
import sys
from dataclasses import replace
from functools import cache
from pathlib import Path
from types import ModuleType

import pytest
from tests.walks import these

from gramil.physics.arrays import FloatArray
from gramil.physics.plates.surety import FINAL, QUICK
from gramil.top.braced import solved as solve

HERE = Path(__file__).parent / "solids"


@cache
def tops() -> ModuleType:
    specification = importlib.util.spec_from_file_location("described", HERE / "described.py")
    assert specification is not None
    assert specification.loader is not None
    module = importlib.util.module_from_spec(specification)
    sys.modules["described"] = module
    specification.loader.exec_module(module)
    return module


@cache
def solved(name: str, case: str, size: float) -> tuple[FloatArray, float, float, float]:
    """Frequencies, the bridge's rotation in degrees, the deepest and the highest place in mm."""
    top = tops().described(name, domed=case == "domed")
    joints = [tuple(replace(gap, glued=case != "open") for gap in bar.gaps) for bar in top.bars]
    bars = [replace(bar, gaps=gaps) for bar, gaps in zip(top.bars, joints, strict=True)]
    found = solve(replace(top.braced, bars=tuple(bars)), size)
    moved = found.moved
    return found.modes.frequencies, math.degrees(moved.turn), -moved.sink, moved.rise


CASES = [
    ("tarn", "flat", FINAL),
    ("tarn", "flat", QUICK),
    ("tarn", "domed", FINAL),
    ("tarn", "open", FINAL),
    ("mere", "flat", FINAL),
    ("mere", "flat", QUICK),
]


@pytest.mark.parametrize(("name", "case", "size"), these(CASES, [("tarn", "domed", FINAL), ("mere", "flat", QUICK)]))
def test_a_whole_top(name: str, case: str, size: float) -> None:
    expected = tops().described(name).solid[case]
    frequencies, rotation, sunk, risen = solved(name, case, size)
    assert frequencies[0] == pytest.approx(expected["hertz"][0], rel=0.02)
    assert frequencies == pytest.approx(expected["hertz"], rel=0.035)
    assert rotation == pytest.approx(expected["rotation"], rel=0.03)
    assert risen == pytest.approx(expected["risen"], rel=0.03)
    assert sunk == pytest.approx(expected["sunk"], rel=0.05)


# Hz, and the deepest place in mm.
ELSEWHERE = [
    ("flat", [208.0, 475.1, 504.3, 569.4, 799.7, 812.0, 889.7, 1010.9, 1048.0, 1090.5], -0.341),
    ("domed", [204.6, 474.2, 498.4, 564.1, 787.3, 818.7, 887.8, 1010.7, 1049.6, 1092.6], -0.393),
]


@pytest.mark.parametrize(("case", "hertz", "sunk"), these(ELSEWHERE, ELSEWHERE[1:]))
def test_the_same_solved_elsewhere(case: str, hertz: list[float], sunk: float) -> None:
    found = solved("tarn", case, FINAL)
    assert found[0][0] == pytest.approx(hertz[0], rel=0.02)
    assert found[0] == pytest.approx(hertz, rel=0.035)
    assert found[2] == pytest.approx(sunk, rel=0.05)
