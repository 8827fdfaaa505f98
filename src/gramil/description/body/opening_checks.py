"""What is written correctly about openings but impossible: a hole beside the body, a ring round nothing, a name used
twice.

The checks are run with those of `checks.py`, each if the tables that it takes by name could be read.
"""

from collections.abc import Callable, Iterator, Sequence
from functools import lru_cache

from gramil.decimals import fixed
from gramil.description.body.opening_tables import SOUNDHOLE, HoleTable, OpeningTable, PortTable, Rosette, Soundhole
from gramil.description.body.tables import Body
from gramil.description.locate import Path
from gramil.description.problems import Problem, did_you_mean, nearest, quoted
from gramil.quantities import Mm, Radians
from gramil.shapes.hole import Hole
from gramil.shapes.outline import Outline

Outlines = tuple[Outline, ...]
Openings = tuple[OpeningTable, ...]
Ports = tuple[PortTable, ...]
WRITTEN = ("body", "join", "tail")
"""What a feature is tied to if its place on the body is written down rather than following from the scale."""


def held_at(to: str, outline: Outline, body: Body) -> float:
    """Where the zero that a feature is held to lies, from the body's edge, by the description alone."""
    return {"body": 0.0, "join": -body.beyond_join, "tail": outline.length}[to]


def openings_have_a_body(
    outlines: Outlines, body: Body, soundhole: Soundhole, opening: Openings, port: Ports
) -> Iterator[Problem]:
    """Holes and ports need a body."""
    if outlines or body.described:
        return
    allowed = "a body: give [body] an outline, points or a file"
    paths: list[Path] = [("soundhole",)] if soundhole.described else []
    paths += [(name, row) for name, rows in (("opening", opening), ("port", port)) for row, _ in enumerate(rows)]
    for path in paths:
        yield Problem(path, "there is no body to cut it in", allowed)


def an_opening_is_there(opening: Openings) -> Iterator[Problem]:
    """A further hole has a place and a size."""
    for row, each in enumerate(opening):
        if not each.described:
            yield Problem(("opening", row), "it has no size", "give centre, and diameter or along and across")


def openings_are_apart(opening: Openings, port: Ports) -> Iterator[Problem]:
    """Each hole and each port has its own name, and none of them the soundhole's."""
    met = {SOUNDHOLE}
    named: list[tuple[Path, str]] = [(("opening", row, "name"), each.name) for row, each in enumerate(opening)]
    named += [(("port", row, "name"), each.name) for row, each in enumerate(port)]
    for path, name in named:
        if name in met:
            yield Problem(path, f"read {quoted(name)}", "a name of its own")
        met.add(name)


def a_ring_is_round_something(
    soundhole: Soundhole, opening: Openings, rosette: tuple[Rosette, ...]
) -> Iterator[Problem]:
    """Rings need a hole, and lie outside it; a diameter is of a ring round a circle."""
    holes: dict[str, HoleTable] = {SOUNDHOLE: soundhole, **{each.name: each for each in opening}}
    for row, ring in enumerate(rosette):
        hole = holes.get(ring.round)
        if hole is None:
            close = nearest(ring.round, holes)
            yield Problem(
                ("rosette", row, "round"),
                f"read {quoted(ring.round)}",
                ", ".join(map(quoted, holes)),
                did_you_mean(close),
            )
        elif not hole.described:
            yield Problem(("rosette", row), "there is no soundhole", "give [soundhole] centre and diameter")
        elif ring.inner is not None:
            yield from _inner(("rosette", row, "inner"), ring.inner, hole)


def _inner(path: Path, inner: float, hole: HoleTable) -> Iterator[Problem]:
    if hole.diameter is None:
        yield Problem(path, "its hole is not round", "give gap: how far the ring lies from the hole's edge")
    elif inner < hole.diameter:
        yield Problem(path, f"read {inner:g} mm", f"{hole.diameter:g} mm or more")


def holes_in_the_body(outlines: Outlines, soundhole: Soundhole, opening: Openings, body: Body) -> Iterator[Problem]:
    """A hole whose place on the body is given lies inside the outline."""
    rows: list[tuple[Path, HoleTable]] = [(("soundhole", "centre"), soundhole)]
    rows += [(("opening", row, "centre"), each) for row, each in enumerate(opening)]
    for outline in outlines:
        for path, each in rows:
            yield from _outside(path, each, outline, body)


def _outside(path: Path, table: HoleTable, outline: Outline, body: Body) -> Iterator[Problem]:
    hole = table.hole
    if hole is None or table.centre is None or table.held_to not in WRITTEN:
        return
    x = table.centre + held_at(table.held_to, outline, body)
    if not _lies_within(outline, hole, x, table.aside, table.lean):
        aside = f", {fixed(table.aside, 1)} mm from the centreline" if table.aside else ""
        yield Problem(
            path,
            f"{hole.across:.1f} mm wide, it would lie {fixed(x, 1)} mm from the body's edge{aside}",
            "inside the outline all round",
        )


@lru_cache(maxsize=64)
def _lies_within(outline: Outline, hole: Hole, x: Mm, y: Mm, lean: Radians) -> bool:
    """Whether a hole lies inside an outline all round. Cached: what is read again has mostly the same body."""
    return bool(outline.contains(hole.placed(x, y, lean)).all())


OPENING_CHECKS: Sequence[Callable[..., Iterator[Problem]]] = (
    openings_have_a_body,
    an_opening_is_there,
    openings_are_apart,
    a_ring_is_round_something,
    holes_in_the_body,
)
