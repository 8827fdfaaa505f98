"""`gramil day`: commands without the word gramil, and a maker's busy day counted key by key."""

import os
import pty
import re
import signal
import subprocess
import sys
from collections.abc import Callable, Generator
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from gramil.cli import store_options
from gramil.cli.complete import candidates
from gramil.cli.day import words_of
from gramil.shop.instruments import instrument, instruments
from gramil.shop.operations_done import measurements, operations_done
from gramil.store.opening import open_store

from ..in_process import gramil
from .test_a_day import MOST, filled, numbered, opened
from .test_completion import PATIENCE, typed_until

__all__ = ["filled"]
TYPED_BEFORE = "gramil day\n"
Typing = Generator[str, str, None]
"""What a maker types line by line, and is told in between."""


class Hands:
    """What stands for the keyboard: it is asked for a line at a time, and sees what was told since the last."""

    def __init__(self, typing: Typing) -> None:
        self.typing, self.lines, self.seen = typing, list[str](), 0

    def isatty(self) -> bool:
        return False

    def readline(self) -> str:
        sys.stdout.flush()
        told: str = sys.stdout.buffer.getvalue().decode()  # type: ignore[attr-defined]  # it is kept by the test
        try:
            line = self.typing.send(told[self.seen :]) if self.lines else next(self.typing)
        except StopIteration:
            return ""
        self.seen = len(told)
        self.lines.append(line)
        return f"{line}\n"


@pytest.fixture
def sitting(filled: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[[Typing], tuple[Hands, Path]]:
    """A day at a record with four instruments: its clock goes on by five minutes whenever it is looked at."""
    (tmp_path / "shop.gramil").write_bytes((filled / "shop.gramil").read_bytes())

    class Clock(datetime):
        looked = 0

        @classmethod
        def now(cls, tz: object = None) -> datetime:  # type: ignore[override]  # asked without a zone alone
            Clock.looked += 1
            return datetime(2026, 1, 19, 8, 0) + timedelta(minutes=5 * Clock.looked)

    def sit(typing: Typing) -> tuple[Hands, Path]:
        hands = Hands(typing)
        monkeypatch.setattr(store_options, "datetime", Clock)
        monkeypatch.setattr("sys.stdin", hands)
        done = gramil(tmp_path, "day")
        assert done.returncode == 0, done.stderr
        assert [line for line in done.stderr.splitlines() if not line.startswith("store: ")] == []
        return hands, tmp_path

    return sit


def of(name: str, names: dict[int, str]) -> list[int]:
    return [number for number, each in names.items() if each == name]


def busy() -> Typing:
    """Sixteen commands on four guitars: two readings of the meter, the day's sheets and one more, six notes of eleven
    operations, two of them with what was measured, a jig checked, wood promised, the weeks looked at.
    """
    yield "air 19 61"
    names = numbered((yield "now"))
    yield "sheet today"
    chosen, moulds = of("wood_chosen", names), of("mould_made", names)
    weighing = of("wood_weighed", opened((yield f"done {','.join(map(str, chosen))} 1.5h")))
    yield "match --reserve"
    yield "jig taper 62.5"
    planing = of("thicknessed", opened((yield f"done {','.join(map(str, weighing[:3]))} 1h")))
    yield f"sheet {planing[0]}"
    yield f"done {planing[0]} 45min 0.26"
    yield f"done {moulds[2]} 4h 490 372"
    yield "air 20 47"
    names = numbered((yield "now"))
    yield f"done {of('side_form_made', names)[0]} 2h30"
    yield f"done {of('wire_cut', names)[0]} 50min"
    yield "weeks"
    yield "check Tarn"
    yield "end"


@pytest.mark.slow
def test_a_busy_day_of_sixteen_commands(sitting: Callable[[Typing], tuple[Hands, Path]]) -> None:
    """Every key is counted, each line's return too, and what begins and ends the sitting."""
    hands, folder = sitting(busy())
    *commands, last = hands.lines
    assert (len(commands), last) == (16, "end")
    with open_store(folder / "shop.gramil") as store:
        noted = [each.operation for one in instruments(store) for each in operations_done(store, one.id)]
        found = {each.address: each.written for each in measurements(store, instrument(store, "Tarn").id)}
    wanted = 4 * ["wood_chosen"] + 3 * ["wood_weighed"] + ["thicknessed", "mould_made", "side_form_made", "wire_cut"]
    assert sorted(noted) == sorted(wanted)
    assert found == {"body_length": "490 mm", "body_width": "372 mm"}
    assert len(list(folder.glob("*.pdf"))) > 10
    strokes = len(TYPED_BEFORE) + sum(len(line) + 1 for line in hands.lines)
    assert strokes < MOST, (strokes, hands.lines)


def test_what_goes_wrong_is_said_and_the_day_goes_on(
    filled: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    (tmp_path / "shop.gramil").write_bytes((filled / "shop.gramil").read_bytes())

    def typing() -> Typing:
        assert "OPEN 1" in (yield "now")
        assert (yield "done 999") == ""
        assert (yield "") == ""
        assert (yield "nonsense") == ""
        assert (yield 'why "nut_width') == ""
        assert "19.0 C" in (yield "gramil air 19 45")
        assert (yield "quit") == ""
        raise AssertionError("the day had been ended")

    hands = Hands(typing())
    monkeypatch.setattr("sys.stdin", hands)
    done = gramil(tmp_path, "day")
    assert done.returncode == 0
    assert "there is no line 999" in done.stderr
    assert "No such command 'nonsense'" in done.stderr
    assert 'not closed: "nut_width' in done.stderr
    assert hands.lines[-1] == "quit"


def test_a_day_ends_with_what_is_typed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def typing() -> Typing:
        yield "wood persimmon"

    monkeypatch.setattr("sys.stdin", Hands(typing()))
    done = gramil(tmp_path, "day")
    assert done.returncode == 0
    assert re.search(r"persimmon", done.stdout)


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("done 3 1.5h 3.02", ["done", "3", "1.5h", "3.02"]),
        ("  gramil  now ", ["now"]),
        ('turn Tarn "25 1/2 in"', ["turn", "Tarn", "25 1/2 in"]),
        ("lay 'back 1' cupboard", ["lay", "back 1", "cupboard"]),
        ('done 3 0.26" 1/4"', ["done", "3", '0.26"', '1/4"']),
        ('done 3 --note="still damp" 1h', ["done", "3", "--note=still damp", "1h"]),
        (r"pack C:\\shop\\tarn.toml", ["pack", r"C:\\shop\\tarn.toml"]),
        ("done 3 --note maker's", ["done", "3", "--note", "maker's"]),
        ("", []),
    ],
)
def test_the_words_of_a_line(line: str, words: list[str]) -> None:
    assert words_of(line) == words


