"""Doubtful readings on the command line: reported in a sentence with exit status 2, or accepted as read."""

from collections.abc import Callable, Iterable
from typing import TYPE_CHECKING, Any, TypeVar

import click

from gramil import names as n
from gramil.faults import Fault, MakersFault
from gramil.graph import Figures

if TYPE_CHECKING:
    from gramil.change.questioned import Reading
    from gramil.shop.operations_done import Measurement

F = TypeVar("F", bound=Callable[..., Any])
ANSWER = "Nothing was written: write it anew, or take it as read with --as-read"
as_read_option: Callable[[F], F] = click.option(
    "--as-read", is_flag=True, help="Take readings and moments as they are, those too that are asked about."
)


def ask_together(*asks: Callable[[], None]) -> None:
    """Every question that several askings raise, in one MakersFault: one answer takes them all."""
    asked: list[Fault] = []
    for each in asks:
        try:
            each()
        except MakersFault as fault:
            asked += fault.faults
    if asked:
        raise MakersFault(asked)


def ask(figures: Figures, found: "Iterable[Measurement]", operation: str, as_read: bool) -> None:
    """Raises MakersFault for a doubtful measurement, unless it is to be accepted as read."""
    from gramil.change.questioned import Reading

    if not as_read:
        refuse_doubtful(figures, [Reading(each.address, each.value, each.written) for each in found], operation)


def refuse_doubtful(
    figures: Figures, readings: "Iterable[Reading]", operation: str = "", file: str | None = None, answer: str = ANSWER
) -> None:
    """Raises MakersFault with every question that an instrument's readings raise."""
    from gramil.change.questioned import faults, questions

    if asked := questions(figures, readings, operation):
        raise faults(asked, figures[n.instrument_units], answer, file)
