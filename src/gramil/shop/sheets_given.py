"""Sheets handed out, each with what it said; for older ones, the settings of tools that were noted with them."""

from collections.abc import Iterator
from dataclasses import dataclass

from gramil.shop.tools import kerf, length_figure
from gramil.store.items import Item, items
from gramil.store.moments import moment_text
from gramil.store.opening import Store, Value, reading
from gramil.store.rows import insert, records
from gramil.store.writing import Hand, writing


@dataclass(frozen=True)
class Sheet:
    """A sheet handed out: for an instrument (by number), from its revision of that number.

    `printed` is what it said, as JSON; empty for a sheet that was noted before this was kept.
    """

    id: int
    instrument: int
    revision: int
    title: str
    at: str
    printed: str


@dataclass(frozen=True)
class Changed:
    """A tool's figure that differs from the one on a sheet: what was given, and what it is now (None if it has
    none).
    """

    tool: Item
    name: str
    given: float
    now: float | None


def give_sheet(store: Store, instrument: int, revision: int, title: str, printed: str, hand: Hand) -> Sheet:
    """Note that a sheet was handed out, and what it said."""
    with writing(store, f"sheet {title}", hand):
        row: dict[str, Value] = {
            "instrument": instrument,
            "revision": revision,
            "title": title,
            "at": moment_text(hand.now),
        }
        number = insert(store, "sheet", {**row, "printed": printed})
    return records(store, Sheet, "sheet", "WHERE id = ?", (number,))[0]


def latest_given(store: Store, instrument: int) -> list[Sheet]:
    """Of the sheets of one title that were handed out for an instrument, the latest."""
    latest = "WHERE id IN (SELECT max(id) FROM sheet WHERE instrument = ? GROUP BY title) ORDER BY id"
    return records(store, Sheet, "sheet", latest, (instrument,))


def settings_that_changed(store: Store, sheet: Sheet) -> tuple[Changed, ...]:
    """The settings of tools noted with a sheet that have changed since."""
    with reading(store):
        return tuple(each for each in _settings(store, sheet) if each.given != each.now)


def _settings(store: Store, sheet: Sheet) -> Iterator[Changed]:
    owned = {each.id: each for each in items(store)}
    rows = store.rows("SELECT tool, name, value FROM sheet_setting WHERE sheet = ? ORDER BY id", (sheet.id,))
    yield from (Changed(owned[tool], name, value, _figure_now(store, owned[tool], name)) for tool, name, value in rows)


def _figure_now(store: Store, tool: Item, name: str) -> float | None:
    """A tool's figure as it is used now."""
    if name not in tool.figures:
        return None
    return kerf(store, tool).used if name == "kerf" else length_figure(store, tool, name)
