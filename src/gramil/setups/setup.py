"""What a set-up is: one operation, its figures in the order in which the hands need them, and its proof."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from gramil import names as n
from gramil.reference import Ref, Text, in_row, refs_in


@dataclass(frozen=True)
class BigFigure:
    """One figure to set or to check: where it is found, what it is, how near it must be, and what measures it.

    How near it must be agrees with `data/tolerances.toml` for a figure that can be measured.
    """

    figure: Ref[Any]
    what: Text
    tolerance: Text = ""
    measured_with: Text = ""


@dataclass(frozen=True)
class Table:
    """A table of figures by fret or station: the heading of each column and the figure that fills it.

    `rows` are the row numbers or names to show; a column's figure gets the row where it says EACH, or else at its end.
    With `both_units` each length is given in both units, side by side. `numbered` rows have their number, from 1,
    before their name, as a drawing has it.
    """

    title: Text
    columns: tuple[tuple[str, Ref[Any]], ...]
    rows: tuple[int, ...] | tuple[str, ...]
    row_name: str = "fret"
    both_units: bool = False
    numbered: bool = False


@dataclass(frozen=True)
class Setup:
    """One operation, one page. Every number on it is a reference to a figure; plain text holds none.

    `by` are the tools used, by their names in the list of cautions, and `on` what is worked: the cautions are printed
    from these, never written on a sheet. `instead` are tools usually used for the operation but not here; `notes` is
    anything else worth knowing. `drawing` is the drawing shown, if any; `prove` is one measurement that would expose
    the wrong template, wire or side (empty if there is nothing to prove); `boxes` are the figures whose measured values
    the hands write down, and `box_near` how near those of them must be that no big figure names.
    """

    name: str
    title: str
    order: int
    figures: tuple[BigFigure, ...]
    steps: tuple[Text, ...]
    prove: Text
    by: tuple[str, ...]
    tools: tuple[Text, ...] = ()
    drawing: Ref[Any] | None = None
    boxes: tuple[Ref[Any], ...] = ()
    tables: tuple[Table, ...] = ()
    closed: Text = ""
    box_near: Text = ""
    on: tuple["n.StuffRef", ...] = ()
    instead: tuple[str, ...] = ()
    notes: tuple[Text, ...] = ()

    @property
    def texts(self) -> tuple[Text, ...]:
        """Every text on the page that may hold figures."""
        words = tuple(text for each in self.figures for text in (each.what, each.tolerance, each.measured_with))
        return (self.title, self.closed, *words, *self.steps, self.prove, *self.tools, *self.notes, self.box_near)


def setup_ref(name: str) -> "Ref[Setup]":
    """The reference to a named set-up: `n.setup_neck_rod` for `neck-rod`."""
    return Ref(f"setup_{name.replace('-', '_')}")


def figures_on(setup: Setup) -> tuple[Ref[Any], ...]:
    """Every figure that a set-up shows, each once."""
    return tuple(dict.fromkeys(_figures(setup)))


def _figures(setup: Setup) -> Iterator[Ref[Any]]:
    yield from (each.figure for each in setup.figures)
    for text in setup.texts:
        yield from refs_in(text)
    yield from setup.boxes
    yield from (at for each in setup.on for at in (each.wood, each.dust, each.permit, each.doubt))
    for table in setup.tables:
        yield from (in_row(figure, row) for row in table.rows for _, figure in table.columns)


def skipped(name: str, title: str, order: int, why: Text) -> Setup:
    """An operation that this instrument does not need: kept in the order, with the reason."""
    return Setup(name, title, order, (), (), "", (), closed=why)
