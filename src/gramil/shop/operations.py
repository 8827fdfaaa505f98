"""The work of an instrument: what comes before what, what each operation needs, and what a description leaves out."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Any

from gramil.description.instrument import Instrument
from gramil.shop.air_bands import Band

Skip = Mapping[str, Any]
"""Keys of the description with values under which an operation is not needed, or "differ" with two; "why" in words."""


@dataclass(frozen=True)
class Operation:
    """One operation. Hands in minutes; clamp and air_hours in hours; the rest are names, `caution` whole sentences."""

    name: str
    what: str
    part: str
    hands: int
    after: tuple[str, ...] = ()
    clamp: float = 0.0
    air: str = ""
    air_hours: float = 0.0
    wood: tuple[str, ...] = ()
    uses: tuple[str, ...] = ()
    takes: tuple[str, ...] = ()
    frees: tuple[str, ...] = ()
    sheet: str = ""
    figures: tuple[str, ...] = ()
    measure: tuple[str, ...] = ()
    caution: tuple[str, ...] = ()
    skipped: tuple[Skip, ...] = ()
    one_go: bool = False

    @property
    def minutes(self) -> float:
        """Minutes from its start until what follows may start."""
        return self.hands + 60.0 * self.clamp


@dataclass(frozen=True)
class Work:
    """Operations by name, each after what comes before it, and the bands of air by name."""

    operations: Mapping[str, Operation]
    bands: Mapping[str, Band]
    left_out: Mapping[str, str] = field(default_factory=dict)

    def followers(self, name: str) -> tuple[str, ...]:
        """The operations that come directly after one."""
        return tuple(each.name for each in self.operations.values() if name in each.after)

    def waiting_for(self, name: str) -> frozenset[str]:
        """The operations that come after one, through any chain."""
        found: set[str] = set()
        for each in self.operations.values():  # each stands after those that it comes after
            if name in each.after or not found.isdisjoint(each.after):
                found.add(each.name)
        return frozenset(found)


def needed(work: Work, instrument: Instrument) -> Work:
    """The work that an instrument needs, and what is left out of it with the reason, from its description."""
    reasons = {name: why for name, each in work.operations.items() if (why := _skipped(each, instrument))}
    return without(work, reasons)


def without(work: Work, reasons: Mapping[str, str]) -> Work:
    """The work less some operations; what came after them comes after what came before them."""
    operations = {name: _bridged(each, work, reasons) for name, each in work.operations.items() if name not in reasons}
    return Work(operations, work.bands, {**work.left_out, **reasons})


def _bridged(each: Operation, work: Work, gone: Mapping[str, str]) -> Operation:
    if not gone.keys() & set(each.after):
        return each
    after = dict.fromkeys(kept for name in each.after for kept in _standing(name, work, gone))
    return Operation(**{**vars(each), "after": tuple(after)})


def _standing(name: str, work: Work, gone: Mapping[str, str]) -> Iterator[str]:
    if name not in gone:
        yield name
        return
    for before in work.operations[name].after:
        yield from _standing(before, work, gone)


def _skipped(operation: Operation, instrument: Instrument) -> str:
    return next((str(skip["why"]) for skip in operation.skipped if _holds(skip, instrument)), "")


def _holds(skip: Skip, instrument: Instrument) -> bool:
    """Whether every condition holds; one on a key that there is not does not."""
    if "differ" in skip:
        one, other = (key_of(instrument, key) for key in skip["differ"])
        return bool(one != other)
    keys = [key for key in skip if key != "why"]
    return bool(keys) and all(_equal(key_of(instrument, key), skip[key]) for key in keys)


def key_of(instrument: Instrument, key: str) -> Any:
    """What an instrument's description has at a key such as `board.arch.nut`; None where there is no such key."""
    value: Any = instrument
    for name in key.split("."):
        value = getattr(value, name, None)
    return value


def _equal(value: Any, wanted: Any) -> bool:
    return value is not None and (len(value) == 0 if isinstance(wanted, list) else bool(value == wanted))
