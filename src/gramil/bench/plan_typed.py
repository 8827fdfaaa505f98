"""A plan as it is typed on its page: five fields of text, each read by itself, so that what can be read is shown."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from typing import TypeVar

from gramil.bench.field_words import at_field
from gramil.bench.page_request import PageRequest
from gramil.description.plan.parts import PlanOutline, PlanParts, Point
from gramil.description.plan.tables import (
    BRACES,
    CORNER,
    MORE_OF_BRACES,
    STATIONS,
    braces_of,
    bridge_of,
    head_of,
    hole_of,
    outline_of,
)
from gramil.description.whole.offsets import standing_out
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit, read_length, show
from gramil.quantities import Mm

FIELDS = ("outline", "within", "braces", "hole_centre", "hole_diameter", "bridge_across", "bridge_along")
MORE_FIELDS = ("bridge_before_saddle", "head", "front_at", "turns")
COLUMNS = {
    "outline": (*STATIONS, CORNER),
    "head": (*STATIONS, CORNER),
    "braces": (*BRACES, *MORE_OF_BRACES),
}
"""What stands in each row of a table, in order."""
LONGEST = 100_000
"""Letters of one table."""
T = TypeVar("T")


@dataclass(frozen=True)
class Doubt:
    """A half-width that stands out: its row (from 0), where and what it is, and what the others make of it."""

    row: int
    place: Point
    others: Mm


@dataclass(frozen=True)
class TypedPlan:
    """What was typed, what of it is read, what is wrong with the rest, and which half-widths are asked about."""

    fields: dict[str, str]
    meant: frozenset[str]
    parts: PlanParts
    faults: tuple[Fault, ...]
    doubts: tuple[Doubt, ...]
    front_at: Mm | None

    @property
    def rough(self) -> tuple[Point, ...]:
        """The outline's points as far as they stand in order, those that stand out left out."""
        outline, odd = self.parts.outline, {each.row for each in self.doubts}
        return () if outline is None else tuple(p for row, p in enumerate(outline.points) if row not in odd)


def typed_plan(request: PageRequest, unit: LengthUnit) -> TypedPlan:
    """What the page's form carries."""
    fields = {key: request.one(key)[:LONGEST] for key in (*FIELDS, *MORE_FIELDS)}
    return read_plan(fields, frozenset(request.many("meant")), unit)


def read_plan(fields: dict[str, str], meant: frozenset[str], unit: LengthUnit) -> TypedPlan:
    """Fields as they are read in a unit; `meant` are rows that are not asked about again."""
    faults = list[Fault]()
    outline = _read(faults, "outline", fields, lambda text: outline_of(text, "", unit, bool(fields["turns"])))
    within = _single(faults, "within", fields, unit)
    front_at = _single(faults, "front_at", fields, unit)
    if outline is not None and within is not None:
        outline = replace(outline, within=within)
    braces = _read(faults, "braces", fields, lambda text: braces_of(text, "", unit))
    head = _read(faults, "head", fields, lambda text: head_of(text, "", unit))
    hole = _several(faults, fields, ("hole_centre", "hole_diameter"), lambda typed: hole_of(typed, unit))
    bridge = _several(
        faults, fields, ("bridge_across", "bridge_along", "bridge_before_saddle"), lambda typed: bridge_of(typed, unit)
    )
    parts = PlanParts(outline, braces or (), hole, bridge, head)
    return TypedPlan(fields, meant, parts, tuple(faults), tuple(_doubts(outline, meant, unit)), front_at)


def meant_line(point: Point, unit: LengthUnit) -> str:
    """How a half-width that is meant is noted in the form."""
    return f"{show(point[0], unit)}: {show(point[1], unit)}"


def with_half_width(text: str, row: int, half: Mm, unit: LengthUnit) -> str:
    """The outline's text with another half-width in a row, counted from 0."""
    lines = [line for line in text.splitlines() if line.strip()]
    at = row + (_headed(lines, "outline"))
    cells = _commas(lines[at]).split(",")
    cells[1] = f" {show(half, unit)}"
    lines[at] = ",".join(cells)
    return "\n".join(lines)


def rows_of_outline(outline: PlanOutline, unit: LengthUnit) -> str:
    """An outline as it would be typed."""
    return "\n".join(
        ", ".join([*(_bare(each, unit) for each in place), *(["corner"] if row in outline.corners else [])])
        for row, place in enumerate(outline.points)
    )


