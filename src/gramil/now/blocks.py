"""A plan for the maker to read: blocks of work by the clock, the pieces of one operation joined, and their cures."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import datetime, timedelta

from gramil.now.plan import Plan
from gramil.now.tasks import Weeks
from gramil.shop.operations import Operation


@dataclass(frozen=True)
class Block:
    """Work on one operation from one moment to another; `cures` is when it has cured, if this block finishes it.

    `part` says which of how many blocks of that operation it is.
    """

    instrument: str
    operation: Operation
    begins: datetime
    ends: datetime
    cures: datetime | None
    part: tuple[int, int]


def blocks(plan: Plan, weeks: Weeks) -> tuple[Block, ...]:
    """The plan's blocks, the first first."""
    found: list[Block] = []
    for place, start in sorted(plan.starts.items(), key=lambda each: each[1]):
        task = weeks.tasks[place]
        begins = weeks.start + timedelta(minutes=start)
        ends = begins + timedelta(minutes=task.minutes)
        cures = ends + timedelta(minutes=task.cure) if task.cure and task.piece[0] == task.piece[1] else None
        block = Block(task.instrument, task.operation, begins, ends, cures, (1, 1))
        last = found[-1] if found else None
        if last and last.ends == begins and _same(last, block):
            found[-1] = replace(last, ends=ends, cures=cures)
        else:
            found.append(block)
    return tuple(_numbered(found))


def _same(one: Block, other: Block) -> bool:
    return one.instrument == other.instrument and one.operation.name == other.operation.name


def _numbered(found: list[Block]) -> Iterator[Block]:
    for block in found:
        alike = [each for each in found if _same(each, block)]
        yield replace(block, part=(alike.index(block) + 1, len(alike)))


def label(block: Block) -> str:
    """The operation, and which part of it, if it is done in several."""
    number, count = block.part
    return block.operation.what + (f" ({number} of {count})" if count > 1 else "")
