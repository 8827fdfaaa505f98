"""Every sheet of an instrument: its set-ups, and one for each operation without one that has figures or cautions."""

from collections.abc import Collection, Sequence

from gramil.change.sheet_figures import figures_for
from gramil.graph import Figures
from gramil.prints.came_in import as_known
from gramil.prints.whole import setups_of
from gramil.prints.work_sheets import figures_to_measure, minded, own_setup, rest_setup, sharing
from gramil.setups.setup import Setup, skipped
from gramil.sheets.sheet import Sheet
from gramil.sheets.work_order import in_order_of_work
from gramil.shop.operations import Operation, Work
from gramil.shop.operations_file import LEFT_OUT, usual_work


def every_sheet(figures: Figures, work: Work) -> tuple[Sheet, ...]:
    """A sheet for each set-up and for each other operation with figures or something to mind, in the work's order."""
    own = (sheet_named(each.name, figures, work) for each in work.operations.values() if not each.sheet)
    return in_order_of_work((*_setup_sheets(figures, work), *(sheet for sheet in own if sheet is not None)), work)


def sheets_called(names: Collection[str], figures: Figures, work: Work) -> dict[str, Sheet]:
    """Those of these names among them, by name."""
    setups = (_setup_sheet(each, figures, work) for each in setups_of(figures) if each.name in names)
    rows = (each for name, each in work.operations.items() if name in names and not each.sheet)
    own = (_own(each, figures, work) for each in rows)
    return {sheet.setup.name: sheet for sheet in (*setups, *own) if sheet is not None}


def setup_sheets(figures: Figures, work: Work) -> tuple[Sheet, ...]:
    """The set-ups as sheets, in the order of the work, each for all the operations that share it."""
    return in_order_of_work(_setup_sheets(figures, work), work)


def sheets_of_a_set(figures: Figures, work: Work) -> tuple[Sheet, ...]:
    """The set-ups as sheets, with those of a maker's own operations among them, and last a page of cautions for all the
    work that has no sheet: whoever prints the set then has the cautions for finishing too.
    """
    usual = usual_work().operations
    own = {
        name: sheet
        for name, each in work.operations.items()
        if name not in usual and not each.sheet and (sheet := _own(each, figures, work)) is not None
    }
    rest = [each for name, each in work.operations.items() if not each.sheet and each.by and name not in own]
    setup = rest_setup(figures)
    last = (Sheet(setup, figures, figures, minded(setup, rest)),) if rest else ()
    return (*in_order_of_work((*_setup_sheets(figures, work), *own.values()), work), *last)


def _setup_sheets(figures: Figures, work: Work) -> tuple[Sheet, ...]:
    return tuple(_setup_sheet(setup, figures, work) for setup in setups_of(figures))


def _setup_sheet(setup: Setup, figures: Figures, work: Work) -> Sheet:
    operations = sharing(setup, work)
    why = "" if setup.closed or operations or setup.name in work.operations else _why_left_out(setup, work)
    if why:
        return Sheet(skipped(setup.name, setup.title, setup.order, why), figures, figures)
    return _of_setup(setup, figures, work, operations)


def _why_left_out(setup: Setup, work: Work) -> str:
    """Why none of a set-up's operations is done, if a maker's own list leaves them out; else empty.

    What an instrument's description excludes, its set-up says by itself.
    """
    usual = usual_work().operations
    reasons = [why for name, why in work.left_out.items() if name in usual and usual[name].sheet == setup.name]
    return LEFT_OUT if LEFT_OUT in reasons else ""


def sheet_named(name: str, figures: Figures, work: Work) -> Sheet | None:
    """The sheet of an operation, or a set-up for all the operations that share it; None where there is none."""
    operation = work.operations.get(name)
    if operation is not None and not operation.sheet:
        return _own(operation, figures, work)
    wanted = operation.sheet if operation is not None else name
    setup = next((each for each in setups_of(figures) if each.name == wanted), None)
    if setup is None:
        return None
    return _of_setup(setup, figures, work, (operation,) if operation is not None else sharing(setup, work))


def figures_for_sheet(name: str, figures: Figures, work: Work) -> Figures:
    """What is wanted at an operation, or at a named set-up: the figures behind its sheet.

    Work without a sheet uses all that was measured before it; a name that does not exist, what is drawn.
    """
    sheet, operation = sheet_named(name, figures, work), work.operations.get(name)
    if sheet is not None:
        return sheet.figures
    return figures_for(figures, work, (operation,), None) if operation is not None else figures.with_pins({})


def _of_setup(setup: Setup, figures: Figures, work: Work, operations: Sequence[Operation]) -> Sheet:
    goes_by = figures_for(figures, work, operations, setup)
    own = as_known(goes_by, setup.name)
    return _sheet(own, goes_by, figures, operations)


def _sheet(setup: Setup, goes_by: Figures, made: Figures, operations: Sequence[Operation]) -> Sheet:
    """The set-up with the measurements and the cautions that its operations add."""
    return Sheet(setup, goes_by, made, minded(setup, operations), figures_to_measure(operations))


def _own(operation: Operation, figures: Figures, work: Work) -> Sheet | None:
    goes_by = figures_for(figures, work, (operation,), None)
    setup = own_setup(operation, goes_by)
    return _sheet(setup, goes_by, figures, (operation,)) if setup is not None else None
