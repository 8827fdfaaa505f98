"""A dimension as lines and a figure: extension lines, the dimension line, oblique ticks at its ends (ISO 129-1)."""

from collections.abc import Callable
from math import atan2, cos, hypot, sin
from typing import Any

from gramil.drawings.marks import Anchor, Line, Point, Span
from gramil.reference import Ref
from gramil.writers.lettering import Lettering, clean, readable, width

Resolve = Callable[[Ref[Any]], str]
"""From a reference to the text that is shown for its figure, such as "45.50 mm"."""

GAP, BEYOND, TICK, CLEAR = 1.0, 1.5, 1.1, 0.35
"""In mm: part to extension line; that line past the dimension line; half a tick each way. Line to figure, in heights
of a capital: more than its tails reach down."""


def drawn(span: Span, resolve: Resolve) -> tuple[tuple[Line, ...], Lettering]:
    """The lines of a dimension and its figure; a figure wider than the dimension is put beyond its end."""
    along, left = _directions(span)
    first, last = _moved(span.start, left, span.offset), _moved(span.end, left, span.offset)
    length = hypot(span.end[0] - span.start[0], span.end[1] - span.start[1])
    text = clean(f"{span.before}{resolve(span.figure)}")
    wide = width(text, span.height, figure=True)
    inside = wide + 2 * TICK <= length
    tail = last if inside else _moved(last, along, wide + 2 * TICK + CLEAR * span.height)
    lines = (
        *_extensions(span, left),
        Line(first, tail, span.layer),
        _tick(first, along, left, span.layer),
        _tick(last, along, left, span.layer),
    )
    middle = _half_way(first, last) if inside else _moved(last, along, 2 * TICK + wide / 2)
    return lines, _figure(middle, along, text, span)


def _directions(span: Span) -> tuple[Point, Point]:
    """Unit vectors along the dimension and to its left; a dimension of no length lies along x."""
    dx, dy = span.end[0] - span.start[0], span.end[1] - span.start[1]
    length = hypot(dx, dy)
    x, y = (dx / length, dy / length) if length > 0.0 else (1.0, 0.0)
    return (x, y), (-y, x)


def _moved(point: Point, direction: Point, distance: float) -> Point:
    return (point[0] + direction[0] * distance, point[1] + direction[1] * distance)


def _half_way(a: Point, b: Point) -> Point:
    return ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)


def _extensions(span: Span, left: Point) -> tuple[Line, ...]:
    if abs(span.offset) <= GAP:
        return ()
    side = 1.0 if span.offset > 0.0 else -1.0
    return tuple(
        Line(_moved(point, left, side * GAP), _moved(point, left, span.offset + side * BEYOND), span.layer)
        for point in (span.start, span.end)
    )


def _tick(at: Point, along: Point, left: Point, layer: str) -> Line:
    slant = (along[0] + left[0], along[1] + left[1])
    return Line(_moved(at, slant, -TICK), _moved(at, slant, TICK), layer)


def _figure(middle: Point, along: Point, text: str, span: Span) -> Lettering:
    angle = readable(atan2(along[1], along[0]))
    anchor: Anchor = "middle"
    return Lettering(
        _moved(middle, (-sin(angle), cos(angle)), CLEAR * span.height), text, span.height, angle, anchor, "text", True
    )
