"""Wrong entries put right or struck out: readings of air, weighings, measurements, operations noted as done.

Nothing is forgotten: a struck reading stays in a table of its own, each change says in words what was there before, and
undo takes it back like any other change.
"""

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from gramil.address import parse_address
from gramil.air.places import Place, Reading, instant_of, moment_of, offset_of
from gramil.faults import MakersFault
from gramil.measure import TemperatureUnit, in_degrees
from gramil.quantities import Gram
from gramil.shop.operations_done import DoneOperation, Measurement
from gramil.shop.wire_pressed import FRETTED, lost_with_its_board
from gramil.store.items import Item, figures_text, shop_degrees
from gramil.store.moments import moment_text
from gramil.store.opening import Store, Value
from gramil.store.rows import check, delete, insert, update
from gramil.store.writing import Hand, writing

_GONE = "see what stands there now: it was corrected or struck meanwhile"


@dataclass(frozen=True)
class WrittenReading:
    """A reading of air of one place, and where it came from: empty where it was written down by hand."""

    reading: Reading
    file: str


@dataclass(frozen=True)
class Struck:
    """A reading that was taken out: what it said, when, by whom and why it was struck."""

    reading: Reading
    at: str
    who: str
    why: str


@dataclass(frozen=True)
class Measured:
    """A measurement as a row: its number, the instrument's, the operation's (None if at none), the figure, and when."""

    id: int
    instrument: int
    done: int | None
    measurement: Measurement
    at: str


def latest_readings(store: Store, place_id: int, most: int = 40) -> list[WrittenReading]:
    """A place's latest readings, newest first."""
    sql = (
        "SELECT instant, offset_minutes, temperature, humidity, file FROM air_reading JOIN air_import "
        "ON air_import.id = import WHERE air_reading.place = ? ORDER BY instant DESC LIMIT ?"
    )
    rows = store.rows(sql, (place_id, most))
    return [WrittenReading(Reading(moment_of(row[0], row[1]), row[2], row[3]), row[4]) for row in rows]


def reading_at(store: Store, place_id: int, instant: int) -> Reading:
    """A place's reading of an instant (microseconds since 1970); raises MakersFault where there is none."""
    sql = "SELECT offset_minutes, temperature, humidity FROM air_reading WHERE place = ? AND instant = ?"
    row = store.row(sql, (place_id, instant))
    if row is None:
        raise _no_reading(store, place_id, instant)
    return Reading(moment_of(instant, row[0]), row[1], row[2])


def _no_reading(store: Store, place_id: int, instant: int) -> MakersFault:
    """What to say of a reading that is not there: it was struck, or the moment is another one."""
    sql = "SELECT instant, offset_minutes FROM air_reading WHERE place = ? ORDER BY abs(instant - ?) LIMIT 1"
    near = store.row(sql, (place_id, instant))
    remedy = f"the nearest is of {moment_of(*near):%Y-%m-%d %H:%M}" if near else "none of this place is noted"
    return MakersFault.of("no reading of that moment is there", "it may have been struck", remedy)


def struck_readings(store: Store, place_id: int) -> list[Struck]:
    """A place's struck readings, the one struck last first."""
    sql = (
        "SELECT instant, offset_minutes, temperature, humidity, at, who, why FROM air_struck "
        "WHERE place = ? ORDER BY id DESC"
    )
    rows = store.rows(sql, (place_id,))
    return [Struck(Reading(moment_of(row[0], row[1]), row[2], row[3]), *row[4:]) for row in rows]


def strike_reading(store: Store, of: Place, seen: Reading, hand: Hand, *, right: Reading | None = None) -> None:
    """Strike a reading, and put the right one in its place if there is one, as one change.

    Raises MakersFault if the reading is no longer as it was seen, and for air that no room could have.
    """
    words = _reading_in_words(seen, shop_degrees(store))
    said = f"{'correct' if right else 'strike'} reading of the {of.name}, {words}"
    with writing(store, said + _because(hand.why), hand):
        _strike(store, of, seen, hand)
        if right is not None:
            owner = insert(store, "air_import", {"place": of.id, "at": moment_text(hand.now), "file": ""})
            row = (of.id, instant_of(right.at), offset_of(right.at), right.temperature, right.humidity, owner)
            store.rows("INSERT INTO air_reading VALUES (?, ?, ?, ?, ?, ?)", row)


def _strike(store: Store, of: Place, seen: Reading, hand: Hand) -> None:
    if reading_at(store, of.id, instant_of(seen.at)) != seen:
        raise MakersFault.of("this reading is not there any more", remedy=_GONE)
    (owner,) = store.row(
        "SELECT import FROM air_reading WHERE place = ? AND instant = ?", (of.id, instant_of(seen.at))
    ) or (None,)
    row: dict[str, Value] = {
        "place": of.id,
        "instant": instant_of(seen.at),
        "offset_minutes": offset_of(seen.at),
        "temperature": seen.temperature,
        "humidity": seen.humidity,
        "import": owner,
    }
    insert(store, "air_struck", {**row, "at": moment_text(hand.now), "who": hand.who, "why": hand.why})


