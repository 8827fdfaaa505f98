"""The sheets that a printer takes, their printable area, and how far off the printer is."""

from collections.abc import Mapping
from dataclasses import dataclass
from math import isfinite

from gramil.faults import MakersFault
from gramil.measure import LengthUnit, MeasureError, read_length
from gramil.paper_sizes import roll_width, sides

ROLL_LEAST, ROLL_MOST = 220.0, 5000.0
"""Least and most length of a page on a roll, in mm."""
CARDS = (100.0, 240.0)
"""How wide and how tall a page of cards is taken to be in mm, where the paper does not say: on a roll."""
MARGIN, FOOT = 8.0, 26.0
"""Blank edge that every printer can do without, and the strip at the bottom for what is written, in mm."""
SQUARES: Mapping[LengthUnit, tuple[float, float]] = {"mm": (100.0, 50.0), "in": (4 * 25.4, 2 * 25.4)}
"""Sides of the square that proves the print, in mm, the largest that fits; the bar on every page is as long as the
first."""
OFF_BY_MOST = 0.1
"""A printer that is off by more than this share is a slip in the figure."""


@dataclass(frozen=True)
class Sheet:
    """One page, in mm before the printer stretches it; `stretch` is printed over asked length, along x and y.

    `sides` names the two directions, along x and y, for the maker who puts a rule to the print; `unit` is the rule's.
    """

    width: float
    height: float
    stretch: tuple[float, float]
    sides: tuple[str, str]
    unit: LengthUnit = "mm"

    @property
    def squares(self) -> tuple[float, float]:
        """Sides of the square that proves the print, in mm, the larger first."""
        return SQUARES[self.unit]

    @property
    def bar(self) -> float:
        """Length of the bar that proves the print, in mm."""
        return self.squares[0]

    def said(self, length: float) -> str:
        """A length of bar or square as a maker reads it: `100 mm`, `4 in`."""
        return f"{length:g} mm" if self.unit == "mm" else f"{length / 25.4:g} in"

    @property
    def window(self) -> tuple[float, float]:
        """Width and height of the drawing that one page holds, in true mm."""
        wide, tall = self.width - 2 * MARGIN, self.height - 2 * MARGIN - FOOT
        return (wide * self.stretch[0], tall * self.stretch[1])


def checked(printer_scale: tuple[float, float]) -> tuple[float, float]:
    """The printer's scale; raises MakersFault if it cannot be one."""
    for scale in printer_scale:
        if not (isfinite(scale) and abs(scale - 1.0) <= OFF_BY_MOST):
            raise MakersFault.of(
                f"the printer scale {scale:g} is no printer's",
                "it is the measured length of the proof bar, divided by what it should be, so it lies near 1",
                "measure the bars on a print and write, say, 0.996,1.002, or what they measure: 3.984 in,4.008 in",
            )
    return printer_scale


def read_scale(written: str, unit: LengthUnit) -> float:
    """What a proof bar measures on a print over what it should: a share near 1, or a length with its unit.

    In an inch shop a bare number near 4 is read as inches. Raises MakersFault for anything else.
    """
    try:
        share = float(written)
    except ValueError:
        return _measured_scale(written, unit)
    return share * 25.4 / SQUARES[unit][0] if unit == "in" and abs(share - 1.0) > OFF_BY_MOST else share


def _measured_scale(written: str, unit: LengthUnit) -> float:
    """By the bar's length with its unit: 100 mm or 4 in, whichever it is nearer to."""
    try:
        length = read_length(written, unit)
    except MeasureError as error:
        fault = error.faults[0]
        raise MakersFault.of(fault.what, fault.why, "write a share, such as 0.998, or what the bar measures") from None
    return min((length / bar for bar, _ in SQUARES.values()), key=lambda share: abs(share - 1.0))


def sheets(
    paper: str, wide: float, tall: float, printer_scale: tuple[float, float], unit: LengthUnit = "mm"
) -> tuple[Sheet, Sheet]:
    """The paper upright and lying, for a drawing `wide` by `tall` mm.

    `printer_scale` belongs to the printer, not to the page: first along the sheet's short side (across a roll), then
    along its long side (along a roll). On a sheet turned round the two change places. `unit` is that of the rule that
    proves the print.
    """
    short, long = printer_scale
    roll = roll_width(paper)
    if roll is not None:
        across, along = "across the roll (X)", "along the roll (Y)"
        upright = _roll_length(tall / long + FOOT)
        lying = _roll_length(wide / long)
    else:
        across, along = "along the short side (X)", "along the long side (Y)"
        upright = lying = sides(paper)[1]
    side = sides(paper)[0] if roll is None else roll
    return (
        Sheet(side, upright, (short, long), (across, along), unit),
        Sheet(lying, side, (long, short), (along, across), unit),
    )


def card_sheets(paper: str, printer_scale: tuple[float, float], unit: LengthUnit = "mm") -> tuple[Sheet, Sheet]:
    """The paper upright and lying, for a page of cards; of a roll, as much as a page of `CARDS` takes."""
    return sheets(paper, *CARDS, printer_scale, unit)


def _roll_length(needed: float) -> float:
    return min(max(needed + 2 * MARGIN, ROLL_LEAST), ROLL_MOST)
