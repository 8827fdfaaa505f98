"""Wrong entries put right or struck: each on a page of its own, so that a single tap changes nothing."""

from collections.abc import Mapping
from dataclasses import dataclass
from urllib.parse import quote

from starlette.responses import Response

from gramil.acts.air import correct_reading as put_reading_right
from gramil.acts.corrections import correct_measurement, correct_weighing
from gramil.acts.left_over import left_of
from gramil.acts.work import hanging, not_done_after_all, used_up_at
from gramil.air.pieces import PIECE
from gramil.air.places import Place, Reading, instant_of, place
from gramil.bench.ages import clock
from gramil.bench.doubts import Doubt, measured_doubts
from gramil.bench.field_words import all_read, at_field, at_fields_of_air
from gramil.bench.measuring import bare
from gramil.bench.numbers import meter_of
from gramil.bench.open_instruments import OpenInstruments, named
from gramil.bench.page_request import Missing, PageRequest, go, whole_number
from gramil.bench.pages.instrument_page import instrument_id
from gramil.bench.pages.sheet_page import address_of_work
from gramil.bench.units import formatter_for
from gramil.change.days_in_order import before_it
from gramil.faults import Fault, MakersFault
from gramil.measure import TemperatureUnit, in_degrees, read_mass
from gramil.shop.corrections import (
    Measured,
    latest_readings,
    measured_row,
    reading_at,
    struck_readings,
)
from gramil.shop.operations_done import DoneOperation, operations_done, read_measurements
from gramil.store.items import Item, items, shop_degrees
from gramil.store.opening import Store

RIGHT = "right"


@dataclass(frozen=True)
class Entry:
    """A field of the page: its key, its words, its present value."""

    key: str
    words: str
    value: str


@dataclass(frozen=True)
class Correction:
    """An entry that may be wrong: what it is, what it says, the fields to correct it, what was seen, where to go
    afterwards, and the moments (ISO 8601) at which it was noted.
    """

    heading: str
    stands: str
    entries: tuple[Entry, ...]
    hidden: tuple[tuple[str, str], ...]
    action: str
    back: str
    strikes: str = "Strike it"
    means: str = "It no longer counts from then on. What stood there stays in the record."
    noted: tuple[str, ...] = ()


def readings_page(request: PageRequest, _: OpenInstruments) -> Response:
    """A place's latest readings, each a tap from being put right; and what was struck."""
    with request.record.opened() as store:
        of = place(store, request.one("place"))
        degrees = shop_degrees(store)
        rows, struck = latest_readings(store, of.id), struck_readings(store, of.id)
    return request.page(
        "readings.html",
        degrees=degrees,
        title=f"Readings of the {of.name}",
        place=of,
        rows=[(_clock(each.reading, request), each, instant_of(each.reading.at)) for each in rows],
        struck=[(_clock(each.reading, request), each, clock(each.at, request.now)) for each in struck],
    )


def _clock(reading: Reading, request: PageRequest) -> str:
    return clock(reading.at.isoformat(), request.now)


def reading_page(request: PageRequest, _: OpenInstruments) -> Response:
    """One reading of air."""
    with request.record.opened() as store:
        return question_page(request, _wrong_reading(request, *_reading(request, store), shop_degrees(store)))


def _reading(request: PageRequest, store: Store) -> tuple[Place, Reading]:
    """The reading that was asked for, as it stands."""
    of, instant = place(store, request.one("place")), request.one("instant")
    if not instant.removeprefix("-").isdecimal() or len(instant) > 18:
        raise Missing("reading")
    return of, reading_at(store, of.id, int(instant))


def _wrong_reading(request: PageRequest, of: Place, seen: Reading, unit: TemperatureUnit) -> Correction:
    instant, warm = str(instant_of(seen.at)), f"{in_degrees(seen.temperature, unit):g}"
    return Correction(
        f"A reading of the {of.name}",
        f"{_clock(seen, request)}: {seen.humidity:g} %, {warm} °{unit}",
        (
            Entry("humidity", "Humidity, %", request.one("humidity", f"{seen.humidity:g}")),
            Entry("temperature", f"Temperature, °{unit}", request.one("temperature", warm)),
        ),
        (
            ("place", of.name),
            ("instant", instant),
            ("was", f"{seen.humidity!r} {seen.temperature!r}"),
        ),
        "/air/reading/correct",
        f"/air/readings?place={quote(of.name)}",
        noted=(seen.at.isoformat(),),
    )


