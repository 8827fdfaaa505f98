"""A program that may not take the machine with it: `python bounded_program.py CODE [WORD...]`.

Runs CODE with WORDs as `words` under a limit of memory, and says on its last line how many MB it held at the most. A
fault that the maker can mend is told in a line that begins with REFUSED; anything else ends it with a traceback.
"""

import resource
import sys
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


if __name__ == "__main__":
    resource.setrlimit(resource.RLIMIT_AS, (MOST, MOST))
    from gramil.faults import MakersFault

    try:
        exec(sys.argv[1], {"words": sys.argv[2:]})
    except MakersFault as fault:
        print("REFUSED", " ".join(str(fault).split()))
    print(f"{peak():.0f}")
