"""A new shop's description: the usual wires, saws, cutters and blocks that are kept, and jigs, places and stock."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

import tomlkit

from gramil.description.problems import did_you_mean, nearest
from gramil.description.reading import parse_shop
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit
from gramil.package_data import data_text

KINDS: Mapping[str, str] = {
    "wire": "Fret wire that you have",
    "saw": "Saws for slots",
    "cutter": "Cutters for ledges",
    "block": "Radius blocks",
}
"""What is usual in a shop, and what to ask of it."""
JIGS: Mapping[str, str] = {
    "taper": "sled's fence to the near side of the blade: calipers, the saw unplugged",
    "slots": "pin less blade, along the board, from nut to tail positive: a test cut against the pin",
}
"""Jigs with a constant, and how that is measured."""
_BARE = re.compile(r"(?<![\w\"])(\d+(?:\.\d+)?)(?![\w\"])")


@dataclass(frozen=True)
class Jig:
    """A jig as answered: what it is for, its constant as written, the day it was checked (YYYY-MM-DD; empty: never)."""

    serves: str
    constant: str
    checked: str = ""


@dataclass(frozen=True)
class Piece:
    """A piece of wood as answered: its name, wood, and length, width, thickness as written."""

    name: str
    wood: str
    sizes: tuple[str, str, str]


USUAL_PAPER: Mapping[LengthUnit, str] = {"mm": "a4", "in": "letter"}
"""The paper that most likely lies in the printer of a shop that measures so."""


@dataclass(frozen=True)
class NewShop:
    """The answers for a new shop. `kept` has the names kept of each of `KINDS`; a kind that is not there is kept whole.
    `kerfs` are those that were measured, by saw; `paper` is the usual one of the units where nothing is answered.
    """

    name: str = "My shop"
    units: LengthUnit = "mm"
    paper: str = ""
    kept: Mapping[str, Sequence[str]] | None = None
    kerfs: Mapping[str, str] | None = None
    jigs: Sequence[Jig] = ()
    places: Sequence[str] = ("shop",)
    stock: Sequence[Piece] = ()


def usual_names(kind: str) -> tuple[str, ...]:
    """The names of what is usual of a kind."""
    return tuple(name for each, name, _ in _usual() if each == kind)


def usual_radii() -> Mapping[str, float]:
    """The radius in mm of each usual block that has one, by its name."""
    found = ((name, re.search(r"^radius = ([\d.]+)$", text, re.M)) for kind, name, text in _usual() if kind == "block")
    return {name: float(radius[1]) for name, radius in found if radius}


def new_shop(shop: NewShop) -> str:
    """The text of a shop's description.

    Raises MakersFault for an impossible answer, and for a name that is not among the usual ones.
    """
    _refuse_strangers(shop)
    head = [
        "gramil = 1                       # the form in which this file is written",
        "",
        "# What is marked as usual was measured on nothing: measure your own before you cut, and write it here.",
        "[shop]",
        f"name = {_text(shop.name)}",
        f"units = {_text(shop.units)}".ljust(32) + ' # "mm" or "in": the unit of bare numbers',
        f"paper = {_text(shop.paper or USUAL_PAPER[shop.units])}".ljust(32) + ' # "a4" or "letter"',
    ]
    text = "\n".join([*head, *_tools(shop), *_jigs(shop.jigs), *_places(shop.places), *_stock(shop.stock)]) + "\n"
    parse_shop(text, "the new shop")
    return text


def _refuse_strangers(shop: NewShop) -> None:
    faults = [
        Fault(
            where=kind,
            what=f'"{name}" is none of the usual ones',
            remedy=did_you_mean(nearest(name, usual_names(kind))),
        )
        for kind, names in (shop.kept or {}).items()
        for name in names
        if name not in usual_names(kind)
    ]
    if faults:
        raise MakersFault(faults)


def _usual() -> Iterator[tuple[str, str, str]]:
    """Kind, name and text of each tool of the shop that stands in when none is given."""
    text = data_text("shop-default.toml")
    for part in text.split("\n\n"):
        kind, name = re.search(r"^\[\[(\w+)\]\]", part, re.M), re.search(r'^name = "([^"]+)"', part, re.M)
        if kind and name:
            yield kind[1], name[1], part.strip("\n")


def _tools(shop: NewShop) -> Iterator[str]:
    for kind, name, text in _usual():
        if name in (shop.kept or {}).get(kind, (name,)):
            lines = text.split("\n")
            lines[0] = f"[[{kind}]]".ljust(32) + " # usual, not measured"
            measured = (shop.kerfs or {}).get(name) if kind == "saw" else None
            yield from ("", *(_line(each, shop.units, measured) for each in lines))


def _line(line: str, units: LengthUnit, kerf: str | None) -> str:
    """A line of a usual tool; in a shop of inches its millimetres are said to be such."""
    if kerf is not None and line.startswith("kerf = "):
        return f"kerf = {_text(kerf)}".ljust(32) + " # measured"
    key, equals, value = line.partition(" = ")
    if units == "mm" or not equals or value.startswith('"'):
        return line
    return f"{key} = " + _BARE.sub(r'"\1 mm"', value)


def _jigs(jigs: Sequence[Jig]) -> Iterator[str]:
    for each in jigs:
        yield from ("", "[[jig]]", f"name = {_text(f'{each.serves} jig')}", f"for = {_text(each.serves)}")
        yield f"constant = {_text(each.constant)}".ljust(32) + f" # {JIGS.get(each.serves, 'as you measured it')}"
        if each.checked:
            yield f"checked = {_date(each.checked)}".ljust(32) + " # when that was last measured"


def _date(written: str) -> str:
    """A day as TOML has it; anything else in quotes, for the reader of the description to refuse by name."""
    try:
        return date.fromisoformat(written).isoformat()
    except ValueError:
        return _text(written)


def _places(places: Sequence[str]) -> Iterator[str]:
    if places:
        yield from ("", "[air]", f"gluing_place = {_text(places[0])}".ljust(32) + " # where you glue")
    for each in places:
        yield from ("", "[[place]]", f"name = {_text(each)}".ljust(32) + " # read its air: gramil air read")


def _stock(stock: Sequence[Piece]) -> Iterator[str]:
    for each in stock:
        yield from ("", "[[blank]]", f"name = {_text(each.name)}", f"wood = {_text(each.wood)}")
        for key, size in zip(("length", "width", "thickness"), each.sizes, strict=True):
            yield f"{key} = {_text(size)}"


def _text(words: str) -> str:
    """Words as TOML."""
    return tomlkit.string(words).as_string()
