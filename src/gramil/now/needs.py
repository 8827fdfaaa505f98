"""What wood the open instruments need, and how parts made ahead fit them, from `data/needs.toml`."""

import math
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Any

from gramil import names as n
from gramil.change.made import WORST_LAST, Standing, verdict
from gramil.change.made_rows import Fixed, operations
from gramil.description.shop.tolerances import half_shown
from gramil.faults import MakersFault
from gramil.formatter import shown
from gramil.graph import Figures
from gramil.package_data import data_tables
from gramil.quantities import Count, Mm
from gramil.shop.measured import read_measured, unit_of_figure

STICKS, SPLIT = "brace stock", "brace_stock_split"
"""What billets for braces are promised for, and the operation that uses them up."""


@dataclass(frozen=True)
class Need:
    """Wood for one thing: its woods (any will do) and its least sizes, length along the grain.

    `cut` are the lengths of the pieces that are sawn from it in strips of that width and thickness, `kerf` between
    each two; stock wide enough for several strips may be shorter. Empty: it is one piece.
    """

    instrument: str
    name: str
    what: str
    part: str
    woods: tuple[str, ...]
    length: Mm
    width: Mm
    thickness: Mm
    number: int
    grain: str
    cut: tuple[Mm, ...] = ()
    kerf: Mm = 0.0

    @property
    def volume(self) -> float:
        """mm3."""
        return self.length * self.width * self.thickness


@dataclass(frozen=True)
class MadePart:
    """A part made ahead: its kind, its figures by address as written; `promised` names an instrument or is empty."""

    name: str
    kind: str
    figures: Mapping[str, str]
    promised: str = ""
    id: int = 0


@dataclass(frozen=True)
class Fit:
    """How a made part fits an instrument: what is off and by how much in words, and what can be done about it."""

    part: MadePart
    need: str
    standing: Standing
    off: tuple[str, ...]
    done: tuple[str, ...] = field(default=())


@cache
def _data() -> Mapping[str, Any]:
    return data_tables("needs")


def needs_of(figures: Figures, done: Collection[str]) -> tuple[Need, ...]:
    """What an instrument still needs, one need for each piece; needs whose sizes are not known are left out.

    A guitar that came in is built: it needs none.
    """
    if figures[n.repair_described]:
        return ()
    rows = _data()["need"].items()
    return tuple(need for name, row in rows if row["until"] not in done for need in _need(name, row, figures))


def _need(name: str, row: Mapping[str, Any], figures: Figures) -> Iterator[Need]:
    length, width, thickness = (float(figures.at(row[key])) for key in ("length", "width", "thickness"))
    if not all(math.isfinite(size) and size > 0 for size in (length, width, thickness)):
        return
    woods = tuple(row["woods"]) if "woods" in row else (str(figures.at(row["wood"])),)
    owner, grain = str(figures[n.instrument_name]), row.get("grain", "")
    cut = tuple(each.length for each in figures.at(row["cut"])) if "cut" in row else ()
    kerf = float(figures.at(row["kerf"])) if cut else 0.0
    for number in range(1, row.get("count", 1) + 1):
        sizes = length, width, thickness
        yield Need(owner, name, row["what"], row["part"], woods, *sizes, number, grain, cut, kerf)


def used_up_by(operation: str) -> tuple[str, ...]:
    """The needs whose wood an operation uses up."""
    found = tuple(name for name, row in _data()["need"].items() if row["until"] == operation)
    return (*found, STICKS) if operation == SPLIT else found


def used_at(need: str) -> str:
    """The operation that uses the wood of a need up."""
    return str(_data()["need"][need]["until"])


def kinds_made() -> tuple[str, ...]:
    """The kinds of parts that may be made ahead."""
    return tuple(_data()["made"])


def parts_used_by(operations: Collection[str]) -> frozenset[str]:
    """The parts, as pieces are kept for them, whose wood these operations use up."""
    return frozenset(row["part"] for row in _data()["need"].values() if row["until"] in operations)


def needs_met(operation: str, part: str) -> tuple[tuple[str, Count], ...]:
    """The needs of a part whose wood an operation uses up, each with how many pieces it takes."""
    rows = _data()["need"].items()
    found = (each for each in rows if each[1]["until"] == operation and each[1]["part"] == part)
    return tuple((name, row.get("count", 1)) for name, row in found)


def fit(part: MadePart, figures: Figures) -> Fit | None:
    """How a part made ahead fits an instrument; None for a kind that serves no known need."""
    kind = _data()["made"].get(part.kind)
    if kind is None:
        return None
    standing: Standing = "still right"
    off = []
    for written, value in part.figures.items():
        address = kind["also"].get(written, written)
        found, told = _against(address, value, kind["done"], figures)
        standing = max(standing, found, key=WORST_LAST.index)
        off += [told] if told else []
    if not part.figures:
        return Fit(part, kind["serves"], "lost", ("nothing is noted of its sizes",), tuple(kind["done"]))
    return Fit(part, kind["serves"], standing, tuple(off), tuple(kind["done"]))


def _against(address: str, written: str, done: Collection[str], figures: Figures) -> tuple[Standing, str]:
    """One figure of a part compared with the instrument's: the verdict, and what is off in words."""
    try:
        unit = unit_of_figure(figures, address)
        has, wanted = read_measured(written, unit, figures[n.shop_units], address), float(figures.at(address))
    except MakersFault:
        return "lost", f"{address} = {written} cannot be compared with this instrument"
    found, remedy = verdict(_fixed(address, done), _as_shown(wanted - has, unit), figures)
    if found == "still right":
        return found, ""
    off = abs(has - wanted)
    amount = shown(off, unit, figures[n.instrument_units]) if unit == "mm" else f"{off:g} {unit}".strip()
    words = f"{address.replace('_', ' ')} is {amount} too {'great' if has > wanted else 'small'}"
    return found, f"{words}. {remedy}".strip()


def _as_shown(difference: float, unit: str) -> float:
    """A difference rounded to the last digit shown, so that one that shows as equal to the tolerance is within it."""
    return difference - math.copysign(min(abs(difference), half_shown(unit)), difference)


def _fixed(address: str, done: Collection[str]) -> Fixed:
    """The tolerance of a figure and its remedies: from the operations done, or from the table of parts.

    There `more` says what to do with a part that has more than is wanted; a Fixed, with a figure that should have more.
    """
    for name in done:
        for fixed in operations()[name].fixes if name in operations() else ():
            if fixed.figure == address.partition("[")[0] and not fixed.field:
                return fixed
    row = _data()["off"].get(address, {})
    return Fixed(address, row.get("play", 0.05), more=row.get("less", ""), less=row.get("more", ""))
