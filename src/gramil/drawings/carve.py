"""For carving the neck's back: gauge cards to hold against it, and the flats with their lines, station by station."""

from collections.abc import Sequence
from itertools import pairwise

from gramil import names as n
from gramil.drawings.kerf import Machine, cut_by
from gramil.drawings.marks import Drawing, Label, Line, Marks, Point, Polyline, Span, Words
from gramil.drawings.pen import FIGURE, View, upright
from gramil.parts.records import CarveLine, CarveStation
from gramil.quantities import Count, Mm, Ratio
from gramil.shapes.facets import even_angles, facets, vertices

OWNS = ("drawing_", "piece_")

NO_STATION = "No station lies short of the heel."
"""What a drawing of the stations says if there is none."""

SHOULDER, UNDER, APART = 16.0, 19.0, 8.0
"""In mm: a gauge card beside its hollow, under it, and between two cards."""
CURVE = 96
"""Points on the back's curve."""
TWICE = 2.0
"""How many times as large as life the flats are drawn."""
SMALL = 1.4
"""How many times as large as life they are drawn on a sheet."""
ROOM_ACROSS = 68.2
"""In mm on the paper: as wide as a neck is drawn there, its dimension lines beside it."""
STEP = 9.0
"""From one dimension line to the next, in mm."""


def piece_gauge_cards(carve_stations: tuple[CarveStation, ...], instrument_name: str) -> Marks:
    """A card for each station, nut first, one below the other: its upper edge lies along the joint."""
    marks: Marks = ()
    top = 0.0
    for station in carve_stations:
        marks += _card(station, (0.0, top), instrument_name)
        top -= station.depth + UNDER + APART
    return marks


def _card(station: CarveStation, middle: Point, name: str) -> Marks:
    """A card with its upper edge's middle at a point."""
    x, top = middle
    half, foot = station.width / 2 + SHOULDER, top - station.depth - UNDER
    hollow = tuple((x + float(y), top - float(z)) for y, z in station.profile.points(CURVE))
    box = ((x - half, top), *hollow, (x + half, top), (x + half, foot), (x - half, foot))
    under, at = top - station.depth, _at(station)
    return (
        Polyline(box, "cut", closed=True),
        Line((x, under - 0.5), (x, under - 3.0), "text"),
        Words((x, under - 6.5), name, 2.4, anchor="middle"),
        Label((x, under - 12.0), at.name, height=3.5, anchor="middle"),
        Label((x - half + 3.0, foot + 2.5), at.depth, "deep ", height=2.4),
        Label((x + half - 3.0, foot + 2.5), at.width, "wide ", height=2.4, anchor="right"),
    )


def _at(station: CarveStation) -> "n.CarveStationRef":
    return n.carve_stations[station.name]


def drawing_neck_gauges(instrument_name: str, piece_laser: Machine, piece_gauge_cards: Marks) -> Drawing:
    """Gauge cards for the neck's back, to be cut from sheet: the same for both hands.

    Used at: neck_profiled.
    """
    note = Words((0.0, 5.0), "upper edge along the joint of board and neck", 2.4, anchor="middle")
    nothing = Words((0.0, 0.0), NO_STATION, 2.4, anchor="middle")
    marks = (*piece_gauge_cards, note) if piece_gauge_cards else (nothing,)
    title = f"{instrument_name}, gauge cards for the neck"
    return cut_by(piece_laser, Drawing("neck-gauges", title, "the end", marks))


def piece_facets(
    carve_stations: tuple[CarveStation, ...], carve_lines: tuple[CarveLine, ...], carve_facets: Count
) -> Marks:
    """The neck cut across at each station, nut first: flats, the curve within them, and where their edges lie."""
    marks: Marks = ()
    top = 0.0
    for station in carve_stations:
        lines = tuple(line for line in carve_lines if line.station == station.name)
        marks += _flats(station, lines, carve_facets, View((0.0, top), TWICE, TWICE))
        top -= TWICE * station.depth + STEP * (len(lines) + 2)
    return marks


