"""The units of a logger's figures: as its columns say, as the maker says, or a question if figures and units do not
fit. A shop at 68 C is not plausible, but is not converted unasked either.
"""

import re
from typing import Literal

import numpy as np

from gramil.decimals import fixed
from gramil.faults import Fault
from gramil.physics.arrays import FloatArray

TemperatureUnit = Literal["C", "F"]
HumidityUnit = Literal["percent", "fraction"]

LIVED_IN = (5.0, 40.0)
"""C; a median outside is doubted where the other unit would bring it well within."""
SURELY_LIVED_IN = (10.0, 32.0)
_JOINED = re.compile(r"temp(?:erature|eratur)?([cf])")
"""A unit at the end of a name's own word, as in TempC."""


def temperature_unit(
    figures: FloatArray, name: str, said: TemperatureUnit | None, file: str | None
) -> tuple[TemperatureUnit, Fault | None]:
    """The unit, and the question to ask if it is not stated or not plausible; the maker's answer is always accepted."""
    stated = said or _stated_temperature(name)
    if said or not np.isfinite(figures).any():
        return stated or "C", None
    middle = float(np.nanmedian(figures))
    as_celsius, as_fahrenheit = f"{fixed(middle, 1)} C", f"{fixed((middle - 32.0) / 1.8, 1)} C if it is F"
    if stated is None:
        what = f'the column "{name}" gives no unit, and its median is {fixed(middle, 1)}'
        return "C", Fault(None, "temperature", what, f"that is {as_celsius}, or {as_fahrenheit}", "say C or F", file)
    believed, other = (middle, (middle - 32.0) / 1.8)[:: 1 if stated == "C" else -1]
    doubtful = not LIVED_IN[0] <= believed <= LIVED_IN[1] and SURELY_LIVED_IN[0] <= other <= SURELY_LIVED_IN[1]
    what = f'the column "{name}" says {stated}, and its median is {fixed(middle, 1)}'
    why = f"that is {fixed(believed, 1)} C, and would be {fixed(other, 1)} C in the other unit"
    return stated, Fault(None, "temperature", what, why, "say C or F", file) if doubtful else None


def _stated_temperature(name: str) -> TemperatureUnit | None:
    words = "".join(letter if letter.isalnum() else " " for letter in name.lower()).split()
    words += [joined[1] for word in words if (joined := _JOINED.fullmatch(word))]
    if {"f", "fahrenheit", "degf"} & set(words):
        return "F"
    return "C" if {"c", "celsius", "centigrade", "degc"} & set(words) else None


def humidity_unit(
    figures: FloatArray, name: str, said: HumidityUnit | None, file: str | None
) -> tuple[HumidityUnit, Fault | None]:
    """The unit, and the question to ask if figures and unit do not fit."""
    if said or not np.isfinite(figures).any():
        return said or "percent", None
    most = float(np.nanmax(figures))
    stated: HumidityUnit = "fraction" if "fraction" in name.lower() or "ratio" in name.lower() else "percent"
    if stated == "percent" and most <= 1.0:
        what, why = f'no figure in the column "{name}" is over 1', f"{most:g} % is drier than any room"
        return stated, Fault(None, "humidity", what, why, "say whether they are percent or a fraction of 1", file)
    if stated == "fraction" and most > 1.0:
        what = f'the column "{name}" is to be a fraction, and reaches {most:g}'
        return stated, Fault(None, "humidity", what, "", "say whether they are percent or a fraction of 1", file)
    if float(np.mean(figures > 100.0)) > 0.02:
        what, why = f'the column "{name}" goes up to {most:g}', "relative humidity ends at 100 %"
        return stated, Fault(None, "humidity", what, why, "check the sensor and the column", file)
    return stated, None
