"""A writer that is killed again and again: `python killed_writer.py STORE KILLS SEED`.

Each writer is a process of its own that adds blanks, revisions, measurements and readings, and says what was
acknowledged through a pipe, one line a change. It is killed with SIGKILL at a random moment, a little after it has said
so and so much: by the clock alone a busy machine would kill it before it had done anything. At the end the program
prints, as JSON, what was acknowledged and is not there, what is there and was never tried, and what verify says.
"""

import contextlib
import json
import os
import random
import signal
import sys
import time
from datetime import datetime, timedelta, timezone
from pathlib import Path

from gramil.air.places import Place, add_place, import_air, place
from gramil.doorway.verify import verify
from gramil.physics.arrays import floats
from gramil.shop.instruments import add_instrument, instrument, revisions, save_revision
from gramil.shop.operations_done import Measurement, Noted, mark_done, measurements, operations_done
from gramil.shop.stock import Blank, add_blank, blanks
from gramil.store.opening import create_store, open_store
from gramil.store.undo import last_change, undo
from gramil.store.writing import Hand
from gramil.wood.air import AirHistory

NOW = datetime(2026, 11, 2, 9, 30, tzinfo=timezone(timedelta(hours=1)))
READINGS = 25
MOST_LINES = 16
"""Lines that a writer may say before it is killed; two a change."""


def write_for_ever(path: Path, turn: int, out: int) -> None:
    """Changes of several kinds one after another; each is acknowledged once its function has returned."""
    with open_store(path) as store:
        os.write(out, b"open\n")
        count = 0
        while True:
            name = f"{turn}-{count}"
            match count % 5:
                case 0:
                    os.write(out, f"try blank {name}\n".encode())
                    add_blank(store, Blank(name, "spruce", 560.0, 220.0, 4.2), Hand(NOW))
                    os.write(out, f"did blank {name}\n".encode())
                case 1:
                    os.write(out, f"try save {name}\n".encode())
                    save_revision(store, instrument(store, "Tarn"), name + " x" * 3000, Hand(NOW))
                    os.write(out, f"did save {name}\n".encode())
                case 2:
                    os.write(out, f"try done {name}\n".encode())
                    pin = tuple(Measurement(f"figure_{row}", "6.4 mm", 6.4, "mm") for row in range(5))
                    mark_done(store, instrument(store, "Tarn").id, name, Hand(NOW), Noted(measured=pin))
                    os.write(out, f"did done {name}\n".encode())
                case 3:
                    start = NOW + timedelta(hours=1000 * turn + count)
                    row = range(READINGS)
                    history = AirHistory(start, floats([60.0 * r for r in row]), floats([18] * READINGS), floats(row))
                    os.write(out, f"try air {name}\n".encode())
                    import_air(store, place(store, "bench").id, history, Hand(NOW), file=name)
                    os.write(out, f"did air {name}\n".encode())
                case 4:
                    add_blank(store, Blank(f"gone {name}", "spruce", 560.0, 220.0, 4.2), Hand(NOW))
                    last = last_change(store)
                    assert last is not None
                    undo(store, last.id, Hand(NOW))
                    os.write(out, f"did undo {name}\n".encode())
            count += 1


def one_life(path: Path, turn: int, lines: int, seconds: float) -> bytes:
    """Start a writer, let it open the store and say so many lines more, kill it after a while; all that it said."""
    read, write = os.pipe()
    child = os.fork()
    if child == 0:
        os.close(read)
        with contextlib.suppress(BaseException):
            write_for_ever(path, turn, write)
        os._exit(1)
    os.close(write)
    said = b""
    while said.count(b"\n") <= lines and (chunk := os.read(read, 1)):
        said += chunk
    time.sleep(seconds)
    os.kill(child, signal.SIGKILL)
    while chunk := os.read(read, 65536):
        said += chunk
    os.close(read)
    _, status = os.waitpid(child, 0)
    assert os.WTERMSIG(status) == signal.SIGKILL, "the writer ended by itself"
    return said


def there(path: Path) -> dict[str, set[str]]:
    """What the store holds, by kind; what is there by half is under "half"."""
    with open_store(path) as store:
        tarn = instrument(store, "Tarn").id
        done = operations_done(store, tarn)
        air = store.rows("SELECT file, count(instant) FROM air_import LEFT JOIN air_reading ON import = id GROUP BY id")
        half = {each.operation for each in done if len(measurements(store, tarn, each.id)) != 5}
        return {
            "blank": {each.name for each in blanks(store) if not each.name.startswith("gone")},
            "save": {each.text.split()[0] for each in revisions(store, tarn)} - {"first"},
            "done": {each.operation for each in done},
            "air": {file for file, _ in air},
            "half": half | {file for file, count in air if count != READINGS},
            "gone": {name for (name,) in store.rows("SELECT name FROM blank WHERE name LIKE 'gone%'")},
        }


def main(path: Path, kills: int, seed: int) -> None:
    """All the lives, and the count."""
    chance = random.Random(seed)
    with create_store(path) as store:
        add_instrument(store, "Tarn", "first", Hand(NOW))
        add_place(store, Place("bench", {}), Hand(NOW))
    tried: dict[str, set[str]] = {kind: set() for kind in ("blank", "save", "done", "air", "undo")}
    acknowledged: dict[str, set[str]] = {kind: set() for kind in tried}
    for turn in range(kills):
        for line in one_life(path, turn, chance.randrange(MOST_LINES), chance.uniform(0.0, 0.01)).decode().splitlines():
            if line.count(" ") == 2:
                word, kind, name = line.split(" ")
                (acknowledged if word == "did" else tried)[kind].add(name)
    found = there(path)
    kinds = ("blank", "save", "done", "air")
    result = {
        "kills": kills,
        "acknowledged": sum(map(len, acknowledged.values())),
        "lost": sorted(name for kind in kinds for name in acknowledged[kind] - found[kind]),
        "from nowhere": sorted(name for kind in kinds for name in found[kind] - tried[kind]),
        "half": sorted(found["half"]),
        "saved but not acknowledged": sum(len(found[kind] - acknowledged[kind]) for kind in kinds),
        "not undone": len(found["gone"]),
        "verify": [str(fault) for fault in verify(path)],
    }
    print(json.dumps(result))


if __name__ == "__main__":
    main(Path(sys.argv[1]), int(sys.argv[2]), int(sys.argv[3]))
