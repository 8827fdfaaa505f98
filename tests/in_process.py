"""The program run within the tests: as a program of its own would answer, without waiting for one to start."""

import gc
import io
import signal
import sys
from collections.abc import Iterator
from contextlib import chdir, contextmanager, redirect_stderr, redirect_stdout
from pathlib import Path
from subprocess import CompletedProcess
from unittest.mock import patch

from gramil.cli import main


def gramil(folder: Path, *words: str) -> CompletedProcess[str]:
    """What `gramil WORDS` answers in a folder: its exit code, and what it writes on either stream."""
    out, err = _stream(), _stream()
    streams = redirect_stdout(out), redirect_stderr(err)
    with _as_it_was(), chdir(folder), streams[0], streams[1], patch.object(sys, "argv", ["gramil", *words]):
        try:
            main()
            code = 0
        except SystemExit as stop:
            code = stop.code if isinstance(stop.code, int) else int(bool(stop.code))
    return CompletedProcess(["gramil", *words], code, _written(out), _written(err))


@contextmanager
def _as_it_was() -> Iterator[None]:
    """What a program sets for itself alone is as before for the tests: when memory is swept, and what ends it."""
    threshold = gc.get_threshold()
    ends = {each: signal.getsignal(each) for each in (signal.SIGTERM, getattr(signal, "SIGHUP", signal.SIGTERM))}
    try:
        yield
    finally:
        gc.set_threshold(*threshold)
        for each, end in ends.items():
            signal.signal(each, end)


def _stream() -> io.TextIOWrapper:
    return io.TextIOWrapper(io.BytesIO(), encoding="utf-8", newline="\n")


def _written(stream: io.TextIOWrapper) -> str:
    stream.flush()
    buffer = stream.buffer
    assert isinstance(buffer, io.BytesIO)
    return buffer.getvalue().decode("utf-8")
