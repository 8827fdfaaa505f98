"""What the figures on an inch shop's drawings say: decimals, and beside them 64ths where there is room."""

from collections.abc import Iterator, Sequence
from functools import cache
from typing import Any

from gramil.drawings.marks import Drawing, Label, Span
from gramil.formatter import Formatter
from gramil.reference import Ref
from gramil.writers.legible import Corners, meet
from gramil.writers.lettering import Lettering, corners
from gramil.writers.plain import has_place, pieces
from gramil.writers.spans import Resolve

Asker = tuple[int, Ref[Any], Corners]
"""Which text it is, its figure, and the room that it takes with what stands beside it."""


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
    """The addresses of the figures that would run into other words if 64ths stood beside them."""
    taken, asking = _boxes(drawing, formatter)
    for at, figure, box in asking:
        if any(meet(box, other) for place, other in enumerate(taken) if place != at):
            yield figure.address
        else:
            taken[at] = box


def _boxes(drawing: Drawing, formatter: Formatter) -> tuple[list[Corners], list[Asker]]:
    """The room of each text as it stands, and of those that ask for more."""
    taken: list[Corners] = []
    asking: list[Asker] = []
    for mark in filter(has_place, drawing.marks):
        if isinstance(mark, Label | Span) and formatter.other(mark.figure):
            longer = [corners(each) for each in pieces(mark, formatter.said) if isinstance(each, Lettering)]
            asking += [(len(taken) + at, mark.figure, box) for at, box in enumerate(longer)]
        taken += [corners(each) for each in pieces(mark, formatter.text) if isinstance(each, Lettering)]
    return taken, asking
