"""What the commands write on any system: UTF-8 where it is piped, what a console's letters allow where it is shown."""

import errno
import io
import os
import subprocess
import sys
from importlib.resources import files
from pathlib import Path

import click
import pytest
from tests.walks import these

from gramil import cli
from gramil.cli import streams

from .. import in_process

EXAMPLES = files("gramil") / "data" / "examples"


@pytest.fixture
def bench(tmp_path: Path) -> Path:
    text = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8")
    (tmp_path / "tarn.toml").write_text(text.replace('name = "Tarn"', 'name = "Bächle ½″ 木"', 1), encoding="utf-8")
    return tmp_path


def piped(folder: Path, letters: str, *words: str) -> subprocess.CompletedProcess[bytes]:
    command = [sys.executable, "-m", "gramil.cli", *words]
    around = {**os.environ, "PYTHONIOENCODING": letters, "PYTHONUTF8": "0"}
    return subprocess.run(command, cwd=folder, capture_output=True, env=around, check=False)


WORDS = [("dims", "tarn.toml", "--csv"), ("check", "tarn.toml")]
ASKED = [(letters, words) for letters in ("cp1252", "cp437", "cp850", "ascii") for words in WORDS]


AT_THE_GATE = [("cp437", WORDS[0]), ("ascii", WORDS[1])]


@pytest.mark.parametrize(("letters", "words"), these(ASKED, AT_THE_GATE))
def test_what_is_piped_is_utf_8_whatever_the_console(bench: Path, letters: str, words: tuple[str, ...]) -> None:
    usual, other = in_process.gramil(bench, *words), piped(bench, letters, *words)
    assert other.returncode == usual.returncode
    assert other.stdout.decode("utf-8") == usual.stdout
    assert not usual.stdout.isascii()
    assert b"Traceback" not in other.stderr


@pytest.mark.parametrize("letters", these(["cp1252", "ascii"], ["cp1252"]))
def test_so_is_what_is_told_on_the_error_stream(bench: Path, letters: str) -> None:
    asked = piped(bench, letters, "dims", "ｂächle.toml")
    assert asked.returncode == 2
    assert "ｂächle.toml" in asked.stderr.decode("utf-8")


def test_line_ends_are_plain_where_the_system_has_others(monkeypatch: pytest.MonkeyPatch) -> None:
    """As Windows opens its streams: a line feed becomes two characters, and one of a CSV's three."""
    written = io.BytesIO()
    stream = io.TextIOWrapper(written, encoding="cp1252", newline="\r\n")
    monkeypatch.setattr(sys, "stdout", stream)
    streams.settle_streams()
    click.echo("½ ″\r\n½ ″\n", nl=False)
    stream.flush()
    assert written.getvalue() == "½ ″\r\n½ ″\n".encode()


@pytest.mark.parametrize("letters", ["cp437", "cp850", "cp1252", "ascii"])
def test_a_console_of_fewer_letters_shows_what_it_can(letters: str, monkeypatch: pytest.MonkeyPatch) -> None:
    class Console(io.TextIOWrapper):
        def isatty(self) -> bool:
            return True

    written = io.BytesIO()
    stream = Console(written, encoding=letters)
    monkeypatch.setattr(sys, "stdout", stream)
    streams.settle_streams()
    print("27 % ▂ 木", end="", file=stream)
    stream.flush()
    assert written.getvalue() == b"27 % ? ?"


def test_a_reader_that_has_enough_is_no_verdict(bench: Path) -> None:
    """`check` ends with 1 where something stops it; `| head` is not that."""
    command = [sys.executable, "-m", "gramil.cli", "dims", "tarn.toml", "--every"]
    with subprocess.Popen(command, cwd=bench, stdout=subprocess.PIPE, stderr=subprocess.PIPE) as writer:
        assert writer.stdout is not None
        assert writer.stderr is not None
        writer.stdout.readline()
        writer.stdout.close()
        assert writer.stderr.read() == b""
    assert writer.returncode == 0


def test_the_same_where_the_system_calls_it_an_argument_that_is_not_valid(
    monkeypatch: pytest.MonkeyPatch, capfd: pytest.CaptureFixture[str]
) -> None:
    def closed(**_: object) -> None:
        raise OSError(errno.EINVAL, "Invalid argument")

    monkeypatch.setattr(cli, "gramil", closed)
    monkeypatch.setattr(sys, "stderr", io.StringIO())
    with pytest.raises(SystemExit) as stopped:
        cli.main()
    assert stopped.value.code == 0
    assert capfd.readouterr().err == ""


def test_a_place_that_cannot_be_written_is_still_told(monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(**_: object) -> None:
        raise OSError(errno.EINVAL, "Invalid argument", "a:b.svg")

    told = io.StringIO()
    monkeypatch.setattr(cli, "gramil", refused)
    monkeypatch.setattr(sys, "stderr", told)
    with pytest.raises(SystemExit) as stopped:
        cli.main()
    assert stopped.value.code == 2
    assert "a:b.svg: Invalid argument. Name another place" in told.getvalue()
