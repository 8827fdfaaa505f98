"""The list of operations, and a maker's own lists laid over it; every fault is reported with its file and line.

The package's list is `data/operations.toml`; a shop or an instrument lays its own rows over it, in the same form:

    [operation.top_jointed]
    hands = 50

    [operation.head_inlaid]
    what = "Let the inlay into the head"
    part = "neck"
    after = ["head_veneered"]
    hands = 240

    [operation.markers_set]
    leave_out = true

What came after an operation that is left out then comes after what came before it. Where the order depends on the
description, an entry in `after` says so, with the same conditions as `skipped`:

    [operation.slotted]
    after = ["board_laid_out", { operation = "arched", "slots.cut" = "after arching" }]
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, fields
from functools import cache, cached_property, lru_cache
from itertools import islice
from pathlib import Path
from typing import Any, get_args

from gramil.air.air_bands import Band
from gramil.description.cautions import TOOLS
from gramil.description.locate import Path as KeyPath
from gramil.description.locate import line_of, locate
from gramil.description.problems import did_you_mean, nearest, quoted
from gramil.description.reading import file_text, toml_of
from gramil.description.shop.limits import LIMITS
from gramil.description.wood.stuff import PARTS
from gramil.description.wood.tables import PieceTable
from gramil.faults import Fault, MakersFault
from gramil.package_data import data_tables
from gramil.shop.list_conditions import ways_of, wrong_otherwise, wrong_skip, wrong_wait
from gramil.shop.operations import (
    OTHERWISE,
    Operation,
    Otherwise,
    Skip,
    Wait,
    Work,
    conditions_in,
    in_order,
    settled,
    waits_of,
    without,
)

OwnList = tuple[str, str]
"""A maker's own list: the name of its file, and its text."""
LONGEST_TIME = 100_000
"""Minutes or hours of one operation."""
MOST_WAYS = 200
"""Combinations of conditions that are looked through for one without a circle; the first is one, but for a slip."""
_WORDS = ("wood", "uses", "takes", "frees", "makes", "measure", "measure_outer", "figures", "caution", "by", "on")
_PARTS: tuple[str, ...] = get_args(PieceTable.model_fields["part"].annotation)
_PLATES = ("top", "back")
_TIMES = ("hands", "clamp", "air_hours")
_NAMED: Mapping[str, tuple[str, ...]] = {"by": tuple(TOOLS), "on": PARTS}
_CONDITIONS = {"after": wrong_wait, "skipped": wrong_skip, "where": wrong_otherwise}
LEFT_OUT = "left out here"
"""Why an operation is not done that a maker's own list leaves out."""
_KINDS: Mapping[str, tuple[type, ...]] = {
    "what": (str,), "part": (str,), "air": (str,), "sheet": (str,), "safe": (str,), "prove": (str,),
    "measure_braces": (str,),
    "hands": (int,), "clamp": (int, float), "air_hours": (int, float), "one_go": (bool,), "leave_out": (bool,),
    "after": (list,), "skipped": (list,), "where": (list,), **dict.fromkeys(_WORDS, (list,)),
}  # fmt: skip
_Rows = dict[str, dict[str, Any]]


@dataclass(frozen=True)
class _Layer:
    """One list: its file, its text, what stands in it."""

    file: str
    text: str
    data: Mapping[str, Any]

    @cached_property
    def _lines(self) -> Mapping[KeyPath, int]:
        return locate(self.text)

    def line(self, path: KeyPath) -> int | None:
        """The line of a place in the list."""
        return line_of(self._lines, path)

    def fault(self, path: KeyPath, what: str, remedy: str = "", why: str = "") -> Fault:
        """A fault at a place in the list."""
        return Fault(self.line(path), ".".join(map(str, path)), what, why, remedy, self.file)


@cache
def usual_work() -> Work:
    """The package's own list; raises MakersFault if it does not hold together."""
    return _work(())


def work_with(own: Iterable[OwnList]) -> Work:
    """The package's list with a maker's own laid over it, one after another.

    Raises MakersFault, with every fault, for keys and names that do not exist, and for a circle.
    """
    lists = tuple(own)
    return _laid_over_once(lists) if lists else usual_work()


def lists_beside(*descriptions: Path | None) -> list[OwnList]:
    """Own lists that lie beside descriptions: `tarn.toml` has `tarn.operations.toml`, the shop's file likewise.

    Raises MakersFault for one that cannot be read.
    """
    paths = [list_beside(each) for each in descriptions if each is not None]
    return [(path.name, file_text(path)) for path in paths if path.exists()]


