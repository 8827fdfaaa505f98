"""`python -m fuzz --seconds 60 [--seed N] [--kind odd] [--each 2]`: random inputs of every kind until the time is over.

Each input follows from its seed. One that fails is made smaller and kept in tests/fuzzed, where a test tries it again;
its seed is told. Ends with status 1 if any failed.
"""

import argparse
import random
import sys
import tempfile
import time
from hashlib import sha256
from pathlib import Path

from fuzz import descriptions, files, kills
from fuzz.kind import Kind
from fuzz.running import BATCH, Failure, batch, smaller

KINDS: tuple[Kind, ...] = (*descriptions.KINDS, *files.KINDS, *kills.KINDS)
KEPT = Path(__file__).parent.parent / "tests" / "fuzzed"
FIRST = 8
"""Inputs of the first batch of a kind; the batches grow, so that every kind has its turn in a minute."""


def main() -> int:
    asked = _asked()
    kinds = [each for each in KINDS if asked.kind in ("", each.name)]
    until, failures = time.monotonic() + asked.seconds, 0
    tried = dict.fromkeys((each.name for each in kinds), 0)
    spent = dict.fromkeys(tried, 0.0)
    with tempfile.TemporaryDirectory() as folder:
        while failures < asked.most:
            fewest = min(kinds, key=lambda each: tried[each.name])
            if time.monotonic() >= until and tried[fewest.name] >= asked.each:
                break
            ahead = time.monotonic() < until
            kind = min(kinds, key=lambda each: spent[each.name] / each.share) if ahead else fewest
            begun = time.monotonic()
            count = min(BATCH, FIRST + tried[kind.name]) if ahead else asked.each - tried[kind.name]
            seeds = [f"{asked.seed} {kind.name} {tried[kind.name] + row}" for row in range(count)]
            done, failure = batch(kind, seeds, Path(folder))
            spent[kind.name] += time.monotonic() - begun
            tried[kind.name] += done + (failure is not None)
            if failure is not None:
                failures += 1
                print(f"FAILED {failure.seed!r}\n{failure.said}", flush=True)
                print(f"kept as {_kept(failure, Path(folder)).name}", flush=True)
    print(f"seed {asked.seed}: " + ", ".join(f"{count} {name}" for name, count in tried.items()))
    print(f"{sum(tried.values())} in all, {failures} failed")
    return 1 if failures else 0


def _asked() -> argparse.Namespace:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--seconds", type=float, default=60.0)
    parser.add_argument("--seed", type=int, default=random.SystemRandom().randrange(10**9))
    parser.add_argument("--kind", default="", choices=["", *(each.name for each in KINDS)])
    parser.add_argument("--each", type=int, default=0, help="inputs of every kind, however long they take")
    parser.add_argument("--most", type=int, default=20, help="failures after which it ends")
    return parser.parse_args()


def _kept(failure: Failure, folder: Path) -> Path:
    """The failing input, made smaller, where a test finds it; of those that go by a seed alone, the seed."""
    content = smaller(failure, folder)
    name = failure.kind.name.replace(" ", "-")
    path = KEPT / f"{name}.{sha256(content).hexdigest()[:12]}"
    KEPT.mkdir(exist_ok=True)
    path.write_bytes(content)
    return path


if __name__ == "__main__":
    sys.exit(main())
