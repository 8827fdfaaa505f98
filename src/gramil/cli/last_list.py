"""The list of open work that was shown last: kept beside the store, so that `gramil done 3` means its third line."""

import json
from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import asdict, dataclass
from pathlib import Path

import click

from gramil.faults import MakersFault
from gramil.now.open_now import InstrumentNow
from gramil.store.opening import Store
from gramil.store.undo import last_change

ENDING = ".listed.json"
TODAY = "today"
"""In the place of numbers: every line of the list."""


@dataclass(frozen=True)
class Line:
    """One line of the list: an operation that was open on an instrument, and whether it has a sheet."""

    instrument: str
    operation: str
    what: str
    sheet: bool


@dataclass(frozen=True)
class Listed:
    """The list as it was shown; `change` is the record's last change at that time, or a later one of the maker's own on
    this command line.
    """

    change: int
    lines: tuple[Line, ...]


def lines_of(found: Sequence[InstrumentNow]) -> tuple[Line, ...]:
    """The open work over all instruments, in the order in which it is shown."""
    return tuple(
        Line(one.name, each.operation.name, each.operation.what, bool(each.operation.sheet or each.operation.by))
        for one in found
        for each in one.open
    )


def keep_list(store: Store, lines: Sequence[Line]) -> None:
    """Keep a list beside the store; where nothing can be written there, numbers do not work, and the list is shown."""
    kept = {"change": _last(store), "lines": [asdict(each) for each in lines]}
    try:
        text = json.dumps(kept, indent=0, ensure_ascii=False) + "\n"
        beside(store.path).write_text(text, encoding="utf-8", newline="")
    except OSError:
        return


def lines_meant(store: Store, numbers: Sequence[str]) -> tuple[Line, ...]:
    """The lines of these numbers, or all of them for `today`.

    If the record has changed since the list was shown, the operations are named and asked about. Raises MakersFault
    for an unknown number, and if no list was shown; Abort if the answer is no.
    """
    listed = _listed(store)
    wanted = range(1, len(listed.lines) + 1) if numbers == (TODAY,) else [_number(each, listed) for each in numbers]
    meant = tuple(listed.lines[number - 1] for number in wanted)
    if listed.change != _last(store):
        named = "; ".join(f"{each.instrument}, {each.what}" for each in meant)
        click.confirm(f"The record has changed since that list. Is it this: {named}?", abort=True)
    return meant


def still_listed(store: Store, more: Sequence[Line] = ()) -> int:
    """The change just made was the maker's own, by number: the list that was shown goes on counting, with more lines
    at its end. Gives the number of the first of these.
    """
    lines = _listed(store).lines
    keep_list(store, (*lines, *more))
    return len(lines) + 1


def not_listed(store: Store, lines: Sequence[Line]) -> tuple[Line, ...]:
    """Those of the lines whose work the list that was shown does not have."""
    shown = {(each.instrument, each.operation) for each in _listed(store).lines}
    return tuple(each for each in lines if (each.instrument, each.operation) not in shown)


@contextmanager
def list_goes_on(store: Store) -> Iterator[None]:
    """What is changed within is the maker's own: a list that counted before it goes on counting after it."""
    before = _last(store)
    yield
    try:
        listed = _listed(store)
    except MakersFault:  # none was shown
        return
    if listed.change == before:
        keep_list(store, listed.lines)


def beside(store: Path) -> Path:
    """Where the list of a store is kept: by its whole name, since a copy of it may differ in its ending alone."""
    return store.with_name(store.name + ENDING)


def _listed(store: Store) -> Listed:
    try:
        kept = json.loads(beside(store.path).read_text(encoding="utf-8"))
        return Listed(int(kept["change"]), tuple(Line(**each) for each in kept["lines"]))
    except (OSError, ValueError, LookupError, TypeError):
        raise MakersFault.of("no list was shown", remedy="ask gramil now, then name a number of its list") from None


def _number(written: str, listed: Listed) -> int:
    number, last = int(written) if written.isdecimal() else 0, len(listed.lines)
    if not 1 <= number <= last:
        has = f"the list that was shown has 1 to {last}" if last else "the list that was shown has nothing open"
        raise MakersFault.of(f"there is no line {written}", has, "ask gramil now for the list of this moment")
    return number


def _last(store: Store) -> int:
    change = last_change(store)
    return 0 if change is None else change.id
