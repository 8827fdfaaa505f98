"""Finding by the words that a maker would use: plain word matching with the trade's other words for the same thing."""

import re
from collections.abc import Iterable
from dataclasses import dataclass

OTHER_WORDS = {
    "thick": "thickness",
    "fingerboard": "board",
    "fretboard": "board",
    "soundboard": "top",
    "headstock": "head",
    "wide": "width",
    "long": "length",
    "high": "height",
    "deep": "depth",
    "kerfing": "linings",
    "humidity": "air",
    "glue": "gluing",
    "bracing": "brace",
}
"""Words that mean the same as another in the program's own."""
_LITTLE = "how is the a an of at are to in for on what where do i my it and its"
LITTLE = frozenset(_LITTLE.split())
"""Words that say nothing of what is looked for."""


@dataclass(frozen=True)
class Found:
    """Something found: what kind of thing it is, whose, its words, where it is, and its value if it has one."""

    kind: str
    words: str
    address: str
    value: str = ""


def asked_words(asked: str) -> tuple[str, ...]:
    """The words that are looked for: without little ones and without a plural's s."""
    plain = re.findall(r"[^\W_]+(?:[./]\d+)?", asked.lower())
    return tuple(_stem(OTHER_WORDS.get(each, each)) for each in plain if each not in LITTLE)


def _stem(word: str) -> str:
    return word[:-1] if len(word) > 3 and word.endswith("s") and not word.endswith("ss") else word


def matching(asked: str, known: Iterable[Found], most: int = 12) -> tuple[Found, ...]:
    """Whatever has every word asked for: exact names first, then names that begin with the words, then the shortest."""
    wanted = asked_words(asked)
    if not wanted:
        return ()
    scored = [(_score(wanted, each.words), each) for each in known]
    hits = sorted(((score, each) for score, each in scored if score is not None), key=lambda hit: hit[0])
    return tuple(each for _, each in hits[:most])


def _score(wanted: tuple[str, ...], words: str) -> tuple[int, int, int] | None:
    """How far something is from what was asked for; None if it lacks one of the words. A name ends at a colon.

    A chosen value is named after its table first (heights relief); that word need not be asked for.
    """
    said = _stems(words)
    if not all(any(each.startswith(word) for each in said) for word in wanted):
        return None
    called = _stems(words.partition(":")[0])
    return (int(wanted not in (called, called[1:])), int(not said or not said[0].startswith(wanted)), len(said))


def _stems(words: str) -> tuple[str, ...]:
    return tuple(_stem(each) for each in re.findall(r"[^\W_]+", words.lower()))
