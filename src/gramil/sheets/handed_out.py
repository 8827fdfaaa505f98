"""Sheets handed out, compared with what would be printed now: which are no longer true, and what has changed on them.

A sheet is stale once it would be printed differently, until it is printed again or its work is done. What
was measured at its own work is shown beside its settings and is not part of them.
"""

from collections.abc import Collection, Iterable
from dataclasses import dataclass

import numpy as np

from gramil import names as n
from gramil.change.in_store import figures_in_store, work_in_store
from gramil.graph import Figures
from gramil.inches import in_inches
from gramil.prints.kept import kept_text, what_differs
from gramil.prints.papers import Paper, Print, printed_alike, sheet_as_printed
from gramil.prints.sharing import changed
from gramil.prints.whole import whole_graph
from gramil.quantities import Mm
from gramil.reference import name_of
from gramil.setups.setup import figures_on
from gramil.sheets.own_sheet import every_sheet, sheet_named, sheets_called
from gramil.sheets.sheet import Sheet
from gramil.shop.instruments import Instrument
from gramil.shop.operations import Work
from gramil.shop.operations_done import operations_done
from gramil.shop.sheets_given import Sheet as Given
from gramil.shop.sheets_given import latest_given, settings_that_changed
from gramil.store.opening import Store


@dataclass(frozen=True)
class Stale:
    """A sheet handed out that is no longer true: its note, its title as a maker reads it, and why."""

    given: Given
    title: str
    why: str


def printed(sheet: Sheet) -> Print:
    """What is printed on a sheet from the figures behind it, without the measured values."""
    return sheet_as_printed(sheet.figures, sheet.setup, sheet.also)


def kept(sheet: Sheet) -> str:
    """What a sheet says, in the form in which it is kept when it is handed out."""
    return kept_text(printed(sheet))


def stale_in_store(store: Store, owner: Instrument) -> tuple[Stale, ...]:
    """The stale sheets of an instrument of the store; worked out only if any is still to be used.

    Raises MakersFault for what is wrong in its description or in the shop.
    """
    work = work_in_store(store, owner)
    if not _to_use(store, owner, work):
        return ()
    return stale_sheets(store, owner, figures_in_store(store, owner), work)


def stale_sheets(store: Store, owner: Instrument, figures: Figures, work: Work) -> tuple[Stale, ...]:
    """The stale sheets of an instrument by its figures as made and the work that it needs."""
    return tuple(
        Stale(given, _title(given, figures, work), why)
        for given in _to_use(store, owner, work)
        if (why := _why(store, given, figures, work))
    )


def by_name(found: Iterable[Stale]) -> dict[str, str]:
    """Why each stale sheet is stale, by its name."""
    return {each.given.title: f"{each.why}; print it again" for each in found}


def names_given(store: Store, owner: Instrument, work: Work) -> frozenset[str]:
    """The names of the sheets handed out whose work is not all done."""
    return frozenset(each.title for each in _to_use(store, owner, work))


def _to_use(store: Store, owner: Instrument, work: Work) -> list[Given]:
    """The sheets handed out whose work is not all done; of several with one title, the latest."""
    done = {each.operation for each in operations_done(store, owner.id)}
    return [each for each in latest_given(store, owner.id) if not _is_done(each.title, done, work)]


def _is_done(title: str, done: Collection[str], work: Work) -> bool:
    names = _work_of(title, work)
    return all(name in done for name in names)


def _work_of(title: str, work: Work) -> list[str]:
    """The operations that a sheet is for; a sheet that belongs to none is work of its own name."""
    return [each.name for each in work.operations.values() if title in (each.sheet, each.name)] or [title]


def _setting(value: Mm, figures: Figures) -> str:
    """A tool's setting as the shop measures it."""
    return f"{value:g} mm" if figures[n.shop_units] == "mm" else in_inches(value, 4)


def _title(given: Given, figures: Figures, work: Work) -> str:
    sheet = sheet_named(given.title, figures, work)
    return sheet.setup.title if sheet is not None else given.title.replace("_", " ")


def _why(store: Store, given: Given, figures: Figures, work: Work) -> str:
    """Why a sheet is no longer true; empty if it is."""
    if not given.printed:
        return "; ".join(
            f"{each.tool.name} has changed: {each.name} was {_setting(each.given, figures)}, "
            + ("it is gone" if each.now is None else f"now {_setting(each.now, figures)}")
            for each in settings_that_changed(store, given)
        )
    names = dict.fromkeys((given.title, *_work_of(given.title, work)))  # a shared page has the cautions of each
    # operation
    sheets = [sheet for name in names if (sheet := sheet_named(name, figures, work)) and not sheet.setup.closed]
    found = [what_differs(given.printed, printed(sheet)) for sheet in sheets]
    return min(found, key=bool) if found else "this instrument does not need it any more"


def sheets_that_differ(old: Figures, new: Figures, work: Work, done: Collection[str] = ()) -> tuple[Paper, ...]:
    """Every sheet still to be used that would be printed differently, each by the figures behind it.

    `done` is the work that is done. Only sheets that depend on what changed are compared.
    """
    touched = {*changed(old, new), *old.graph.hung_from(changed(old, new))}
    with np.errstate(all="ignore"):  # an impossible instrument is reported as a verdict instead
        sheets = {each.setup.name: each for each in every_sheet(new, work) if _hangs_on(each, touched)}
        after = {name: each for name, each in sheets.items() if not (each.setup.closed or _is_done(name, done, work))}
        before = sheets_called(after, old, work)
        return tuple(
            printed(sheet).paper
            for name, sheet in after.items()
            if name not in before
            or before[name].setup.closed
            or not printed_alike(printed(before[name]), printed(sheet))
        )


def _hangs_on(sheet: Sheet, touched: Collection[str]) -> bool:
    name = f"setup_{sheet.setup.name.replace('-', '_')}"
    if name in whole_graph().dimensions:
        return name in touched or any(name_of(figure) in touched for figure in sheet.also.on)
    return any(name_of(figure) in touched for figure in (*figures_on(sheet.setup), *sheet.also.on))
