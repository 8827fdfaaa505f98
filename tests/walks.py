"""Long walks over many inputs: a sample at the gate, the same at every run; all of them with GRAMIL_WALK=1.
`make walk` sets it.

A walk that is sampled holds of every input; the sample is what one run of the tests can afford. It goes by the names of
the inputs alone, so that what failed once fails again, and a new input changes nothing for the others.
"""

import os
from collections.abc import Callable, Iterable, Sequence
from typing import Any, TypeVar
from zlib import crc32

T = TypeVar("T")

WHOLE = bool(os.environ.get("GRAMIL_WALK"))
"""Whether every walk goes over all of its inputs."""


def picked(name: object, one_in: int) -> bool:
    """Whether an input of this name is in a sample of one in so many."""
    return WHOLE or crc32(str(name).encode()) % one_in == 0


def sample(inputs: Sequence[T], one_in: int, named: Callable[[T], object] = str) -> list[T]:
    """All the inputs, or one in so many by their names; the first always."""
    return [each for row, each in enumerate(inputs) if not row or picked(named(each), one_in)]


def one_of_each(inputs: Iterable[T], kind: Callable[[T], Any]) -> list[T]:
    """All the inputs, or one of each kind: which one goes by the kind, so that kinds are not all seen on one input."""
    kinds: dict[Any, list[T]] = {}
    for each in inputs:
        kinds.setdefault(kind(each), []).append(each)
    if WHOLE:
        return [each for alike in kinds.values() for each in alike]
    return [alike[crc32(str(name).encode()) % len(alike)] for name, alike in kinds.items()]


def these(every: Sequence[T], at_the_gate: Sequence[T]) -> Sequence[T]:
    """Every input, or those that are chosen for the gate."""
    return every if WHOLE else at_the_gate


def fewer(of_a_whole_walk: int, at_the_gate: int) -> int:
    """How many inputs are drawn at random."""
    return of_a_whole_walk if WHOLE else at_the_gate
