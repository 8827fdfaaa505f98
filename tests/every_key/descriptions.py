"""Descriptions that give every key that may be left out, and where each stands in them, for what leaves some out."""

import tomllib
from collections.abc import Iterator
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any

import tomlkit
from pydantic import BaseModel

from gramil.description.problems import table_in

HERE = Path(__file__).parent
EXAMPLES = files("gramil") / "data" / "examples"
INSTRUMENTS = ("square", "fanned", "old", "cutaway", "tarn", "fell", "scree", "mere")
Place = tuple[str | int, ...]
"""Where a key stands in a file: names of tables, numbers of rows, and the key."""
Key = tuple[str, ...]
"""The same without the rows."""


@cache
def text_of(name: str) -> str:
    """A description beside this file, or an example."""
    own = HERE / f"{name}.toml"
    return own.read_text("utf-8") if own.exists() else (EXAMPLES / f"{name}.toml").read_text("utf-8")


@cache
def shop_text() -> str:
    """The example shop with the keys laid over it that it does not give."""
    whole, more = tomlkit.parse((EXAMPLES / "shop.toml").read_text("utf-8")), tomlkit.parse(text_of("shop"))
    for name, table in more.items():
        if isinstance(table, list):
            whole.setdefault(name, tomlkit.aot()).extend(table)
        else:
            whole[name].update(table)
    return tomlkit.dumps(whole)


def lay_out_drawings(folder: Path) -> None:
    """The drawings that outlines are taken from, into a folder."""
    for file in HERE.glob("*.svg"):
        (folder / file.name).write_bytes(file.read_bytes())


def optional_in(model: type[BaseModel], above: Key = ()) -> Iterator[Key]:
    """Every key and table that may be left out; limits apart, each of which stands for itself in the package's data."""
    for name, field in model.model_fields.items():
        key, table = (*above, field.alias or name), table_in(field.annotation)
        if not field.is_required():
            yield key
        if table is not None and name != "limits":
            yield from optional_in(table, key)


def places_in(value: Any, above: Place = ()) -> Iterator[Place]:
    """Every place in a file at which there is a key."""
    rows: Any = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for step, inner in rows:
        if isinstance(step, str):
            yield (*above, step)
        yield from places_in(inner, (*above, step))


def key_at(place: Place) -> Key:
    """The key at a place."""
    return tuple(step for step in place if isinstance(step, str))


def at(value: Any, place: Place) -> Any:
    """What stands at a place."""
    for step in place:
        value = value[step]
    return value


def first_places(text: str) -> dict[Key, Place]:
    """The first place of each key in a file."""
    found: dict[Key, Place] = {}
    for place in places_in(tomllib.loads(text)):
        found.setdefault(key_at(place), place)
    return found
