"""A body's outline and a brace as the solved plate takes them; nothing is wired here."""

import numpy as np

from gramil.description.wood.timbers import TimberKnown
from gramil.parts.body_records import Brace, Crossing, Shell
from gramil.physics.arrays import FloatArray
from gramil.physics.plates.bar import Bar, Gap

STEP = 6.0
"""How far apart the outline is sampled, mm."""
CREST = 2.8
"""How far apart a brace's height is sampled, mm."""


def bar_of(brace: Brace, crossings: tuple[Crossing, ...], wood: TimberKnown) -> Bar:
    """A brace as a bar: as high along its length as it is cut, notched where it crosses another."""
    run = min(brace.end_length, brace.length / 2) if brace.ends != "square" else brace.length / 2
    ends = np.linspace(0.0, run, max(2, round(run / CREST) + 1))
    # straight, or nine places along an arch
    middle = np.linspace(run, brace.length - run, 2 if brace.radius > 1e7 else 9)
    # ends that meet in the middle are one place, not two a rounding apart
    places = np.unique(np.concatenate([ends, middle, brace.length - ends]).round(6))
    crest = tuple(zip(places.tolist(), brace.bar.over_plate(places).tolist(), strict=True))
    under = [Gap(each.along_under, each.width_under, each.depth_over) for each in crossings if each.under == brace.name]
    over = [
        Gap(each.along_over, each.width_over, 0.0, each.depth_over) for each in crossings if each.over == brace.name
    ]
    return Bar(brace.name, brace.start, brace.stop, brace.width, crest, wood.timber, -1, (*under, *over))


def outline_of(shell: Shell) -> FloatArray:
    """The outline inside the linings as points every few mm, (n, 2)."""
    round_it = shell.lined.perimeter
    return shell.lined.point(np.linspace(0.0, round_it, round(round_it / STEP) + 1)[:-1])
