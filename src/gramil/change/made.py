"""Finished work judged by the figures that each operation fixed: still right, to be reworked (and how), or lost.

Which figures an operation fixes, on which piece, and what mends them are rows of `data/made.toml`. If anything on a
piece is lost, or its wood is now a different one, the whole piece is lost.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from math import isnan
from typing import Literal

from gramil.address import parse_address
from gramil.change.made_rows import Fixed, Operation, operations, passes, pieces
from gramil.change.off_rows import OffRow, Value, off_rows
from gramil.change.settled import readings, settled
from gramil.change.whose_reading import Pins, later_in, up_to
from gramil.graph import Figures
from gramil.shop.operations import Work
from gramil.shop.operations_file import usual_work

Standing = Literal["still right", "rework", "lost"]
WORST_LAST: tuple[Standing, ...] = ("still right", "rework", "lost")


@dataclass(frozen=True)
class Judged:
    """The verdict on what an operation made. `address` is the figure that is furthest off, with what it is and should
    be.

    `too` says how it is off ("too shallow"), `where` in which row; `unit` is the figure's symbol. `piece` is what it
    was done on, in words; `along` is true if it is lost only because the piece is.
    """

    operation: str
    what: str
    standing: Standing
    address: str
    is_now: Value
    should_be: Value
    remedy: str
    too: str = ""
    where: str = ""
    unit: str | None = None
    piece: str = ""
    along: bool = False


def judge(made: Mapping[str, Figures], wanted: Figures, work: Work | None = None) -> tuple[Judged, ...]:
    """The verdict on each operation done: `made` gives the figures by which it was done, with what was measured.

    `wanted` are the figures as they should be; measurements of them do not count. An operation that fixes nothing, or
    nothing that this instrument has, or that later work has superseded, is left out unless its piece is lost.
    """
    rows = {name: operations()[name] for name in made if name in operations()}
    seen = _Sights(made, wanted, work or usual_work())
    standing = {name: row for name, row in rows.items() if not set(row.until) & set(made)}
    found = {name: each for name, row in standing.items() if (each := _judged(row, *seen.of(name))) is not None}
    return tuple(_with_pieces(rows, found, made, wanted))


class _Sights:
    """The figures by which operations are judged; those that several share are worked out once."""

    def __init__(self, made: Mapping[str, Figures], wanted: Figures, work: Work) -> None:
        self._made, self._wanted = made, wanted
        self._later = later_in(work, wanted) if any(figures.pins for figures in made.values()) else {}
        self._known: dict[tuple[int, frozenset[tuple[str, str]]], Figures] = {}

    def of(self, name: str) -> tuple[Figures, Figures, Figures]:
        """As it was made, as its sheet had it then, and as its sheet has it now."""
        old = self._made[name]
        done = tuple(self._made)
        read = readings(old.pins)
        own, before = (up_to(name, read, done, self._later, own=each) for each in (True, False))
        return self._pinned(old, own), self._pinned(old, before), self._pinned(self._wanted, before)

    def _pinned(self, figures: Figures, pins: Pins) -> Figures:
        key = id(figures), frozenset((address, pin.at) for address, pin in pins.items())
        if key not in self._known:
            self._known[key] = settled(figures.with_pins(pins))
        return self._known[key]


def _judged(row: Operation, made: Figures, then: Figures, now: Figures) -> Judged | None:
    """The figure that is furthest off, or nothing if none is known."""
    found = [
        (_standing(fixed, off, now), off.off, fixed, off)
        for fixed in row.fixes
        for off in off_rows(fixed, made, then if fixed.tool else now)
    ]
    if not found:
        return None
    standing, _, fixed, off = max(found, key=lambda each: (WORST_LAST.index(each[0]), each[1]))
    return Judged(
        row.name,
        row.what,
        standing,
        off.address,
        off.is_now,
        off.should_be,
        _anew(row) if standing == "lost" else remedy(fixed, off.difference, off.rows) if standing == "rework" else "",
        _too(fixed, off) if standing != "still right" else "",
        off.where,
        made.unit_at(off.address) if parse_address(off.address)[0] in made else None,
        pieces()[row.piece].what if row.piece else "",
    )


def _too(fixed: Fixed, off: OffRow) -> str:
    """In which way it is off, in words; empty for a different number of rows, and for something no longer wanted."""
    if isnan(off.difference):
        return fixed.too[0] if isinstance(off.is_now, str) and fixed.field else ""
    return fixed.too[off.difference < 0]


def _anew(row: Operation) -> str:
    return pieces()[row.piece].anew if row.piece else "Make it anew."


def _standing(fixed: Fixed, off: OffRow, wanted: Figures) -> Standing:
    if off.off <= 1.0:
        return "still right"
    if isinstance(off.is_now, float) and not isnan(off.difference):
        beyond = fixed.lost_under and off.is_now < float(wanted[fixed.lost_under])
        if beyond or (fixed.lost_over and off.is_now > float(wanted[fixed.lost_over])):
            return "lost"
    return "rework" if remedy(fixed, off.difference, off.rows) else "lost"


def remedy(fixed: Fixed, difference: float, rows: int = 1) -> str:
    """What mends a figure that should be larger by this much, with this many rows off; empty if nothing does."""
    if isnan(difference):
        return fixed.other
    if fixed.single and rows <= fixed.few:
        return fixed.single
    if difference > 0:
        return fixed.more if difference <= fixed.more_within else ""
    return fixed.less if -difference <= fixed.less_within else ""


def verdict(fixed: Fixed, difference: float, figures: Figures) -> tuple[Standing, str]:
    """The verdict on a part whose figure should be larger by this much (in the figure's unit), and what can be done."""
    under, over = passes(fixed, figures)
    if isnan(difference) or -over <= difference <= under:
        return "still right", ""
    mends = remedy(fixed, difference)
    return ("rework" if mends else "lost"), mends


def _with_pieces(
    rows: Mapping[str, Operation], found: Mapping[str, Judged], made: Mapping[str, Figures], wanted: Figures
) -> Iterator[Judged]:
    """Each operation's verdict, adding what is lost because its piece is, and what has to be parted from such a
    piece.
    """
    woods = {name: each for name, row in rows.items() if (each := _other_wood(row, row.piece, made[name], wanted))}
    lost = {rows[name].piece for name in woods} | {rows[name].piece for name, each in found.items() if _lost(each)}
    told: set[str] = set()
    for name, row in rows.items():
        if name in woods:
            yield replace(woods[name], along=row.piece in told)
            told.add(row.piece)
        elif row.piece in lost and row.piece and not _lost(found.get(name)):
            yield Judged(name, row.what, "lost", "", "", "", _anew(row), piece=pieces()[row.piece].what, along=True)
        elif (gone := _gone(row, lost, made[name], wanted)) and not _lost(found.get(name)):
            yield Judged(name, row.what, "rework", "", "", "", row.parted, f"{pieces()[gone].is_} lost")
        elif name in found:
            yield found[name]


def _lost(each: Judged | None) -> bool:
    return each is not None and each.standing == "lost"


def _gone(row: Operation, lost: set[str], made: Figures, wanted: Figures) -> str:
    """The first lost piece among those that an operation joins."""
    return next((each for each in row.joins if each in lost or _other_wood(row, each, made, wanted)), "")


def _other_wood(row: Operation, piece: str, made: Figures, wanted: Figures) -> Judged | None:
    """An operation's piece, if the description now names a different wood for it."""
    for figure in pieces()[piece].wood if piece else ():
        old, new = str(made[figure]), str(wanted[figure])
        if old != new:
            on = pieces()[piece]
            return Judged(row.name, row.what, "lost", figure, old, new, on.anew, "another wood", piece=on.what)
    return None
