"""Writes a braced top described here as a CalculiX deck of solid wedges, and reads what CalculiX found: by hand, once.

`python deck.py tarn 6 tarn.inp` (`--domed`, `--open` for a halved joint whose sides are not glued), then `ccx tarn`,
then `python deck.py tarn 6 tarn.dat --read`. The plan is cut into triangles that follow every footprint; each is drawn
up into wedges of fifteen nodes: one through the plate, one through a block, four through a bar's height. Bars share the
plate's nodes under them and no others, but where one is halved into the other.
"""

import argparse
import math
import sys
from collections.abc import Callable, Hashable
from dataclasses import dataclass, field
from pathlib import Path

import numpy as np

sys.path.insert(0, str(Path(__file__).parent))

from described import Described, described

from gramil.physics.plates import meshing
from gramil.physics.plates.bar import Bar, wood_between
from gramil.physics.plates.lines import inside, measured_to_ring
from gramil.physics.plates.loads import spread
from gramil.physics.plates.mesh import Mesh
from gramil.physics.plates.timber import TONNE, Timber

BAR_LAYERS = 4
POISSON_RT = 0.435
Key = tuple[Hashable, ...]


@dataclass
class Deck:
    """Nodes by key, and elements by set; each element fifteen keys."""

    described: Described
    mesh: Mesh
    places: dict[Key, tuple[float, float, float]] = field(default_factory=dict)
    sets: dict[str, list[list[Key]]] = field(default_factory=dict)
    same: dict[Key, Key] = field(default_factory=dict)

    def wedge(
        self, name: str, triangle: np.ndarray, levels: list[tuple[Callable[[int], Key], Callable[[int], float]]]
    ) -> None:
        """One element from its lowest, middle and highest level: each makes a key and a height of a plan node."""
        low, middle, high = levels
        nodes = [
            (low, triangle[:3]),
            (high, triangle[:3]),
            (low, triangle[3:]),
            (high, triangle[3:]),
            (middle, triangle[:3]),
        ]
        keys = []
        for (key, height), plan in nodes:
            for node in plan.tolist():
                self.places[key(node)] = (*self.mesh.nodes[node].tolist(), height(node))
                keys.append(key(node))
        self.sets.setdefault(name, []).append(keys)

    def numbers(self) -> dict[Key, int]:
        """Each key's number, from 1; keys that are the same node share one."""
        used = dict.fromkeys(self.same.get(key, key) for rows in self.sets.values() for row in rows for key in row)
        order = {key: number for number, key in enumerate(used, 1)}
        return {key: order[self.same.get(key, key)] for key in self.places if self.same.get(key, key) in order}


def built(top: Described, size: float, glued: bool) -> Deck:
    """Every element of a top. `glued`: whether what fills a notch is glued to its sides."""
    meshing.LEAST_ANGLE = math.radians(1.0)  # footprints meet sharply; quadratic wedges bear it
    rings = [block.ring for block in top.blocks] + [bar.footprint for bar in top.bars]
    lines = tuple(np.concatenate([ring, ring[:1]]) for ring in rings)
    mesh = meshing.mesh_of(meshing.Region(top.plate.outline, top.plate.holes, lines), size)
    deck = Deck(top, mesh)
    for triangle in mesh.triangles:
        deck.wedge("plate", triangle, [(face(level), _height(deck, level)) for level in (0, 1, 2)])
    for number, block in enumerate(top.blocks):
        _block(deck, number, block)
    for number, bar in enumerate(top.bars):
        _bar(deck, number, bar)
    _halved(deck, glued)
    return deck


def face(level: int) -> Callable[[int], Key]:
    """Keys of the plate's nodes: 0 its second face, 1 the middle, 2 the first."""
    return lambda node: ("plate", node, level)


def _height(deck: Deck, level: int) -> Callable[[int], float]:
    rise, thick = deck.described.plate.rise, deck.described.plate.thickness
    assert isinstance(thick, float)
    lifted = np.zeros(len(deck.mesh.nodes)) if rise is None else rise(deck.mesh.nodes)
    return lambda node: float(lifted[node]) + thick * (level - 1) / 2


def _within(deck: Deck, ring: np.ndarray) -> np.ndarray:
    middles = deck.mesh.nodes[deck.mesh.triangles[:, :3]].mean(axis=1)
    return deck.mesh.triangles[inside(ring, middles)]


def _block(deck: Deck, number: int, block: object) -> None:
    name, side, thick = f"block{number}", block.side, block.thickness  # type: ignore[attr-defined]
    base = 1 + side
    foot = _height(deck, base)

    def level(step: int) -> tuple[Callable[[int], Key], Callable[[int], float]]:
        key = face(base) if step == 0 else (lambda node: (name, node, step))
        return key, lambda node: foot(node) + side * thick * step / 2

    steps = [0, 1, 2] if side > 0 else [2, 1, 0]
    for triangle in _within(deck, block.ring):  # type: ignore[attr-defined]
        deck.wedge(name, triangle, [level(step) for step in steps])


