"""A guitar that came in, at the command line: taken in, and its old board read from its frets alone."""

from pathlib import Path

import pytest

from ..in_process import gramil

STEP = 1 - 0.5 ** (1 / 12)


def places(scale: float, planed: float, frets: int) -> str:
    """A CSV of an old board in twelve equal steps whose nut end was planed, stepped off from what is left."""
    left, rows = scale, ["fret,position"]
    for fret in range(1, frets + 1):
        left -= left * STEP
        rows.append(f"{fret},{scale - left - planed:.2f}")
    return "\n".join(rows) + "\n"


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Path:
    folder = tmp_path_factory.mktemp("came-in")
    (folder / "readings.csv").write_text(places(645, 0.8, 19), encoding="utf-8")
    made = gramil(folder, "new", "old.toml", "--repair", "--frets", "19", "--usual")
    assert made.returncode == 0, made.stderr
    return folder


def test_readings_alone_are_an_old_board(bench: Path) -> None:
    told = gramil(bench, "readback", "slots", "readings.csv")
    assert told.returncode == 0, told.stderr
    assert "twelve equal steps" in told.stdout
    assert "Nut 0.80 mm out toward the head" in told.stdout
    assert "saddle 645.00 mm from it" in told.stdout
    assert "No slot is worth cutting anew." in told.stdout


def test_so_are_those_of_a_guitar_that_came_in(bench: Path) -> None:
    alone = gramil(bench, "readback", "slots", "readings.csv")
    assert gramil(bench, "readback", "slots", "old.toml", "readings.csv").stdout == alone.stdout


def test_an_inch_board_is_told_in_inches(bench: Path) -> None:
    (bench / "inch.csv").write_text(places(25.5, 0.03, 20), encoding="utf-8")
    told = gramil(bench, "readback", "slots", "inch.csv", "--units", "in")
    assert "Scale: 25.5" in told.stdout
    assert " mm" not in told.stdout


def test_what_cannot_be_read_is_told(bench: Path) -> None:
    (bench / "few.csv").write_text("fret,position\n1,36\n12,325\n", encoding="utf-8")
    few = gramil(bench, "readback", "slots", "few.csv")
    assert few.returncode != 0
    assert "measure 5 at least" in few.stderr.lower()
    assert gramil(bench, "readback", "slots", "readings.csv", "--plot", "e.svg").returncode != 0


def test_frets_are_asked_for_and_what_is_no_question_is_refused(bench: Path) -> None:
    assert "Count the frets" in gramil(bench, "new", "none.toml", "--repair", "--usual").stderr
    both = gramil(bench, "new", "none.toml", "--repair", "--whole", "--frets", "19")
    assert both.returncode != 0
    assert not (bench / "none.toml").exists()


def test_it_is_checked_and_every_command_that_tells_of_it_stands(bench: Path) -> None:
    for words in (
        ("check", "old.toml"),
        ("dims", "old.toml"),
        ("why", "neck_angle_target", "old.toml"),
        ("now", "old.toml"),
    ):
        told = gramil(bench, *words)
        assert "Traceback" not in told.stderr, words
        assert told.returncode == 0, (words, told.stderr)
