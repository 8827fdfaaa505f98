"""The grain of the wood on the plan: light lines along it on top, head, neck, side and bridge, the hole left clear.

There are few on the whole drawing and more where it is enlarged, so that on the screen they never stand too close to be
read as a background.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from functools import lru_cache
from math import cos, sin, tau

from gramil.bench.things import Thing
from gramil.drawings.marks import Circle, Line, Point, Polyline
from gramil.writers.hatches import hatched

APART = {"coarse": 7.0, "fine": 3.0}
"""The least distance between lines in mm: on the whole drawing, and where it is enlarged."""
ALONG = ("top", "head", "neck", "rim")
"""Parts whose grain runs from head to tail; a bridge's runs across."""
OVER = ("soundhole", "rosette", "board", "bridge")
"""What lies on the top or opens it: no line runs through it."""
CORNERS = 90
"""Of a circle that is left clear."""

Outline = tuple[Point, ...]


def grain_svg(things: Iterable[Thing]) -> str:
    """The lines as two paths: those of the whole drawing, and those between them."""
    runs = dict.fromkeys(APART, "")
    for kind, line in grain(tuple(things)):
        runs[kind] += f"M{_xy(line.start)}L{_xy(line.end)}"
    paths = "".join(f'<path class="{kind}" d="{run}"/>' for kind, run in runs.items())
    return f'<g class="grain" aria-hidden="true">{paths}</g>'


def grain(things: Sequence[Thing]) -> Iterator[tuple[str, Line]]:
    """The lines with their kind, part by part."""
    clear = tuple(outline for each in things if each.name in OVER for outline in _outlines(each))
    for each in things:
        shape = each.shape
        if isinstance(shape, Polyline) and each.name in ALONG:
            yield from _along(shape, clear if each.name == "top" else ())
        elif isinstance(shape, Polyline) and each.name == "bridge" and _across(shape):
            turned = replace(shape, points=tuple((y, x) for x, y in shape.points))
            for kind, line in _along(turned, ()):
                yield kind, replace(line, start=line.start[::-1], end=line.end[::-1])


@lru_cache(maxsize=64)
def _along(shape: Polyline, clear: tuple[Outline, ...]) -> tuple[tuple[str, Line], ...]:
    """The lines of one shape with their kind; cached, as most changes leave most shapes alone."""
    return tuple(_thinned(hatched(replace(shape, hatch="along the grain"), clear)))


def _across(shape: Polyline) -> bool:
    xs, ys = zip(*shape.points, strict=True)
    return max(ys) - min(ys) > max(xs) - min(xs)


def _outlines(thing: Thing) -> Iterator[Outline]:
    for mark in thing.marks:
        if isinstance(mark, Circle):
            (x, y), r = mark.centre, mark.radius
            turns = (tau * step / CORNERS for step in range(CORNERS))
            yield tuple((x + r * cos(turn), y + r * sin(turn)) for turn in turns)
        elif isinstance(mark, Polyline) and mark.closed:
            yield mark.points


def _thinned(lines: Iterable[Line]) -> Iterator[tuple[str, Line]]:
    """Lines in rising order, by kind: those far enough from one another, and those between; the rest are left out."""
    last = dict.fromkeys(APART, float("-inf"))
    kinds: dict[float, str] = {}
    for line in lines:
        high = line.start[1]
        if high not in kinds:
            kinds[high] = next((each for each in APART if high - last[each] >= APART[each]), "")
            last.update(dict.fromkeys(("coarse", "fine") if kinds[high] == "coarse" else (kinds[high],), high))
        if kinds[high]:
            yield kinds[high], line


def _xy(point: Point) -> str:
    return f"{point[0]:.1f} {-point[1]:.1f}"
