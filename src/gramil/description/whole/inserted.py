"""A table put into the text of a new whole guitar."""

from collections.abc import Iterable

from gramil.description.reading import parse_description


def with_lines_before(text: str, heading: str, lines: Iterable[str]) -> str:
    """The description with `lines` before its first `heading`. Raises MakersFault if it cannot be read then."""
    before, after = text.split(heading, 1)
    found = "\n".join((before, *lines, "")) + heading + after
    parse_description(found, "the new description")
    return found
