"""A program that writes a pack and is gone in the midst of it: small, so that a branch of it costs next to nothing.

A branch of the tests' own process copies the tables of all its memory, which takes longer than what is tried. Each line
that this program reads is one `Asked` in JSON; it answers with the code by which the branch ended.
"""

import json
import os
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any

from gramil.writers.files import write_files

STEPS = ("replace", "rename", "link", "unlink", "fsync", "mkdir", "rmdir")
"""What a step does on the disk."""
ENDED, WENT_THROUGH, FAILED = 9, 0, 1


def ended(folder: str, files: dict[str, str], at: int, refused_from: int) -> int:
    """How a branch ended that writes files and is gone, without a word, at its nth step.

    With `refused_from` the disk refuses that move and all later ones, and the steps are counted from the first of them.
    """
    child = os.fork()
    if not child:
        try:  # a branch that fails is never to go on as if it were the program
            _refuse_from(refused_from, at) if refused_from else _end_after(at)
            write_files(Path(folder), {name: text.encode() for name, text in files.items()})
            os._exit(WENT_THROUGH)
        finally:
            os._exit(FAILED)
    return os.waitstatus_to_exitcode(os.waitpid(child, 0)[1])


def _end_after(count: int) -> None:
    done = [0]

    def counted(real: Callable[..., Any]) -> Callable[..., Any]:
        def step(*words: Any, **more: Any) -> Any:
            done[0] += 1
            if done[0] == count:
                os._exit(ENDED)
            return real(*words, **more)

        return step

    for name in STEPS:
        setattr(os, name, counted(getattr(os, name)))


def _refuse_from(first: int, at: int) -> None:
    real, calls = os.replace, [0]

    def replace(source: Path, place: Path) -> None:
        calls[0] += 1
        if calls[0] >= first:
            _end_after(at)
            raise OSError(28, "No space left on device")
        real(source, place)

    os.replace = replace  # type: ignore[assignment]


if __name__ == "__main__":
    for line in sys.stdin:
        print(ended(**json.loads(line)), flush=True)
