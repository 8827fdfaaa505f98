"""Work noted as done and sheets written, as answers."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from gramil.answers.changes import MoveAnswer, moves_answer
from gramil.answers.record import UsedAnswer
from gramil.answers.verdicts import FindingAnswer, MadeAnswer, findings_answer, made_answer
from gramil.change.as_made import AsMade
from gramil.change.settled import Settled
from gramil.formatter import formatter_of
from gramil.graph import Figures
from gramil.prints.papers import Paper


@dataclass(frozen=True)
class ReadingAnswer:
    """A figure as measured, what was wanted, and by how much it is off, in `unit`; `cents` if it moves a fret."""

    address: str
    measured: float
    wanted: float
    difference: float
    unit: str
    cents: float | None


@dataclass(frozen=True)
class SettledAnswer:
    """A key of the description that a reading settles: its address, as described and as made, in `unit`; `null` as made
    if no value of it gives what was read.
    """

    key: str
    address: str
    described: float
    made: float | None
    unit: str
    reading: str


@dataclass(frozen=True)
class MeantAnswer:
    """What readings mean: each with how far it is off, what follows from them, findings that came and went, finished
    work that is no longer right, sheets to print again, and what they settle in the description.
    """

    readings: tuple[ReadingAnswer, ...]
    moves: tuple[MoveAnswer, ...]
    folded: int
    came: tuple[FindingAnswer, ...]
    went: tuple[FindingAnswer, ...]
    made: tuple[MadeAnswer, ...]
    sheets: tuple[Paper, ...]
    settles: tuple[SettledAnswer, ...]


@dataclass(frozen=True)
class AlsoDone:
    """A further operation noted with the same command: whose, its name, what it is in words, wood used up."""

    instrument: str
    operation: str
    what: str
    used_up: tuple[UsedAnswer, ...]


@dataclass(frozen=True)
class WorkNoted:
    """An operation noted as done: what it is in words, in which file or store it stands, what should have come before
    and is not noted, figures that were worth measuring and were not, why the instrument did not need it (empty where it
    does), on what lost work it hangs (empty: on none), what the readings mean (`null` without any), wood used up, what
    was left and is kept, whether the description was changed, and what was noted with it.
    """

    operation: str
    what: str
    kept_in: str
    not_done_before: tuple[str, ...]
    to_measure: tuple[str, ...]
    not_needed: str
    hangs_on: str
    meant: MeantAnswer | None
    used_up: tuple[UsedAnswer, ...]
    left: tuple[str, ...]
    description_changed: bool
    also: tuple[AlsoDone, ...] = ()


@dataclass(frozen=True)
class SheetAnswer:
    """A sheet written: whose and of which operation, its title, its file and how many bytes that has, whether it counts
    as handed out (`null` without a record), on what lost work it hangs (empty: on none), and what was measured at it,
    in words.
    """

    instrument: str
    operation: str
    title: str
    path: str
    bytes: int
    handed_out: bool | None
    hangs_on: str
    measured: tuple[str, ...]


def meant_answer(
    found: AsMade, before: Figures, after: Figures, again: Iterable[Paper], settles: Sequence[Settled]
) -> MeantAnswer:
    """What readings mean, from the figures before them to those after."""
    old, new = formatter_of(before), formatter_of(after)
    readings = (
        ReadingAnswer(each.address, each.measured, each.wanted, each.difference, each.unit, each.cents)
        for each in found.off
    )
    settled = (
        SettledAnswer(each.key, each.address, each.described, each.value, each.unit or "", each.reading)
        for each in settles
    )
    return MeantAnswer(
        tuple(readings),
        moves_answer(found.moves, before, after),
        found.folded,
        findings_answer(found.came, new),
        findings_answer(found.went, old),
        made_answer(found.judged, new.first),
        tuple(again),
        tuple(settled),
    )
