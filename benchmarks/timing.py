"""Timing that is fair on a busy machine: the best of several runs, after one to warm up."""

import time
from collections.abc import Callable


def seconds(work: Callable[[], object], repeats: int = 7) -> float:
    """The least time that `work` takes, in seconds."""
    work()
    best = float("inf")
    for _ in range(repeats):
        start = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - start)
    return best


def processor_seconds(work: Callable[[], object], repeats: int = 7) -> float:
    """The least time of a processor that `work` takes, in seconds: what it would take on a core of its own."""
    work()
    best = float("inf")
    for _ in range(repeats):
        start = time.process_time()
        work()
        best = min(best, time.process_time() - start)
    return best


def milliseconds(value: float) -> str:
    return f"{1000 * value:8.2f} ms"
