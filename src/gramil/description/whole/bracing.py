"""Where hole, braces and bridge plate lie, by rules of common practice held to hole and saddle; in mm.

Places along are from the body's neck end, but a brace's are from what it is held to. All of it is common practice in
rounded figures of our own, to begin from: a top is worked to its own stiffness.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from math import cos, sin, tan

import numpy as np

from gramil.quantities import Mm, Radians

Place = tuple[Mm, Mm]
LEG, BAR, FINGER, SIDE, FAN = 7.0, 6.0, 5.0, 6.0, 5.0
"""Widths of the braces: a leg of the X, a tone bar, a finger, one beside the hole, a finger of the fan."""
CLEAR_OF_BOARD: Mm = 12.0
"""From the board's end to the hole's edge."""
CROSSING: Mm = 7.5
"""From the hole's edge to a leg of the X: room for glue and for a cap on the joint."""
BESIDE_HOLE: Mm = 6.0
"""From the hole's edge to a brace beside it."""
NARROWEST, WIDEST = np.radians([36.0, 62.0])
"""Between which half of the X's opening is sought."""


@dataclass(frozen=True)
class Room:
    """What the bracing is held to, in mm along the body: the board's end, the middle of the saddle, the tail; the
    half-widths at stations, and the bridge: how long, from its front to the saddle, and how wide. `slant` is how far
    it goes along for each mm across, where frets fan.
    """

    board_end: Mm
    saddle: Mm
    length: Mm
    half: tuple[Place, ...]
    bridge_length: Mm
    bridge_front: Mm
    bridge_width: Mm
    slant: float = 0.0
    neck_block: Mm = 32.0
    tail_block: Mm = 20.0

    def half_width(self, along: Mm) -> Mm:
        """Half of the body's width there."""
        x, y = zip(*self.half, strict=True)
        return float(np.interp(along, x, y))


@dataclass(frozen=True)
class Laid:
    """A brace as it is written: its name, plate, what it is held to, its line or station, its ends, its size."""

    name: str
    plate: str
    held_to: str
    width: Mm
    height: Mm
    line: tuple[Place, Place] | None = None
    station: Mm | None = None
    start: str = ""
    stop: str = ""
    twin: bool = False
    ends: str = ""
    says: str = ""


@dataclass(frozen=True)
class Plate:
    """A bridge plate, held to the saddle."""

    ahead: Mm
    behind: Mm
    front: Mm
    back: Mm


@dataclass(frozen=True)
class Bracing:
    """The hole's centre and diameter, the braces, and the bridge plate if there is one."""

    hole: Mm
    diameter: Mm
    braces: tuple[Laid, ...]
    plate: Plate | None


def hole_centre(room: Room, diameter: Mm) -> Mm:
    """The centre of the hole: clear of the board's end."""
    return room.board_end + CLEAR_OF_BOARD + diameter / 2


def crossed(room: Room, diameter: Mm) -> Bracing:
    """An X that clears the hole and lies under the bridge's wings, with bars, fingers and a plate against its legs."""
    hole = hole_centre(room, diameter)
    x = _cross(room, hole, diameter)
    plate = _plate(x)
    braces = (
        _leg(x),
        *_bars(room, x, plate),
        _finger(room, x),
        _beside_hole(room, x, hole, diameter),
        _upper(min(_under_board(room, hole, diameter), _leg_ends(room, x) - 14), 12, 13),
        *back_braces(room, 4),
    )
    return Bracing(hole, diameter, braces, plate)


@dataclass(frozen=True)
class _Cross:
    """The X: where its legs cross, from the saddle (toward the neck negative), and half of its opening."""

    at: Mm
    half: Radians

    def across(self, along: Mm) -> Mm:
        """How far from the middle a leg lies at a distance from the saddle."""
        return (along - self.at) * tan(self.half)

    def inside(self, along: Mm) -> Mm:
        """How far from the middle a leg's inner edge lies there."""
        return self.across(along) - LEG / 2 / cos(self.half)


def _cross(room: Room, hole: Mm, diameter: Mm) -> _Cross:
    """The X whose legs clear the hole and lie under the ends of the bridge's wings."""
    wing = room.bridge_length / 2 - 5
    under = room.bridge_width / 2 - room.bridge_front
    low, high = float(NARROWEST), float(WIDEST)
    for _ in range(50):
        half = (low + high) / 2
        at = hole + (diameter / 2 + CROSSING + LEG / 2) / sin(half) - room.saddle
        low, high = (half, high) if at + wing / tan(half) > under else (low, half)
    return _Cross(at, half)


