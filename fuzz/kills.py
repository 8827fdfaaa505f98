"""Programs ended at random while they write, with every signal, and two that write at once."""

import os
import random
import signal
import time
from datetime import UTC, datetime
from pathlib import Path

from fuzz.kind import Kind
from gramil.doorway.verify import verify
from gramil.faults import MakersFault
from gramil.shop.stock import Blank, add_blank, blanks
from gramil.store.opening import create_store, open_store
from gramil.store.writing import Hand
from gramil.writers.files import LIST, write_files
from gramil.writers.one_step import STAGING
from gramil.written_file import alone_with, put_text

NOW = datetime(2026, 11, 2, 9, 30, tzinfo=UTC)
ENDS = (signal.SIGTERM, signal.SIGHUP, signal.SIGINT)
SIGNALS = (signal.SIGKILL, *ENDS)
PACKS = tuple({f"{name}-{row}.svg": f"{name} {row}".encode() * 300 for row in range(12)} for name in ("board", "neck"))


def _chance(content: bytes) -> random.Random:
    return random.Random(content)


def _branch(act: object, *words: object) -> int:
    """A branch that every signal ends, whatever whoever began this program had it ignore."""
    usual = [signal.signal(each, signal.SIG_DFL) for each in ENDS]  # before the branch: one noted there would be lost
    child = os.fork()
    if child:
        for each, handler in zip(ENDS, usual, strict=True):
            signal.signal(each, handler)
    else:
        act(*words)  # type: ignore[operator]
        os._exit(0)
    return child


def _packs_for_ever(folder: Path) -> None:
    while True:
        for pack in PACKS:
            write_files(folder, pack)


def _kills_pack(content: bytes, folder: Path) -> None:
    """After the next command the folder is one of the packs, whole, and nothing hidden is left."""
    chance, out = _chance(content), folder / "pack"
    child = _branch(_packs_for_ever, out)
    time.sleep(chance.uniform(0.0, 0.05))
    os.kill(child, chance.choice(SIGNALS))
    os.waitpid(child, 0)
    pack = chance.choice(PACKS)
    write_files(out, pack)
    assert {each.name: each.read_bytes() for each in out.iterdir() if each.name != LIST} == pack, sorted(out.iterdir())
    assert not (out / STAGING).exists()


def _adds_for_ever(path: Path, name: str, said: int) -> None:
    with open_store(path) as store:
        for count in range(10**6):
            add_blank(store, Blank(f"{name} {count}", "spruce", 560.0, 220.0, 4.2), Hand(NOW))
            os.write(said, f"{name} {count}\n".encode())


def _kills_store(content: bytes, folder: Path) -> None:
    """What was acknowledged is there, and the store is sound."""
    chance, path = _chance(content), folder / "x.gramil"
    for end in ("", "-wal", "-shm"):
        Path(f"{path}{end}").unlink(missing_ok=True)
    create_store(path).close()
    out, said = os.pipe()
    children = [_branch(_adds_for_ever, path, name, said) for name in "ab"]
    os.close(said)
    time.sleep(chance.uniform(0.01, 0.15))
    for child in children:
        os.kill(child, chance.choice(SIGNALS))
    with os.fdopen(out) as stream:
        told = {line.strip() for line in stream if line.endswith("\n")}
    for child in children:
        os.waitpid(child, 0)
    assert verify(path) == ()
    with open_store(path) as store:
        assert told <= {each.name for each in blanks(store)}


def _two_write(content: bytes, folder: Path) -> None:
    """Each line that a program was told is written is there."""
    path = folder / "x.made.toml"
    path.unlink(missing_ok=True)
    children = [_branch(_lines, path, name) for name in "ab"]
    assert [os.waitstatus_to_exitcode(os.waitpid(child, 0)[1]) for child in children] == [0, 0]
    assert sorted(path.read_text().split()) == sorted(f"{name}{row}" for name in "ab" for row in range(5))


def _lines(path: Path, name: str) -> None:
    row = 0
    while row < 5:
        with alone_with(path):
            seen = path.read_bytes() if path.exists() else None
            try:
                put_text(path, (seen or b"").decode() + f"{name}{row}\n", seen)
            except MakersFault:
                continue
        row += 1


def _seed(chance: random.Random) -> bytes:
    return str(chance.random()).encode()


KINDS = (
    Kind("kills of a pack", _seed, _kills_pack),
    Kind("kills of a store", _seed, _kills_store),
    Kind("two writers", _seed, _two_write, 0.3),
)
