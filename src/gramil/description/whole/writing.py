"""The text of a whole description: board and strings as any new one, then neck, head, body, bracing and bridge."""

from collections.abc import Iterator, Mapping

from gramil.bare_numbers import length_unit
from gramil.description.instrument import Instrument
from gramil.description.questions import FANNED, STRINGS
from gramil.description.reading import parse_description
from gramil.description.whole.bracing import Bracing, Laid, Room, crossed, fanned
from gramil.description.whole.head import Head, slotted, upright
from gramil.description.whole.offsets import Offset
from gramil.description.whole.pen import number, place, places, row, with_rows
from gramil.description.whole.ruled import Ruled, half_through
from gramil.description.whole.starting import (
    RULED,
    START,
    STARTING_POINTS,
    StartingPoint,
    measured,
    outside,
    starting_point,
)
from gramil.description.writing import new_description
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit
from gramil.quantities import Mm

SET_BACK = {"steel": 2.5, "nylon": 1.5, "twelve": 2.0}
"""About what the saddle stands behind the scale's end; the bracing is held to the saddle itself."""
BRIDGE = {"steel": (152.0, 33.0, 9.0, 9.0), "nylon": (190.0, 29.0, 8.0, 8.0), "twelve": (156.0, 39.0, 9.0, 9.0)}
"""Length, width, front edge to the saddle's slot, thickness: common practice."""
ENDS = {
    "point": "it ends at that point",
    "scalloped": "its ends hollowed down; or tapered, square",
    "tucked": "through the linings, to the side",
}
"""What the ends of a brace are, in words."""
RADII = {"steel": ("25 ft", "15 ft"), "nylon": ("15 m", "4.5 m"), "twelve": ("25 ft", "15 ft")}
"""Of top and back: common practice."""


def whole_description(answers: Mapping[str, str], offsets: tuple[Offset, ...] = ()) -> str:
    """A commented description of a whole guitar from answers by key: `start`, those of `RULED`, those of any new one.

    `offsets` (stations from the neck end, half-widths) stand in for what a ruler gives of the body. Raises MakersFault
    for an answer that is impossible, or that the rules do not hold for.
    """
    point = starting_point(answers.get(START, "middle"))
    board = {key: value for key, value in answers.items() if key not in (*RULED, START)}
    text = new_description(_board(point, board), kind_added=False)
    instrument = parse_description(text, "the new description").instrument
    unit = instrument.instrument.units
    _refuse_beyond(point, instrument, unit)
    half = offsets or half_through(_ruled(measured(point, answers, unit), instrument.nut.width))
    room = _room(instrument, point, half[-1][0], half)
    bracing = (fanned if point.strings == "nylon" else crossed)(room, point.hole)
    text = with_rows(text, "bridge", _bridge(point, unit))
    if point.strings == "nylon":
        text = with_rows(text, "instrument", (row("build", '"on the neck"', 'sides in its heel; or "neck to body"'),))
    lines = [
        *_saddle(point, unit), *_neck(point, unit), *_head(point, instrument, unit),
        *_body(point, half, unit), *_edges(unit),
        *_hole(bracing, unit), *(line for each in bracing.braces for line in _brace(each, unit)),
        *_plate(bracing, unit), *_work(),
    ]  # fmt: skip
    text = text.rstrip("\n") + "\n" + "\n".join(lines) + "\n"
    parse_description(text, "the new description")
    return text


def usual_of(key: str, answers: Mapping[str, str]) -> str | None:
    """The usual answer of a starting point to a question, if it has one of its own."""
    point = starting_point(answers.get(START, "middle"))
    unit = length_unit(answers.get("instrument.units", "").strip())
    if key in RULED:
        return point.usual(key, unit)
    return point.strings if key == STRINGS else point.answers[unit].get(key)


def _board(point: StartingPoint, answers: Mapping[str, str]) -> dict[str, str]:
    """The answers for board and strings, those of the starting point where none is given."""
    wanted = answers.get(STRINGS, point.strings).strip().lower()
    if wanted != point.strings:
        fitting = " or ".join(each.name for each in STARTING_POINTS.values() if each.strings == wanted)
        raise MakersFault.of(
            f"the starting point {point.name} has {point.strings} strings",
            remedy=f"begin from {fitting or 'another'}, or leave the strings out",
            where=STRINGS,
        )
    unit = answers.get("instrument.units", "mm").strip()
    own = dict(point.answers.get(unit, {}))
    if any(each.key in answers for each in FANNED):
        own.pop("scale.length", None)
    return {STRINGS: point.strings} | own | dict(answers)


