"""Logs that no logger should write: times that no clock shows, lines and fields without end, a million rows.

At the gate an eighth of a million, which may take an eighth of the room.
"""

import json
from collections.abc import Callable
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from tests.walks import fewer

from gramil.faults import MakersFault
from gramil.wood.air_log import read_air_log

HEADER = "time,temperature C,humidity %"
READ = """
from pathlib import Path
from gramil.air.air_of_places import load_air
from gramil.faults import MakersFault

def reading(log):
    try:
        history, report = load_air(log)
    except MakersFault as fault:
        return f"REFUSED {fault}"
    counts = (history.times.size, report.lines_left_out, report.gaps_in_all, len(report.left_out), len(report.gaps))
    return " ".join(map(str, counts))

in_branches(reading, map(Path, words))
"""
MOST = 200
"""MB for any log of a million rows, the program itself among them."""
PROGRAM, ANY_FILE = 85, 4
"""MB that the program takes by itself, measured by hand, and what any file takes, however few its rows."""
ROWS = fewer(1_000_000, 125_000)
BROUGHT_IN = """
from gramil.cli.air_log import log
log(["shop", *words], standalone_mode=False)
"""
SHOP = 'gramil = 1\n[shop]\nname = "Drawn"\nunits = "mm"\n[[place]]\nname = "shop"\nlog = "air.csv"\n'


def minutely(count: int, step: int = 5) -> list[str]:
    begin = datetime(2015, 1, 1)
    return [
        f"{begin + timedelta(minutes=step * row):%Y-%m-%d %H:%M:%S},{18 + row % 40 / 10:.1f},45.0"
        for row in range(count)
    ]


@pytest.mark.parametrize(
    "time",
    [
        "2025-03-12 10:99", "2025-03-12 10:10:75", "2025-03-12 25:00", "2025-03-12 24:01", "9999-12-31 23:59",
        "0001-01-01 00:00", "1970-01-01 00:00", "2025-03-12 14:00 AM", "2025-02-30 10:00", "2025-13-01 10:00",
        "2025-03-12", "10:00", "٢٠٢٥-٠٣-١٢ ١٠:٠٠",
    ],
)  # fmt: skip
def test_a_time_that_no_logger_shows_is_left_out(time: str) -> None:
    rows = minutely(40)
    rows[20] = f"{time},20.0,45.0"
    history, report = read_air_log("\n".join([HEADER, *rows]))
    assert history.times.size == 39
    assert [(row.line, row.why) for row in report.left_out] == [(22, "a time that cannot be read")]


@pytest.mark.parametrize("time", ["9999999999", "253402300799", "9999-12-31T23:59:59Z", "0001-01-01T00:00:00+14:00"])
def test_a_moment_that_no_logger_shows_is_left_out(time: str) -> None:
    rows = [f"2025-03-12T10:{minute:02d}:00Z,20.0,45.0" for minute in range(40)]
    rows[20] = f"{time},20.0,45.0"
    history, _ = read_air_log("\n".join([HEADER, *rows]))
    assert history.times.size == 39


@pytest.mark.parametrize(
    ("time", "read"),
    [("2025-03-12 24:00", datetime(2025, 3, 13)), ("12.03.2025 12:30 AM", datetime(2025, 3, 12, 0, 30)),
     ("12.03.2025 12:30 PM", datetime(2025, 3, 12, 12, 30)), ("12.03.2025 13:30 PM", datetime(2025, 3, 12, 13, 30))],
)  # fmt: skip
def test_times_at_the_edge_of_the_day(time: str, read: datetime) -> None:
    later = f"{time[:10]} 23:59".replace("2025-03-12", "2025-03-13").replace("12.03", "13.03")
    history, _ = read_air_log("\n".join([HEADER, f"{time},20.0,45.0", f"{later},20.0,45.0"]).replace("13.03", "14.03"))
    assert history.origin == read


@pytest.mark.parametrize(
    "names",
    [
        "Time,TempC,Hum(%)",
        "Time,TempC,rh",
        "Time,Temp_C,RH%",
        "Time,Temp.C,Hum.",
        "date,temperatureC,RH_pct",
        "Zeit,TemperaturC,rF rel. Feuchte",
    ],
)
def test_names_of_columns_are_read_for_what_they_say(names: str) -> None:
    history, report = read_air_log("\n".join([names, *minutely(20)]))
    assert (report.temperature_unit, report.humidity_unit) == ("C", "percent")
    assert history.temperature[1] == 18.1


def test_a_unit_joined_to_the_name_is_the_unit() -> None:
    rows = [row.replace(",1", ",6").replace(",2", ",7") for row in minutely(20)]
    history, report = read_air_log("\n".join(["Time,TempF,rh", *rows]))
    assert report.temperature_unit == "F"
    assert history.temperature[0] == pytest.approx((68 - 32) / 1.8)
    with pytest.raises(MakersFault, match="gives no unit"):
        read_air_log("\n".join(["Time,Tempo,rh", *rows]))


def test_a_date_with_its_short_year_first_is_not_taken_for_a_day() -> None:
    """25-01-30, 25-01-31, 25-02-01: days of 2025, not the 25th of years to come."""
    begin = datetime(2025, 1, 29)
    rows = [f"{begin + timedelta(hours=3 * row):%y-%m-%d %H:%M},20.0,45.0" for row in range(60)]
    history, report = read_air_log("\n".join([HEADER, *rows]))
    assert history.origin == begin
    assert report.date_order == "year first"


