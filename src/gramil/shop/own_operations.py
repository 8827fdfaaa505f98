"""A maker's own lists of operations in the store: one of the whole shop, one of each instrument that has its own.

A list is kept as it was written. A list is saved only if it fits the others: the shop's with the
package's, an instrument's with both, and each with the instruments made by it.
"""

from dataclasses import dataclass, replace

from gramil.description.instrument import Instrument as Keys
from gramil.description.reading import parse_keys
from gramil.faults import Fault, MakersFault
from gramil.shop.instruments import Instrument, instruments, revision
from gramil.shop.operations import Work, needed
from gramil.shop.operations_file import OwnList, work_with
from gramil.store.failures import Conflict
from gramil.store.opening import Store
from gramil.store.rows import delete, insert, records, update
from gramil.store.writing import Hand, writing

TABLE = "list_of_operations"
OF_THE_SHOP = "the shop's operations"


@dataclass(frozen=True)
class OwnOperations:
    """A list as it was written; `instrument` is None for the shop's."""

    id: int
    version: int
    instrument: int | None
    text: str


def own_operations(store: Store, owner: Instrument | None = None) -> OwnOperations | None:
    """The list of an instrument, or that of the shop; None if there is none."""
    number = None if owner is None else owner.id
    return next(iter(records(store, OwnOperations, TABLE, "WHERE instrument IS ?", (number,))), None)


def save_own_operations(
    store: Store,
    text: str,
    hand: Hand,
    *,
    owner: Instrument | None = None,
    seen: OwnOperations | None = None,
    file: str = "",
) -> OwnOperations:
    """Save a list in place of the one that was seen (None: there was none).

    Raises MakersFault, with the lines of `file`, for a list that does not fit the others, and Conflict, with both
    texts, if somebody saved another since.
    """
    name = _name(owner)
    with writing(store, f"save {name}", hand):
        there = own_operations(store, owner)
        if there is not None and there.text == text:
            return there
        if there is not None and there != seen:
            raise Conflict(name, text, there.text)
        if seen is not None:
            update(store, TABLE, seen.id, seen.version, {"text": text})
        else:
            insert(store, TABLE, {"version": None, "instrument": owner.id if owner else None, "text": text})
        _check(store, owner, file or name)
    saved = own_operations(store, owner)
    assert saved is not None
    return saved


def remove_own_operations(store: Store, gone: OwnOperations, hand: Hand) -> None:
    """Remove a list. Raises MakersFault if another list needs it, Conflict if it is no longer as it was seen."""
    with writing(store, "remove a list of operations", hand):
        delete(store, TABLE, gone.id, gone.version)
        check_operations(store)


def work_of(store: Store, owner: int | None = None) -> Work:
    """The work with the shop's list laid over it, and an instrument's, by its number. Raises MakersFault."""
    return work_with(lists_of(store, owner))


def lists_of(store: Store, owner: int | None = None) -> list[OwnList]:
    """The lists that apply to an instrument, by its number, or to the shop: what each is called, and its text."""
    sql = (
        f"SELECT instrument.name, text FROM {TABLE} AS own LEFT JOIN instrument ON instrument.id = own.instrument "
        "WHERE own.instrument IS NULL OR own.instrument = ? ORDER BY own.instrument IS NOT NULL"
    )
    return [(OF_THE_SHOP if name is None else _called(name), text) for name, text in store.rows(sql, (owner,))]


def check_operations(store: Store) -> None:
    """Raises MakersFault, with every fault, if any list does not fit the others."""
    owners = [None, *(number for (number,) in store.rows(f"SELECT instrument FROM {TABLE} ORDER BY id") if number)]
    faults: list[Fault] = []
    for owner in owners:
        try:
            work_of(store, owner)
        except MakersFault as found:
            faults += found.faults
    if faults:
        raise MakersFault(dict.fromkeys(faults))


def _check(store: Store, owner: Instrument | None, file: str) -> None:
    """The same, and whether the instruments can be made by it, with a list's own file in the place of its name."""
    try:
        check_operations(store)
        for each in instruments(store) if owner is None else [owner]:
            chosen = _keys_of(store, each)
            if chosen is not None:
                needed(work_of(store, each.id), chosen)
    except MakersFault as found:
        name = _name(owner)
        raise MakersFault(replace(each, file=file) if each.file == name else each for each in found.faults) from None


def _keys_of(store: Store, owner: Instrument) -> Keys | None:
    """An instrument's latest revision, by key; None if it cannot be read."""
    try:
        return parse_keys(revision(store, owner.id).text)
    except MakersFault:
        return None


def _name(owner: Instrument | None) -> str:
    return OF_THE_SHOP if owner is None else _called(owner.name)


def _called(name: str) -> str:
    return f"{name}'s operations"
