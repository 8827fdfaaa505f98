"""Whether the day on which work is noted as done fits the days of what comes before it and of what waits for it."""

from collections.abc import Iterable, Iterator, Mapping
from datetime import datetime, timedelta

from gramil.shop.made_file import Made
from gramil.shop.operations import Operation, Work
from gramil.shop.operations_done import DoneOperation


def days_of_record(made: Made, now: datetime) -> Mapping[str, datetime]:
    """When each operation of a record in a file was done, by the clock of `now`; one without a day is left out."""
    return {each.operation: _by_clock(datetime.fromisoformat(each.day), now) for each in made.done if each.day}


def days_of_operations(done: Iterable[DoneOperation], now: datetime) -> Mapping[str, datetime]:
    """When each operation that the store has as done was done, by the clock of `now`."""
    return {each.operation: _by_clock(datetime.fromisoformat(each.at), now) for each in done}


def _by_clock(moment: datetime, now: datetime) -> datetime:
    return moment.astimezone(now.tzinfo) if moment.tzinfo else moment.replace(tzinfo=now.tzinfo)


def out_of_order(work: Work, done: Mapping[str, datetime], operation: str, moment: datetime) -> str:
    """What speaks against an operation of that moment, in a sentence; empty where nothing does.

    By days: it should not lie before the day on which something that comes before it was done, or was over (its clamps
    off), nor after the day on which something that waits for it was done. `done` has moments by the clock of `moment`.
    Of several the one is told that leaves the least room.
    """
    if operation not in work.operations:
        return ""
    early = max(_not_yet(work, done, operation, moment), default=None)
    if early is not None:
        return f"{moment:%Y-%m-%d} is before {early[1]}, and this comes after it"
    late = min(_past(work, done, operation, moment), default=None)
    return "" if late is None else f"{moment:%Y-%m-%d} is after {late[1]}, and that comes after this"


def before_it(moments: Iterable[str], moment: datetime) -> str:
    """What speaks against taking back, or putting right, at a moment what was noted at others (ISO 8601), in a
    sentence; empty where nothing does. By days, as `out_of_order` goes.
    """
    noted = max((_by_clock(datetime.fromisoformat(each), moment) for each in moments), default=moment)
    return f"{moment:%Y-%m-%d} is before this was noted, {noted:%Y-%m-%d}" if moment.date() < noted.date() else ""


def _not_yet(
    work: Work, done: Mapping[str, datetime], operation: str, moment: datetime
) -> Iterator[tuple[datetime, str]]:
    """Each operation that comes before one and was not over by a moment: when it was, and the same in words."""
    for name, at in done.items():
        if operation not in work.later.get(name, ()):
            continue
        each = work.operations[name]
        over = at + timedelta(hours=each.clamp)
        if at.date() > moment.date():
            yield over, _said(each, at, "was done")
        elif over.date() > moment.date():
            yield over, _said(each, over, "was over")


def _past(work: Work, done: Mapping[str, datetime], operation: str, moment: datetime) -> Iterator[tuple[datetime, str]]:
    """Each operation that waits for one and was done before the day of a moment: when, and the same in words."""
    for name, at in done.items():
        if name in work.later[operation] and at.date() < moment.date():
            yield at, _said(work.operations[name], at, "was done")


def _said(each: Operation, at: datetime, how: str) -> str:
    return f'the day when "{each.what}" {how}, {at:%Y-%m-%d}'
