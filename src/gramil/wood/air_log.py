"""Reading a data logger's file into a place's air, with a report of what was left out and why.

Units come from the names of the columns or from the maker. If figures and units do not fit, or there is no
unit, the file is refused with the question to answer. A file is read in one pass and kept as arrays, so that a million
readings need as little memory as possible.
"""

import io
from array import array
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta
from typing import BinaryIO

import numpy as np
from numpy.typing import NDArray

from gramil.faults import Fault, MakersFault
from gramil.wood.air import AirHistory
from gramil.wood.clock_changes import ClockAnswer
from gramil.wood.log_lines import lines_of
from gramil.wood.log_order import AGAIN, WORDS, LogRows, newest_first, put_in_order, usual_interval
from gramil.wood.log_table import LogTable, find_table
from gramil.wood.log_times import DateOrder, TimeCells
from gramil.wood.log_units import HumidityUnit, TemperatureUnit, humidity_unit, temperature_unit

BELIEVABLE = (-40.0, 60.0)
"""C; a reading outside is left out."""
MOST_TOLD = 1000
"""How many lines left out, and how many gaps, are named one by one; all are counted."""
_GAP = 3.0  # usual intervals without a reading
_SPOILT = 0.1  # share of rows that may be left out before the file is refused
_REASONS = (
    *WORDS,
    "too few columns",
    "a time that cannot be read",
    "no humidity",
    "no temperature",
    "relative humidity outside 0 to 100 %",
    "a temperature that no room has",
)
_SHORT, _NO_TIME, _NO_HUMIDITY, _NO_TEMPERATURE, _WET, _HOT = range(len(WORDS), len(_REASONS))


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
    """How a file was read: columns by what they hold, units, the order of dates, and what was found.

    `left_out` and `gaps` are the first few, `lines_left_out` and `gaps_in_all` the totals; `newest_first`
    says that the file ran from the last reading to the first, and was reversed.
    """

    columns: Mapping[str, str]
    temperature_unit: TemperatureUnit
    humidity_unit: HumidityUnit
    date_order: DateOrder
    readings: int
    interval: float
    left_out: tuple[LeftOut, ...]
    lines_left_out: int
    gaps: tuple[Gap, ...]
    gaps_in_all: int
    clock_changes: tuple[LeftOut, ...]
    newest_first: bool


@dataclass(frozen=True)
class LogAnswers:
    """The maker's answers about a file: units, the order of dates, whether its clock was changed, and columns for
    "time", "temperature", "humidity".
    """

    temperature_unit: TemperatureUnit | None = None
    humidity_unit: HumidityUnit | None = None
    date_order: DateOrder | None = None
    columns: Mapping[str, str] | None = None
    clock: ClockAnswer | None = None


def read_air_log(
    log: str | BinaryIO, file: str | None = None, answers: LogAnswers | None = None
) -> tuple[AirHistory, LogReport]:
    """Air from a logger's text or open file, and how it was read.

    Raises MakersFault with what to answer or mend: missing columns, a unit that is missing or not plausible, humidity
    over 100 %, ambiguous dates, a clock that changes too often, or a tenth of the rows unusable.
    """
    said = answers or LogAnswers()
    stream = io.BytesIO(log.encode("utf-8", "replace")) if isinstance(log, str) else log
    rows, short, manner = _rows(find_table(lines_of(stream, file), said.columns or {}, file), said, file)
    count, reasons = rows.seconds.size + short.size, _reasons(rows)
    lines, why = np.concatenate([rows.lines[reasons > 0], short]), reasons[reasons > 0]
    rows = rows.picked(reasons == 0)
    turned = newest_first(rows.seconds, file)
    rows = rows.picked(slice(None, None, -1)) if turned else rows
    interval = usual_interval(rows.seconds)
    ordered = put_in_order(rows, manner.zoned, said.clock, file)
    why = np.concatenate([why, np.full(short.size, _SHORT, np.int8), ordered.why])
    left_out = _LeftOut(np.concatenate([lines, ordered.skipped]), why)
    _refuse_if_spoilt(left_out, count, file)
    history = _history(ordered.rows, manner.zoned)
    return history, _report(history, manner, interval, left_out, ordered.changes, turned)


@dataclass(frozen=True)
class _Manner:
    columns: Mapping[str, str]
    temperature_unit: TemperatureUnit
    humidity_unit: HumidityUnit
    date_order: DateOrder
    zoned: bool


