"""Every sheet of an instrument: its set-ups, and one for each operation that has figures but no set-up of its own."""

import math
from collections.abc import Sequence
from typing import Any

from gramil import names as n
from gramil.change.sheet_figures import figures_for
from gramil.description.tolerances import tolerance_of
from gramil.graph import Figures
from gramil.prints.pages import words_of
from gramil.prints.whole import setups_of
from gramil.reference import Ref
from gramil.setups.setup import BigFigure, Setup, setup_ref
from gramil.sheets.sheet import Sheet
from gramil.shop.operations import Operation, Work
from gramil.show import Shower

LAST = 1000
"""Sheets of operations come after all set-ups."""


def every_sheet(figures: Figures, work: Work) -> tuple[Sheet, ...]:
    """The set-ups, then a sheet for each operation without one that has figures on this instrument, by its name."""
    own = (sheet_named(each.name, figures, work) for each in work.operations.values() if not each.sheet)
    return (*setup_sheets(figures, work), *(sheet for sheet in own if sheet is not None))


def setup_sheets(figures: Figures, work: Work) -> tuple[Sheet, ...]:
    """The set-ups as sheets, in the order of the work, each for all the operations that share it."""
    return tuple(_of_setup(setup, figures, work, _sharing(setup, work)) for setup in setups_of(figures))


def sheet_named(name: str, figures: Figures, work: Work) -> Sheet | None:
    """The sheet of an operation, or a set-up for all the operations that share it; None where there is none."""
    operation = work.operations.get(name)
    if operation is not None and not operation.sheet:
        return _own(operation, figures, work)
    wanted = operation.sheet if operation is not None else name
    setup = next((each for each in setups_of(figures) if each.name == wanted), None)
    if setup is None:
        return None
    return _of_setup(setup, figures, work, (operation,) if operation is not None else _sharing(setup, work))


def wanted_at(name: str, figures: Figures, work: Work) -> Figures:
    """What is wanted at an operation, or at a set-up of a name: the figures that its sheet goes by.

    Work that has no sheet goes by all that was measured before it; of a name that there is not, by what is drawn.
    """
    sheet, operation = sheet_named(name, figures, work), work.operations.get(name)
    if sheet is not None:
        return sheet.figures
    return figures_for(figures, work, (operation,), None) if operation is not None else figures.with_pins({})


def _sharing(setup: Setup, work: Work) -> tuple[Operation, ...]:
    return tuple(each for each in work.operations.values() if each.sheet == setup.name)


def _of_setup(setup: Setup, figures: Figures, work: Work, operations: Sequence[Operation]) -> Sheet:
    goes_by = figures_for(figures, work, operations, setup)
    own = goes_by[setup_ref(setup.name)]
    return _sheet(own, goes_by, figures, operations)


def _sheet(setup: Setup, goes_by: Figures, made: Figures, operations: Sequence[Operation]) -> Sheet:
    """The set-up with what its operations ask for and caution of; not of a tool that is not used here."""
    by = tuple(tool for each in operations for tool in each.by if tool not in setup.instead)
    on = tuple(n.stuff_list[part] for each in operations for part in each.on)
    words = tuple(line for each in operations for line in each.own_caution)
    return Sheet(setup, goes_by, made, words, _asked(operations), by=by, on=on)


def _own(operation: Operation, figures: Figures, work: Work) -> Sheet | None:
    goes_by = figures_for(figures, work, (operation,), None)
    setup = own_setup(operation, goes_by)
    return _sheet(setup, goes_by, figures, (operation,)) if setup is not None else None


def _asked(operations: Sequence[Operation]) -> tuple[Ref[Any], ...]:
    return tuple(Ref[Any](address) for each in operations for address in each.measure)


def own_setup(operation: Operation, figures: Figures) -> Setup | None:
    """The operation as a set-up, with those of its figures that this instrument has; None where it has none."""
    shower = Shower(figures)
    known = [Ref[Any](address) for address in operation.figures if _is_known(address, figures)]
    if not known:
        return None
    unused = ("rod",) if figures[n.neck_rod] == "none" else ()
    big = tuple(BigFigure(each, words_of(each, shower), tolerance_of(each.address).words) for each in known)
    return Setup(operation.name, operation.what, LAST, big, (), "", (), boxes=_asked((operation,)), instead=unused)


def _is_known(address: str, figures: Figures) -> bool:
    """Whether an instrument has the figure: one of a part that is not described is not there, or not a number."""
    try:
        value = figures.at(address)
    except KeyError:
        return False
    return not (isinstance(value, float) and math.isnan(value))
