"""A record laid out for the tests of acts, what it holds, and how it looks on the disk while an act is under way."""

import shutil
import sqlite3
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field
from datetime import UTC, datetime
from importlib.resources import files
from pathlib import Path
from typing import Any

from gramil.acts.air import name_place
from gramil.acts.bringing_in import bring_in, bring_in_list
from gramil.acts.descriptions import keep
from gramil.acts.wood import keep_wood, reserve
from gramil.acts.work import measure, note_done
from gramil.change.in_store import figures_in_store
from gramil.description.writing import set_key
from gramil.now.match import Matching, match
from gramil.now.needs import needs_of
from gramil.now.stock_on_hand import stock_of_store
from gramil.shop.instruments import Instrument, instrument
from gramil.shop.operations_done import Measurement
from gramil.shop.shop_in_store import shop_description
from gramil.shop.stock import Blank
from gramil.store.opening import Store, create_store, open_store
from gramil.store.writing import Hand

NOW = datetime(2026, 1, 19, 9, 0, tzinfo=UTC)
NOT_THE_STATE = ("change", "under_way", "journal", "sqlite_sequence")
"""Tables that say what was done, and not how things stand."""
LIST = "[operation.top_jointed]\nhands = 50\n"
THICK = Measurement("board_thickness", "6.35 mm", 6.35, "mm")

State = dict[str, list[tuple[Any, ...]]]


def lay_out(folder: Path) -> Path:
    """A record of the example shop and two instruments, one with work done on it, wood promised, and a list kept."""
    for file in (files("gramil") / "data" / "examples").iterdir():
        if file.name == "tarn.made.toml":
            continue
        (folder / file.name).write_bytes(file.read_bytes())
    (folder / "own.toml").write_text(LIST, encoding="utf-8", newline="\n")
    path = folder / "shop.gramil"
    with create_store(path) as store:
        bring_in(store, [folder / name for name in ("shop.toml", "tarn.toml", "fell.toml")], Hand(NOW))
        bring_in_list(store, folder / "own.toml", None, Hand(NOW))
        tarn = instrument(store, "Tarn")
        reserve(store, matching(store, tarn), {"Tarn": tarn.id}, Hand(NOW))
        note_done(store, tarn, "index_template_made", Hand(NOW))
        measure(store, tarn, [THICK], Hand(NOW))
        keep(
            store, tarn, set_key((folder / "tarn.toml").read_text(encoding="utf-8"), "scale.length", "650mm"), Hand(NOW)
        )
        keep_wood(store, Blank("offcut", "walnut", 300.0, 40.0, 9.0), Hand(NOW))
        keep_wood(store, Blank("plank", "walnut", 900.0, 90.0, 30.0), Hand(NOW))
        name_place(store, "attic", Hand(NOW))
    return path


def matching(store: Store, owner: Instrument) -> Matching:
    """What wood serves an instrument."""
    needs = needs_of(figures_in_store(store, owner, measured=False), ())
    return match(needs, stock_of_store(store, shop_description(store).shop, {}, {}), {})


def state(store: Store) -> State:
    """Every row of every table, but the versions: undo gives a row a new one."""
    rows = store.rows("SELECT name FROM sqlite_schema WHERE type = 'table' ORDER BY name")
    names = [name for (name,) in rows if name not in NOT_THE_STATE and not name.startswith("before_")]
    return {name: _rows(store, name) for name in names}


def _rows(store: Store, table: str) -> list[tuple[Any, ...]]:
    columns = [row[1] for row in store.rows(f"PRAGMA table_info({table})") if row[1] != "version"]
    return sorted(store.rows(f"SELECT {', '.join(columns)} FROM {table}"), key=repr)


def state_in(path: Path) -> State:
    with open_store(path, to_read=True) as store:
        return state(store)


def states_in(paths: Iterable[Path]) -> list[State]:
    """How things stand in each; records of the same bytes are read once, before a look at one could change it."""
    known: dict[tuple[bytes, ...], State] = {}
    found = []
    for path in paths:
        files = (path, Path(f"{path}-wal"))
        key = tuple(each.read_bytes() if each.exists() else b"" for each in files)
        if key not in known:
            known[key] = state_in(path)
        found.append(known[key])
    return found


@dataclass
class Watched:
    """A connection that looks at the disk before each statement that writes, and may refuse one of them."""

    connection: sqlite3.Connection
    path: Path
    folder: Path
    refused: str = ""
    seen: list[Path] = field(default_factory=list)

    def execute(self, sql: str, values: Sequence[Any] = ()) -> sqlite3.Cursor:
        self._before(sql)
        return self.connection.execute(sql, values)

    def executemany(self, sql: str, values: Sequence[Any]) -> sqlite3.Cursor:
        self._before(sql)
        return self.connection.executemany(sql, values)

    def __getattr__(self, name: str) -> Any:
        return getattr(self.connection, name)

    def _before(self, sql: str) -> None:
        word = sql.split()[0]
        if word == self.refused:
            raise Killed
        if word not in ("SELECT", "PRAGMA", "ROLLBACK"):
            self.look()

    def look(self) -> None:
        """The files as a program that starts after a kill at this moment would find them."""
        copy = self.folder / f"{len(self.seen)}.gramil"
        for end in ("", "-wal"):
            if Path(f"{self.path}{end}").exists():
                shutil.copyfile(f"{self.path}{end}", f"{copy}{end}")
        self.seen.append(copy)


class Killed(BaseException):
    """What comes in the middle of an act."""
