"""What measurements settle, written into a description's text at the maker's request: its comments and order stay."""

from collections.abc import Iterable
from math import degrees
from typing import Any

from gramil.address import parse_address
from gramil.change.settled import Settled
from gramil.description.body.opening_tables import SOUNDHOLE
from gramil.description.body.tables import BraceTable
from gramil.description.body.usual import names_of
from gramil.description.instrument import Instrument
from gramil.description.writing import set_key
from gramil.measure import LengthUnit


def written_into(text: str, instrument: Instrument, settled: Iterable[Settled]) -> str:
    """The text of an instrument with each key as made; a key for which no value was found is left as it is."""
    for each in settled:
        if each.value is not None:
            text = set_key(text, place_of(each, instrument), value_text(each, instrument.instrument.units))
    return text


def place_of(each: Settled, instrument: Instrument) -> str:
    """Where the key stands in the description: `board.thickness`, `brace[3].height`."""
    _, steps = parse_address(each.address)
    table, _, field = each.key.partition(".")
    if not steps or not isinstance(member := steps[0], str):
        return each.key
    if member == SOUNDHOLE:
        return each.key
    rows = enumerate(getattr(instrument, table), 1)
    return next(f"{table}[{number}].{field}" for number, row in rows if member in _called(row))


def _called(row: Any) -> tuple[str, ...]:
    """What a row of a table is called; a brace with a twin by two names."""
    return names_of(row) if isinstance(row, BraceTable) else (row.name,)


def value_text(each: Settled, units: LengthUnit) -> str:
    """The value as a maker would write it: a bare length in the file's unit, an angle in degrees; to a thousandth."""
    assert each.value is not None
    if each.unit == "rad":
        return _plain(degrees(each.value), 3)
    return _plain(each.value, 3) if units == "mm" else _plain(each.value / 25.4, 5)


def _plain(value: float, places: int) -> str:
    return f"{value:.{places}f}".rstrip("0").rstrip(".")