def correct_reading(request: PageRequest, _: OpenInstruments) -> Response:
    """Put a reading right, or strike it; refused if it is no longer as it was seen."""
    with request.record.opened() as store:
        of, there = _reading(request, store)
        if f"{there.humidity!r} {there.temperature!r}" != request.one("was"):
            raise MakersFault.of("somebody else changed this reading", remedy="look at the readings again")
        right = None
        if request.one("do") == RIGHT:
            try:
                humidity, warm = meter_of(request, shop_degrees(store))
                right = Reading(there.at, warm, humidity)
            except MakersFault as fault:
                return question_page(request, _wrong_reading(request, of, there, shop_degrees(store)), fault)
        with at_fields_of_air():
            put_reading_right(store, of, there, request.hand, right=right)
    return go(f"/air/readings?place={quote(of.name)}")


def weighings_page(request: PageRequest, _: OpenInstruments) -> Response:
    """A piece's weighings, each a tap from being put right."""
    with request.record.opened() as store:
        piece = _piece(store, request.one("piece"))
    rows = [(str(each["at"]).replace("T", " ")[:16], each["mass"]) for each in piece.figures.get("weighings", ())]
    return request.page("weighings.html", title=f"Weighings of {piece.name}", piece=piece, rows=rows)


def weighing_page(request: PageRequest, _: OpenInstruments) -> Response:
    """One weighing of a piece."""
    with request.record.opened() as store:
        piece = _piece(store, request.one("piece"))
    return question_page(request, _wrong_weighing(request, piece, _number(request.one("number"))))


def _wrong_weighing(request: PageRequest, piece: Item, number: int) -> Correction:
    weighings = piece.figures.get("weighings", ())
    if not 0 <= number < len(weighings):
        raise Missing("weighing")
    mass = weighings[number]["mass"]
    said = f"{mass:g}" if isinstance(mass, int | float) else str(mass)
    return Correction(
        f"A weighing of {piece.name}",
        f"{str(weighings[number]['at']).replace('T', ' ')[:16]}: {said} g",
        (Entry("mass", "Grams", request.one("mass", said)),),
        (("piece", piece.name), ("number", str(number)), ("version", str(piece.version))),
        "/air/weighing",
        f"/air/weighings?piece={quote(piece.name)}",
    )


def correct_weight(request: PageRequest, _: OpenInstruments) -> Response:
    """A weighing put right, or struck."""
    with request.record.opened() as store:
        piece, number = _piece(store, request.one("piece")), _number(request.one("number"))
        if str(piece.version) != request.one("version"):
            raise MakersFault.of(f"somebody else changed {piece.name}", remedy="look at its weighings again")
        grams = None
        if request.one("do") == RIGHT:
            try:
                (grams,) = all_read(mass=lambda: read_mass(bare(request.one("mass"))))
            except MakersFault as fault:
                return question_page(request, _wrong_weighing(request, piece, number), fault)
        correct_weighing(store, piece, number, grams, request.hand)
    return go(f"/air/weighings?piece={quote(piece.name)}")


def _piece(store: Store, name: str) -> Item:
    found = next((each for each in items(store, PIECE) if each.name == name), None)
    if found is None:
        raise Missing(f'piece "{name}"')
    return found


def measurement_page(request: PageRequest, _: OpenInstruments) -> Response:
    """One measurement on an instrument."""
    with request.record.opened() as store:
        return question_page(
            request, _wrong_measurement(request, measured_row(store, _number(request.words["measurement"])))
        )


def _wrong_measurement(request: PageRequest, seen: Measured) -> Correction:
    was, number = seen.measurement, instrument_id(request)
    if seen.instrument != number:
        raise Missing("measurement")
    return Correction(
        f"Measured: {was.address.replace('_', ' ')}",
        f"{was.written}, {clock(seen.at, request.now)}",
        (Entry("written", "What the calipers say", request.one("written", was.written)),),
        (("was", was.written), ("back", request.one("back"))),
        f"/instrument/{number}/measured/{seen.id}",
        _back(request, number),
        noted=(seen.at,),
    )


