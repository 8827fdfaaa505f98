"""Files beside descriptions with two hands on them: both changes are kept, or one is told to try again."""

import subprocess
import sys
from importlib.resources import files
from pathlib import Path

import pytest
from click.testing import CliRunner
from tests.walks import fewer

from gramil.cli import done, gramil, turn
from gramil.faults import MakersFault
from gramil.shop.made_file import read_made

EXAMPLES = files("gramil") / "data" / "examples"


@pytest.fixture
def bench(tmp_path: Path) -> Path:
    (tmp_path / "tarn.toml").write_bytes((EXAMPLES / "tarn.toml").read_bytes())
    return tmp_path


def started(folder: Path, *words: str) -> subprocess.Popen[str]:
    command = [sys.executable, "-m", "gramil.cli", *words]
    return subprocess.Popen(command, cwd=folder, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True)


def names_in(folder: Path) -> list[str]:
    return sorted(each.name for each in folder.iterdir())


@pytest.mark.slow
def test_several_done_at_once_are_all_noted(bench: Path) -> None:
    operations = ("thicknessed", "slotted", "tapered")[: fewer(3, 2)]
    hands = [started(bench, "done", each, "tarn.toml", "--measured", "board_thickness=6.31") for each in operations]
    said = [hand.communicate() for hand in hands]
    assert {hand.returncode for hand in hands} == {0}, said
    made = read_made(bench / "tarn.made.toml")
    assert sorted(made.operations) == sorted(operations)
    assert len(made.done) == len(operations)
    assert names_in(bench) == ["tarn.made.toml", "tarn.toml"]


def test_the_same_done_twice_at_once_is_noted_once_and_the_other_is_told(bench: Path) -> None:
    hands = [started(bench, "done", "slotted", "tarn.toml") for _ in range(2)]
    said = [hand.communicate() for hand in hands]
    assert sorted(hand.returncode for hand in hands) == [0, 2], said
    assert any("slotted is done already" in error for _, error in said)
    assert len(read_made(bench / "tarn.made.toml").done) == 1


def run(*words: str) -> MakersFault | None:
    """What a command, run in this process, tells; None where it did what it was asked."""
    found = CliRunner().invoke(gramil, words)
    assert found.exception is None or isinstance(found.exception, MakersFault), found.exception
    return found.exception


def test_a_record_saved_in_an_editor_meanwhile_is_not_written_over(
    bench: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    record, saved = bench / "tarn.made.toml", 'gramil = 1\n[[done]]\noperation = "tapered"\n'
    record.write_text("gramil = 1\n")
    told = done.read_measurements

    def saved_meanwhile(*given: object) -> object:
        record.write_text(saved)
        return told(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(done, "read_measurements", saved_meanwhile)
    words = ("done", "slotted", str(bench / "tarn.toml"))
    assert "tarn.made.toml: was changed meanwhile" in str(run(*words))
    assert record.read_text() == saved
    monkeypatch.undo()
    assert run(*words) is None
    assert read_made(record).operations == ("tapered", "slotted")


def test_a_description_saved_in_an_editor_meanwhile_is_not_written_over(
    bench: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The answer is of what was read: with what was saved since it would be another."""
    path, sought = bench / "tarn.toml", turn.turn

    def saved_meanwhile(*given: object) -> object:
        found = sought(*given)  # type: ignore[arg-type]
        path.write_text(path.read_text() + "\n# a note\n")
        return found

    monkeypatch.setattr(turn, "turn", saved_meanwhile)
    words = ("turn", "board.thickness", str(path), "--until", "slot_left_at_crest[1]=3.8 mm", "--write")
    assert "tarn.toml: was changed meanwhile" in str(run(*words))
    assert path.read_text().endswith("# a note\n")
    assert 'thickness = "6' not in path.read_text()
    monkeypatch.undo()
    assert run(*words) is None
    assert "# a note" in path.read_text()


def test_line_ends_of_a_record_stay_as_its_editor_has_them(bench: Path) -> None:
    record = bench / "tarn.made.toml"
    record.write_bytes(b'gramil = 1\r\n\r\n[made]\r\nunits = "mm"\r\n')
    assert run("done", "slotted", str(bench / "tarn.toml")) is None
    content = record.read_bytes()
    assert content.count(b"\n") == content.count(b"\r\n") > 5
    assert read_made(record).operations == ("slotted",)


def test_a_new_description_takes_no_other_s_place(bench: Path) -> None:
    hands = [started(bench, "new", "new.toml", "--name", name, "--usual") for name in ("Rill", "Beck")]
    said = [hand.communicate() for hand in hands]
    assert sorted(hand.returncode for hand in hands) == [0, 2], said
    won = "Rill" if hands[0].returncode == 0 else "Beck"
    assert f'name = "{won}"' in (bench / "new.toml").read_text()
    assert names_in(bench) == ["new.toml", "tarn.toml"]


SHOP = 'gramil = 1\n[shop]\nname = "two hands"\nunits = "mm"\n[[place]]\nname = "bench"\nlog = "bench-air.csv"\n'


def test_two_logs_brought_in_at_once_are_both_kept(bench: Path) -> None:
    (bench / "shop.toml").write_text(SHOP)
    days = range(1, 1 + fewer(3, 2))
    for day in days:
        rows = "".join(f"2026-11-0{day} {hour:02}:00,20.0,45.0\n" for hour in range(24))
        (bench / f"day-{day}.csv").write_text("time,temperature C,relative humidity %\n" + rows)
    hands = [started(bench, "air", "log", "bench", f"day-{day}.csv", "--shop", "shop.toml") for day in days]
    said = [hand.communicate() for hand in hands]
    assert {hand.returncode for hand in hands} == {0}, said
    assert len((bench / "bench-air.csv").read_text().splitlines()) == 1 + len(days) * 24
