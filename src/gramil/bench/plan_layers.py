"""What lies on the plan and can be switched on and off: dimensions, names of parts, findings where they apply, a grid,
and over each part the shape in which it is tapped.

Letters and marks are as large on the screen however far the drawing is enlarged: the page scales them.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from html import escape
from math import hypot, isfinite, pi
from typing import Any

from gramil import names as n
from gramil.bench.svg_in_page import inlined
from gramil.bench.things import Thing
from gramil.drawings.marks import Circle, Drawing, Label, Line, Mark, Marks, Point, Polyline, Span
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.reference import Ref
from gramil.writers.extents import bounds
from gramil.writers.spans import Resolve
from gramil.writers.svg import number, svg_text

TALL = 10.0
"""Height of a capital in mm, as it comes out on a wide screen with the whole drawing on it."""
ROW = 19.0
"""Between two rows of dimensions, in mm: lettering for a wide screen stands between them."""
FOLDED = {"near": 30.0, "whole": 95.0}
"""Findings nearer to one another than this, in mm, are one mark: where the drawing is large, and where it is whole."""
UNNAMED = ("top", "nut")
"""Parts that everyone knows, whose names would stand over others."""
BESIDE = {"bridge": "above", "board": "below", "neck": "below"}
"""Parts whose names stand past their edge, where no strings and findings lie."""
CLEAR = {"above": 5.0, "below": -14.0}
"""How far past the edge, in mm: a name stands on its line."""
APART = 24.0
"""Two figures that stand upright nearer to one another than this, in mm, go to either side of the centreline."""
WORST = ("stop", "caution", "note")


@dataclass(frozen=True)
class PlacedMark:
    """A finding on the plan: its number, its severity, its words and its place (y up)."""

    number: str
    severity: str
    words: str
    at: Point


def sizes_on(figures: Figures, side: float) -> tuple[Marks, Marks]:
    """The dimensions that are asked for on the whole plan, and the rest for when it is enlarged."""
    body = next(iter(figures[n.body_outlines]), None)
    high = body.width / 2 if body else 60.0
    edge = float(figures[n.body_edge])
    main: Marks = (
        _along(0.0, float(figures[n.scale_run]), high + 3 * ROW, n.scale_run, "scale "),
        _along(0.0, float(figures[n.back_bow_length]), high + ROW, n.back_bow_length, "to the join "),
    )
    rest: Marks = (
        _along(0.0, float(figures[n.bridge_front_edge]), high + 2 * ROW, n.bridge_front_edge, "to the bridge "),
        *_widths(figures),
    )
    if body is None:
        return main, rest
    tail = edge + body.length
    main += (
        Span((tail, -high), (tail, high), -ROW, n.body_width, TALL),
        _along(edge, tail, high + ROW, n.body_length, "body "),
    )
    rest += (
        *_bouts(figures, edge),
        *_depths(figures, edge, tail, side),
    )
    return main, rest


def _along(start: float, end: float, high: float, figure: Ref[Any], before: str) -> Span:
    return Span((start, high), (end, high), 0.0, figure, TALL, before=before)


def _widths(figures: Figures) -> Iterator[Span]:
    nut = float(figures[n.board_nut_position])
    half = float(figures[n.nut_width]) / 2
    yield Span((nut, -half), (nut, half), 16.0, n.nut_width, TALL)
    tail, wide = float(figures[n.board_tail_position]), float(figures[n.board_width_at_tail]) / 2
    yield Span((tail, -wide), (tail, wide), -ROW, n.board_width_at_tail, TALL)


def _bouts(figures: Figures, edge: float) -> Iterator[Mark]:
    """Widths at upper bout and waist, at their places, each in a lane of its own; the lower bout's is the body's."""
    taken = [(float(figures[n.board_tail_position]) + ROW, 1)]
    for bout in figures[n.body_bouts]:
        if bout.width < float(figures[n.body_width]) - 0.5:
            x, (low, high) = edge + bout.x, (across for _, across in bout.edges)
            side = lane(x, taken)
            taken.append((x, side))
            yield Line((x, low), (x, high), "dimensions")
            at = (x - 3.0, 0.66 * (high if side > 0 else low))
            yield Label(at, n.body_bouts[bout.name].width, height=TALL, angle=pi / 2, anchor="middle")


def lane(x: float, taken: Sequence[tuple[float, int]]) -> int:
    """On which side of the centreline an upright figure at x stands: below (-1), unless one is near it there."""
    return next((side for side in (-1, 1) if all(s != side or abs(x - at) >= APART for at, s in taken)), -1)


def _depths(figures: Figures, edge: float, tail: float, side: float) -> Iterator[Span]:
    """The side's depth at both ends: within the body at the neck, beside it at the tail."""
    for x, depth in ((edge, n.body_depth_neck), (tail, n.body_depth_tail)):
        high = float(figures[depth])
        if isfinite(high):
            yield Span((x, side - high), (x, side), -ROW, depth, TALL)


