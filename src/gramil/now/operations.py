"""The work of an instrument as data: what comes before what, and what each operation needs.

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

What stood after an operation that is left out comes after what stood before it.
"""

import tomllib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, fields
from functools import cache
from graphlib import CycleError, TopologicalSorter
from importlib.resources import files
from pathlib import Path
from typing import Any

from gramil.description.instrument import Instrument
from gramil.description.limits import LIMITS
from gramil.description.problems import meant, nearest
from gramil.faults import Fault, MakersFault

Skip = Mapping[str, Any]
"""Keys of the description with values under which an operation is not needed, or "differ" with two; "why" in words."""


@dataclass(frozen=True)
class Operation:
    """One operation. Hands in minutes; clamp and air_hours in hours; the rest are names, `caution` whole sentences."""

    name: str
    what: str
    part: str
    hands: int
    after: tuple[str, ...] = ()
    clamp: float = 0.0
    air: str = ""
    air_hours: float = 0.0
    wood: tuple[str, ...] = ()
    uses: tuple[str, ...] = ()
    takes: tuple[str, ...] = ()
    frees: tuple[str, ...] = ()
    sheet: str = ""
    measure: tuple[str, ...] = ()
    caution: tuple[str, ...] = ()
    skipped: tuple[Skip, ...] = ()
    one_go: bool = False

    @property
    def minutes(self) -> float:
        """Minutes from its start until what follows may start."""
        return self.hands + 60.0 * self.clamp


@dataclass(frozen=True)
class Band:
    """Air that an operation needs: humidity in %, temperature in C, least and most; an end may name a limit."""

    name: str
    what: str
    humidity: tuple[float | str, float | str]
    temperature: tuple[float, float]


@dataclass(frozen=True)
class Work:
    """Operations by name, each after what comes before it, and the bands of air by name."""

    operations: Mapping[str, Operation]
    bands: Mapping[str, Band]
    left_out: Mapping[str, str] = field(default_factory=dict)

    def followers(self, name: str) -> tuple[str, ...]:
        """The operations that come directly after one."""
        return tuple(each.name for each in self.operations.values() if name in each.after)


_WORDS = ("after", "wood", "uses", "takes", "frees", "measure", "caution")
_KINDS: Mapping[str, tuple[type, ...]] = {
    "what": (str,), "part": (str,), "air": (str,), "sheet": (str,),
    "hands": (int,), "clamp": (int, float), "air_hours": (int, float), "one_go": (bool,), "leave_out": (bool,),
    "skipped": (list,), **dict.fromkeys(_WORDS, (list,)),
}  # fmt: skip


@cache
def usual_work() -> Work:
    """The package's own list; raises MakersFault if it does not hold together."""
    return _work(_data("operations.toml", (files("gramil") / "data" / "operations.toml").read_text("utf-8")), [])


def work_with(overrides: Sequence[tuple[str, str]]) -> Work:
    """The package's list with texts laid over it, each with the name of its file.

    Raises MakersFault, with every fault, for keys and names that there are not, and for a circle.
    """
    if not overrides:
        return usual_work()
    base = _data("operations.toml", (files("gramil") / "data" / "operations.toml").read_text("utf-8"))
    return _work(base, [(file, _data(file, text)) for file, text in overrides])


def overrides_beside(*descriptions: Path | None) -> list[tuple[str, str]]:
    """Own operations that lie beside descriptions: `tarn.toml` has `tarn.operations.toml`, the shop's likewise."""
    found = []
    for description in descriptions:
        path = description.with_suffix(".operations.toml") if description else None
        if path and path.exists():
            found.append((path.name, path.read_text(encoding="utf-8")))
    return found


def needed(work: Work, instrument: Instrument) -> Work:
    """The work that an instrument needs, and what is left out of it with the reason, from its description."""
    reasons = {name: why for name, each in work.operations.items() if (why := _skipped(each, instrument))}
    return without(work, reasons)


def without(work: Work, reasons: Mapping[str, str]) -> Work:
    """The work less some operations; what came after them comes after what came before them."""
    operations = {name: _bridged(each, work, reasons) for name, each in work.operations.items() if name not in reasons}
    return Work(operations, work.bands, {**work.left_out, **reasons})


def _bridged(each: Operation, work: Work, gone: Mapping[str, str]) -> Operation:
    if not gone.keys() & set(each.after):
        return each
    after = dict.fromkeys(kept for name in each.after for kept in _standing(name, work, gone))
    return Operation(**{**vars(each), "after": tuple(after)})


def _standing(name: str, work: Work, gone: Mapping[str, str]) -> Iterator[str]:
    if name not in gone:
        yield name
        return
    for before in work.operations[name].after:
        yield from _standing(before, work, gone)


def _skipped(operation: Operation, instrument: Instrument) -> str:
    return next((str(skip["why"]) for skip in operation.skipped if _holds(skip, instrument)), "")


def _holds(skip: Skip, instrument: Instrument) -> bool:
    """Whether every condition holds; one on a key that there is not does not."""
    if "differ" in skip:
        one, other = (key_of(instrument, key) for key in skip["differ"])
        return bool(one != other)
    keys = [key for key in skip if key != "why"]
    return bool(keys) and all(_equal(key_of(instrument, key), skip[key]) for key in keys)


def key_of(instrument: Instrument, key: str) -> Any:
    """What an instrument's description has at a key such as `board.arch.nut`; None where there is no such key."""
    value: Any = instrument
    for name in key.split("."):
        value = getattr(value, name, None)
    return value


