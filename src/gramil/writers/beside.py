"""How the figures on an inch shop's drawings read: decimals, and beside them 64ths where there is room."""

from collections.abc import Iterator, Sequence
from functools import cache
from typing import Any

from gramil.drawings.marks import Arc, Circle, Drawing, Label, Line, Polyline, Span
from gramil.formatter import Formatter
from gramil.reference import Ref
from gramil.writers.extents import Box, box_round, touches
from gramil.writers.lettering import Lettering, corners
from gramil.writers.plain import has_place, pieces
from gramil.writers.proof_square import meet as boxes_meet
from gramil.writers.slanted import Corners, meet
from gramil.writers.spans import Resolve

LIST = "list"
Stroked = Line | Arc | Circle | Polyline
Asker = tuple[int, Ref[Any], Lettering]
"""Which text it is, its figure, and the same with what stands beside it."""


def labels_on(drawings: Sequence[Drawing], formatter: Formatter) -> Resolve:
    """Reads the figures of these drawings: one that has no room for its 64ths on any of them stands without."""
    if formatter.first == "mm":
        return formatter.text

    @cache
    def cramped() -> frozenset[str]:
        return frozenset(address for each in drawings for address in _cramped(each, formatter))

    def read(figure: Ref[Any]) -> str:
        return formatter.text(figure) if figure.address in cramped() else formatter.said(figure)

    return read


def _cramped(drawing: Drawing, formatter: Formatter) -> Iterator[str]:
    """The addresses of the figures that would run into other words or over a line if 64ths stood beside them.

    In a row of a list all figures have them, or none.
    """
    taken, asking = _boxes(drawing, formatter)
    lines = _lines(drawing, formatter)
    rows = set[float]()
    for at, figure, longer in asking:
        box = corners(longer)
        words = any(meet(box, other) for place, other in enumerate(taken) if place != at)
        if words or _over(lines, box, taken[at]):
            rows |= {longer.at[1]} if longer.layer == LIST else set()
            yield figure.address
        else:
            taken[at] = box
    yield from (figure.address for _, figure, longer in asking if longer.layer == LIST and longer.at[1] in rows)


def _lines(drawing: Drawing, formatter: Formatter) -> list[tuple[Stroked, Box]]:
    """Every line of the drawing, without its hatch, and the box round it."""
    drawn = (piece for mark in filter(has_place, drawing.marks) for piece in pieces(mark, formatter.text))
    lines = [each for each in drawn if not isinstance(each, Lettering)]
    return [(each, box_round(each)) for each in lines]


def _over(lines: Sequence[tuple[Stroked, Box]], box: Corners, before: Corners) -> bool:
    """Whether words lie over a line that they kept clear of before they grew."""
    grown, own = _round(box), _round(before)
    near = (line for line, its in lines if boxes_meet(its, grown))
    return any(touches(line, grown) and not touches(line, own) for line in near)


def _round(box: Corners) -> Box:
    xs, ys = [x for x, _ in box], [y for _, y in box]
    return (min(xs), min(ys), max(xs), max(ys))


def _boxes(drawing: Drawing, formatter: Formatter) -> tuple[list[Corners], list[Asker]]:
    """The room of each text as it stands, and of those that ask for more."""
    taken: list[Corners] = []
    asking: list[Asker] = []
    for mark in filter(has_place, drawing.marks):
        if isinstance(mark, Label | Span) and formatter.other(mark.figure):
            longer = [each for each in pieces(mark, formatter.said) if isinstance(each, Lettering)]
            asking += [(len(taken) + at, mark.figure, each) for at, each in enumerate(longer)]
        taken += [corners(each) for each in pieces(mark, formatter.text) if isinstance(each, Lettering)]
    return taken, asking