def sizes_svg(figures: Figures, side: float, formatter: Formatter) -> str:
    """The dimensions as two groups."""
    main, rest = sizes_on(figures, side)
    return _group("sizes main", main, formatter) + _group("sizes rest", rest, formatter)


def _group(kind: str, marks: Marks, formatter: Formatter) -> str:
    """Figures that stand upright are short: without the 64ths that their cards give."""
    upright = tuple(each for each in marks if _stands(each))
    level = tuple(each for each in marks if not _stands(each))
    return f'<g class="{kind}">{inner_svg(level, formatter.said)}{inner_svg(upright, formatter.text)}</g>'


def _stands(mark: Mark) -> bool:
    return (isinstance(mark, Span) and mark.start[0] == mark.end[0]) or isinstance(mark, Label)


def inner_svg(marks: Marks, resolve: Resolve) -> str:
    """Marks as SVG without the document round them, layer by layer."""
    if not marks:
        return ""
    drawn = svg_text(Drawing("inner", "", "the face", marks), resolve, captioned=False)
    inner = drawn[drawn.index("</desc>") + len("</desc>") : drawn.rindex("</svg>")]
    return inlined(inner).strip()


def names_svg(things: Iterable[Thing]) -> str:
    """The name of each part that can be tapped, at its middle."""
    once = {each.name: each for each in _of_parts(things) if each.name not in UNNAMED}
    return '<g class="names" aria-hidden="true">' + "".join(map(_named, once.values())) + "</g>"


def _of_parts(things: Iterable[Thing]) -> list[Thing]:
    return [each for each in things if each.tapped and each.shape is not None]


def _named(thing: Thing) -> str:
    """The name about its own place, so that the page can turn it."""
    (x, y), place = _name_at(thing), BESIDE.get(thing.name, "")
    kind = " ".join(filter(None, ("under" if thing.hidden else "", place)))
    return (
        f'<g transform="translate({number(x)} {number(-y)})"><text class="{kind}" text-anchor="middle">'
        f"{escape(thing.name)}</text></g>"
    )


def _name_at(thing: Thing) -> Point:
    """The middle of a part; off the middle of its edge, away from where the section line and findings mostly are."""
    place = BESIDE.get(thing.name)
    if place is None:
        return middle(thing)
    left, low, right, high = _box(thing)
    if thing.name == "neck":
        return (left + 0.75 * (right - left), high - 38.0)
    return (
        left + (0.5 if place == "above" else 0.3) * (right - left),
        (high if place == "above" else low) + CLEAR[place],
    )


def middle(thing: Thing) -> Point:
    """The middle of a part's box, of a neck the shaft's; names and marks stand there."""
    left, low, right, high = _box(thing)
    if thing.name == "neck":
        return (left + 0.55 * (right - left), high - 12.0)
    return ((left + right) / 2, (low + high) / 2)


def _box(thing: Thing) -> tuple[float, float, float, float]:
    return bounds([thing.shape or thing.marks[0]])  # type: ignore[list-item]  # lines are plain marks


def parts_svg(things: Iterable[Thing], address: str) -> str:
    """Each part's shape as a link to its card; `address` is of the instrument, with {} for the part."""
    return '<g class="parts">' + "".join(_tapped(each, address) for each in _of_parts(things)) + "</g>"


