"""Which way a log runs, rows again, and clocks put forward and back: air that is believed is true, or the log refused.

Nights in which clocks change are those of summer time in Europe, by its directive (2000/84/EC): the last Sundays of
March and of October, at one o'clock in universal time.
"""

from datetime import UTC, datetime, timedelta
from zoneinfo import ZoneInfo

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from gramil.faults import MakersFault
from gramil.wood.air import AirHistory
from gramil.wood.air_log import LogAnswers, LogReport, read_air_log

BERLIN = ZoneInfo("Europe/Berlin")
HEADER = "time,temperature C,humidity %"
SPRING, AUTUMN = datetime(2025, 3, 30, 1, tzinfo=UTC), datetime(2025, 10, 26, 1, tzinfo=UTC)


def air(step: int) -> str:
    """A room's air, different at every step."""
    return f"{18 + 0.01 * (step % 300):.2f},{40 + 0.01 * (step % 1000):.2f}"


def by_the_wall(begin: datetime, minutes: int, count: int, zone: ZoneInfo = BERLIN) -> list[str]:
    """Rows of a log whose clock follows its zone, from a moment in universal time."""
    moments = [(begin + timedelta(minutes=minutes * step)).astimezone(zone) for step in range(count)]
    return [f"{moment:%Y-%m-%d %H:%M},{air(step)}" for step, moment in enumerate(moments)]


def read(rows: list[str], answers: LogAnswers | None = None) -> tuple[AirHistory, LogReport]:
    return read_air_log("\n".join([HEADER, *rows]), answers=answers)


@pytest.mark.parametrize("minutes", [1, 5, 10, 15, 20, 30, 60, 90, 120, 180])
@pytest.mark.parametrize(("moment", "way"), [(SPRING, "forward"), (AUTUMN, "back")])
@pytest.mark.parametrize("offset", [0, 7, 20])
def test_a_change_is_seen_whatever_the_step(minutes: int, moment: datetime, way: str, offset: int) -> None:
    count = 2 * 24 * 60 // minutes
    begin = moment - timedelta(days=1) + timedelta(minutes=offset)
    history, report = read(by_the_wall(begin, minutes, count))
    assert [change.why for change in report.clock_changes] == [f"the clock was put {way} an hour"]
    assert history.times == pytest.approx(np.arange(count) * 60.0 * minutes)
    assert not report.left_out
    assert not report.gaps


@pytest.mark.parametrize("minutes", [10, 60, 120])
def test_three_years_by_the_wall_clock_have_six_changes(minutes: int) -> None:
    count = 3 * 365 * 24 * 60 // minutes
    history, report = read(by_the_wall(datetime(2023, 1, 9, tzinfo=UTC), minutes, count))
    assert len(report.clock_changes) == 6
    assert history.times == pytest.approx(np.arange(count) * 60.0 * minutes)


@pytest.mark.parametrize("zone", ["America/New_York", "Australia/Sydney", "Europe/London", "Pacific/Auckland"])
def test_clocks_of_other_places(zone: str) -> None:
    count = 365 * 24 * 2
    history, report = read(by_the_wall(datetime(2024, 6, 1, tzinfo=UTC), 30, count, ZoneInfo(zone)))
    assert len(report.clock_changes) == 2
    assert history.times == pytest.approx(np.arange(count) * 1800.0)


def test_an_hourly_log_that_loses_readings_is_asked_about_its_clock() -> None:
    rows = by_the_wall(SPRING - timedelta(days=4), 60, 24 * 8)
    lossy = rows[:30] + rows[31:]
    with pytest.raises(MakersFault, match=r"put forward, or a reading was lost.*[Ss]ay whether this clock was changed"):
        read(lossy)
    _, report = read(lossy, LogAnswers(clock="changed"))
    assert len(report.clock_changes) == 1
    _, report = read(lossy, LogAnswers(clock="not changed"))
    assert not report.clock_changes


