"""The program run within the tests: as a program of its own would answer, without waiting for one to start."""

import io
import sys
from contextlib import chdir, redirect_stderr, redirect_stdout
from pathlib import Path
from subprocess import CompletedProcess
from unittest.mock import patch

from gramil.cli import main


def gramil(folder: Path, *words: str) -> CompletedProcess[str]:
    """What `gramil WORDS` answers in a folder: its exit code, and what it writes on either stream."""
    out, err = _stream(), _stream()
    with chdir(folder), redirect_stdout(out), redirect_stderr(err), patch.object(sys, "argv", ["gramil", *words]):
        try:
            main()
            code = 0
        except SystemExit as stop:
            code = stop.code if isinstance(stop.code, int) else int(bool(stop.code))
    return CompletedProcess(["gramil", *words], code, _written(out), _written(err))


def _stream() -> io.TextIOWrapper:
    return io.TextIOWrapper(io.BytesIO(), encoding="utf-8", newline="\n")


def _written(stream: io.TextIOWrapper) -> str:
    stream.flush()
    buffer = stream.buffer
    assert isinstance(buffer, io.BytesIO)
    return buffer.getvalue().decode("utf-8")
