"""A DXF or SVG drawing of a plan: sent, its lines pointed at or named by layer, and taken to the table of the plan."""

from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np
from starlette.responses import Response

from gramil.bench.field_words import at_field
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import Missing, PageRequest, go
from gramil.bench.pages.plan_page import shown_plan
from gramil.bench.pages.tools_page import unit_of_shop
from gramil.bench.plan_typed import fields_of, read_plan
from gramil.description.plan.drawn import DrawnPlan, HowToRead, drawn_plan
from gramil.description.plan.lines import PARTS, PlanLine, PlanLines, Taken, guessed, listed
from gramil.description.plan.parts import PlanParts
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit, read_length
from gramil.quantities import Mm

TITLE = "From a drawing"
MOST_SHOWN = 3000
"""Lines that are shown to be pointed at; the rest is named by layer."""
MOST_POINTS = 240
"""Points of a line as it is shown."""
MOST_LETTERS = 40_000
USUAL_ALIKE: Mm = 0.5


@dataclass(frozen=True)
class ShownLine:
    """A line as it is shown: its number, its layer, its points (SVG), and the part it is taken for, if any."""

    number: int
    layer: str
    points: str
    part: str


def drawings_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The form that sends a drawing."""
    return request.page("drawing_send.html", title=TITLE, faults=())


def send_drawing(request: PageRequest, _: OpenInstruments) -> Response:
    """Holds a drawing, and leads to it."""
    try:
        with at_field("drawing"):
            text = request.one("drawing")
            if not text:
                raise MakersFault.of("no drawing was chosen", remedy="choose a .dxf or .svg file")
            name = "the drawing.svg" if "<svg" in text[:4000].lower() else "the drawing.dxf"
            key = request.drawings.hold(text, name)
    except MakersFault as fault:
        return request.page("drawing_send.html", 422, title=TITLE, faults=fault.faults)
    return go(f"/drawing/{key}")


def drawing_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The drawing with its lines, which of them is what, and what they give."""
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
    return _shown(request, unit)


def take_drawing(request: PageRequest, _: OpenInstruments) -> Response:
    """The drawing read anew; with `do=go` what it gives, on the page of the plan, to be put right and taken."""
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
        if request.one("do") != "go":
            return _shown(request, unit)
        try:
            lines = _lines(request)
            drawn = drawn_plan(lines, _asked(request, lines, unit))
        except MakersFault as fault:
            return _shown(request, unit, fault.faults)
        plan = read_plan(fields_of(drawn.parts, unit, drawn.front_at), frozenset(), unit)
        return shown_plan(request, store, plan, unit, told=drawn.told)


def _lines(request: PageRequest) -> PlanLines:
    found = request.drawings.found(request.words["drawing"])
    if found is None:
        raise Missing("drawing: drawings are held only while they are read, so send it again. There")
    return found


def _shown(request: PageRequest, unit: LengthUnit, faults: tuple[Fault, ...] = ()) -> Response:
    lines, drawn = _lines(request), DrawnPlan(PlanParts(), ())
    taken = guessed(lines)
    try:
        asked = _asked(request, lines, unit)
        taken = asked.taken
        drawn = drawn if faults else drawn_plan(lines, asked)
    except MakersFault as fault:
        faults = faults or fault.faults
    return request.page(
        "drawing.html",
        422 if faults and request.form else 200,
        title=TITLE,
        key=request.words["drawing"],
        parts=PARTS,
        told=drawn.told,
        faults=faults,
        shown=list(_pictured(lines, taken)),
        box=_box(lines),
        layers=[(layer, _of_layer(held, taken)) for layer, held in lines.layers.items()],
        listed=list(listed(lines)),
        pointed=_written(taken),
        length=request.one("length"),
        alike=request.one("alike"),
        inside=request.one("inside") == "yes",
        unit=unit,
        says_unit=lines.unit is not None,
    )


def _asked(request: PageRequest, lines: PlanLines, unit: LengthUnit) -> HowToRead:
    """How the page asks for the drawing to be read. Raises MakersFault, each fault at its field."""
    with at_field("length"):
        length = read_length(request.one("length"), unit) if request.one("length") else None
        if length is not None and not 20 < length < 3000:
            raise MakersFault.of("no guitar is so long", remedy="Give the outline's length along the middle")
    with at_field("alike"):
        alike = read_length(request.one("alike"), unit) if request.one("alike") else USUAL_ALIKE
    return HowToRead(_taken(request, lines), length, alike, request.one("inside") == "yes", unit)


def _taken(request: PageRequest, lines: PlanLines) -> Taken:
    """Which line is what: as pointed at, then as layers are named; at first as the layers' names say."""
    if not request.one("pointed") and not request.many("layer"):
        return guessed(lines)
    with at_field("pointed"):
        found = dict(_read(request.one("pointed")[:MOST_LETTERS], len(lines.lines)))
    for held, part in zip(lines.layers.values(), request.many("layer"), strict=False):
        if part != _of_layer(held, found) and part in (*PARTS, ""):
            for each in held:
                found.pop(each.number, None)
                found |= {each.number: part} if part else {}
    return found


def _read(written: str, most: int) -> Iterator[tuple[int, str]]:
    """Lines as they are pointed at: `hole: 5 6; bridge: 7`. Raises MakersFault."""
    for group in filter(None, (each.strip() for each in written.replace("\n", ";").split(";"))):
        part, _, numbers = group.partition(":")
        part = part.strip().lower()
        for number in numbers.split():
            if part not in PARTS or not number.isdecimal() or not 1 <= int(number[:9]) <= most:
                raise MakersFault.of(f"read {group[:60]!r}", remedy=f"write it like 'hole: 5', of {', '.join(PARTS)}")
            yield int(number[:9]), part


def _written(taken: Taken) -> str:
    groups = {part: [str(number) for number, of in taken.items() if of == part] for part in PARTS}
    return "; ".join(f"{part}: {' '.join(numbers)}" for part, numbers in groups.items() if numbers)


def _of_layer(held: tuple[PlanLine, ...], taken: Taken) -> str:
    """The part that all lines of a layer are taken for; empty if for none, `some` if they differ."""
    found = {taken.get(each.number, "") for each in held}
    return found.pop() if len(found) == 1 else "some"


def _pictured(lines: PlanLines, taken: Taken) -> Iterator[ShownLine]:
    for each in lines.lines[:MOST_SHOWN]:
        step = max(len(each.trace.points) // MOST_POINTS, 1)
        points = np.vstack((each.trace.points[::step], each.trace.points[-1:])) * (1, 1 if lines.downward else -1)
        drawn = " ".join(f"{x:.6g},{y:.6g}" for x, y in points.tolist())
        yield ShownLine(each.number, each.layer, drawn, taken.get(each.number, ""))


def _box(lines: PlanLines) -> str:
    """The view box about all lines, as SVG has it."""
    points = np.vstack([each.trace.points for each in lines.lines]) * (1, 1 if lines.downward else -1)
    (left, top), (wide, tall) = points.min(axis=0), np.ptp(points, axis=0)
    margin = 0.03 * max(wide, tall)
    return f"{left - margin:.6g} {top - margin:.6g} {wide + 2 * margin:.6g} {tall + 2 * margin:.6g}"
