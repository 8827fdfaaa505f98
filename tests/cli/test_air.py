"""Air from the command line: a logger's file read with its questions, and how each place stands."""

from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from gramil.air import air_of_places
from gramil.cli import gramil
from gramil.faults import MakersFault

SHOP = """
gramil = 1
[shop]
name = "shed"
units = "mm"
[[place]]
name = "shed"
log = "shed-air.csv"
room = 50
air_changes = [0.5, 0.5]
air_from = "house"
[[place]]
name = "house"
readings = [{ at = 2026-01-19T08:00:00, temperature = 20, humidity = 40 }]
"""


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    (tmp_path / "shop.toml").write_text(SHOP, encoding="utf-8")
    return tmp_path


def run(*words: str) -> Result:
    return CliRunner().invoke(gramil, list(words))


def logged(folder: Path, text: str, *more: str) -> Result:
    (folder / "logger.csv").write_text(text, encoding="utf-8")
    return run("air", "log", "shed", str(folder / "logger.csv"), "--shop", str(folder / "shop.toml"), *more)


def rows(count: int, temperature: str = "16.0", humidity: str = "31") -> str:
    return "".join(f"2026-01-19 08:{minute:02d},{temperature},{humidity}\n" for minute in range(count))


def test_readings_go_into_the_place_and_again_change_nothing(folder: Path) -> None:
    text = "time,temperature C,rh %\n" + rows(20)
    done = logged(folder, text)
    assert done.exit_code == 0, done.output
    written = (folder / "shed-air.csv").read_text(encoding="utf-8")
    assert written.splitlines()[:2] == ["time,temperature C,relative humidity %", "2026-01-19 08:00:00,16.00,31.00"]
    assert len(written.splitlines()) == 21
    again = logged(folder, text)
    assert "0 of them are new" in again.output
    assert (folder / "shed-air.csv").read_text(encoding="utf-8") == written


def test_a_file_of_the_place_whose_times_are_in_a_zone_is_told_and_stays(folder: Path) -> None:
    own = "time,temperature C,rh %\n2026-01-19T08:00:00Z,16,31\n"
    (folder / "shed-air.csv").write_text(own, encoding="utf-8")
    done = logged(folder, "time,temperature C,rh %\n" + rows(20))
    assert isinstance(done.exception, MakersFault)
    assert "shed-air.csv: its times are in a zone" in str(done.exception)
    assert (folder / "shed-air.csv").read_text(encoding="utf-8") == own


