"""Practice limits: rows of `data/limits.toml`, each with its unit, what it limits and where it comes from."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from gramil.package_data import data_tables
from gramil.reference import Ref


@dataclass(frozen=True)
class Limit:
    """One row. `unit` is "mm", "cent", "rad" (written in degrees, "deg"), or empty for a ratio; `value` is in it.

    A limit for a `kind` of instrument replaces the limit `instead_of` there.
    """

    name: str
    value: float
    unit: str
    what: str
    origin: str
    kind: str = ""
    instead_of: str = ""


LEADING = "limit_"
"""What the name of a limit's base value starts with."""


def _rows() -> Mapping[str, Limit]:
    return {name: _limit(name, row) for name, row in data_tables("limits").items()}


def _limit(name: str, row: Mapping[str, Any]) -> Limit:
    limit = Limit(name=name, **row)
    return replace(limit, value=math.radians(limit.value), unit="rad") if limit.unit == "deg" else limit


LIMITS: Mapping[str, Limit] = _rows()
"""Every limit by name, as the package ships it."""
JUDGING = tuple(name for name, limit in LIMITS.items() if not limit.instead_of)
"""The limits that instruments are judged by, without those that take another's place for a kind of instrument."""
_FOR_A_KIND = {(limit.instead_of, limit.kind): limit for limit in LIMITS.values() if limit.instead_of}


def limit_ref(name: str) -> Ref[float]:
    """The reference to the base value of a named limit: `n.limit_slot_position` for `slot_position`."""
    return Ref(LEADING + name)


def limit_for(name: str, kinds: frozenset[str]) -> Limit:
    """The row that is used under the name of a limit for instruments of these kinds."""
    return next((_FOR_A_KIND[name, kind] for kind in kinds if (name, kind) in _FOR_A_KIND), LIMITS[name])
