"""What was written wrongly, put right or struck: each on a page of its own, so that one tap changes nothing."""

from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import quote

from starlette.responses import Response

from gramil.acts.air import correct_reading as put_reading_right
from gramil.acts.corrections import correct_measurement, correct_weighing
from gramil.acts.work import not_done_after_all
from gramil.bench.ages import clock
from gramil.bench.asking import Asked, Missing, go, whole_number
from gramil.bench.doubts import Doubt, measured_doubts
from gramil.bench.instrument_page import instrument_id
from gramil.bench.measuring import bare
from gramil.bench.numbers import number_of
from gramil.bench.sheet_page import address_of_work
from gramil.bench.shelf import Shelf
from gramil.bench.units import shower_for
from gramil.faults import Fault, MakersFault
from gramil.measure import read_mass
from gramil.shop.corrections import (
    Measured,
    latest_readings,
    measured_row,
    reading_at,
    struck_readings,
)
from gramil.shop.items import Item, items
from gramil.shop.opening import Store
from gramil.shop.operations_done import DoneOperation, operations_done, read_measurements
from gramil.shop.pieces import PIECE
from gramil.shop.places import Place, Reading, instant_of, place

RIGHT, STRIKE = "right", "strike"


@dataclass(frozen=True)
class Entry:
    """A field of the page: its key, its words, what stands there now."""

    key: str
    words: str
    value: str


@dataclass(frozen=True)
class Wrong:
    """What may be wrong: what it is, what stands there, the fields to write it anew, what was seen, where to go on."""

    heading: str
    stands: str
    entries: tuple[Entry, ...]
    hidden: tuple[tuple[str, str], ...]
    action: str
    back: str
    strikes: str = "Strike it"
    means: str = "It counts no more from then on. What stood there stays in the record."


def readings_page(asked: Asked, _: Shelf) -> Response:
    """A place's latest readings, each a tap from being put right; and what was struck."""
    with asked.keeping.opened() as store:
        of = place(store, asked.one("place"))
        rows, struck = latest_readings(store, of.id), struck_readings(store, of.id)
    return asked.page(
        "readings.html",
        title=f"Readings of the {of.name}",
        place=of,
        rows=[(_clock(each.reading, asked), each, instant_of(each.reading.at)) for each in rows],
        struck=[(_clock(each.reading, asked), each, clock(each.at, asked.now)) for each in struck],
    )


def _clock(reading: Reading, asked: Asked) -> str:
    return clock(reading.at.isoformat(), asked.now)


def reading_page(asked: Asked, _: Shelf) -> Response:
    """One reading of air."""
    with asked.keeping.opened() as store:
        return asked_whether(asked, _wrong_reading(asked, *_reading(asked, store)))


def _reading(asked: Asked, store: Store) -> tuple[Place, Reading]:
    """The reading that was asked for, as it stands."""
    of, instant = place(store, asked.one("place")), asked.one("instant")
    if not instant.removeprefix("-").isdecimal() or len(instant) > 18:
        raise Missing("reading")
    return of, reading_at(store, of.id, int(instant))


def _wrong_reading(asked: Asked, of: Place, seen: Reading) -> Wrong:
    instant = str(instant_of(seen.at))
    return Wrong(
        f"A reading of the {of.name}",
        f"{_clock(seen, asked)}: {seen.humidity:g} %, {seen.temperature:g} °C",
        (
            Entry("humidity", "Humidity, %", asked.one("humidity", f"{seen.humidity:g}")),
            Entry("temperature", "Temperature, °C", asked.one("temperature", f"{seen.temperature:g}")),
        ),
        (
            ("place", of.name),
            ("instant", instant),
            ("was", f"{seen.humidity!r} {seen.temperature!r}"),
        ),
        "/air/reading/correct",
        f"/air/readings?place={quote(of.name)}",
    )


def correct_reading(asked: Asked, _: Shelf) -> Response:
    """A reading put right, or struck; refused where it is not there any more as it was seen."""
    with asked.keeping.opened() as store:
        of, there = _reading(asked, store)
        if f"{there.humidity!r} {there.temperature!r}" != asked.one("was"):
            raise MakersFault.of("somebody else changed this reading", remedy="look at the readings again")
        right = None
        if asked.one("do") == RIGHT:
            try:
                right = Reading(there.at, number_of(asked, "temperature"), number_of(asked, "humidity"))
            except MakersFault as fault:
                return asked_whether(asked, _wrong_reading(asked, of, there), fault)
        put_reading_right(store, of, there, asked.now, right=right, why=asked.one("why"), who=asked.session.who)
    return go(f"/air/readings?place={quote(of.name)}")


def weighings_page(asked: Asked, _: Shelf) -> Response:
    """A piece's weighings, each a tap from being put right."""
    with asked.keeping.opened() as store:
        piece = _piece(store, asked.one("piece"))
    rows = [(str(each["at"]).replace("T", " ")[:16], each["mass"]) for each in piece.figures.get("weighings", ())]
    return asked.page("weighings.html", title=f"Weighings of {piece.name}", piece=piece, rows=rows)


def weighing_page(asked: Asked, _: Shelf) -> Response:
    """One weighing of a piece."""
    with asked.keeping.opened() as store:
        piece = _piece(store, asked.one("piece"))
    return asked_whether(asked, _wrong_weighing(asked, piece, _number(asked.one("number"))))


def _wrong_weighing(asked: Asked, piece: Item, number: int) -> Wrong:
    weighings = piece.figures.get("weighings", ())
    if not 0 <= number < len(weighings):
        raise Missing("weighing")
    mass = weighings[number]["mass"]
    said = f"{mass:g}" if isinstance(mass, int | float) else str(mass)
    return Wrong(
        f"A weighing of {piece.name}",
        f"{str(weighings[number]['at']).replace('T', ' ')[:16]}: {said} g",
        (Entry("mass", "Grams", asked.one("mass", said)),),
        (("piece", piece.name), ("number", str(number)), ("version", str(piece.version))),
        "/air/weighing",
        f"/air/weighings?piece={quote(piece.name)}",
    )


