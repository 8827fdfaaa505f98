"""A sheet: a set-up with the figures behind it, and the measured values beside them.

Page, print and command line all show the same sheet.
"""

import math
from dataclasses import dataclass, replace
from typing import Any

from gramil.change.as_made import Off, difference_text, off_at
from gramil.drawings.marks import Drawing
from gramil.drawings.picture import Picture
from gramil.formatter import Formatter, parted, shown
from gramil.graph import Figures
from gramil.prints.work_sheets import NOTHING, Minded
from gramil.reference import Ref, in_row
from gramil.setups.setup import Setup


@dataclass(frozen=True)
class Sheet:
    """A set-up with the figures behind it, and these as made; `measure` is what else its operations ask to be measured.

    `also` are its operations' cautions besides the set-up's own. `picture` is its drawing as printed, if
    there is one.
    """

    setup: Setup
    figures: Figures
    made: Figures
    also: Minded = NOTHING
    measure: tuple[Ref[Any], ...] = ()
    picture: Picture | None = None

    @property
    def measured(self) -> tuple[Ref[Any], ...]:
        """The figures on it that were measured and on which it is not based, in the order of the page."""
        setup = self.setup
        rows = (in_row(figure, row) for table in setup.tables for row in table.rows for _, figure in table.columns)
        shows = (*(figure.figure for figure in setup.figures), *setup.boxes, *self.measure, *rows)
        return tuple(dict.fromkeys(figure for figure in shows if self.off(figure) is not None))

    @property
    def drawing(self) -> Drawing | None:
        """Its drawing, if it has one with anything on it."""
        if self.setup.drawing is None:
            return None
        drawing: Drawing = self.figures[self.setup.drawing]
        return drawing if drawing.marks else None

    def formatter(self, like: Formatter) -> Formatter:
        """Its figures as text, in the units of another formatter."""
        return replace(like, figures=self.figures)

    def off(self, figure: Ref[Any]) -> Off | None:
        """A figure as measured compared with what the sheet says; None if it was not measured, or the sheet is based on
        that.
        """
        address = figure.address
        pin = self.made.pins.get(address)
        if pin is None or pin.settled_by or pin == self.figures.pins.get(address):
            return None
        try:
            return off_at(address, pin, self.figures)
        except KeyError:  # a figure of something that this instrument does not have
            return None


def read_on(sheet: Sheet, figure: Ref[Any]) -> str:
    """The day on which a figure was read; empty if it was not, or no day was noted."""
    pin = sheet.made.pins.get(figure.address)
    return "" if pin is None else pin.when[:10]


def made_text(off: Off | None, formatter: Formatter, when: str = "") -> str:
    """What was made and how far it is off: `made 3.60 mm, +0.64 mm`; empty if nothing was measured.

    Where nothing was wanted it was found: `found 3.60 mm, 2026-01-12`, with the day in `when`.
    """
    if off is None:
        return ""
    made, difference = (shown(value, off.unit, formatter.first) for value in (off.measured, off.difference))
    if not math.isfinite(off.difference):
        return f"found {made}, {when}" if when else f"found {made}"
    if not any(digit in "123456789" for digit in parted(difference)[0]):
        return f"made {made}, as it should be"
    return f"made {made}, {difference_text(off, formatter.first)}"