def list_beside(description: Path) -> Path:
    """Where a description's own list lies: `tarn.toml` has `tarn.operations.toml`."""
    return description.with_suffix(".operations.toml")


@lru_cache(maxsize=32)
def _laid_over_once(own: tuple[OwnList, ...]) -> Work:
    """Cached, because several instruments of a shop share its list."""
    return _work([_Layer(file, text, toml_of(text, file)) for file, text in own])


@cache
def _base() -> Mapping[str, Any]:
    return data_tables("operations")


def _work(layers: Sequence[_Layer]) -> Work:
    base = _base()
    rows: _Rows = {name: dict(row) for name, row in base["operation"].items()}
    faults = [fault for layer in layers for fault in _laid_over(rows, layer)]
    if faults:
        raise MakersFault(faults)
    left_out = {name: LEFT_OUT for name, row in rows.items() if row.pop("leave_out", False)}
    bands = {name: _band(name, row) for name, row in base["band"].items()}
    of_part = {part: tuple(row["skipped"]) for part, row in base["part"].items()}
    operations = {name: _operation(name, row, of_part.get(row["part"], ())) for name, row in rows.items()}
    _refuse([*_unknown_names(operations, layers), *_unknown_air(operations, bands, layers), *_unknown_limits(bands)])
    whole = Work(operations, bands, wrote=_wrote(operations, layers))
    _refuse_circles(whole)
    return without(whole, left_out) if left_out else whole


def _laid_over(rows: _Rows, layer: _Layer) -> Iterator[Fault]:
    """Lays a list's rows over those before it; gives what is wrong with them."""
    for table in layer.data:
        if table != "operation":
            yield layer.fault((table,), "no such table", "write [operation.NAME]")
    operations = layer.data.get("operation", {})
    if not isinstance(operations, dict) or not all(isinstance(row, dict) for row in operations.values()):
        yield layer.fault(("operation",), "operations are tables", "write [operation.NAME]")
        return
    for name, row in operations.items():
        yield from _wrong_row(name, row, name in rows, layer)
        rows[name] = {**_less_otherwise(rows.get(name, {}), row), **row}


def _less_otherwise(below: Mapping[str, Any], row: Mapping[str, Any]) -> dict[str, Any]:
    """A row below a maker's own: what that one says itself, it says in any case."""
    kept = [{key: value for key, value in each.items() if key not in row} for each in below.get("where", ())]
    return {**below, "where": [each for each in kept if any(key in OTHERWISE for key in each)]} if kept else {**below}


def _wrong_row(name: str, row: Mapping[str, Any], known: bool, layer: _Layer) -> Iterator[Fault]:
    for key, value in row.items():
        said = _wrong_value(key, value)
        if said is not None:
            yield layer.fault(("operation", name, key), *said)
    missing = [] if known else [key for key in ("what", "part", "hands") if key not in row]
    if missing:
        near = nearest(name, _base()["operation"])
        remedy = "an operation of your own needs what, part and hands (minutes)"
        yield layer.fault(
            ("operation", name),
            f"{missing[0]} is missing",
            remedy,
            did_you_mean(near) and f"{did_you_mean(near)}, if you meant that",
        )


def _wrong_value(key: str, value: Any) -> tuple[str, str] | None:
    """What is wrong with a key's value and what to write, or nothing."""
    if key not in _KINDS:
        return "no such key", did_you_mean(nearest(key, _KINDS)) or "allowed: " + ", ".join(_KINDS)
    if not _is_kind(value, key):
        return f"read {quoted(value)}", f"write {_wanted(key)}"
    if key in _CONDITIONS:
        return next((wrong for each in value if (wrong := _CONDITIONS[key](each)) is not None), None)
    if key in _WORDS and not all(isinstance(each, str) for each in value):
        return "not all are names", "write names in quotes"
    if key == "wood" and (strange := [each for each in value if each not in _PARTS]):
        near = did_you_mean(nearest(strange[0], _PARTS))
        return f"no piece of wood is for the {strange[0]}", near or "allowed: " + ", ".join(_PARTS)
    if key in _NAMED and (strange := [each for each in value if each not in _NAMED[key]]):
        near = did_you_mean(nearest(strange[0], _NAMED[key]))
        return f"nothing is cautioned of under the name {strange[0]}", near or "allowed: " + ", ".join(_NAMED[key])
    if key == "measure_braces" and value not in _PLATES:
        return f"no braces are on the {value}", "write " + " or ".join(f'"{each}"' for each in _PLATES)
    if key in _TIMES and not 0 <= value <= LONGEST_TIME:
        return f"read {value}", "write a time of 0 or more"
    return None