def _leg(x: _Cross) -> Laid:
    ends = (_place(x, x.at - 60), _place(x, 60))
    says = "clears the hole, and lies under the bridge's wings; its twin is halved into it"
    return Laid("X", "top", "saddle", LEG, 13, ends, twin=True, ends="scalloped", says=says)


def _place(x: _Cross, along: Mm) -> Place:
    return (along, x.across(along))


def _plate(x: _Cross) -> Plate:
    """The bridge plate: between the legs, from ahead of the saddle to behind the pins."""
    return Plate(14, 27, *(2 * x.inside(each) - 0.5 for each in (-14, 27)))


def _bars(room: Room, x: _Cross, plate: Plate) -> Iterator[Laid]:
    """Two bars, from the treble leg toward the bass side of the tail."""
    behind, half = room.length - room.saddle, room.half_width(room.saddle)
    starts = (plate.behind + 9, plate.behind + 9 + 0.2 * behind)
    for number, along, share, aside, height in ((1, starts[0], 0.76, 0.48, 10.0), (2, starts[1], 0.84, 0.36, 9.0)):
        line = (_place(x, along), (share * behind, -aside * half))
        says = "against that leg; the other end runs to the linings" if number == 1 else ""
        yield Laid(f"tone bar {number}", "top", "saddle", BAR, height, line, start="X treble", says=says)


def _finger(room: Room, x: _Cross) -> Laid:
    """Ahead of the plate, which lies aslant as the bridge does."""
    along = max(-25.0, x.at * 0.55) - 55 * abs(room.slant)
    start = _place(x, along)
    return Laid("finger", "top", "saddle", FINGER, 7, (start, (along + 13, 150)), start="X treble", twin=True)


def _beside_hole(room: Room, x: _Cross, hole: Mm, diameter: Mm) -> Laid:
    """From beside the hole's front to short of the leg."""
    aside = diameter / 2 + BESIDE_HOLE + SIDE / 2
    leg = x.at + room.saddle - hole - (aside + SIDE / 2) / tan(x.half) - LEG / 2 / sin(x.half)
    line = ((-0.42 * diameter, aside), (leg - 4, aside))
    return Laid("hole side", "top", "soundhole", SIDE, 5, line, start="point", stop="point", twin=True)


def _under_board(room: Room, hole: Mm, diameter: Mm) -> Mm:
    """Half way between the neck block and the hole, under the end of the board."""
    return (room.neck_block + hole - diameter / 2) / 2


def _leg_ends(room: Room, x: _Cross) -> Mm:
    """How far from the neck end the legs come to the sides of the upper bout."""
    along = np.arange(room.saddle + x.at, room.neck_block, -1.0)
    beyond = [each for each in along.tolist() if -x.across(each - room.saddle) > room.half_width(each)]
    return max(beyond, default=room.neck_block)


def _upper(station: Mm, width: Mm, height: Mm) -> Laid:
    says = "through the linings, to the side"
    return Laid("upper transverse", "top", "body", width, height, station=station, ends="tucked", says=says)


def back_braces(room: Room, number: int) -> Iterator[Laid]:
    """Braces across the back, spread from block to block."""
    first, last = room.neck_block + 45, room.length - room.tail_block - 70
    for row, station in enumerate(np.linspace(first, last, number).tolist()):
        slim = row < number / 2
        yield Laid(f"back {row + 1}", "back", "body", 7 if slim else 9, 14 if slim else 13, station=station)


def fanned(room: Room, diameter: Mm) -> Bracing:
    """Bars before and behind the hole, and a fan of seven behind them that stops short of the linings; no plate."""
    hole = hole_centre(room, diameter)
    bar = diameter / 2 + 11
    start, behind = hole + bar + 10 - room.saddle, room.length - room.saddle
    across = Laid("under the hole", "top", "soundhole", 8, 16, station=bar)
    braces = (
        _upper(_under_board(room, hole, diameter), 8, 16),
        across,
        Laid("fan middle", "top", "saddle", FAN, 4, ((start, 0), (0.69 * behind, 0)), start="point", stop="point"),
        *(_fan(room, row, start, behind) for row in (1, 2, 3)),
        *back_braces(room, 3),
    )
    return Bracing(hole, diameter, braces, None)


def _fan(room: Room, row: int, start: Mm, behind: Mm) -> Laid:
    """A finger of the fan and its twin, opening toward the tail."""
    name = ("inner", "middle pair", "outer")[row - 1]
    stop = (0.66, 0.58, 0.46)[row - 1] * behind
    line = ((start + 2 * row, 21.0 * row), (stop, 0.235 * row * room.half_width(room.saddle)))
    height = 4 if row == 1 else 3.5
    return Laid(f"fan {name}", "top", "saddle", FAN, height, line, start="point", stop="point", twin=True)