def _refuse_beyond(point: StartingPoint, instrument: Instrument, unit: LengthUnit) -> None:
    """Raise MakersFault for a scale, join or number of frets that the rules are not laid out for."""
    faults: list[Fault] = outside(point, "scale.length", _scale(instrument), unit)
    faults += outside(point, "scale.join", float(instrument.scale.join), None)
    faults += outside(point, "scale.frets", float(instrument.scale.frets), None)
    if faults:
        raise MakersFault(faults)


def _scale(instrument: Instrument) -> Mm:
    """The scale, or the mean of two."""
    scale = instrument.scale
    return scale.length if scale.length is not None else ((scale.bass or 0.0) + (scale.treble or 0.0)) / 2


def _ruled(ruler: Mapping[str, Mm], nut_width: Mm) -> Ruled:
    """The flat at the neck is as wide as a heel with a little beside it."""
    measures = {key.removeprefix("body."): value for key, value in ruler.items()}
    return Ruled(**measures, flat=nut_width + 31)


def _room(instrument: Instrument, point: StartingPoint, length: Mm, half: tuple[tuple[Mm, Mm], ...]) -> Room:
    """Where board and saddle end on the body, as the bracing goes by it."""
    scale, frets = _scale(instrument), instrument.scale

    def left(fret: float) -> Mm:
        return float(scale * 2 ** (-fret / 12))

    end = left(frets.join) - left(frets.frets) + instrument.board.beyond_last_fret
    long, wide, front, _ = BRIDGE[point.strings]
    saddle = left(frets.join) + SET_BACK[point.strings]
    return Room(end, saddle, length, half, long, front, wide, _slant(instrument))


def _slant(instrument: Instrument) -> float:
    """How far a fanned bridge goes along for each mm across."""
    scale = instrument.scale
    if scale.bass is None or scale.treble is None:
        return 0.0
    return float((scale.bass - scale.treble) * 2 ** (-(scale.square_at or 7) / 12) / instrument.bridge.spread)


def _bridge(point: StartingPoint, unit: LengthUnit) -> Iterator[str]:
    long, wide, front, thick = BRIDGE[point.strings]
    yield row("length", number(long, unit), "across the top, wings included")
    yield row("width", number(wide, unit), "along the strings, at the saddle")
    yield row("front", number(front, unit), "front edge to the middle of the saddle's slot")
    yield row("thickness", number(thick, unit), "at the saddle, on the centreline")
    yield row("hold", '"tie block"' if point.strings == "nylon" else '"pins"', "what holds the strings behind it")
    if point.strings == "twelve":
        yield row("rows", '"staggered"', 'pins in two rows; or "two" in line with their strings, or "one"')
        yield row("rows_apart", number(7, unit), "from the front row to the second")
        yield row("hold_below", number(2.5, unit), "ramped holes: how far under the top the strings leave them")
        yield row("hold_behind", number(12, unit), "middle of the saddle's slot to the front row")
    yield row("wood", '"walnut"', "for its dust and permits")


def _saddle(point: StartingPoint, unit: LengthUnit) -> Iterator[str]:
    """Thick enough that every string may break where it plays in tune."""
    yield from ("", "[saddle]")
    yield row("thickness", number(point.saddle, unit), "each string breaks over it where it plays in tune")


def _neck(point: StartingPoint, unit: LengthUnit) -> Iterator[str]:
    steel = point.strings != "nylon"
    yield from ("", "[neck]")
    yield row("depth_at_1", number(21 if steel else 21.5, unit), "neck and board together at fret 1")
    yield row("depth_at_10", number(23 if steel else 23.5, unit), "the same at fret 10")
    yield row(
        "heel_depth",
        number(point.depth_neck + (-2 if steel else 3), unit),
        "from the board's underside to the heel's cap",
    )
    yield row("rod", '"two way"' if steel else '"none"', 'truss rod; "none", "one way", "two way"')
    yield from ("", "[carve]")
    yield row("wood", '"red maple"', "of the neck, by its name in the shop's stock")


def _head(point: StartingPoint, instrument: Instrument, unit: LengthUnit) -> Iterator[str]:
    across = point.strings == "nylon"
    strings = len(instrument.strings.gauges)
    paired = len(instrument.course) not in (0, strings)
    shape: Head = slotted(instrument.nut.width, strings) if across else upright(instrument.nut.width, strings, paired)
    yield from ("", "# The head: half of its outline, from the nut's treble end; smooth but for its corners.", "[head]")
    yield row("tuners", '"across"' if across else '"upright"', 'rollers across two slots, or posts: "upright"')
    yield row("veneer_wood", '"walnut"', "for its dust and permits")
    if across:
        yield row("posts_x", place(shape.posts_x, unit), "rollers, treble first, from the nut's face")
        yield row("posts_y", place(shape.posts_y, unit), "the same from the centreline")
    yield from places("outline", shape.outline, unit, "along from the nut's face, across")
    yield row("corners", str(list(shape.corners)), "which of these are corners")


