"""Base values: both descriptions as plain values, none of them missing, from which the derivation graph starts.

A key whose value is used as it stands becomes a base value by itself: `board.thickness` is `board_thickness`, with
the unit and the words of its field. What has to be normalised first (one scale length into a bass and a treble one,
radii into curvatures) is listed in `normal.py`. Every value carries its origin.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cache
from math import isnan
from typing import Annotated, Any, Literal, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from gramil import names as n
from gramil.description.body.usual import traced_note
from gramil.description.instrument import Instrument
from gramil.description.kinds import kinds_of, usual_for
from gramil.description.locate import Path
from gramil.description.normal import NORMALISED, normalised
from gramil.description.normal_row import by_name
from gramil.description.problems import Problem, did_you_mean, nearest, quoted, table_in
from gramil.description.reading import Description, ShopDescription, faults_from
from gramil.description.records import Wire
from gramil.description.repair.stand_ins import NOT_KNOWN, is_known, unknown
from gramil.description.shop.limits import JUDGING, LEADING, LIMITS, Limit, limit_for, limit_ref
from gramil.description.shop.tables import ShopTable
from gramil.description.wood.air_values import (
    AIR_INPUTS,
    MOVEMENT_INPUTS,
    movement_origin,
    movement_values,
    unknown_air,
)
from gramil.description.wood.timbers import TIMBER_INPUTS, timber_origin, timber_values
from gramil.description.wood.top import TOP_WOOD_INPUTS, top_wood_origin, top_wood_values
from gramil.description.wood_stiffness import STIFFNESS_ROWS, stiffness_origin, stiffness_values
from gramil.faults import MakersFault
from gramil.graph import Input, Origin
from gramil.quantities import Celsius, Cents, Mm, Newton, NewtonM, Percent, Radians, Ratio, Unit, unit_of

RENAMED = {"neck.depth_at_1": n.neck_depth_first.address, "neck.depth_at_10": n.neck_depth_tenth.address}
"""Keys whose base value has a better name than its key path."""
UNITS: Mapping[str, Any] = {
    "mm": Mm,
    "cent": Cents,
    "rad": Radians,
    "N": Newton,
    "N m": NewtonM,
    "%": Percent,
    "C": Celsius,
    "": Ratio,
}


@dataclass(frozen=True)
class Base:
    """Base values by name, where each came from, and the number of rows of each axis."""

    values: Mapping[str, Any]
    origins: Mapping[str, Origin]
    lengths: Mapping[str, int]


@dataclass(frozen=True)
class _Plain:
    """A key whose value is used as it stands."""

    key: str
    name: str
    input: Input
    reason: str


def _annotation(field: FieldInfo) -> Any:
    """The graph's annotation of a field, or None for one that holds a table, a list or an optional value."""
    unit = next((each for each in field.metadata if isinstance(each, Unit)), None)
    if field.annotation in (float, int):
        return Annotated[field.annotation, unit] if unit else field.annotation
    if field.annotation in (str, bool):
        return field.annotation
    return str if _choices(field) else None


def _choices(field: FieldInfo) -> tuple[str, ...]:
    """The words that a field may hold; empty if it is not a choice of words."""
    words = get_args(field.annotation) if get_origin(field.annotation) is Literal else ()
    return words if all(isinstance(word, str) for word in words) else ()


def _plain_in(table: str, model: type[BaseModel]) -> Iterator[_Plain]:
    for key, field in model.model_fields.items():
        dotted = f"{table}.{key}"
        annotation = _annotation(field)
        name = RENAMED.get(dotted, dotted.replace(".", "_"))
        if annotation is not None and name not in _BY_NAME:
            reason = field.json_schema_extra.get("reason", "") if isinstance(field.json_schema_extra, dict) else ""
            yield _Plain(dotted, name, Input(annotation, field.description or "", _choices(field)), str(reason))


def _tables() -> Iterator[tuple[str, type[BaseModel]]]:
    for name, field in Instrument.model_fields.items():
        if (model := table_in(field.annotation)) and get_origin(field.annotation) is not tuple:
            yield name, model
    yield "shop", ShopTable


_ROWS = (*NORMALISED, *STIFFNESS_ROWS)
_BY_NAME = {row.name: row for row in _ROWS}
_PLAIN = tuple(plain for table, model in _tables() for plain in _plain_in(table, model))


def _limit_input(limit: Limit) -> Input:
    return Input(UNITS[limit.unit], limit.what)


