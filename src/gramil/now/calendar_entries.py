"""A plan as calendar entries: work that needs the maker's hands, and cures that do not."""

from collections.abc import Iterable, Iterator
from datetime import datetime
from typing import TypedDict

from gramil.now.blocks import Block, label

CALENDAR = "Gramil weeks"
"""The calendar's title. Entries are known by it and by their names: a plan brought in again replaces the old one."""


class CalendarEntry(TypedDict):
    """One entry by the clock on the wall; `busy` if it needs the maker's hands."""

    name: str
    begins: datetime
    ends: datetime
    summary: str
    description: str
    category: str
    busy: bool


def calendar_entries(found: Iterable[Block]) -> Iterator[CalendarEntry]:
    """Each block as an entry, and its cure as another."""
    for block in found:
        whose, name = block.instrument, f"{block.instrument} {block.operation.name} {block.part[0]}"
        notes, said = "\n".join(block.operation.caution), f"{block.instrument}: {label(block)}"
        yield CalendarEntry(
            name=name,
            begins=block.begins,
            ends=block.ends,
            summary=said,
            description=notes,
            category=whose,
            busy=True,
        )
        if block.cures:
            cure = f"{whose}: cures ({block.operation.what})"
            yield CalendarEntry(
                name=f"{name} cure",
                begins=block.ends,
                ends=block.cures,
                summary=cure,
                description="",
                category=whose,
                busy=False,
            )