def _flats(station: CarveStation, lines: tuple[CarveLine, ...], count: int, view: View) -> Marks:
    around = tuple((y, -z) for y, z in vertices(facets(station.profile, even_angles(count))))
    curve = tuple((float(y), -float(z)) for y, z in station.profile.points(CURVE))
    left = view.at(-station.width / 2, 0.0)
    return (
        view.shape(around, "outline", "across the grain"),
        view.run(curve, "cut"),
        view.line((0.0, 2.0), (0.0, -station.depth - 2.0), "centreline"),
        Label((left[0] - 4.0, left[1] - 4.0), _at(station).name, height=3.5, anchor="right"),
        Label((left[0] - 4.0, left[1] - 10.0), _at(station).width, "wide ", height=FIGURE, anchor="right"),
        Label((left[0] - 4.0, left[1] - 15.0), _at(station).depth, "deep ", height=FIGURE, anchor="right"),
        Label((left[0] - 4.0, left[1] - 20.0), _at(station).position, "from zero ", height=FIGURE, anchor="right"),
        *_line_sizes(station, lines, view),
    )


def _line_sizes(station: CarveStation, lines: tuple[CarveLine, ...], view: View) -> Marks:
    """How far each edge lies from the centreline, below; and below the joint, beside. The outermost say one of both."""
    marks: Marks = ()
    foot, out = -station.depth, station.width / 2
    for row, line in enumerate(lines):
        at = n.carve_lines[line.name]
        if line.number > 1:
            low = view.at(line.centre, foot), view.at(0.0, foot)
            marks += (Span(*low, STEP * (len(lines) - row), at.centre, FIGURE),)
        if line.number < len(lines):
            x = view.at(out, 0.0)[0] + 3.0 + STEP * 3 * row
            reach = x - view.at(out, 0.0)[0]
            marks += (_out(view.at(line.centre, -line.joint), x), _out(view.at(out, 0.0), x)) if reach > STEP else ()
            middle = view.at(0.0, -_between([0.0, *(each.joint for each in lines[row:-1])], line.joint))[1]
            marks += upright((x, view.at(0.0, -line.joint)[1]), (x, view.at(0.0, 0.0)[1]), at.joint, middle=middle)
    return marks


def _between(crossed: Sequence[Mm], end: Mm) -> Mm:
    """Half way along the widest room between the lines that a dimension crosses before its end.

    A board thicker than the neck leaves no such room: half way along the whole dimension.
    """
    rooms = pairwise(sorted(each for each in crossed if each <= end))
    room = max(rooms, key=lambda pair: pair[1] - pair[0], default=(0.0, end))
    return (room[0] + room[1]) / 2


def _out(place: Point, x: Mm) -> Line:
    """An extension line from beside a place to a dimension further out."""
    return Line((place[0] + 1.0, place[1]), (x + 1.5, place[1]), "dimensions")


def drawing_neck_facets(instrument_name: str, piece_facets: Marks) -> Drawing:
    """The flats that the back is planed to, twice as large as life: the lines are the same on both sides.

    Used at: neck_profiled.
    """
    top = Label(
        (0.0, 14.0), n.carve_facet_angle, "flats turned by ", " each; edges the same on both sides", 2.6, 0.0, "middle"
    )
    joint = Words((0.0, 8.0), "flat face: the joint of board and neck", 2.2, anchor="middle")
    title = f"{instrument_name}, flats of the neck's back"
    return Drawing("neck-facets", title, "the end", (*piece_facets, top, joint), scale=TWICE)


def piece_flats_scale(carve_stations: tuple[CarveStation, ...]) -> Ratio:
    """How many times life size the first station is drawn on its sheet: a wide neck's less."""
    return min(SMALL, ROOM_ACROSS / carve_stations[0].width) if carve_stations else SMALL


def drawing_setup_neck_carve(instrument_name: str, piece_setup_flats: Marks, piece_flats_scale: Ratio) -> Drawing:
    """The first station with its lines: what is drawn on side and back before the first shaving."""
    title = f"{instrument_name}, flats of the neck's back"
    return Drawing("setup-neck-carve", title, "the end", piece_setup_flats, scale=piece_flats_scale)


def piece_setup_flats(
    carve_stations: tuple[CarveStation, ...],
    carve_lines: tuple[CarveLine, ...],
    carve_facets: Count,
    piece_flats_scale: Ratio,
) -> Marks:
    """The flats at the first station alone."""
    if not carve_stations:
        return (Words((0.0, 0.0), NO_STATION, 2.4, anchor="middle"),)
    first = carve_stations[0]
    view = View((0.0, 0.0), piece_flats_scale, piece_flats_scale)
    return _flats(first, tuple(line for line in carve_lines if line.station == first.name), carve_facets, view)
