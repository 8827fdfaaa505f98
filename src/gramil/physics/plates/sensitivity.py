"""What a shaving changes: how quantities under a load, and frequencies, move with each bar and with the thickness.

Derivatives without solving again: by the adjoint for what is read of the loaded plate, and from a mode's own movements
for its frequency. Those with height and thickness are exact on their mesh; a bar made wider or moved aside cuts its
triangles elsewhere, and what kinks there is left out: 2 % with width, a tenth of the largest with place. They hold for
small changes; where two modes nearly coincide a change may mix them, and a mode's own derivative says little.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cached_property
from itertools import combinations

import numpy as np
from scipy.sparse import csr_matrix

from gramil.physics.arrays import FloatArray
from gramil.physics.plates.bar import Bar, Section, section_at
from gramil.physics.plates.bar_energy import Part, Readings, Weights, move_weights, moves, rows, strain_weights, strains
from gramil.physics.plates.glued import GluedBar, glued_to
from gramil.physics.plates.mesh import Indices
from gramil.physics.plates.plate import thickness_at
from gramil.physics.plates.samples import ROLL, Read, Samples
from gramil.physics.plates.whole import Modes, Whole

NEAR = 0.03
"""Two frequencies nearer to each other than this share are said to nearly coincide."""
_STEP = 1e-3


@dataclass(frozen=True, eq=False)
class PerMm:
    """What one more mm does: to each quantity (q,), in its own unit, and to each frequency (k,), in Hz."""

    quantities: FloatArray
    frequencies: FloatArray


@dataclass(frozen=True, eq=False)
class BarChange:
    """What one more mm of a bar does: `higher` (its worked-down ends in proportion), `wider`, `aside` to its left.

    `raised` is span by span what raising its crest there alone does, of which `higher` is the sum where all rise:
    quantities (spans, q) and frequencies (spans, k).
    """

    name: str
    higher: PerMm
    wider: PerMm
    aside: PerMm
    raised: PerMm


@dataclass(frozen=True, eq=False)
class Movements:
    """What derivatives are taken between: of a load, of the quantities' adjoints (n, q), and of modes (n, k)."""

    loaded: FloatArray
    adjoint: FloatArray
    modes: Modes

    @cached_property
    def distinct(self) -> FloatArray:
        """The adjoints, the modes, and the loaded plate, (n, q + k + 1)."""
        return np.concatenate([self.adjoint, self.modes.movements, self.loaded[:, None]], axis=1)

    @cached_property
    def lefts(self) -> Indices:
        """Which of `distinct` are on the left: each quantity's adjoint, then each mode."""
        return np.arange(self.distinct.shape[1] - 1)

    @cached_property
    def rights(self) -> Indices:
        """Which of `distinct` are on the right: the loaded plate for each quantity, then each mode."""
        return np.where(self.lefts < self.adjoint.shape[1], self.distinct.shape[1] - 1, self.lefts)

    def per_mm(self, stiffer: FloatArray, heavier: FloatArray) -> PerMm:
        """From what one more mm adds between left and right: in stiffness, in mass, (..., q + k)."""
        count = self.adjoint.shape[1]
        squares = stiffer[..., count:] - self.modes.squares * heavier[..., count:]
        return PerMm(-stiffer[..., :count], squares / (8.0 * np.pi**2 * self.modes.frequencies))


def movements_of(whole: Whole, loaded: FloatArray, quantities: csr_matrix, modes: Modes) -> Movements:
    """Solve for the adjoints of quantities that rows (q, n) read of the loaded plate; rows may read nodes alone."""
    return Movements(loaded, whole.under(np.asarray(quantities.toarray().T)), modes)


def bar_changes(whole: Whole, movements: Movements) -> tuple[BarChange, ...]:
    """What one more mm of each bar does."""
    return tuple(_bar_change(bar, movements) for bar in whole.bars)


def near_pairs(frequencies: FloatArray, within: float = NEAR) -> tuple[tuple[int, int], ...]:
    """Which modes nearly coincide, counted from 0."""
    pairs = combinations(range(len(frequencies)), 2)
    return tuple(
        (one, other) for one, other in pairs if frequencies[other] - frequencies[one] < within * frequencies[one]
    )


def thickness_change(whole: Whole, movements: Movements) -> PerMm:
    """What one more mm of the plate's own thickness does, everywhere, bars and blocks moving with its faces."""
    up, down = (_matrices(_thicker(whole, step)) for step in (_STEP / 2, -_STEP / 2))
    left, right = movements.distinct[:, movements.lefts], movements.distinct[:, movements.rights]
    stiffer, heavier = (
        sum(_form(after, left, right) - _form(before, left, right) for after, before in zip(one, other, strict=True))
        for one, other in zip(up, down, strict=True)
    )
    return movements.per_mm(np.asarray(stiffer) / _STEP, np.asarray(heavier) / _STEP)


def _thicker(whole: Whole, more: float) -> Whole:
    """The same mesh under a thicker plate."""
    plate = whole.sheet.plate
    thicker = replace(plate, thickness=lambda points: thickness_at(plate, points) + more)
    sheet = replace(whole.sheet, plate=thicker)
    glued = glued_to(sheet, [each.bar for each in whole.bars], [each.block for each in whole.blocks])
    return Whole(replace(whole.bare, sheet=sheet), glued)


def _matrices(whole: Whole) -> tuple[list[csr_matrix], list[csr_matrix]]:
    """Every part's stiffness, and every part's mass."""
    parts = (whole.sheet, *whole.glued)
    return [each.stiffness for each in parts], [each.mass for each in parts]


