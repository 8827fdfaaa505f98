"""The temperament of a scale: `N-equal`, or a Scala `.scl` file beside the description."""

import re
from pathlib import Path as FilePath

from gramil.description.instrument import Scale
from gramil.description.problems import Problem, quoted
from gramil.description.scala_scale import ScalaScale, equal_division, parse_scl
from gramil.plain_file import content_of

PATH = ("scale", "temperament")
LARGEST_SCL = 200_000
MOST_STEPS = 100


def read_tuning(scale: Scale | None, folder: FilePath | None) -> tuple[ScalaScale | None, list[Problem]]:
    """The scale table, or None with what is wrong; None and nothing when the scale itself could not be read."""
    if scale is None:
        return None, []
    word = scale.temperament.strip()
    if match := re.fullmatch(r"(\d{1,4})-equal", word, re.ASCII):
        return _equal(int(match[1]), word)
    if word.lower().endswith(".scl"):
        return _from_file(word, folder)
    allowed = 'a number of equal steps such as "12-equal", or the name of a .scl file'
    return None, [Problem(PATH, f"read {quoted(word)}", allowed)]


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