def correct_measured(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """A measurement put right, or struck."""
    number = instrument_id(request)
    with request.record.opened() as store:
        seen, right, figures = measured_row(store, _number(request.words["measurement"])), None, None
        if seen.measurement.written != request.one("was") or seen.instrument != number:
            raise MakersFault.of("somebody else changed this measurement", remedy="look at the sheet again")
        if request.one("do") == RIGHT:
            held = open_instruments.held(store, number)
            figures = held.figures
            first = formatter_for(request.session, figures).first
            try:
                fields = {seen.measurement.address: bare(request.one("written"))}
                with at_field("written"):
                    (right,) = read_measurements(held.figures, fields, first)
            except MakersFault as fault:
                return question_page(request, _wrong_measurement(request, seen), fault)
            if found := measured_doubts(request, held.figures, [right], request.one("back"), first):
                return question_page(request, _wrong_measurement(request, seen), doubts=found)
        correct_measurement(store, seen, right, request.hand, figures=figures)
    return go(_back(request, number))


def _back(request: PageRequest, number: int) -> str:
    """The page of the work that led here, or all work."""
    name = request.one("back")
    return address_of_work(number, name) if name.isidentifier() else f"/instrument/{number}/sheets"


def not_done_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The question before an operation that was noted as done is taken back."""
    with request.record.opened() as store:
        done, number = _done(request, store), instrument_id(request)
        after, used = hanging(store, named(store, number), done.operation), used_up_at(store, done)
        left = left_of(store, {each.name for each in used})
    rest = f" Still in stock: {', '.join(left)}; strike it off as well if it was never cut." if left else ""
    back = f" Put back, promised as before: {', '.join(each.name for each in used)}." if used else ""
    hangs = (
        f" Done after it, and hanging on it: {', '.join(name.replace('_', ' ') for name in after)}." if after else ""
    )
    wrong = Correction(
        f"Not done after all: {done.operation.replace('_', ' ')}",
        f"noted as done {clock(done.at, request.now)}{f', {done.who}' if done.who else ''}. {done.note}".strip(),
        (),
        (("version", str(done.version)),),
        f"/instrument/{number}/operation/{done.operation}/not-done",
        address_of_work(number, done.operation),
        "It is not done",
        f"The operation is open again. What was measured at it stays.{back}{rest}{hangs}",
        (done.at,),
    )
    return question_page(request, wrong)


def take_done_back(request: PageRequest, _: OpenInstruments) -> Response:
    """Mark an operation as open again; sent twice, it is done once."""
    with request.record.opened() as store:
        try:
            done = _done(request, store)
        except Missing:
            return go(address_of_work(instrument_id(request), request.words["operation"]))
        if str(done.version) != request.one("version"):
            raise MakersFault.of("somebody else changed what is noted of it", remedy="look at the sheet again")
        not_done_after_all(store, done, request.hand)
    return go(address_of_work(done.instrument, done.operation))


def _done(request: PageRequest, store: Store) -> DoneOperation:
    name = request.words["operation"]
    found = next((each for each in operations_done(store, instrument_id(request)) if each.operation == name), None)
    if found is None:
        raise Missing(f"{name} noted as done")
    return found


def _number(written: str) -> int:
    found = whole_number(written)
    if found is None:
        raise Missing("such number")
    return found


def question_page(
    request: PageRequest, wrong: Correction, fault: MakersFault | None = None, doubts: Mapping[str, Doubt] | None = None
) -> Response:
    """The page that asks before anything is written; with a fault, it says what is wrong with what was typed.

    `doubts` are the questions about it: sent again, the value is accepted.
    """
    faults: tuple[Fault, ...] = fault.faults if fault else ()
    found = doubts or {}
    status = 422 if faults or found else 200
    against = before_it(wrong.noted, request.now)
    return request.page(
        "correct.html", status, title=wrong.heading, wrong=wrong, faults=faults, doubts=found, against=against
    )
