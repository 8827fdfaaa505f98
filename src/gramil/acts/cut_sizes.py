"""What can be cut of a piece of wood: no part is longer than it was, or wider or thicker, on whichever face it lies."""

from collections.abc import Iterable

from gramil.faults import MakersFault
from gramil.shop.stock import Blank


def volume(blank: Blank) -> float:
    """The volume of a part, in mm3."""
    return blank.length * blank.width * blank.thickness


def refuse_larger(whole: Blank, parts: Iterable[Blank], where: str = "") -> None:
    """Raises MakersFault, placed at `where`, for the first part that does not fit into the whole with the grain running
    the same way.
    """
    for each in parts:
        if not _within(each, whole):
            what, was = f"{each.name} does not lie within {whole.name}", f"that is {_sizes(whole)} mm"
            remedy = "write its length along the grain, its width and its thickness"
            raise MakersFault.of(what, was, remedy, where=where)


def _within(part: Blank, whole: Blank) -> bool:
    (thin, wide), (thickness, width) = sorted((part.width, part.thickness)), sorted((whole.width, whole.thickness))
    slack = 1 + 1e-9
    return part.length <= whole.length * slack and wide <= width * slack and thin <= thickness * slack


def _sizes(blank: Blank) -> str:
    return " x ".join(f"{each:g}" for each in (blank.length, blank.width, blank.thickness))
