"""What a change moves: every figure of the old instrument compared with the new one, and what is no longer true."""

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, is_dataclass
from typing import Any

import numpy as np

from gramil import names as n
from gramil.findings.finding import Finding
from gramil.graph import Figures, same
from gramil.prints.papers import Paper, papers_that_differ
from gramil.prints.sharing import changed, share
from gramil.prints.whole import dimensions_of, findings_of
from gramil.quantities import Mm
from gramil.rows import Row, measured_fields, member_label, rows
from gramil.shop.operations import Work

SMALL = 0.005
"""A move of no more than this folds away unless another tolerance is asked for: see `small`."""


Value = float | int | str | bool | None


@dataclass(frozen=True)
class Move:
    """A dimension that moved, at the address where it moved most. `rows` is how many of its figures moved.

    `difference` is new less old, or not a number for words and for figures that only one of the instruments has.
    """

    part: str
    name: str
    address: str
    old: Value
    new: Value
    difference: float
    unit: str | None
    rows: int


@dataclass(frozen=True)
class Carried:
    """A feature on the body that moved along with what it is held to, `by` mm toward the tail."""

    name: str
    held_to: str
    by: Mm


@dataclass(frozen=True)
class Shift:
    """All that differs between two instruments: inputs, features, dimensions, findings and papers."""

    inputs: tuple[str, ...]
    features: tuple[Carried, ...]
    moves: tuple[Move, ...]
    folded: int
    came: tuple[Finding, ...]
    went: tuple[Finding, ...]
    papers: tuple[Paper, ...]


def shift(old: Figures, new: Figures, tolerance: float = SMALL, work: Work | None = None) -> Shift:
    """Compare two instruments' figures; `moves` is grouped by part, the biggest move first.

    Moves within the tolerance are only counted (`folded`). With the `work` that is needed,
    sheets of operations without a set-up are among the papers.
    """
    inputs = tuple(name for name in old.graph.inputs if not same(old.base[name], new.base[name]))
    touched = set().union(*(old.graph.below(name) for name in inputs))
    share(old, new, changed(old, new))
    moves, folded = moved((name for name in dimensions_of(old) if name in touched), old, new, tolerance)
    old_findings, new_findings = findings_of(old), findings_of(new)
    return Shift(
        inputs,
        tuple(carried(old, new, tolerance)),
        moves,
        folded,
        _not_among(new_findings, old_findings),
        _not_among(old_findings, new_findings),
        papers_that_differ(old, new, work),
    )


def moved(names: Iterable[str], old: Figures, new: Figures, tolerance: float = SMALL) -> tuple[tuple[Move, ...], int]:
    """How dimensions moved, grouped by part, the biggest move first; and how many moves are `small`."""
    moves = [move for name in names for move in _moves(name, old, new)]
    kept = [move for move in moves if not small(move.old, move.new, move.unit, tolerance)]
    return tuple(sorted(kept, key=lambda move: (move.part, -_size(move), move.name))), len(moves) - len(kept)


def small(old: Value, new: Value, unit: str | None, tolerance: float) -> bool:
    """Whether a move is within the tolerance: that number of mm, of cents or, for angles, of degrees.

    Any other figure (a force, a share, a curvature) may move by a tenth of that number as a fraction of itself.
    """
    if isinstance(old, str | bool | None) or isinstance(new, str | bool | None):
        return old == new
    move = abs(float(new) - float(old))
    if not math.isfinite(move):  # flat on both sides, or on one
        return same(old, new)
    if unit in ("mm", "cent"):
        return move <= tolerance
    if unit == "rad":
        return math.degrees(move) <= tolerance
    return move <= tolerance / 10 * max(abs(old), abs(new))


def carried(old: Figures, new: Figures, tolerance: float) -> Iterator[Carried]:
    """The features of both instruments that moved with what they are held to, furthest first."""
    before = {each.name: each.along for each in old[n.feature_list]}
    moved = [
        Carried(each.name, each.held_to, each.along - before[each.name])
        for each in new[n.feature_list]
        if each.name in before
    ]
    return iter(sorted((each for each in moved if abs(each.by) > tolerance), key=lambda each: -abs(each.by)))


def _size(move: Move) -> float:
    return _far(move.difference)


def _far(difference: float) -> float:
    return math.inf if math.isnan(difference) else abs(difference)