@pytest.mark.parametrize("minutes", [60, 120])
def test_a_lost_reading_on_another_day_or_in_another_month_is_no_change(minutes: int) -> None:
    for sunday in (
        datetime(2025, 1, 12, tzinfo=UTC),
        datetime(2025, 7, 6, tzinfo=UTC),
        datetime(2025, 3, 26, tzinfo=UTC),
    ):
        rows = by_the_wall(sunday - timedelta(days=1), minutes, 3 * 24 * 60 // minutes)
        lost = 24 * 60 // minutes + 1
        _, report = read(rows[:lost] + rows[lost + 1 :])
        assert not report.clock_changes


def test_a_clock_that_is_put_back_twice_in_a_year_is_refused() -> None:
    later = AUTUMN + timedelta(days=30)
    rows = by_the_wall(AUTUMN - timedelta(days=1), 10, 40 * 144)
    at = next(number for number, row in enumerate(rows) if row.startswith(f"{later:%Y-%m-%d}"))
    moments = [datetime.fromisoformat(row[:16]) - timedelta(hours=1) for row in rows[at:]]
    back = [f"{moment:%Y-%m-%d %H:%M},{row[17:]}" for moment, row in zip(moments, rows[at:], strict=True)]
    with pytest.raises(MakersFault, match="for the second time within a year"):
        read(rows[:at] + back)


def test_an_hour_read_out_twice_in_the_night_of_a_sunday_is_no_change() -> None:
    """Europe's night, in a log whose clock stays: the same rows again are not another hour."""
    rows = by_the_wall(AUTUMN - timedelta(hours=12), 10, 24 * 6, ZoneInfo("UTC"))
    history, report = read(rows[:78] + rows[72:])
    assert not report.clock_changes
    assert history.times.size == 24 * 6


def test_a_single_row_an_hour_early_is_no_change_of_the_clock() -> None:
    rows = by_the_wall(datetime(2025, 5, 14, tzinfo=UTC), 10, 144)
    early = datetime.fromisoformat(rows[70][:16]) - timedelta(hours=1)
    rows[70] = f"{early:%Y-%m-%d %H:%M},{air(999)}"
    history, report = read(rows)
    assert not report.clock_changes
    assert [row.line for row in report.left_out] == [72]
    assert history.times[-1] == 143 * 600.0


ODD = st.sampled_from(
    ["", "soon,20,45", "2025-03-30 02:99,20.0,45.0", "9999-12-31 23:59,20,45", "2025-01-01,1", "2025-10-26 02:10,19,41",
     "2025-03-30T02:10:00+02:00,20,45", "1742000000,20,45", "03/04/2025 10:00,20,45", "2025-03-29 12:00,,", "x,x,x"]
)  # fmt: skip


@given(
    begin=st.datetimes(datetime(2025, 3, 28), datetime(2025, 3, 30))
    | st.datetimes(datetime(2025, 10, 24), datetime(2025, 10, 26)),
    minutes=st.sampled_from([1, 5, 10, 30, 60, 120]),
    count=st.integers(1, 150),
    repeats=st.lists(st.tuples(st.integers(0, 149), st.integers(1, 30)), max_size=3),
    odd=st.lists(st.tuples(st.integers(0, 150), ODD), max_size=3),
    form=st.sampled_from(["%Y-%m-%d %H:%M", "%d/%m/%Y %H:%M", "%m/%d/%y %I:%M %p", "%d %b %Y %H:%M"]),
)  # fmt: skip
def test_a_log_reversed_gives_the_same_air_or_is_refused_as_well(
    begin: datetime,
    minutes: int,
    count: int,
    repeats: list[tuple[int, int]],
    odd: list[tuple[int, str]],
    form: str,
) -> None:
    """Whatever a log holds: clocks that change, rows again, rows astray, cells in another form."""
    moments = [
        (begin.replace(tzinfo=UTC) + timedelta(minutes=minutes * step)).astimezone(BERLIN) for step in range(count)
    ]
    rows = [f"{moment.strftime(form)},{air(step)}" for step, moment in enumerate(moments)]
    for at, many in repeats:
        rows[at : at + many] = rows[at : at + many] * 2
    for at, row in odd:
        rows.insert(min(at, len(rows)), row)
    found, turned = (_air_or_nothing(each) for each in (rows, rows[::-1]))
    assert found == turned


def _air_or_nothing(rows: list[str]) -> object:
    try:
        history, _ = read(rows)
    except MakersFault:
        return None
    return history.origin, history.times.tolist(), history.temperature.tolist(), history.humidity.tolist()
