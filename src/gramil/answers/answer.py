"""The form of every answer in JSON: what it is an answer to, by which program, of which instruments, and what it tells.

A number that is not known, or has no end (a flat board's radius), is `null`; the text beside it says which.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Any, Generic, Literal, TypeVar

from pydantic import TypeAdapter

from gramil import __version__
from gramil import names as n
from gramil.decimals import twelve_digits
from gramil.graph import Figures

FORM: Literal[1] = 1
"""The form's number: it is raised when something in an answer is renamed or means something else; what comes in
addition does not raise it.
"""
Content = TypeVar("Content")
Plain = float | int | str | bool | None


@dataclass(frozen=True)
class Whose:
    """An instrument that an answer is about. `revision` is its number in the record, `null` for a file; `figures` says
    whether they are as drawn or, with measurements in their places, as made.
    """

    instrument: str
    revision: int | None
    figures: Literal["drawn", "made"]


@dataclass(frozen=True)
class Answer(Generic[Content]):
    """An answer: the form's number, the program's version, the command, the instruments, and what is told of them."""

    form: Literal[1]
    gramil: str
    command: str
    instruments: tuple[Whose, ...]
    told: Content


def whose(figures: Figures, revision: int | None = None) -> Whose:
    """The instrument that figures belong to."""
    return Whose(str(figures[n.instrument_name]), revision, "made" if figures.pins else "drawn")


def as_json(command: str, instruments: Sequence[Whose], told: Any) -> str:
    """What a command tells, as the text of its answer, with a line end."""
    answer = Answer(FORM, __version__, command, tuple(instruments), told)
    written: bytes = adapter_of(type(told)).dump_json(answer, indent=1)
    return written.decode("utf-8") + "\n"


def adapter_of(record: Any) -> TypeAdapter[Any]:
    """What writes answers that tell such a record, and says which shape they have."""
    return TypeAdapter(Answer.__class_getitem__(record))  # type: ignore[attr-defined]  # every Generic has it


def plain(value: Any) -> Plain:
    """A figure's value as JSON holds it: a number, words, yes or no; `null` for anything else."""
    if isinstance(value, bool | str) or value is None:
        return value
    if hasattr(value, "item"):
        value = value.item() if value.ndim == 0 else None
    if isinstance(value, float):
        return twelve_digits(value)
    return value if isinstance(value, int | str | bool) else None
