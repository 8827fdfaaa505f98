"""Sheets handed out and the tools' settings on them: which are true no more, because a tool changed since."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from gramil.shop.items import Item, items
from gramil.shop.moments import moment_text
from gramil.shop.opening import Store, Value, reading
from gramil.shop.rows import insert, records
from gramil.shop.tools import kerf, length_figure
from gramil.shop.writing import writing


@dataclass(frozen=True)
class Sheet:
    """A sheet handed out: for an instrument (by number), from its revision of that number."""

    id: int
    instrument: int
    revision: int
    title: str
    at: str


@dataclass(frozen=True)
class Setting:
    """A tool's figure that stands on a sheet: the tool by number, "constant", "kerf" or another length, in mm."""

    tool: int
    name: str
    value: float


@dataclass(frozen=True)
class Stale:
    """A sheet that is true no more: which tool's figure, what was given, and what it is now; None if it has none."""

    sheet: Sheet
    tool: Item
    name: str
    given: float
    now: float | None


def give_sheet(
    store: Store, instrument: int, revision: int, title: str, settings: Sequence[Setting], now: datetime, who: str = ""
) -> Sheet:
    """Note that a sheet was handed out, and what of the shop's tools stands on it."""
    with writing(store, f"sheet {title}", now, who):
        row: dict[str, Value] = {"instrument": instrument, "revision": revision, "title": title, "at": moment_text(now)}
        number = insert(store, "sheet", row)
        for each in settings:
            insert(store, "sheet_setting", {"sheet": number, **vars(each)})
    return records(store, Sheet, "sheet", "WHERE id = ?", (number,))[0]


def sheets_given(store: Store, instrument: int | None = None) -> list[Sheet]:
    """Every sheet handed out, or those of one instrument, in the order in which they were."""
    if instrument is None:
        return records(store, Sheet, "sheet")
    return records(store, Sheet, "sheet", "WHERE instrument = ? ORDER BY id", (instrument,))


def stale_sheets(store: Store) -> list[Stale]:
    """What on sheets handed out is true no more. Of sheets of one title for one instrument the latest counts."""
    with reading(store):
        latest = {(each.instrument, each.title): each for each in sheets_given(store)}
        by_number = {each.id: each for each in latest.values()}
        owned = {each.id: each for each in items(store)}
        rows = store.rows("SELECT sheet, tool, name, value FROM sheet_setting ORDER BY id")
        found = [
            Stale(by_number[sheet], owned[tool], name, value, _figure_now(store, owned[tool], name))
            for sheet, tool, name, value in rows
            if sheet in by_number
        ]
    return [each for each in found if each.given != each.now]


def _figure_now(store: Store, tool: Item, name: str) -> float | None:
    """A tool's figure as it counts now."""
    if name not in tool.figures:
        return None
    return kerf(store, tool).used if name == "kerf" else length_figure(store, tool, name)
