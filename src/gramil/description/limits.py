"""Practice limits: rows of `data/limits.toml`, each with its unit, what it limits and where it comes from."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from importlib.resources import files


@dataclass(frozen=True)
class Limit:
    """One row. `unit` is "mm", "cent", or empty for a plain ratio; `value` is in it."""

    name: str
    value: float
    unit: str
    what: str
    origin: str


def _rows() -> Mapping[str, Limit]:
    text = (files("gramil") / "data" / "limits.toml").read_text(encoding="utf-8")
    return {name: Limit(name=name, **row) for name, row in tomllib.loads(text).items()}


LIMITS: Mapping[str, Limit] = _rows()
"""Every limit by name, as the package ships it."""
