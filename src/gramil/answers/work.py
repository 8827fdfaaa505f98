"""What can be done now, the weeks ahead, and what an instrument costs, as answers."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from gramil.answers.verdicts import MadeTold, made_told
from gramil.now.blocks import Block, label
from gramil.now.costs import Cost, Material, PartHours
from gramil.now.open_now import Closed, Closes, InstrumentNow, InstrumentState, Open
from gramil.now.states import Bench


@dataclass(frozen=True)
class PlaceTold:
    """The air of a place as last read (%, C), least and most humidity of its last day, and whether that is too old."""

    name: str
    read_at: datetime
    humidity: float
    temperature: float
    day: tuple[float, float]
    old: bool


@dataclass(frozen=True)
class OpenTold:
    """An operation that can be done now, with the minutes of work that it takes and the name of its sheet."""

    operation: str
    what: str
    minutes: float
    sheet: str
    prefer: tuple[str, ...]
    remarks: tuple[str, ...]
    cautions: tuple[str, ...]


@dataclass(frozen=True)
class ClosedTold:
    """An operation that must wait: for what (`by`), why, and when it opens, `null` if nobody can say."""

    operation: str
    what: str
    by: Closes
    why: str
    opens: datetime | None


@dataclass(frozen=True)
class InstrumentTold:
    """One instrument's work: how many operations are done of all, what is open, best first, what is closed, sheets that
    are stale and why, and finished work that is no longer right.
    """

    name: str
    done: int
    all: int
    open: tuple[OpenTold, ...]
    closed: tuple[ClosedTold, ...]
    stale: dict[str, str]
    made: tuple[MadeTold, ...]


@dataclass(frozen=True)
class Now:
    """The work at a moment, the air of each place, and what could not be read."""

    at: datetime
    places: tuple[PlaceTold, ...]
    instruments: tuple[InstrumentTold, ...]
    not_read: tuple[str, ...]


@dataclass(frozen=True)
class BlockTold:
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
    blocks: tuple[BlockTold, ...]
    says: tuple[str, ...]


@dataclass(frozen=True)
class CostTold:
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


def now_told(bench: Bench, found: Sequence[InstrumentNow]) -> Now:
    """The whole page of `gramil now`, what waits for other work too."""
    places = (
        PlaceTold(each.name, each.read_at, each.humidity, each.temperature, each.day, each.old)
        for each in bench.shop.places.values()
    )
    pairs = zip(found, bench.instruments, strict=True)
    return Now(bench.shop.now, tuple(places), tuple(_instrument(*each) for each in pairs), bench.faults)


def _instrument(one: InstrumentNow, state: InstrumentState) -> InstrumentTold:
    return InstrumentTold(
        one.name,
        one.done,
        one.all,
        tuple(map(_open, one.open)),
        tuple(map(_closed, one.closed)),
        dict(state.stale),
        made_told(state.judged, state.unit),
    )


def _open(each: Open) -> OpenTold:
    operation = each.operation
    return OpenTold(
        operation.name,
        operation.what,
        operation.hands,
        operation.sheet,
        each.prefer,
        each.remarks,
        tuple(operation.caution),
    )


def _closed(each: Closed) -> ClosedTold:
    return ClosedTold(each.operation.name, each.operation.what, each.by, each.why, each.when)


def weeks_told(begins: datetime, found: Iterable[Block], says: Iterable[str]) -> Weeks:
    """The plan with the sentences that stand under it."""
    blocks = (
        BlockTold(each.instrument, each.operation.name, label(each), each.begins, each.ends, each.cures)
        for each in found
    )
    return Weeks(begins, tuple(blocks), tuple(filter(None, says)))


def cost_told(cost: Cost, money: str) -> CostTold:
    """The cost with its sums."""
    return CostTold(
        cost.hours, cost.materials, cost.rate, cost.work, cost.material, cost.total, money, tuple(cost.without)
    )
