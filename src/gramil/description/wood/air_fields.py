"""Types of single keys about wood and air: humidity, temperature, moments, masses, and moisture of wood.

Text with a unit is read as such; a bare number that could mean two things (0.45 for 45 %) is refused.
"""

from collections.abc import Mapping
from datetime import date, datetime, time
from typing import Annotated

from pydantic import BeforeValidator

from gramil.measure import read_mass, read_percent, read_temperature
from gramil.quantities import Unit

COLDEST, WARMEST = -30, 55
"""C that a place where wood lies may have."""
WETTEST = 35.0
"""Moisture content (%) above which wood is not seasoned."""


def _written(value: object, what: str) -> str | int | float:
    if isinstance(value, bool) or not isinstance(value, str | int | float):
        raise ValueError(what)
    return value


def _humidity(value: object) -> float:
    """Relative humidity in %."""
    percent = float(read_percent(_written(value, 'relative humidity is a number of %: 45, or "45 %"')))
    if 0 < percent < 1:
        raise ValueError(f"a fraction of 1 is doubtful: write {100 * percent:g} for {100 * percent:g} %")
    if not 0 <= percent <= 100:
        raise ValueError("relative humidity runs from 0 to 100 %")
    return percent


def _temperature(value: object) -> float:
    """A temperature in C."""
    celsius = float(read_temperature(_written(value, 'a temperature is 18, "18 C" or "65 F"')))
    if not COLDEST <= celsius <= WARMEST:
        fahrenheit = f'; if it is in F, write "{value:g} F"' if isinstance(value, int | float) and value > 0 else ""
        raise ValueError(f"{celsius:.4g} C is not the air of a place{fahrenheit}")
    return celsius


def _moisture(value: object) -> float:
    """Moisture content of wood in % of its dry mass."""
    percent = float(read_percent(_written(value, 'moisture is a number of %: 8.5, or "8.5 %"')))
    if not 0 <= percent <= WETTEST:
        raise ValueError(f"seasoned wood holds 4 to 20 % of its dry mass, and no more than {WETTEST:g} %")
    return percent


def _mass(value: object) -> float:
    """A mass in g."""
    grams = float(read_mass(_written(value, 'a mass is text with its unit, such as "214 g", or a number of grams')))
    if grams <= 0:
        raise ValueError("a mass is more than 0 g")
    return grams


def _moment(value: object) -> datetime:
    """A moment of the shop's own clock, from a date and time, or a date, which is its midnight."""
    if isinstance(value, str):
        try:
            value = datetime.fromisoformat(value)
        except ValueError:
            raise ValueError("a moment is written 2026-01-12T08:30, or 2026-01-12 for its midnight") from None
    if isinstance(value, datetime):
        if value.tzinfo is not None:
            raise ValueError("moments are by the shop's own clock: leave the zone out")
        return value
    if isinstance(value, date):
        return datetime.combine(value, time())
    raise ValueError("a moment is written 2026-01-12T08:30, or 2026-01-12 for its midnight")


Humidity = Annotated[float, BeforeValidator(_humidity), Unit("%")]
"""Relative humidity in %."""
Temperature = Annotated[float, BeforeValidator(_temperature), Unit("C")]
"""A temperature in C."""
Moisture = Annotated[float, BeforeValidator(_moisture), Unit("%")]
"""Moisture content of wood in % of its dry mass."""
Mass = Annotated[float, BeforeValidator(_mass), Unit("g")]
"""A mass in g."""
Moment = Annotated[datetime, BeforeValidator(_moment)]
"""A moment by the shop's own clock."""

AIR_READERS: Mapping[object, str] = {
    _humidity: "relative humidity in %",
    _temperature: 'temperature, `18` or `"65 F"`',
    _moisture: "moisture in %",
    _mass: 'mass, `"214 g"`',
    _moment: "`2026-01-12T08:30`, or a date for its midnight",
}
"""What each reader takes, in words, for the page of keys."""
