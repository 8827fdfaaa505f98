"""Finished work that is lost, and what that holds up: the work that depends on it, until it is made anew."""

from collections.abc import Iterator, Mapping, Sequence

from gramil.change.made import Judged
from gramil.change.made_rows import operations, pieces
from gramil.change.made_words import verdict_line
from gramil.measure import LengthUnit
from gramil.shop.operations import Operation, Work


def closed_by(work: Work, done: Mapping[str, object], judged: Sequence[Judged]) -> Mapping[str, Judged]:
    """For each operation not done that depends on something lost, what that is.

    It depends on it if it works on the lost piece, or comes after work done on it; later work that is done
    and right breaks the chain.
    """
    lost = {each.operation: each for each in judged if each.standing == "lost" or _parted(each)}
    causes = {
        each.piece: each for each in reversed(judged) if each.standing == "lost" and each.piece and not each.along
    }
    found: dict[str, Judged] = {}
    for name, each in work.operations.items():
        if name not in done:
            cause = next(iter((*_on_pieces(each, causes), *_before(each, done, lost, found))), None)
            if cause is not None:
                found[name] = causes.get(cause.piece, cause)
    return found


def hangs_on(
    operation: str, work: Work, done: Mapping[str, object], judged: Sequence[Judged], first: LengthUnit
) -> str:
    """The lost work on which an open operation depends, in a sentence; empty if there is none."""
    lost = closed_by(work, done, judged).get(operation)
    return "" if lost is None else f"Lost, and this hangs on it: {lost.what}: {verdict_line(lost, first)}."


def _parted(each: Judged) -> bool:
    """Whether it is joined to something that is lost."""
    return each.standing == "rework" and not each.address


def _on_pieces(each: Operation, causes: Mapping[str, Judged]) -> Iterator[Judged]:
    """What is lost on the pieces that an operation works on."""
    row = operations().get(each.name)
    for piece in (row.piece, *row.joins) if row else ():
        if piece and pieces()[piece].what in causes:
            yield causes[pieces()[piece].what]


def _before(
    each: Operation, done: Mapping[str, object], lost: Mapping[str, Judged], closed: Mapping[str, Judged]
) -> Iterator[Judged]:
    """What is lost of the work directly before it, or holds that up."""
    for name in each.after:
        if name in closed:
            yield closed[name]
        elif name in done and name in lost:
            yield lost[name]


def reworked_before(each: Operation, judged: Sequence[Judged]) -> Iterator[Judged]:
    """The work directly before an operation that must be reworked first."""
    yield from (one for one in judged if one.operation in each.after and one.standing == "rework" and one.address)
