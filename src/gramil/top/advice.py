"""How much to take off which brace so that the bridge turns, or a mode sounds, as asked: carried out, and solved again.

The first step follows the derivatives; the top is then solved again with the brace as it would be, and the amount
adjusted until the result is what was asked for. Never more is taken off than the brace still has.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from gramil.faults import MakersFault
from gramil.physics.plates.nodal_lines import rises
from gramil.physics.plates.sensitivity import near_pairs
from gramil.quantities import Hertz, Mm, Radians
from gramil.top.braced import Moved, Solved
from gramil.top.derivatives import Changes, room_of

KEPT = 0.02
"""How near the promise is met: a share of the change that was asked for."""
STEPS = 5
ALIKE = 0.8
"""How alike the shapes must be for a mode to be the same as before: 1 is the same shape."""
ADDED = 1.0
"""The most that is added to a brace, a share of its height."""


@dataclass(frozen=True)
class ShavingGoal:
    """What is wanted: a `turn` of the bridge (radians), or that `mode` (from 0) sounds at `hertz`."""

    turn: Radians | None = None
    mode: int = 0
    hertz: Hertz | None = None


@dataclass(frozen=True)
class ModeMoved:
    """A mode before and after, Hz; `alike` is how much its shape stayed the same."""

    name: str
    before: Hertz
    after: Hertz
    alike: float


@dataclass(frozen=True)
class Advice:
    """Take `off` mm (less than 0: add) the braces; what was asked for and what comes of it, and what else moves.

    `by_first_order` is what the derivatives alone would have said, `room` how much the braces have, `reached` whether
    what was asked for is met, and `warnings` what to heed, in words.
    """

    braces: tuple[str, ...]
    off: Mm
    by_first_order: Mm
    room: Mm
    wanted: float
    found: float
    reached: bool
    before: Moved
    after: Moved
    modes: tuple[ModeMoved, ...]
    warnings: tuple[str, ...]


def advised(top: Solved, changes: Changes, braces: Sequence[str], asked: ShavingGoal) -> Advice:
    """What to take off (or add to) braces of these names, all alike, so that what is asked for is met.

    Raises MakersFault for a brace that the top does not have, and where the braces' height does nothing.
    """
    bars = {each.name: each for each in top.braced.bars}
    if strange := [each for each in braces if each not in bars]:
        raise MakersFault.of(
            f'the top has no brace "{strange[0]}"', f"its braces: {', '.join(bars)}", "name one of them"
        )
    slope = _slope(changes, braces, asked)
    start, wanted = _read(top, top, asked), asked.turn if asked.hertz is None else asked.hertz
    assert wanted is not None
    if abs(slope) < 1e-12:
        raise MakersFault.of(f"the height of {', '.join(braces)} does not move that", remedy="name another brace")
    first = (wanted - start) / slope
    room = min(room_of(bars[each]) for each in braces)
    most = ADDED * min(bars[each].height for each in braces)
    amount, after, found = _carried_out(top, braces, asked, (first, wanted, start), (-room, most))
    reached = abs(found - wanted) <= KEPT * abs(wanted - start) + 1e-12
    modes = tuple(_moved_modes(top, after))
    return Advice(
        tuple(braces), -amount, -first, room, wanted, found, reached, top.moved, after.moved, modes,
        tuple(_warnings(top, modes, reached)),
    )  # fmt: skip


def _carried_out(
    top: Solved,
    braces: Sequence[str],
    asked: ShavingGoal,
    aim: tuple[float, float, float],
    bounds: tuple[float, float],
) -> tuple[float, Solved, float]:
    """The amount that meets what is wanted (by regula falsi from nothing done), the top with it, and what it gives."""
    first, wanted, start = aim
    known = [(0.0, start)]
    amount = min(max(first, bounds[0]), bounds[1])
    for _ in range(STEPS):
        after = raised(top, braces, amount)
        found = _read(top, after, asked)
        known.append((amount, found))
        if abs(found - wanted) <= KEPT * abs(wanted - start):
            break
        (one, low), (other, high) = sorted(known, key=lambda each: abs(each[1] - wanted))[:2]
        if abs(high - low) < 1e-15:  # this brace moves nothing, and there is no slope to go by
            break
        following = min(max(one + (wanted - low) * (other - one) / (high - low), bounds[0]), bounds[1])
        if any(abs(following - each) < 1e-6 for each, _ in known):
            break
        amount = following
    return amount, after, found


def raised(top: Solved, braces: Sequence[str], more: float) -> Solved:
    """The top with these braces higher by `more` mm, solved on the same triangles when it is read."""
    return top.with_bars([each.raised(more) for each in top.braced.bars if each.name in braces])


def _slope(changes: Changes, braces: Sequence[str], asked: ShavingGoal) -> float:
    """What one more mm of all the braces does to what is asked for."""
    own = [each.higher for each in changes.bars if each.name in braces]
    if asked.hertz is None:
        return float(sum(each.quantities[0] for each in own))
    return float(sum(each.frequencies[asked.mode] for each in own))


def _read(before: Solved, top: Solved, asked: ShavingGoal) -> float:
    if asked.hertz is None:
        return top.moved.turn
    if top is before:
        return float(top.modes.frequencies[asked.mode])
    likeness = alike(before, top)[asked.mode]
    return float(top.modes.frequencies[int(likeness.argmax())])


def alike(before: Solved, after: Solved) -> np.ndarray:
    """How alike each mode before and each after are, (k, k): 1 is the same shape."""
    one, other = (rises(each.whole.mesh, each.modes.movements) for each in (before, after))
    one, other = (each / np.linalg.norm(each, axis=0) for each in (one, other))
    return np.asarray(np.abs(one.T @ other))


def _moved_modes(before: Solved, after: Solved) -> list[ModeMoved]:
    likeness = alike(before, after)
    rows = []
    for number, row in enumerate(likeness):
        best = int(row.argmax())
        frequencies = float(before.modes.frequencies[number]), float(after.modes.frequencies[best])
        rows.append(ModeMoved(f"mode {number + 1}", *frequencies, float(row[best])))
    return rows


def _warnings(top: Solved, modes: Sequence[ModeMoved], reached: bool) -> list[str]:
    told = (
        [] if reached else ["what is asked for is not reached: the brace has no more, or it is not the one to move it"]
    )
    for one, other in near_pairs(top.modes.frequencies):
        told.append(f"modes {one + 1} and {other + 1} nearly coincide: what is said of either may be the other's")
    mixed = [each.name for each in modes if each.alike < ALIKE]
    if mixed:
        told.append(f"{', '.join(mixed)}: the shape changes so much that it is hardly the same mode")
    return told
