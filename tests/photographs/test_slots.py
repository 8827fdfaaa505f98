"""A board's slots in a photograph: the scale they are cut to, one at the wrong mark, and what cannot be seen."""

import json
from dataclasses import replace
from pathlib import Path

import numpy as np
import pytest
from numpy.typing import NDArray

from gramil.faults import MakersFault
from gramil.photographs.picture_file import PictureRead
from gramil.photographs.pieces import strips
from gramil.photographs.plan import Laid, TraceInputs, grounds
from gramil.photographs.slots import SlotsSeen, slots_seen

from ..every_key.descriptions import EXAMPLES
from ..in_process import gramil
from .rendered import Scene, strips_round

Array = NDArray[np.float64]
SMALL = Scene(strips_round(), size=(2000, 1500), focal=1800.0, distance=1150.0)
FRETS = np.arange(1, 21)


def placed(scale: float) -> Array:
    """The twelfth root of two, by hand."""
    return scale - scale / 2 ** (FRETS / 12)


def board(cut: Array) -> Scene:
    """Slots of 50 mm across, 0.55 mm wide, along x."""
    across = np.linspace(-25, 25, 400)
    lines = tuple((np.column_stack((np.full(400, x - 250), across)), 0.55) for x in cut)
    return replace(SMALL, lines=lines)


def points_on(scene: Scene, cut: Array, off: float = 1.0) -> list[Laid]:
    random = np.random.default_rng(4)
    near = np.column_stack((cut - 250 + random.uniform(-off, off, len(cut)), random.uniform(-3, 3, len(cut))))
    return [Laid(float(x), float(y)) for x, y in scene.seen(near)]


def seen(cut: Array, drawn: Array) -> SlotsSeen:
    scene = board(cut)
    ground = grounds([PictureRead(scene.grey())], TraceInputs(strips(), waving=0.5))
    return slots_seen(ground, points_on(scene, cut), drawn)


def test_slots_cut_as_drawn_are_within_what_is_told() -> None:
    found = seen(placed(650.0), placed(650.0))
    assert np.abs(found.off).max() < 0.1
    assert found.astray == ()
    assert not found.other_scale
    assert 0.1 < found.within < 0.6


def test_a_slot_at_the_wrong_mark_is_named() -> None:
    cut = placed(650.0)
    cut[6] += 1.2
    found = seen(cut, placed(650.0))
    assert found.astray == (7,)
    assert found.off[6] == pytest.approx(1.2, abs=0.2)


def test_another_scale_is_told() -> None:
    found = seen(placed(640.0), placed(650.0))
    assert found.other_scale
    assert found.longer == pytest.approx(640 / 650 - 1, abs=5e-4)
    assert found.astray == ()


def test_points_where_no_slot_is_are_told() -> None:
    cut = placed(650.0)
    scene = board(cut[:12])
    ground = grounds([PictureRead(scene.grey())], TraceInputs(strips(), waving=0.5))
    found = slots_seen(ground, points_on(scene, cut), cut)
    assert np.isnan(found.off[12:]).all()
    assert np.isfinite(found.off[:12]).all()
    with pytest.raises(MakersFault, match="3 points for 20 slots"):
        slots_seen(ground, points_on(scene, cut[:3]), cut)
    with pytest.raises(MakersFault, match="no slots are seen"):
        slots_seen(ground, points_on(scene, cut[13:]), cut)


def test_the_command_tells_it(tmp_path: Path) -> None:
    """*Mere* is drawn to 650 mm and has 19 frets; this board is cut to 645."""
    for name in ("mere.toml", "shop.toml"):
        (tmp_path / name).write_bytes((EXAMPLES / name).read_bytes())
    cut = placed(645.0)[:19]
    scene = board(cut)
    (tmp_path / "board.jpg").write_bytes(scene.jpeg())
    rows = "".join(f"{each.x},{each.y}\n" for each in points_on(scene, cut))
    (tmp_path / "slots.csv").write_text(f"x,y\n{rows}", encoding="utf-8")
    asked = ("trace", "board.jpg", "--slots", "mere.toml", "--points", "slots.csv")
    said = gramil(tmp_path, *asked)
    assert said.returncode == 0, said.stderr
    assert "rough check" in said.stdout
    assert "as for a scale of 645.0" in said.stdout
    told = json.loads(gramil(tmp_path, *asked, "--json").stdout)
    assert told["told"]["slots"]["longer"] == pytest.approx(645 / 650 - 1, abs=5e-4)
    assert "Give --points" in gramil(tmp_path, *asked[:-2]).stderr
