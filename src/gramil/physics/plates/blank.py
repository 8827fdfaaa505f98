"""A rectangular board's stiffness along, across and in twist from the notes that it gives when it is tapped free.

Each note is of a mode that is known by its resting lines: a cross for twist, two lines across the grain for bending
along it, two along the grain for bending across. The plate itself is solved, shear and all, and its three stiffnesses
changed until it gives the notes; the quick formulas start that off, and alone would be several per cent out in twist.
"""

import math
from collections.abc import Mapping
from dataclasses import asdict, dataclass, replace
from itertools import pairwise
from typing import Literal

import numpy as np

from gramil.faults import Fault
from gramil.physics.arrays import FloatArray
from gramil.physics.plates.edge import FREE, Hold
from gramil.physics.plates.nodal_lines import rises
from gramil.physics.plates.plate import Plate, layers_at
from gramil.physics.plates.plies import Ply, stiffness
from gramil.physics.plates.timber import Timber
from gramil.physics.plates.whole import Modes, Whole, whole_of

Way = Literal["along", "across", "twist"]
WAYS: tuple[Way, ...] = ("along", "across", "twist")
PATTERN_SURE, PATTERN_MIXED = 0.75, 0.6
"""How alike a mode and its pattern must be, and how alike no other may be: shares, 1 is the same."""
NEAR = 0.03
"""Two notes nearer than this share of them can be taken for each other."""
LIGHTEST, HEAVIEST = 150.0, 1400.0
"""Densities of woods, kg/m3; outside, a weight or a size is wrong."""
LEAST_RATIO = 3.5
"""The least that a modulus along is over that across, radial: 5.1 in the Wood Handbook (table 5-1, from memory)."""
TWIST_LEAST, TWIST_MOST = 0.08, 0.7
"""Between which the shear modulus in the plane lies, over the root of the moduli along times across: softwoods of the
Wood Handbook (tables 5-1, from memory) have 0.22 to 0.49; wider by half or more."""
HANDBOOK_SPREAD = 0.22
"""How far off a handbook's stiffness is for a piece, a share: ASTM D2555's coefficient of variation of clear wood."""
_MODES, _STEPS, _ENOUGH, _ACROSS = 9, 12, 1e-5, 9


@dataclass(frozen=True)
class Blank:
    """A free rectangular board: its length along the grain, its width, its thickness (mm), and its mass (kg)."""

    length: float
    width: float
    thickness: float
    mass: float

    @property
    def density(self) -> float:
        """In kg/m3."""
        return self.mass / (self.length * self.width * self.thickness) * 1e9


@dataclass(frozen=True)
class Sure:
    """How far off what was measured may be, as shares, one standard deviation each: notes, mass, sizes."""

    notes: float = 0.005
    mass: float = 0.002
    plan: float = 0.001
    thickness: float = 0.01


@dataclass(frozen=True)
class Found:
    """A stiffness in MPa, how far off it may be (a share, one standard deviation), and whether it was measured or
    taken from the wood that the board is like.
    """

    value: float
    within: float
    measured: bool


@dataclass(frozen=True)
class Identified:
    """The board's wood with its moduli along and across and its shear modulus in the plane; and what to heed."""

    wood: Timber
    along: Found
    across: Found
    twist: Found
    faults: tuple[Fault, ...]


def quick(blank: Blank, notes: Mapping[Way, float]) -> dict[Way, float]:
    """Moduli along and across and shear modulus, MPa, by formulas that take each mode for itself.

    M. E. McIntyre and J. Woodhouse, "On measuring the elastic and damping constants of orthotropic sheet materials",
    Acta Metall. 36 (1988), and Acustica 66 (1988), from memory.
    """
    heavy = 1e-12 * blank.density / blank.thickness**2
    shares: dict[Way, float] = {
        "along": 12.0 * 0.0789 * blank.length**4,
        "across": 12.0 * 0.0789 * blank.width**4,
        "twist": 3.0 * 0.274 * (blank.length * blank.width) ** 2,
    }
    return {way: shares[way] * heavy * note**2 for way, note in notes.items()}


