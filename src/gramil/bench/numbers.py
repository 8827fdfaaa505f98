"""A plain number from a field: a comma serves as a point, and the sign that stands behind it may stay."""

from gramil.bench.asking import Asked
from gramil.faults import MakersFault


def number_of(asked: Asked, key: str) -> float:
    """The number of a field; raises MakersFault, with the field's key, for anything else."""
    written = asked.one(key)
    try:
        return float(written.replace(",", ".").rstrip("%°C ").strip())
    except ValueError:
        raise MakersFault.of(f'"{written}" is no number', remedy="write it such as 44", where=key) from None
