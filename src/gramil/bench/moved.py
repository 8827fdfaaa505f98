"""What a draft moves, in the words of the strip over the drawing and of the list behind it."""

from collections.abc import Mapping
from dataclasses import dataclass
from itertools import groupby

from gramil.bench.draft import Draft
from gramil.bench.shelf import Held
from gramil.change.made import Judged, judge
from gramil.change.shift import Move, shift
from gramil.findings.finding import Finding
from gramil.graph import Figures
from gramil.shop.opening import Store
from gramil.shop.operations_done import operations_done
from gramil.show import Shower, shown


@dataclass(frozen=True)
class MovedRow:
    """One figure that moved most of its dimension's: from, to, by, and how many more of it moved."""

    name: str
    address: str
    old: str
    new: str
    by: str
    more: int


@dataclass(frozen=True)
class Moved:
    """All that a change moves; `figures` counts every single figure."""

    figures: int
    parts: Mapping[str, tuple[MovedRow, ...]]
    folded: int
    came: tuple[Finding, ...]
    went: tuple[Finding, ...]
    papers: tuple[str, ...]
    made: tuple[Judged, ...]

    @property
    def strip(self) -> str:
        """The strip's sentence."""
        said = f"{self.figures} figures moved" if self.figures != 1 else "1 figure moved"
        spoilt = sum(each.standing != "still right" for each in self.made)
        fit = f", {spoilt} parts already cut no longer fit" if spoilt > 1 else ", 1 part already cut no longer fits"
        return said + (fit if spoilt else "")


def moved_by(store: Store, held: Held, draft: Draft, shower: Shower) -> Moved:
    """What moves from the saved revision to the draft, and how what is made already stands."""
    done = tuple(each.operation for each in operations_done(store, held.seen.id))
    return moved_between(held.figures, draft.figures, shower, done)


def moved_between(old: Figures, new: Figures, shower: Shower, done: tuple[str, ...] = ()) -> Moved:
    """What moves from one set of figures to another."""
    found = shift(old, new)
    return Moved(
        sum(move.rows for move in found.moves),
        {part: tuple(_row(each, shower) for each in moves) for part, moves in groupby(found.moves, lambda m: m.part)},
        found.folded,
        found.came,
        found.went,
        (*found.drawings, *found.setups),
        judge(done, old, new),
    )


def _row(move: Move, shower: Shower) -> MovedRow:
    old, new = (_text(value, move, shower) for value in (move.old, move.new))
    by = "" if move.difference != move.difference else _signed(move, shower)
    return MovedRow(move.name, move.address, old, new, by, move.rows - 1)


def _text(value: float | int | str | bool | None, move: Move, shower: Shower) -> str:
    return "none" if value is None else shown(value, move.unit, shower.first)


def _signed(move: Move, shower: Shower) -> str:
    return ("+" if move.difference > 0 else "") + shown(move.difference, move.unit, shower.first)