def _rows(table: LogTable, said: LogAnswers, file: str | None) -> tuple[LogRows, NDArray[np.integer], _Manner]:
    """The rows of a table, in C and percent; the lines with too few columns; and how they were read."""
    cells = _Cells(table)
    times = cells.times.read(said.date_order, file)
    celsius, percent = cells.temperature, cells.humidity
    t_unit, t_fault = temperature_unit(celsius, table.names["temperature"], said.temperature_unit, file)
    h_unit, h_fault = humidity_unit(percent, table.names["humidity"], said.humidity_unit, file)
    if faults := [fault for fault in (t_fault, h_fault) if fault]:
        raise MakersFault(faults)
    if t_unit == "F":
        celsius -= 32.0
        celsius /= 1.8
    if h_unit == "fraction":
        percent *= 100.0
    rows = LogRows(cells.lines, times.seconds, celsius, percent)
    return rows, cells.short, _Manner(table.names, t_unit, h_unit, times.order, times.zoned)


class _Cells:
    """The cells of a log as arrays, one entry for each row; `short` are lines with too few columns."""

    def __init__(self, table: LogTable) -> None:
        lines, short, temperature, humidity = array("i"), array("i"), array("d"), array("d")
        self.times = TimeCells()
        for line, cells in table.rows:
            if cells is None:
                short.append(line)
                continue
            lines.append(line)
            self.times.add(cells[0])
            temperature.append(_number(cells[1]))
            humidity.append(_number(cells[2]))
        self.lines, self.short = np.asarray(lines, np.intc), np.asarray(short, np.intc)
        self.temperature, self.humidity = np.asarray(temperature, float), np.asarray(humidity, float)


@dataclass(frozen=True)
class _LeftOut:
    """Lines left out, each with the number of its reason."""

    lines: NDArray[np.integer]
    why: NDArray[np.int8]

    def first(self) -> tuple[LeftOut, ...]:
        """The first of them in the file, in its order."""
        order = np.argsort(self.lines, kind="stable")[:MOST_TOLD]
        pairs = zip(self.lines[order].tolist(), self.why[order].tolist(), strict=True)
        return tuple(LeftOut(line, _REASONS[reason]) for line, reason in pairs)


def _report(
    history: AirHistory,
    manner: _Manner,
    interval: float,
    left_out: _LeftOut,
    changes: Sequence[tuple[int, str]],
    turned: bool,
) -> LogReport:
    long = np.flatnonzero(np.diff(history.times) > _GAP * interval)
    return LogReport(
        manner.columns, manner.temperature_unit, manner.humidity_unit, manner.date_order, history.times.size, interval,
        left_out.first(), left_out.lines.size, tuple(_gaps(history, long)), long.size,
        tuple(LeftOut(line, what) for line, what in changes), turned,
    )  # fmt: skip


def _history(rows: LogRows, zoned: bool) -> AirHistory:
    # rows count from there, so that clock changes can be told by the day
    start = datetime(1970, 1, 1, tzinfo=UTC if zoned else None) + timedelta(seconds=float(rows.seconds[0]))
    return AirHistory(start, rows.seconds - rows.seconds[0], rows.celsius, rows.percent)


def _gaps(history: AirHistory, long: NDArray[np.integer]) -> Iterator[Gap]:
    for row in long[:MOST_TOLD]:
        begins, ends = history.times[row : row + 2]
        yield Gap(history.moment(begins), float(ends - begins) / 3600.0)


def _reasons(rows: LogRows) -> NDArray[np.int8]:
    """Why each row cannot be used, by its number among the reasons, or 0."""
    reasons = np.zeros(rows.seconds.size, np.int8)
    reasons[~((rows.celsius >= BELIEVABLE[0]) & (rows.celsius <= BELIEVABLE[1]))] = _HOT
    reasons[~((rows.percent >= 0.0) & (rows.percent <= 100.0))] = _WET
    reasons[np.isnan(rows.celsius)], reasons[np.isnan(rows.percent)] = _NO_TEMPERATURE, _NO_HUMIDITY
    reasons[np.isnan(rows.seconds)] = _NO_TIME
    return reasons


def _refuse_if_spoilt(left_out: _LeftOut, rows: int, file: str | None) -> None:
    """Refuse a file if too much of it cannot be used; repeated readings are not counted against it."""
    spoilt = left_out.why != AGAIN
    count = int(np.count_nonzero(spoilt))
    if rows and count <= _SPOILT * rows and left_out.lines.size < rows:
        return
    if not rows:
        raise MakersFault([Fault(None, "", "no readings in the file", file=file)])
    first = int(np.argmin(np.where(spoilt, left_out.lines, np.iinfo(np.int64).max)))
    what, here = f"{count} of {rows} readings cannot be used", f"here: {_REASONS[left_out.why[first]]}"
    raise MakersFault([Fault(int(left_out.lines[first]), "", what, here, "mend the file, or log again", file)])


def _number(cell: str) -> float:
    """A figure with a point or a comma; nan if there is none."""
    try:
        return float(cell)
    except ValueError:
        pass
    try:
        return float(cell.replace(",", ".").rstrip("%°CFcf ").strip())
    except ValueError:
        return np.nan
