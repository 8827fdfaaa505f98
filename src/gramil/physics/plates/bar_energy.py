"""What a bar's stiffness and mass consist of: what is read of the movements at its samples, and what each weighs.

A bar has its own section rotation and its own deflection: it does not share the plate's normal, or it would come out 10
to 20 % too stiff. Its foot goes with the plate's face.
"""

from dataclasses import dataclass

import numpy as np
from scipy.sparse import csr_matrix

from gramil.physics.arrays import FloatArray
from gramil.physics.plates.bar import Section
from gramil.physics.plates.edge import EACH
from gramil.physics.plates.rows import LEAN_X, LEAN_Y, X, Y, Z, sparse_rows
from gramil.physics.plates.samples import LEAN, RISE, ROLL, Read, Samples
from gramil.physics.plates.squares import Squares

Part = list[tuple[int, FloatArray]]
"""Kinds of movement, with what each of a triangle's nodes (p, 6), or of a bar's splines (p, 4), counts for."""
Weights = list[tuple[int, int, FloatArray]]
"""What the product of two readings weighs at each sample; first each reading's own, then those of two."""


@dataclass(frozen=True, eq=False)
class Readings:
    """What is read at the samples: for each reading what the plate's movements count for, and what the bar's."""

    of_plate: list[Part]
    of_bar: list[Part]


def strains(samples: Samples, read: Read) -> Readings:
    """Seven: stretch of the foot along the bar, bending of its section over its height, shear up along it, its own
    twist, sway of it against the plate, squeeze between the two, twist of the plate's normal where they meet."""
    way, left = samples.bar.way, samples.bar.left
    foot = 0.5 * samples.bar.side * samples.thickness[:, None]
    plain, change = samples.spline, samples.spline_change
    stretch = [(X, read.onward * way[0]), (Y, read.onward * way[1]), (Z, read.arched)]
    stretch += [(LEAN_X, read.onward * foot * way[0]), (LEAN_Y, read.onward * foot * way[1])]
    twisted = [(LEAN_X, read.onward * left[0]), (LEAN_Y, read.onward * left[1])]
    rolled = (ROLL, -samples.across[:, None] * plain)
    sheared, squeezed = [(LEAN, plain), (RISE, change)], [(RISE, plain), rolled]
    return Readings(
        [stretch, [], [], [], [(Z, read.sideways)], [(Z, -read.counts)], twisted],
        [[], [(LEAN, change)], sheared, [(ROLL, change)], [(ROLL, plain)], squeezed, []],
    )


def strain_weights(samples: Samples, section: Section) -> Weights:
    """What each of `strains` weighs in the energy."""
    areas, on = samples.areas, samples.areas * samples.on
    figures = (
        section.stretch * on, section.bend * areas, section.shear * areas, section.twist * areas,
        section.sway * on, section.squeeze * on, section.junction * on,
    )  # fmt: skip
    return [*((row, row, figure) for row, figure in enumerate(figures)), (0, 1, section.stretch_bend * on)]


def moves(samples: Samples, read: Read) -> Readings:
    """Five: the foot's movement along the bar and its section's lean, the foot's across it and the section's roll, and
    its rise."""
    plain = samples.spline
    foot = 0.5 * samples.bar.side * samples.thickness[:, None]

    def moved(way: FloatArray) -> Part:
        level = [(X, read.counts * way[0]), (Y, read.counts * way[1])]
        return [*level, (LEAN_X, read.counts * foot * way[0]), (LEAN_Y, read.counts * foot * way[1])]

    rise = [(RISE, plain), (ROLL, -samples.across[:, None] * plain)]
    return Readings(
        [moved(samples.bar.way), [], moved(samples.bar.left), [], []],
        [[], [(LEAN, plain)], [], [(ROLL, plain)], rise],
    )


def move_weights(samples: Samples, section: Section) -> Weights:
    """What each of `moves` weighs in the mass."""
    plain, leaned, lean = (each * samples.areas for each in (section.weight, section.weight_lean, section.lean))
    figures = (plain, lean, plain, lean, plain)
    return [*((row, row, figure) for row, figure in enumerate(figures)), (0, 1, leaned), (2, 3, leaned)]


def rows(samples: Samples, of_plate: Part, of_bar: Part, size: int) -> csr_matrix:
    """One reading at the samples from `size` movements, (p, size)."""
    columns = [EACH * samples.nodes + kind for kind, _ in of_plate]
    columns += [samples.splines + kind * samples.track.functions for kind, _ in of_bar]
    figures = [figure for _, figure in (*of_plate, *of_bar)]
    if not columns:
        return csr_matrix((len(samples.along), size))
    return sparse_rows(np.concatenate(columns, axis=1), np.concatenate(figures, axis=1), size)


def squares(samples: Samples, readings: Readings, weights: Weights, size: int) -> Squares:
    """An energy as a sum of squares: of two readings that weigh together, one is read with a share of the other."""
    own = {one: weight for one, other, weight in weights if one == other}
    of_bar = list(readings.of_bar)
    for one, other, weight in weights:
        if one != other:
            share = np.divide(weight, own[one], out=np.zeros_like(weight), where=own[one] > 0)
            of_bar[one] = of_bar[one] + [(kind, figure * share[:, None]) for kind, figure in of_bar[other]]
            own[other] = own[other] - weight * share
    parts = zip(readings.of_plate, of_bar, own.values(), strict=True)
    return Squares.joined([Squares(rows(samples, plate, bar, size), weight) for plate, bar, weight in parts])


def strain_squares(samples: Samples, size: int) -> Squares:
    """The bar's energy among `size` movements."""
    return squares(samples, strains(samples, samples.read), strain_weights(samples, samples.section), size)


def move_squares(samples: Samples, size: int) -> Squares:
    """The bar's mass among `size` movements."""
    return squares(samples, moves(samples, samples.read), move_weights(samples, samples.section), size)