INPUTS: Mapping[str, Input] = {
    **{plain.name: plain.input for plain in _PLAIN},
    **{row.name: Input(row.annotation, row.what) for row in _ROWS},
    **{limit_ref(name).address: _limit_input(LIMITS[name]) for name in JUDGING},
    **AIR_INPUTS,
    **MOVEMENT_INPUTS,
    **TOP_WOOD_INPUTS,
    **TIMBER_INPUTS,
}
"""Every base value's annotation and what it is."""


def _names_by_key() -> Mapping[str, tuple[str, ...]]:
    found: dict[str, tuple[str, ...]] = {plain.key: (plain.name,) for plain in _PLAIN}
    for row in _ROWS:
        for key in row.keys:
            found[key] = (*found.get(key, ()), row.name)
    return {
        **found,
        **{f"limits.{name}": (limit_ref(limit.instead_of or name).address,) for name, limit in LIMITS.items()},
    }


_NAMES = _names_by_key()
_KEYS: Mapping[str, tuple[str, ...]] = {
    **{plain.name: (plain.key,) for plain in _PLAIN},
    **{row.name: row.keys for row in _ROWS},
    **{limit_ref(name).address: (f"limits.{name}",) for name in JUDGING},
}


def base_names(key: str) -> tuple[str, ...]:
    """The base values that a key sets (`board.arch` sets more than one); raises KeyError for a key that does not
    exist.
    """
    return _NAMES[key]


def nearest_key(key: str) -> str:
    """The key most similar to one that does not exist, or nothing."""
    return nearest(key, _NAMES)


def base_name(key: str) -> str:
    """The base value that a key sets (the first, if it sets several); raises KeyError."""
    return _NAMES[key][0]


def keys_of(name: str) -> tuple[str, ...]:
    """The dotted keys that set a base value; empty if there is no such base value."""
    return _KEYS.get(name, ())


def base_values(description: Description, shop: ShopDescription) -> Base:
    """Everything that the graph starts from. Raises MakersFault if the description asks for something that the shop
    does not have.
    """
    _check_choices(description, shop)
    wire = _wire(description, shop)
    values: dict[str, Any] = {plain.name: _plain_value(plain, description, shop) for plain in _PLAIN}
    values |= by_name(
        normalised(description.instrument, description.tuning, description.outlines, shop.shop, wire, shop.is_default)
    )
    values[n.head_curve.address] = description.head
    own: dict[str, float | None] = dict(shop.shop.limits)
    kinds = kinds_of(dict(description.instrument))
    limits = {name: limit_for(name, kinds) for name in JUDGING}
    values |= {limit_ref(name).address: _chosen(own[limit.name], limit.value) for name, limit in limits.items()}
    values |= unknown_air() | movement_values(description.instrument.board.wood, shop.shop)
    values |= top_wood_values(description.instrument.top, shop.shop)
    values |= stiffness_values(description.instrument, shop.shop)
    values |= timber_values(description.instrument, shop.shop)
    origins = {name: _origin(name, description, shop, kinds) for name in INPUTS}
    if description.instrument.repair.described:
        values, origins = _as_known(values, origins, description)
    lengths = {"fret": description.instrument.scale.frets + 1, "string": len(description.instrument.strings.gauges)}
    return Base(values, origins, lengths)


def _as_known(
    values: dict[str, Any], origins: dict[str, Origin], description: Description
) -> tuple[dict[str, Any], dict[str, Origin]]:
    """For a guitar that came in, what was not given is unknown: the usual values are those of a new one."""
    hidden = {
        name: unknown(name, value, unit.symbol if (unit := unit_of(INPUTS[name].annotation)) else "")
        for name, value in values.items()
        if not is_known(name, keys_of(name), description.lines, description.instrument.body.described)
    }
    lost = {name: Origin(NOT_KNOWN) for name, value in hidden.items() if _is_nan(value) and not _is_nan(values[name])}
    return {**values, **hidden}, {**origins, **lost}


def _is_nan(value: Any) -> bool:
    return isinstance(value, float) and isnan(value)


def _chosen(own: float | None, usual: float) -> float:
    return usual if own is None else own


def _plain_value(plain: _Plain, description: Description, shop: ShopDescription) -> Any:
    table, key = plain.key.split(".")
    owner = shop.shop if table == "shop" else description.instrument
    return getattr(getattr(owner, table), key)


