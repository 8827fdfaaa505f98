"""NAME.made.toml: what is already made of an instrument, kept beside its description, for work without the store.

It holds the operations done, each with its day and what was measured then, by the address of the figure:

    gramil = 1

    [made]
    units = "mm"

    [[done]]
    operation = "thicknessed"
    date = 2026-11-02
    note = "came out a little thin"
    measured = { board_thickness = "6.38 mm", "slot_depth_at_edge[7]" = 3.1 }
"""

import tomllib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime
from pathlib import Path
from typing import Any

from gramil.bare_numbers import Written
from gramil.description.locate import Path as KeyPath
from gramil.description.locate import line_of, locate
from gramil.description.problems import did_you_mean, nearest, quoted
from gramil.faults import Fault, MakersFault
from gramil.graph import Figures, Pin
from gramil.in_shop_units import own_words_in_shop_units
from gramil.measure import LengthUnit
from gramil.plain_file import content_of
from gramil.shop.measured import read_measured, unit_to_measure
from gramil.store.toml_text import Value, table_text

LARGEST_FILE = 1_000_000
"""A record of more bytes than this is something else."""
NO_OPERATION = "measured"
"""What a record says of measurements that belong to no operation."""
CALLED_NOW: Mapping[str, tuple[str, ...]] = {"body_bound": ("top_bound", "back_bound")}
"""Operations that older records know by another name, as the store's migrations have them."""
_KEYS = {"operation": str, "date": date, "note": str, "measured": dict}
_TABLES = ("gramil", "made", "done")


@dataclass(frozen=True)
class Measured:
    """A value as it stands in the file (a bare number is in the file's unit), and its line."""

    address: str
    written: Written
    line: int | None = None


@dataclass(frozen=True)
class Done:
    """One operation done: its name, the day (ISO, or empty where none is given), a note, what was measured."""

    operation: str
    day: str
    note: str = ""
    measured: tuple[Measured, ...] = ()


@dataclass(frozen=True)
class Made:
    """What is made already, in the order of the file; `units` is that of bare lengths."""

    done: tuple[Done, ...]
    units: LengthUnit = "mm"
    file: str | None = None

    @property
    def operations(self) -> tuple[str, ...]:
        """The names of what is done, each once."""
        return tuple(dict.fromkeys(each.operation for each in self.done))

    def pins(self, figures: Figures) -> Mapping[str, Pin]:
        """What was measured, by address; the latest day's value if there are several.

        Raises MakersFault, with every fault, for addresses that `figures` does not have and values that are not in
        the figure's unit.
        """
        pins: dict[str, Pin] = {}
        faults: list[Fault] = []
        last = ""
        for done in sorted(self.done, key=lambda each: each.day):
            last = last if done.operation == NO_OPERATION else done.operation
            for each in done.measured:
                try:
                    pins[each.address] = self._pin(each, done, last, figures).after(pins.get(each.address))
                except MakersFault as found:
                    faults += [replace(fault, line=each.line, file=self.file) for fault in found.faults]
        if faults:
            raise MakersFault(sorted(faults, key=lambda fault: fault.line or 0))
        return pins

    def _pin(self, each: Measured, done: Done, last: str, figures: Figures) -> Pin:
        symbol = unit_to_measure(figures, each.address)
        value = read_measured(each.written, symbol, self.units, each.address)
        return Pin(value, done.day, since=last) if done.operation == NO_OPERATION else Pin(value, done.day, last)

    def pinned(self, figures: Figures) -> Figures:
        """The figures as made: measured values replace the drawn ones. Raises MakersFault as `pins` does."""
        pins = self.pins(figures)
        return replace(figures, pins={**figures.pins, **pins}, known={}) if pins else figures


def made_beside(description: Path) -> Path:
    """Where the record of what is made lies: `tarn.toml` has `tarn.made.toml`."""
    return description.parent / f"{description.stem}.made.toml"


def read_made(path: Path) -> Made:
    """The record in a file; raises MakersFault with every fault in it."""
    return parse_made(made_as_text(content_of_made(path), path.name), path.name)


def content_of_made(path: Path) -> bytes:
    """The content of a record's file; raises MakersFault if it cannot be read."""
    try:
        return content_of(path, LARGEST_FILE)
    except (OSError, ValueError) as error:
        reason = getattr(error, "strerror", None) or "its name is not one"
        raise MakersFault([Fault(what=f"cannot be read: {reason}", file=path.name)]) from None


def made_as_text(content: bytes, file: str) -> str:
    """The same as text; raises MakersFault if it is not text."""
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError:
        raise MakersFault([Fault(what="is not text in UTF-8", file=file)]) from None