def test_an_open_quotation_mark_is_refused() -> None:
    with pytest.raises(ValueError, match="not closed"):
        words_of('done 3 --note "still damp')


def heeds_signals() -> None:
    """As at a terminal: what is started in the background ignores being broken off, and so would all that it starts."""
    signal.signal(signal.SIGINT, signal.SIG_DFL)


def broken_off(running: subprocess.Popen[bytes], terminal: int) -> None:
    """Break off the line that is being typed, and wait for the prompt on a line of its own.

    The library that reads lines does not heed a signal that comes while it handles a key: it is then given once more,
    as one would press the keys again.
    """
    for _ in range(int(PATIENCE)):
        running.send_signal(signal.SIGINT)
        if "\ngramil> " in typed_until(terminal, "", "\ngramil> ", 1.0):
            return
    raise AssertionError("the line was not broken off")


def test_at_a_terminal_tab_completes_the_arrows_bring_back_and_a_broken_line_is_none(tmp_path: Path) -> None:
    here, there = pty.openpty()
    around = {**os.environ, "HOME": str(tmp_path), "TERM": "xterm", "PAGER": "cat"}
    running = subprocess.Popen([sys.executable, "-m", "gramil", "day"], stdin=there, stdout=there, stderr=there,
                               env=around, cwd=tmp_path, start_new_session=True, preexec_fn=heeds_signals)  # fmt: skip
    os.close(there)
    try:
        typed_until(here, "", "gramil> ")
        assert "wood " in typed_until(here, "woo\t", "wood ")
        typed_until(here, "persimmon\n", "gramil> ")
        assert "wood persimmon" in typed_until(here, "\x1b[A", "wood persimmon")
        typed_until(here, "\x15done 1", "done 1")
        broken_off(running, here)
        with pytest.raises(OSError, match="Input/output"):  # the terminal is read until nobody writes to it any more
            typed_until(here, "end\n", "what is never shown")
        assert running.wait(PATIENCE) == 0
    finally:
        running.kill()
        running.wait()
        os.close(here)


def test_what_follows_a_command_of_the_store_is_completed_without_the_word_store() -> None:
    assert "--yes" in candidates(("undo", "--"))
    assert candidates(("jig", "--")) == candidates(("store", "jig", "--"))
