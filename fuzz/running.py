"""One input after another in a branch of the program, within limits: what ends it, hangs it or swells it is told."""

import os
import random
import resource
import select
import signal
import traceback
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from fuzz.kind import Kind

MOST = 500
"""MB that a branch may hold."""
BATCH = 40
"""Inputs a branch: what one leaves behind is not carried on for ever."""
WAITS = 12.0
"""Times as long as an input may take of the processor that is waited for it by the clock: others may be at work too."""


@dataclass(frozen=True)
class Failure:
    """An input that did not hold: its kind, its seed, the bytes, and what was said."""

    kind: Kind
    seed: str
    content: bytes
    said: str


def batch(kind: Kind, seeds: list[str], folder: Path) -> tuple[int, Failure | None]:
    """How many of the seeds' inputs held, and the first that did not."""
    contents = [kind.make(random.Random(seed)) for seed in seeds]
    done, said = run(kind, contents, folder)
    if done == len(seeds):
        return done, None
    return done, Failure(kind, seeds[done], contents[done], said)


def run(kind: Kind, contents: list[bytes], folder: Path) -> tuple[int, str]:
    """How many inputs held, one after another, in a branch; and what the first that did not was ended by."""
    out, into = os.pipe()
    child = os.fork()
    if not child:
        os.close(out)
        os.setpgid(0, 0)
        _branch(kind, contents, folder, into)
    os.close(into)
    done, said, hung = 0, "", False
    while not hung:
        ready, _, _ = select.select([out], [], [], kind.seconds * WAITS)
        word = os.read(out, 100_000).decode("utf-8", errors="replace") if ready else ""
        hung = not ready
        if not word:
            break
        done += word.count("\1")
        said += word.replace("\1", "")
    _end(child)
    os.close(out)
    return done, said or ("hangs" if hung else "ended without a word: too long at it, or too large")


def _branch(kind: Kind, contents: list[bytes], folder: Path, into: int) -> None:
    """Checks each, saying so after it; never returns."""
    try:
        for content in contents:
            _limit(kind)
            kind.check(content, folder)
            held = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1e3
            assert held < MOST, f"{held:.0f} MB held"
            os.write(into, b"\1")
    except BaseException:
        os.write(into, traceback.format_exc()[-3000:].encode())
    os._exit(0)


def _limit(kind: Kind) -> None:
    used = resource.getrusage(resource.RUSAGE_SELF)
    seconds = int(used.ru_utime + used.ru_stime + kind.seconds) + 1
    resource.setrlimit(resource.RLIMIT_CPU, (seconds, resource.RLIM_INFINITY))
    resource.setrlimit(resource.RLIMIT_AS, (4_000_000_000, resource.RLIM_INFINITY))


def _end(child: int) -> None:
    """The branch and what it has begun itself."""
    with suppress(ProcessLookupError, PermissionError):
        os.killpg(child, signal.SIGKILL)
    os.waitpid(child, 0)


def smaller(failure: Failure, folder: Path, tries: int = 60) -> bytes:
    """The input less all that it still fails without: runs of lines first, then of letters."""
    content = failure.content
    last = failure.said.strip().rpartition("\n")[2][:60]
    for split in (b"\n", b""):
        parts = content.split(split) if split else [content[row : row + 1] for row in range(len(content))]
        size = max(1, len(parts) // 2)
        while size and tries > 0:
            start = 0
            while start < len(parts) and tries > 0:
                shorter = parts[:start] + parts[start + size :]
                tries -= 1
                done, said = run(failure.kind, [split.join(shorter)], folder)
                if not done and said.strip().rpartition("\n")[2][:60] == last:
                    parts = shorter
                else:
                    start += size
            size //= 2
        content = split.join(parts)
    return content
