"""At a terminal as people expect: colours, a pager, quiet, a viewer, and following a file that is saved."""

import io
import os
import sys
from collections.abc import Iterator, Mapping, Sequence
from itertools import islice
from pathlib import Path

import pytest

from gramil.cli import manners
from gramil.cli.follow import followed, saves
from gramil.cli.manners import LESS, colours, is_paged, letters_of, pager_of, show_long
from gramil.cli.viewer import VIEWER, look_at, viewer_of
from gramil.description.reading import read_description, read_shop
from gramil.faults import MakersFault
from gramil.prints.whole import figures_of
from gramil.shop.made_file import parse_made

from ..conftest import EXAMPLES
from ..in_process import gramil


@pytest.fixture
def bench(tmp_path: Path) -> Path:
    for name in ("tarn.toml", "shop.toml"):
        (tmp_path / name).write_text((EXAMPLES / name).read_text(encoding="utf-8"), encoding="utf-8")
    return tmp_path


@pytest.mark.parametrize(
    ("around", "coloured"),
    [
        ({}, None),
        ({"NO_COLOR": "1"}, False),
        ({"NO_COLOR": ""}, None),
        ({"TERM": "dumb"}, False),
        ({"TERM": "x"}, None),
    ],
)
def test_colours(around: Mapping[str, str], coloured: bool | None) -> None:
    assert colours(around) is coloured


class Terminal(io.TextIOWrapper):
    def __init__(self) -> None:
        super().__init__(io.BytesIO(), encoding="utf-8", newline="\n")

    def isatty(self) -> bool:
        return True

    def shown(self) -> str:
        self.flush()
        assert isinstance(self.buffer, io.BytesIO)
        return self.buffer.getvalue().decode()


def on_a_terminal(monkeypatch: pytest.MonkeyPatch, folder: Path, *words: str) -> str:
    """What a command shows on a terminal."""
    from gramil.cli import main

    terminal = Terminal()
    monkeypatch.chdir(folder)
    monkeypatch.setattr(sys, "stdout", terminal)
    monkeypatch.setattr(sys, "argv", ["gramil", *words])
    main()
    return terminal.shown()


@pytest.mark.parametrize("name", ["NO_COLOR", "TERM"])
def test_a_terminal_without_colours_gets_no_escape(bench: Path, monkeypatch: pytest.MonkeyPatch, name: str) -> None:
    monkeypatch.delenv("NO_COLOR", raising=False)
    monkeypatch.setenv("TERM", "xterm")
    assert "\x1b[" in on_a_terminal(monkeypatch, bench, "why", "slot_need", "tarn.toml")
    monkeypatch.setenv(name, "dumb")
    assert "\x1b[" not in on_a_terminal(monkeypatch, bench, "why", "slot_need", "tarn.toml")


@pytest.mark.parametrize(
    ("system", "around", "pager"),
    [
        ("linux", {}, LESS),
        ("darwin", {}, LESS),
        ("win32", {}, ("more",)),
        ("linux", {"PAGER": "most -s"}, ("most", "-s")),
        ("win32", {"PAGER": "less"}, ("less",)),
        ("win32", {"PAGER": r'"C:\Program Files\less.exe" -R'}, (r"C:\Program Files\less.exe", "-R")),
        ("linux", {"PAGER": 'less -R "'}, ("less", "-R")),
        ("linux", {"PAGER": " "}, None),
        ("linux", {"PAGER": ""}, None),
        ("linux", {"PAGER": "cat"}, None),
        ("linux", {"TERM": "dumb"}, None),
    ],
)
def test_which_pager(system: str, around: Mapping[str, str], pager: Sequence[str] | None) -> None:
    assert pager_of(system, around) == pager


@pytest.mark.parametrize(
    ("system", "pager", "console", "letters"),
    [
        ("win32", ("more",), "cp850", "cp850"),
        ("win32", ("more",), None, "utf-8"),
        ("win32", ("less", "-R"), "cp850", "utf-8"),
        ("linux", ("more",), "ANSI_X3.4-1968", "utf-8"),
    ],
)
def test_windows_own_pager_is_given_the_letters_of_its_console(
    monkeypatch: pytest.MonkeyPatch, system: str, pager: Sequence[str], console: str | None, letters: str
) -> None:
    monkeypatch.setattr(sys, "platform", system)
    assert letters_of(pager, console) == letters


def test_only_what_tells_is_paged() -> None:
    assert is_paged(["dims", "tarn.toml"])
    assert not is_paged(["dims", "tarn.toml", "--json"])
    assert not is_paged(["new", "tarn.toml"])
    assert not is_paged(["bench"])


