"""What is done on being asked, as answers: a pack written, and what any other act says of itself."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class FileTold:
    """A file that was written, and how many bytes it holds."""

    path: str
    bytes: int


@dataclass(frozen=True)
class Packed:
    """A pack, a book or schemas: the files that were written, and those of an earlier pack that were left because they
    were changed.
    """

    files: tuple[FileTold, ...]
    left: tuple[str, ...]


@dataclass(frozen=True)
class Said:
    """What an act says of itself, line by line as it stands in words: what was noted, written, moved or taken back."""

    lines: tuple[str, ...]


def packed(folder: str, files: Mapping[str, bytes], left: Iterable[str]) -> Packed:
    """The files of a pack, by their names in its folder."""
    return Packed(
        tuple(FileTold(f"{folder}/{name}", len(content)) for name, content in files.items()),
        tuple(f"{folder}/{name}" for name in left),
    )