def _because(why: str) -> str:
    return f": {why}" if why else ""


def _reading_in_words(seen: Reading, unit: TemperatureUnit) -> str:
    return f"{seen.at:%Y-%m-%d %H:%M}, {seen.humidity:g} % {in_degrees(seen.temperature, unit):g} {unit}"


def correct_weighing(store: Store, piece: Item, number: int, grams: Gram | None, hand: Hand) -> None:
    """Correct a piece's weighing (by its index in the list), or strike it (`grams` None).

    Raises MakersFault if there is no such weighing, Conflict if the piece was changed since it was seen.
    """
    weighings = [dict(each) for each in piece.figures.get("weighings", ())]
    if not 0 <= number < len(weighings):
        raise MakersFault.of("this weighing is not there any more", remedy=_GONE)
    was = weighings[number]
    if grams is None:
        del weighings[number]
    else:
        weighings[number] = {**was, "mass": float(grams)}
    word = "strike" if grams is None else "correct"
    figures = {**piece.figures, "weighings": weighings}
    if not weighings:
        del figures["weighings"]
    with writing(
        store, f"{word} weighing of {piece.name}, {was['at']}, {_grams(was['mass'])}{_because(hand.why)}", hand
    ):
        update(store, "item", piece.id, piece.version, {"name": piece.name, "figures": figures_text(figures)})


def _grams(mass: Any) -> str:
    return f"{mass:g} g" if isinstance(mass, int | float) else str(mass)


def measured_rows(store: Store, instrument: int) -> list[Measured]:
    """Every measurement of an instrument as rows, the newest first."""
    return _measured(store, "WHERE instrument = ? ORDER BY id DESC", instrument)


def measured_row(store: Store, number: int) -> Measured:
    """One measurement by its number; raises MakersFault where there is none."""
    found = _measured(store, "WHERE id = ?", number)
    if not found:
        raise MakersFault.of("this measurement is not there any more", remedy=_GONE)
    return found[0]


def _measured(store: Store, rest: str, value: int) -> list[Measured]:
    rows = store.rows(
        f"SELECT id, instrument, done, address, written, value, unit, at FROM measurement {rest}", (value,)
    )
    return [Measured(row[0], row[1], row[2], Measurement(*row[3:7]), row[7]) for row in rows]


def correct_measurement(store: Store, seen: Measured, right: Measurement | None, hand: Hand) -> None:
    """Correct a measurement in place, or strike it (`right` None).

    Raises MakersFault if it is no longer as it was seen.
    """
    if measured_row(store, seen.id) != seen:
        raise MakersFault.of("this measurement is not there any more", remedy=_GONE)
    word = "strike" if right is None else "correct"
    was = seen.measurement
    with writing(store, f"{word} {was.address} {was.written}, measured {seen.at[:10]}{_because(hand.why)}", hand):
        if right is None:
            store.rows("DELETE FROM measurement WHERE id = ?", (seen.id,))
        else:
            row: Mapping[str, Value] = {"written": right.written, "value": right.value, "unit": right.unit}
            check(row)
            sets = ", ".join(f"{name} = ?" for name in row)
            store.rows(f"UPDATE measurement SET {sets} WHERE id = ?", (*row.values(), seen.id))


def not_done_after_all(store: Store, done: DoneOperation, hand: Hand) -> None:
    """Mark an operation as not done; what was measured at it stays.

    Raises Conflict if its record was changed since it was seen.
    """
    with writing(store, f"not done after all: {done.operation}, noted {done.at[:10]}", hand):
        store.rows("UPDATE measurement SET done = NULL WHERE done = ?", (done.id,))
        delete(store, "done", done.id, done.version)


def begin_anew(
    store: Store, piece: str, what: str, works: Sequence[DoneOperation], figures: Collection[str], hand: Hand
) -> None:
    """Mark the work on a piece that is begun anew as not done, and strike what was measured at it, as one change.

    Measurements made apart from any operation are struck too if they are of the `figures` (by name). What the work used
    up stays used. Raises Conflict if the record of that work was changed since it was seen.
    """
    with writing(store, f"begin {what} anew", hand):
        for done in works:
            if done.operation == FRETTED:
                lost_with_its_board(store, done.instrument)
            store.rows("DELETE FROM measurement WHERE done = ?", (done.id,))
            delete(store, "done", done.id, done.version)
        row: dict[str, Value] = {"version": None, "piece": piece, "operations": len(works), "at": moment_text(hand.now)}
        insert(store, "begun_anew", {**row, "instrument": works[0].instrument})
        for instrument in {each.instrument for each in works}:
            for each in measured_rows(store, instrument):
                if each.done is None and parse_address(each.measurement.address)[0] in figures:
                    store.rows("DELETE FROM measurement WHERE id = ?", (each.id,))
