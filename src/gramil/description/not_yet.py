"""What cannot be described yet, by the words that a maker would write for it, and what comes nearest to it."""

import re
import tomllib
from dataclasses import dataclass
from importlib.resources import files


@dataclass(frozen=True)
class NotYet:
    """Something that makers build and no key describes: its name, the words for it, and what can be written instead."""

    name: str
    words: tuple[str, ...]
    nearest: str

    @property
    def what(self) -> str:
        """What is wrong with asking for it."""
        return f"{self.name} cannot be described yet"


def _rows() -> tuple[NotYet, ...]:
    text = (files("gramil") / "data" / "not-yet.toml").read_text(encoding="utf-8")
    return tuple(NotYet(row["name"], tuple(row["words"]), row["nearest"]) for row in tomllib.loads(text)["not_yet"])


NOT_YET: tuple[NotYet, ...] = _rows()
"""All of it, as the package ships it."""


def not_yet(written: str) -> NotYet | None:
    """What an unknown key, table or word asks for, if it is one of these."""
    parted = f"_{re.sub(r'[^a-z]+', '_', written.lower())}_"
    return next((each for each in NOT_YET if any(f"_{word}_" in parted for word in each.words)), None)
