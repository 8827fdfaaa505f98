"""Odd values for every key of the two descriptions: each range at both ends and just past, and words with all in them.

Given places are those of the descriptions beside this file and of the examples; a range is read off the key's field.
"""

import math
import tomllib
from collections.abc import Iterator
from functools import cache
from typing import Any, get_args

import tomlkit
from pydantic import BaseModel

from gramil.description.fields import LARGEST
from gramil.description.instrument import Instrument
from gramil.description.problems import table_in
from gramil.description.shop.tables import Shop

from .descriptions import INSTRUMENTS, Place, at, key_at, places_in, shop_text, text_of

WORDS = (
    "{}",
    "{0} {name} }{",
    "say \"so\" \\ 'yes'",
    "線" * 200,
    "one\nline\tand\r\nmore",
    "%s %(x)d $x ${y}",
    "<b>&amp;</b>",
)
"""Text that may break what writes it: braces, quotes, 200 letters of three bytes, line ends, others' marks."""
TINY = (5e-324, 1e-300, 1e-9, 1e-4)
Odd = tuple[Place, Any]
"""A place in a description, and what is put there."""


def odd_values(name: str) -> tuple[Odd, ...]:
    """Every odd value of an instrument's description."""
    return tuple(_odd_in(text_of(name), Instrument))


@cache
def odd_values_of_shop() -> tuple[Odd, ...]:
    """Every odd value of a shop's description."""
    return tuple(_odd_in(shop_text(), Shop))


@cache
def odd_instruments() -> tuple[tuple[str, Place, Any], ...]:
    """Of every instrument, the odd values of each key, in the first description that gives the key."""
    seen: set[tuple[str, ...]] = set()
    found: list[tuple[str, Place, Any]] = []
    for name in INSTRUMENTS:
        new = [each for each in odd_values(name) if key_at(each[0]) not in seen]
        seen |= {key_at(place) for place, _ in new}
        found += [(name, place, value) for place, value in new]
    return tuple(found)


def with_value(text: str, place: Place, value: Any) -> str:
    """A description with a value put at a place."""
    whole = tomllib.loads(text)
    at(whole, place[:-1])[place[-1]] = value
    return tomlkit.dumps(whole)


def _odd_in(text: str, model: type[BaseModel]) -> Iterator[Odd]:
    whole, seen = tomllib.loads(text), set[tuple[str, ...]]()
    for place in places_in(whole):
        if key_at(place) in seen:
            continue
        seen.add(key_at(place))
        value = at(whole, place)
        for odd in _odd(value, _field(model, key_at(place))):
            yield place, odd


def _odd(value: Any, field: Any) -> Iterator[Any]:
    if isinstance(value, bool):
        yield not value
    elif isinstance(value, int | float) or (isinstance(value, str) and field is not None and _ends(field)):
        yield from _past(sorted({*_ends(field)} if field is not None else {0.0, LARGEST}), isinstance(value, int))
    elif isinstance(value, str):
        yield from WORDS
    elif isinstance(value, list):
        yield from ([], value[:1], value * 2, list(reversed(value)))


def _past(ends: list[float], whole: bool) -> Iterator[Any]:
    """Both ends of a range, just past and just within each, and next to nothing."""
    for end in ends:
        yield from (int(end), int(end) - 1, int(end) + 1) if whole else ()
        yield from (float(end), math.nextafter(end, -math.inf), math.nextafter(end, math.inf))
    yield from TINY
    yield from (-0.0, 1e300, -1e300, 10**30)


def _ends(field: Any) -> set[float]:
    """The ends of a field's range, those of its type among them."""
    marks = [*field.metadata, *_marks(field.annotation)]
    each = [getattr(mark, key, None) for mark in marks for key in ("ge", "gt", "le", "lt")]
    return {float(end) for end in each if isinstance(end, int | float)}


def _marks(annotation: Any) -> Iterator[Any]:
    yield from getattr(annotation, "__metadata__", ())
    for inner in get_args(annotation):
        yield from _marks(inner)


def _field(model: type[BaseModel], key: tuple[str, ...]) -> Any:
    """The field of a key, or nothing."""
    table: type[BaseModel] | None = model
    field = None
    for step in key:
        if table is None:
            return None
        field = next((each for name, each in table.model_fields.items() if step == (each.alias or name)), None)
        table = table_in(field.annotation) if field else None
    return field
