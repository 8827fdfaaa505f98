"""Whether a name is that of a wood: a known one, or one that says of which known kind it is ("curly maple").

What is no wood by its name may be plastic, and is never to be taken for wood: a word that no name of a wood has, or a
last word that is none, and it is not known to be wood.
"""

import re
from collections.abc import Mapping
from functools import cache

from gramil.faults import MakersFault
from gramil.wood.species import Species, find_species, load_species

FIGURE = """
bear birds birdseye bookmatched claw curly dark eye fiddleback figured flame flamed flatsawn heart light plain quarter
quartersawn quilt quilted ripple rippled sap sawn sinker spalted straight striped tiger wavy
"""
"""Words for a wood's figure, and how it is sawn, that go with its name."""


def is_wood(name: str, own: Mapping[str, Species] | None = None) -> bool:
    """Whether a name is a known wood's, or one of the maker's `own`, or made of such names' words with a kind last."""
    try:
        find_species(name, own)
    except MakersFault:
        return _said_by_its_words(name)
    return True


def _said_by_its_words(name: str) -> bool:
    """Ahead of any comma the kind comes last; two things in one name ("maple/black") are no one wood."""
    kind = _words(re.split(r"[,;(]", name)[0])
    return bool(kind) and kind[-1] in _kinds() and not re.search(r"[/+&\d]", name) and _known().issuperset(_words(name))


def _words(text: str) -> list[str]:
    return re.findall(r"[a-z]+", text.lower().replace("'", "").replace("\N{RIGHT SINGLE QUOTATION MARK}", ""))


@cache
def _names() -> tuple[tuple[str, ...], ...]:
    """The words of every name that a known wood goes by in the trade."""
    return tuple(tuple(_words(name)) for wood in load_species().values() for name in (wood.name, *wood.also))


@cache
def _known() -> frozenset[str]:
    return frozenset(_words(FIGURE)) | {word for name in _names() for word in name}


@cache
def _kinds() -> frozenset[str]:
    """The words that say what kind of wood it is: those that a name ends with."""
    return frozenset(name[-1] for name in _names() if "of" not in name)
