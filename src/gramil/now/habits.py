"""What a shop's record says of days lost and of parts begun anew; what is common weighs the less the more is noted."""

from collections.abc import Collection
from dataclasses import dataclass
from datetime import date, datetime, timedelta

from gramil.store.opening import Store

LOST = 0.08
"""The share of working days that are lost to something else: common practice, from memory."""
REWORK = 0.01
"""After so many of all operations, as a share, the part is begun anew: common practice, from memory."""
DAYS_COMMON, OPERATIONS_COMMON = 25, 100
"""The common shares weigh as much as so many working days, and as so many operations, of the shop's own."""
CLOSED = 10
"""So many working days in a row without a note are no lost days: the shop was closed, or kept no record."""
WORKDAYS = frozenset(range(5))
"""Monday to Friday."""


@dataclass(frozen=True)
class Noted:
    """The days on which anything was noted, how many operations were done (those taken back too), and how often a part
    was begun anew.
    """

    days: frozenset[date] = frozenset()
    operations: int = 0
    begun: int = 0


NOTHING = Noted()


def noted_in(store: Store) -> Noted:
    """What the record holds of them, of every instrument."""
    days = {datetime.fromisoformat(at).date() for (at,) in store.rows("SELECT at FROM change WHERE undoes IS NULL")}
    ((done,),) = store.rows("SELECT count(*) FROM done")
    ((begun, taken_back),) = store.rows("SELECT count(*), coalesce(sum(operations), 0) FROM begun_anew")
    return Noted(frozenset(days), done + taken_back, begun)


def days_lost(noted: Collection[date], working: frozenset[int] = WORKDAYS) -> tuple[int, int]:
    """Of the working days from the first to the last on which something was noted, how many there were, and on how many
    nothing was; where the shop was closed for weeks, neither.
    """
    if not noted:
        return 0, 0
    first, last = min(noted), max(noted)
    between = (first + timedelta(days=ahead) for ahead in range((last - first).days + 1))
    worked = lost = idle = 0
    for day in (each for each in between if each.weekday() in working):
        if day not in noted:
            idle += 1
            continue
        worked, lost = worked + 1, lost + (idle if idle <= CLOSED else 0)
        idle = 0
    return worked + lost, lost


def share_lost(days: int, lost: int) -> float:
    """The share of working days that are lost, by so many of the shop's own and by what is common."""
    return (lost + LOST * DAYS_COMMON) / (days + DAYS_COMMON)


def share_begun_anew(operations: int, begun: int) -> float:
    """The share of operations after which a part is begun anew, by the shop's own and by what is common."""
    return (begun + REWORK * OPERATIONS_COMMON) / (operations + OPERATIONS_COMMON)
