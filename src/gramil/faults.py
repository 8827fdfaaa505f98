"""What the maker can mend: each fault says where it is, what is wrong, why, and what to write or do instead.

Faults are values, collected and shown together. `MakersFault` carries them to the page or the terminal; any other
exception is a bug in the program.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Self


@dataclass(frozen=True)
class Fault:
    """One thing to mend: `where` is a key or a figure's address, `line` counts from 1; empty or None if unknown.

    `str` gives it as one paragraph: "file:line: where: what. why. remedy."
    """

    line: int | None = None
    where: str = ""
    what: str = ""
    why: str = ""
    remedy: str = ""
    file: str | None = None

    def __str__(self) -> str:
        sentences = " ".join(filter(None, (closed(self.what), _sentence(self.why), _sentence(self.remedy))))
        return ": ".join(words for words in (self._place(), self.where, sentences) if words)

    def _place(self) -> str:
        """The file and line as editors read them, as much of it as is known."""
        if self.file is None:
            return "" if self.line is None else f"line {self.line}"
        return self.file if self.line is None else f"{self.file}:{self.line}"


class MakersFault(Exception):  # noqa: N818 (the trade's word: it is the maker's to mend, not an error of the program)
    """One or more faults that the user can mend; the only exception that is shown as a message, not a traceback."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults = tuple(faults)
        if not self.faults:
            raise ValueError("a MakersFault carries at least one fault")
        super().__init__(self.faults)

    def __str__(self) -> str:
        return "\n\n".join(map(str, self.faults))

    @classmethod
    def of(cls, what: str, why: str = "", remedy: str = "", *, where: str = "") -> Self:
        """A single plain fault that has no line in a file."""
        return cls([Fault(where=where, what=what, why=why, remedy=remedy)])


def _sentence(words: str) -> str:
    """The words with a capital at the start and a full stop at the end; a key or number at the start stays as it is."""
    words = words.strip()
    first = words.split(" ")[0].rstrip(":,")
    return closed(words[:1].upper() + words[1:] if first.isalpha() else words)


def closed(words: str) -> str:
    """Words ended by one full stop, unless they already end like a sentence; empty words stay empty."""
    words = words.strip()
    return words if not words or words.endswith((".", "?", "!")) else f"{words}."
