"""How near each measurable figure must come to what is wanted: rows of `data/tolerances.toml`, by limits."""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass

from gramil.description.shop.limits import LIMITS, limit_ref
from gramil.measured_by import figure_of, tolerance_rows
from gramil.reference import Text, says

HALF_SHOWN: Mapping[str, float] = {"mm": 0.005, "cent": 0.005, "rad": math.radians(0.005)}
"""Half of the last place that a figure of a unit is shown in: what shows as its limit is not past it."""
ROUNDING = 1e-9


@dataclass(frozen=True)
class Tolerance:
    """How far a figure may be off: within a limit either way, or between two limits; else practice has no tolerance.

    `none` is what a sheet then says.
    """

    within: str = ""
    between: tuple[str, ...] = ()
    none: str = ""

    @property
    def words(self) -> Text:
        """What a sheet prints beside the figure."""
        if self.within:
            return says("± {}", limit_ref(self.within))
        return says("{} to {}", *map(limit_ref, self.between)) if self.between else self.none

    def near(self, limit: Callable[[str], float]) -> float | None:
        """How far off it may be, given a function for a limit's value; None if practice has no tolerance.

        For a figure that may lie between two limits, half the distance between them.
        """
        if self.within:
            return limit(self.within)
        if self.between:
            least, most = map(limit, self.between)
            return (most - least) / 2
        return None

    def holds(self, value: float, wanted: float, limit: Callable[[str], float]) -> bool | None:
        """Whether a value is near enough to what is wanted; None if practice has no tolerance.

        A value that shows as exactly the tolerance off is near enough.
        """
        # else 0.104 mm off, which stands as 0.10 beside a tolerance of 0.10, would be too far by what nobody sees
        shown = half_shown(_unit((*self.between, self.within)[0]))
        if self.between:
            least, most = map(limit, self.between)
            return least - shown <= value <= most + shown
        near = self.near(limit)
        return None if near is None else abs(value - wanted) <= near + shown


def half_shown(unit: str | None) -> float:
    """Half of the last digit in which a figure of this unit is shown; for others a tiny allowance for rounding."""
    return HALF_SHOWN.get(unit or "", ROUNDING)


def _unit(name: str) -> str:
    """The unit of a limit; empty for none."""
    return LIMITS[name].unit if name in LIMITS else ""


NONE = Tolerance()
"""Of a figure that no sheet asks for: practice has no tolerance that anybody wrote down."""


def _rows(table: str) -> Mapping[str, Tolerance]:
    return {
        name: Tolerance(row.get("within", ""), tuple(row.get("between", ())), row.get("none", ""))
        for name, row in tolerance_rows()[table].items()
        if row.keys() - {"by"}
    }


TOLERANCES: Mapping[str, Tolerance] = _rows("figure")
"""By figure, its rows left out: `fret_position`, `carve_stations.whole`."""
OF_TOOLS: Mapping[str, Tolerance] = _rows("tool")
"""By a tool's kind and key: `jig.constant`."""


def tolerance_of(address: str) -> Tolerance:
    """The tolerance of the figure at an address; NONE if no row gives one."""
    return TOLERANCES.get(figure_of(address), NONE)
