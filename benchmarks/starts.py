"""How long a command takes to begin, over the bare interpreter; and the documentation's site."""

import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path
from resource import RUSAGE_CHILDREN, getrusage
from tempfile import TemporaryDirectory

from benchmarks.timing import milliseconds
from gramil.cli.complete import ASK

ROOT = Path(__file__).parent.parent
EXAMPLES = ROOT / "src" / "gramil" / "data" / "examples"
REPEATS = 7
ASKED: Sequence[tuple[str, tuple[str, ...], int]] = (
    ("--version", ("--version",), 100),
    ("--help", ("--help",), 100),
    ("completion", (ASK, "why", "slot_left_le"), 100),
    ("why", ("why", "slot_need", "tarn.toml"), 600),
    ("check", ("check", "tarn.toml"), 600),
    ("dims", ("dims", "tarn.toml"), 600),
)
"""What is asked, by its name, and the most that it may take beyond the bare interpreter, in ms of a processor."""


def run() -> None:
    bare = least([sys.executable, "-c", "pass"])
    print(f"the bare interpreter                       {milliseconds(bare)}")
    for name, words, most in ASKED:
        took = least([sys.executable, "-m", "gramil.cli", *words])
        over = f"{milliseconds(took - bare)} over it, {took / bare:.1f} times as long, limit {most} ms over"
        print(f"{name:<40} {over}")
    if _has_mkdocs():
        took = least([sys.executable, str(ROOT / "tools" / "site.py")], 1)
        print(f"the site                                   {milliseconds(took)}   limit 60 s")


def _has_mkdocs() -> bool:
    asked = subprocess.run([sys.executable, "-c", "import mkdocs"], capture_output=True, check=False)
    return asked.returncode == 0


def least(command: Sequence[str], repeats: int = REPEATS) -> float:
    """The least processor time that a program takes, in seconds, in the folder of the examples' copies."""
    with TemporaryDirectory() as folder:
        for name in ("tarn.toml", "shop.toml"):
            (Path(folder) / name).write_bytes((EXAMPLES / name).read_bytes())
        return min(_once(command, folder) for _ in range(repeats))


def _once(command: Sequence[str], folder: str) -> float:
    before = _of_children()
    subprocess.run(command, cwd=folder, capture_output=True, check=True)
    return _of_children() - before


def _of_children() -> float:
    """Processor time of all programs that were started and have ended, to the microsecond: a bare start takes less than
    the hundredth that `os.times` counts in.
    """
    used = getrusage(RUSAGE_CHILDREN)
    return used.ru_utime + used.ru_stime
