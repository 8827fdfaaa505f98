"""That a copy of the store can be put back: it is made, restored in another folder, and compared with the store row by
row.
"""

from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from tempfile import TemporaryDirectory

from gramil.doorway.backup import backup, restore
from gramil.doorway.export import export_files
from gramil.faults import MakersFault
from gramil.store.opening import Store, open_store, reading
from gramil.store.table_forms import TABLES


@dataclass(frozen=True)
class Proof:
    """What was proved: rows of all tables, readings of air, and the size of the copy in bytes."""

    rows: int
    readings: int
    size: int


def proof_of(store: Store, now: datetime) -> Proof:
    """Copies the store, restores the copy in a folder of its own, and compares everything in it.

    Raises MakersFault if the copy is not sound, cannot be restored, or differs from the store in anything.
    """
    with TemporaryDirectory() as folder:
        copy, again = Path(folder) / "copy.gramil", Path(folder) / "again.gramil"
        with reading(store):
            expected = export_files(store)
            rows, readings = _counted(store)
            backup(store, copy)
        restore(copy, again, now)
        with open_store(again, to_read=True) as restored:
            if export_files(restored) != expected:
                raise MakersFault.of(
                    "the copy does not hold what the record holds", "nothing was touched", "check the disk, run verify"
                )
        return Proof(rows, readings, copy.stat().st_size)


def _counted(store: Store) -> tuple[int, int]:
    """Rows of every table but the air's, and readings of air."""
    rows = sum(store.rows(f"SELECT count(*) FROM {table}")[0][0] for table in TABLES)
    return rows, store.rows("SELECT count(*) FROM air_reading")[0][0]
