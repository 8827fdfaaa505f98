"""How wide words are in the shipped typefaces: the widths of their letters, as the files of the faces have them."""

from functools import cache
from importlib.resources import files
from io import BytesIO
from typing import NamedTuple

from gramil.writers.lettering import type_size


class Face(NamedTuple):
    """A shipped typeface, as the typesetter knows it: its family and weight; `file` holds it."""

    family: str
    weight: str
    file: str


WORDS = Face("B612", "regular", "B612-Regular.ttf")
BOLD = Face("B612", "bold", "B612-Bold.ttf")
FIGURES = Face("B612 Mono", "regular", "B612Mono-Regular.ttf")


def words_wide(text: str, height: float, face: Face) -> float:
    """How wide the text is in mm if its capitals are `height` mm tall; letters are not moved together in pairs."""
    widths, missing = _widths(face)
    return type_size(height) * sum(widths.get(ord(letter), missing) for letter in text)


@cache
def _widths(face: Face) -> tuple[dict[int, float], float]:
    """The width of each letter over the size of the type, by its code, and that of a letter that the face lacks."""
    from fontTools.ttLib import TTFont

    font = TTFont(BytesIO(files("gramil").joinpath("fonts", face.file).read_bytes()), lazy=True)
    across, em = font["hmtx"], float(font["head"].unitsPerEm)
    widths = {code: across[name][0] / em for code, name in font.getBestCmap().items()}
    return widths, across[".notdef"][0] / em
