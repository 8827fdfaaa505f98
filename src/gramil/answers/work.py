"""What can be done now, the weeks ahead, and what an instrument costs, as answers."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from gramil.answers.verdicts import MadeAnswer, made_answer
from gramil.now.blocks import Block, label
from gramil.now.costs import Cost, Material, PartHours
from gramil.now.open_now import Closed, Closes, InstrumentNow, InstrumentState, Open
from gramil.now.states import Bench


@dataclass(frozen=True)
class PlaceAnswer:
    """The air of a place as last read (%, C), least and most humidity of its last day, and whether that is too old."""

    name: str
    read_at: datetime
    humidity: float
    temperature: float
    day: tuple[float, float]
    old: bool


@dataclass(frozen=True)
class OpenAnswer:
    """An operation that can be done now, with the minutes of work that it takes and the name of its sheet."""

    operation: str
    what: str
    minutes: float
    sheet: str
    prefer: tuple[str, ...]
    remarks: tuple[str, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True)
class ClosedAnswer:
    """An operation that must wait: for what (`by`), why, and when it opens, `null` if nobody can say."""

    operation: str
    what: str
    by: Closes
    why: str
    opens: datetime | None


@dataclass(frozen=True)
class InstrumentAnswer:
    """One instrument's work: how many operations are done of all, what is open, best first, what is closed, sheets that
    are stale and why, and finished work that is no longer right.
    """

    name: str
    done: int
    all: int
    open: tuple[OpenAnswer, ...]
    closed: tuple[ClosedAnswer, ...]
    stale: dict[str, str]
    made: tuple[MadeAnswer, ...]


@dataclass(frozen=True)
class Now:
    """The work at a moment, the air of each place, and what could not be read."""

    at: datetime
    places: tuple[PlaceAnswer, ...]
    instruments: tuple[InstrumentAnswer, ...]
    not_read: tuple[str, ...]


@dataclass(frozen=True)
class BlockAnswer:
    """A stretch of work, and until when what it glues then cures."""

    instrument: str
    operation: str
    what: str
    begins: datetime
    ends: datetime
    cures: datetime | None


@dataclass(frozen=True)
class Weeks:
    """The weeks ahead: stretches of work in order of time, and what else is said of the plan."""

    begins: datetime
    blocks: tuple[BlockAnswer, ...]
    says: tuple[str, ...]


@dataclass(frozen=True)
class CostAnswer:
    """Hours by part, materials, money for an hour, for the work, for the materials and in all; `without` are materials
    of which no cost is noted, so that they are not in the total.
    """

    hours: tuple[PartHours, ...]
    materials: tuple[Material, ...]
    rate: float
    work: float
    material: float
    total: float
    money: str
    without: tuple[str, ...]


def now_answer(bench: Bench, found: Sequence[InstrumentNow]) -> Now:
    """The whole page of `gramil now`, what waits for other work too."""
    places = (
        PlaceAnswer(each.name, each.read_at, each.humidity, each.temperature, each.day, each.old)
        for each in bench.shop.places.values()
    )
    pairs = zip(found, bench.instruments, strict=True)
    return Now(bench.shop.now, tuple(places), tuple(_instrument(*each) for each in pairs), bench.faults)


def _instrument(one: InstrumentNow, state: InstrumentState) -> InstrumentAnswer:
    return InstrumentAnswer(
        one.name,
        one.done,
        one.all,
        tuple(map(_open, one.open)),
        tuple(map(_closed, one.closed)),
        dict(state.stale),
        made_answer(state.judged, state.unit),
    )


def _open(each: Open) -> OpenAnswer:
    operation = each.operation
    return OpenAnswer(
        operation.name,
        operation.what,
        operation.hands,
        operation.sheet,
        each.prefer,
        each.remarks,
        tuple(operation.caution),
    )


def _closed(each: Closed) -> ClosedAnswer:
    return ClosedAnswer(each.operation.name, each.operation.what, each.by, each.why, each.when)


def weeks_answer(begins: datetime, found: Iterable[Block], says: Iterable[str]) -> Weeks:
    """The plan with the sentences that stand under it."""
    blocks = (
        BlockAnswer(each.instrument, each.operation.name, label(each), each.begins, each.ends, each.cures)
        for each in found
    )
    return Weeks(begins, tuple(blocks), tuple(filter(None, says)))


def cost_answer(cost: Cost, money: str) -> CostAnswer:
    """The cost with its sums."""
    return CostAnswer(
        cost.hours, cost.materials, cost.rate, cost.work, cost.material, cost.total, money, tuple(cost.without)
    )
