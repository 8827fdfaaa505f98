"""Whether a name is that of a wood: a known one, or one that says which known kind it is ("curly maple").

Anything else may be plastic, and is never taken for wood: if a word occurs in no wood's name, or the last word is not
a kind of wood, it is not known to be wood.
"""

import re
from collections.abc import Mapping
from functools import cache

from gramil.wood.species import PlainName, Species, known_species, load_species, plain_names

FIGURE = """
bear birds birdseye bookmatched claw curly dark eye fiddleback figured flame flamed flatsawn heart light plain quarter
quartersawn quilt quilted ripple rippled sap sawn sinker spalted straight striped tiger wavy
"""
"""Words for a wood's figure, and how it is sawn, that go with its name."""


def is_wood(name: str, own: Mapping[str, Species] | None = None) -> bool:
    """Whether a name is a known wood's, or one of the maker's `own`, or made of such names' words with a kind last."""
    return known_species(name, own) is not None or _said_by_its_words(name)


def named(name: str, own: Mapping[str, Species] | None = None) -> Species | PlainName | None:
    """What a name stands for, ignoring words for figure and sawing; a name shared by several woods comes before a known
    wood's.

    The maker's `own` woods come first. None if nothing is known.
    """
    kind = " ".join(word for word in words_of(re.split(r"[,;(]", name)[0]) if word not in _figure())
    for each in dict.fromkeys((name, kind)):
        if each in plain_names() and each not in (own or {}):
            return plain_names()[each]
        if found := known_species(each, own):
            return found
    return plain_names().get(kind.rpartition(" ")[2]) if is_wood(name, own) else None


@cache
def _figure() -> frozenset[str]:
    return frozenset(words_of(FIGURE))


def serves_as(has: str, wanted: str) -> bool:
    """Whether a piece is of the wood that is wanted: its wood's name has every word of that, capitals or not.

    So black walnut serves as walnut, and walnut not as black walnut.
    """
    return set(wanted.lower().split()) <= set(has.lower().split())


def _said_by_its_words(name: str) -> bool:
    """Ahead of any comma the kind comes last; two things in one name ("maple/black") are not one wood."""
    kind = words_of(re.split(r"[,;(]", name)[0])
    return (
        bool(kind) and kind[-1] in _kinds() and not re.search(r"[/+&\d]", name) and _known().issuperset(words_of(name))
    )


def words_of(text: str) -> list[str]:
    """The words of a name, in small letters and without apostrophes."""
    return re.findall(r"[a-z]+", text.lower().replace("'", "").replace("\N{RIGHT SINGLE QUOTATION MARK}", ""))


@cache
def _names() -> tuple[tuple[str, ...], ...]:
    """The words of every name that a known wood goes by in the trade."""
    return tuple(tuple(words_of(name)) for wood in load_species().values() for name in (wood.name, *wood.also))


@cache
def _known() -> frozenset[str]:
    return _figure() | {word for name in _names() for word in name}


@cache
def _kinds() -> frozenset[str]:
    """The words that say what kind of wood it is: those that a name ends with."""
    return frozenset(name[-1] for name in _names() if "of" not in name)
