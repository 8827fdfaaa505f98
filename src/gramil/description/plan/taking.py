"""A description with what a plan gives in it, and in words what was put in and what was left out for it."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError

from gramil.bare_numbers import length_unit
from gramil.description.plan.notches import crossed_by
from gramil.description.plan.parts import PlanBrace, PlanBridge, PlanHead, PlanHole, PlanOutline, PlanParts, Point
from gramil.faults import MakersFault
from gramil.measure import LengthUnit, read_length, show
from gramil.quantities import Mm

SHAPED = ("shape", "along", "across", "corner", "lean", "aside")
"""What is said of a soundhole that is not round, or not on the centreline: the plan's is both."""
ZeroOf = Callable[[str], Mm]
"""What a part's place along the body is measured from: body, join, tail, soundhole or saddle."""
OF_A_DRAWING = ("outline", "points", "file", "layer", "length", "corners", "alike", "centreline", "traced_within")
OF_TREBLE = ("treble_outline", "treble_points", "treble_corners")
"""A treble half of its own: the plan's half is both."""
PLACES = {"mm": 2, "in": 4}
WIDTH, HEIGHT = 8.0, 12.0
"""Of a brace that neither the plan nor the description knows: common practice, to begin from."""
OF_LINE = ("line", "station", "lean", "start", "stop", "twin", "crosses", "held_to", "name", "plate")
"""Keys of a brace that the plan settles; the others stay as the brace of that name has them."""
LISTED = 6
"""Names that are listed one by one."""


@dataclass(frozen=True)
class Taken:
    """A description, and sentences on what was put in and what went out."""

    text: str
    told: tuple[str, ...]


def with_shapes(text: str, parts: PlanParts) -> str:
    """The description with outline, head and bridge of a plan, and without the parts that lie on the body by a place:
    what they are held to can be worked out from it. Raises MakersFault for a text that is not TOML.
    """
    document = _read(text)
    _put_shapes(document, parts, _unit(document))
    for key in ("brace", "soundhole", "opening", "rosette", "bridge_plate"):
        document.pop(key, None)
    return tomlkit.dumps(document)


def with_parts(text: str, parts: PlanParts, zero_of: ZeroOf, half: Sequence[Point]) -> Taken:
    """The description with all that a plan gives; `half` is the outline's half, (along, across), in mm.

    Raises MakersFault for a text that is not TOML.
    """
    document = _read(text)
    unit, told = _unit(document), list[str]()
    told += _put_shapes(document, parts, unit)
    if parts.hole is not None:
        told += _put_hole(document, parts.hole, zero_of, unit)
    if parts.braces:
        told += _put_braces(document, parts.braces, zero_of, half, unit)
    return Taken(tomlkit.dumps(document), tuple(told))


@dataclass(frozen=True)
class OwnHole:
    """The soundhole that a description has: its centre from what it is held to, and what that is."""

    centre: Mm
    held_to: str


def soundhole_of(text: str) -> OwnHole | None:
    """The soundhole of a description, None without one. Raises MakersFault for a text that is not TOML."""
    document = _read(text)
    table = document.get("soundhole", {})
    if table.get("centre") is None:
        return None
    return OwnHole(_own_length(table["centre"], _unit(document)), str(table.get("held_to", "body")))


def _own_length(written: object, unit: LengthUnit) -> Mm:
    return float(read_length(str(written), unit))


def _read(text: str) -> Any:
    try:
        return tomlkit.parse(text)
    except (TOMLKitError, ValueError, RecursionError) as error:
        raise MakersFault.of("the description is not TOML", str(error)) from None


def unit_of(text: str) -> LengthUnit:
    """The unit of a description's bare numbers. Raises MakersFault for a text that is not TOML."""
    return _unit(_read(text))


def _unit(document: Any) -> LengthUnit:
    return length_unit(str(document.get("instrument", {}).get("units", "")).strip())


def _put_shapes(document: Any, parts: PlanParts, unit: LengthUnit) -> Iterator[str]:
    said = []
    if parts.outline is not None:
        said.append(_put_outline(_table(document, "body"), parts.outline, unit))
    if parts.head is not None:
        said.append(_put_head(_table(document, "head"), parts.head, unit))
    if parts.bridge is not None:
        said.append(_put_bridge(_table(document, "bridge"), parts.bridge, unit))
    return iter(said)


def _table(document: Any, name: str) -> Any:
    if name not in document:
        document[name] = tomlkit.table()
    return document[name]


def _put_outline(table: Any, outline: PlanOutline, unit: LengthUnit) -> str:
    for gone in (*OF_A_DRAWING, *OF_TREBLE):
        table.pop(gone, None)
    table["outline" if outline.by_stations and outline.within is None else "points"] = _places(outline.points, unit)
    _put_corners(table, outline.corners)
    if outline.within is not None:
        table["traced_within"] = _number(outline.within, unit)
    length = show(outline.points[-1][0] - outline.points[0][0], unit)
    return f"Outline: {len(outline.points)} points on one half, {length} long"


def _put_head(table: Any, head: PlanHead, unit: LengthUnit) -> str:
    for gone in ("outline", "file", "layer", "length", "corners"):
        table.pop(gone, None)
    table["outline"] = _places(head.points, unit)
    _put_corners(table, head.corners)
    return f"Head: {len(head.points)} points on one half; its posts stay as they were"


