"""The work ahead as tasks for a plan: pieces of working time with what each waits for, all in minutes from the
start.
"""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from gramil.now.air_spans import Luck, spans
from gramil.now.hours import Hours, sessions
from gramil.now.open_now import Conditions, InstrumentState
from gramil.shop.operations import Operation

PIECE = 60
"""Minutes of hands after which work that needs no one go may be left for something else."""
LONGEST_CURE_COUNTED = 1440
"""How many minutes of a cure weigh in a plan's measure at most: weeks of playing in would outweigh all else."""
NEVER = 10**7
"""Minutes that no plan reaches."""
Span = tuple[int, int]


@dataclass(frozen=True)
class Task:
    """One uninterrupted piece of work: `cure` follows it; it starts within one of `starts`, once `before` have cured.

    `before` are the indices of other tasks; `way` is the longest way from here to the instrument's end, in minutes.
    """

    instrument: str
    operation: Operation
    piece: tuple[int, int]
    minutes: int
    cure: int
    before: tuple[int, ...]
    starts: tuple[Span, ...]
    uses: tuple[str, ...]
    takes: tuple[str, ...]
    frees: tuple[str, ...]
    way: float

    @property
    def weight(self) -> float:
        """Hours of work and cure: the task's weight in a plan's measure."""
        return (self.minutes + min(self.cure, LONGEST_CURE_COUNTED)) / 60.0


@dataclass(frozen=True)
class Hold:
    """A jig that an instrument holds at the start: until a minute, or until the task that frees it (None)."""

    kind: str
    instrument: str
    until: int | None


@dataclass(frozen=True)
class Weeks:
    """What is to be planned: tasks, sessions of hands, the last minute, jigs and who holds them at the start."""

    start: datetime
    tasks: tuple[Task, ...]
    sessions: tuple[Span, ...]
    end: int
    jigs: Mapping[str, int]
    holds: tuple[Hold, ...]


def weeks_of(
    instruments: Sequence[InstrumentState], shop: Conditions, hours: Hours, days: int, luck: Luck | None = None
) -> Weeks:
    """Everything that is to be done on the instruments, from the next whole minute on, as tasks.

    `luck` is how the days turn out beyond what is known of the air; without it, they are as to be expected.
    """
    shop = replace(shop, now=_on_the_minute(shop.now))
    start, end = shop.now, days * 1440
    tasks: list[Task] = []
    for one in instruments:
        tasks += _tasks(one, shop, end, len(tasks), luck)
    holds = tuple(hold for one in instruments for hold in _holds(one, start))
    return Weeks(start, tuple(tasks), sessions(hours, start, days), end, _jigs(shop, holds), holds)


def _on_the_minute(moment: datetime) -> datetime:
    """The moment itself if it is a whole minute, else the next one: a plan's times are read off a clock."""
    whole = moment.replace(second=0, microsecond=0)
    return whole if whole == moment else whole + timedelta(minutes=1)


def _jigs(shop: Conditions, holds: Sequence[Hold]) -> dict[str, int]:
    """How many of each kind there are: as many as the shop lists, and never fewer than are held."""
    held = Counter(hold.kind for hold in holds if hold.until is None or hold.until > 0)
    return {kind: max(1, shop.jigs.get(kind, 1), held[kind]) for kind in {*shop.jigs, *held}}


def _tasks(one: InstrumentState, shop: Conditions, end: int, first: int, luck: Luck | None) -> Iterator[Task]:
    """An instrument's tasks; `first` is the index of its first one."""
    last_piece: dict[str, int] = {}
    place = first
    for each in one.to_do:
        before = tuple(last_piece[name] for name in each.after if name in last_piece)
        pieces = _pieces(each)
        for number, minutes in enumerate(pieces):
            is_last = number == len(pieces) - 1
            yield Task(
                one.name,
                each,
                (number + 1, len(pieces)),
                minutes,
                round(60 * each.clamp) if is_last else 0,
                before if number == 0 else (place - 1,),
                _starts(each, one, shop, minutes, end, luck) if number == 0 else ((0, NEVER),),
                (*each.uses, part_of(one.name, each)),
                each.takes if number == 0 else (),
                each.frees if is_last else (),
                one.way_to_go[each.name] - sum(pieces[:number]),
            )
            place += 1
        last_piece[each.name] = place - 1


def part_of(instrument: str, each: Operation) -> str:
    """The part that an operation works on, treated as a jig of which there is one: what is clamped cannot be worked
    on.
    """
    return f"{instrument}: {each.part}"


def in_one_go(each: Operation) -> bool:
    """Whether an operation, once begun, is not left until it is done: what may not be, holds a jig, or is short."""
    return each.one_go or bool(each.uses) or each.hands <= PIECE * 1.5


def _pieces(each: Operation) -> tuple[int, ...]:
    """The pieces that an operation may be split into, in minutes."""
    if in_one_go(each):
        return (each.hands,)
    count = -(-each.hands // PIECE)
    return tuple(each.hands // count + (place < each.hands % count) for place in range(count))


def _released(each: Operation, one: InstrumentState, now: datetime) -> int:
    """The minute at which everything done before it has cured."""
    cured = [
        one.done[name] + timedelta(hours=one.work.operations[name].clamp) for name in each.after if name in one.done
    ]
    return max([0, *(_minute(moment, now) for moment in cured)])


def _starts(
    each: Operation,
    one: InstrumentState,
    shop: Conditions,
    minutes: int,
    end: int,
    luck: Luck | None,
) -> tuple[Span, ...]:
    """The spans of minutes in which it may start: what it needs cured, wood settled, air in its band for long enough.

    What depends on something lost, or wants wood that is not on hand, may not start at all.
    """
    if each.name in one.lost or each.name in one.lacking:
        return ()
    settled = [
        _settles(piece.settled, piece.likely, shop.now) for part in each.wood for piece in one.wood.get(part, ())
    ]
    earliest = max([_released(each, one, shop.now), *settled])
    if not each.air:
        return ((earliest, NEVER),)
    needed = minutes + round(60 * each.air_hours)
    air = shop.air_for(each.air)
    if air is None:
        return ()
    open_spans = spans(air, shop.bands[each.air], shop.now, needed, end, luck)
    found = ((max(earliest, begin), last) for begin, last in open_spans)
    return tuple((begin, last) for begin, last in found if begin <= last and begin <= end)


def _settles(is_settled: bool, likely: datetime | None, now: datetime) -> int:
    if is_settled:
        return 0
    return NEVER if likely is None else _minute(likely, now)


def _holds(one: InstrumentState, now: datetime) -> Iterator[Hold]:
    operations = one.work.operations
    freeing = {kind: each for each in operations.values() for kind in each.frees}
    for name, moment in one.done.items():
        each = operations.get(name)
        if each is None:
            continue
        over = _minute(moment + timedelta(hours=each.clamp), now)
        yield from (Hold(kind, one.name, over) for kind in (*each.uses, part_of(one.name, each)) if over > 0)
        for kind in each.takes:
            last = freeing.get(kind)
            if last is None or last.name not in one.done:
                yield Hold(kind, one.name, None)
            else:
                yield Hold(kind, one.name, _minute(one.done[last.name] + timedelta(hours=last.clamp), now))


def _minute(moment: datetime, start: datetime) -> int:
    return -int(-((moment - start).total_seconds()) // 60)
