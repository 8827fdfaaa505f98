"""Every sheet of an instrument: its set-ups, and one for each operation that has figures but no set-up of its own."""

import math
from typing import Any

from gramil.description.tolerances import tolerance_of
from gramil.graph import Figures
from gramil.prints.pages import words_of
from gramil.prints.whole import setups_of
from gramil.reference import Ref
from gramil.setups.setup import BigFigure, Setup
from gramil.shop.operations import Operation, Work
from gramil.show import Shower

LAST = 1000
"""Sheets of operations come after all set-ups."""


def every_sheet(figures: Figures, work: Work) -> tuple[Setup, ...]:
    """The set-ups, then a sheet for each operation without one that has figures on this instrument, by its name."""
    own = (own_sheet(each, figures) for each in work.operations.values() if not each.sheet)
    return (*setups_of(figures), *(sheet for sheet in own if sheet is not None))


def own_sheet(operation: Operation, figures: Figures) -> Setup | None:
    """The operation as a set-up, with those of its figures that this instrument has; None where it has none."""
    shower = Shower(figures)
    known = [Ref[Any](address) for address in operation.figures if _is_known(address, figures)]
    if not known:
        return None
    big = tuple(BigFigure(each, words_of(each, shower), tolerance_of(each.address).words) for each in known)
    return Setup(
        operation.name,
        operation.what,
        LAST,
        big,
        (),
        "",
        operation.caution,
        boxes=tuple(Ref[Any](address) for address in operation.measure),
    )


def _is_known(address: str, figures: Figures) -> bool:
    """Whether an instrument has the figure: one of a part that is not described is not there, or not a number."""
    try:
        value = figures.at(address)
    except KeyError:
        return False
    return not (isinstance(value, float) and math.isnan(value))
