"""A program that may not take the machine with it: `python bounded_program.py CODE [WORD...]`.

Runs CODE with WORDs as `words` under a limit of memory, and says on its last line how many MB it held at the most. A
fault that the maker can mend is told in a line that begins with REFUSED; anything else ends it with a traceback. With
`in_branches` CODE reads many files, each in a branch of the program, so that each has limits of its own.
"""

import json
import os
import resource
import sys
from collections.abc import Callable, Iterable
from pathlib import Path

MOST = 3_000_000_000
"""Bytes of address space: enough for what is measured, and less than the machine has."""


def peak() -> float:
    """MB held at the most, of this program alone."""
    status = Path("/proc/self/status")
    if status.exists():
        (line,) = [each for each in status.read_text().splitlines() if each.startswith("VmHWM")]
        return int(line.split()[1]) / 1000
    held = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss
    return held / (1e6 if sys.platform == "darwin" else 1e3)


def in_branches(reading: Callable[[Path], str], files: Iterable[Path]) -> None:
    """Says of each file, in a line of JSON, its name, what reading it gave, how it ended, MB held and seconds taken."""
    for file in files:
        out, into = os.pipe()
        branch = os.fork()
        if not branch:
            os.close(out)
            said = reading(file)
            with os.fdopen(into, "w", encoding="utf-8") as stream:
                stream.write(said)
            os._exit(0)
        os.close(into)
        with os.fdopen(out, encoding="utf-8") as stream:
            said = stream.read()
        _, status, used = os.wait4(branch, 0)
        held = used.ru_maxrss / (1e6 if sys.platform == "darwin" else 1e3)
        print(json.dumps([file.name, said, status, held, round(used.ru_utime, 1)]))


if __name__ == "__main__":
    resource.setrlimit(resource.RLIMIT_AS, (MOST, MOST))
    from gramil.faults import MakersFault

    try:
        exec(sys.argv[1], {"words": sys.argv[2:], "in_branches": in_branches})
    except MakersFault as fault:
        print("REFUSED", " ".join(str(fault).split()))
    print(f"{peak():.0f}")
