"""What the maker reports from the bench: a measurement, an operation done, a sheet handed out. Sent twice, it is noted
once.
"""

from starlette.responses import Response

from gramil.acts.left_over import LEFT, Sizes, note_and_keep
from gramil.acts.sheets import hand_out
from gramil.acts.work import UsedUp, measure, note_done
from gramil.bench.doubts import Doubt, measured_doubts, moment_doubt
from gramil.bench.field_words import in_field_words
from gramil.bench.measuring import MEASURED, bare
from gramil.bench.open_instruments import OpenInstrument, OpenInstruments
from gramil.bench.page_request import PageRequest, go
from gramil.bench.pages.instrument_page import instrument_id
from gramil.bench.pages.sheet_page import Again, address_of_work, sheet_of, sheet_page_again, work_for, work_named
from gramil.bench.units import formatter_for
from gramil.change.days_in_order import days_of_operations, out_of_order
from gramil.faults import MakersFault
from gramil.measure import LengthUnit
from gramil.shop.operations_done import MOST_HOURS, Measurement, Noted, operations_done, read_measurements
from gramil.shop.written_sizes import read_sizes
from gramil.store.items import shop_unit
from gramil.store.opening import Store

HOURS = "hours"
"""The field of the hours that it took; that of the sizes of what is left of the wood has a ; between several."""


def note_work(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Note what was measured and, with `do=done`, the operation as done.

    If something cannot be read this is said, if something is doubtful it is asked about, and nothing is noted.
    """
    number = instrument_id(request)
    request.session.who = request.one("who", request.session.who)
    with request.record.opened() as store:
        held = open_instruments.held(store, number)
        name = work_named(held, work_for(store, held), request.words["operation"])
        if wrong := _unreadable(request, held, shop_unit(store)):
            return sheet_page_again(request, store, open_instruments, name, Again(faults=wrong))
        measured = _measured(request, held)
        first = formatter_for(request.session, held.figures).first
        found = measured_doubts(request, held.figures, measured, name, first) | _day_doubt(request, store, held, name)
        if found:
            return sheet_page_again(request, store, open_instruments, name, Again(doubts=found))
        if request.one("do") == "done":
            try:
                _mark(request, store, held, name, measured)
            except MakersFault as fault:
                if fault.faults[0].where != LEFT:
                    raise
                again = Again(faults={LEFT: in_field_words(fault.faults[0])})
                return sheet_page_again(request, store, open_instruments, name, again)
        else:
            measure(store, held.seen, measured, request.hand, figures=held.figures)
    told = "".join(f"&told={each.address}" for each in measured)
    return go(f"{address_of_work(number, name)}?noted=1{told}")


def _day_doubt(request: PageRequest, store: Store, held: OpenInstrument, name: str) -> dict[str, Doubt]:
    """The question about today, if work that comes before it or waits for it was done on another side of it.

    None of work that is noted already: the same form was sent again.
    """
    done = operations_done(store, held.seen.id)
    if request.one("do") != "done" or any(each.operation == name for each in done):
        return {}
    days = days_of_operations(done, request.now)
    return moment_doubt(request, out_of_order(work_for(store, held), days, name, request.now))


def _unreadable(request: PageRequest, held: OpenInstrument, unit: LengthUnit) -> dict[str, str]:
    """What is wrong with each field, all at once, in the field's own words."""
    first, found = formatter_for(request.session, held.figures).first, dict[str, str]()
    for address, written in _written(request).items():
        try:
            read_measurements(held.figures, {address: written}, first)
        except MakersFault as fault:
            found[address] = in_field_words(fault.faults[0])
    try:
        _hours(request.one("hours"))
    except MakersFault as fault:
        found[HOURS] = in_field_words(fault.faults[0])
    try:
        _left(request, unit)
    except MakersFault as fault:
        found[LEFT] = in_field_words(fault.faults[0])
    return found


def _measured(request: PageRequest, held: OpenInstrument) -> tuple[Measurement, ...]:
    """Every field that was filled in. Raises MakersFault with every fault."""
    return read_measurements(held.figures, _written(request), formatter_for(request.session, held.figures).first)


def _written(request: PageRequest) -> dict[str, str | float]:
    """What was typed, by the address of the figure."""
    fields = {key.removeprefix(MEASURED): texts[-1] for key, texts in request.form.items() if key.startswith(MEASURED)}
    return {address: bare(text) for address, text in fields.items() if text.strip()}


def _mark(
    request: PageRequest, store: Store, held: OpenInstrument, name: str, measured: tuple[Measurement, ...]
) -> None:
    """Once only: the same form sent again, by a phone that lost the answer, changes nothing."""
    noted = Noted(request.one("note"), _hours(request.one(HOURS)), measured=measured)
    if any(each.operation == name for each in operations_done(store, held.seen.id)):
        return

    def note() -> tuple[UsedUp, ...]:
        return note_done(store, held.seen, name, request.hand, noted, held.figures)

    left = _left(request, shop_unit(store))
    if not left:
        note()
        return
    note_and_keep(store, f"done: {name}, {held.seen.name}", request.hand, note, left)


def _left(request: PageRequest, unit: LengthUnit) -> list[Sizes]:
    """The sizes of what is left of the wood. Raises MakersFault if they cannot be read."""
    return [read_sizes(text.strip(), unit, LEFT) for text in request.one(LEFT).split(";") if text.strip()]


def _hours(written: str) -> float | None:
    """The hours typed. Raises MakersFault for a number of hours that no operation takes."""
    if not written:
        return None
    try:
        hours = float(written.replace(",", "."))
    except ValueError:
        raise MakersFault.of(f'"{written}" is no number', remedy="write hours such as 1.5", where="hours") from None
    if not 0.0 <= hours <= MOST_HOURS:
        raise MakersFault.of(f"read {written} hours", f"0 to {MOST_HOURS:g}", "write hours such as 1.5", where="hours")
    return hours


def give(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Note the sheet of an operation or a set-up as handed out, and print it."""
    with request.record.opened() as store:
        held = open_instruments.held(store, instrument_id(request))
        name = request.words["setup"]
        sheet = sheet_of(held, work_for(store, held), name)
        hand_out(store, held.seen, [sheet], request.hand)
    return go(f"/instrument/{held.seen.id}/print/sheet-{name}.pdf")
