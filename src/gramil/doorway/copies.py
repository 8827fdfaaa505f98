"""Copies of the store that lie beside it: which exist, and what would be lost by putting one back."""

from dataclasses import dataclass
from pathlib import Path

from gramil.faults import MakersFault
from gramil.store.opening import Store, open_store
from gramil.store.writing import Change, changes

_EVERY = 2**31


@dataclass(frozen=True)
class Copy:
    """A copy by its file's name: its newest change (None if it has none), and why it cannot be opened, if so."""

    name: str
    last: Change | None
    fault: str = ""


def copies_beside(path: Path) -> tuple[Copy, ...]:
    """The other stores in the store's folder, by name: copies laid there, and stores that were set aside."""
    kept = f"{path.name}.before-"
    found = [each for each in path.parent.iterdir() if each.suffix == ".gramil" or each.name.startswith(kept)]
    taken = [each for each in found if each.name != path.name and not each.name.startswith(".") and each.is_file()]
    return tuple(_copy(each) for each in sorted(taken) if not each.name.endswith(("-wal", "-shm", "-journal")))


def _copy(path: Path) -> Copy:
    try:
        with open_store(path, to_read=True) as store:
            return Copy(path.name, next(iter(changes(store, 1)), None))
    except MakersFault as fault:
        return Copy(path.name, None, fault.faults[0].what)


def gone_with(store: Store, copy: Path) -> tuple[Change, ...]:
    """The changes of the store that a copy knows nothing of, newest first. Raises MakersFault if the copy is not a
    store.
    """
    with open_store(copy, to_read=True) as kept:
        known = {(each.id, each.at, each.what) for each in changes(kept, _EVERY)}
    return tuple(each for each in changes(store, _EVERY) if (each.id, each.at, each.what) not in known)
