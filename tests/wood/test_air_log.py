"""Loggers' files: forms of dates and columns, units, gaps, repeated rows, changed clocks, and what is refused."""

from collections.abc import Callable
from datetime import UTC, datetime, timedelta

import numpy as np
import pytest

from gramil.faults import MakersFault
from gramil.wood.air_log import LogAnswers, read_air_log

START = datetime(2025, 1, 14, 22, 0)
ISO = "%Y-%m-%d %H:%M"


def _log(
    count: int = 40,
    form: str = ISO,
    header: str = "time,temperature C,humidity %",
    row: Callable[[str, float, float], str] = lambda when, c, h: f"{when},{c:.1f},{h:.1f}",
    start: datetime = START,
    minutes: int = 10,
) -> str:
    """A log of a room that warms and dries slowly, over and over."""
    moments = [start + timedelta(minutes=minutes * step) for step in range(count)]
    rows = [
        row(moment.strftime(form), 18 + 0.1 * (step % 40), 50 - 0.2 * (step % 100))
        for step, moment in enumerate(moments)
    ]
    return "\n".join([header, *rows]) + "\n"


def _shuffled(when: str, celsius: float, humidity: float) -> str:
    return f"{humidity:.1f};x;{when};{celsius:.1f}"


@pytest.mark.parametrize(
    "form",
    [
        ISO,
        "%Y-%m-%dT%H:%M:%S",
        "%Y/%m/%d %H:%M",
        "%d.%m.%Y %H:%M",
        "%d/%m/%Y %H:%M:%S",
        "%m/%d/%Y %I:%M:%S %p",
        "%m/%d/%y %H:%M",
        "%d-%b-%Y %H:%M",
        "%d %B %Y %H:%M",
    ],
)
def test_dates_in_many_forms(form: str) -> None:
    """The 14th and 15th settle which is the day."""
    row = lambda when, c, h: f"{when};{c:.1f};{h:.1f}"  # noqa: E731
    history, report = read_air_log(_log(form=form, header="time;temperature C;humidity %", row=row))
    assert history.origin == START
    assert history.times == pytest.approx(np.arange(40) * 600.0)
    assert report.readings == 40
    assert not report.left_out


def test_zoned_times_and_seconds_since_1970() -> None:
    zoned, _ = read_air_log(_log(form="%Y-%m-%dT%H:%M:%S+02:00"))
    assert zoned.origin == (START - timedelta(hours=2)).replace(tzinfo=UTC)
    moments = [START.replace(tzinfo=UTC) + timedelta(minutes=10 * step) for step in range(5)]
    rows = [f"{moment.timestamp():.0f},20.0,45.0" for moment in moments]
    counted, _ = read_air_log("\n".join(["timestamp,temperature C,rh", *rows]))
    assert counted.origin == moments[0]
    assert counted.times[-1] == 2400.0


def test_columns_in_any_order_with_others_between() -> None:
    text = _log(header="RH (%);battery;Date/Time;Temp (°C)", row=_shuffled)
    history, report = read_air_log(text)
    assert (history.temperature[0], history.humidity[0]) == (18.0, 50.0)
    assert report.columns == {"time": "Date/Time", "temperature": "Temp (°C)", "humidity": "RH (%)"}


def test_date_and_time_of_day_in_two_columns_and_lines_before_the_header() -> None:
    row = lambda when, c, h: f"{when.split()[1]},{when.split()[0]},{c:.1f},{h:.1f},12.3"  # noqa: E731
    text = "Logger 7\nSerial,123\n\n" + _log(header="Time,Date,Temperature [C],Humidity [%],Dew point [C]", row=row)
    history, report = read_air_log(text)
    assert history.origin == START
    assert report.columns["time"] == "Date + Time"


def test_decimal_commas() -> None:
    row = lambda when, c, h: f"{when};{c:.1f};{h:.1f}".replace(".", ",")  # noqa: E731
    history, _ = read_air_log(_log(header="Zeit;Temperatur °C;rel. Feuchte %", row=row))
    assert history.temperature[:2] == pytest.approx([18.0, 18.1])


def test_fahrenheit_by_its_name() -> None:
    row = lambda when, c, h: f"{when},{c * 1.8 + 32:.2f},{h:.1f}"  # noqa: E731
    history, report = read_air_log(_log(header="time,Temp(°F),Humidity(%)", row=row))
    assert history.temperature == pytest.approx(18 + 0.1 * np.arange(40), abs=0.01)
    assert report.temperature_unit == "F"


