"""The temperament of a scale: `N-equal`, a Scala `.scl` file beside the description, or its degrees written out."""

import re
from itertools import pairwise
from pathlib import Path as FilePath

from gramil.description.board.scala_scale import ScalaScale, equal_division, parse_scl
from gramil.description.board.tables import Scale
from gramil.description.problems import Problem, quoted
from gramil.plain_file import content_of

PATH = ("scale", "temperament")
LARGEST_SCL = 200_000
MOST_STEPS = 100


def read_tuning(scale: Scale | None, folder: FilePath | None) -> tuple[ScalaScale | None, list[Problem]]:
    """The scale table, or None with what is wrong; None and no problem if the [scale] table itself could not be
    read.
    """
    if scale is None:
        return None, []
    if scale.degrees is not None:
        return _written(scale.degrees)
    word = scale.temperament.strip()
    if match := re.fullmatch(r"(\d{1,4})-equal", word, re.ASCII):
        return _equal(int(match[1]), word)
    if names_file(scale):
        return _from_file(word, folder)
    allowed = 'a number of equal steps such as "12-equal", or the name of a .scl file'
    return None, [Problem(PATH, f"read {quoted(word)}", allowed)]


def names_file(scale: Scale) -> bool:
    """Whether the temperament is the name of a `.scl` file."""
    return scale.degrees is None and scale.temperament.strip().lower().endswith(".scl")


def _written(degrees: tuple[float, ...]) -> tuple[ScalaScale | None, list[Problem]]:
    for before, value in pairwise((0.0, *degrees)):
        if value <= before:
            said = f"read {value:g} cents after {before:g}"
            return None, [Problem(("scale", "degrees"), said, "cents that rise from fret to fret")]
    return ScalaScale("degrees", degrees), []


def _equal(steps: int, word: str) -> tuple[ScalaScale | None, list[Problem]]:
    if not 1 <= steps <= MOST_STEPS:
        return None, [Problem(PATH, f"read {quoted(word)}", f"1 to {MOST_STEPS} equal steps to the octave")]
    return equal_division(steps), []


def _from_file(word: str, folder: FilePath | None) -> tuple[ScalaScale | None, list[Problem]]:
    name = FilePath(word)
    if folder is None or name.name != word or "\0" in word:
        return None, [Problem(PATH, f"read {quoted(word)}", "the bare name of a .scl file beside the description")]
    try:
        return parse_scl(content_of(folder / name, LARGEST_SCL).decode("latin-1")), []
    except FileNotFoundError:
        return None, [Problem(PATH, f"read {quoted(word)}", "there is no such file beside the description")]
    except OSError as error:
        return None, [Problem(PATH, f"{quoted(word)} cannot be read", error.strerror or "")]
    except ValueError as error:
        return None, [Problem(PATH, f"in {word}, {error}")]
