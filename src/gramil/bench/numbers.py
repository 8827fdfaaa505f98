"""A plain number from a field: a comma may stand for the decimal point, and a unit sign after the number is allowed."""

from gramil.bench.page_request import PageRequest
from gramil.faults import MakersFault


def number_of(request: PageRequest, key: str) -> float:
    """The number of a field; raises MakersFault, with the field's key, for anything else."""
    written = request.one(key)
    try:
        return float(written.replace(",", ".").rstrip("%°C ").strip())
    except ValueError:
        raise MakersFault.of(f'"{written}" is no number', remedy="write it such as 44", where=key) from None