def _body(point: StartingPoint, half: tuple[tuple[Mm, Mm], ...], unit: LengthUnit) -> Iterator[str]:
    top, back = RADII[point.strings]
    steel = point.strings != "nylon"
    yield from ("", "[top]")
    yield row("radius", f'"{top}"', "of its dome; or flat")
    yield row("thickness", number(2.8 if steel else 2.3, unit), "to begin from: work it to its stiffness")
    yield row("wood", '"Sitka spruce"', "quartersawn")
    yield from ("", "# The body: half of its outline, neck end first; the other half is its mirror image.", "[body]")
    yield from places("outline", half, unit, "from the neck end along the middle, half-width there")
    yield row("depth_neck", number(point.depth_neck, unit), "sides alone, without the plates")
    yield row("depth_tail", number(point.depth_tail, unit), "the same at the tail")
    yield row("back_radius", f'"{back}"', "of its dome; or flat")
    yield row("wall", number(2.1 if steel else 2.0, unit), "thickness of the sides")
    yield row("back_thickness", number(2.6 if steel else 2.4, unit), "thickness of the back")
    yield row("side_wood", '"walnut"', "of back and sides")
    yield row("linings_wood", '"basswood"', "for its dust and permits")
    yield row("block_wood", '"basswood"', "for its dust and permits")
    of_block = "along the centreline" if steel else "along the centreline: the neck's foot"
    yield row("neck_block", number(32, unit), of_block)
    yield row("tail_block", number(20, unit), "along the centreline")


def _edges(unit: LengthUnit) -> Iterator[str]:
    for name, height in (("top", 6.5), ("back", 6.0)):
        yield from ("", f"[{name}_binding]")
        yield row("thickness", number(1.8, unit), "in from the side's face; 0: a bare edge")
        yield row("height", number(height, unit), "from the plate's face down the side")
        yield row("purfling", "0", "the lines inside it, together")
        yield row("wood", '"maple"', "by its name in the shop's stock; or plastic")


def _hole(bracing: Bracing, unit: LengthUnit) -> Iterator[str]:
    yield from ("", "[soundhole]")
    yield row("centre", number(bracing.hole, unit), "clear of the board's end; toward the tail")
    yield row("diameter", number(bracing.diameter, unit), "of the hole")
    yield row("held_to", '"body"', "it stays there on the body when the bridge moves")
    yield from ("", "[[rosette]]", row("name", '"ring"', "round the hole"))
    yield row("inner", number(bracing.diameter + 10, unit), "its inner diameter")
    yield row("width", number(6, unit), "across the ring")


def _brace(each: Laid, unit: LengthUnit) -> Iterator[str]:
    """A brace, with what is not usual of it."""
    yield from ("", "[[brace]]", row("name", f'"{each.name}"', each.says or "as it is called"))
    yield row("plate", f'"{each.plate}"', "that it is glued to")
    yield row("held_to", f'"{each.held_to}"', "places along are from there")
    if each.line:
        line = ", ".join(place(end, unit) for end in each.line)
        yield row("line", f"[{line}]", "along, across; treble is positive")
    if each.station is not None:
        yield row("station", number(each.station, unit), "where it crosses the centreline")
    for key, value in (("start", each.start), ("stop", each.stop), ("ends", each.ends)):
        if value:
            yield row(key, f'"{value}"', ENDS.get(value, "against that brace; it runs to the linings if not said"))
    if each.twin:
        yield row("twin", "true", "mirrored across the centreline")
    yield row("width", number(each.width, unit), "of its foot")
    yield row("height", number(each.height, unit), "where it is highest")


def _plate(bracing: Bracing, unit: LengthUnit) -> Iterator[str]:
    if bracing.plate is None:
        return
    yield from ("", "[bridge_plate]")
    yield row("ahead", number(bracing.plate.ahead, unit), "from the saddle toward the neck")
    yield row("behind", number(bracing.plate.behind, unit), "from the saddle toward the tail: under the pins")
    yield row("length_front", number(bracing.plate.front, unit), "across, between the legs of the X")
    yield row("length_back", number(bracing.plate.back, unit), "the same at the back")
    yield row("thickness", number(2.5, unit), "of the plate")
    yield row("wood", '"maple"', "hard, for the strings' balls to lie on")


def _work() -> Iterator[str]:
    yield from ("", "# What no drawing shows, and the list of work goes by.", "[work]")
    yield row("wood", '"new"', 'it lies in the shop for weeks before it is cut; or "settled"')
