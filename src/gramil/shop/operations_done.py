"""Progress: operations done with their notes, hours and photographs, and what was measured.

A measured value replaces the drawn one: `pins_for` gives them in the form that the derivation graph takes.
"""

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from gramil.bare_numbers import Written, with_unit
from gramil.faults import Fault, MakersFault
from gramil.graph import Figures, Pin
from gramil.measure import LengthUnit
from gramil.shop.measured import read_measured, unit_to_measure
from gramil.store.moments import moment_text
from gramil.store.opening import Store, Value
from gramil.store.rows import insert, records, update
from gramil.store.writing import Hand, writing


@dataclass(frozen=True)
class Measurement:
    """A figure as measured: as written, and as the graph holds it, with the symbol of its unit."""

    address: str
    written: str
    value: float
    unit: str


@dataclass(frozen=True)
class DoneOperation:
    """An operation done on an instrument (by number); `photos` are names of files, `hours` is None if not noted."""

    id: int
    version: int
    instrument: int
    operation: str
    at: str
    who: str
    hours: float | None
    note: str
    photos: tuple[str, ...]


def read_measurements(
    figures: Figures, written: Mapping[str, Written], unit: LengthUnit = "mm"
) -> tuple[Measurement, ...]:
    """Values as the maker wrote them, by address, in the units of the figures; bare lengths are in `unit`.

    Raises MakersFault with every fault: addresses that lead nowhere, values of the wrong kind.
    """
    found: list[Measurement] = []
    faults: list[Fault] = []
    for address, text in written.items():
        try:
            symbol = unit_to_measure(figures, address)
            value = read_measured(text, symbol, unit, address)
        except MakersFault as fault:
            faults += fault.faults
            continue
        found.append(Measurement(address, with_unit(text, symbol, unit), value, symbol))
    if faults:
        raise MakersFault(faults)
    return tuple(found)


MOST_HOURS = 10_000
"""No operation takes longer: more is a slip."""


@dataclass(frozen=True)
class Noted:
    """What is noted with an operation: a note, how many hours it took, photographs, and what was measured at it."""

    note: str = ""
    hours: float | None = None
    photos: tuple[str, ...] = ()
    measured: tuple[Measurement, ...] = ()


NOTHING = Noted()
"""Done, and no more said."""


def mark_done(
    store: Store,
    instrument: int,
    operation: str,
    hand: Hand,
    noted: Noted = NOTHING,
) -> DoneOperation:
    """Note an operation as done, with what was measured. Raises MakersFault if it is done already."""
    with writing(store, f"done: {operation}, {_name(store, instrument)}", hand):
        row: dict[str, Value] = {
            "who": hand.who,
            "hours": noted.hours,
            "note": noted.note,
            "photos": _list(noted.photos),
        }
        number = put_done(store, instrument, operation, hand.now, noted.measured, row)
    return _done(store, "WHERE id = ?", number)[0]


def put_done(
    store: Store,
    instrument: int,
    operation: str,
    at: datetime,
    measured: Sequence[Measurement],
    noted: Mapping[str, Value],
) -> int:
    """Add an operation and its measurements within the change under way; gives its number."""
    row = {"version": None, "instrument": instrument, "operation": operation, "at": moment_text(at), **noted}
    number = insert(store, "done", row)
    put_measurements(store, instrument, number, measured, at)
    return number


def operations_done(store: Store, instrument: int) -> list[DoneOperation]:
    """What is done on an instrument, in the order in which it was noted."""
    return _done(store, "WHERE instrument = ? ORDER BY id", instrument)


def update_done(store: Store, changed: DoneOperation, hand: Hand) -> DoneOperation:
    """Write an operation's note, hours and photographs; raises Conflict if the store holds another version."""
    with writing(store, f"change what is noted of {changed.operation}", hand):
        row: dict[str, Value] = {"hours": changed.hours, "note": changed.note, "photos": _list(changed.photos)}
        update(store, "done", changed.id, changed.version, row)
    return _done(store, "WHERE id = ?", changed.id)[0]


def add_measurements(store: Store, instrument: int, measured: Sequence[Measurement], hand: Hand) -> None:
    """Note what was measured apart from any operation: a reading back, or a value measured again."""
    said = ", ".join(f"{each.address} {each.written}" for each in measured)
    with writing(store, f"measure {said}, {_name(store, instrument)}", hand):
        put_measurements(store, instrument, None, measured, hand.now)


def measurements(store: Store, instrument: int, done: int | None = None) -> list[Measurement]:
    """What was measured on an instrument, or at one operation, in the order in which it was noted."""
    if done is None:
        return records(store, Measurement, "measurement", "WHERE instrument = ? ORDER BY id", (instrument,))
    rest = "WHERE instrument = ? AND done = ? ORDER BY id"
    return records(store, Measurement, "measurement", rest, (instrument, done))


def pins_for(store: Store, instrument: int) -> Mapping[str, Pin]:
    """Measured values that replace figures, by address: the last one noted for each, its day and its operation.

    One noted at no operation has the operation that was done last before it.
    """
    noted = [(datetime.fromisoformat(each.at), each.operation) for each in operations_done(store, instrument)]
    sql = (
        "SELECT address, value, measurement.at, coalesce(operation, '') FROM measurement "
        "LEFT JOIN done ON done.id = measurement.done WHERE measurement.instrument = ? ORDER BY measurement.id"
    )
    pins: dict[str, Pin] = {}
    for address, value, at, operation in store.rows(sql, (instrument,)):
        since = None if operation else _last_by(noted, datetime.fromisoformat(at))
        pins[address] = Pin(value, at[:10], operation, since=since).after(pins.get(address))
    return pins


def _last_by(noted: Sequence[tuple[datetime, str]], moment: datetime) -> str:
    """The last operation noted by a moment, of those in the order in which they were noted; empty for none."""
    return next((operation for at, operation in reversed(noted) if at <= moment), "")


def put_measurements(
    store: Store, instrument: int, done: int | None, measured: Sequence[Measurement], at: datetime
) -> None:
    """Add measurements within the change under way, at an operation (by number) or at none."""
    for each in measured:
        row: dict[str, Value] = {"instrument": instrument, "done": done, **vars(each), "at": moment_text(at)}
        insert(store, "measurement", row)


def _name(store: Store, instrument: int) -> str:
    """What an instrument is called, for the words of a change."""
    row = store.row("SELECT name FROM instrument WHERE id = ?", (instrument,))
    return row[0] if row else "an instrument that is not there"


def _done(store: Store, rest: str, number: int) -> list[DoneOperation]:
    names = "id, version, instrument, operation, at, who, hours, note, photos"
    rows = store.rows(f"SELECT {names} FROM done {rest}", (number,))
    return [DoneOperation(*(*found, tuple(json.loads(photos)))) for *found, photos in rows]


def _list(photos: Sequence[str]) -> str:
    return json.dumps(list(photos), ensure_ascii=False)
