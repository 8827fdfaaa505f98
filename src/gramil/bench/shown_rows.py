"""A figure as a page shows it: words, number and unit, the other unit, the old value, and whether it may be typed."""

from dataclasses import dataclass, replace

from gramil.address import parse_address
from gramil.bench.chosen import Chosen, chosen
from gramil.bench.draft import Draft
from gramil.bench.field_words import in_field_words, in_key_words
from gramil.bench.where_cut import Part, in_columns, parts_at
from gramil.drawings.body_at import read_at
from gramil.drawings.section_at import BETWEEN, Cut
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.in_shop_units import in_shop_units


@dataclass(frozen=True)
class ShownRow:
    """One figure on a page. `old` is empty if it did not move; `card` is the address that opens its card."""

    words: str
    address: str
    card: str
    text: str
    other: str
    old: str
    chosen: Chosen | None
    typed: str
    fault: str


@dataclass(frozen=True)
class Reading:
    """What a row is read from: the draft's figures and cut, the saved ones, and how to show them."""

    draft: Draft
    cut: Cut
    saved: Figures
    saved_cut: Cut
    now: Formatter
    before: Formatter


def shown_row(words: str, address: str, reading: Reading) -> ShownRow:
    """One row of figures at the cut."""
    text, other = _both(reading.draft.figures, address, reading.cut, reading.now)
    old = _old(address, reading)
    plain = address.removesuffix(BETWEEN)
    name, steps = parse_address(plain)
    choice = chosen(name, reading.draft.data) if not steps and name in reading.saved.graph.inputs else None
    typed, fault = _typed(choice, reading.draft)
    words = in_shop_units(words, reading.now.first)
    card = plain if not address.endswith(BETWEEN) else name
    return ShownRow(words, address, card, text, other, old if old != text else "", choice, typed, fault)


def columns_at(reading: Reading) -> list[list[tuple[Part, list[ShownRow]]]]:
    """The figures at the cut by part, in two columns; what is wrong with a key is told at the first of its figures."""
    told = set[str]()
    return [
        [(part, [_told_once(shown_row(*row, reading), told) for row in part.rows]) for part in each]
        for each in in_columns(parts_at(reading.draft.figures, reading.cut))
    ]


def _told_once(row: ShownRow, told: set[str]) -> ShownRow:
    if not row.fault or row.chosen is None:
        return row
    if row.chosen.key in told:
        return replace(row, fault="")
    told.add(row.chosen.key)
    return row


def _old(address: str, reading: Reading) -> str:
    """What the saved instrument shows there; empty if there is no draft."""
    if reading.saved is reading.draft.figures:
        return ""
    return _both(reading.saved, address, reading.saved_cut, reading.before)[0]


def _typed(choice: Chosen | None, draft: Draft) -> tuple[str, str]:
    """What a chosen figure's field holds, and what is wrong with it."""
    if choice is None:
        return "", ""
    typed = draft.written(choice.key)
    own = [in_field_words(fault) for fault in draft.faults if fault.where == choice.key]
    others = [in_key_words(fault) for fault in draft.faults if draft.sets and draft.sets[-1][0] == choice.key]
    return choice.written if typed is None else typed, " ".join(own or others)


def _both(figures: Figures, address: str, cut: Cut, formatter: Formatter) -> tuple[str, str]:
    if not address.endswith(BETWEEN):
        return _at(figures, address, formatter)
    unit = figures.unit_at(address.removesuffix(BETWEEN))
    value = read_at(figures, address, cut)
    return formatter.both_of(address.removesuffix(BETWEEN), value, unit)


def _at(figures: Figures, address: str, formatter: Formatter) -> tuple[str, str]:
    try:
        return formatter.both(address)
    except KeyError:
        return "none", ""
