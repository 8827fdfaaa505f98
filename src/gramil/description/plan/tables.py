"""Tables typed off a plan, as CSV: outline and head by half-widths at stations, braces by two points, hole, bridge."""

from collections.abc import Callable, Sequence
from typing import TypeVar

from gramil.csv_text import named_rows
from gramil.description.plan.parts import RUNS_ON, PlanBrace, PlanBridge, PlanHead, PlanHole, PlanOutline, Point
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit, read_length
from gramil.quantities import Mm
from gramil.shapes.outline_through import through_half_widths, through_points

STATIONS = ("station", "half_width")
CORNER = "corner"
BRACES = ("name", "plate", "held_to", "along_1", "across_1", "along_2", "across_2")
MORE_OF_BRACES = ("width", "height", "start", "stop", "twin")
HOLE = ("centre", "diameter")
BRIDGE = ("length", "width", "front")
PLATES = ("top", "back")
HELD_TO = ("body", "join", "tail", "soundhole", "saddle")
FEWEST = 7
"""Stations of a body: with fewer, nobody can tell which one is wrong."""
FEWEST_OF_HEAD = 3
LONGEST_NAME = 60
MOST_ROWS = 200
FARTHEST: Mm = 3000.0
"""No place on a guitar is farther from where it is measured."""
T = TypeVar("T")


def outline_of(text: str, file: str, unit: LengthUnit, turns: bool = False) -> PlanOutline:
    """Half of a body from half-widths at stations, neck end first; one that `turns` back along the middle goes through
    its places in order. Raises MakersFault, each fault with its line.
    """
    points, corners = _stations(text, file, unit, FEWEST)
    if turns:
        through_points(points, corners)
    else:
        through_half_widths([x for x, _ in points], [half for _, half in points], corners)
    return PlanOutline(points, corners)


def head_of(text: str, file: str, unit: LengthUnit) -> PlanHead:
    """Half of a head from half-widths at distances from the nut's face. Raises MakersFault."""
    return PlanHead(*_stations(text, file, unit, FEWEST_OF_HEAD))


def braces_of(text: str, file: str, unit: LengthUnit) -> tuple[PlanBrace, ...]:
    """Braces, each by two points on its middle line and what it is held to. Raises MakersFault."""
    found = _each_row(text, file, BRACES, lambda row: _brace(row, unit))
    names = [each.name for each in found]
    if again := next((name for name in names if names.count(name) > 1), ""):
        raise MakersFault([Fault(what=f"{again} is there twice", remedy="give each brace its own name", file=file)])
    return tuple(found)


def hole_of(typed: Sequence[str], unit: LengthUnit) -> PlanHole:
    """The hole by its centre and its diameter, as typed. Raises MakersFault."""
    centre, diameter = typed
    return PlanHole(_length(centre, unit), _size(diameter, unit, "the hole's diameter"))


def bridge_of(typed: Sequence[str], unit: LengthUnit) -> PlanBridge:
    """The bridge by its length, width and front, as typed; the last may be empty. Raises MakersFault."""
    length, width, front = typed
    before = _size(front, unit, "the bridge's front edge") if front.strip() else None
    return PlanBridge(_size(length, unit, "the bridge's length"), _size(width, unit, "the bridge's width"), before)


def _stations(text: str, file: str, unit: LengthUnit, fewest: int) -> tuple[tuple[Point, ...], tuple[int, ...]]:
    def read(row: dict[str, str]) -> tuple[Point, bool]:
        return (_length(row[STATIONS[0]], unit), _length(row[STATIONS[1]], unit)), bool(row.get(CORNER, "").strip())

    rows = _each_row(text, file, STATIONS, read)
    if len(rows) < fewest:
        what = f"{len(rows)} station{'' if len(rows) == 1 else 's'}"
        raise MakersFault([Fault(what=what, remedy=f"give {fewest} or more, close at the ends", file=file)])
    return tuple(place for place, _ in rows), tuple(row for row, (_, corner) in enumerate(rows) if corner)


def _each_row(text: str, file: str, columns: Sequence[str], read: Callable[[dict[str, str]], T]) -> list[T]:
    """Every row as it is read. Raises MakersFault with what is wrong with any of them."""
    found, faults = list[T](), list[Fault]()
    for line, row in named_rows(text, file, columns):
        try:
            found.append(read(row))
        except MakersFault as fault:
            faults += [Fault(line, each.where, each.what, each.why, each.remedy, file) for each in fault.faults]
    if not faults and len(found) > MOST_ROWS:
        faults.append(Fault(what=f"{len(found)} rows", remedy=f"{MOST_ROWS} at most", file=file))
    if faults:
        raise MakersFault(faults)
    return found


def _brace(row: dict[str, str], unit: LengthUnit) -> PlanBrace:
    name = " ".join(row["name"].split())
    if not 0 < len(name) <= LONGEST_NAME:
        raise MakersFault.of("a brace without a name" if not name else "a name too long to print", where="name")
    start, stop = ((_length(row[f"along_{n}"], unit), _length(row[f"across_{n}"], unit)) for n in "12")
    if start == stop:
        raise MakersFault.of(f"the two points of {name} are the same", remedy="give two, well apart", where=name)
    return PlanBrace(
        name,
        _one_of(row["plate"], PLATES, "plate"),
        _one_of(row["held_to"] or HELD_TO[0], HELD_TO, "held_to"),
        (start, stop),
        _end(row.get("start", "")),
        _end(row.get("stop", "")),
        row.get("twin", "").strip().lower() in ("twin", "yes", "true", "x"),
        _size(row.get("width", ""), unit, "its width") if row.get("width", "").strip() else None,
        _size(row.get("height", ""), unit, "its height") if row.get("height", "").strip() else None,
    )


def _end(typed: str) -> str:
    return " ".join(typed.split()) or RUNS_ON


def _one_of(typed: str, allowed: Sequence[str], where: str) -> str:
    found = typed.strip().lower()
    if found not in allowed:
        raise MakersFault.of(f"read {typed.strip()!r}", f"allowed: {', '.join(allowed)}", where=where)
    return found


def _length(typed: str, unit: LengthUnit) -> Mm:
    found = float(read_length(typed, unit))
    if not abs(found) <= FARTHEST:
        raise MakersFault.of(f"{typed.strip()} is farther than a guitar is long", remedy="measure it once more")
    return found


def _size(typed: str, unit: LengthUnit, what: str) -> Mm:
    found = _length(typed, unit)
    if found <= 0:
        raise MakersFault.of(f"{what} is {typed.strip()}", remedy="it is more than 0")
    return found
