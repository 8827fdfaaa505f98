"""Which operation a measurement belongs to: the one it was noted with, or the last one done by then that fixes its
figure; if none was, the first that did.

An operation is judged by its own readings, against what its sheet said: with earlier readings, without later ones.
"""

from collections.abc import Mapping, Sequence
from functools import cache

from gramil.address import parse_address
from gramil.change.made_rows import operations
from gramil.graph import Figures, Pin
from gramil.shop.operations import Work, ordered

Pins = Mapping[str, Pin]
Later = Mapping[str, frozenset[str]]
"""For each operation, every one that waits for it, through any chain."""


def later_in(work: Work, figures: Figures) -> Later:
    """What waits for what on the instrument with these figures, whose keys are base values."""
    if not any(each.after_where for each in work.operations.values()):
        return work.later
    return ordered(work, lambda key: figures.base.get(key.replace(".", "_"))).later


def owners(pins: Pins, done: Sequence[str], later: Later) -> Mapping[str, str]:
    """For each measured address the operation that it judges, or nothing if no operation fixes it."""
    return {address: _owner(address, pin, done, later) for address, pin in pins.items()}


def _owner(address: str, pin: Pin, done: Sequence[str], later: Later) -> str:
    fixing = _fixing(parse_address(address)[0])
    if pin.at in fixing:
        return pin.at
    able = [name for name in later if name in fixing and name in done]
    before = [name for name in able if pin.at in later[name]]
    if before:
        return before[0]
    # what was read before a neck was carved says nothing of that neck, though its figure is one that carving fixes
    by_then = done[: _done_by_then(pin, done)]
    return next((name for name in able if name in by_then), able[-1] if able else "")


def _done_by_then(pin: Pin, done: Sequence[str]) -> int:
    """How many of the operations, in the order in which they were done, were done when a figure was read."""
    last = pin.at or pin.since
    if last in done:
        return done.index(last) + 1
    return 0 if last == "" else len(done)


@cache
def _fixing(figure: str) -> frozenset[str]:
    """The operations that fix a figure."""
    return frozenset(name for name, row in operations().items() if any(each.figure == figure for each in row.fixes))


def up_to(name: str, pins: Pins, done: Sequence[str], later: Later, *, own: bool) -> Pins:
    """The measurements by which an operation is judged: the last of each figure that does not belong to later work.

    Its `own` are included or not. What it is to bring about is never an earlier reading, as on its sheet.
    """
    after = later.get(name, frozenset())
    anew = operations()[name].brings_about if name in operations() else frozenset()
    found: dict[str, Pin] = {}
    for address, latest in pins.items():
        for pin in (*latest.before, latest):
            owner = _owner(address, pin, done, later)
            if own if owner == name else owner not in after and parse_address(address)[0] not in anew:
                found[address] = pin
    return found
