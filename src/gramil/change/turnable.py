"""Which chosen figures move a figure, and how strongly; one of them turned until the figure has the value wanted.

Which keys to offer is found on the base values alone, moved a hair either way. The search itself uses base values too
if the key is taken as it is, and the whole description if others depend on it (a scale's sideways run); every
answer is worked out once more from the description, so that what is found is what will be kept.
"""

import math
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass, replace

from gramil.address import parse_address
from gramil.change.shift import SMALL
from gramil.change.turn import Turned, turn
from gramil.faults import MakersFault
from gramil.graph import Figures, same

Changed = Callable[[float], Figures]
"""The figures with the input set otherwise; may raise MakersFault."""
KeyOf = Callable[[str], str | None]
"""The key that settles a base value in the description at hand, or None where the maker settles it nowhere."""
STEPS = {"mm": 1.0, "rad": math.radians(1.0), "N": 1.0, "C": 1.0, "%": 1.0}
"""What one step of an input is, by its unit; a hundredth of its value for others."""
UNSEEN = {"rad": math.radians(SMALL), "1/mm": 1e-7}
"""A figure that the input's whole reach moves by less than this is not moved, by its unit; SMALL for others."""
FIFTH = 5.0
"""Bounds are a fifth of the value either way where none are given, and a step where the value is nothing."""
CLOSE = 1e-5
"""An answer worked out anew may be off by this share of the figure's own reach."""


@dataclass(frozen=True)
class Turnable:
    """A key that moves a figure: the base values that it settles, its value and unit's symbol, and by how much.

    One `step` more of it (in its own unit) moves the figure by `moves` (in the figure's unit).
    """

    key: str
    names: tuple[str, ...]
    value: float
    unit: str | None
    step: float
    moves: float

    @property
    def bounds(self) -> tuple[float, float]:
        """The range in which it is turned unless another is given."""
        either = abs(self.value) / FIFTH or self.step
        return self.value - either, self.value + either

    @property
    def reach(self) -> float:
        """Roughly how far the figure moves between the bounds."""
        low, high = self.bounds
        return abs(self.moves / self.step) * (high - low)


def turnables(figures: Figures, address: str, key_of: KeyOf) -> tuple[Turnable, ...]:
    """Every chosen figure that is one number and moves the figure at an address, the nearest above it first.

    Raises KeyError if the address does not lead to a single figure.
    """
    before, unseen = _single(figures, address), UNSEEN.get(figures.unit_at(address) or "", SMALL)
    found = (_tried(figures, key, names, address, before) for key, names in _keys_above(figures, address, key_of))
    return tuple(each for each in found if each is not None and each.reach > unseen)


def _single(figures: Figures, address: str) -> float:
    value = figures.at(address)
    if isinstance(value, bool | str):
        raise KeyError(address)
    try:
        return float(value)
    except (TypeError, ValueError):
        raise KeyError(address) from None


def _keys_above(figures: Figures, address: str, key_of: KeyOf) -> Iterable[tuple[str, tuple[str, ...]]]:
    """The maker's keys above a figure, with the base values that each sets, by how many steps away they are."""
    found: dict[str, tuple[str, ...]] = {}
    for name in _nearest_first(figures, parse_address(address)[0]):
        if key := key_of(name):
            found[key] = (*found.get(key, ()), name)
    return found.items()


def _nearest_first(figures: Figures, name: str) -> Iterator[str]:
    waiting, met = [name], {name}
    while waiting:
        each = waiting.pop(0)
        if each in figures.graph.inputs:
            yield each
        for parent in figures.graph.parameters(each):
            if parent not in met:
                met.add(parent)
                waiting.append(parent)


def _tried(figures: Figures, key: str, names: tuple[str, ...], address: str, before: float) -> Turnable | None:
    """The key with how it moves the figure, or None if it is not a single number."""
    value = figures.base[names[0]]
    if not isinstance(value, float) or not math.isfinite(value):
        return None
    alike = tuple(each for each in names if same(figures.base[each], value))
    unit = figures.unit_at(names[0])
    step = STEPS.get(unit or "", abs(value) / 100 or 0.01)
    return Turnable(key, alike, value, unit, step, _moves(figures, alike, value, step, address, before))


def _moves(figures: Figures, names: tuple[str, ...], value: float, step: float, address: str, before: float) -> float:
    """How far a step moves the figure, estimated from a tiny step either way; 0 if no instrument can be made."""
    for hair in (step / 100, -step / 100):
        try:
            after = _single(_with(figures, names, value + hair), address)
        except (KeyError, ValueError, MakersFault):
            continue
        if math.isfinite(after - before):
            return (after - before) * step / hair
    return 0.0


def _with(figures: Figures, names: tuple[str, ...], value: float) -> Figures:
    return figures.with_base({**figures.base, **dict.fromkeys(names, value)})


def turned(
    figures: Figures,
    chosen: Turnable,
    changed: Changed,
    address: str,
    target: float,
    bounds: tuple[float, float],
) -> Turned:
    """Every value of the chosen figure within bounds at which the figure at the address has the value wanted.

    `changed` gives the figures from the description with the key set. Answers at which no instrument is possible are
    counted as refused. Raises MakersFault if the key is written in another form than the one it is calculated with.
    """
    plain = _goes_in_plain(figures, chosen, changed, parse_address(address)[0])

    def figure(value: float) -> float:
        return _single(_with(figures, chosen.names, value) if plain else changed(value), address)

    low, high = sorted(bounds)
    found = turn(figure, target, low, high)
    reach = max(abs(target), abs(found.highest - found.lowest), 1e-9) if found.answers else 1.0
    sound = tuple(each for each in found.answers if _holds(changed, each, address, target, CLOSE * reach))
    return replace(found, answers=sound, refused=found.refused + len(found.answers) - len(sound))


def _holds(changed: Changed, value: float, address: str, target: float, off: float) -> bool:
    try:
        return abs(_single(changed(value), address) - target) <= off
    except (MakersFault, KeyError, ValueError):
        return False


def _goes_in_plain(figures: Figures, chosen: Turnable, changed: Changed, name: str) -> bool:
    """Whether, of all that a figure depends on, the key sets only its own base values, each as it is written."""
    value = chosen.value + chosen.step / 100
    after = changed(value)
    if not math.isclose(after.base[chosen.names[0]], value, rel_tol=1e-6, abs_tol=1e-9):
        raise MakersFault.of(
            f"{chosen.key} is not written in the form that it is worked out in",
            "",
            "change it itself",
            where=chosen.key,
        )
    above = figures.graph.above(name) | {name}
    moved = {each for each in figures.graph.inputs if not same(figures.base[each], after.base[each])}
    return moved & above <= set(chosen.names)
