"""Undo of the last change: every row that it touched is put back as it was, from the snapshots that triggers kept.

Undo again takes back the change before. A change taken back stays on record, with the change that undid it; another
undo cannot bring it back. Readings of air are removed together with the import that brought them.
"""

from gramil.faults import MakersFault
from gramil.store.migrating import columns
from gramil.store.opening import Store
from gramil.store.writing import Change, Hand, note, transaction

_LAST = (
    "SELECT id, at, who, what, undoes FROM change AS done WHERE undoes IS NULL "
    "AND NOT EXISTS (SELECT 1 FROM change WHERE undoes = done.id) ORDER BY id DESC LIMIT 1"
)


def last_change(store: Store) -> Change | None:
    """The change that undo would take back, or None if there is none."""
    row = store.row(_LAST)
    return Change(*row) if row else None


def undo(store: Store, change: int, hand: Hand) -> Change:
    """Take back a change, which must be the last one; gives what was taken back.

    Raises MakersFault if another change was made since, or it lies too far back.
    """
    with transaction(store):
        last = last_change(store)
        if last is None or last.id != change:
            came = f"since then: {last.what}, {last.at}" if last else "there is no change to take back"
            raise MakersFault.of("this is not the last change any more", came, "look at what changed, then undo that")
        if not store.row("SELECT 1 FROM journal WHERE change = ?", (change,)):
            raise MakersFault.of("this change cannot be taken back", "it changed nothing, or lies too far back")
        taken = note(store, f"undo: {last.what}", hand, change)
        steps = store.rows(
            "SELECT step, of_table, did, row FROM journal WHERE change = ? ORDER BY step DESC", (change,)
        )
        for step, table, did, row in steps:
            _step_back(store, step, table, did, row, taken)
        store.rows("DELETE FROM journal WHERE change = ?", (change,))
    return last


def _step_back(store: Store, step: int, table: str, did: str, row: int, taken: int) -> None:
    """Undo what was done to one row. The row gets a new version: whoever saw the old version number saw another
    state.
    """
    names = [name for name, _ in columns(store.connection, table)]
    listed = ", ".join(names)
    if did == "insert":
        store.rows(f"DELETE FROM {table} WHERE id = ?", (row,))
        return
    if did == "delete":
        store.rows(f"INSERT INTO {table} ({listed}) SELECT {listed} FROM before_{table} WHERE step = ?", (step,))
    else:
        kept = f"SELECT {listed} FROM before_{table} WHERE step = ?"
        store.rows(f"UPDATE {table} SET ({listed}) = ({kept}) WHERE id = ?", (step, row))
    if "version" in names:
        store.rows(f"UPDATE {table} SET version = ? WHERE id = ?", (taken, row))
