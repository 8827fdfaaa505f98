"""Kinds of options about wood and air: lengths, relative humidity, moisture."""

from collections.abc import Callable

import click

from gramil.measure import read_length, read_percent


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


def _length(text: str) -> float:
    return float(read_length(text, "mm"))


def _humidity(text: str) -> float:
    percent = float(read_percent(text))
    if 0 < percent < 1:
        raise ValueError(f"{text}: a fraction of 1 is doubtful; write {100 * percent:g} for {100 * percent:g} %")
    if not 0 <= percent <= 100:
        raise ValueError(f"{text}: relative humidity runs from 0 to 100 %")
    return percent


def _moisture(text: str) -> float:
    percent = float(read_percent(text))
    if not 0 <= percent <= 30:
        raise ValueError(f"{text}: seasoned wood holds 4 to 20 % of its dry mass")
    return percent


LENGTH = _Read("length", _length)
"""A length with a unit; a bare number is mm."""
HUMIDITY = _Read("humidity", _humidity)
"""Relative humidity in %."""
MOISTURE = _Read("moisture", _moisture)
"""Moisture content of wood in %."""
