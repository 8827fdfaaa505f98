"""A name in few strokes: small letters, or the beginning of one of its words, where only one can be meant."""

from collections.abc import Iterable

from gramil.faults import MakersFault


def meant_name(written: str, names: Iterable[str]) -> str:
    """The one of the names that is meant; what is written, where none is. Raises MakersFault where several may be."""
    known = tuple(dict.fromkeys(names))
    small = written.strip().casefold()
    if written in known or not small:
        return written
    whole = [each for each in known if each.casefold() == small]
    begun = [each for each in known if any(word.startswith(small) for word in _beginnings(each.casefold()))]
    found = whole or begun
    if len(found) > 1:
        raise MakersFault.of(f'"{written}" may be {" or ".join(found)}', remedy="write more of its name")
    return found[0] if found else written


def _beginnings(name: str) -> Iterable[str]:
    """The name from each of its words on."""
    words = name.split()
    return (" ".join(words[place:]) for place in range(len(words)))
