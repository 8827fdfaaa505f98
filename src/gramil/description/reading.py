"""A description or a shop from its file: every fault at once, each with its line, or the checked models.

`read_description` and `read_shop` read files; `parse_description` and `parse_shop` do the same for a text in memory.
"""

import tomllib
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from pathlib import Path as FilePath
from typing import Any, TypeVar

from pydantic import BaseModel, TypeAdapter, ValidationError

from gramil.bare_numbers import length_unit
from gramil.description.board.scala_scale import ScalaScale
from gramil.description.board.temperament import read_tuning
from gramil.description.body.outline import read_body
from gramil.description.checks import problems_in
from gramil.description.instrument import Instrument
from gramil.description.kinds import with_usual
from gramil.description.locate import Path, line_of, locate
from gramil.description.neck.head_outline import NO_CURVE, HeadCurve, read_head
from gramil.description.problems import Problem, nearest, problems_of, quoted, shown
from gramil.description.repair.stand_ins import came_in, with_stand_ins
from gramil.description.shop.tables import Shop
from gramil.description.toml_tables import tables_of
from gramil.description.wood.checks import problems_of_wood
from gramil.faults import Fault, MakersFault
from gramil.in_shop_units import in_shop_units
from gramil.measure import LengthUnit
from gramil.package_data import data_text
from gramil.plain_file import content_of
from gramil.shapes.outline import Outline

LARGEST_FILE = 1_000_000
"""A description of more bytes than this is something else."""
KEPT = 16
"""So many texts are kept as they were read: a command reads its file more than once, the bench its shop with each
instrument.
"""
VERSION = 1
DEFAULT_SHOP = "shop-default.toml"
M = TypeVar("M", bound=BaseModel)


@dataclass(frozen=True)
class Description:
    """A checked instrument, its tuning, its body's outline (one or none), and where each key stands.

    `file` is a name without folders.
    """

    instrument: Instrument
    tuning: ScalaScale
    outlines: tuple[Outline, ...]
    file: str
    lines: Mapping[Path, int]
    head: HeadCurve = NO_CURVE


@dataclass(frozen=True)
class ShopDescription:
    """A checked shop and where each key stands; `is_default` if it is the one that the package ships.

    `folder` is where files that it names lie, such as a place's readings.
    """

    shop: Shop
    file: str
    lines: Mapping[Path, int]
    is_default: bool = False
    folder: FilePath | None = None


def read_description(path: str | FilePath) -> Description:
    """The instrument in a file; raises MakersFault with every fault in it."""
    place = FilePath(path)
    return parse_description(file_text(place), place.name, place.parent)


def read_shop(path: str | FilePath | None = None) -> ShopDescription:
    """The shop in a file, or the package's default one; raises MakersFault with every fault in it."""
    if path is None:
        text = data_text(DEFAULT_SHOP)
        return parse_shop(text, DEFAULT_SHOP, is_default=True)
    place = FilePath(path)
    return parse_shop(file_text(place), place.name, folder=place.parent)


def parse_description(text: str, file: str = "description", folder: FilePath | None = None) -> Description:
    """The instrument in a text; `folder` is where a `.scl` file may lie. Raises MakersFault with every fault."""
    instrument, tables, found, unit, stood_in = _instrument_in(text, file)
    tuning, of_tuning = read_tuning(tables.get("scale"), folder)
    outlines, of_outline = read_body(tables.get("body"), tables.get("cutaway"), folder)
    head, of_head = read_head(tables.get("head"), folder)
    problems = [*found, *of_tuning, *of_outline, *of_head]
    problems += problems_in({**_given_whole(tables, stood_in), "outlines": outlines}, tuning)
    lines = locate(text)
    if problems or instrument is None or tuning is None:
        raise MakersFault(faults_from(_in_own_unit(problems, unit), file, lines))
    return Description(instrument, tuning, outlines, file, lines, head)


def parse_keys(text: str, file: str = "description") -> Instrument:
    """The instrument in a text, each key checked by itself but not against others: what was chosen, not whether it is
    possible.

    Raises MakersFault with every fault of a key.
    """
    instrument, _, problems, unit, _ = _instrument_in(text, file)
    if instrument is None:
        raise MakersFault(faults_from(_in_own_unit(problems, unit), file, locate(text)))
    return instrument