def correct_weight(asked: Asked, _: Shelf) -> Response:
    """A weighing put right, or struck."""
    with asked.keeping.opened() as store:
        piece, number = _piece(store, asked.one("piece")), _number(asked.one("number"))
        if str(piece.version) != asked.one("version"):
            raise MakersFault.of(f"somebody else changed {piece.name}", remedy="look at its weighings again")
        grams = None
        if asked.one("do") == RIGHT:
            try:
                grams = read_mass(bare(asked.one("mass")))
            except MakersFault as fault:
                return asked_whether(asked, _wrong_weighing(asked, piece, number), fault)
        correct_weighing(store, piece, number, grams, asked.now, why=asked.one("why"), who=asked.session.who)
    return go(f"/air/weighings?piece={quote(piece.name)}")


def _piece(store: Store, name: str) -> Item:
    found = next((each for each in items(store, PIECE) if each.name == name), None)
    if found is None:
        raise Missing(f'piece "{name}"')
    return found


def measurement_page(asked: Asked, _: Shelf) -> Response:
    """One measurement on an instrument."""
    with asked.keeping.opened() as store:
        return asked_whether(asked, _wrong_measurement(asked, measured_row(store, _number(asked.words["measurement"]))))


def _wrong_measurement(asked: Asked, seen: Measured) -> Wrong:
    was, number = seen.measurement, instrument_id(asked)
    if seen.instrument != number:
        raise Missing("measurement")
    return Wrong(
        f"Measured: {was.address.replace('_', ' ')}",
        f"{was.written}, {clock(seen.at, asked.now)}",
        (Entry("written", "What the calipers say", asked.one("written", was.written)),),
        (("was", was.written), ("back", asked.one("back"))),
        f"/instrument/{number}/measured/{seen.id}",
        _back(asked, number),
    )


def correct_measured(asked: Asked, shelf: Shelf) -> Response:
    """A measurement put right, or struck."""
    number = instrument_id(asked)
    with asked.keeping.opened() as store:
        seen, right, figures = measured_row(store, _number(asked.words["measurement"])), None, None
        if seen.measurement.written != asked.one("was") or seen.instrument != number:
            raise MakersFault.of("somebody else changed this measurement", remedy="look at the sheet again")
        if asked.one("do") == RIGHT:
            held = shelf.held(store, number)
            figures = held.figures
            first = shower_for(asked.session, figures).first
            try:
                fields = {seen.measurement.address: bare(asked.one("written"))}
                (right,) = read_measurements(held.figures, fields, first)
            except MakersFault as fault:
                return asked_whether(asked, _wrong_measurement(asked, seen), fault)
            if found := measured_doubts(asked, held.figures, [right], asked.one("back"), first):
                return asked_whether(asked, _wrong_measurement(asked, seen), doubts=found)
        why, who = asked.one("why"), asked.session.who
        correct_measurement(store, seen, right, asked.now, figures=figures, why=why, who=who)
    return go(_back(asked, number))


def _back(asked: Asked, number: int) -> str:
    """The page of the work that led here, or all work."""
    name = asked.one("back")
    return address_of_work(number, name) if name.isidentifier() else f"/instrument/{number}/sheets"


def not_done_page(asked: Asked, _: Shelf) -> Response:
    """An operation that was noted as done and is not."""
    with asked.keeping.opened() as store:
        done = _done(asked, store)
    number = instrument_id(asked)
    wrong = Wrong(
        f"Not done after all: {done.operation.replace('_', ' ')}",
        f"noted as done {clock(done.at, asked.now)}{f', {done.who}' if done.who else ''}. {done.note}".strip(),
        (),
        (("version", str(done.version)),),
        f"/instrument/{number}/operation/{done.operation}/not-done",
        address_of_work(number, done.operation),
        "It is not done",
        "The operation is open again. What was measured at it stays; wood that it used up stays used.",
    )
    return asked_whether(asked, wrong)


def take_done_back(asked: Asked, _: Shelf) -> Response:
    """An operation is open again; sent twice, it is taken back once."""
    with asked.keeping.opened() as store:
        try:
            done = _done(asked, store)
        except Missing:
            return go(address_of_work(instrument_id(asked), asked.words["operation"]))
        if str(done.version) != asked.one("version"):
            raise MakersFault.of("somebody else changed what is noted of it", remedy="look at the sheet again")
        not_done_after_all(store, done, asked.now, asked.session.who)
    return go(address_of_work(done.instrument, done.operation))


def _done(asked: Asked, store: Store) -> DoneOperation:
    name = asked.words["operation"]
    found = next((each for each in operations_done(store, instrument_id(asked)) if each.operation == name), None)
    if found is None:
        raise Missing(f"{name} noted as done")
    return found


def _number(written: str) -> int:
    found = whole_number(written)
    if found is None:
        raise Missing("such number")
    return found


def asked_whether(
    asked: Asked, wrong: Wrong, fault: MakersFault | None = None, doubts: Mapping[str, Doubt] | None = None
) -> Response:
    """The page that asks before anything is written; with a fault, what is wrong with what was typed.

    `doubts` are what is asked about it: sent again, it is taken as read.
    """
    faults: tuple[Fault, ...] = fault.faults if fault else ()
    found = doubts or {}
    status = 422 if faults or found else 200
    return asked.page("correct.html", status, title=wrong.heading, wrong=wrong, faults=faults, doubts=found)
