"""Starting points of a whole guitar: what each is, and between what lengths it may be changed."""

from collections.abc import Mapping
from dataclasses import dataclass

from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit, read_length, show
from gramil.package_data import data_tables
from gramil.quantities import Mm

START = "start"
"""The question of the starting point; the other usual answers go by it."""
RULED: Mapping[str, str] = {
    "body.length": "Body, from the neck end to the tail",
    "body.upper": "Whole width of the upper bout",
    "body.waist": "Whole width of the waist",
    "body.waist_at": "From the neck end to the waist",
    "body.lower": "Whole width of the lower bout",
    "body.lower_at": "From the neck end to the widest place of the lower bout",
}
"""What a ruler gives of the body: the keys of the answers, and what to ask."""


@dataclass(frozen=True)
class StartingPoint:
    """A kind of guitar to begin from; `between` holds the least and the most of what may be changed, mm."""

    name: str
    says: str
    strings: str
    depth_neck: Mm
    depth_tail: Mm
    hole: Mm
    saddle: Mm
    between: Mapping[str, tuple[float, float]]
    body: Mapping[str, Mm]
    answers: Mapping[str, Mapping[str, str]]

    def usual(self, key: str, unit: LengthUnit) -> str:
        """The usual answer to a question of `RULED`: whole millimetres or eighths of an inch."""
        value = self.body[key]
        return f"{value:g} mm" if unit == "mm" else f"{round(value / 25.4 * 8) / 8:g} in"


def starting_point(name: str) -> StartingPoint:
    """The starting point of a name. Raises MakersFault for an unknown name."""
    found = STARTING_POINTS.get(name.strip().lower())
    if found is None:
        known = ", ".join(STARTING_POINTS)
        raise MakersFault.of(f'there is no starting point "{name}"', remedy=f"write one of: {known}", where=START)
    return found


def measured(point: StartingPoint, answers: Mapping[str, str], unit: LengthUnit) -> dict[str, Mm]:
    """What the ruler gave of the body, by the keys of `RULED`, mm; what was not answered is usual.

    Raises MakersFault, with a fault for each answer that cannot be read or lies outside what the starting point holds
    for.
    """
    found, faults = {}, []
    for key in RULED:
        try:
            found[key] = read_length(answers.get(key) or point.usual(key, unit), unit)
        except MakersFault as fault:
            faults += [Fault(where=key, what=each.what, why=each.why, remedy=each.remedy) for each in fault.faults]
        else:
            faults += outside(point, key, found[key], unit)
    if faults:
        raise MakersFault(faults)
    return found


SLACK: Mm = 0.05
"""An answer rounded in another unit than the limits are written in lies this far outside them at the most."""


def outside(point: StartingPoint, key: str, value: float, unit: LengthUnit | None) -> list[Fault]:
    """A fault if a value lies outside what a starting point holds for; `unit` is None for a number of frets."""
    least, most = point.between[key]
    if least - SLACK <= value <= most + SLACK:
        return []
    low, high, given = (f"{each:g}" if unit is None else show(each, unit) for each in (least, most, value))
    other = [each.name for each in STARTING_POINTS.values() if each.between[key][0] <= value <= each.between[key][1]]
    remedy = f"write a value between, or begin from {' or '.join(other)}" if other else "write a value between"
    why = f"the starting point {point.name} is laid out for {low} to {high}"
    return [Fault(where=key, what=f"{given} is outside what can be laid out by rule", why=why, remedy=remedy)]


def _points() -> Mapping[str, StartingPoint]:
    rows = data_tables("whole")["start"]
    return {row["name"]: StartingPoint(**row) for row in rows}


STARTING_POINTS = _points()
