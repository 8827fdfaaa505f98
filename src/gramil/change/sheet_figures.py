"""The figures behind a sheet: with all measurements except those at its own operation and at those that wait for it.

So it follows a blank that came out thin, but never its own reading: a second board is cut by the same sheet. What it
is to bring about is never an earlier reading: when a relief is set again, the same relief is wanted as at first.
"""

from collections.abc import Collection, Iterable

from gramil.address import parse_address
from gramil.change.made_rows import Operation as Made
from gramil.change.made_rows import operations as fixing
from gramil.change.settled import readings, settled
from gramil.change.whose_reading import later_in
from gramil.graph import Figures, Pin
from gramil.reference import name_of
from gramil.setups.setup import Setup, setup_ref
from gramil.shop.operations import Operation, Work


def figures_for(figures: Figures, work: Work, operations: Collection[Operation], setup: Setup | None) -> Figures:
    """The figures behind the sheet of `operations`; `setup` is its page, if it has one.

    What the page asks to be measured, in its boxes and tables, and what its operations bring about, is never a reading;
    what exists already, and settled an input, is. If several operations share a page, its figures are those known
    before the first of them.
    """
    raw = readings(figures.pins)
    if not raw:
        return figures
    later = later_in(work, figures)
    own = {name for each in operations for name in (each.name, *later.get(each.name, ()))}
    asked = _names(setup, operations).union(*(_row(each).brings_about for each in operations))
    kept = {
        address: pin
        for address, latest in raw.items()
        if parse_address(address)[0] not in asked and (pin := _before(address, latest, own, figures, work))
    }
    return settled(figures.with_pins(kept))


def read_at(address: str, operation: str, figures: Figures, work: Work) -> str:
    """The work at which a figure is read: `operation` if there is one by that name, else the first that the figure
    belongs to, or none.
    """
    return operation if operation in work.operations else _whose(address, Pin(0.0, ""), figures, work)


def figures_for_operation(operation: str, figures: Figures, work: Work) -> Figures:
    """The figures behind the sheet of an operation, whether or not it has a page; without an operation, those as
    drawn.
    """
    if operation not in work.operations:
        return figures.with_pins({})
    own = work.operations[operation]
    return figures_for(figures, work, (own,), _setup(own, figures))


def addresses_to_measure(operation: str, figures: Figures, work: Work) -> tuple[str, ...]:
    """The addresses that an operation asks to have measured: its own, then those in the boxes of its sheet."""
    own = work.operations.get(operation)
    if own is None:
        return ()
    page = _setup(own, figures)
    return tuple(dict.fromkeys((*own.measure, *(map(str, page.boxes) if page else ()))))


def _before(address: str, latest: Pin, own: Collection[str], figures: Figures, work: Work) -> Pin | None:
    """The last measurement of a figure that was not made at `own`; None if there is none."""
    noted = (*latest.before, latest)
    return next((pin for pin in reversed(noted) if _whose(address, pin, figures, work) not in own), None)


def _whose(address: str, pin: Pin, figures: Figures, work: Work) -> str:
    """The operation that a measurement belongs to: the one it was noted with, else the first that asks for it or fixes
    it.

    Empty if no operation asks for it or fixes it: a property of the shop, or of the wood.
    """
    if pin.at in work.operations:
        return pin.at
    name = parse_address(address)[0]
    return next((each.name for each in work.operations.values() if name in _asked_or_fixed(each, figures)), "")


def _asked_or_fixed(operation: Operation, figures: Figures) -> set[str]:
    return {*_names(_setup(operation, figures), (operation,)), *(each.figure for each in _row(operation).fixes)}


def _setup(operation: Operation, figures: Figures) -> Setup | None:
    """The set-up page of an operation, if it has one."""
    page = setup_ref(operation.sheet)
    return figures[page] if operation.sheet and page.address in figures else None


def _row(operation: Operation) -> Made:
    """What it fixes: nothing, if it comes from the maker's own list."""
    return fixing().get(operation.name, Made(operation.name, ""))


def _names(setup: Setup | None, operations: Iterable[Operation]) -> set[str]:
    """The dimensions that a page and its operations ask to have measured."""
    of_page = (*setup.boxes, *(figure for table in setup.tables for _, figure in table.columns)) if setup else ()
    asked = {parse_address(address)[0] for each in operations for address in each.measure}
    return asked.union(map(name_of, of_page))