def _bar(deck: Deck, number: int, bar: Bar) -> None:
    name, base = f"bar{number}", 1 + bar.side
    foot = _height(deck, base)
    along = np.clip((deck.mesh.nodes - np.array(bar.start)) @ bar.way, 0.0, bar.length)
    plain = Bar(bar.name, bar.start, bar.stop, bar.width, bar.crest, bar.wood, bar.side)
    tall = wood_between(plain, along)[1]

    def level(step: int) -> tuple[Callable[[int], Key], Callable[[int], float]]:
        key = face(base) if step == 0 else (lambda node: (name, node, step))
        return key, lambda node: foot(node) + bar.side * float(tall[node]) * step / (2 * BAR_LAYERS)

    for triangle in _within(deck, bar.footprint):
        for layer in _layers(deck, bar, deck.mesh.nodes[triangle[:3]].mean(axis=0)):
            steps = [2 * layer, 2 * layer + 1, 2 * layer + 2]
            deck.wedge(name, triangle, [level(step) for step in (steps if bar.side > 0 else steps[::-1])])


def _layers(deck: Deck, bar: Bar, middle: np.ndarray) -> range:
    """Which of a bar's layers are there: half of them where it is halved into another."""
    others = [other for other in deck.described.bars if other is not bar and other.gaps]
    if not bar.gaps or not any(inside(other.footprint, middle[None])[0] for other in others):
        return range(BAR_LAYERS)
    half = BAR_LAYERS // 2
    return range(half, BAR_LAYERS) if bar.gaps[0].low <= 0 else range(half)


def _halved(deck: Deck, glued: bool) -> None:
    """Two bars halved into each other share the nodes of the face between them; and, glued, those of the sides."""
    for one, upper in enumerate(deck.described.bars):
        for other, lower in enumerate(deck.described.bars):
            if not (upper.gaps and lower.gaps and upper.gaps[0].low <= 0 < lower.gaps[0].low):
                continue
            for node, place in enumerate(deck.mesh.nodes):
                if not (_on(upper, place) and _on(lower, place)):
                    continue
                for step in range(1, 2 * BAR_LAYERS + 1) if glued else (BAR_LAYERS,):
                    key, with_key = (f"bar{one}", node, step), (f"bar{other}", node, step)
                    if key in deck.places and with_key in deck.places:
                        deck.same[key] = with_key


def _on(bar: Bar, place: np.ndarray) -> bool:
    arm = place - np.array(bar.start)
    return -1e-6 <= arm @ bar.way <= bar.length + 1e-6 and abs(arm @ bar.left) <= bar.width / 2 + 1e-6


def text(deck: Deck) -> str:
    """The whole deck: nodes, elements, woods, the clamped edge, the load, ten modes."""
    numbers = deck.numbers()
    places = {number: deck.places[deck.same.get(key, key)] for key, number in numbers.items()}
    out = [
        "*NODE, NSET=NALL",
        *(f"{number}, {x:.9g}, {y:.9g}, {z:.9g}" for number, (x, y, z) in sorted(places.items())),
    ]
    count = 0
    for name, rows in deck.sets.items():
        out.append(f"*ELEMENT, TYPE=C3D15, ELSET={name}")
        for row in rows:
            count += 1
            nodes = [str(numbers[key]) for key in row]
            out += [f"{count}, " + ", ".join(nodes[:11]) + ",", ", ".join(nodes[11:])]
    top = deck.described
    out += _wood("plate", top.plate.ply.wood, top.plate.ply.grain, top.plate.ply.cut == "quarter")
    for number, block in enumerate(top.blocks):
        out += _wood(f"block{number}", block.ply.wood, block.ply.grain, block.ply.cut == "quarter")
    for number, bar in enumerate(top.bars):
        out += _wood(f"bar{number}", bar.wood, math.atan2(bar.way[1], bar.way[0]), False)
    out += ["*BOUNDARY", *(f"{number}, 1, 3" for number in _edge(deck, numbers))]
    out += ["*STEP", "*STATIC", "*CLOAD", *_load(deck, numbers)]
    first = sorted({numbers[face(2)(node)] for node in range(len(deck.mesh.nodes))})
    out += ["*NSET, NSET=FIRST", *(f"{number}," for number in first)]
    out += ["*NODE PRINT, NSET=FIRST", "U", "*END STEP", "*STEP", "*FREQUENCY", "10", "*END STEP"]
    return "\n".join(out) + "\n"


