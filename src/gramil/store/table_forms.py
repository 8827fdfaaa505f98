"""The store's tables as files show them: which columns, of what kind, and what a row is called in other rows.

Other rows refer to a row by its name where its table has names; otherwise by a number that the file gives it.
"""

from collections.abc import Mapping
from dataclasses import dataclass

from gramil.store.opening import Store

TABLES = (
    "setting",
    "place",
    "air_import",
    "air_struck",
    "outlook",
    "instrument",
    "revision",
    "list_of_operations",
    "item",
    "test_cut",
    "blank",
    "part",
    "promise",
    "sheet",
    "sheet_setting",
    "done",
    "measurement",
    "begun_anew",
    "weight",
)
"""In the order in which they can be brought in; readings of air have a form of their own."""
NAMED: Mapping[str, str] = {
    "place": "name",
    "instrument": "name",
    "blank": "name",
    "part": "name",
    "item": "kind || ': ' || name",
}
"""Tables whose rows go by a name, and the expression that gives it."""
NUMBERED = frozenset({"air_import", "sheet", "done"})
"""Tables whose rows other rows speak of by number."""
_JSON = frozenset({("setting", "value"), ("place", "figures"), ("item", "figures"), ("part", "figures")})
_JSON_LISTS = frozenset({("done", "photos")})
_MOMENTS = frozenset({"at", "used_at"})


@dataclass(frozen=True)
class Column:
    """A column: `kind` is TEXT, INTEGER or REAL; `refers` is the table that it refers to, or empty.

    `needed`: a row must give it; `json`: its text is JSON.
    """

    name: str
    kind: str
    refers: str
    needed: bool
    json: bool
    moment: bool


def columns_of(store: Store, table: str) -> tuple[Column, ...]:
    """A table's columns as files have them: without versions, and without row numbers that nothing refers to."""
    refers = _references(store, table)
    found = []
    for _, name, kind, not_null, default, _ in store.rows(f"PRAGMA table_info({table})"):
        if name == "version" or (name == "id" and table not in NUMBERED):
            continue
        needed = bool(not_null or name == "id") and default is None
        is_json = (table, name) in _JSON or (table, name) in _JSON_LISTS
        found.append(Column(name, kind, refers.get(name, ""), needed, is_json, name in _MOMENTS))
    return tuple(found)


def _references(store: Store, table: str) -> dict[str, str]:
    """Columns that refer to a row of another table by its number."""
    rows = store.rows(f"PRAGMA foreign_key_list({table})")
    pairs = [row[0] for row in rows if row[1] > 0]
    return {row[3]: row[2] for row in rows if row[0] not in pairs}


def names_of_rows(store: Store, table: str) -> dict[int, str]:
    """What each row of a table with names is called, by its number."""
    return dict(store.rows(f"SELECT id, {NAMED[table]} FROM {table}"))
