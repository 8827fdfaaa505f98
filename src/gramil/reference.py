"""References: how a page names a figure, and words with figures in them.

Like a parameter, a reference is an edge of the graph: `names.py`, made from the graph, has a typed one for every
figure, and what a function shows is read off its code (`shown_by.py`). A page never names a figure by a string.
"""

import re
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Generic, TypeAlias, TypeVar

import numpy as np
from numpy.typing import NDArray

from gramil.address import quoted

T = TypeVar("T", covariant=True)
R = TypeVar("R", bound="Ref[Any]", covariant=True)
Place: TypeAlias = int | str | np.integer[Any] | tuple[int | np.integer[Any], ...]
"""A row of a figure: a fret (from 0), a string or member (from 1), its name, or string and fret."""
EACH = "<row>"
"""Stands for the row in a column of a table: `n.brace_list[EACH].length`."""


@dataclass(frozen=True)
class Ref(Generic[T]):
    """One figure, or one place in it, by its address; `T` is what the graph gives there."""

    address: str

    def __str__(self) -> str:
        return self.address

    def __getitem__(self, place: Place) -> "Ref[Any]":
        """The row of a fret, a string or a member, by number or by name."""
        return Ref(f"{self.address}[{_written(place)}]")

    if not TYPE_CHECKING:  # the type checker uses the records' own references in names.py

        def __getattr__(self, field: str) -> "Ref[Any]":
            """The field of a record."""
            if field.startswith("_"):
                raise AttributeError(field)
            return Ref(f"{self.address}.{field}")


class Rows(Ref[NDArray[np.float64]]):
    """A figure with a row for each fret, string, or both."""

    if TYPE_CHECKING:

        def __getitem__(self, place: Place) -> Ref[float]: ...


class Members(Ref[tuple[T, ...]], Generic[R, T]):
    """A list of records or of plain figures: `R` refers to one member, `T` is what it is."""

    if TYPE_CHECKING:

        def __getitem__(self, place: Place) -> R: ...


def _written(place: Place) -> str:
    if isinstance(place, str):
        return place if place == EACH else quoted(place)
    if isinstance(place, tuple):
        return ", ".join(str(int(each)) for each in place)
    return str(int(place))


def name_of(figure: Ref[Any]) -> str:
    """The graph's name of a figure, whatever the place in it."""
    return re.split(r"[\[.]", figure.address, maxsplit=1)[0]


def in_row(reference: Ref[Any], row: int | str) -> Ref[Any]:
    """A column's figure in one row: the row replaces EACH in the reference, or else is added to its end."""
    if EACH not in reference.address:
        return reference[row]
    return Ref(reference.address.replace(f"[{EACH}]", f"[{_written(row)}]").replace(EACH, str(row)))


@dataclass(frozen=True)
class Says:
    """Words with figures among them. Plain words in it are never searched for placeholders, so a maker's own braces
    stay.
    """

    parts: tuple[str | Ref[Any], ...]

    def __add__(self, other: "Text") -> "Says":
        return Says(self.parts + _parts(other))

    def __radd__(self, other: str) -> "Says":
        return Says(_parts(other) + self.parts)

    def __str__(self) -> str:
        """The words with the address of each figure in braces."""
        return filled(self, lambda figure: f"{{{figure}}}")

    def __format__(self, _: str) -> str:
        raise TypeError("words with figures are added with +, not put into an f-string: their figures would be lost")

    def __bool__(self) -> bool:
        return any(self.parts)


Text: TypeAlias = str | Says
"""Plain words, or words with figures among them."""


def says(words: str, *figures: Ref[Any]) -> Says:
    """The program's own words with a figure in each placeholder: `says("tang {} thick", n.wire_tang_thickness)`.

    Raises ValueError if there are not as many figures as placeholders: a bug in the program. A maker's own words go in
    as a figure, or are added with `+`.
    """
    pieces = words.split("{}")
    if len(pieces) != len(figures) + 1:
        raise ValueError(f"{len(pieces) - 1} holes for {len(figures)} figures: {words}")
    between = (part for piece, figure in zip(pieces[1:], figures, strict=True) for part in (figure, piece))
    return Says(tuple(part for part in (pieces[0], *between) if part != ""))


def joined(separator: str, texts: Iterable[Text]) -> Text:
    """Texts one after another with a separator between, as `str.join` does."""
    found: Text = ""
    for number, each in enumerate(texts):
        found = found + (separator if number else "") + each
    return found


def refs_in(text: Text) -> Iterator[Ref[Any]]:
    """The figures among the words, in order."""
    return (part for part in _parts(text) if isinstance(part, Ref))


def filled(text: Text, figure: Callable[[Ref[Any]], str]) -> str:
    """The words with every figure written out by `figure`."""
    return text if isinstance(text, str) else "".join(_one(part, figure) for part in text.parts)


def _one(part: "str | Ref[Any]", figure: Callable[[Ref[Any]], str]) -> str:
    return part if isinstance(part, str) else figure(part)


def _parts(text: Text) -> tuple[str | Ref[Any], ...]:
    return text.parts if isinstance(text, Says) else ((text,) if text else ())


def of(function: Callable[..., Any]) -> Any:
    """For names.py only: it lets an editor jump from a name to the function that gives the figure."""
    return Ref(function.__name__)