def _wood(name: str, wood: Timber, grain: float, across_is_radial: bool) -> list[str]:
    """A wood's card: axes along the grain, across it in the plan, up."""
    if across_is_radial:
        moduli = (wood.longitudinal, wood.radial, wood.tangential)
        ratios = (wood.poisson_lr, wood.poisson_lt, POISSON_RT)
        shears = (wood.shear_lr, wood.shear_lt, wood.shear_rt)
    else:
        moduli = (wood.longitudinal, wood.tangential, wood.radial)
        ratios = (wood.poisson_lt, wood.poisson_lr, POISSON_RT * wood.tangential / wood.radial)
        shears = (wood.shear_lt, wood.shear_lr, wood.shear_rt)
    figures = [f"{figure:.9g}" for figure in (*moduli, *ratios, *shears)]
    c, s = math.cos(grain), math.sin(grain)
    return [
        f"*ORIENTATION, NAME=O{name}, SYSTEM=RECTANGULAR",
        f"{c:.9g}, {s:.9g}, 0., {-s:.9g}, {c:.9g}, 0.",
        f"*MATERIAL, NAME=M{name}",
        "*ELASTIC, TYPE=ENGINEERING CONSTANTS",
        ", ".join(figures[:8]) + ",",
        f"{figures[8]}, 293.",
        "*DENSITY",
        f"{wood.density * TONNE:.9g}",
        f"*SOLID SECTION, ELSET={name}, MATERIAL=M{name}, ORIENTATION=O{name}",
    ]


def _edge(deck: Deck, numbers: dict[Key, int]) -> list[int]:
    """The nodes of the plate's edge face."""
    mesh = deck.mesh
    away = [measured_to_ring(ring, mesh.nodes[mesh.rim[:, 2]])[0] for ring in mesh.rings]
    nodes = np.unique(mesh.rim[np.argmin(away, axis=0) == 0])
    keys = [face(level)(node) for node in nodes.tolist() for level in (0, 1, 2)]
    return sorted({numbers[key] for key in keys if key in numbers})


def _load(deck: Deck, numbers: dict[Key, int]) -> list[str]:
    """The load of the plate to be solved, put on solid nodes: up and down on the first face, the rest on both faces."""
    top = deck.described
    given = spread(deck.mesh, top.area, top.force, top.couple).reshape(-1, 5)
    rows = []
    for node in np.flatnonzero(np.abs(given).max(axis=1) > 0).tolist():
        rows.append(f"{numbers[face(2)(node)]}, 3, {given[node, 2]:.9g}")
        for way in (0, 1):
            if given[node, way]:
                rows += [f"{numbers[face(level)(node)]}, {way + 1}, {given[node, way] / 2:.9g}" for level in (0, 2)]
    return rows


def found(deck: Deck, lines: list[str]) -> str:
    """What CalculiX printed, as rows for the top's file: modes, rotation, deepest and highest places."""
    start = next(row for row, line in enumerate(lines) if "displacements (vx,vy,vz)" in line) + 2
    moved = {}
    for line in lines[start:]:
        if not line.strip():
            break
        number, *way = line.split()
        moved[int(number)] = float(way[2])
    start = next(row for row, line in enumerate(lines) if "E I G E N V A L U E   O U T P U T" in line)
    rows = [line.split() for line in lines[start + 1 : start + 30]]
    hertz = [float(row[3]) for row in rows if len(row) == 5 and row[0].isdigit()][:10]
    numbers = deck.numbers()
    up = np.array([moved[numbers[face(2)(node)]] for node in range(len(deck.mesh.nodes))])
    elements = sum(map(len, deck.sets.values()))
    return "\n".join([
        f"nodes = {max(numbers.values())}", f"elements = {elements}", f"hertz = {[round(each, 2) for each in hertz]}",
        f"rotation = {rotation(deck, up):.4f}", f"sunk = {up.min():.4f}", f"risen = {up.max():.4f}",
    ])  # fmt: skip


def rotation(deck: Deck, up: np.ndarray) -> float:
    """The bridge's, in degrees, on the centreline: from its front edge to its back edge, the first face's rise."""
    low, high = deck.described.area[:, 0].min(), deck.described.area[:, 0].max()
    which, shares = deck.mesh.place(np.array([[low + 0.5, 0.0], [high - 0.5, 0.0]]))
    front, back = (deck.mesh.weights(which, shares)[0] * up[deck.mesh.triangles[which]]).sum(axis=1)
    return math.degrees((back - front) / (high - low - 1.0))


if __name__ == "__main__":
    asked = argparse.ArgumentParser()
    asked.add_argument("name")
    asked.add_argument("size", type=float)
    asked.add_argument("file", type=Path)
    for flag in ("--domed", "--open", "--read"):
        asked.add_argument(flag, action="store_true")
    options = asked.parse_args()
    whole = built(described(options.name, domed=options.domed), options.size, not options.open)
    if options.read:
        print(found(whole, options.file.read_text().splitlines()))
    else:
        options.file.write_text(text(whole))
