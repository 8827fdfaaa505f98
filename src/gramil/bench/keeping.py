"""What the bench asks of the shop's record. The store is opened anew for each request: a thread never shares one."""

from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from gramil.shop.opening import Store, create_store, open_store


@dataclass(frozen=True)
class Keeping:
    """Where the record lies."""

    path: Path

    @contextmanager
    def opened(self) -> Iterator[Store]:
        """The store, open for one request; raises MakersFault where it cannot be opened."""
        with open_store(self.path) as store:
            yield store


def keeping_at(path: Path) -> Keeping:
    """The record in a file, made if there is none; raises MakersFault for a file that is something else."""
    if not path.exists():
        create_store(path).close()
    else:
        open_store(path).close()
    return Keeping(path)