@pytest.mark.parametrize(
    ("header", "scale", "question"),
    [
        ("time,temperature,humidity %", 1.0, "no unit"),
        ("time,temperature C,humidity %", 1.8, "says C"),
        ("time,temperature F,humidity %", 1.0, "says F"),
    ],
)
def test_a_unit_that_is_missing_or_not_believed_is_asked_about(header: str, scale: float, question: str) -> None:
    row = lambda when, c, h: f"{when},{c * scale + (32 if scale > 1 else 0):.1f},{h:.1f}"  # noqa: E731
    text = _log(header=header, row=row)
    with pytest.raises(MakersFault, match=question):
        read_air_log(text, "shop.csv")
    history, _ = read_air_log(text, answers=LogAnswers(temperature_unit="F" if scale > 1 else "C"))
    assert history.temperature[0] == pytest.approx(18.0, abs=0.05)


def test_fractional_humidity_is_asked_about() -> None:
    text = _log(row=lambda when, c, h: f"{when},{c:.1f},{h / 100:.3f}")
    with pytest.raises(MakersFault, match="over 1"):
        read_air_log(text)
    history, _ = read_air_log(text, answers=LogAnswers(humidity_unit="fraction"))
    assert history.humidity[0] == pytest.approx(50.0)


def test_humidity_over_a_hundred() -> None:
    """A single one is left out and told; a log of them is refused."""
    lines = _log(count=200).splitlines()
    lines[50] = lines[50].rsplit(",", 1)[0] + ",104.0"
    history, report = read_air_log("\n".join(lines))
    assert history.times.size == 199
    assert [(row.line, row.why) for row in report.left_out] == [(51, "relative humidity outside 0 to 100 %")]
    with pytest.raises(MakersFault, match="100 %"):
        read_air_log(_log(row=lambda when, c, h: f"{when},{c:.1f},{h + 80:.1f}"))


@pytest.mark.parametrize("day", [3, 5])
def test_dates_that_could_be_two_days_are_asked_about(day: int) -> None:
    text = _log(form="%d/%m/%Y %H:%M", start=datetime(2025, 4, day, 8, 0), count=20)
    with pytest.raises(MakersFault, match="day and month"):
        read_air_log(text)
    history, _ = read_air_log(text, answers=LogAnswers(date_order="month first"))
    assert history.origin == datetime(2025, day, 4, 8, 0)


def test_dates_that_follow_day_by_day_settle_it() -> None:
    text = _log(form="%d/%m/%Y %H:%M", start=datetime(2025, 4, 2, 8, 0), count=600)
    history, report = read_air_log(text)
    assert history.origin == datetime(2025, 4, 2, 8, 0)
    assert report.date_order == "day first"


def test_one_impossible_date_does_not_turn_the_others_round() -> None:
    lines = _log(form="%d/%m/%Y %H:%M", count=60).splitlines()
    lines[3] = "31/02/2025 09:00,20.0,45.0"
    history, report = read_air_log("\n".join(lines))
    assert history.origin == START
    assert [row.line for row in report.left_out] == [4]


def test_gaps_are_told() -> None:
    lines = _log(count=100).splitlines()
    history, report = read_air_log("\n".join(lines[:41] + lines[71:]))
    assert history.times.size == 70
    assert [(gap.begins, gap.hours) for gap in report.gaps] == [
        (START + timedelta(minutes=390), pytest.approx(31 * 10 / 60))
    ]


def test_rows_read_out_twice_are_taken_once() -> None:
    lines = _log(count=60).splitlines()
    history, report = read_air_log("\n".join(lines[:41] + lines[21:]))
    assert history.times == pytest.approx(np.arange(60) * 600.0)
    assert {row.why for row in report.left_out} == {"the same reading again"}
    assert len(report.left_out) == 20


def test_an_hour_read_out_twice_on_a_weekday_is_no_change_of_the_clock() -> None:
    lines = _log(count=60).splitlines()
    history, report = read_air_log("\n".join(lines[:41] + lines[35:]))
    assert not report.clock_changes
    assert history.times.size == 60


def test_a_clock_put_back_and_forward() -> None:
    """26 October 2025 at 03:00 back to 02:00; 30 March 2025 at 02:00 on to 03:00: true time runs on evenly."""
    autumn = datetime(2025, 10, 26, 0, 0)
    shown = [autumn + timedelta(minutes=10 * step - (60 if step >= 18 else 0)) for step in range(60)]
    rows = [f"{moment:%Y-%m-%d %H:%M},20.0,45.0" for moment in shown]
    history, report = read_air_log("\n".join(["time,temperature C,humidity %", *rows]))
    assert history.times == pytest.approx(np.arange(60) * 600.0)
    assert [change.why for change in report.clock_changes] == ["the clock was put back an hour"]
    spring = datetime(2025, 3, 30, 0, 0)
    shown = [spring + timedelta(minutes=10 * step + (60 if step >= 12 else 0)) for step in range(60)]
    rows = [f"{moment:%Y-%m-%d %H:%M},20.0,45.0" for moment in shown]
    history, report = read_air_log("\n".join(["time,temperature C,humidity %", *rows]))
    assert history.times == pytest.approx(np.arange(60) * 600.0)
    assert [change.why for change in report.clock_changes] == ["the clock was put forward an hour"]
    assert not report.gaps


