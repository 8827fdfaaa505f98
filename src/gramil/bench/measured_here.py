"""Distances measured on the plan: carried in the page's address, two places to a distance, and shown as dimensions."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from html import escape
from math import atan2, degrees, isfinite, pi
from urllib.parse import urlencode

from gramil import names as n
from gramil.bench.between import Caught, Distance, caught, distance
from gramil.bench.things import Thing
from gramil.drawings.marks import Point
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.writers.svg import number

MEASURE = "measure"
MOST = 40
"""How many places an address may hold."""
FURTHEST = 40.0
"""Nothing farther than this from a place, in mm, catches it."""
FAR_OFF = 100_000.0
"""No place that far from the drawing's zero, in mm, is one of it."""


@dataclass(frozen=True)
class MeasuredOnPlan:
    """A distance as the page tells it: in the maker's unit and the other, what it is between, and the rest of the
    address without it.
    """

    text: str
    other: str
    words: str
    without: str


@dataclass(frozen=True)
class Measures:
    """All distances, the drawing of them, what is waiting for its second place, and their part of an address."""

    rows: tuple[MeasuredOnPlan, ...]
    svg: str
    waiting: str
    query: str


def measures(written: tuple[str, ...], things: tuple[Thing, ...], formatter: Formatter) -> Measures:
    """What is measured between the places that an address carries, each `x,y,near` in mm as on the page (y down)."""
    places = tuple(each for each in written[:MOST] if _read(each) is not None)
    found = [caught(things, (x, -y), near) for x, y, near in map(_place, places)]
    pairs = list(zip(found[::2], found[1::2], strict=False))
    rows = tuple(_row(distance(*pair), _query(_without(places, row)), formatter) for row, pair in enumerate(pairs))
    drawn = "".join(_drawn(distance(*pair), row.text) for pair, row in zip(pairs, rows, strict=True))
    last = found[-1] if len(found) % 2 else None
    return Measures(rows, drawn + (_cross(last) if last else ""), last.words if last else "", _query(places))


def _place(written: str) -> tuple[float, float, float]:
    found = _read(written)
    assert found is not None, "what cannot be read is left out before"
    return found


def _read(written: str) -> tuple[float, float, float] | None:
    """A place as written in an address; None if it is none."""
    try:
        x, y, near = (float(each) for each in written.split(","))
    except ValueError:
        return None
    return (
        (x, y, min(max(near, 0.0), FURTHEST))
        if all(isfinite(each) and abs(each) < FAR_OFF for each in (x, y, near))
        else None
    )


def _without(places: tuple[str, ...], row: int) -> tuple[str, ...]:
    return places[: 2 * row] + places[2 * row + 2 :]


def _query(places: Iterable[str]) -> str:
    return "".join("&" + urlencode({MEASURE: each}) for each in places)


def _row(found: Distance, without: str, formatter: Formatter) -> MeasuredOnPlan:
    return MeasuredOnPlan(*formatter.both_lengths(found.length), found.words, without)


def _drawn(found: Distance, text: str) -> str:
    """A dimension line with a tick at each end and its figure over the middle."""
    (x0, y0), (x1, y1) = _down(found.start), _down(found.end)
    turn = degrees(_upright(atan2(y1 - y0, x1 - x0)))
    middle = f"translate({number((x0 + x1) / 2)} {number((y0 + y1) / 2)}) rotate({number(turn)})"
    ends = "".join(
        f'<g transform="translate({number(x)} {number(y)})"><path class="still" d="M-5 5L5 -5M-6 0H6M0 -6V6"/></g>'
        for x, y in ((x0, y0), (x1, y1))
    )
    return (
        f'<g class="measure-line"><line x1="{number(x0)}" y1="{number(y0)}" x2="{number(x1)}" y2="{number(y1)}"/>{ends}'
        f'<g transform="{middle}"><text class="still" y="-5" text-anchor="middle">{escape(text)}</text></g></g>'
    )


def _upright(angle: float) -> float:
    """The same direction, so that words along it are not upside down."""
    return angle - pi if angle > pi / 2 else angle + pi if angle <= -pi / 2 else angle


def _cross(found: Caught) -> str:
    x, y = _down(found.at)
    at = f"translate({number(x)} {number(y)})"
    return f'<g class="measure-line"><g transform="{at}"><path class="still" d="M-9 0H9M0 -9V9"/></g></g>'


def _down(point: Point) -> Point:
    return (point[0], -point[1])


def named_places(figures: Figures) -> Iterator[tuple[str, str]]:
    """Places that can be measured between by name, each with its place as an address carries it: on the centreline."""
    yield "the zero line", "0,0,0"
    yield "the board's end at the nut", _on_centre(float(figures[n.board_nut_position]))
    for fret in (5, 7, 12):
        if fret < len(figures[n.fret_position]):
            yield f"fret {fret}", _on_centre(float(figures[n.fret_position][fret]))
    yield "the join of neck and body", _on_centre(float(figures[n.back_bow_length]))
    yield "the board's end over the body", _on_centre(float(figures[n.board_tail_position]))
    yield "the bridge's front", _on_centre(float(figures[n.bridge_front_edge]))
    yield "the saddle", _on_centre(float(figures[n.saddle_position]))
    for outline in figures[n.body_outlines]:
        edge = float(figures[n.body_edge])
        yield "the soundhole's centre", _on_centre(edge + float(figures[n.soundhole_centre]))
        yield "the body's end", _on_centre(edge + outline.length)


def _on_centre(x: float) -> str:
    return f"{number(x)},0,0"
