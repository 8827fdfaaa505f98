"""What the hands report: a measurement, an operation done, a sheet handed out. Sent twice, it is noted once."""

from starlette.responses import Response

from gramil.acts.sheets import hand_out
from gramil.acts.work import Noted, measure, note_done
from gramil.bench.asking import Asked, go
from gramil.bench.doubts import measured_doubts
from gramil.bench.instrument_page import instrument_id
from gramil.bench.measuring import MEASURED, bare
from gramil.bench.sheet_page import address_of_work, asked_again, sheet_of, work_for, work_named
from gramil.bench.shelf import Held, Shelf
from gramil.bench.units import shower_for
from gramil.faults import MakersFault
from gramil.shop.opening import Store
from gramil.shop.operations_done import Measurement, operations_done, read_measurements


def note_work(asked: Asked, shelf: Shelf) -> Response:
    """What was measured, and with `do=done` the operation as done.

    What cannot be read is told, what cannot be meant is asked about, and nothing is noted.
    """
    number = instrument_id(asked)
    asked.session.who = asked.one("who", asked.session.who)
    with asked.keeping.opened() as store:
        held = shelf.held(store, number)
        name = work_named(held, work_for(store, held), asked.words["operation"])
        measured = _measured(asked, held)
        first = shower_for(asked.session, held.figures).first
        if found := measured_doubts(asked, held.figures, measured, name, first):
            return asked_again(asked, store, shelf, held, name, found)
        if asked.one("do") == "done":
            _mark(asked, store, held, name, measured)
        else:
            measure(store, held.seen, measured, asked.now, figures=held.figures, who=asked.session.who)
    told = "".join(f"&told={each.address}" for each in measured)
    return go(f"{address_of_work(number, name)}?noted=1{told}")


def _measured(asked: Asked, held: Held) -> tuple[Measurement, ...]:
    """Every field that was filled in. Raises MakersFault with every fault."""
    fields = {key.removeprefix(MEASURED): texts[-1] for key, texts in asked.form.items() if key.startswith(MEASURED)}
    written = {address: bare(text) for address, text in fields.items() if text.strip()}
    return read_measurements(held.figures, written, shower_for(asked.session, held.figures).first)


def _mark(asked: Asked, store: Store, held: Held, name: str, measured: tuple[Measurement, ...]) -> None:
    """Done once: the same form sent again by a phone that lost the answer changes nothing."""
    noted = Noted(asked.one("note"), _hours(asked.one("hours")))
    if any(each.operation == name for each in operations_done(store, held.seen.id)):
        return
    who = asked.session.who
    note_done(store, held.seen, name, asked.now, measured=measured, noted=noted, figures=held.figures, who=who)


def _hours(written: str) -> float | None:
    try:
        return float(written.replace(",", ".")) if written else None
    except ValueError:
        raise MakersFault.of(f'"{written}" is no number', remedy="write hours such as 1.5", where="hours") from None


def give(asked: Asked, shelf: Shelf) -> Response:
    """Note the sheet of an operation or a set-up as handed out, and print it."""
    with asked.keeping.opened() as store:
        held = shelf.held(store, instrument_id(asked))
        name = asked.words["setup"]
        sheet = sheet_of(held, work_for(store, held), name)
        hand_out(store, held.seen, [sheet], asked.now, asked.session.who)
    return go(f"/instrument/{held.seen.id}/print/sheet-{name}.pdf")