def rows_of_braces(parts: PlanParts, unit: LengthUnit) -> str:
    """Braces as they would be typed."""
    rows = []
    for each in parts.braces:
        places = [_bare(value, unit) for place in each.line for value in place]
        sizes = ["" if size is None else _bare(size, unit) for size in (each.width, each.height)]
        ends = [end if end != "linings" else "" for end in (each.start, each.stop)]
        cells = [each.name, each.plate, each.held_to, *places, *sizes, *ends, "twin" if each.twin else ""]
        rows.append(", ".join(cells).rstrip(", "))
    return "\n".join(rows)


def fields_of(parts: PlanParts, unit: LengthUnit, front_at: Mm | None = None) -> dict[str, str]:
    """All that a plan gives, as it would be typed on the page."""
    found = dict.fromkeys((*FIELDS, *MORE_FIELDS), "")
    if parts.outline is not None:
        found["outline"] = rows_of_outline(parts.outline, unit)
        found["turns"] = "" if parts.outline.by_stations else "yes"
        found["within"] = "" if parts.outline.within is None else _bare(parts.outline.within, unit)
    found["braces"] = rows_of_braces(parts, unit)
    if parts.head is not None:
        found["head"] = rows_of_outline(PlanOutline(parts.head.points, parts.head.corners), unit)
    if parts.hole is not None:
        found["hole_centre"], found["hole_diameter"] = (
            _bare(v, unit) for v in (parts.hole.centre, parts.hole.diameter)
        )
    if parts.bridge is not None:
        found["bridge_across"], found["bridge_along"] = (
            _bare(v, unit) for v in (parts.bridge.length, parts.bridge.width)
        )
        found["bridge_before_saddle"] = "" if parts.bridge.front is None else _bare(parts.bridge.front, unit)
    found["front_at"] = "" if front_at is None else _bare(front_at, unit)
    return found


def _bare(value: Mm, unit: LengthUnit) -> str:
    return f"{value if unit == 'mm' else value / 25.4:.{2 if unit == 'mm' else 4}f}"


def _read(faults: list[Fault], key: str, fields: dict[str, str], read: Callable[[str], T]) -> T | None:
    """A table read; what is wrong with it is added to the faults, a row counted as it is typed."""
    text = fields[key].strip()
    if not text:
        return None
    lines = [_commas(line) for line in text.splitlines()]
    headed = _headed(lines, key)
    try:
        return read("\n".join(lines if headed else [",".join(COLUMNS[key]), *lines]))
    except MakersFault as fault:
        faults += [_at_row(each, key, headed) for each in fault.faults]
        return None


def _at_row(fault: Fault, key: str, headed: bool) -> Fault:
    row = "" if fault.line is None else f"row {fault.line - (not headed)}: "
    return replace(fault, where=key, what=f"{row}{fault.what}", line=None, file=None)


def _headed(lines: Sequence[str], key: str) -> bool:
    """Whether the first line names the columns, as a file does."""
    return bool(lines) and lines[0].strip().lower().startswith(COLUMNS[key][0])


def _commas(line: str) -> str:
    """A line with commas between, also one that was copied out of a table."""
    return line.replace("\t", ",").replace(";", ",")


def _several(
    faults: list[Fault], fields: dict[str, str], keys: tuple[str, ...], read: Callable[[list[str]], T]
) -> T | None:
    """Fields that are read together; if none of them was typed, nothing of the kind is given."""
    typed = [fields[key] for key in keys]
    if not any(typed):
        return None
    try:
        with at_field(next((key for key in keys[:2] if not fields[key]), keys[0])):
            return read(typed)
    except MakersFault as fault:
        faults += fault.faults
        return None


def _single(faults: list[Fault], key: str, fields: dict[str, str], unit: LengthUnit) -> Mm | None:
    if not fields[key]:
        return None
    try:
        with at_field(key):
            return float(read_length(fields[key], unit))
    except MakersFault as fault:
        faults += fault.faults
        return None


def _doubts(outline: PlanOutline | None, meant: frozenset[str], unit: LengthUnit) -> list[Doubt]:
    """Half-widths that stand out. A traced line raises no such question: its picture shows it."""
    if outline is None or outline.within is not None or not outline.by_stations or outline.corners:
        return []
    found = (Doubt(row, outline.points[row], there) for row, there in standing_out(outline.points))
    return [each for each in found if meant_line(each.place, unit) not in meant]