def _long_field(rows: list[str]) -> None:
    rows[500] = "2025-01-01 00:00:00," + "9" * 200_000 + ",45.0"


def _quote_left_open(rows: list[str]) -> None:
    rows[500] = '"' + rows[500]


def _long_heading(rows: list[str]) -> None:
    rows.insert(0, ";".join(["datum"] * 8000))
    rows.insert(0, "time," * 9000)


def _many_columns(rows: list[str]) -> None:
    rows[500] += ",1" * 20_000


MARRED: dict[Callable[[list[str]], None], str] = {
    _long_field: "letters",
    _quote_left_open: "is not CSV",
    _long_heading: "20000 0",
    _many_columns: "20000 0",
}


def _newest_first(rows: list[str]) -> list[str]:
    return rows[::-1]


def _every_row_twice(rows: list[str]) -> list[str]:
    return [row for row in rows[: len(rows) // 2] for _ in range(2)]


def _to_and_fro_with_gaps(rows: list[str]) -> list[str]:
    return [row for pair in zip(rows[::2], rows[::-2], strict=True) for row in pair if row[15] not in "12"]


def _broken(rows: list[str]) -> list[str]:
    return [row + ",🌡" if number % 12 else "x" for number, row in enumerate(rows)]


@pytest.fixture(scope="module")
def many() -> list[str]:
    """As many rows as any test reads, a minute apart."""
    times = np.datetime_as_string(
        np.datetime64("2015-01-01T00:00:00") + np.arange(max(ROWS, 185_000)) * np.timedelta64(60, "s")
    )
    return [f"{time},{18 + row % 40 / 10},45.0" for row, time in enumerate(times.tolist())]


FORMS: dict[Callable[[list[str]], list[str]], str] = {
    _newest_first: f"{ROWS} 0 0 0 0",
    _every_row_twice: f"{ROWS // 2} {ROWS // 2} 0 1000 0",
    _to_and_fro_with_gaps: "REFUSED",
    _broken: f"{ROWS * 11 // 12} {ROWS - ROWS * 11 // 12} 0 1000 0",
}
Read = tuple[str, int, float]
"""What was told of a log, how the branch that read it ended, and how many MB it held at the most."""


@pytest.fixture(scope="module")
def read(tmp_path_factory: pytest.TempPathFactory, bounded: Callable[..., Any], many: list[str]) -> dict[str, Read]:
    """All of these logs read by one program, each in a branch of its own; and one of an hour."""
    folder = tmp_path_factory.mktemp("logs")
    texts = {"an hour": [HEADER, *minutely(60, 1)]}
    for mar in MARRED:
        texts[mar.__name__] = rows = minutely(20_000)
        mar(rows)
        rows.insert(0 if mar is not _long_heading else 2, HEADER)
    texts |= {form.__name__: [HEADER, *form(many[:ROWS])] for form in FORMS}
    for name, rows in texts.items():
        (folder / name).write_text("\n".join(rows), encoding="utf-8")
    lines = bounded(READ, *(folder / name for name in texts)).said.splitlines()
    return {name: (said, status, held) for name, said, status, held, _ in map(json.loads, lines)}


@pytest.mark.parametrize("mar", MARRED, ids=lambda each: each.__name__)
def test_fields_without_end(read: dict[str, Read], mar: Callable[[list[str]], None]) -> None:
    told, status, held = read[mar.__name__]
    assert MARRED[mar] in told
    assert status == 0
    assert held < MOST


@pytest.mark.parametrize("form", FORMS, ids=lambda each: each.__name__)
def test_a_million_rows_take_little_room(read: dict[str, Read], form: Callable[[list[str]], list[str]]) -> None:
    (told, status, held), (_, _, alone) = read[form.__name__], read["an hour"]
    assert FORMS[form] in told
    assert status == 0
    assert held - alone < room(ROWS)


def room(rows: int) -> float:
    """MB that so many rows may take beside the program."""
    return (MOST - PROGRAM) * rows / 1_000_000 + ANY_FILE


def test_a_log_is_brought_into_a_large_file_in_little_room(
    tmp_path: Path, bounded: Callable[..., Any], many: list[str]
) -> None:
    """A million rows onto a million that half overlap, measured by hand: 181 MB. Here an eighth of that."""
    (tmp_path / "shop.toml").write_text(SHOP, encoding="utf-8")
    words = [tmp_path / "log.csv", "--shop", tmp_path / "shop.toml"]

    def brought(rows: list[str], kept: int) -> float:
        words[0].write_text("\n".join([HEADER, *rows]), encoding="utf-8")
        done = bounded(BROUGHT_IN, *words)
        assert f"has {kept} readings" in done.said
        return float(done.peak)

    program = brought(many[:60], 60)
    (tmp_path / "air.csv").write_text("\n".join([HEADER, *many[:125_000]]), encoding="utf-8")
    taken = brought(many[60_000:185_000], 185_000) - program
    assert taken < room(125_000)


def test_gaps_without_number_are_counted_and_the_first_told() -> None:
    """Of each ten minutes four are lost in one run."""
    rows = [row for number, row in enumerate(minutely(20_000, 1)) if number % 10 not in (1, 2, 3, 4)]
    _, report = read_air_log("\n".join([HEADER, *rows]))
    assert (report.gaps_in_all, len(report.gaps)) == (2000, 1000)
