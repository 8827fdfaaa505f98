"""Wood on hand: which operations wait for want of it, and which billets the braces of each instrument get."""

from collections import Counter
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from gramil import names as n
from gramil.description.records import Blank
from gramil.formatter import shown
from gramil.graph import Figures
from gramil.measure import LengthUnit
from gramil.now.match import Stock, serves
from gramil.now.needs import SPLIT, Fit, Need, needs_of, used_at
from gramil.parts.body_records import Stick
from gramil.parts.brace_stock import stick_billets, stick_wanting


def without_wood(
    figures: Figures, done: Collection[str], stock: Sequence[Stock], fits: Sequence[Fit] = ()
) -> Mapping[str, str]:
    """For each operation that would use up wood that is not on hand, what is missing, in words.

    A piece counts if it serves the need and is promised to no other instrument; which of several instruments gets a
    free one is settled by promising it. Nothing is judged where no wood at all is listed.
    """
    if not stock:
        return {}
    served = {fit.need for fit in fits if fit.standing == "still right"}
    missing: dict[str, list[str]] = {}
    unit = figures[n.instrument_units]
    for need, count in _counted(needs_of(figures, done)):
        has = sum(serves(need, piece) for piece in stock)
        if has < count and need.name not in served:
            missing.setdefault(used_at(need.name), []).append(_said(need, count - has, unit))
    return {operation: f"no wood is on hand: {'; '.join(said)}" for operation, said in missing.items()}


def _counted(needs: Sequence[Need]) -> Iterator[tuple[Need, int]]:
    counted = Counter(need.name for need in needs)
    yield from ((need, counted[need.name]) for need in needs if need.number == 1)


def _said(need: Need, count: int, unit: LengthUnit) -> str:
    sizes = " x ".join(shown(each, "mm", unit) for each in (need.length, need.width, need.thickness))
    return f"{need.what}, {count} of {' or '.join(need.woods)}, {sizes}"


@dataclass(frozen=True)
class Sticks:
    """The braces of an instrument: how many of which billet they are split from, and those that none yields."""

    instrument: str
    billets: Mapping[str, int]
    wanting: tuple[Stick, ...]


def sticks_for(
    asked: Sequence[tuple[Figures, Collection[str]]], free: Mapping[str, int] | None = None
) -> tuple[Sticks, ...]:
    """The braces of each instrument being built whose brace stock is not split, one after another: no billet
    is given twice.

    `asked` is each instrument's figures and what is done on it; `free` says how many of each blank are promised to
    nobody (None: all), the others among its blanks being its own, which it takes first.
    """
    given: Counter[str] = Counter()
    return tuple(_sticks(figures, free, given) for figures, done in asked if _to_split(figures, done))


def _to_split(figures: Figures, done: Collection[str]) -> bool:
    return not figures[n.repair_described] and not {SPLIT, "top_braces_fitted"}.intersection(done)


def _sticks(figures: Figures, free: Mapping[str, int] | None, given: Counter[str]) -> Sticks:
    """The braces of one instrument; what it takes of the free billets is added to what is given."""
    sticks, blanks = figures[n.stick_list], figures[n.shop_blanks]
    own = {each.name: each.count - _free(each, free) for each in blanks}
    left = [(each, own[each.name] + max(0, _free(each, free) - given[each.name])) for each in blanks]
    pieces = {
        f"{number} {copy}": replace(each, name=f"{number} {copy}", count=1)
        for number, (each, count) in enumerate(left)
        for copy in range(count)
    }
    stock = tuple(pieces.values())
    taken = Counter(left[int(each.name.split()[0])][0].name for each in stick_billets(sticks, stock))
    given.update({name: max(0, count - own[name]) for name, count in taken.items()})
    return Sticks(str(figures[n.instrument_name]), taken, stick_wanting(sticks, stock))


def _free(blank: Blank, free: Mapping[str, int] | None) -> int:
    return blank.count if free is None else min(blank.count, free.get(blank.name, 0))
