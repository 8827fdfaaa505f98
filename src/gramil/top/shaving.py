"""What a shaving does: how the bridge's turn, sink, rise and the modes move for a millimetre off each brace or the top.

Exact for small amounts, on the same triangles; twins are shaved alike. A brace's ends that are worked down keep their
height, and what lies under a notch stays.
"""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from math import degrees, nan

import numpy as np

from gramil.description.body.records import BraceAsked
from gramil.physics.plates.bar import Bar
from gramil.physics.plates.sensitivity import BarChange, PerMm
from gramil.quantities import Hertz, Mm, Radians, Ratio
from gramil.top.braced import Solved
from gramil.top.derivatives import QUANTITIES, Changes, changes_of, room_of

OWNS = ("shaving_",)


@dataclass(frozen=True)
class Shaving:
    """What 1 mm off the height of a brace (or of twins together) does, positive for more: to the bridge's turn, sink
    and rise and the first three modes; `room` is how much the brace still has, and at `place_x` and `place_y` a shaving
    there alone turns the bridge most. Before it is glued: what 1 mm more width does to turn and first mode (`wider_`),
    and 1 mm square to itself toward the tail (`aside_`; one that runs along the middle, toward the treble)."""

    name: str
    turn: Radians
    sink: Mm
    rise: Mm
    first: Hertz
    second: Hertz
    third: Hertz
    room: Mm
    place_x: Mm
    place_y: Mm
    wider_turn: Radians
    wider_first: Hertz
    aside_turn: Radians
    aside_first: Hertz

    @property
    def turn_in_hundredths(self) -> Ratio:
        """The bridge's turn in hundredths of a degree: a millimetre seldom turns it by whole ones."""
        return round(100.0 * degrees(self.turn), 1)

    @property
    def wider_turn_in_hundredths(self) -> Ratio:
        """The same for 1 mm more width."""
        return round(100.0 * degrees(self.wider_turn), 1)

    @property
    def aside_turn_in_hundredths(self) -> Ratio:
        """The same for 1 mm toward the tail."""
        return round(100.0 * degrees(self.aside_turn), 1)


LEVEL = 0.01
"""A bar that leans so little from the centreline's way is taken to run along it: a share."""
STEP = 1.0
"""How much is taken off in the table of what it does, mm."""


def shaving_groups(braces_asked: tuple[BraceAsked, ...]) -> tuple[tuple[str, ...], ...]:
    """The top's braces as they are shaved: twins together, others each alone.

    Method: each brace with its twin, by the description.
    Source: the maker's own description.
    """
    found = dict[frozenset[str], tuple[str, ...]]()
    for each in braces_asked:
        if each.plate == "top":
            names = (each.name, each.twin) if each.twin else (each.name,)
            found.setdefault(frozenset(names), names)
    return tuple(found.values())


def shaving_changes(braced_final: tuple[Solved, ...]) -> tuple[Changes, ...]:
    """How turn, lift, sink, rise and modes move with each brace's height, width and place, and with the thickness.

    Method: the adjoint of what is read of the loaded top; a mode's own movements for its frequency.
    Source: common practice in such calculations.
    """
    return tuple(changes_of(each) for each in braced_final)


def shaving_list(
    shaving_groups: tuple[tuple[str, ...], ...],
    shaving_changes: tuple[Changes, ...],
    braced_final: tuple[Solved, ...],
) -> tuple[Shaving, ...]:
    """What 1 mm off each brace's height does, twins together, and how much each still has.

    Method: the derivatives with height (exact), width (2 % off) and place (a tenth of the largest), of all its bars.
    Source: as the derivatives.
    """
    return tuple(
        shaving
        for changes, top in zip(shaving_changes, braced_final, strict=True)
        for shaving in _shavings(shaving_groups, changes, top)
    )


def _together(names: tuple[str, ...]) -> str:
    """What twins are called together: the words that their names share."""
    shared = [word for word in names[0].split() if all(word in each.split() for each in names)]
    return " ".join(shared) or names[0]


def _shavings(groups: tuple[tuple[str, ...], ...], changes: Changes, top: Solved) -> Iterator[Shaving]:
    bars = {each.name: each for each in top.braced.bars}
    for names in groups:
        own = [each for each in changes.bars if each.name in names]
        if not own:
            continue
        quantities = -np.sum([each.higher.quantities for each in own], axis=0)
        modes = -np.sum([each.higher.frequencies for each in own], axis=0)
        place = _best_place(bars[own[0].name], own[0])
        room = min(room_of(bars[each.name]) for each in own)
        turn, _, sunk, risen = quantities.tolist()
        first, second, third = modes[:3].tolist()
        wider = _turn_and_first([each.wider for each in own])
        aside = _turn_and_first([each.aside for each in own], [_to_the_tail(bars[each.name]) for each in own])
        yield Shaving(_together(names), turn, -sunk, risen, first, second, third, room, *place, *wider, *aside)


def _turn_and_first(changes: Sequence[PerMm], ways: Sequence[float] = ()) -> tuple[float, float]:
    """What bars changed together do to the bridge's turn and the first mode, each 1 mm its own way."""
    pairs = list(zip(changes, ways or [1.0] * len(changes), strict=True))
    return (
        float(sum(way * each.quantities[0] for each, way in pairs)),
        float(sum(way * each.frequencies[0] for each, way in pairs)),
    )


def _to_the_tail(bar: Bar) -> float:
    """1 if a bar moved to its left goes toward the tail (along the middle: the treble), -1 if it goes the other way."""
    x, y = bar.left.tolist()
    return math.copysign(1.0, x if abs(x) > LEVEL else y)


def _best_place(bar: Bar, change: BarChange) -> tuple[float, float]:
    """The middle of the span of a bar whose crest turns the bridge most."""
    spans = change.raised.quantities[:, 0]
    along = (int(np.abs(spans).argmax()) + 0.5) / len(spans) * bar.length
    place = np.asarray(bar.start) + along * bar.way
    return float(place[0]), float(place[1])


def shaving_step() -> Mm:
    """How much is taken off each brace in the table of what that does.

    Method: a round figure.
    Source: common practice.
    """
    return STEP


def shaving_thickness(shaving_changes: tuple[Changes, ...]) -> tuple[Shaving, ...]:
    """What 1 mm off the top's own thickness would do, all over: read it as a tenth for 0.1 mm.

    Method: the derivatives with the thickness.
    Source: as the derivatives.
    """
    found = []
    for each in shaving_changes:
        turn, _, sunk, risen = (-each.thickness[:QUANTITIES]).tolist()
        first, second, third = (-each.thickness[QUANTITIES : QUANTITIES + 3]).tolist()
        found.append(Shaving("the top's thickness", turn, -sunk, risen, first, second, third, *[nan] * 7))
    return tuple(found)
