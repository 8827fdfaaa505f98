"""A left-handed twelve-string from `gramil new` to a pack: what is cut lies where a maker's own sums put it."""

from itertools import pairwise
from pathlib import Path

import ezdxf
import numpy as np
import pytest
from tests.in_process import gramil

NUT, SADDLE = 41.0, 58.0
"""The outer strings' spread that the starting point has at nut and saddle, in mm."""


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Where it is begun and packed."""
    place = tmp_path_factory.mktemp("twelve")
    begun = gramil(place, "new", "alder.toml", "--start", "twelve", "--name", "Alder", "--handed", "left", "--usual")
    packed = gramil(place, "pack", "alder.toml", "--out", "pack", "--paper", "a3")
    assert (begun.returncode, packed.returncode) == (0, 0), begun.stderr + packed.stderr
    return place


def circles(folder: Path, name: str) -> np.ndarray:
    """Middles and radius of every circle in a drawing to cut from."""
    found = ezdxf.readfile(folder / "pack" / "cut" / name).modelspace().query("CIRCLE")
    return np.array([(each.dxf.center.x, each.dxf.center.y, each.dxf.radius) for each in found])


@pytest.mark.slow
def test_pins_stand_in_two_rows_across_the_whole_spread(folder: Path) -> None:
    """By steps of 58 / 11 mm, the rows 7 mm apart, the first string's in front; its treble lies at -y: left-handed."""
    pins = circles(folder, "bridge.dxf")
    assert pins[:, 1] == pytest.approx(np.linspace(-SADDLE / 2, SADDLE / 2, 12))
    assert np.diff(pins[:, 0])[::2] == pytest.approx([7.0] * 6)
    assert pins[:, 2] == pytest.approx([5.3 / 2] * 12)


@pytest.mark.slow
def test_six_posts_stand_on_either_side(folder: Path) -> None:
    posts = circles(folder, "head.dxf")
    assert len(posts) == 12
    assert -posts[:6, 0] == pytest.approx(52 + 26 * np.arange(6))
    assert posts[:6, 1] == pytest.approx(-(NUT / 2 + 7 - 2.5 * np.arange(6)))
    assert posts[::-1, 1] == pytest.approx(-posts[:, 1])


@pytest.mark.slow
def test_the_nut_s_rule_has_a_mark_for_each_string(folder: Path) -> None:
    """Pairs 1.9 mm apart; the air between courses is the same."""
    marks = ezdxf.readfile(folder / "pack" / "cut" / "nut.dxf").modelspace().query('LINE[layer=="slots"]')
    places = sorted(each.dxf.start.x for each in marks)
    steps = [right - left for left, right in pairwise(places)]
    assert places[-1] - places[0] == pytest.approx(NUT)
    assert steps[::2] == pytest.approx([1.9] * 6)
    gauges = [0.010, 0.010, 0.014, 0.014, 0.022, 0.009, 0.028, 0.012, 0.038, 0.017, 0.048, 0.024]
    air = [step - (gauges[row] + gauges[row + 1]) / 2 * 25.4 for row, step in enumerate(steps) if row % 2]
    assert air == pytest.approx([air[0]] * 5)


@pytest.mark.slow
def test_a_longer_scale_spoils_the_bridge_s_place_and_leaves_the_nut_s_rule(folder: Path) -> None:
    """The rule for the nut hangs on the spread and the pairs alone, the bridge on the scale and not on those."""
    longer, wider = spoiled(folder, "scale.length=655mm"), spoiled(folder, "nut.pair=2.1mm")
    assert ("bridge" in longer, "nut: the strings' places" in longer) == (True, False)
    assert ("bridge" in wider, "nut: the strings' places" in wider) == (False, True)


def spoiled(folder: Path, change: str) -> set[str]:
    """The drawings and templates that a change spoils."""
    shifted = gramil(folder, "shift", "alder.toml", "--set", change, "--every")
    assert shifted.returncode == 0, shifted.stderr
    told = shifted.stdout.partition("DRAWINGS AND TEMPLATES NO LONGER TRUE\n")[2].partition("SHEETS AND SETTINGS")[0]
    return {line.strip() for line in told.splitlines()}