@lru_cache(maxsize=KEPT)
def _instrument_in(
    text: str, file: str
) -> tuple[Instrument | None, Mapping[str, Any], tuple[Problem, ...], LengthUnit, frozenset[str]]:
    """The whole instrument or none, the tables that could be read, what is wrong with the others, the unit, and the
    tables in which something stands in for a key.
    """
    data, unit = _parsed(text, file, "instrument")
    data, stood_in = with_stand_ins(data) if came_in(data) else (data, frozenset())
    instrument, tables, problems = _validated(Instrument, data, unit)
    return instrument, tables, tuple(problems), unit, frozenset(stood_in)


def _given_whole(tables: Mapping[str, Any], stood_in: Collection[str]) -> dict[str, Any]:
    """The tables in which nothing stands in for a key: only these can be held against one another."""
    return {name: table for name, table in tables.items() if name not in stood_in}


def parse_shop(
    text: str, file: str = "shop", *, is_default: bool = False, folder: FilePath | None = None
) -> ShopDescription:
    """The shop in a text; `folder` is where its files lie. Raises MakersFault with every fault in it."""
    return replace(_shop_in(text, file), is_default=is_default, folder=folder)


@lru_cache(maxsize=KEPT)
def _shop_in(text: str, file: str) -> ShopDescription:
    data, unit = _parsed(text, file, "shop")
    shop, tables, problems = _validated(Shop, data, unit)
    problems = [*problems, *_twice(tables), *problems_of_wood(tables)]
    lines = locate(text)
    if problems or shop is None:
        raise MakersFault(faults_from(_in_own_unit(problems, unit), file, lines))
    return ShopDescription(shop, file, lines)


def _in_own_unit(problems: Iterable[Problem], unit: LengthUnit) -> Iterator[Problem]:
    """The problems with their lengths in the file's own unit."""
    for each in problems:
        what, allowed = in_shop_units(each.what, unit), in_shop_units(each.allowed, unit)
        yield replace(each, what=what, allowed=allowed, remedy=in_shop_units(each.remedy, unit))


def faults_from(problems: Iterable[Problem], file: str, lines: Mapping[Path, int]) -> list[Fault]:
    """Problems with their file and line, in the order of the file."""
    faults = [
        Fault(
            line_of(lines, each.path),
            shown(each.path),
            _of_usual(each, lines),
            each.allowed,
            each.remedy,
            file,
        )
        for each in problems
    ]
    return sorted(faults, key=lambda fault: fault.line or 0)


def _of_usual(problem: Problem, lines: Mapping[Path, int]) -> str:
    """What is wrong, in words that do not claim to have read a value that the file left out."""
    if problem.path[:2] in lines or not problem.what.startswith("read "):
        return problem.what
    return f"none is given, and the usual {problem.what.removeprefix('read ')} does not do"


def file_text(path: FilePath) -> str:
    """The text of a file that a maker wrote; raises MakersFault if it cannot be read."""
    try:
        content = content_of(path, LARGEST_FILE)
    except (OSError, ValueError) as error:
        raise _whole_file(path.name, f"cannot be read: {_reason(error, path)}") from None
    try:
        return content.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        line = content.count(b"\n", 0, error.start) + 1
        raise _whole_file(path.name, "is not text in UTF-8", "a description is a plain text file", line) from None


def _reason(error: Exception, path: FilePath) -> str:
    """Why a file cannot be opened, without the machine's path."""
    if isinstance(error, FileNotFoundError):
        names = (each.name for each in path.parent.glob("*.toml")) if path.parent.is_dir() else ()
        close = nearest(path.name, names)
        return "there is no such file" + (f"; the nearest is {close}" if close else "")
    return getattr(error, "strerror", None) or "its name is not one"


def _whole_file(file: str, what: str, why: str = "", line: int | None = None) -> MakersFault:
    return MakersFault([Fault(line=line, what=what, why=why, file=file)])


