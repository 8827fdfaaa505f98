"""The table of string, wire and rod materials: each figure with its source and how certain it is."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from typing import Any

from gramil.package_data import data_tables
from gramil.physics.wire_strength import StrengthLaw

FLAGS = ("read", "transcribed", "memory")
"""Read in the source, read in a transcription of it, or from memory."""


@dataclass(frozen=True)
class Sourced:
    """A published figure, where it was published, and how certain it is (one of FLAGS)."""

    value: float
    source: str
    flag: str


@dataclass(frozen=True)
class Material:
    """A material: densities in kg/m3, Young's moduli in MPa, and for wire a strength law.

    `stretches` are shares of its pull that a tuned string gains for each unit of strain; empty where a modulus does.
    """

    key: str
    name: str
    densities: tuple[Sourced, ...]
    moduli: tuple[Sourced, ...]
    strength: StrengthLaw | None
    stretches: tuple[Sourced, ...] = ()

    @property
    def density(self) -> float:
        """The density to use, kg/m3: the first of those known."""
        return self.densities[0].value

    @property
    def modulus_range(self) -> tuple[float, float]:
        """Lowest and highest of the moduli, MPa; results follow this range."""
        return _range(self.moduli)

    @property
    def modulus(self) -> float:
        """The middle of the range, MPa."""
        return sum(self.modulus_range) / 2.0

    def modulus_tuned(self, stress: float) -> tuple[float, float]:
        """Lowest and highest modulus, MPa, of a string of it under a stress in MPa: stretch x stress, or its own."""
        if not self.stretches:
            return self.modulus_range
        least, most = _range(self.stretches)
        return least * stress, most * stress


@cache
def materials() -> Mapping[str, Material]:
    """Every material by its key, in the order of the table."""
    table = data_tables("materials")
    return {key: _material(key, row) for key, row in table.items()}


def _material(key: str, row: Mapping[str, Any]) -> Material:
    law = StrengthLaw(**row["strength"]) if "strength" in row else None
    stretches = _sourced(row.get("stretch", ()))
    return Material(key, row["name"], _sourced(row["density"]), _sourced(row["modulus"]), law, stretches)


def _sourced(rows: Sequence[Mapping[str, Any]]) -> tuple[Sourced, ...]:
    return tuple(Sourced(**row) for row in rows)


def _range(figures: Sequence[Sourced]) -> tuple[float, float]:
    values = [figure.value for figure in figures]
    return min(values), max(values)
