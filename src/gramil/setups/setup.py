"""What a set-up is: one operation, its figures in the order in which the hands need them, and its proof."""

from collections.abc import Iterator
from dataclasses import dataclass

from gramil.show import addresses_in


@dataclass(frozen=True)
class BigFigure:
    """One figure to set or to check: where it is found, what it is, how near it must be, and what measures it."""

    address: str
    what: str
    tolerance: str = ""
    measured_with: str = ""


@dataclass(frozen=True)
class Table:
    """A table of figures by fret or station: the heading of each column and the address that fills it.

    `rows` are the row numbers or names to show; a column's address gets `[row]` added to it, or has the row put in
    where it says `<row>`. With `both_units` each length stands in both units, side by side.
    """

    title: str
    columns: tuple[tuple[str, str], ...]
    rows: tuple[int, ...] | tuple[str, ...]
    row_name: str = "fret"
    both_units: bool = False

    @staticmethod
    def at(address: str, row: int | str) -> str:
        """The address of a column's figure in one row."""
        return address.replace("<row>", str(row)) if "<row>" in address else f"{address}[{row}]"


@dataclass(frozen=True)
class Setup:
    """One operation, one page. Every number on it is an address; plain text holds none.

    `drawing` is the name of the drawing shown; `tools` are lines such as "table saw, kerf {saw_kerf}" with addresses
    in braces; `prove` is one measurement that would expose the wrong template, wire or side; `boxes` are the
    addresses whose measured values the hands write down.
    """

    name: str
    title: str
    order: int
    figures: tuple[BigFigure, ...]
    steps: tuple[str, ...]
    prove: str
    caution: tuple[str, ...]
    tools: tuple[str, ...] = ()
    drawing: str = ""
    boxes: tuple[str, ...] = ()
    tables: tuple[Table, ...] = ()
    closed: str = ""

    @property
    def texts(self) -> tuple[str, ...]:
        """Every text on the page that may hold addresses in braces."""
        words = tuple(text for each in self.figures for text in (each.what, each.tolerance, each.measured_with))
        return (self.title, self.closed, *words, *self.steps, self.prove, *self.caution, *self.tools)


def addresses_of(setup: Setup) -> tuple[str, ...]:
    """Every figure that a set-up shows, each address once: what it hangs on when something changes."""
    return tuple(dict.fromkeys(_addresses(setup)))


def _addresses(setup: Setup) -> Iterator[str]:
    yield from (figure.address for figure in setup.figures)
    for text in setup.texts:
        yield from addresses_in(text)
    yield from setup.boxes
    for table in setup.tables:
        yield from (table.at(address, row) for row in table.rows for _, address in table.columns)


def skipped(name: str, title: str, order: int, why: str) -> Setup:
    """An operation that this instrument does not need: kept in the order, with the reason."""
    return Setup(name, title, order, (), (), "", (), closed=why)