def _parsed(text: str, file: str, main: str) -> tuple[dict[str, Any], LengthUnit]:
    """The tables of a text, with lists turned into tuples, and the unit of its bare numbers."""
    if not text.strip():
        raise _whole_file(file, "is empty", f"it needs at least gramil = 1 and a table [{main}]")
    data = toml_of(text, file)
    if "gramil" in data and (type(data["gramil"]) is not int or data["gramil"] != VERSION):
        line = locate(text).get(("gramil",))
        what = f"read {quoted(data['gramil'])}"
        raise MakersFault([Fault(line, "gramil", what, "this program reads version 1", "write gramil = 1", file)])
    other = next((kind for kind in DESCRIBES if kind in data), main)
    if main not in data and other != main:
        raise _whole_file(file, f"describes {DESCRIBES[other]}, and {DESCRIBES[main]} is asked for", _GIVEN[other])
    head = data.get(main)
    unit = head.get("units") if isinstance(head, dict) else None
    try:
        settled = {key: _settled(value) for key, value in data.items()}
    except RecursionError:
        raise _whole_file(file, NESTED) from None
    return settled, length_unit(unit)


DESCRIBES = {"instrument": "an instrument", "shop": "a shop", "made": "what is made of an instrument"}
"""What a file describes, by the table that it cannot do without."""
_GIVEN = {
    "instrument": "an instrument's file stands by itself",
    "shop": "a shop's file is given after --shop",
    "made": "it is found by itself beside the instrument's file",
}
NESTED = "is not a description: lists or tables are nested too deeply"


def toml_of(text: str, file: str) -> Mapping[str, Any]:
    """The content of a TOML text; raises MakersFault, with the line, if it is not valid."""
    try:
        return tables_of(text.removeprefix("\ufeff").replace("\r\n", "\n"))
    except tomllib.TOMLDecodeError as error:
        said, _, place = str(error).rpartition(" (at ")
        raise _whole_file(file, f"is not TOML: {said or error}", "", _line(place, text)) from None
    except RecursionError:
        raise _whole_file(file, NESTED) from None
    except ValueError:
        raise _whole_file(file, "is not TOML: it holds a number or a date that cannot be read") from None


def _line(place: str, text: str) -> int:
    """The line in the parser's own words, `line 3, column 5` or `end of document`."""
    words = place.split()
    number = words[1].rstrip(",)") if len(words) > 1 and words[0] == "line" else ""
    return int(number) if number.isdigit() else text.rstrip("\n").count("\n") + 1


def _settled(value: Any) -> Any:
    if isinstance(value, list):
        return tuple(_settled(each) for each in value)
    if isinstance(value, dict):
        return {key: _settled(each) for key, each in value.items()}
    return value


def _validated(
    model: type[M], data: dict[str, Any], unit: LengthUnit
) -> tuple[M | None, dict[str, Any], list[Problem]]:
    """The whole model or None, the tables that could be read one by one, and what is wrong with the others."""
    context = {"unit": unit}
    try:
        whole = model.model_validate(data, context=context)
    except ValidationError as error:
        return None, with_usual(_sound_tables(model, data, context)), problems_of(error, model, data, unit)
    tables = with_usual({name: getattr(whole, name) for name in model.model_fields})
    return whole.model_copy(update=tables), tables, []


def _sound_tables(model: type[BaseModel], data: dict[str, Any], context: dict[str, LengthUnit]) -> dict[str, Any]:
    sound = {}
    for name, field in model.model_fields.items():
        if name not in data and not field.is_required():
            sound[name] = field.get_default(call_default_factory=True, validated_data={})
        elif name in data:
            try:
                reader: TypeAdapter[Any] = TypeAdapter(field.annotation)  # type: ignore[arg-type]  # never None: declared
                sound[name] = reader.validate_python(data[name], context=context)
            except ValidationError:
                continue
    return sound


def _twice(tables: Mapping[str, Any]) -> list[Problem]:
    """Faults for two wires, saws and so on of the same name: the description could not say which it means."""
    found = []
    for table, rows in tables.items():
        if not isinstance(rows, tuple):
            continue
        names = [row.name for row in rows]
        for row, name in enumerate(names):
            if name in names[:row] and table != "blank":
                found.append(Problem((table, row, "name"), f"read {quoted(name)} a second time", "each name once"))
    return found