def test_an_hourly_log_over_a_change_and_with_a_second_reading_of_one_hour() -> None:
    night = [0, 1, 2, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]
    rows = [f"2025-10-26 {hour:02d}:00,{20 + 0.1 * step:.1f},45.0" for step, hour in enumerate(night)]
    history, report = read_air_log("\n".join(["time,temperature C,humidity %", *rows]))
    assert history.times == pytest.approx(np.arange(14) * 3600.0)
    assert len(report.clock_changes) == 1
    weekday = [row.replace("10-26", "10-29") for row in rows]
    history, report = read_air_log("\n".join(["time,temperature C,humidity %", *weekday]))
    assert not report.clock_changes
    assert [row.why for row in report.left_out] == ["another reading of the same time"]
    assert history.times[-1] == 12 * 3600.0


def test_an_hour_missing_at_noon_is_a_gap_and_no_change_of_the_clock() -> None:
    lines = _log(count=60, start=datetime(2025, 3, 26, 9, 0)).splitlines()
    _, report = read_air_log("\n".join(lines[:21] + lines[27:]))
    assert not report.clock_changes
    assert len(report.gaps) == 1


def test_times_that_run_backward() -> None:
    lines = _log(count=200).splitlines()
    lines[120], lines[100] = lines[100], lines[120]
    _, report = read_air_log("\n".join(lines))
    assert "the time runs backward" in {row.why for row in report.left_out}
    assert not report.newest_first


def _turned(text: str) -> str:
    header, *rows = text.splitlines()
    return "\n".join([header, *reversed(rows)]) + "\n"


@pytest.mark.parametrize("minutes", [1, 5, 10, 30, 60, 120])
def test_a_log_that_runs_newest_first_is_turned_round_and_told(minutes: int) -> None:
    """A day of air stays a day of air, whatever the steps."""
    count = 24 * 60 // minutes
    history, report = read_air_log(_turned(_log(count=count, minutes=minutes)))
    assert history.origin == START
    assert history.times == pytest.approx(np.arange(count) * 60.0 * minutes)
    assert history.temperature[:3] == pytest.approx([18.0, 18.1, 18.2])
    assert report.newest_first
    assert not report.clock_changes
    assert not report.left_out


def test_a_log_that_runs_to_and_fro_is_refused() -> None:
    header, *rows = _log(count=60).splitlines()
    mixed = [row for pair in zip(rows[:30], reversed(rows[30:]), strict=True) for row in pair]
    with pytest.raises(MakersFault, match="to and fro"):
        read_air_log("\n".join([header, *mixed]))


def test_rows_that_cannot_be_read_are_told_with_their_line() -> None:
    lines = _log(count=100).splitlines()
    lines[10], lines[20], lines[30], lines[40] = (
        "soon,20.0,45.0",
        lines[20] + "x",
        "2025-01-15 01:00",
        "2025-02-31 01:00,20,45",
    )
    _, report = read_air_log("\n".join(lines))
    assert [(row.line, row.why) for row in report.left_out] == [
        (11, "a time that cannot be read"),
        (21, "no humidity"),
        (31, "too few columns"),
        (41, "a time that cannot be read"),
    ]


def test_two_columns_that_could_be_meant_are_asked_about() -> None:
    row = lambda when, c, h: f"{when},{c:.1f},{c + 5:.1f},{h:.1f}"  # noqa: E731
    text = _log(header="time,temp inside C,temp outside C,humidity %", row=row)
    with pytest.raises(MakersFault, match="temp outside C"):
        read_air_log(text)
    history, _ = read_air_log(text, answers=LogAnswers(columns={"temperature": "temp inside C"}))
    assert history.temperature[0] == 18.0


@pytest.mark.parametrize("text", ["", "hello\nworld\n", "time,temperature C\n2025-01-01 00:00,20\n"])
def test_a_file_that_is_no_log_is_refused_with_what_to_write(text: str) -> None:
    with pytest.raises(MakersFault, match="Name the columns"):
        read_air_log(text)


def test_a_log_without_rows_is_refused() -> None:
    with pytest.raises(MakersFault, match="no readings"):
        read_air_log("time,temperature C,humidity %\n")
