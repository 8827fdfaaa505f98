"""JSON Schemas of the two descriptions, made from the models that read them: editors complete and check keys by them.

They know the shape alone: which tables and keys there are, which must be given, what kind of thing each takes and how a
measure is written. Whether keys go together, and what a length may be at most, only the reader knows.
"""

from collections.abc import Iterable
from types import UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from annotated_types import Ge, Gt, Le, MaxLen, MinLen
from pydantic import BaseModel, BeforeValidator
from pydantic.fields import FieldInfo

from gramil.description import fields
from gramil.description.instrument import Instrument
from gramil.description.keys import allowed, default, usual_by_kind
from gramil.description.marks import marks_of
from gramil.description.shop.tables import Shop
from gramil.description.wood import air_fields
from gramil.layers import MOST, read_colour
from gramil.measure import SPELLINGS

DRAFT = "http://json-schema.org/draft-07/schema#"
"""The draft that editors of TOML know."""
NUMERALS = r"[0-9.+\-−/⁄\s¼-¾⅐-⅟↉]"
"""Whatever may stand in a measure beside its units; each unit comes after one of these, so that a text can be read in
one way only.
"""
Schema = dict[str, Any]


def instrument_schema() -> Schema:
    """The schema of an instrument's description."""
    return _whole(Instrument, "A guitar, described for gramil")


def shop_schema() -> Schema:
    """The schema of a shop's description."""
    return _whole(Shop, "A shop, described for gramil")


def _whole(model: type[BaseModel], title: str) -> Schema:
    return {"$schema": DRAFT, "title": title, **_table(model, ""), "definitions": DEFINITIONS}


def _table(model: type[BaseModel], name: str) -> Schema:
    """A table with its keys; `name` is its place in the file, for what is usual there."""
    keys = {field.alias or key: field for key, field in model.model_fields.items()}
    needed = [key for key, field in keys.items() if field.is_required()]
    return {
        "type": "object",
        **({"description": " ".join((model.__doc__ or "").split())} if name else {}),
        "properties": {key: _key(field, f"{name}.{key}".lstrip(".")) for key, field in keys.items()},
        **({"required": needed} if needed else {}),
        "additionalProperties": False,
    }


def _key(field: FieldInfo, name: str) -> Schema:
    found = _shape(field.annotation, _marks_beside(field), name)
    if field.description is None:
        return found
    left_out = default(field) + usual_by_kind(name, field)
    told = [field.description, f"Takes: {allowed(field)}", *([f"Left out: {left_out}"] if left_out else [])]
    return {**found, "description": ". ".join(told) + "."}


def _marks_beside(field: FieldInfo) -> tuple[Any, ...]:
    """What is said of the key as a whole, not of the members of a list."""
    marks = [each for mark in field.metadata for each in (mark.metadata if isinstance(mark, FieldInfo) else [mark])]
    single = get_origin(field.annotation) is not tuple
    return tuple(dict.fromkeys([*marks, *(marks_of(field) if single and not _lists(field.annotation) else [])]))


def _lists(annotation: Any) -> bool:
    return get_origin(annotation) is tuple or any(map(_lists, get_args(annotation)))


def _shape(annotation: Any, marks: Iterable[Any], name: str) -> Schema:
    """The schema of one value: by its reader if it has one, else by its type."""
    marks = tuple(marks)
    if get_origin(annotation) is Annotated:
        own = (each for mark in annotation.__metadata__
               for each in (mark.metadata if isinstance(mark, FieldInfo) else [mark]))  # fmt: skip
        return _shape(annotation.__origin__, (*marks, *own), name)
    for mark in marks:
        if isinstance(mark, BeforeValidator):
            return _as_read(mark.func, annotation, marks, name)
    if get_origin(annotation) in (Union, UnionType):
        arms = [_shape(each, marks, name) for each in get_args(annotation) if each is not type(None)]
        return arms[0] if len(arms) == 1 else {"anyOf": arms}
    if get_origin(annotation) is tuple:
        return _list(get_args(annotation), marks, name)
    return _plain(annotation, marks, name)


def _as_read(reader: object, annotation: Any, marks: tuple[Any, ...], name: str) -> Schema:
    if reader is fields.spread_over_ends:
        rest = (each for each in marks if not isinstance(each, BeforeValidator))
        return {"anyOf": [_shape(annotation, rest, name), _named(READ[fields._radius])]}
    if reader is fields._share:
        return {"type": "number", **_bounds(marks)}
    return _named(READ[reader])