def _wire(description: Description, shop: ShopDescription) -> Wire:
    """The wire to use: as measured in the description, or the shop's wire of that name."""
    choice = description.instrument.wire
    if choice.use is None:
        return Wire(**choice.model_dump(exclude={"use"}))
    return next(Wire(**row.model_dump()) for row in shop.shop.wire if row.name == choice.use)


def _check_choices(description: Description, shop: ShopDescription) -> None:
    """The wire and the saw that the description names are in the shop."""
    instrument = description.instrument
    asked = (
        (("wire", "use"), instrument.wire.use, [row.name for row in shop.shop.wire], "wire; measure one under [wire]"),
        (("slots", "saw"), instrument.slots.saw, [row.name for row in shop.shop.saw], "saw"),
    )
    problems = [
        Problem(path, f"read {quoted(word)}", _on_hand(names, none), did_you_mean(nearest(word, names)))
        for path, word, names, none in asked
        if word and word not in names
    ]
    if problems:
        raise MakersFault(faults_from(problems, description.file, description.lines))


def _on_hand(names: list[str], none: str) -> str:
    return "the shop has " + (", ".join(map(quoted, names)) if names else f"no {none}")


def _origin(name: str, description: Description, shop: ShopDescription, kinds: frozenset[str]) -> Origin:
    if name in AIR_INPUTS:
        return Origin("no readings of the shop's air")
    if name in MOVEMENT_INPUTS:
        return movement_origin(name, description.instrument.board.wood, shop.shop)
    if name in TOP_WOOD_INPUTS:
        return top_wood_origin(name, description.instrument.top, shop.shop)
    if name in TIMBER_INPUTS:
        return timber_origin(name, description.instrument, shop.shop)
    if name.startswith(LEADING):
        return _limit_origin(limit_for(name.removeprefix(LEADING), kinds), shop)
    file = shop if name.startswith("shop_") else description
    path = _pin_path(shop) if name == _PIN_OFFSET else _written(name, file)
    if name.startswith("wire_") and name != _WIRE_NAME and description.instrument.wire.use is not None:
        file, path = shop, _wire_path(name, description, shop)
    if path is not None:
        place, note = _place(path, file), traced_note(description.instrument.body, name)
        return replace(place, note=note) if note else place
    if name in _STIFFNESS:
        return stiffness_origin(name, description.instrument, shop.shop)
    usual = next(filter(None, (usual_for(key, kinds) for key in keys_of(name))), None)
    if usual and usual.unless and tuple(usual.unless.split(".")) in description.lines:
        usual = None
    return Origin(f"default ({usual.origin if usual else _REASONS[name]})")


def _limit_origin(limit: Limit, shop: ShopDescription) -> Origin:
    path: Path = ("limits", limit.name)
    return _place(path, shop) if path in shop.lines else Origin(limit.origin)


_REASONS = {plain.name: plain.reason for plain in _PLAIN} | {row.name: row.reason for row in NORMALISED}
_STIFFNESS = frozenset(row.name for row in STIFFNESS_ROWS)
_PIN_OFFSET, _WIRE_NAME = n.shop_pin_offset.address, n.wire_name.address


def _written(name: str, file: Description | ShopDescription) -> Path | None:
    """Where in the file the key that sets a base value stands; an end of an arch may have a line of its own."""
    return next((each for each in _places(name) if each in file.lines), None)


@cache
def _places(name: str) -> tuple[Path, ...]:
    """Where the keys that set a base value may stand, the first that is written counts."""
    paths = [tuple(key.split(".")) for key in keys_of(name)]
    return tuple(each for path in paths for each in ((*path, name.rsplit("_", 1)[-1]), path))


def _pin_path(shop: ShopDescription) -> Path | None:
    rows = (row for row, jig in enumerate(shop.shop.jig) if jig.purpose == "slots")
    return next((("jig", row, "constant") for row in rows), None)


def _wire_path(name: str, description: Description, shop: ShopDescription) -> Path | None:
    """Where the shop gives a measure of the wire that the description names."""
    names = [row.name for row in shop.shop.wire]
    row: Path = ("wire", names.index(description.instrument.wire.use or ""))
    own = (*row, name.removeprefix("wire_"))
    return own if own in shop.lines else row


def _place(path: Path, file: Description | ShopDescription) -> Origin:
    if isinstance(file, ShopDescription) and file.is_default:
        return Origin("common practice (the shop that stands in when none is given)")
    return Origin(file.file, file.file, file.lines[path], ".".join(each for each in path if isinstance(each, str)))
