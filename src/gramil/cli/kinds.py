"""Kinds of options: numbers within bounds, lengths in the unit that is shown, relative humidity, moisture."""

from collections.abc import Callable
from math import isfinite
from typing import Any

import click

from gramil.description.wood.air_fields import COLDEST, WARMEST
from gramil.measure import (
    LengthUnit,
    TemperatureUnit,
    read_length,
    read_percent,
    read_temperature,
    show_temperature,
)


class Number(click.FloatRange):
    """A number within bounds, if there are any. Click itself lets "nan" and "inf" through, which no figure here is."""

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> float:
        number = float(super().convert(value, param, ctx))
        if not isfinite(number):
            self.fail(f"{value!r} is no number", param, ctx)
        return number


class _Read(click.ParamType[float]):
    """Text read by a function that raises ValueError with what to write instead."""

    def __init__(self, name: str, read: Callable[[str], float]) -> None:
        self.name = name
        self.read = read

    def convert(self, value: object, param: click.Parameter | None, ctx: click.Context | None) -> float:
        if isinstance(value, float):
            return value
        try:
            return self.read(str(value))
        except ValueError as error:
            self.fail(str(error), param, ctx)


def length(text: str, unit: LengthUnit, option: str) -> float:
    """A length of 0 or more, in mm; a bare number is in `unit`. Raises BadParameter for the option."""
    try:
        found = float(read_length(text, unit))
    except ValueError as error:
        raise click.BadParameter(str(error), param_hint=option) from None
    if found < 0:
        raise click.BadParameter(f"{text}: a length is 0 or more", param_hint=option)
    return found


def size(text: str, unit: LengthUnit, option: str) -> float:
    """The same for something that must have a size: more than 0."""
    found = length(text, unit, option)
    if found == 0:
        raise click.BadParameter(f"{text}: a size is more than 0", param_hint=option)
    return found


def temperature_of(text: str, unit: TemperatureUnit, option: str) -> float:
    """The temperature of a room, in C; a bare number is in `unit`. Raises BadParameter for the option."""
    try:
        found = float(read_temperature(text, unit))
    except ValueError as error:
        raise click.BadParameter(str(error), param_hint=option) from None
    if not COLDEST <= found <= WARMEST:
        least, most = (show_temperature(each, unit, 0) for each in (COLDEST, WARMEST))
        raise click.BadParameter(f"{text}: air of {least} to {most} can be reckoned with", param_hint=option)
    return found


def _humidity(text: str) -> float:
    percent = float(read_percent(text))
    if 0 < percent < 1:
        raise ValueError(f"{text}: a fraction of 1 is doubtful; write {100 * percent:g} for {100 * percent:g} %")
    if not 0 <= percent <= 100:
        raise ValueError(f"{text}: relative humidity runs from 0 to 100 %")
    return percent


def _moisture(text: str) -> float:
    from gramil.wood.movement import FIBRE_SATURATION

    percent = float(read_percent(text))
    if not 0 <= percent <= FIBRE_SATURATION:
        raise ValueError(f"{text}: seasoned wood holds 4 to 20 % of its dry mass")
    return percent


UNITS = click.Choice(["mm", "in"])
"""The unit of lengths that are shown, and of bare ones."""
HUMIDITY = _Read("humidity", _humidity)
"""Relative humidity in %."""
MOISTURE = _Read("moisture", _moisture)
"""Moisture content of wood in %."""
