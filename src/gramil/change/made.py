"""What a change does to parts already made: still right, can be reworked and how, or lost.

Which figures an operation fixes, and what can be done when one changes, are rows of `data/made.toml`.
"""

import tomllib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import Literal

import numpy as np

from gramil.graph import Figures
from gramil.quantities import axes_of

Standing = Literal["still right", "can be reworked", "lost"]
WORST_LAST: tuple[Standing, ...] = ("still right", "can be reworked", "lost")


@dataclass(frozen=True)
class Fixed:
    """One figure that an operation fixes, the play it has, and the remedies when it grows or shrinks."""

    figure: str
    play: float
    more: str
    less: str


@dataclass(frozen=True)
class Operation:
    """What was done, in words, and the figures that it fixed in the wood."""

    name: str
    what: str
    fixes: tuple[Fixed, ...]


@dataclass(frozen=True)
class Judged:
    """How a made part stands after a change. `address` is the figure worst off, with what it is and should be."""

    operation: str
    what: str
    standing: Standing
    address: str
    is_now: float
    should_be: float
    remedy: str


@cache
def operations() -> Mapping[str, Operation]:
    """Every operation that fixes figures, by name, as the package ships them."""
    rows = tomllib.loads((files("gramil") / "data" / "made.toml").read_text(encoding="utf-8"))
    return {
        name: Operation(name, row["what"], tuple(Fixed(**fixed) for fixed in row["fixes"]))
        for name, row in rows.items()
    }


def judge(done: Iterable[str], made: Figures, wanted: Figures) -> tuple[Judged, ...]:
    """How each operation done stands: `made` are the old figures with what was measured, `wanted` the new ones drawn.

    Operations that fix nothing known, or nothing that this instrument has, are left out.
    """
    known = operations()
    return tuple(judged for name in done if name in known for judged in _judged(known[name], made, wanted))


def _judged(operation: Operation, made: Figures, wanted: Figures) -> tuple[Judged, ...]:
    """The figure worst off, or nothing where the part is not described."""
    found = [each for fixed in operation.fixes for each in _against(operation, fixed, made, wanted)]
    worst = sorted(found, key=lambda each: (WORST_LAST.index(each.standing), abs(each.should_be - each.is_now)))
    return tuple(worst[-1:])


def _against(operation: Operation, fixed: Fixed, made: Figures, wanted: Figures) -> Iterator[Judged]:
    """The figure's rows that grew most and shrank most, each with its verdict."""
    old, new = np.atleast_1d(made[fixed.figure]), np.atleast_1d(wanted[fixed.figure])
    rows = min(len(old), len(new))
    with np.errstate(invalid="ignore"):  # flat before and flat now
        difference = new[:rows] - old[:rows]
    known = np.nonzero(~np.isnan(difference))[0]
    axes = axes_of(made.graph.annotation(fixed.figure))
    for row in {int(known[difference[known].argmax()]), int(known[difference[known].argmin()])} if len(known) else ():
        address = f"{fixed.figure}[{row + (axes[0] == 'string')}]" if axes else fixed.figure
        yield Judged(
            operation.name,
            operation.what,
            _standing(fixed, float(difference[row])),
            address,
            float(old[row]),
            float(new[row]),
            _remedy(fixed, float(difference[row])),
        )
    if len(old) != len(new):
        yield Judged(operation.name, operation.what, "lost", fixed.figure, float(len(old)), float(len(new)), "")


def verdict(fixed: Fixed, difference: float) -> tuple[Standing, str]:
    """How a part stands whose figure should be so much more than it is (in the figure's unit), and what can be done."""
    return _standing(fixed, difference), _remedy(fixed, difference)


def _standing(fixed: Fixed, difference: float) -> Standing:
    if abs(difference) <= fixed.play or difference != difference:
        return "still right"
    return "can be reworked" if _remedy(fixed, difference) else "lost"


def _remedy(fixed: Fixed, difference: float) -> str:
    if abs(difference) <= fixed.play:
        return ""
    return fixed.more if difference > 0 else fixed.less
