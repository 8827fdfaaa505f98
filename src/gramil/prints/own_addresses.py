"""Addresses in a maker's own list of operations, checked against the graph: each fault has its file and line.

A figure that does not exist, or a row or field that it does not have, is wrong on any instrument. A member that this
instrument lacks (a brace that was taken out) is a fault in its own list, but not in the shop's, which serves others
too.
"""

import tomllib
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import fields, is_dataclass
from functools import cache
from types import UnionType
from typing import Any, Union, get_args, get_origin, get_type_hints

from gramil.address import Field, Step, parse_address
from gramil.description.locate import line_of, locate
from gramil.description.problems import did_you_mean, nearest
from gramil.faults import Fault, MakersFault
from gramil.graph import Figures
from gramil.prints.whole import whole_graph
from gramil.quantities import axes_of
from gramil.rows import member_label
from gramil.shop.operations import Work
from gramil.shop.operations_file import OwnList, work_with

MEASURED = "measure"
OUTER = "measure_outer"
KEYS = ("figures", MEASURED, OUTER)
"""Keys of an operation that hold addresses; a whole row of figures may be shown, and is not measured."""
MOST_NAMED = 8
"""How many members are named if one is not among them."""
SINGLE = (float, int, str, bool)


def checked_work(lists: Iterable[OwnList], figures: Figures, own: str) -> Work:
    """The work with a maker's lists laid over it; the list called `own` is this instrument's.

    Raises MakersFault, with every fault in a list, wrong addresses included.
    """
    lists = tuple(lists)
    work = work_with(lists)
    refuse(fault for each in lists for fault in wrong_addresses(each, figures if each[0] == own else None))
    return work


def refuse(faults: Iterable[Fault]) -> None:
    """Raises MakersFault if there are any."""
    if found := [*faults]:
        raise MakersFault(found)


def wrong_addresses(own: OwnList, figures: Figures | None = None) -> Iterator[Fault]:
    """What is wrong with the addresses of a list; with `figures`, also what its instrument lacks."""
    file, text = own
    lines = locate(text)
    for operation, row in _rows(text):
        for key in KEYS:
            named = row.get(key, ())
            for number, address in enumerate(named if isinstance(named, list) else ()):
                said = _wrong_under(key, str(address), figures)
                if said is not None:
                    path = ("operation", operation, key)
                    yield Fault(line_of(lines, (*path, number)), ".".join(path), said[0], "", said[1], file)


def _rows(text: str) -> Iterator[tuple[str, Mapping[str, Any]]]:
    """The list's rows; if the text is not a list at all, its own reader reports that."""
    try:
        rows = tomllib.loads(text.replace("\r\n", "\n")).get("operation", {})
    except (ValueError, RecursionError):
        return
    if isinstance(rows, dict):
        yield from ((name, row) for name, row in rows.items() if isinstance(row, dict))


def _wrong_under(key: str, address: str, figures: Figures | None) -> tuple[str, str] | None:
    """What is wrong with an address under one of the keys, and what to write instead."""
    wrong = _wrong(address, figures, single=key == MEASURED)
    if wrong is None and key == OUTER and axes_of(whole_graph().annotation(parse_address(address)[0])) != ("string",):
        return f"{address} is not a figure with a row for each string", "write it in `measure`, or name one that is"
    return wrong


def _wrong(address: str, figures: Figures | None, *, single: bool) -> tuple[str, str] | None:
    """What is wrong with an address, and what to write instead."""
    try:
        name, steps = parse_address(address)
    except KeyError:
        return f"{address} is no address", 'write it like fret_position[12] or brace_list["X treble"].height'
    graph = whole_graph()
    if name not in graph.inputs and name not in graph.dimensions:
        return f"there is no figure {name}", did_you_mean(
            nearest(name, graph.order)
        ) or "see the list of its dimensions"
    wrong = _wrong_steps(address, graph.annotation(name), steps, single=single)
    return _lacking(address, figures) if wrong is None and figures is not None else wrong


def _wrong_steps(address: str, annotation: Any, steps: tuple[Step, ...], *, single: bool) -> tuple[str, str] | None:
    """What no instrument has: too many rows, a word instead of a number, a field that the records do not have."""
    axes = axes_of(annotation)
    if axes:
        rows = " and ".join(axes)
        whole = not steps and not single
        wrong = (not whole and len(steps) != len(axes)) or not all(isinstance(step, int) for step in steps)
        return (f"{address} is not a single figure", f"write a number for its {rows} in brackets") if wrong else None
    for step in steps:
        annotation = _plain(annotation)
        if isinstance(step, Field):
            known = _fields(annotation)
            if step.name not in known:
                return f"{address}: there is no .{step.name}", did_you_mean(nearest(step.name, known)) or _listed(known)
            annotation = known[step.name]
        elif get_origin(annotation) is tuple:
            annotation = get_args(annotation)[0]
        elif annotation in SINGLE or is_dataclass(annotation):
            return f"{address}: there is nothing to count in it", "leave the brackets out"
    return None


def _plain(annotation: Any) -> Any:
    """The annotated type, without its unit, and without None if it is optional."""
    while hasattr(annotation, "__metadata__") or get_origin(annotation) in (Union, UnionType):
        annotation = next(each for each in get_args(annotation) if each is not type(None))
    return annotation


@cache
def _fields(record: Any) -> Mapping[str, Any]:
    """A record's fields, each with its annotation; nothing if it is not a record."""
    if not is_dataclass(record):
        return {}
    hints = get_type_hints(record, include_extras=True)
    own = {name: made for name, made in vars(record).items() if isinstance(made, property) and made.fget is not None}
    asked = {name: get_type_hints(made.fget, include_extras=True).get("return") for name, made in own.items()}
    return {each.name: hints[each.name] for each in fields(record)} | asked


def _listed(names: Iterable[str]) -> str:
    found = [*names]
    return f"it has {', '.join(found[:MOST_NAMED])}" if found else "it is one figure: write its name alone"


def _lacking(address: str, figures: Figures) -> tuple[str, str] | None:
    """What this instrument does not have, though another may."""
    try:
        figures.at(address)
    except KeyError:
        name, _ = parse_address(address)
        value = figures[name]
        members = enumerate(value, 1) if isinstance(value, tuple) else ()
        named = [member_label(number, each).strip('"') for number, each in members]
        remedy = _listed(named) if named else "take it out, or leave the operation out"
        return f"{address} is not on this instrument", remedy
    return None
