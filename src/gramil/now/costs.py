"""What an instrument costs: hours of hands, by part, and materials; a plain total in the shop's own money."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from gramil.shop.operations import Work
from gramil.shop.stock import blanks, parts, promises
from gramil.store.opening import Store

MOST_COST = 1e9
"""An amount from which on it is taken for a slip, in the shop's own money."""


@dataclass(frozen=True)
class Material:
    """A thing that is paid for; `cost` is None if nobody noted one."""

    what: str
    cost: float | None


@dataclass(frozen=True)
class PartHours:
    """Hours on one part: done so far (as noted, else as usual), and still to do."""

    part: str
    done: float
    left: float


@dataclass(frozen=True)
class Cost:
    """Hours by part, materials, and money for an hour. Of the `done` operations, `noted` have their hours noted."""

    hours: tuple[PartHours, ...]
    materials: tuple[Material, ...]
    rate: float
    noted: int
    done: int

    @property
    def hours_whole(self) -> float:
        """All hours, done and to do."""
        return sum(each.done + each.left for each in self.hours)

    @property
    def hours_done(self) -> float:
        """Hours done."""
        return sum(each.done for each in self.hours)

    @property
    def work(self) -> float:
        """Money for all hours."""
        return self.hours_whole * self.rate

    @property
    def material(self) -> float:
        """Money for all materials whose cost is noted."""
        return sum(each.cost or 0.0 for each in self.materials)

    @property
    def total(self) -> float:
        """Money for all of it."""
        return self.work + self.material

    @property
    def without(self) -> tuple[str, ...]:
        """Materials for which no cost is noted."""
        return tuple(each.what for each in self.materials if each.cost is None)


def cost_written(text: str) -> float | None:
    """An amount of the shop's own money, 0 or more; None if it is not an amount, or so large that it must be a slip."""
    try:
        cost = float(text)
    except ValueError:
        return None
    return cost if 0 <= cost < MOST_COST else None


def cost_of(
    work: Work, done: Iterable[str], noted: Mapping[str, float], materials: Sequence[Material], rate: float
) -> Cost:
    """The cost of an instrument: `noted` are hours by operation, as far as they were written down."""
    done = set(done)
    names = dict.fromkeys(each.part for each in work.operations.values())
    hours = tuple(_of_part(part, work, done, noted) for part in names)
    return Cost(hours, tuple(materials), rate, len(noted.keys() & done), len(done))


def _of_part(part: str, work: Work, done: set[str], noted: Mapping[str, float]) -> PartHours:
    own = [each for each in work.operations.values() if each.part == part]
    so_far = sum(noted.get(each.name, each.hands / 60.0) for each in own if each.name in done)
    return PartHours(part, so_far, sum(each.hands / 60.0 for each in own if each.name not in done))


def materials_in(store: Store, instrument: int) -> tuple[Material, ...]:
    """What is promised to an instrument or used for it, with what it cost."""
    raw, made = {each.id: each for each in blanks(store)}, {each.id: each for each in parts(store)}
    found = []
    for promise in promises(store, instrument):
        if promise.blank is not None:
            blank = raw[promise.blank]
            cost = None if blank.cost is None else blank.cost * promise.count
            found.append(Material(f"{promise.need}: {blank.name}", cost))
        elif promise.part is not None:
            part = made[promise.part]
            found.append(Material(f"{promise.need}: {part.name}", part.cost))
    return tuple(found)
