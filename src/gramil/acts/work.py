"""Work that is done: noted with what was measured, and the wood that was promised for it used up, as one act."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

from gramil.now.needs import used_up_by
from gramil.shop.opening import Store
from gramil.shop.operations_done import Measurement, mark_done
from gramil.shop.stock import blanks, parts, promises, use_up
from gramil.shop.writing import writing


@dataclass(frozen=True)
class Noted:
    """What is noted beside an operation; hours are those that it took."""

    note: str = ""
    hours: float | None = None
    photos: tuple[str, ...] = ()


@dataclass(frozen=True)
class UsedUp:
    """Wood that the operation used up: its name, and the need that it was promised for."""

    name: str
    need: str


def note_done(
    store: Store,
    instrument: int,
    operation: str,
    now: datetime,
    *,
    measured: Sequence[Measurement] = (),
    noted: Noted | None = None,
    who: str = "",
) -> tuple[UsedUp, ...]:
    """Note an operation as done and use up what was promised for it; gives what was used up.

    One change of the store: one undo takes all of it back. Raises MakersFault when the operation is done already.
    """
    with writing(store, f"done: {operation}", now, who):
        mark_done(store, instrument, operation, now, measured=measured, who=who, **vars(noted or Noted()))
        return tuple(_use_up(store, instrument, operation, now, who))


def _use_up(store: Store, instrument: int, operation: str, now: datetime, who: str) -> list[UsedUp]:
    """What was promised for a need that the operation settles is used now."""
    needs = used_up_by(operation)
    raw, made = {each.id: each.name for each in blanks(store)}, {each.id: each.name for each in parts(store)}
    found = []
    for each in promises(store, instrument):
        if each.need in needs and not each.used_at:
            use_up(store, each, now, who)
            found.append(UsedUp(raw[each.blank] if each.blank is not None else made[each.part or 0], each.need))
    return found
