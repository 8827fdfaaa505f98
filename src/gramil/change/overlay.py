"""The old state in grey under the new one; behind each figure on the drawing stands how far it moved."""

from collections import Counter
from collections.abc import Callable
from dataclasses import replace
from typing import Any

from gramil import names as n
from gramil.change.shift import SMALL, small
from gramil.drawings.marks import Drawing, Label, Mark, Marks, Span, Words, unhatched
from gramil.formatter import parted, shown
from gramil.graph import Figures
from gramil.reference import Ref

COLUMNS, WIDER = 5, 1.5
"""From how many figures in a row a list is a table; how many times as far apart its columns stand with differences."""
MOVED = "moved "
"""What stands before an address on a drawing whose figure is to be shown with its difference."""


def overlaid(old: Drawing, new: Drawing, before: Figures, after: Figures, tolerance: float = SMALL) -> Drawing:
    """Both drawings as one: old lines in grey, not hatched, the new on top; figures that moved say how far.

    Moves within the tolerance are not marked.
    """
    under = tuple(_grey(mark) for mark in old.marks if not isinstance(mark, Words | Label | Span))
    over = tuple(_marked(mark, before, after, tolerance) for mark in _spread(new.marks))
    return replace(new, title=f"{new.title}, old in grey", marks=under + over)


def _spread(marks: Marks) -> Marks:
    """The marks with the columns of a table further apart: what moved is written beside each figure."""
    listed = [mark for mark in marks if isinstance(mark, Words | Label) and mark.layer == "list"]
    rows = Counter(mark.at[1] for mark in listed)
    if max(rows.values(), default=0) < COLUMNS:
        return marks
    left = min(mark.at[0] for mark in listed)
    return tuple(
        replace(mark, at=(left + WIDER * (mark.at[0] - left), mark.at[1]))
        if isinstance(mark, Words | Label) and mark.layer == "list"
        else mark
        for mark in marks
    )


def _grey(mark: Mark) -> Mark:
    return replace(unhatched(mark), layer="old")


def _marked(mark: Mark, before: Figures, after: Figures, tolerance: float) -> Mark:
    if isinstance(mark, Span | Label) and _differs(mark.figure.address, before, after, tolerance):
        return replace(mark, figure=Ref(MOVED + mark.figure.address))
    return mark


def _differs(address: str, before: Figures, after: Figures, tolerance: float) -> bool:
    """Whether a figure moved by more than the tolerance."""
    try:
        old, new = before.at(address), after.at(address)
    except KeyError:
        return False
    return not small(old, new, after.unit_at(address), tolerance)


def differences(resolve: Callable[[Ref[Any]], str], before: Figures, after: Figures) -> Callable[[Ref[Any]], str]:
    """A reader of figures that adds to the marked ones how far they moved: `300.42 mm (-17.70)`, in the new unit."""

    def read(figure: Ref[Any]) -> str:
        if not figure.address.startswith(MOVED):
            return resolve(figure)
        plain = Ref[Any](figure.address.removeprefix(MOVED))
        old, new = before.at(plain), after.at(plain)
        if isinstance(new, str | bool):
            return f"{resolve(plain)} (was {old})"
        moved = float(new) - float(old)
        by, _ = parted(shown(moved, after.unit_at(plain), after[n.instrument_units]))
        return f"{resolve(plain)} ({'+' if moved > 0 else ''}{by})"

    return read
