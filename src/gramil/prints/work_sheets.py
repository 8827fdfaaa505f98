"""What operations add to sheets: a sheet of their own if there is no set-up, and cautions on a page that they share."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Any

import numpy as np

from gramil import names as n
from gramil.description.records import Stuff
from gramil.description.shop.tolerances import tolerance_of
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.prints.cautions import caution_lines
from gramil.prints.pages import PageText, page_text, safe, with_its_sign
from gramil.reference import Ref
from gramil.setups.setup import BigFigure, Setup
from gramil.shop.operations import Operation, Work

LAST = 1000
"""Sheets of operations come after all set-ups."""


REST = (
    "For finishing, sanding, gluing up, fret work and all else that has no sheet here: look for the tool that is "
    "taken up. Each such work has a sheet of its own too: gramil sheet, with its name as gramil now tells it."
)
"""What the page for all other work is for."""


@dataclass(frozen=True)
class Minded:
    """Cautions at operations besides the set-up's own: tools, stuffs, and the maker's own lines."""

    by: tuple[str, ...] = ()
    on: tuple[Ref[Stuff], ...] = ()
    words: tuple[str, ...] = ()


NOTHING = Minded()
"""Nothing is minded besides."""


def minded(setup: Setup, operations: Iterable[Operation]) -> Minded:
    """The cautions for the operations of a set-up, without those for a tool that is not used here."""
    those = tuple(operations)
    return Minded(
        tuple(tool for each in those for tool in each.by if tool not in setup.instead),
        tuple(n.stuff_list[part] for each in those for part in each.on),
        tuple(line for each in those for line in each.own_caution),
    )


def page_of_work(setup: Setup, also: Minded, formatter: Formatter) -> PageText:
    """What a sheet says, with its operations' cautions."""
    lines = caution_lines((*setup.by, *also.by), (*setup.on, *also.on), formatter)
    return {**page_text(setup, formatter), "caution": list(dict.fromkeys(map(safe, (*lines, *also.words))))}


def sharing(setup: Setup, work: Work) -> tuple[Operation, ...]:
    """The operations that share a set-up's page."""
    return tuple(each for each in work.operations.values() if each.sheet == setup.name)


def figures_to_measure(operations: Sequence[Operation]) -> tuple[Ref[Any], ...]:
    """What operations ask to have measured."""
    return tuple(Ref[Any](address) for each in operations for address in each.measure)


def own_setup(operation: Operation, figures: Figures) -> Setup | None:
    """The operation as a set-up, with those of its figures that this instrument has, and with what to mind at it.

    None if there is neither: what a finish, a buffing wheel or a fret file asks for is printed though nothing is set.
    """
    formatter = Formatter(figures)
    known = [Ref[Any](address) for address in operation.figures if _is_known(address, figures)]
    if not known and not operation.by:
        return None
    big = tuple(BigFigure(each, with_its_sign(each, formatter), tolerance_of(each.address).words) for each in known)
    boxes = tuple(each for each in figures_to_measure((operation,)) if _is_there(each.address, figures))
    return Setup(
        operation.name, operation.what, LAST, big, (), operation.prove, (), boxes=boxes, instead=_unused(figures)
    )


def rest_setup(figures: Figures) -> Setup:
    """All work that has no set-up, together on one page."""
    return Setup(
        "other-work", "Other work: what to mind", LAST, (), (), "", (), notes=(REST,), instead=_unused(figures)
    )


def _unused(figures: Figures) -> tuple[str, ...]:
    return ("rod",) if figures[n.neck_rod] == "none" else ()


def _is_there(address: str, figures: Figures) -> bool:
    """Whether the address leads anywhere: a list of work names the braces of the instrument that it was made for."""
    try:
        figures.at(address)
    except KeyError:
        return False
    return True


def _is_known(address: str, figures: Figures) -> bool:
    """Whether an instrument has the figure: for a part that is not described it is missing, or not a number."""
    if not _is_there(address, figures):
        return False
    value = figures.at(address)
    return not (isinstance(value, float | np.ndarray) and bool(np.isnan(value).all()))
