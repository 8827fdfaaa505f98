"""What a shaving does to a solved top: derivatives of what is read of it, and how much a brace still has to shave."""

from dataclasses import dataclass

import numpy as np
from scipy.sparse import csr_matrix, vstack

from gramil.physics.arrays import FloatArray
from gramil.physics.plates.bar import Bar
from gramil.physics.plates.sensitivity import BarChange, Movements, bar_changes, movements_of, thickness_change
from gramil.top.braced import Solved

LEFT = 2.0
"""A brace of one height all along is not to be shaved under this, mm: practice, no source."""
QUANTITIES = 4
"""Of the loaded top: turn, lift under the saddle, rise where it sinks most, rise where it rises most."""


@dataclass(frozen=True, eq=False)
class Changes:
    """The derivatives behind that: of each bar, and of the top's own thickness."""

    name: str
    bars: tuple[BarChange, ...]
    thickness: FloatArray


def changes_of(top: Solved) -> Changes:
    """How turn, lift, sink, rise and modes move with each brace and with the thickness."""
    movements = movements_between(top)
    thicker = thickness_change(top.whole, movements)
    return Changes("top", bar_changes(top.whole, movements), np.concatenate([thicker.quantities, thicker.frequencies]))


def movements_between(top: Solved) -> Movements:
    """What derivatives of the four quantities and of the modes are taken between."""
    rows = vstack([top.read, top.read_at([top.moved.sunk_at, top.moved.risen_at])])
    return movements_of(top.whole, top.moves, csr_matrix(rows), top.modes)


def room_of(bar: Bar) -> float:
    """How much may come off a bar's height: down to its worked ends, or to the least that is left of a level one."""
    least = min(height for _, height in bar.crest)
    return max(0.0, bar.height - (least if least < bar.height - 0.01 else LEFT))  # level but for rounding
