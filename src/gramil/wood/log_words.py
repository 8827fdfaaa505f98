"""A report on a logger's file in sentences: how it was read, what was left out and why, gaps, changes of the clock."""

from collections.abc import Iterator

from gramil.wood.air import AirHistory
from gramil.wood.air_log import LogReport

SHOWN = 8
"""Lines left out that are listed one by one."""


def report_lines(history: AirHistory, report: LogReport, file: str) -> Iterator[str]:
    """The report: how the file was read, and what was found on the way."""
    first, last = history.moment(history.times[0]), history.moment(history.times[-1])
    columns = ", ".join(f'{what} from "{name}"' for what, name in report.columns.items())
    yield f"{file}: {report.readings} readings, {first:%Y-%m-%d %H:%M} to {last:%Y-%m-%d %H:%M}, {columns}."
    yield (
        f"Temperature in {report.temperature_unit}, humidity as {report.humidity_unit}, dates {report.date_order}, "
        f"a reading every {report.interval / 60:.0f} minutes."
    )
    yield from found_on_the_way(report)


def found_on_the_way(report: LogReport) -> Iterator[str]:
    """What was done to a file's rows: reversed, left out, gaps, and changes of the clock corrected."""
    if report.newest_first:
        yield "  The file runs newest first: it was turned round."
    for row in report.left_out[:SHOWN]:
        yield f"  line {row.line} left out: {row.why}"
    if report.lines_left_out > SHOWN:
        yield f"  and {report.lines_left_out - SHOWN} more left out"
    for gap in report.gaps[:SHOWN]:
        yield f"  no readings for {gap.hours:.1f} hours from {gap.begins:%Y-%m-%d %H:%M}"
    if report.gaps_in_all > SHOWN:
        yield f"  and {report.gaps_in_all - SHOWN} more gaps"
    for change in report.clock_changes:
        yield f"  line {change.line}: {change.why}, taken out"
