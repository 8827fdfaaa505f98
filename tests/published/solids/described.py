"""A braced top as its file here describes it, for the plate to be solved, and for the deck of solid elements."""

import math
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np

from gramil.physics.arrays import FloatArray
from gramil.physics.plates.bar import Bar, Gap
from gramil.physics.plates.block import Block
from gramil.physics.plates.plate import Plate, spherical
from gramil.physics.plates.plies import Ply
from gramil.physics.plates.timber import Timber
from gramil.top.braced import Braced, Pull

HERE = Path(__file__).parent


@dataclass(frozen=True)
class Described:
    """The plate, what is glued to it, the load (area, force, couple), and what solid elements found."""

    plate: Plate
    bars: tuple[Bar, ...]
    blocks: tuple[Block, ...]
    area: FloatArray
    force: tuple[float, float, float]
    couple: tuple[float, float]
    solid: dict[str, Any]

    @property
    def braced(self) -> Braced:
        """The same as the program has a top: its bridge is where the load is."""
        front, back = float(self.area[:, 0].min()), float(self.area[:, 0].max())
        pull = Pull(self.area, self.force, self.couple)
        return Braced("top", self.plate, self.bars, self.blocks, (pull,), front, (front + back) / 2, back)


def described(name: str, *, domed: bool = False) -> Described:
    """The top of `name`.toml; `domed` with its rise."""
    table = tomllib.loads((HERE / f"{name}.toml").read_text(encoding="utf-8"))
    top, load = table["top"], table["load"]
    woods = {key: Timber(**row) for key, row in table["woods"].items()}
    x, y, diameter = top["hole"]
    turn = np.linspace(0.0, 2 * math.pi, 361)[:-1]
    hole = np.stack([x + diameter / 2 * np.cos(turn), y + diameter / 2 * np.sin(turn)], axis=1)
    radius, *apex = top["rise"]
    rise = spherical(radius, (apex[0], apex[1])) if domed else None
    plate = Plate(np.array(top["outline"]), Ply(woods[top["wood"]]), top["thickness"], (hole,), rise)
    bars = tuple(_bar(row, woods) for row in table["bar"])
    blocks = tuple(_block(row, woods) for row in table["block"])
    return Described(
        plate, bars, blocks, np.array(load["area"]), tuple(load["force"]), tuple(load["couple"]), table["solid"]
    )


def _bar(row: dict[str, Any], woods: dict[str, Timber]) -> Bar:
    gaps = tuple(Gap(**gap) for gap in row.get("gaps", []))
    crest = tuple((along, height) for along, height in row["crest"])
    return Bar(row["name"], tuple(row["start"]), tuple(row["stop"]), row["width"], crest, woods[row["wood"]], -1, gaps)


def _block(row: dict[str, Any], woods: dict[str, Timber]) -> Block:
    ply = Ply(woods[row["wood"]], math.radians(row["grain"]), row["cut"])
    return Block(row["name"], np.array(row["ring"]), ply, row["thickness"], row["side"])
