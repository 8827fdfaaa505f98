"""A figure as made compared with what it should be: which of its rows are off, and by how much."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from itertools import islice
from math import inf, isnan, nan
from typing import Any

import numpy as np

from gramil.change.made_rows import Fixed, passes
from gramil.description.shop.tolerances import half_shown
from gramil.graph import Figures
from gramil.quantities import axes_of
from gramil.rows import member_label

Value = float | str
"""A figure's value; a choice in words."""
NOTHING = "nothing"
"""What should be where the instrument no longer has the figure."""


@dataclass(frozen=True)
class OffRow:
    """One row of a figure: its address, its place in words, what it is and should be.

    `difference` is what it should be less what it is: not a number for choices or a different number of rows.
    `off` is that in multiples of the tolerance (1 or less is right), `rows` how many of the figure's rows are off.
    """

    address: str
    where: str
    is_now: Value
    should_be: Value
    difference: float
    off: float
    rows: int = 1


def off_rows(fixed: Fixed, made: Figures, wanted: Figures) -> tuple[OffRow, ...]:
    """The row that is too small by most and the one too large by most; before them, rows that only one of the two has.

    A figure that is right gives one row; one of which nothing is known gives none.
    """
    old, new = made[fixed.figure], wanted[fixed.figure]
    if _is_choice(old) or _is_choice(new):
        return (_choice(fixed, old, new),)
    if old is new:  # as most figures are that a change does not touch: all rows are right, and the first says so
        before = after = dict(islice(_known(fixed, made, old), 1))
    else:
        before, after = dict(_known(fixed, made, old)), dict(_known(fixed, wanted, new))
    compared = tuple(_compared(made, before, after, passes(fixed, wanted)))
    worst = tuple(_worst([row for row in compared if row.off > 1.0]))
    axes = axes_of(made.graph.annotation(fixed.figure))
    return (*_unmatched(fixed, before, after, axes), *(worst or compared[:1]))


def _is_choice(value: Any) -> bool:
    """Words, a flag, or a list of plain numbers, such as the frets that carry a marker."""
    if isinstance(value, tuple):
        return bool(value) and all(isinstance(each, int | float | str) for each in value)
    return isinstance(value, str | bool | np.bool_)


def _choice(fixed: Fixed, old: Any, new: Any) -> OffRow:
    return OffRow(fixed.figure, "", _words(old), _words(new), nan, 0.0 if old == new else inf)


def _words(value: Any) -> str:
    if isinstance(value, bool | np.bool_):
        return "yes" if value else "no"
    return ", ".join(f"{each}" for each in value) or "none" if isinstance(value, tuple) else str(value)


Values = Mapping[str, tuple[Value, str]]
"""Each row's value and where it is, by its address."""


def _known(fixed: Fixed, figures: Figures, value: Any) -> Iterator[tuple[str, tuple[Value, str]]]:
    """Every row that is known."""
    return ((address, (each, where)) for address, where, each in _rows(fixed, figures, value) if each == each)


def _rows(fixed: Fixed, figures: Figures, value: Any) -> Iterator[tuple[str, str, Value]]:
    """Address, place and value of every row."""
    if isinstance(value, tuple):
        for number, each in enumerate(value, 1):
            if _is_meant(fixed, each):
                address = f"{fixed.figure}[{member_label(number, each)}].{fixed.field}"
                yield address, str(getattr(each, "name", number)), _plain(getattr(each, fixed.field))
    elif fixed.field:
        if _is_meant(fixed, value):
            yield f"{fixed.figure}.{fixed.field}", "", _plain(getattr(value, fixed.field))
    else:
        rows = np.asarray(value, dtype=np.float64)
        places = _rows_of(fixed.figure, axes_of(figures.graph.annotation(fixed.figure)), rows.shape)
        yield from (
            (address, where, each) for (address, where), each in zip(places, rows.ravel().tolist(), strict=True)
        )


@lru_cache(maxsize=1024)
def _rows_of(figure: str, axes: tuple[str, ...], shape: tuple[int, ...]) -> tuple[tuple[str, str], ...]:
    """Address and place of every row of an array, the last axis running first. Cached: what is made and what is wanted
    have the same, for every draft again.
    """
    named = [[row + (axis == "string") for row, axis in zip(at, axes, strict=True)] for at in np.ndindex(shape)]
    addresses = (f"{figure}[{', '.join(map(str, each))}]" if each else figure for each in named)
    return tuple(zip(addresses, (_place(axes, each) for each in named), strict=True))


def _is_meant(fixed: Fixed, record: Any) -> bool:
    """Whether a record is one of those that are judged, and says anything."""
    return all(getattr(record, key) == wanted for key, wanted in (fixed.of or {}).items()) and not any(
        getattr(record, key) in values for key, values in (fixed.unless or {}).items()
    )


def _plain(value: Any) -> Value:
    return value if isinstance(value, str) else float(value)


def _place(axes: tuple[str, ...], named: list[int]) -> str:
    return ", ".join(f"{axis} {number}" for axis, number in zip(axes, named, strict=True) if axis != "any")


def _compared(made: Figures, old: Values, new: Values, play: tuple[float, float]) -> Iterator[OffRow]:
    both = [address for address in old if address in new]
    shown = half_shown(made.unit_at(both[0])) if both else 0.0  # one field of one figure: all have one unit
    for address in both:
        (is_now, where), (should_be, _) = old[address], new[address]
        difference = _less(should_be, is_now)
        off = inf if isnan(difference) else _off(difference, play, shown)
        yield OffRow(address, where, is_now, should_be, difference, off)


def _less(one: Value, other: Value) -> float:
    """One less the other: zero between equals, also between two infinities, and nan between two words."""
    if one == other:
        return 0.0
    return nan if isinstance(one, str) or isinstance(other, str) else one - other


def _off(difference: float, play: tuple[float, float], shown: float) -> float:
    """A difference in multiples of the tolerance; one that shows as exactly the tolerance counts as within it."""
    passing = play[0] if difference > 0 else play[1]
    return abs(difference) / (passing + shown) if passing != inf else 0.0


def _worst(off: list[OffRow]) -> Iterator[OffRow]:
    """Of those that are off: the first different choice, the one too small by most and the one too large by most."""
    yield from [row for row in off if isnan(row.difference)][:1]
    for side in (1, -1):
        rows = [row for row in off if row.difference * side > 0]
        if rows:
            yield replace(max(rows, key=lambda row: row.off), rows=len(off))


def _unmatched(fixed: Fixed, old: Values, new: Values, axes: tuple[str, ...]) -> Iterator[OffRow]:
    """What was made and is not wanted, or is wanted and was not made; a figure not known before is not judged.

    Rows of words are judged by the sizes beside them.
    """
    if not old or any(isinstance(value, str) for value, _ in (*old.values(), *new.values())):
        return
    if not new:
        address, (is_now, where) = next(iter(old.items()))
        yield OffRow(address, where, is_now, NOTHING, nan, inf, len(old))
    elif old.keys() != new.keys():
        count, was, now = _counted(axes), len(old), len(new)
        less = axes == ("fret",)  # one row more than there are frets: the zero line's
        yield OffRow(fixed.figure, count, float(was - less), float(now - less), nan, inf, len(old.keys() ^ new.keys()))


def _counted(axes: tuple[str, ...]) -> str:
    """What the rows of a figure count: frets, strings and the like."""
    return f"{axes[0]}s" if axes and axes[0] != "any" else ""
