"""The sheets that a printer takes, their printable area, and how far off the printer is."""

from dataclasses import dataclass
from math import isfinite

from gramil.faults import MakersFault
from gramil.paper_sizes import roll_width, sides

ROLL_LEAST, ROLL_MOST = 220.0, 5000.0
"""Least and most length of a page on a roll, in mm."""
MARGIN, FOOT = 8.0, 26.0
"""Blank edge that every printer can do without, and the strip at the bottom for what is written, in mm."""
OFF_BY_MOST = 0.1
"""A printer further off than this share is no printer but a slip in the figure."""


@dataclass(frozen=True)
class Sheet:
    """One page, in mm before the printer stretches it; `stretch` is printed over asked length, along x and y.

    `sides` names the two directions, along x and y, for the maker who puts a rule to the print.
    """

    width: float
    height: float
    stretch: tuple[float, float]
    sides: tuple[str, str]

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
                "it is the measured length of the 100 mm bar, divided by 100, so it lies near 1",
                "measure the bars on a print and write, say, 0.996,1.002",
            )
    return printer_scale


def sheets(paper: str, wide: float, tall: float, printer_scale: tuple[float, float]) -> tuple[Sheet, Sheet]:
    """The paper upright and lying, for a drawing `wide` by `tall` mm.

    `printer_scale` belongs to the printer, not to the page: first along the sheet's short side (across a roll), then
    along its long side (along a roll). On a sheet turned round the two change places.
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
        Sheet(side, upright, (short, long), (across, along)),
        Sheet(lying, side, (long, short), (along, across)),
    )


def _roll_length(needed: float) -> float:
    return min(max(needed + 2 * MARGIN, ROLL_LEAST), ROLL_MOST)
