"""A kind of random input: how one is made from a seed, and what must hold of it."""

import random
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path


@dataclass(frozen=True)
class Kind:
    """`make` gives an input as bytes; `check` takes them, with a folder to itself, and raises where anything is wrong.

    `share` is how much of the time it gets beside the others; `seconds` what one input may take.
    """

    name: str
    make: Callable[[random.Random], bytes]
    check: Callable[[bytes, Path], None]
    share: float = 1.0
    seconds: float = 5.0
