"""Inputs that are settled by what was measured: a blank planed 0.2 mm thin is a board 0.2 mm thinner.

Which input a figure settles is said by a row of `data/made.toml`. As made, the input has the value at which the figure
as drawn equals the reading, found over the graph itself, and everything later follows from it. The description stays
as it is until its maker writes the value into it.
"""

from collections.abc import Callable, Collection, Mapping
from dataclasses import dataclass, replace
from functools import cache
from math import inf, isfinite, nan

import numpy as np

from gramil import names as n
from gramil.address import LEADS_NOWHERE, Field, parse_address
from gramil.change.made_rows import Fixed, operations
from gramil.description.base import base_name
from gramil.description.body.opening_tables import SOUNDHOLE
from gramil.formatter import shown
from gramil.graph import Figures, Pin
from gramil.measure import LengthUnit
from gramil.quantities import Mm
from gramil.reference import Ref

Pins = Mapping[str, Pin]
HAIR = 1e-4
"""How far an input is moved to see how strongly it moves a figure, in its own unit."""
REACH = 2.0
"""A figure that does not follow in a straight line is sought within this many times the change that a straight line
would take.
"""
NEAR_STEPS = 4
MEMBER = "{name}"
"""Stands in a key for the name of the record that was read: the arm's bevel and the ribs' have each a table."""
_OF_SOUNDHOLE: Mapping[str, Ref[Mm]] = {
    "opening.centre": n.soundhole_given,
    "opening.diameter": n.soundhole_diameter,
    "opening.along": n.soundhole_along,
    "opening.across": n.soundhole_across,
}
"""Base values of its own that the first of the openings has."""
SAME = 1e-9


@dataclass(frozen=True)
class Settled:
    """An input that a reading settles: its key in the description, its address and unit, and what it is as described.

    `value` is what it is as made; None if no value of it gives the reading.
    """

    key: str
    address: str
    unit: str | None
    described: float
    value: float | None
    reading: str
    read: float
    pin: Pin


def settled(figures: Figures) -> Figures:
    """The figures as made: with what was measured, and with the inputs that it settles instead of those described."""
    raw = readings(figures.pins)
    found = {each.address: _pin(each, raw) for each in settled_by_readings(figures) if each.value is not None}
    return figures.with_pins({**raw, **found})


def readings(pins: Pins) -> Pins:
    """What was measured alone, without what it settles."""
    found = {}
    for address, latest in pins.items():
        noted = [each for each in (*latest.before, latest) if not each.settled_by]
        if noted:
            found[address] = replace(noted[-1], before=tuple(noted[:-1]))
    return found


def _pin(each: Settled, raw: Pins) -> Pin:
    pin = Pin(each.value, each.pin.when, each.pin.at, settled_by=each.reading)
    earlier = raw.get(each.address)
    return pin if earlier is None else Pin(pin.value, pin.when, pin.at, (*earlier.before, earlier), pin.settled_by)


def settled_by_readings(figures: Figures) -> tuple[Settled, ...]:
    """Each input that the measurements settle, by the latest if there are several, in the order in which they were
    noted.

    A reading of something that this instrument does not have settles nothing, nor does one of a figure that hangs on
    other inputs here.
    """
    raw = readings(figures.pins)
    if not any(_key(address)[0] for address in raw):
        return ()
    found: dict[str, Settled] = {}
    described = drawn = figures.with_pins({})
    for address, pin in sorted(raw.items(), key=lambda each: each[1].when):
        each = _settled(described, drawn, address, pin)
        if each is not None:
            found.pop(each.address, None)
            found[each.address] = each
            if each.value is not None:
                drawn = drawn.with_pins({**drawn.pins, each.address: Pin(each.value, "")})
    return tuple(found.values())


def _settled(described: Figures, drawn: Figures, address: str, pin: Pin) -> Settled | None:
    """What a reading settles; `drawn` already has what earlier ones settled."""
    try:
        read, now, meant = float(pin.value), float(drawn.at(address)), float(described.at(address))
        key, was = _key_given(described, address, meant)
    except KeyError:
        return None
    if not key or not all(map(isfinite, (was, now, read))):
        return None
    name = _input(key, address)
    value = _value(drawn, name, address, read)
    if value is None and _stands_still(drawn, name, address):
        return None
    return Settled(_written_at(key, address), name, drawn.unit_at(name), was, value, address, read, pin)


def _key_given(described: Figures, address: str, meant: float) -> tuple[str, float]:
    """The key that a reading settles, and what it is as described: what the figure `meant` is, where it is left out."""
    key, instead, left_out = _key(address)
    was = float(described.at(_input(key, address))) if key else nan
    if isfinite(was):
        return key, was
    if instead:
        return instead, float(described.at(_input(instead, address)))
    return key, meant if left_out else was


