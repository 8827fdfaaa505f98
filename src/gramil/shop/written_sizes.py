"""Sizes of wood as a maker writes them: `410 x 60 x 6.2`."""

from gramil.faults import MakersFault
from gramil.measure import LengthUnit, read_length
from gramil.quantities import Mm


def read_sizes(text: str, unit: LengthUnit, where: str) -> tuple[Mm, Mm, Mm]:
    """Length, width and thickness, written with an x between them. Raises MakersFault for any other form."""
    parts = [part.strip() for part in text.replace("×", "x").split("x")]
    try:
        length, width, thickness = (float(read_length(part, unit)) for part in parts)
    except ValueError:
        raise MakersFault.of(f'"{text}" are no sizes', remedy="write them like 410 x 60 x 6.2", where=where) from None
    return length, width, thickness
