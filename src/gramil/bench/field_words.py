"""What is wrong with a field, in the field's own words: no key, no file and no line stand in it."""

from collections.abc import Iterable
from dataclasses import replace

from gramil.faults import Fault


def in_field_words(fault: Fault) -> str:
    """A fault without its place, for a page on which the field itself is the place."""
    return str(replace(fault, file=None, line=None, where=""))


def at_fields(faults: Iterable[Fault], keys: Iterable[str]) -> tuple[dict[str, str], tuple[Fault, ...]]:
    """The faults of these fields in their words, by key; and the rest, which have no field on the page."""
    known, found, rest = tuple(keys), dict[str, str](), list[Fault]()
    for fault in faults:
        if fault.where in known:
            found.setdefault(fault.where, in_field_words(fault))
        else:
            rest.append(replace(fault, file=None, line=None))
    return found, tuple(rest)
