"""The rows of `data/made.toml`: which figures each operation fixes in the wood, on which piece, and what mends them."""

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache, cached_property
from typing import Any

from gramil.graph import Figures
from gramil.package_data import data_tables

Play = float | str
"""How much passes, in the figure's unit; or the name of a limit that says it."""


@dataclass(frozen=True)
class Fixed:
    """One figure that an operation fixes, its tolerance, and what mends a figure that is too small or too large.

    `more` mends what is too small, as far as `more_within`, `less` what is too large; without one it is lost. `single`
    mends up to `few` rows that are off, `other` a different number of rows or a different choice. For records, the
    figure is `field` of those that `of` describes, but for those that say nothing (`unless`). Under or over the figures
    `lost_under` and `lost_over` nothing helps. For a `tool` only the reading is judged: what is cut stays cut when the
    shop's tool changes. A reading `settles` the description's key of that name, `brace.height` of the brace that was
    read: `settled.py`. At the zero line it is `settles_at_zero`, if that is given; of one of several records that have
    keys of their own it is that of `settles_of`, by the record's name. Where the description gives another key in its
    place it is `settles_else`; one that may be `left_out` is settled by a reading even so.
    """

    figure: str
    play: Play = 0.0
    too: tuple[str, str] = ("too little", "too much")
    more: str = ""
    less: str = ""
    field: str = ""
    of: Mapping[str, str] | None = None
    unless: Mapping[str, Sequence[str]] | None = None
    play_over: Play | None = None
    more_within: float = math.inf
    less_within: float = math.inf
    lost_under: str = ""
    lost_over: str = ""
    few: int = 0
    single: str = ""
    other: str = ""
    tool: bool = False
    settles: str = ""
    settles_at_zero: str = ""
    settles_of: Mapping[str, str] | None = None
    settles_else: str = ""
    left_out: bool = False

    @property
    def settles_any(self) -> bool:
        """Whether a reading of it settles a key."""
        return bool(self.settles or self.settles_of)


@dataclass(frozen=True)
class Operation:
    """What was done, in words; the figures that it fixed, or the `reason` why none; the piece it was done on.

    Where it `joins` pieces, `parted` says what is done when one of them is lost. Once an operation in `until` is done,
    that one is judged instead.
    """

    name: str
    what: str
    piece: str = ""
    fixes: tuple[Fixed, ...] = ()
    reason: str = ""
    joins: tuple[str, ...] = ()
    parted: str = ""
    until: tuple[str, ...] = ()

    @cached_property
    def brings_about(self) -> frozenset[str]:
        """The figures that it is to bring about: those that it fixes, except those that settle an input once they are
        made.
        """
        settling = {each.figure for each in self.fixes if each.settles_any}
        return frozenset(each.figure for each in self.fixes if each.figure not in settling)


@dataclass(frozen=True)
class Piece:
    """What operations are done on, in words; the figures that name its wood; what is done when it is lost."""

    name: str
    what: str
    anew: str
    wood: tuple[str, ...] = ()

    @property
    def is_(self) -> str:
        """The piece with its verb: `the neck is`, `the sides are`."""
        return f"{self.what} {'are' if self.what.endswith('s') else 'is'}"


@cache
def _data() -> Mapping[str, Any]:
    return data_tables("made")


@cache
def operations() -> Mapping[str, Operation]:
    """Every operation of the package's list, by name."""
    return {name: _operation(name, row) for name, row in _data()["operation"].items()}


@cache
def pieces() -> Mapping[str, Piece]:
    """Every piece that operations are done on, by name."""
    return {
        name: Piece(name, row["what"], row["anew"], tuple(row.get("wood", ())))
        for name, row in _data()["piece"].items()
    }


def _operation(name: str, row: Mapping[str, Any]) -> Operation:
    fixes = tuple(_fixed(each) for each in row.get("fixes", ()))
    joins, until = (tuple(row.get(key, ())) for key in ("joins", "until"))
    words = {key: value for key, value in row.items() if key not in ("fixes", "joins", "until")}
    return Operation(name, fixes=fixes, joins=joins, until=until, **words)


def _fixed(row: Mapping[str, Any]) -> Fixed:
    """`both` stands for `more` and `less`."""
    both = row.get("both", "")
    rest = {key: value for key, value in row.items() if key not in ("both", "too")}
    return Fixed(**{"more": both, "less": both, "too": tuple(row.get("too", Fixed.too)), **rest})


def passes(fixed: Fixed, figures: Figures) -> tuple[float, float]:
    """How much too small and how much too large is still accepted, in the figure's unit."""
    under = _play(fixed.play, figures)
    return under, under if fixed.play_over is None else _play(fixed.play_over, figures)


def _play(play: Play, figures: Figures) -> float:
    return float(figures[play]) if isinstance(play, str) else play
