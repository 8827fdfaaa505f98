"""What is wrong with a field, in the field's own words, without key, file or line."""

from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from typing import Any

from gramil.faults import Fault, MakersFault

OF_AIR = {"a room": "temperature", "relative humidity": "humidity"}
"""What the record says of a reading that no room could have begins so: the field that is meant."""


def in_field_words(fault: Fault) -> str:
    """A fault without its place, for a page on which the field itself is the place."""
    return str(replace(fault, file=None, line=None, where=""))


def in_key_words(fault: Fault) -> str:
    """A fault for a page that shows more than one field: its key in words, without file or line."""
    return str(replace(fault, file=None, line=None, where=fault.where.replace(".", " ").replace("_", " ")))


def at_fields(faults: Iterable[Fault], keys: Iterable[str]) -> tuple[dict[str, str], tuple[Fault, ...]]:
    """The faults of these fields in their words, by key; and the rest, which have no field on the page."""
    known, found, rest = tuple(keys), dict[str, str](), list[Fault]()
    for fault in faults:
        if fault.where in known:
            found.setdefault(fault.where, in_field_words(fault))
        else:
            rest.append(replace(fault, file=None, line=None))
    return found, tuple(rest)


@contextmanager
def at_field(key: str) -> Iterator[None]:
    """Whatever is read within this block is at fault in this field; a line within the field stays named."""
    try:
        yield
    except MakersFault as fault:
        raise MakersFault(placed(each, key) for each in fault.faults) from None


def placed(fault: Fault, key: str) -> Fault:
    """A fault at a field of a page; a line of it stays named."""
    line = f"line {fault.line}: " if fault.line is not None else ""
    return replace(fault, where=key, what=f"{line}{fault.what}", file=None, line=None)


@contextmanager
def at_fields_of_air() -> Iterator[None]:
    """What the record does not take as air, at the field that is meant."""
    try:
        yield
    except MakersFault as fault:
        meant = (next((key for said, key in OF_AIR.items() if each.what.startswith(said)), "") for each in fault.faults)
        pairs = zip(fault.faults, meant, strict=True)
        raise MakersFault(placed(each, key) if key else each for each, key in pairs) from None


def all_read(**fields: Callable[[], Any]) -> tuple[Any, ...]:
    """Every field read, by its key; raises MakersFault with what is wrong with any of them, all at once."""
    found, faults = list[Any](), list[Fault]()
    for key, read in fields.items():
        try:
            with at_field(key):
                found.append(read())
        except MakersFault as fault:
            faults += fault.faults
    if faults:
        raise MakersFault(faults)
    return tuple(found)