def test_more_than_a_file_can_be_read_back_from_is_not_written(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    text = "time,temperature C,rh %\n"
    monkeypatch.setattr(air_of_places, "LARGEST_LOG", 300)
    assert logged(folder, text + rows(7)).exit_code == 0
    written = (folder / "shed-air.csv").read_text(encoding="utf-8")
    done = logged(folder, text + rows(9).replace("08:0", "09:0"))
    assert "shed-air.csv: would be larger than 0.0003 MB" in str(done.exception)
    assert (folder / "shed-air.csv").read_text(encoding="utf-8") == written
    assert sorted(each.name for each in folder.iterdir()) == ["logger.csv", "shed-air.csv", "shop.toml"]


def test_what_is_left_out_is_told_line_by_line(folder: Path) -> None:
    text = "time,temperature C,rh %\n" + rows(40) + "2026-01-19 08:10,16.5,32\n2026-01-19 08:50,,31\n"
    done = logged(folder, text)
    assert "line 42 left out: another reading of the same time" in done.output
    assert "line 43 left out: no temperature" in done.output
    assert "40 readings" in done.output


def test_a_file_that_runs_newest_first_is_turned_round_and_says_so(folder: Path) -> None:
    text = "".join(reversed(rows(20).splitlines(keepends=True)))
    done = logged(folder, "time,temperature C,rh %\n" + text)
    assert "20 readings, 2026-01-19 08:00 to 2026-01-19 08:19" in done.output
    assert "newest first: it was turned round" in done.output
    written = (folder / "shed-air.csv").read_text(encoding="utf-8").splitlines()
    assert (written[1][:19], written[-1][:19]) == ("2026-01-19 08:00:00", "2026-01-19 08:19:00")


def test_whether_the_clock_was_changed_is_asked_and_answered(folder: Path) -> None:
    """Hourly, one reading lost on a Friday, and none at two in the night in which Europe puts its clocks forward."""
    hours = [f"2026-03-{day} {hour:02d}:00,16.0,{40 + hour / 10}\n" for day in (27, 28, 29, 30) for hour in range(24)]
    text = "time,temperature C,rh %\n" + "".join(hours[:9] + hours[10:50] + hours[51:])
    asked = logged(folder, text)
    assert '--clock "changed" or "not changed"' in str(asked.exception)
    assert not (folder / "shed-air.csv").exists()
    assert "the clock was put forward an hour, taken out" in logged(folder, text, "--clock", "changed").output
    (folder / "shed-air.csv").unlink()
    assert "clock" not in logged(folder, text, "--clock", "not changed").output


@pytest.mark.parametrize(
    ("text", "asks", "option"),
    [
        ("time,temperature,rh %\n" + rows(5), "gives no unit", "--temperature"),
        ("time,temperature C,rh %\n" + rows(5, "66.0"), "66.0 C", "--temperature"),
        ("time,temperature C,rh\n" + rows(5, humidity="0.31"), "drier than any room", "--humidity"),
        ("time,temperature C,rh %\n03/02/2026 08:00,16,31\n", "day and month or month and day", "--dates"),
        ("time,temperature C,temp 2 C,rh %\n2026-01-19 08:00,16,17,31\n", "2 columns", "--column temperature=NAME"),
        ("time,temperature C,rh %\n2026-01-19T08:00:00Z,16,31\n", "in a zone", "--from-utc"),
        ("time,temperature C,rh %\n" + rows(5, humidity="131"), "ends at 100 %", ""),
        ("a,b,c\n1,2,3\n", "no line names columns", ""),
        ("", "The file is empty", ""),
    ],
)
def test_what_is_doubtful_is_asked_about_and_nothing_written(folder: Path, text: str, asks: str, option: str) -> None:
    done = logged(folder, text)
    assert asks in str(done.exception)
    assert option in str(done.exception)
    assert not (folder / "shed-air.csv").exists()


def test_the_answers_are_taken(folder: Path) -> None:
    text = "zeit;temp;rh\n" + "".join(f"03.02.2026 08:0{n};60,8;0,31\n" for n in range(5))
    done = logged(folder, text, "--temperature", "F", "--humidity", "fraction", "--dates", "day first")
    assert done.exit_code == 0, done.exception
    # 60.8 F is 16 C: (60.8 - 32) / 1.8
    assert (folder / "shed-air.csv").read_text(encoding="utf-8").splitlines()[1] == "2026-02-03 08:00:00,16.00,31.00"
    zoned = logged(folder, "time,temperature C,rh %\n2026-02-03T07:30:00Z,16,31\n", "--from-utc", "1")
    assert "2026-02-03 08:30" in zoned.output


def test_a_place_that_is_not_there(folder: Path) -> None:
    found = run("air", "log", "shde", str(folder / "x.csv"), "--shop", str(folder / "shop.toml"))
    assert "The shop has shed, house" in str(found.exception)
    assert "nearest is shed" in str(found.exception)
    typed = run("air", "log", "house", str(folder / "x.csv"), "--shop", str(folder / "shop.toml"))
    assert "has no log" in str(typed.exception)


def test_the_air_of_each_place(folder: Path) -> None:
    """Psychrometric tables, from memory: at 16 C saturated air holds 13.6 g/m3, at 20 C 17.3 g/m3."""
    logged(folder, "time,temperature C,rh %\n" + rows(2, humidity="30"))
    done = run("air", "show", "--shop", str(folder / "shop.toml"), "--now", "2026-01-19T09:00")
    assert "shed (gluing is done here): too dry" in done.output
    assert "4.1 g of water in a cubic metre" in done.output  # 0.30 x 13.6
    # The house's 40 % at 20 C hold 17.3 x 0.4 = 6.9 g/m3; cooled to 16 C that is 0.40 x 23.4 hPa / 18.2 hPa.
    assert "from the house comes to 51 % here" in done.output
    # From 30 to 45 % at 16 C in 50 m3: 0.15 x 13.6 x 50 = 102 g at first; then half of 50 m3 an hour for 24 hours
    # comes in at 51 %, wetter than the aim by 0.064 x 13.6 x 600 = 526 g: water must be taken out, not put in.
    assert "take out" in done.output


def test_old_readings_are_said_to_be_old(folder: Path) -> None:
    logged(folder, "time,temperature C,rh %\n" + rows(2))
    done = run("air", "show", "--shop", str(folder / "shop.toml"), "--now", "2026-01-25T09:00")
    assert "6 days old" in done.output


def test_nothing_to_show(folder: Path) -> None:
    (folder / "shop.toml").write_text('gramil = 1\n[shop]\nname = "s"\nunits = "mm"\n', encoding="utf-8")
    assert "no readings of air" in str(run("air", "show", "--shop", str(folder / "shop.toml")).exception)


def test_a_moment_that_is_none(folder: Path) -> None:
    done = run("air", "show", "--shop", str(folder / "shop.toml"), "--now", "yesterday")
    assert done.exit_code == 2
    assert "2026-01-19T09:00" in done.output
