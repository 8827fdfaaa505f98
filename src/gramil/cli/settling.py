"""What measurements settle: said on the command line and, with `--write`, put into the description."""

from collections.abc import Callable, Collection, Iterator
from pathlib import Path

from gramil.change.settled import off, sentence
from gramil.change.settled_text import written_into
from gramil.description.reading import parse_description
from gramil.formatter import formatter_of
from gramil.graph import Figures
from gramil.text_file import LARGEST, text_of
from gramil.written_file import alone_with, imprint_in, put_text


def settling_lines(made: Figures, readings: Collection[str]) -> Iterator[str]:
    """Where the readings settle an input differently from the description, a sentence each."""
    first = formatter_of(made).first
    yield from (sentence(each, made, first) for each in off(made, readings))


def settled_in(text: str, made: Figures, readings: Collection[str], folder: Path | None = None) -> str:
    """The description's text with what the readings settle. Raises MakersFault if that is not allowed there."""
    described = parse_description(text, folder=folder)
    new = written_into(text, described.instrument, off(made, readings))
    if new != text:
        parse_description(new, "the description as it would be written", folder)
    return new


def write_into_file(file: Path, made: Figures, readings: Collection[str]) -> Callable[[], tuple[bool, str]]:
    """A function that writes it into the file once the measurement is noted, and says whether the file is changed, and
    in a line; what is not allowed raises MakersFault at once.

    What an editor saved meanwhile is not overwritten.
    """
    seen, text = imprint_in(file, LARGEST), text_of(file)
    new = settled_in(text, made, readings, file.parent)

    def write() -> tuple[bool, str]:
        if new == text:
            return False, f"Nothing needs to be set in {file.name}."
        with alone_with(file):
            put_text(file, new, seen)
        return True, f"{file.name} is changed."

    return write
