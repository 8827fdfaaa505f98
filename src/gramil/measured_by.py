"""What each length is measured by, and so how an inch shop says it: 64ths for a rule, thou for calipers, feet for a
dish.

It goes by the figure's row in `data/tolerances.toml`: what that names, or else how near the figure must come and how
long it is. A figure without a row goes by its length alone.
"""

from collections.abc import Callable, Mapping
from functools import cache
from typing import Any, Literal

from gramil.address import Field, parse_address
from gramil.inches import in_64ths, in_feet
from gramil.package_data import data_tables

Way = Literal["rule", "long rule", "calipers", "micrometer", "dish"]
"""A long rule is for what should be measured with calipers, but is too long for them: the remainder counts."""
BY_RULE = 0.25
"""What need not come nearer is measured with a rule, in mm: half a 64th, and a little for the eye."""
FINE = 0.03
"""What must come as near as this is measured with a micrometer or a feeler, in mm."""
REACH = 6 * 25.4
"""How far calipers reach, in mm."""
LONGEST_FINE = 48 * 25.4
"""What is longer is measured with a tape, whose 64ths are all that counts."""
FROM_FEET = 4 * 304.8
"""From so large a radius on, the trade says it in feet, and no dish is true to a millimetre."""


@cache
def tolerance_rows() -> Mapping[str, Mapping[str, Mapping[str, Any]]]:
    """The table of tolerances as it is written: by kind of row, by figure, the keys of the row."""
    return data_tables("tolerances")


def figure_of(address: str) -> str:
    """The figure that an address is one row of: `carve_stations.whole` of `carve_stations["fret 1"].whole`.

    Raises KeyError if it is not an address.
    """
    name, steps = parse_address(address)
    return ".".join((name, *(step.name for step in steps if isinstance(step, Field))))


def way_of(address: str, value: float, limit: Callable[[str], float]) -> Way:
    """What measures a length of `value` mm, given a function for a limit's value by its name."""
    row = _row_of(address)
    if "by" in row:
        return _declared(row["by"])
    if "none" in row:
        return "rule"
    near = _near(row, limit)
    if near >= BY_RULE:
        return "rule"
    if abs(value) > LONGEST_FINE:
        return "rule"
    return "long rule" if abs(value) > REACH else "micrometer" if near <= FINE else "calipers"


def is_flat_dish(address: str, value: float) -> bool:
    """Whether a length is the radius of a dish so flat that nobody makes it to the last millimetre.

    A dish is named by its row alone: no limit is asked for. Raises KeyError if the address is not one.
    """
    return abs(value) >= FROM_FEET and _row_of(address).get("by") == "dish"


def digits_worth(address: str) -> int | None:
    """How many digits of an estimate are worth showing, by its figure; None for what is no estimate.

    Raises KeyError if the address is not one.
    """
    return _estimates().get(figure_of(address))


@cache
def _estimates() -> Mapping[str, int]:
    found: Mapping[str, int] = data_tables("tolerances")["estimate"]
    return found


def beside_inches(value: float, way: Way) -> str:
    """What stands beside a length's decimals in an inch shop: `17 25/32 in`, `25 ft`; empty where decimals say all."""
    if way == "dish":
        return in_feet(value) if abs(value) >= FROM_FEET else ""
    return in_64ths(value, way == "long rule") if way in ("rule", "long rule") else ""


def _row_of(address: str) -> Mapping[str, Any]:
    return tolerance_rows()["figure"].get(figure_of(address), {})


def _declared(by: str) -> Way:
    found: Mapping[str, Way] = {each: each for each in ("rule", "calipers", "micrometer", "dish")}
    return found[by]


def _near(row: Mapping[str, Any], limit: Callable[[str], float]) -> float:
    """How near a figure must come, in mm; for a figure without a row, as near as calipers measure."""
    if "within" in row:
        return limit(row["within"])
    if "between" in row:
        least, most = map(limit, row["between"])
        return (most - least) / 2
    return BY_RULE / 2
