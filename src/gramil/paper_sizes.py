"""The papers that printers take, listed once: for templates, for sheets, and for what a description may say."""

import re
from collections.abc import Mapping

from gramil.faults import MakersFault
from gramil.measure import LengthUnit, MeasureError, read_length

INCH = 25.4
SIZES: Mapping[str, tuple[float, float]] = {
    "letter": (8.5 * INCH, 11 * INCH),
    "legal": (8.5 * INCH, 14 * INCH),
    "11x17": (11 * INCH, 17 * INCH),
    "13x19": (13 * INCH, 19 * INCH),
    "a4": (210.0, 297.0),
    "a3": (297.0, 420.0),
    "a2": (420.0, 594.0),
    "a1": (594.0, 841.0),
    "a0": (841.0, 1189.0),
}
"""Short and long side in mm, by the name that a maker writes: ISO 216 for A0 to A4, the rest by their inches."""
ROLL = "roll"
ROLL_WIDTH = 610.0
"""Width in mm of a roll that does not say its own: 24 inches, as the trade rounds it."""
LEAST, MOST = 180.0, 2000.0
"""Sides in mm between which a paper's own two lengths lie, and a roll's width."""
SAME_FOR_SHEETS = ("letter", "legal", "11x17", "a4", "a3")
"""Papers of templates that sheets are printed on too, unless the shop says otherwise."""
HOW = f"write one of {', '.join(SIZES)}, {ROLL}, a roll with its width ({ROLL} 914 mm) or two lengths (310 x 440 mm)"


def read_paper(written: str, unit: LengthUnit = "mm") -> str:
    """A paper in the form used here: its name, or its lengths in mm; a bare number is in `unit`. Raises MakersFault."""
    said = " ".join(written.lower().replace("×", "x").split())
    if said in SIZES or said == ROLL:
        return said
    if said.replace(" ", "") in SIZES:
        return said.replace(" ", "")
    try:
        if said.startswith(f"{ROLL} "):
            return f"{ROLL} {_side(said.removeprefix(f'{ROLL} '), unit):g} mm"
        one, other = _two(said)
        short, long = sorted((_side(one, unit), _side(other, unit)))
        return f"{short:g} x {long:g} mm"
    except (MeasureError, ValueError):
        raise MakersFault.of(f'"{written}" is not a known paper', remedy=HOW) from None


def _two(said: str) -> tuple[str, str]:
    """The two lengths; a unit given only with the second also holds for the first."""
    one, other = said.split(" x ") if " x " in said else said.split("x")
    unit = re.search(r"[a-z\"]+$", other)
    return (f"{one} {unit[0]}" if unit and re.fullmatch(r"[\d. ]+", one) else one), other


def _side(said: str, unit: LengthUnit) -> float:
    length = float(read_length(said, unit))
    if not LEAST <= length <= MOST:
        raise ValueError("no side of a paper")
    return length


def roll_width(paper: str) -> float | None:
    """Width of a roll in mm; None for a paper in sheets."""
    if not paper.startswith(ROLL):
        return None
    return ROLL_WIDTH if paper == ROLL else float(paper.split()[1])


def sides(paper: str) -> tuple[float, float]:
    """Short and long side of a paper in sheets, in mm, as `read_paper` gives it; raises ValueError for a roll."""
    if paper in SIZES:
        return SIZES[paper]
    short, long = (float(part) for part in paper.removesuffix(" mm").split(" x "))
    return short, long


def for_sheets(templates: str, unit: LengthUnit) -> str:
    """The paper of sheets in a shop that names only that of its templates: the same, or what a desk printer takes."""
    if templates in SAME_FOR_SHEETS:
        return templates
    return "letter" if unit == "in" or templates == "13x19" else "a4"
