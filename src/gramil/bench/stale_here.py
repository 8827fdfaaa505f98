"""Which sheets handed out are stale, on the bench: worked out once for each change of the record."""

from gramil.bench.shelf import Held, Shelf
from gramil.now.states import Staling
from gramil.sheets.handed_out import Stale, by_name, names_given, stale_sheets
from gramil.shop.opening import Store
from gramil.shop.operations import Work, needed
from gramil.shop.own_operations import work_of


def stale_on(store: Store, shelf: Shelf, held: Held) -> tuple[Stale, ...]:
    """The stale sheets of an instrument by its latest revision."""
    (last,) = store.row("SELECT coalesce(max(id), 0) FROM change") or (0,)
    with shelf.lock:
        number, found = shelf.stale.get(held.seen.id, (None, ()))
    if number == last:
        return found
    latest = held if held.revision.number == held.latest else shelf.held(store, held.seen.id)
    found = stale_sheets(store, held.seen, latest.figures, work_on(store, latest))
    with shelf.lock:
        shelf.stale[held.seen.id] = last, found
    return found


def given_on(store: Store, held: Held) -> frozenset[str]:
    """The names of the sheets of an instrument that are handed out and still to be used."""
    return names_given(store, held.seen, work_on(store, held))


def work_on(store: Store, held: Held) -> Work:
    """The work that an instrument needs, by the shop's own list and by its own."""
    return needed(work_of(store, held.seen.id), held.description.instrument)


def staling(shelf: Shelf) -> Staling:
    """What says which sheets are stale by the figures that the bench keeps."""
    return lambda store, owner: by_name(stale_on(store, shelf, shelf.held(store, owner.id)))
