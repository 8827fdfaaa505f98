"""What is done on being asked, as answers: a pack written, and any other act with what it says of itself."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any, Generic, TypeVar

Did = TypeVar("Did")


@dataclass(frozen=True)
class FileAnswer:
    """A file that was written, and how many bytes it holds."""

    path: str
    bytes: int


@dataclass(frozen=True)
class Packed:
    """A pack, a book or schemas: the files that were written, and those of an earlier pack that are made no more: left
    because they were changed, or removed.
    """

    files: tuple[FileAnswer, ...]
    left: tuple[str, ...]
    removed: tuple[str, ...] = ()


@dataclass(frozen=True)
class Acted(Generic[Did]):
    """An act: what it says of itself, line by line as it stands in words, and what was done, as a record."""

    lines: tuple[str, ...]
    did: Did


def acted(did: Any) -> Any:
    """The shape of an act that did such a record."""
    return Acted.__class_getitem__(did)  # type: ignore[attr-defined]  # every Generic has it


def packed(folder: str, files: Mapping[str, bytes], left: Iterable[str], removed: Iterable[str]) -> Packed:
    """The files of a pack, by their names in its folder."""
    return Packed(
        tuple(FileAnswer(f"{folder}/{name}", len(content)) for name, content in files.items()),
        tuple(f"{folder}/{name}" for name in left),
        tuple(f"{folder}/{name}" for name in removed),
    )
