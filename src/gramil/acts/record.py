"""The record as a whole: its last change taken back, and a copy of it put back in its place."""

from datetime import datetime
from pathlib import Path

from gramil.doorway.backup import restore
from gramil.faults import MakersFault
from gramil.store.opening import Store, open_store
from gramil.store.undo import undo
from gramil.store.writing import Change, Hand, changes

LATELY = 60
"""How many changes back a form that is sent twice is recognized."""


def take_back(store: Store, change: int, hand: Hand) -> Change:
    """Take back the last change, by its number; gives what was taken back. Asked twice, it happens once.

    Raises MakersFault if another change was made since, or it lies too far back.
    """
    known = changes(store, LATELY)
    if any(each.undoes == change for each in known):
        return next(each for each in known if each.id == change)
    return undo(store, change, hand)


def put_back(copy: Path, path: Path, now: datetime, seen: int | None = None) -> Path | None:
    """Put a copy in the record's place; gives the path where the old record is kept, None if there was none.

    `seen` is the number of the last change at the time of asking. Raises MakersFault, with everything left as it was,
    if the copy is not sound, another program has the record open, or something was noted meanwhile.
    """
    if seen is not None and seen != _last_number(path):
        raise MakersFault.of(
            "something was noted meanwhile", "it would be gone with the rest", "look at the copies again"
        )
    return restore(copy, path, now)


def _last_number(path: Path) -> int:
    with open_store(path, to_read=True) as store:
        last = changes(store, 1)
    return last[0].id if last else 0
