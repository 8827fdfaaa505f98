"""What readings of finished work mean, as answers."""

from dataclasses import dataclass

from gramil.change.old_board import OldBoard, OldSlot
from gramil.change.old_board_report import old_board_report
from gramil.change.set_up_heights import Heights, NeckSet
from gramil.change.set_up_moves import Moves
from gramil.change.set_up_readings import NoteReadback, SetUpReadback
from gramil.change.set_up_report import report as set_up_report
from gramil.change.slot_causes import Cause
from gramil.change.slot_readings import SlotReading, SlotsReadback
from gramil.change.slot_report import cause_sentence
from gramil.formatter import Formatter
from gramil.measure import LengthUnit


@dataclass(frozen=True)
class SlotsRead:
    """Readings of cut slots, in mm and cents: each slot, the likely cause with its sentence, and how far nut and saddle
    are best moved for the slots as they are.
    """

    slots: tuple[SlotReading, ...]
    cause: str
    says: str
    nut_move: float
    saddle_move: float
    scale: float
    scale_cut: float
    cents_before: float
    cents_after: float


@dataclass(frozen=True)
class OldBoardRead:
    """An old board read from its frets alone, in mm and cents: its rule and scale, whether the other rule is ruled out,
    where the nut line lies, each slot, what each way of mending leaves (cents RMS), and the report in words.
    """

    rule: str
    told_apart: bool
    scale: float
    scale_within: float
    nut_line: float
    nut_within: float
    slots: tuple[OldSlot, ...]
    nut_move: float
    saddle_from_nut: float
    cents_now: float
    cents_nut_moved: float
    cents_recut: float
    to_recut: tuple[int, ...]
    report: tuple[str, ...]


@dataclass(frozen=True)
class StringRead:
    """One string of a strung instrument: heights and what they need, its notes in cents, and moves of break points."""

    string: int
    heights: Heights
    notes: tuple[NoteReadback, ...]
    moves: Moves | None


@dataclass(frozen=True)
class SetUpRead:
    """Readings of a strung instrument, in mm and cents, and the report in words, line by line in the order of the
    work.
    """

    relief: float
    relief_wanted: float
    relief_most: float
    rod: str
    strings: tuple[StringRead, ...]
    neck: NeckSet | None
    report: tuple[str, ...]


def slots_read(found: SlotsReadback, formatter: Formatter) -> SlotsRead:
    """The readings of slots with the cause in words."""
    cause: Cause = found.cause
    return SlotsRead(
        found.slots,
        cause.name,
        cause_sentence(cause, formatter),
        found.nut_move,
        found.saddle_move,
        found.scale,
        found.scale_cut,
        found.before,
        found.after,
    )


def old_board_read(found: OldBoard, unit: LengthUnit) -> OldBoardRead:
    """The readings of an old board with the report in words; `within` is two standard deviations."""
    best, ways = found.best, found.ways
    return OldBoardRead(
        best.rule,
        found.told_apart,
        best.scale,
        2 * best.scale_within,
        best.nut_line,
        2 * best.nut_within,
        found.slots,
        ways.nut_move,
        ways.scale,
        ways.as_found,
        ways.nut_moved,
        ways.recut,
        ways.to_recut,
        tuple(filter(None, old_board_report(found, unit))),
    )


def set_up_read(found: SetUpReadback, formatter: Formatter) -> SetUpRead:
    """The readings of a strung instrument with the report."""
    strings = (StringRead(each.string, each.heights, each.notes, each.moves) for each in found.strings)
    return SetUpRead(
        found.relief,
        found.relief_wanted,
        found.relief_most,
        found.rod,
        tuple(strings),
        found.neck,
        tuple(filter(None, set_up_report(found, formatter))),
    )
