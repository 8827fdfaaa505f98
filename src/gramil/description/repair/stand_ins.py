"""What stands in, while a guitar that came in is read, for keys that its description leaves out.

A stand-in only lets the rest be read: its value is shown nowhere. A base value that hangs on one is not a number
afterwards, as is every length of the guitar that would be usual for a new one: an old guitar has its own, not yet
measured. What is wanted of the work (action, relief, what shows of the saddle) keeps its usual values.
"""

import math
import tomllib
from collections.abc import Iterable, Mapping
from importlib.resources import files
from typing import Any

from gramil import names as n
from gramil.description.locate import Path

STANDS_IN: Mapping[str, Mapping[str, Any]] = tomllib.loads(
    (files("gramil") / "data" / "stand-ins.toml").read_text(encoding="utf-8")
)
"""Values of required keys, of no meaning of their own."""
OF_THE_GUITAR = frozenset(
    ("scale", "nut", "bridge", "board", "binding", "wire", "neck", "carve", "saddle", "head", "top")
)
"""Tables that say what a guitar is; the others say what is wanted, or count only once a body is described."""
WANTED = frozenset(
    (
        *("saddle.exposed", "saddle.beyond", "nut.set_forward", "nut.behind", "wire.on_hand"),
        *("nut.pair", "bridge.pair", "bridge.rows_apart"),
    )
)
"""Keys of theirs that say what is wanted, or are none unless they are given; of pairs, which only some have."""
WITH: Mapping[str, tuple[str, ...]] = {
    n.board_width.address: ("board.width_at",),
    n.scale_sideways.address: ("nut.spread", "bridge.spread"),
}
"""Base values that say nothing without these keys."""
UNITS = frozenset(("mm", "1/mm", "rad"))
"""Of base values that an old guitar has and nobody has measured yet."""
NOT_KNOWN = "not known: not given of a guitar that came in"
"""The origin of such a value."""


def came_in(data: Mapping[str, Any]) -> bool:
    """Whether the tables of a text, as read, are those of a guitar that came in."""
    return isinstance(data.get("repair"), dict) and bool(data["repair"])


def with_stand_ins(data: Mapping[str, Any]) -> tuple[dict[str, Any], frozenset[str]]:
    """The tables with stand-ins for required keys that are not given, and the tables that have one; lengths as text.

    What is not a table is left as it is, to be reported.
    """
    filled = dict(data)
    for table, usual in {**STANDS_IN, "scale": _scale(data)}.items():
        given = data.get(table, {})
        if isinstance(given, dict) and not (table == "wire" and given):
            filled[table] = {**usual, **given}
    touched = (table for table in STANDS_IN if filled.get(table) != data.get(table))
    return filled, frozenset(touched)


def _scale(data: Mapping[str, Any]) -> dict[str, Any]:
    """A length if no scale is given, and a join on the board if none is."""
    given = data.get("scale", {})
    known = given if isinstance(given, dict) else {}
    length = {} if {"length", "bass", "treble"} & known.keys() else dict(STANDS_IN["scale"])
    frets = known.get("frets")
    join = {"join": min(12, frets)} if isinstance(frets, int) and frets >= 1 else {"join": 1}
    return {**length, **join}


def is_known(name: str, keys: Iterable[str], lines: Mapping[Path, int], body: bool) -> bool:
    """Whether a base value that these keys set is known for a guitar that came in: given, wanted, or not of the guitar.

    If its `body` is described, the top's usual values are taken as those that it was built by.
    """
    keys = tuple(keys)
    if any(tuple(key.split(".")) in lines for key in keys):
        return all(tuple(key.split(".")) in lines for key in WITH.get(name, ()))
    tables = OF_THE_GUITAR - {"top"} if body else OF_THE_GUITAR
    return not any(key.partition(".")[0] in tables and key not in WANTED for key in keys)


def unknown(name: str, value: Any, unit: str) -> Any:
    """A base value that nobody knows: not a number if it is one length, curvature or angle, else as it stands."""
    counted = unit in UNITS or name == n.scale_join.address
    none = name == n.scale_sideways.address and value == 0  # frets that are parallel run along no slanted line
    return math.nan if isinstance(value, float) and counted and not none else value