def _named(name: str) -> Schema:
    return {"allOf": [{"$ref": f"#/definitions/{name}"}]}


def _list(members: tuple[Any, ...], marks: tuple[Any, ...], name: str) -> Schema:
    """A list of any length, or one whose every place has its own meaning."""
    if members[-1] is Ellipsis:
        return {"type": "array", "items": _shape(members[0], (), name), **_lengths(marks, "Items")}
    each = [_shape(member, (), name) for member in members]
    return {"type": "array", "items": each, "minItems": len(each), "maxItems": len(each)}


def _plain(annotation: Any, marks: tuple[Any, ...], name: str) -> Schema:
    if get_origin(annotation) is Literal:
        return {"enum": list(get_args(annotation))}
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return _table(annotation, name)
    if annotation is str:
        return {"type": "string", **_lengths(marks, "Length")}
    return {"type": {bool: "boolean", int: "integer", float: "number"}[annotation], **_bounds(marks)}


def _bounds(marks: Iterable[Any]) -> Schema:
    """The least and the most of a plain number; what has a unit is bounded in its own, which a schema cannot read."""
    found: Schema = {}
    for mark in marks:
        if isinstance(mark, Gt):
            found["exclusiveMinimum"] = mark.gt
        elif isinstance(mark, Ge):
            found["minimum"] = mark.ge
        elif isinstance(mark, Le):
            found["maximum"] = mark.le
    return found


def _lengths(marks: Iterable[Any], of: str) -> Schema:
    found: Schema = {}
    for mark in marks:
        if isinstance(mark, MinLen):
            found[f"min{of}"] = mark.min_length
        elif isinstance(mark, MaxLen):
            found[f"max{of}"] = mark.max_length
    return found


def _measure(quantity: str, *others: Schema, bare: bool = True) -> Schema:
    """A measure as text with its unit, or as a bare number."""
    units = "|".join(_any_case(each) for each in sorted(SPELLINGS[quantity], key=len, reverse=True))
    text = {"type": "string", "pattern": rf"^(?=.*[0-9¼-¾⅐-⅟↉])(?:{NUMERALS}(?:{units})?)+$"}
    return {"anyOf": [*([{"type": "number"}] if bare else []), text, *others]}


def _any_case(word: str) -> str:
    """A pattern for a word in small or capital letters: schemas have no switch for that."""
    return "".join(
        f"[{each.lower()}{each.upper()}]" if each.isalpha() and each.upper() != each else each.replace(".", r"\.")
        for each in word
    )


_LENGTH = _measure("length")
_TEXT: Schema = {"type": "string"}
DEFINITIONS: Schema = {
    "length": _LENGTH,
    "radius": _measure("length", {"type": "string", "pattern": r"^\s*[fF][lL][aA][tT]\s*$"}),
    "station": _measure("length", {"type": "string", "pattern": r"^\s*[fF][rR][eE][tT]\s"}),
    "modulus": {"type": "string", "pattern": r"^\s*[0-9]+(?:\.[0-9]+)?\s*[GM]Pa\s*$"},
    "angle": _measure("angle"),
    "weight": {"anyOf": [{"const": 0}, {"type": "string", "pattern": r"^.*[0-9].*(?:k?g/m|mg/mm|lb/in)\s*$"}]},
    "moves": {
        "anyOf": [
            *_LENGTH["anyOf"],
            {"type": "string", "pattern": r"^\s*[bB][eE][sS][tT]\s*$"},
            {"type": "array", "items": _LENGTH},
        ]
    },
    "text": _TEXT,
    "colour": {"anyOf": [{"type": "integer", "minimum": 1, "maximum": MOST}, _TEXT]},
    "percentage": _measure("percentage"),
    "temperature": _measure("temperature"),
    "mass": _measure("mass"),
}
"""What the readers of single values take. A date without quotes counts as text, as editors of TOML have it."""
READ: dict[object, str] = {
    fields._length: "length",
    fields._radius: "radius",
    fields._station: "station",
    fields._gauge: "length",
    fields._modulus: "modulus",
    fields._angle: "angle",
    fields._pitch: "text",
    fields._string_material: "text",
    fields._weight: "weight",
    fields._moves: "moves",
    fields._paper: "text",
    read_colour: "colour",
    fields._day: "text",
    air_fields._humidity: "percentage",
    air_fields._temperature: "temperature",
    air_fields._moisture: "percentage",
    air_fields._mass: "mass",
    air_fields._moment: "text",
}
"""Each reader by the name of what it takes."""