def _equal(value: Any, wanted: Any) -> bool:
    return value is not None and (len(value) == 0 if isinstance(wanted, list) else bool(value == wanted))


def _data(file: str, text: str) -> Mapping[str, Any]:
    try:
        return tomllib.loads(text.removeprefix("\ufeff").replace("\r\n", "\n"))
    except (tomllib.TOMLDecodeError, RecursionError) as error:
        raise MakersFault([Fault(what="is not TOML", why=str(error), file=file)]) from None


def _work(base: Mapping[str, Any], over: Sequence[tuple[str, Mapping[str, Any]]]) -> Work:
    rows: dict[str, dict[str, Any]] = {name: dict(row) for name, row in base["operation"].items()}
    faults = [fault for file, data in over for fault in _laid_over(rows, data, file)]
    if faults:
        raise MakersFault(faults)
    left_out = {name: "left out here" for name, row in rows.items() if row.pop("leave_out", False)}
    cautions = base["caution"]
    bands = {name: _band(name, row) for name, row in base["band"].items()}
    operations = {name: _operation(name, row, cautions) for name, row in rows.items()}
    order = _ordered(operations)
    _refuse(operations, bands)
    whole = Work({name: operations[name] for name in order}, bands)
    return without(whole, left_out) if left_out else whole


def _laid_over(rows: dict[str, dict[str, Any]], data: Mapping[str, Any], file: str) -> Iterator[Fault]:
    for table in data:
        if table != "operation":
            yield Fault(where=table, what="no such table", remedy="write [operation.NAME]", file=file)
    operations = data.get("operation", {})
    if not isinstance(operations, dict) or not all(isinstance(row, dict) for row in operations.values()):
        yield Fault(where="operation", what="operations are tables", remedy="write [operation.NAME]", file=file)
        return
    for name, row in operations.items():
        yield from _wrong_keys(name, row, name in rows, file)
        rows[name] = {**rows.get(name, {}), **row}


def _wrong_keys(name: str, row: Mapping[str, Any], known: bool, file: str) -> Iterator[Fault]:
    for key, value in row.items():
        where = f"operation.{name}.{key}"
        if key not in _KINDS:
            remedy = meant(nearest(key, _KINDS)) or "allowed: " + ", ".join(_KINDS)
            yield Fault(where=where, what="no such key", remedy=remedy, file=file)
        elif not _is_kind(value, key):
            yield Fault(where=where, what=f"read {value!r}", remedy=f"write {_wanted(key)}", file=file)
        elif key in _WORDS and not all(isinstance(each, str) for each in value):
            yield Fault(where=where, what="not all are names", remedy="write names in quotes", file=file)
        elif key in ("hands", "clamp", "air_hours") and not 0 <= value <= 100_000:
            yield Fault(where=where, what=f"read {value}", remedy="write a time of 0 or more", file=file)
    missing = [] if known else [key for key in ("what", "part", "hands") if key not in row]
    if missing:
        remedy = "an operation of your own needs what, part and hands (minutes)"
        yield Fault(where=f"operation.{name}", what=f"{missing[0]} is missing", remedy=remedy, file=file)


def _is_kind(value: object, key: str) -> bool:
    """Whether a value is of its key's kind; a flag is no number."""
    return isinstance(value, _KINDS[key]) and (bool in _KINDS[key] or not isinstance(value, bool))


def _wanted(key: str) -> str:
    kind = _KINDS[key][0]
    return {str: "text in quotes", int: "a whole number", bool: "true or false", list: "a list"}[kind]


def _operation(name: str, row: Mapping[str, Any], cautions: Mapping[str, str]) -> Operation:
    known = {each.name for each in fields(Operation)}
    values: dict[str, Any] = {
        key: tuple(value) if isinstance(value, list) else value for key, value in row.items() if key in known
    }
    values["caution"] = tuple(cautions.get(each, each) for each in row.get("caution", ()))
    values.setdefault("air_hours", row.get("clamp", 0.0) if row.get("air") else 0.0)
    values.setdefault("one_go", bool(row.get("air")) or "glue" in row.get("caution", ()))
    return Operation(name=name, **values)


def _band(name: str, row: Mapping[str, Any]) -> Band:
    return Band(name, row["what"], tuple(row["humidity"]), tuple(row["temperature"]))


def _ordered(operations: Mapping[str, Operation]) -> tuple[str, ...]:
    """The names, each after what comes before it, otherwise as they are written."""
    faults = [
        Fault(where=f"operation.{name}.after", what=f"there is no operation {before}",
              remedy=meant(nearest(before, operations)))
        for name, each in operations.items() for before in each.after if before not in operations
    ]  # fmt: skip
    if faults:
        raise MakersFault(faults)
    try:
        return tuple(TopologicalSorter({name: each.after for name, each in operations.items()}).static_order())
    except CycleError as error:
        circle = " after ".join(error.args[1])
        raise MakersFault.of("operations go in a circle", circle, "take one of these out of `after`") from None


def _refuse(operations: Mapping[str, Operation], bands: Mapping[str, Band]) -> None:
    faults = [
        Fault(where=f"operation.{name}.air", what=f"there is no band {each.air}", remedy="use " + " or ".join(bands))
        for name, each in operations.items() if each.air and each.air not in bands
    ]  # fmt: skip
    faults += [
        Fault(where=f"band.{band.name}", what=f"there is no limit {end}")
        for band in bands.values() for end in band.humidity if isinstance(end, str) and end not in LIMITS
    ]  # fmt: skip
    if faults:
        raise MakersFault(faults)