def _tapped(thing: Thing, address: str) -> str:
    shape = thing.shape
    if isinstance(shape, Circle):
        x, y = shape.centre
        drawn = f'<circle cx="{number(x)}" cy="{number(-y)}" r="{number(shape.radius)}"/>'
    else:
        points = shape.points if isinstance(shape, Polyline) else ()
        drawn = f'<polygon points="{" ".join(f"{x:.2f},{-y:.2f}" for x, y in points)}"/>'
    kind = "part-shape under" if thing.hidden else "part-shape"
    to = escape(address.replace("{}", thing.name.replace(" ", "%20")))
    return (
        f'<a class="{kind}" href="{to}" data-card data-part="{escape(thing.name)}" tabindex="-1" '
        f'aria-label="{escape(thing.name)}"><title>{escape(thing.name)}</title>{drawn}</a>'
    )


def marks_svg(placed: Sequence[PlacedMark], address: str) -> str:
    """The findings where they apply, folded for the whole drawing and for the drawing enlarged; `address` is that of
    their list, to which each one's number is added.
    """
    return "".join(
        f'<g class="marks {level}">' + "".join(_mark(each, address) for each in folded(placed, apart)) + "</g>"
        for level, apart in FOLDED.items()
    )


def folded(placed: Sequence[PlacedMark], apart: float) -> list[list[PlacedMark]]:
    """Findings in heaps: each nearer than `apart` to the first of its heap."""
    heaps: list[list[PlacedMark]] = []
    for each in placed:
        heap = next((one for one in heaps if _near(one[0], each) < apart), None)
        if heap is None:
            heaps.append([each])
        else:
            heap.append(each)
    return heaps


def _near(one: PlacedMark, other: PlacedMark) -> float:
    return hypot(one.at[0] - other.at[0], one.at[1] - other.at[1])


def _mark(heap: list[PlacedMark], address: str) -> str:
    x, y = heap[0].at
    worst = min((each.severity for each in heap), key=WORST.index)
    many = len(heap) > 1
    words = f"{len(heap)} findings: " * many + "; ".join(f"{each.severity}: {each.words}" for each in heap)
    numbers = [each.number for each in heap]
    to = address + "".join(f"&n={each}" for each in numbers)
    shape = '<rect x="-17" y="-12" width="34" height="24" rx="3"/>' if many else '<circle r="12"/>'
    label = f"×{len(heap)}" if many else numbers[0]
    return (
        f'<a class="mark {worst}" href="{escape(to)}" data-card data-numbers="{" ".join(numbers)}" '
        f'aria-label="{escape(f"{label} {worst}, {words}")}"><title>{escape(words)}</title>'
        f'<g transform="translate({number(x)} {number(-y)})"><g class="still"><circle class="touch" r="22"/>{shape}'
        f'<text class="count" y="5" text-anchor="middle">{label}</text> '
        f'<text class="severity" x="{20 if many else 15}" y="5">{worst}</text></g></g></a>'
    )


def grid_svg(left: float, top: float, wide: float, tall: float, unit: str) -> str:
    """A grid over the whole plan: 10 and 50 mm, or half an inch and inches."""
    fine, coarse = (12.7, 25.4) if unit == "in" else (10.0, 50.0)
    return (
        '<g class="grid" aria-hidden="true">'
        + "".join(
            f'<path class="{kind}" d="{_lines(left, top, wide, tall, step)}"/>'
            for kind, step in (("fine", fine), ("coarse", coarse))
        )
        + "</g>"
    )


def _lines(left: float, top: float, wide: float, tall: float, step: float) -> str:
    """Lines at whole steps from the zero line and from the centreline."""
    across = [step * row for row in range(int(left // step) + 1, int((left + wide) // step) + 1)]
    down = [step * row for row in range(int(top // step) + 1, int((top + tall) // step) + 1)]
    vertical = [f"M{number(x)} {number(top)}v{number(tall)}" for x in across]
    return "".join((*vertical, *(f"M{number(left)} {number(y)}h{number(wide)}" for y in down)))
