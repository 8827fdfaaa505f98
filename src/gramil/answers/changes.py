"""What a change moves, as answers: of a description, of an input that was turned, of what was measured."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from gramil.answers.answer import Plain, plain
from gramil.answers.verdicts import FindingAnswer, MadeAnswer, findings_answer, made_answer
from gramil.change.foreman import Part, foremans_note
from gramil.change.made import Judged
from gramil.change.shift import Carried, Move, Shift
from gramil.description.base import keys_of
from gramil.formatter import formatter_of
from gramil.graph import Figures
from gramil.prints.pages import words_of
from gramil.prints.papers import Paper


@dataclass(frozen=True)
class InputAnswer:
    """An input that was changed: its keys in the description, and how it was and is shown."""

    name: str
    keys: tuple[str, ...]
    old: str
    new: str


@dataclass(frozen=True)
class MoveAnswer:
    """A dimension that moved, at the address where it moved most: its values in `unit`, by how much, how many of its
    figures moved, and what it is in words.
    """

    part: str
    name: str
    address: str
    what: str
    old: Plain
    new: Plain
    difference: float
    unit: str
    rows: int


@dataclass(frozen=True)
class ShiftAnswer:
    """All that differs: inputs, features on the body (`by` mm toward the tail), moves by part with the biggest
    first, how many more are within the tolerance, findings that come and go, papers no longer true, finished work
    that is no longer right (`null` without a record of it), and the foreman's note in words.
    """

    inputs: tuple[InputAnswer, ...]
    features: tuple[Carried, ...]
    moves: tuple[MoveAnswer, ...]
    folded: int
    came: tuple[FindingAnswer, ...]
    went: tuple[FindingAnswer, ...]
    papers: tuple[Paper, ...]
    made: tuple[MadeAnswer, ...] | None
    note: tuple[Part, ...]


@dataclass(frozen=True)
class Turn:
    """An input turned until a figure is met: the input's `value` in `unit`, the figure as it then is, and what else
    moves.
    """

    key: str
    value: float
    unit: str
    shown: str
    address: str
    figure: str
    shift: ShiftAnswer


def shift_answer(found: Shift, before: Figures, after: Figures, judged: Sequence[Judged] | None) -> ShiftAnswer:
    """A shift with its words; `judged` is the verdict on the finished work, None if there is no record of it."""
    old, new = formatter_of(before), formatter_of(after)
    inputs = (InputAnswer(name, tuple(keys_of(name)), old.text(name), new.text(name)) for name in found.inputs)
    note = foremans_note(found, before, after, judged) if found.inputs else ()
    return ShiftAnswer(
        tuple(inputs),
        found.features,
        moves_answer(found.moves, before, after),
        found.folded,
        findings_answer(found.came, new),
        findings_answer(found.went, old),
        found.papers,
        None if judged is None else made_answer(judged, new.first),
        note,
    )


def moves_answer(moves: Iterable[Move], before: Figures, after: Figures) -> tuple[MoveAnswer, ...]:
    """Moves with the words of each dimension."""
    old, new = formatter_of(before), formatter_of(after)
    return tuple(
        MoveAnswer(
            each.part,
            each.name,
            each.address,
            words_of(each.address, new if each.new is not None else old),
            plain(each.old),
            plain(each.new),
            each.difference,
            each.unit or "",
            each.rows,
        )
        for each in moves
    )
