"""What the maker chose: the key behind a base value, and its value as written in the description."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from gramil.description.base import keys_of
from gramil.store.toml_text import value_text

Written = Mapping[str, Any]
"""A description as its tables stand, parsed and not checked."""
ENDS = ("nut", "end")
"""Ends that a table may give apart, as an arch does."""


@dataclass(frozen=True)
class Chosen:
    """A key that sets a base value, and what is written there (empty if the usual value is used)."""

    key: str
    written: str


def chosen(name: str, data: Written) -> Chosen | None:
    """The key to change for a base value, preferring one that is written in the description; None if no key sets it."""
    keys = [key for key in keys_of(name) if not key.startswith(("shop.", "limits."))]
    if not keys:
        return None
    written = [(key, found) for key in _keys(keys, name) if (found := _value(data, key)) is not None]
    if not written:
        return Chosen(keys[0], "")
    key, value = written[0]
    return Chosen(key, value if isinstance(value, str) else value_text(value))


def _keys(keys: list[str], name: str) -> list[str]:
    """The keys, each end of a table before the table."""
    end = name.rsplit("_", 1)[-1]
    return [each for key in keys for each in ((f"{key}.{end}", key) if end in ENDS else (key,))]


def _value(data: Written, key: str) -> Any:
    found: Any = data
    for step in key.split("."):
        if not isinstance(found, dict) or step not in found:
            return None
        found = found[step]
    return found
