"""Reading a data logger's file into a place's air, with a report of what was left out and why.

Units come from the names of the columns or from the maker. Where figures and units do not go together, or there is no
unit, the file is refused with the question to answer: a shop at 68 C is not believed, and not converted unasked either.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import Literal

import numpy as np

from gramil.faults import Fault, MakersFault
from gramil.physics.arrays import FloatArray, floats
from gramil.wood.air import AirHistory
from gramil.wood.log_order import newest_first
from gramil.wood.log_table import LogTable, find_table
from gramil.wood.log_times import DateOrder, Ordered, ReadTimes, put_in_order, read_times

TemperatureUnit = Literal["C", "F"]
HumidityUnit = Literal["percent", "fraction"]

LIVED_IN = (5.0, 40.0)
"""C; a median outside is doubted where the other unit would bring it well within."""
SURELY_LIVED_IN = (10.0, 32.0)
BELIEVABLE = (-40.0, 60.0)
"""C; a reading outside is left out."""
_GAP = 3.0  # usual intervals without a reading
_SPOILT = 0.1  # share of rows that may be left out before the file is refused


@dataclass(frozen=True)
class LeftOut:
    """A line of the file that was not taken, and why."""

    line: int
    why: str


@dataclass(frozen=True)
class Gap:
    """A stretch without readings."""

    begins: datetime
    hours: float


@dataclass(frozen=True)
class LogReport:
    """How a file was read: columns by what they hold, units, the order of dates, and what was found on the way."""

    columns: Mapping[str, str]
    temperature_unit: TemperatureUnit
    humidity_unit: HumidityUnit
    date_order: DateOrder
    readings: int
    interval: float
    left_out: tuple[LeftOut, ...]
    gaps: tuple[Gap, ...]
    clock_changes: tuple[LeftOut, ...]
    newest_first: bool = False
    """Whether the file runs from the last reading to the first, and was turned round."""


@dataclass(frozen=True)
class LogAnswers:
    """What the maker says of a file: units, the order of dates, and columns for "time", "temperature", "humidity"."""

    temperature_unit: TemperatureUnit | None = None
    humidity_unit: HumidityUnit | None = None
    date_order: DateOrder | None = None
    columns: Mapping[str, str] | None = None


def read_air_log(text: str, file: str | None = None, answers: LogAnswers | None = None) -> tuple[AirHistory, LogReport]:
    """Air from a logger's text, and how it was read.

    Raises MakersFault with what to answer or mend: no such columns, a unit that is missing or not believed, humidity
    over 100 %, dates of two readings, or a tenth of the rows unusable.
    """
    said = answers or LogAnswers()
    table = find_table(text, said.columns or {}, file)
    times = read_times(table.times, said.date_order, file)
    temperature, humidity = _numbers(table.temperatures), _numbers(table.humidities)
    t_unit, t_fault = _temperature_unit(temperature, table.names["temperature"], said.temperature_unit, file)
    h_unit, h_fault = _humidity_unit(humidity, table.names["humidity"], said.humidity_unit, file)
    if faults := [fault for fault in (t_fault, h_fault) if fault]:
        raise MakersFault(faults)
    celsius = (temperature - 32.0) / 1.8 if t_unit == "F" else temperature
    percent = humidity * 100.0 if h_unit == "fraction" else humidity
    return _assembled(table, times, celsius, percent, _Manner(t_unit, h_unit, times.order, file))


@dataclass(frozen=True)
class _Manner:
    temperature_unit: TemperatureUnit
    humidity_unit: HumidityUnit
    date_order: DateOrder
    file: str | None


def _assembled(
    table: LogTable, times: ReadTimes, celsius: FloatArray, percent: FloatArray, manner: _Manner
) -> tuple[AirHistory, LogReport]:
    """The readings that stand, in time, and the report."""
    reasons = _reasons(table, times.seconds, celsius, percent)
    good = np.array([not reason for reason in reasons], dtype=bool)
    unreadable = [LeftOut(line, why) for line, why in zip(table.lines, reasons, strict=True) if why]
    unreadable += [LeftOut(line, "too few columns") for line in table.short]
    picked = np.flatnonzero(good)
    turned = newest_first(times.seconds[picked], manner.file)
    picked = picked[::-1] if turned else picked
    usual = _usual_interval(times.seconds[picked])
    values = list(zip(celsius[picked].tolist(), percent[picked].tolist(), strict=True))
    ordered = put_in_order(ReadTimes(times.seconds[picked], times.zoned, times.order), values, usual)
    lines = [table.lines[row] for row in picked]
    left_out = sorted(unreadable + [LeftOut(lines[row], why) for row, why in ordered.skipped], key=lambda row: row.line)
    _refuse_if_spoilt(left_out, len(table.lines) + len(table.short), manner.file)
    kept = picked[list(ordered.rows)]
    history = _history(ordered, times.zoned, celsius[kept], percent[kept])
    changes = tuple(LeftOut(lines[row], what) for row, what in ordered.changes)
    report = LogReport(
        table.names, manner.temperature_unit, manner.humidity_unit, manner.date_order, kept.size, usual,
        tuple(left_out), _gaps(history, usual), changes, turned,
    )  # fmt: skip
    return history, report


def _history(ordered: Ordered, zoned: bool, celsius: FloatArray, percent: FloatArray) -> AirHistory:
    start = datetime(1970, 1, 1, tzinfo=UTC if zoned else None) + timedelta(seconds=float(ordered.seconds[0]))
    return AirHistory(start, ordered.seconds - ordered.seconds[0], celsius, percent)


def _gaps(history: AirHistory, usual: float) -> tuple[Gap, ...]:
    steps = np.diff(history.times)
    long = np.flatnonzero(steps > _GAP * usual)
    return tuple(Gap(history.moment(history.times[row]), float(steps[row]) / 3600.0) for row in long)


def _usual_interval(seconds: FloatArray) -> float:
    steps = np.diff(seconds)
    forward = steps[steps > 0]
    return float(np.median(forward)) if forward.size else 3600.0


def _reasons(table: LogTable, seconds: FloatArray, celsius: FloatArray, percent: FloatArray) -> list[str]:
    """Why each row cannot be used, or nothing."""
    reasons = np.full(seconds.size, "", dtype=object)
    reasons[~((celsius >= BELIEVABLE[0]) & (celsius <= BELIEVABLE[1]))] = "a temperature that no room has"
    reasons[~((percent >= 0.0) & (percent <= 100.0))] = "relative humidity outside 0 to 100 %"
    reasons[np.isnan(celsius)], reasons[np.isnan(percent)] = "no temperature", "no humidity"
    reasons[np.isnan(seconds)] = "a time that cannot be read"
    return [str(reason) for reason in reasons]


def _refuse_if_spoilt(left_out: Sequence[LeftOut], rows: int, file: str | None) -> None:
    """Refuse a file of which too much cannot be used; the same reading again does no harm."""
    spoilt = [row for row in left_out if row.why != "the same reading again"]
    if rows and len(spoilt) <= _SPOILT * rows and len(left_out) < rows:
        return
    if not rows:
        raise MakersFault([Fault(None, "", "no readings in the file", file=file)])
    first = spoilt[0] if spoilt else left_out[0]
    what = f"{len(spoilt)} of {rows} readings cannot be used"
    raise MakersFault([Fault(first.line, "", what, f"here: {first.why}", "mend the file, or log again", file)])


def _numbers(cells: Sequence[str]) -> FloatArray:
    """Figures with a point or a comma; not a number where there is none."""
    try:
        return floats([float(cell) for cell in cells])
    except ValueError:
        return floats([_number(cell) for cell in cells])


def _number(cell: str) -> float:
    try:
        return float(cell.replace(",", ".").rstrip("%°CFcf ").strip())
    except ValueError:
        return np.nan


def _temperature_unit(
    figures: FloatArray, name: str, said: TemperatureUnit | None, file: str | None
) -> tuple[TemperatureUnit, Fault | None]:
    """The unit, and the question to ask where it is not stated or not believed; what the maker says is believed."""
    stated = said or _stated_temperature(name)
    if said or not np.isfinite(figures).any():
        return stated or "C", None
    middle = float(np.nanmedian(figures))
    as_celsius, as_fahrenheit = f"{middle:.1f} C", f"{(middle - 32.0) / 1.8:.1f} C if it is F"
    if stated is None:
        what = f'the column "{name}" gives no unit, and its median is {middle:.1f}'
        return "C", Fault(None, "temperature", what, f"that is {as_celsius}, or {as_fahrenheit}", "say C or F", file)
    believed, other = (middle, (middle - 32.0) / 1.8)[:: 1 if stated == "C" else -1]
    doubtful = not LIVED_IN[0] <= believed <= LIVED_IN[1] and SURELY_LIVED_IN[0] <= other <= SURELY_LIVED_IN[1]
    what = f'the column "{name}" says {stated}, and its median is {middle:.1f}'
    why = f"that is {believed:.1f} C, and would be {other:.1f} C in the other unit"
    return stated, Fault(None, "temperature", what, why, "say C or F", file) if doubtful else None


def _stated_temperature(name: str) -> TemperatureUnit | None:
    words = "".join(letter if letter.isalnum() else " " for letter in name.lower()).split()
    if {"f", "fahrenheit", "degf"} & set(words):
        return "F"
    return "C" if {"c", "celsius", "centigrade", "degc"} & set(words) else None


def _humidity_unit(
    figures: FloatArray, name: str, said: HumidityUnit | None, file: str | None
) -> tuple[HumidityUnit, Fault | None]:
    """The unit, and the question to ask where figures and unit do not go together."""
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