def _put_corners(table: Any, corners: Iterable[int]) -> None:
    counted = [corner + 1 for corner in corners]
    if counted:
        table["corners"] = counted


def _put_bridge(table: Any, bridge: PlanBridge, unit: LengthUnit) -> str:
    table["length"], table["width"] = _number(bridge.length, unit), _number(bridge.width, unit)
    if bridge.front is not None:
        table["front"] = _number(bridge.front, unit)
    return f"Bridge: {show(bridge.length, unit)} by {show(bridge.width, unit)}; it lies where the scale puts the saddle"


def _put_hole(document: Any, hole: PlanHole, zero_of: ZeroOf, unit: LengthUnit) -> Iterator[str]:
    table = _table(document, "soundhole")
    held_to = str(table.get("held_to", "body"))
    before = table.get("diameter")
    for key in SHAPED:
        table.pop(key, None)
    table["centre"] = _number(hole.centre - zero_of(held_to), unit)
    table["diameter"] = _number(hole.diameter, unit)
    yield f"Hole: {show(hole.diameter, unit)} wide, its centre {show(hole.centre, unit)} from the neck end"
    if before is not None and document.get("rosette"):
        wider = hole.diameter - _own_length(before, unit)
        moved = [ring for ring in document["rosette"] if ring.get("round", "soundhole") == "soundhole"]
        for ring in (each for each in moved if "inner" in each):
            ring["inner"] = _number(_own_length(ring["inner"], unit) + wider, unit)
        yield f"Its rings keep their distance from it: {len(moved)} moved with it"


def _put_braces(
    document: Any, braces: Sequence[PlanBrace], zero_of: ZeroOf, half: Sequence[Point], unit: LengthUnit
) -> Iterator[str]:
    """All braces of a plate that the plan shows, in place of those that the description has of it."""
    plates = dict.fromkeys(each.plate for each in braces)
    had = list(document.get("brace", ()))
    old = {(str(each.get("plate")), str(each.get("name"))): each for each in had}
    rows = tomlkit.aot()
    crossed = crossed_by(braces, half)
    for each, crosses in zip(braces, crossed, strict=True):
        rows.append(_brace(each, crosses, old.get((each.plate, each.name)), zero_of(each.held_to), unit))
    for each in had:
        if str(each.get("plate")) not in plates:
            rows.append(each)
    document.pop("brace", None)
    document["brace"] = rows
    return _braces_in_words(braces, crossed, old)


def _brace(each: PlanBrace, crosses: Sequence[str], like: Any, zero: Mm, unit: LengthUnit) -> Any:
    table = tomlkit.table()
    table["name"], table["plate"], table["held_to"] = each.name, each.plate, each.held_to
    table["line"] = [[_number(along - zero, unit), _number(across, unit)] for along, across in each.line]
    for key, end in (("start", each.start), ("stop", each.stop)):
        if end != "linings":
            table[key] = end
    if each.twin:
        table["twin"] = True
    if crosses:
        table["crosses"] = list(crosses)
    for key, value in (like or {"width": _number(WIDTH, unit), "height": _number(HEIGHT, unit)}).items():
        if key not in OF_LINE:
            table[key] = value
    for key, given in (("width", each.width), ("height", each.height)):
        if given is not None:
            table[key] = _number(given, unit)
    table["held_to"].comment("places along are from there")
    return table


def _braces_in_words(
    braces: Sequence[PlanBrace], crossed: Sequence[Sequence[str]], old: dict[tuple[str, str], Any]
) -> Iterator[str]:
    for plate in dict.fromkeys(each.plate for each in braces):
        own = [each.name for each in braces if each.plate == plate]
        yield f"Braces of the {plate}: {_listed(own)}"
        gone = [name for of, name in old if of == plate and name not in own]
        if gone:
            yield f"Out of the description for them: {_listed(gone)}"
    new = [each for each in braces if (each.plate, each.name) not in old]
    for key, usual in (("width", WIDTH), ("height", HEIGHT)):
        unknown = [each.name for each in new if getattr(each, key) is None]
        if unknown:
            yield f"No {key} is known of {_listed(unknown)}: {usual:g} mm, common practice, until you write your own"
    for each, names in zip(braces, crossed, strict=True):
        if names:
            yield f"{each.name} crosses {_listed(names)}: they are notched into each other"


def _listed(names: Sequence[str]) -> str:
    more = f" and {len(names) - LISTED} more" if len(names) > LISTED else ""
    return ", ".join(names[:LISTED]) + more


def _places(points: Iterable[Point], unit: LengthUnit) -> Any:
    rows = tomlkit.array()
    for along, across in points:
        rows.append([_number(along, unit), _number(across, unit)])
    return rows.multiline(True)


def _number(millimetres: Mm, unit: LengthUnit) -> float | int:
    """A bare number in the file's unit, 0.01 mm or 0.0001 in fine, without idle noughts."""
    found = round(float(millimetres) / (1.0 if unit == "mm" else 25.4), PLACES[unit])
    return int(found) if found.is_integer() else found