def identified(blank: Blank, notes: Mapping[Way, float], like: Timber, sure: Sure | None = None) -> Identified:
    """The stiffnesses of a quartersawn board that give its notes (Hz); one that has no note goes with those that have.

    `like` gives what no note tells: Poisson's ratios, the ratios of a modulus without a note, and the shear moduli
    through the thickness over the modulus along. What is impossible is among the faults: notes are never swapped
    silently.
    """
    faults = _impossible(blank, notes)
    wood = replace(like, density=blank.density) if not faults else like
    if not faults:
        wood, faults = _started(wood, quick(blank, notes))
    for _ in range(0 if faults else _STEPS):
        whole = _solved(blank, wood)
        modes = whole.free_modes(_MODES)
        picked, faults = pick(whole, modes, tuple(notes))
        if faults:
            break
        sharing = _sharing(whole, modes, list(picked.values())) @ _going(notes)
        off = [2.0 * math.log(note / modes.frequencies[picked[way]]) for way, note in notes.items()]
        moved = np.linalg.solve(sharing, off)
        wood = _scaled(wood, dict(zip(notes, np.exp(moved).tolist(), strict=True)))
        if np.abs(moved).max() < _ENOUGH:
            return _identified(wood, notes, sharing, sure or Sure())
    return _unknown(like, faults or (Fault(what="the notes fit no board of these sizes", remedy=_AGAIN),))


_AGAIN = "tap again, see where each note's resting lines lie, and weigh and measure again"


def _impossible(blank: Blank, notes: Mapping[Way, float]) -> tuple[Fault, ...]:
    """Faults found before anything is worked out."""
    figures: dict[str, float] = {**dict(notes.items()), **asdict(blank)}
    bad = [name for name, figure in figures.items() if not 0.0 < figure < math.inf]
    if bad:
        return (Fault(where=", ".join(bad), what="not a number above 0", remedy="write what was measured"),)
    if len(notes) < 2:
        return (Fault(what="one note tells one stiffness of three", remedy="tap for twist and along, or across, too"),)
    if not LIGHTEST < blank.density < HEAVIEST:
        why = f"no wood weighs {blank.density:.0f} kg/m3"
        return (Fault(where="mass", what="weight and sizes do not go together", why=why, remedy=_AGAIN),)
    return ()


def _started(like: Timber, moduli: Mapping[Way, float]) -> tuple[Timber, tuple[Fault, ...]]:
    """The wood by the quick formulas, and what speaks against the notes."""
    along, across = moduli.get("along"), moduli.get("across")
    if along is not None and across is not None and along < LEAST_RATIO * across:
        why = f"no wood is so stiff across the grain ({across:.0f} MPa) for its stiffness along it ({along:.0f} MPa)"
        return like, (Fault(where="along, across", what="the two notes may be swapped", why=why, remedy=_AGAIN),)
    own = _moduli(like)
    wood = _scaled(like, {way: modulus / own[way] for way, modulus in moduli.items()})
    twist = wood.shear_lr / math.sqrt(wood.longitudinal * wood.radial)
    if not TWIST_LEAST < twist < TWIST_MOST:
        why = "twist would be out of all proportion to bending"
        return like, (Fault(where="twist", what="the note for twist may be another's", why=why, remedy=_AGAIN),)
    return wood, ()


def _moduli(wood: Timber) -> dict[Way, float]:
    return {"along": wood.longitudinal, "across": wood.radial, "twist": wood.shear_lr}


def _going(notes: Mapping[Way, float]) -> FloatArray:
    """How the three stiffnesses follow those that have a note, (3, notes): one without a note follows their mean."""
    rows = [
        [float(way == other) for other in notes] if way in notes else [1.0 / len(notes)] * len(notes) for way in WAYS
    ]
    return np.array(rows)


def _scaled(wood: Timber, factors: Mapping[Way, float]) -> Timber:
    """The wood with its stiffnesses multiplied by factors; a stiffness without a factor goes with their mean."""
    logs = dict(zip(WAYS, (_going(factors) @ np.log(list(factors.values()))).tolist(), strict=True))
    along, across, twist = (math.exp(logs[way]) for way in WAYS)
    return replace(
        wood,
        longitudinal=wood.longitudinal * along, tangential=wood.tangential * along, shear_lt=wood.shear_lt * along,
        shear_rt=wood.shear_rt * along, radial=wood.radial * across, shear_lr=wood.shear_lr * twist,
    )  # fmt: skip


def _solved(blank: Blank, wood: Timber) -> Whole:
    a, b = blank.length, blank.width
    outline = np.array([[0.0, 0.0], [a, 0.0], [a, b], [0.0, b]])
    plate = Plate(outline, Ply(wood), blank.thickness, holds=(Hold(FREE),))
    return whole_of(plate, min(a, b) / _ACROSS)