def _form(matrix: csr_matrix, left: FloatArray, right: FloatArray) -> FloatArray:
    """What a matrix comes to between movements, column by column; one of the nodes alone takes theirs."""
    size = matrix.shape[0]
    return np.asarray((left[:size] * (matrix @ right[:size])).sum(axis=0))


def _bar_change(glued: GluedBar, movements: Movements) -> BarChange:
    stiff = _Between.of(glued, glued.samples, (strains, strain_weights, _SQUEEZE), movements)
    heavy = _Between.of(glued, glued.sparse, (moves, move_weights, _CARRIED), movements)
    raised = [part.higher(glued.bar) for part in (stiff, heavy)]
    gains = [_gain(glued.bar, part.samples.along) @ each for part, each in zip((stiff, heavy), raised, strict=True)]
    return BarChange(
        glued.bar.name,
        movements.per_mm(gains[0], gains[1]),
        movements.per_mm(stiff.wider(glued.bar), heavy.wider(glued.bar)),
        movements.per_mm(stiff.aside(), heavy.aside()),
        movements.per_mm(stiff.by_span(raised[0]), heavy.by_span(raised[1])),
    )


def _gain(bar: Bar, along: FloatArray) -> FloatArray:
    """How much a place's crest rises when the bar is made 1 mm higher."""
    places, heights = (np.array(each) for each in zip(*bar.crest, strict=True))
    raised = np.array([height for _, height in bar.raised(1.0).crest])
    return np.interp(along, places, raised - heights)


_SQUEEZE, _CARRIED = 5, 4
"""The reading among strains, and among moves, that changes across a bar with its roll."""
ReadingsOf = tuple[Callable[[Samples, Read], Readings], Callable[[Samples, Section], Weights], int]
"""What makes readings, what weighs them, and which of them changes across a bar with its roll."""


@dataclass(frozen=True, eq=False)
class _Between:
    """A bar's readings at its samples of the movements on the left and on the right, each (readings, p, q + k), and how
    they change for each mm aside, and with the bar's own roll for each mm across."""

    samples: Samples
    weigh: Callable[[Samples, Section], Weights]
    left: FloatArray
    right: FloatArray
    left_aside: FloatArray
    right_aside: FloatArray
    left_roll: FloatArray
    right_roll: FloatArray

    @staticmethod
    def of(glued: GluedBar, samples: Samples, asked: ReadingsOf, movements: Movements) -> "_Between":
        read, weigh, rolled = asked
        plain, aside = read(samples, samples.read), read(samples, samples.aside)
        none: list[Part] = [[] for _ in plain.of_bar]
        roll = Readings(none, [[(ROLL, -samples.spline)] if row == rolled else [] for row in range(len(none))])
        sides = [
            _readings(samples, each, glued.size, movements) for each in (plain, Readings(aside.of_plate, none), roll)
        ]
        (left, right), (left_aside, right_aside), (left_roll, right_roll) = sides
        return _Between(samples, weigh, left, right, left_aside, right_aside, left_roll, right_roll)

    def _weighed(self, weights: Weights, left: FloatArray, right: FloatArray) -> FloatArray:
        """What they come to at each sample, (p, q + k)."""
        whole = np.zeros_like(left[0])
        for one, other, weight in weights:
            product = left[one] * right[other]
            if one != other:
                product = product + left[other] * right[one]
            whole += weight[:, None] * product
        return whole

    def _moved(self, left: FloatArray, right: FloatArray) -> FloatArray:
        """What a change of the readings comes to, (p, q + k)."""
        weights = self.weigh(self.samples, self.samples.section)
        return self._weighed(weights, left, self.right) + self._weighed(weights, self.left, right)

    def _slope(self, up: Bar, down: Bar) -> Weights:
        """How the weights change between two bars' sections, for each mm."""
        samples = self.samples
        high, low = (self.weigh(samples, section_at(each, samples.along, samples.thickness)) for each in (up, down))
        pairs = zip(high, low, strict=True)
        return [(one, other, (after - before) / _STEP) for (one, other, after), (_, _, before) in pairs]

    def higher(self, bar: Bar) -> FloatArray:
        """For each mm that the crest rises at a sample, (p, q + k)."""
        up, down = (replace(bar, crest=tuple((s, h + step) for s, h in bar.crest)) for step in (_STEP / 2, -_STEP / 2))
        return self._weighed(self._slope(up, down), self.left, self.right)

    def wider(self, bar: Bar) -> FloatArray:
        """For each mm that the bar is wider, (q + k,): its section, its foot's area, where its samples come to lie."""
        slope = self._slope(bar.widened(_STEP / 2), bar.widened(-_STEP / 2))
        own = self.weigh(self.samples, self.samples.section)
        changed = [(i, j, each + area / bar.width) for (i, j, each), (_, _, area) in zip(slope, own, strict=True)]
        out = self.samples.across / bar.width
        moved = self._moved(self.left_aside + self.left_roll, self.right_aside + self.right_roll)
        return self._weighed(changed, self.left, self.right).sum(axis=0) + out @ moved

    def aside(self) -> FloatArray:
        """For each mm that the bar lies farther to its left, (q + k,)."""
        return self._moved(self.left_aside, self.right_aside).sum(axis=0)

    def by_span(self, figures: FloatArray) -> FloatArray:
        """Figures (p, q + k) added up span by span."""
        return figures.reshape(self.samples.track.spans, -1, figures.shape[1]).sum(axis=1)


def _readings(samples: Samples, readings: Readings, size: int, movements: Movements) -> tuple[FloatArray, FloatArray]:
    """Readings of the movements on the left and on the right, each (readings, p, q + k)."""
    parts = zip(readings.of_plate, readings.of_bar, strict=True)
    read = np.stack([rows(samples, plate, bar, size) @ movements.distinct for plate, bar in parts])
    return read[..., movements.lefts], read[..., movements.rights]