def _written_at(key: str, address: str) -> str:
    """The key where it is written: the soundhole, the first of the openings, has a table of its own."""
    _, steps = parse_address(address)
    return f"{SOUNDHOLE}.{key.partition('.')[2]}" if SOUNDHOLE in steps else key


@cache
def _settling() -> Mapping[tuple[str, str], Fixed]:
    """The row of each figure that settles a key, by its name and the field that is read."""
    rows = (fixed for each in operations().values() for fixed in each.fixes)
    return {(fixed.figure, fixed.field): fixed for fixed in rows if fixed.settles_any}


@cache
def _key(address: str) -> tuple[str, str, bool]:
    """The key that a reading at an address settles, the one where that is not given, and whether it may be left out;
    empty for none.
    """
    name, steps = parse_address(address)
    field = steps[-1].name if steps and isinstance(steps[-1], Field) else ""
    fixed = _settling().get((name, field))
    if fixed is None:
        return "", "", False
    member = str(steps[0]) if steps else ""
    at_zero = fixed.settles_at_zero if steps and steps[0] == 0 else ""
    key = at_zero or (fixed.settles_of or {}).get(member, fixed.settles)
    return key.replace(MEMBER, member) if steps else key, fixed.settles_else, fixed.left_out


@cache
def _input(key: str, address: str) -> str:
    """The address of the base value that a key sets; in a list of records, in the member that was measured."""
    if _written_at(key, address) != key and key in _OF_SOUNDHOLE:
        return _OF_SOUNDHOLE[key].address
    try:
        return base_name(key)
    except KeyError:
        table, _, field = key.partition(".")
        start, end = address.index("["), address.rindex("]") + 1
        return f"{base_name(table)}{address[start:end]}.{field}"


def _value(drawn: Figures, name: str, address: str, read: float) -> float | None:
    """The input's value, as near as possible to what it was, at which the figure equals the reading."""
    if name == address:
        return read
    figure = _figure_by(drawn, name, address)
    was, now = float(drawn.at(name)), float(drawn.at(address))
    least = 0.0 if was >= 0 else -inf
    for straight in (was + read - now, was - read + now, read):
        if straight >= least and abs(figure(straight) - read) <= SAME:
            return straight
    from gramil.change.turn import turn  # the solver's library is loaded only if the relation is not linear

    moves = (figure(was + HAIR) - now) / HAIR
    if not isfinite(moves) or abs(moves) < SAME:
        return None
    either = REACH * abs((read - now) / moves)
    found = turn(figure, read, max(least, was - either), was + either, NEAR_STEPS).answers
    return min(found, key=lambda value: abs(value - was)) if found else None


def _stands_still(drawn: Figures, name: str, address: str) -> bool:
    """Whether the figure hangs on other inputs on this instrument: a neck's length with a foot, on no tenon."""
    figure, was, now = _figure_by(drawn, name, address), float(drawn.at(name)), float(drawn.at(address))
    return figure(was - HAIR) == figure(was + HAIR) == now


def _figure_by(drawn: Figures, name: str, address: str) -> Callable[[float], float]:
    """What the figure would be by the input's value; nan where it cannot be worked out."""
    return lambda value: _tried(lambda: float(drawn.with_pins({**drawn.pins, name: Pin(value, "")}).at(address)))


def _tried(figure: Callable[[], float]) -> float:
    try:
        with np.errstate(all="ignore"):
            return figure()
    except (ArithmeticError, *LEADS_NOWHERE):
        return float("nan")


def off(figures: Figures, only: Collection[str]) -> tuple[Settled, ...]:
    """Inputs that the readings at these addresses settle differently from the description, or that no value can
    match.
    """
    found = (each for each in settled_by_readings(figures) if each.reading in only)
    return tuple(each for each in found if each.value is None or abs(each.value - each.described) > SAME)


def sentence(each: Settled, figures: Figures, unit: LengthUnit) -> str:
    """What to set in the description, or that no allowed value gives what was measured."""
    read = shown(each.read, figures.unit_at(each.reading), unit)
    if each.value is None:
        return f"No {words(each)} gives {each.reading} = {read}: the description cannot follow it."
    is_now, was = (shown(value, each.unit, unit) for value in (each.value, each.described))
    return f"As made {words(each)} is {is_now}, described as {was}: set {each.key} to {is_now}."


def words(each: Settled) -> str:
    """The key in words; for a list of records, with the name of the one that is meant."""
    _, steps = parse_address(each.address)
    return f'{each.key} of "{steps[0]}"' if steps and steps[0] != SOUNDHOLE else each.key