def parse_made(text: str, file: str | None = None) -> Made:
    """The record in a text; raises MakersFault with every fault in it."""
    try:
        data = tomllib.loads(text.replace("\r\n", "\n"))
    except (ValueError, RecursionError) as error:
        said = str(error) if isinstance(error, tomllib.TOMLDecodeError) else "it cannot be followed"
        raise MakersFault([Fault(what="is not TOML", why=said, file=file)]) from None
    lines = locate(text)
    units, faults = _head(data)
    rows = data.get("done", [])
    if not (isinstance(rows, list) and all(isinstance(row, dict) for row in rows)):
        faults.append(_Slip(("done",), "done is written as tables", "write [[done]] over each operation"))
        rows = []
    faults += [slip for number, row in enumerate(rows) for slip in _slips(number, row, units)]
    if faults:
        raise MakersFault(_in_file(sorted(faults, key=lambda slip: line_of(lines, slip.path) or 0), lines, file))
    done = (_done(number, row, lines) for number, row in enumerate(rows))
    return Made(tuple(each for one in done for each in _as_called_now(one)), units, file)


def _as_called_now(done: Done) -> Iterator[Done]:
    """An operation by its name of now; what was measured stays with the first where one has become several."""
    first, *others = CALLED_NOW.get(done.operation, (done.operation,))
    yield replace(done, operation=first)
    yield from (replace(done, operation=name, measured=()) for name in others)


def made_text(made: Made) -> str:
    """The record as text that `parse_made` reads back equal, except for the file's name and the line numbers."""
    tables = [table_text("[made]", [("units", made.units)])]
    tables += [table_text("[[done]]", _row(each)) for each in made.done]
    return "\n".join(["gramil = 1\n", *tables])


def _row(done: Done) -> Iterator[tuple[str, Value]]:
    yield "operation", done.operation
    if done.day:
        yield "date", date.fromisoformat(done.day) if len(done.day) == 10 else datetime.fromisoformat(done.day)
    if done.note:
        yield "note", done.note
    if done.measured:
        yield "measured", {each.address: each.written for each in done.measured}


@dataclass(frozen=True)
class _Slip:
    """A fault and its place in the file."""

    path: KeyPath
    what: str
    remedy: str = ""


def _in_file(slips: list[_Slip], lines: Mapping[KeyPath, int], file: str | None) -> Iterator[Fault]:
    for slip in slips:
        where = ".".join(str(step + 1) if isinstance(step, int) else step for step in slip.path)
        yield Fault(line_of(lines, slip.path), where, slip.what, "", slip.remedy, file)


def _head(data: Mapping[str, Any]) -> tuple[LengthUnit, list[_Slip]]:
    """The unit of bare lengths, and what is wrong outside the operations."""
    slips = [
        _Slip((key,), "no such table", did_you_mean(nearest(key, _TABLES)) or "allowed: gramil, made, done")
        for key in data
        if key not in _TABLES
    ]
    if type(data.get("gramil")) is not int or data["gramil"] != 1:
        read = f"read {quoted(data['gramil'])}" if "gramil" in data else "is missing"
        slips.append(_Slip(("gramil",), read, "this program reads version 1: write gramil = 1"))
    head = data.get("made", {})
    if not isinstance(head, dict):
        return "mm", [*slips, _Slip(("made",), "made is a table", "write [made] over it")]
    slips += [_Slip(("made", key), "no such key", "allowed: units") for key in head if key != "units"]
    units = head.get("units", "mm")
    if units not in ("mm", "in"):
        return "mm", [*slips, _Slip(("made", "units"), f"read {quoted(units)}", 'write "mm" or "in"')]
    return units, slips


def _slips(number: int, row: Mapping[str, Any], unit: LengthUnit) -> Iterator[_Slip]:
    """What is wrong with one operation."""
    for key, value in row.items():
        if key not in _KEYS:
            remedy = did_you_mean(nearest(key, _KEYS)) or "allowed: " + ", ".join(_KEYS)
            yield _Slip(("done", number, key), "no such key", remedy)
        elif not isinstance(_as_day(value) if key == "date" else value, _KEYS[key]):
            kind = {"date": "a date, such as 2026-11-02", "measured": "a table of addresses and values"}
            yield _Slip(("done", number, key), f"read {quoted(value)}", f"write {kind.get(key, 'text in quotes')}")
    if not row.get("operation"):
        yield _Slip(("done", number), "operation is missing", 'write which is done: operation = "slotted"')
    measured = row.get("measured")
    for address, value in measured.items() if isinstance(measured, dict) else ():
        if isinstance(value, bool) or not isinstance(value, str | int | float):
            place: KeyPath = ("done", number, "measured", address)
            remedy = own_words_in_shop_units('write a value, such as "6.38 mm"', unit)
            yield _Slip(place, f"read {quoted(value)}", remedy)


def _as_day(value: object) -> object:
    """A quoted date as a date."""
    try:
        return datetime.fromisoformat(value) if isinstance(value, str) else value
    except ValueError:
        return value


def _done(number: int, row: Mapping[str, Any], lines: Mapping[KeyPath, int]) -> Done:
    day = row.get("date", "")
    measured = tuple(
        Measured(address, value, line_of(lines, ("done", number, "measured", address)))
        for address, value in row.get("measured", {}).items()
    )
    return Done(row["operation"], day if isinstance(day, str) else day.isoformat(), row.get("note", ""), measured)
