"""A base value that is not simply one key: what the tables of such values are made of."""

from dataclasses import dataclass
from typing import Any


@dataclass(frozen=True)
class Normal:
    """A base value: its annotation, what it is, the keys that settle it, and where its default comes from."""

    name: str
    annotation: Any
    what: str
    keys: tuple[str, ...]
    reason: str = ""