def pick(whole: Whole, modes: Modes, ways: tuple[Way, ...]) -> tuple[dict[Way, int], tuple[Fault, ...]]:
    """Which mode of a free rectangular plate is which, by its shape, counted from 0; and where that is not sure."""
    nodes = whole.mesh.nodes
    x, y = ((nodes - nodes.min(axis=0)) / np.ptp(nodes, axis=0) - 0.5).T
    patterns: dict[Way, FloatArray] = {"along": _free_bar(x), "across": _free_bar(y), "twist": x * y}
    shapes = rises(whole.mesh, modes.movements)
    picked, faults = {}, []
    for way in ways:
        alike = np.abs(patterns[way] @ shapes) / np.linalg.norm(patterns[way]) / np.linalg.norm(shapes, axis=0)
        best, second = np.argsort(-alike)[:2]
        picked[way] = int(best)
        if alike[best] < PATTERN_SURE or alike[second] > PATTERN_MIXED:
            faults.append(_mixed(way, modes.frequencies[best], modes.frequencies[second]))
    return picked, tuple(faults)


def _mixed(way: Way, one: float, other: float) -> Fault:
    why = f"on a board of these sizes it would be shared by two notes near each other, {one:.0f} and {other:.0f} Hz"
    return Fault(
        where=way, what="no single mode is of this kind", why=why, remedy="tap it again after cutting it narrower"
    )


def _free_bar(place: FloatArray) -> FloatArray:
    """A free bar's first bending mode, at places from -1/2 to 1/2."""
    k = 4.7300407  # the first root of cos(k) cosh(k) = 1
    return np.cos(k * place) / math.cos(k / 2) + np.cosh(k * place) / math.cosh(k / 2)


def _sharing(whole: Whole, modes: Modes, picked: list[int]) -> FloatArray:
    """By what share a mode's squared frequency goes with each stiffness, (modes, 3)."""
    sheet = whole.sheet
    strained = np.einsum("mgsk,mkc->mgsc", sheet.strains, modes.movements[:, picked][sheet.columns])

    def energy(wood: Timber) -> FloatArray:
        plate = replace(sheet.plate, ply=replace(sheet.plate.ply, wood=wood))
        calls = stiffness(layers_at(plate, whole.mesh.three.points)) * whole.mesh.three.areas[..., None, None]
        return np.asarray((strained * (calls @ strained)).sum(axis=(0, 1, 2)))

    wood = sheet.plate.ply.wood
    ups, downs = ([energy(_each(wood, way, step)) for way in WAYS] for step in (0.01, -0.01))
    slopes = [(up - down) / 0.02 for up, down in zip(ups, downs, strict=True)]
    return np.stack(slopes, axis=1) / energy(wood)[:, None]


def _each(wood: Timber, way: Way, more: float) -> Timber:
    """The wood with one stiffness changed and the others as they are."""
    return _scaled(wood, {other: math.exp(more) if other == way else 1.0 for other in WAYS})


def _identified(wood: Timber, notes: Mapping[Way, float], sharing: FloatArray, sure: Sure) -> Identified:
    """The stiffnesses with how far off they may be, and what to heed."""
    going = _going(notes)
    ones = np.ones(len(notes))
    back = np.linalg.inv(sharing)
    common = [sure.mass * ones, 3.0 * sure.thickness * ones, 3.0 * sure.plan * ones, 3.0 * sure.plan * ones]
    spread = sum(np.outer(each, each) for each in common) + (2.0 * sure.notes) ** 2 * np.eye(len(notes))
    own = np.sqrt(np.diag(going @ back @ spread @ back.T @ going.T))
    along, across, twist = (
        Found(value, float(within) if way in notes else HANDBOOK_SPREAD, way in notes)
        for (way, value), within in zip(_moduli(wood).items(), own, strict=True)
    )
    return Identified(wood, along, across, twist, _near(notes))


def _near(notes: Mapping[Way, float]) -> tuple[Fault, ...]:
    """Notes that could be mistaken for each other: this is said, and they are used as given."""
    order = sorted(notes.items(), key=lambda row: row[1])
    return tuple(
        Fault(
            where=f"{one}, {other}",
            what=f"these two notes, {low:g} and {high:g} Hz, nearly coincide",
            why="either may be the other's",
            remedy="see where the resting lines of each lie",
        )
        for (one, low), (other, high) in pairwise(order)
        if high - low < NEAR * low
    )


def _unknown(like: Timber, faults: tuple[Fault, ...]) -> Identified:
    """Nothing was found: the wood that the board was said to be like, not measured."""
    along, across, twist = (Found(value, HANDBOOK_SPREAD, False) for value in _moduli(like).values())
    return Identified(like, along, across, twist, faults)