def _is_kind(value: object, key: str) -> bool:
    """Whether a value is of its key's kind; a flag is no number."""
    return isinstance(value, _KINDS[key]) and (bool in _KINDS[key] or not isinstance(value, bool))


def _wanted(key: str) -> str:
    kind = _KINDS[key][0]
    return {str: "text in quotes", int: "a whole number", bool: "true or false", list: "a list"}[kind]


def _operation(name: str, row: Mapping[str, Any], of_part: tuple[Skip, ...]) -> Operation:
    """An operation from its row, and from the conditions under which its part is no work."""
    known = {each.name for each in fields(Operation)}
    values: dict[str, Any] = {
        key: tuple(value) if isinstance(value, list) else value for key, value in row.items() if key in known
    }
    after = row.get("after", ())
    values["after"] = tuple(each for each in after if isinstance(each, str))
    values["after_where"] = tuple(
        Wait(each["operation"], conditions_in(each)) for each in after if isinstance(each, dict)
    )
    values["where"] = tuple(Otherwise(conditions_in(each), _has(each)) for each in row.get("where", ()))
    values["skipped"] = (*row.get("skipped", ()), *of_part)
    values["own_caution"] = tuple(row.get("caution", ()))
    values.setdefault("air_hours", row.get("clamp", 0.0) if row.get("air") else 0.0)
    values.setdefault("one_go", bool(row.get("air")) or "glue" in row.get("by", ()))
    return Operation(name=name, **values)


def _has(row: Mapping[str, Any]) -> Mapping[str, Any]:
    return {key: tuple(row[key]) if isinstance(row[key], list) else row[key] for key in OTHERWISE if key in row}


def _band(name: str, row: Mapping[str, Any]) -> Band:
    return Band(name, row["what"], tuple(row["humidity"]), tuple(row["temperature"]))


def _unknown_names(operations: Mapping[str, Operation], layers: Sequence[_Layer]) -> Iterator[Fault]:
    for name, each in operations.items():
        for before in (wait.operation for wait in waits_of(each)):
            if before not in operations:
                near = did_you_mean(nearest(before, operations))
                yield _at(layers, name, "after", f"there is no operation {before}", near)


def _unknown_air(
    operations: Mapping[str, Operation], bands: Mapping[str, Band], layers: Sequence[_Layer]
) -> Iterator[Fault]:
    for name, each in operations.items():
        if each.air and each.air not in bands:
            yield _at(layers, name, "air", f"there is no band {each.air}", "use " + " or ".join(bands))


def _unknown_limits(bands: Mapping[str, Band]) -> Iterator[Fault]:
    for band in bands.values():
        for end in band.humidity:
            if isinstance(end, str) and end not in LIMITS:
                yield Fault(where=f"band.{band.name}", what=f"there is no limit {end}")


def _refuse_circles(work: Work) -> None:
    """Raises MakersFault for a circle that every description closes; one that only some close is reported when one of
    them comes.
    """
    told: list[MakersFault] = []
    conditions = (wait.when for each in work.operations.values() for wait in each.after_where)
    for way in islice(ways_of(conditions), MOST_WAYS):
        try:
            in_order(settled(work, way.issuperset))
        except MakersFault as fault:
            told.append(fault)
        else:
            return
    raise told[0]


def _wrote(operations: Iterable[str], layers: Sequence[_Layer]) -> dict[str, tuple[str, int | None]]:
    """File and line of each `after` that one of the maker's own lists wrote."""
    found = ((name, _who_wrote(layers, name, "after")) for name in operations)
    return {name: (layer.file, layer.line(("operation", name, "after"))) for name, layer in found if layer}


def _at(layers: Sequence[_Layer], name: str, key: str, what: str, remedy: str, why: str = "") -> Fault:
    """A fault of a row's key, where the last list that wrote the key has it."""
    path = ("operation", name, key)
    layer = _who_wrote(layers, name, key)
    return layer.fault(path, what, remedy, why) if layer else Fault(None, ".".join(path), what, why, remedy)


def _who_wrote(layers: Sequence[_Layer], name: str, key: str) -> _Layer | None:
    """The last list that wrote a row's key; None where it is the package's own."""
    wrote = (layer for layer in reversed(layers) if key in layer.data.get("operation", {}).get(name, ()))
    return next(wrote, None)


def _refuse(faults: Sequence[Fault]) -> None:
    if faults:
        raise MakersFault(faults)
