"""Which sheets handed out are stale, for the bench: worked out once after each change to the record."""

from gramil.bench.made_here import figuring, judging
from gramil.bench.open_instruments import OpenInstrument, OpenInstruments
from gramil.now.states import Staling, WorkedOut
from gramil.sheets.handed_out import Stale, by_name, names_given, stale_sheets
from gramil.shop.operations import Work, needed
from gramil.shop.own_operations import work_of
from gramil.store.opening import Store


def stale_on(store: Store, open_instruments: OpenInstruments, held: OpenInstrument) -> tuple[Stale, ...]:
    """The stale sheets of an instrument by its latest revision."""
    (last,) = store.row("SELECT coalesce(max(id), 0) FROM change") or (0,)
    with open_instruments.lock:
        number, found = open_instruments.stale.get(held.seen.id, (None, ()))
    if number == last:
        return found
    latest = held if held.revision.number == held.latest else open_instruments.held(store, held.seen.id)
    found = stale_sheets(store, held.seen, latest.figures, work_on(store, latest))
    with open_instruments.lock:
        open_instruments.stale[held.seen.id] = last, found
    return found


def given_on(store: Store, held: OpenInstrument) -> frozenset[str]:
    """The names of the sheets of an instrument that are handed out and still to be used."""
    return names_given(store, held.seen, work_on(store, held))


def work_on(store: Store, held: OpenInstrument) -> Work:
    """The work that an instrument needs, by the shop's own list and by its own."""
    return needed(work_of(store, held.seen.id), held.description.instrument)


def staling(open_instruments: OpenInstruments) -> Staling:
    """A function that tells which sheets are stale by the figures that the bench holds."""
    return lambda store, owner: by_name(stale_on(store, open_instruments, open_instruments.held(store, owner.id)))


def worked_out(open_instruments: OpenInstruments) -> WorkedOut:
    """How what is said of an instrument of the store is worked out from the figures that the bench holds."""
    return WorkedOut(staling(open_instruments), judging(open_instruments), figuring(open_instruments))
