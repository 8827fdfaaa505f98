"""A drawing made to be read small: its figures and words enlarged, its dimension lines moved out to match."""

from dataclasses import replace

from gramil.drawings.marks import Drawing, Label, Mark, Span, Words


def lettered(drawing: Drawing, times: float) -> Drawing:
    """The drawing with figures and words `times` as large; lines stay where they are, dimension lines move out.

    A list beside the drawing is left out: a page that shows it small has the list as a table.
    """
    return replace(drawing, marks=tuple(_lettered(mark, times) for mark in drawing.marks if not _is_listed(mark)))


def _is_listed(mark: Mark) -> bool:
    return isinstance(mark, Words | Label) and mark.layer == "list"


def _lettered(mark: Mark, times: float) -> Mark:
    match mark:
        case Span():
            return replace(mark, height=mark.height * times, offset=mark.offset * times)
        case Words() | Label():
            return replace(mark, height=mark.height * times)
        case _:
            return mark