def _moves(name: str, old: Figures, new: Figures) -> Iterator[Move]:
    """The dimension's greatest move: one row, or none if nothing moved."""
    if old.graph.axes(name) and old[name].shape == new[name].shape:
        yield from _greatest_of_array(name, old, new)
        return
    if isinstance(old[name], float | int | str) and same(old[name], new[name]):
        return
    if old.graph.axes(name) == ("any",):
        return  # a different number of places, as on a template's edge: places of the one do not match those of the
        # other
    found = _differing(name, old, new)
    if found:  # a change of scale moves a thousand figures: of each dimension only the greatest becomes a move
        address, before, after, unit = max(found, key=lambda each: _far(_less(each[1], each[2])))
        part = old.graph.dimensions[name].part.replace("_", " ")
        yield Move(part, name, address, before, after, _less(before, after), unit, len(found))


Differing = tuple[str, Value, Value, str | None]
"""A figure's address, what it was and is (None where there is none), and its unit."""


def _differing(name: str, old: Figures, new: Figures) -> list[Differing]:
    """Every single figure of a dimension that differs; the two are compared side by side if they have the same
    structure.
    """
    if any(isinstance(each, np.ndarray) or each != each for each in (old[name], new[name])):  # rows, or not there
        return _differing_by_address(name, old, new)
    try:
        return list(side_by_side(name, old[name], new[name], old.unit_at(name)))
    except BuiltOtherwise:
        return _differing_by_address(name, old, new)


def _differing_by_address(name: str, old: Figures, new: Figures) -> list[Differing]:
    before = {row.address: row for row in rows(old, (name,))}
    after = {row.address: row for row in rows(new, (name,))}
    return [
        (address, _value(before.get(address)), _value(after.get(address)), (before.get(address) or row).unit)
        for address, row in {**before, **after}.items()
        if not _alike(before.get(address), after.get(address))
    ]


class BuiltOtherwise(Exception):  # noqa: N818 (it says what it is)
    """Two values that cannot be compared side by side."""


def side_by_side(address: str, old: Any, new: Any, unit: str | None) -> Iterator[tuple[str, Any, Any, str | None]]:
    """The plain values that differ within two records or lists of the same structure, each with its address and
    unit.
    """
    if old is new:
        return
    if isinstance(old, tuple) and isinstance(new, tuple) and len(old) == len(new):
        for number, (one, other) in enumerate(zip(old, new, strict=True), 1):
            label = member_label(number, one)
            if label != member_label(number, other):
                raise BuiltOtherwise
            yield from side_by_side(f"{address}[{label}]", one, other, unit)
    elif is_dataclass(old) and not isinstance(old, type) and type(old) is type(new):
        for field, symbol in measured_fields(type(old)):
            one, other = getattr(old, field), getattr(new, field)
            if one is not other and not (isinstance(one, float) and one == other):  # most are alike: soon seen
                yield from side_by_side(f"{address}.{field}", one, other, symbol)
    elif isinstance(old, float | int | str) and isinstance(new, float | int | str):
        if not same(old, new):
            yield address, _bare(old), _bare(new), unit
    else:
        raise BuiltOtherwise


def _bare(value: Any) -> Any:
    return value.item() if isinstance(value, np.generic) else value


def _greatest_of_array(name: str, old: Figures, new: Figures) -> Iterator[Move]:
    before, after = old[name], new[name]
    if before is after:
        return
    with np.errstate(invalid="ignore"):
        difference = after - before
        known = np.where(np.abs(difference) > 0, np.abs(difference), 0.0)
    if not known.any():
        return
    place = np.unravel_index(int(known.argmax()), known.shape)
    starts = [axis == "string" for axis in old.graph.axes(name)]
    address = f"{name}[{', '.join(str(int(row) + start) for row, start in zip(place, starts, strict=False))}]"
    part = old.graph.dimensions[name].part.replace("_", " ")
    values = float(before[place]), float(after[place])
    yield Move(part, name, address, *values, float(difference[place]), old.unit_at(name), int((known > 0).sum()))


def _alike(old: Row | None, new: Row | None) -> bool:
    return old is not None and new is not None and same(old.value, new.value)


def _value(row: Row | None) -> Value:
    return None if row is None else row.value


def _less(old: Value, new: Value) -> float:
    """New less old; not a number for words and flags, and where one of them is not there."""
    if isinstance(old, str | bool | None) or isinstance(new, str | bool | None):
        return math.nan
    return float(new) - float(old)


def _not_among(these: tuple[Finding, ...], those: tuple[Finding, ...]) -> tuple[Finding, ...]:
    """Findings that matter and whose name and severity are not among the others."""
    known = {(each.name, each.severity) for each in those}
    return tuple(each for each in these if each.severity != "fine" and (each.name, each.severity) not in known)
