"""What the bench asks of the shop's record. The store is opened for each request, so that threads never share it."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from datetime import datetime
from pathlib import Path
from threading import Condition

from gramil.acts import record
from gramil.faults import MakersFault
from gramil.store.opening import Store, create_store, open_store

PATIENCE = 10.0
"""Seconds that a copy waits to be put back until nobody has the record open."""


@dataclass
class _Door:
    """How many requests have the record open; while one holds it exclusively, no other begins."""

    inside: int = 0
    turn: Condition = field(default_factory=Condition)


@dataclass(frozen=True)
class ShopRecord:
    """Where the record lies."""

    path: Path
    door: _Door = field(default_factory=_Door)

    @contextmanager
    def opened(self) -> Iterator[Store]:
        """The store, open for one request; raises MakersFault where it cannot be opened."""
        with self.door.turn:
            self.door.inside += 1
        try:
            with open_store(self.path) as store:
                yield store
        finally:
            with self.door.turn:
                self.door.inside -= 1
                self.door.turn.notify_all()

    def put_back(self, copy: Path, now: datetime, seen: int | None = None) -> Path | None:
        """Put a copy in the record's place while no request has it open; gives the path where the old record is kept.

        `seen` is the number of the last change at the time of asking. Raises MakersFault, with everything left as it
        was, if the copy is not sound, the record is in use, or something was noted meanwhile.
        """
        with self.door.turn:
            if not self.door.turn.wait_for(lambda: self.door.inside == 0, PATIENCE):
                raise MakersFault.of("the record is in use", "nothing was touched", "wait a little, and try again")
            return record.put_back(copy, self.path, now, seen)


def record_at(path: Path) -> ShopRecord:
    """The record in a file, made if there is none; raises MakersFault for a file that is something else."""
    if not path.exists():
        create_store(path).close()
    else:
        open_store(path).close()
    return ShopRecord(path)