@pytest.mark.skipif(os.name == "nt", reason="the pager stands in as a shell's own command")
def test_a_long_answer_goes_through_the_pager_and_a_short_one_does_not(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    pager = (sys.executable, "-c", f"import sys; open({str(tmp_path / 'paged')!r}, 'w').write(sys.stdin.read())")
    terminal = Terminal()
    monkeypatch.setattr(sys, "stdout", terminal)
    show_long("½\n" * 5, pager, 24)
    assert terminal.shown() == "½\n" * 5
    show_long("½\n" * 50, pager, 24)
    assert (tmp_path / "paged").read_text(encoding="utf-8") == "½\n" * 50
    assert terminal.shown() == "½\n" * 5
    show_long("½\n" * 50, ("no-such-pager",), 24)
    assert terminal.shown() == "½\n" * 55


def test_the_whole_answer_and_its_exit_code_come_through(bench: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    kept: list[str] = []
    monkeypatch.setattr(manners, "show_long", lambda text, pager, lines: kept.append(text))
    monkeypatch.setattr(sys, "stdin", Terminal())
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.delenv("PAGER", raising=False)
    assert on_a_terminal(monkeypatch, bench, "dims", "tarn.toml") == ""
    assert "SLOTS" in kept[0]
    thin = (bench / "tarn.toml").read_text(encoding="utf-8").replace("thickness = 6.3", "thickness = 3.6")
    (bench / "thin.toml").write_text(thin, encoding="utf-8")
    with pytest.raises(SystemExit) as stop:
        on_a_terminal(monkeypatch, bench, "check", "thin.toml")
    assert stop.value.code == 1
    assert "STOP" in kept[1]


def test_quiet_leaves_the_answer_alone(bench: Path) -> None:
    loud, quiet = (gramil(bench, "why", "slot_need", "tarn.toml", *words) for words in ((), ("--quiet",)))
    assert loud.stderr == "shop: shop.toml\n"
    assert quiet.stderr == ""
    assert quiet.stdout == loud.stdout
    assert gramil(bench, "-q", "why", "slot_need", "tarn.toml").stderr == ""


def everywhere(name: str) -> str:
    return f"/usr/bin/{name}"


def nowhere(_: str) -> None:
    return None


@pytest.mark.parametrize(
    ("system", "around", "viewer"),
    [
        ("linux", {}, ["xdg-open"]),
        ("darwin", {}, ["open"]),
        ("win32", {}, None),
        ("win32", {VIEWER: r'"C:\Eyes\eye.exe" -x'}, [r"C:\Eyes\eye.exe", "-x"]),
        ("linux", {VIEWER: "eye -x"}, ["eye", "-x"]),
        ("linux", {VIEWER: "eye 'x"}, ["eye", "x"]),
        ("linux", {VIEWER: " "}, ["xdg-open"]),
    ],
)
def test_which_viewer(system: str, around: Mapping[str, str], viewer: Sequence[str] | None) -> None:
    found = viewer_of(system, around, everywhere)
    assert (None if found is None else list(found)) == viewer


def test_without_a_viewer_the_path_is_told(monkeypatch: pytest.MonkeyPatch, bench: Path) -> None:
    monkeypatch.delenv(VIEWER, raising=False)
    monkeypatch.setattr(sys, "platform", "linux")
    monkeypatch.setattr("shutil.which", nowhere)
    with pytest.raises(MakersFault, match=r"tarn\.toml.*Open it yourself"):
        look_at(bench / "tarn.toml")


def test_on_windows_the_system_opens_it_itself(monkeypatch: pytest.MonkeyPatch, bench: Path) -> None:
    opened: list[Path] = []
    monkeypatch.delenv(VIEWER, raising=False)
    monkeypatch.setattr(sys, "platform", "win32")
    monkeypatch.setattr(os, "startfile", opened.append, raising=False)
    look_at(bench)
    assert opened == [bench]


def test_show_opens_a_drawing_and_a_folder(bench: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    opened: list[Path] = []
    monkeypatch.setattr("gramil.cli.show.look_at", opened.append)
    assert gramil(bench, "show", "tarn.toml", "board").returncode == 0
    assert b"<svg" in opened[0].read_bytes()
    assert gramil(bench, "show", ".").returncode == 0
    assert opened[1] == Path(".")
    missed = gramil(bench, "show", "tarn.toml", "bord")
    assert missed.returncode == 2
    assert "board" in missed.stderr
    assert gramil(bench, "show", "out").returncode == 2


def test_a_file_that_is_saved_is_followed(bench: Path) -> None:
    file = bench / "tarn.toml"
    first = file.read_text(encoding="utf-8")
    written = iter((first.replace("thickness = 6.3", "thickness = 6.1"), "gramil = 1\n[instru", None, first))

    def saved_meanwhile(_: float) -> None:
        """While one waits, an editor saves: another board, something torn, the file away for a moment, the first."""
        text = next(written)
        file.unlink() if text is None else file.write_text(text, encoding="utf-8")

    made = parse_made('gramil = 1\n[[done]]\noperation = "thicknessed"\n')

    def read() -> object:
        return figures_of(read_description(file), read_shop(bench / "shop.toml")), made

    found = followed(read, islice(saves([file], saved_meanwhile), 4), bench / "drawn")  # type: ignore[arg-type]
    told = "\n".join(found)
    assert told.count("drawings in") == 3
    assert "Changed: board.thickness" in told
    assert "not TOML" in told
    assert "Already made: Rework: board planed to thickness: too thick by 0.20 mm" in told
    assert (bench / "drawn" / "board.svg").exists()


def test_nothing_is_said_until_something_is_saved(bench: Path) -> None:
    looks: list[float] = []

    def wait(seconds: float) -> None:
        looks.append(seconds)
        if len(looks) == 3:
            raise StopIteration

    following: Iterator[None] = saves([bench / "tarn.toml"], wait)
    next(following)
    with pytest.raises(RuntimeError):
        next(following)
    assert len(looks) == 3
