"""What is written correctly about the body but impossible: a brace outside it, one held to something that is missing.

The checks are run with those of `checks.py`, each if the tables that it takes by name could be read; `outlines`
holds the body's outline, or nothing.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence

from gramil.decimals import fixed
from gramil.description.body.cutaway_table import CutawayTable
from gramil.description.body.opening_checks import OPENING_CHECKS, WRITTEN, held_at
from gramil.description.body.opening_tables import Soundhole
from gramil.description.body.records import Point
from gramil.description.body.tables import Body, BraceTable, BridgePlate
from gramil.description.body.usual import line_of, names_of
from gramil.description.locate import Path
from gramil.description.neck.tables import Top
from gramil.description.problems import Problem, did_you_mean, nearest, quoted
from gramil.shapes.outline import Outline

Outlines = tuple[Outline, ...]
Braces = tuple[BraceTable, ...]


def braces_have_a_body(outlines: Outlines, body: Body, brace: Braces) -> Iterator[Problem]:
    """Braces need a body."""
    if outlines or body.described:
        return
    for row, _ in enumerate(brace):
        yield Problem(
            ("brace", row), "there is no body to glue it in", "a body: give [body] an outline, points or a file"
        )


def cutaway_out_of_a_body(body: Body, cutaway: CutawayTable) -> Iterator[Problem]:
    """A cutaway by measures is taken out of a body that is alike on both sides."""
    if not cutaway.described:
        return
    if not body.described:
        yield Problem(
            ("cutaway",), "there is no body to cut it out of", "a body: give [body] an outline, points or a file"
        )
    elif body.treble_points or body.centreline is not None:
        yield Problem(("cutaway",), "the treble half is given for itself", "draw the cutaway there, or leave that out")


def dome_spans_the_body(outlines: Outlines, body: Body, top: Top) -> Iterator[Problem]:
    """Both domes reach over the whole body."""
    for outline in outlines:
        reach = outline.length / 2 + outline.width / 2
        for path, radius in ((("top", "radius"), top.radius), (("body", "back_radius"), body.back_radius)):
            if radius <= reach and (path[0] == "body" or top.length is None):
                yield Problem(path, f"read {radius:g} mm", f"more than reaches over the body, {reach:.0f} mm")


def names_are_apart(brace: Braces) -> Iterator[Problem]:
    """Each brace has its own name."""
    met: set[str] = set()
    for row, each in enumerate(brace):
        for name in names_of(each):
            if name in met:
                yield Problem(("brace", row, "name"), f"read {quoted(name)} a second time", "each name once")
            met.add(name)


def held_to_what_is_there(brace: Braces, soundhole: Soundhole) -> Iterator[Problem]:
    """A brace held to the soundhole needs a soundhole."""
    for row, each in enumerate(brace):
        if each.held_to == "soundhole" and not soundhole.described:
            yield Problem(("brace", row, "held_to"), "there is no soundhole", "give [soundhole], or hold it to another")


def named_braces_are_there(brace: Braces, bridge_plate: BridgePlate) -> Iterator[Problem]:
    """A brace is notched into, and ends against, braces that exist, on its own plate, and not itself.

    A brace of the top may cross the bridge plate too, where there is one.
    """
    over_plate = bridge_plate.ahead is not None
    names = {name: each.plate for each in brace for name in names_of(each)}
    for row, each in enumerate(brace):
        asked: list[tuple[Path, str]] = [(("crosses", number), other) for number, other in enumerate(each.crosses)]
        asked += [((key,), getattr(each, key)) for key in ("start", "stop") if getattr(each, key) not in PLACES]
        for path, other in asked:
            if other == PLATE and path[0] == "crosses" and each.plate == "top" and over_plate:
                continue
            yield from _named(("brace", row, *path), other, each, names)


PLATE = "bridge plate"
"""What a brace of the top may be notched over, besides other braces."""
PLACES = ("linings", "point")
"""What an end may be at, besides another brace."""


def _named(path: Path, other: str, brace: BraceTable, names: Mapping[str, str]) -> Iterator[Problem]:
    if other not in names:
        close = nearest(other, [*names, *PLACES])
        allowed = ", ".join(map(quoted, (*names, *(PLACES if path[-1] in ("start", "stop") else ()))))
        yield Problem(
            path, f"read {quoted(other)}", f"allowed: {allowed}", did_you_mean(quoted(close)) if close else ""
        )
    elif names[other] != brace.plate or other in names_of(brace):
        yield Problem(path, f"read {quoted(other)}", f"another brace of the {brace.plate}")


def braces_in_the_body(outlines: Outlines, brace: Braces, body: Body) -> Iterator[Problem]:
    """A brace whose place is given has its middle in the body, and also any end that stops at a point.

    For a brace that follows saddle or soundhole this is a finding, because the scale moves it.
    """
    for outline in outlines:
        for row, each in enumerate(brace):
            if each.held_to in WRITTEN:
                yield from _outside(row, each, held_at(each.held_to, outline, body), outline)


def _outside(row: int, brace: BraceTable, along: float, outline: Outline) -> Iterator[Problem]:
    start, stop = ((along + x, y) for x, y in line_of(brace))
    places: list[tuple[str, Point]] = [("its middle", ((start[0] + stop[0]) / 2, (start[1] + stop[1]) / 2))]
    places += [("its first point", start)] * (brace.start == "point")
    places += [("its second point", stop)] * (brace.stop == "point")
    key = "line" if brace.line is not None else "station"
    inside = outline.contains([place for _, place in places])
    for (name, place), is_in in zip(places, inside, strict=True):
        if not is_in:
            place_along = fixed(place[0], 1)
            what = f"{name} would lie {place_along} mm from the body's edge, {abs(place[1]):.1f} mm from the centreline"
            yield Problem(("brace", row, key), what, f"inside the body, which is {outline.length:.1f} mm long")
            return


BODY_CHECKS: Sequence[Callable[..., Iterator[Problem]]] = (
    braces_have_a_body,
    cutaway_out_of_a_body,
    dome_spans_the_body,
    names_are_apart,
    held_to_what_is_there,
    named_braces_are_there,
    braces_in_the_body,
    *OPENING_CHECKS,
)
