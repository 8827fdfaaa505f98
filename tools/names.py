"""Writes `names.py`: a typed reference for every figure of the graph, so that a rename that is half done is seen.

Run as `make names`; a test keeps the file true. The names lead an editor from a page to the figure's function.
"""

import inspect
import json
import sys
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from itertools import groupby
from pathlib import Path
from typing import Any, Literal, get_args, get_origin, get_type_hints

from gramil import quantities
from gramil.graph import Dimension, Graph, Input
from gramil.prints.solved import checked_graph
from gramil.quantities import axes_of
from gramil.shown_by import shown_by

FILE = Path(__file__).parent.parent / "src" / "gramil" / "names.py"
HEAD = '''"""Every figure of the graph by name, typed: made by `make names`, never edited by hand.

`from gramil import names as n`, then `n.slot_depth_setting`, `n.fret_position[12]`, `n.saw_main.kerf`. At run time a
name is a plain reference; the graph refuses one that leads nowhere when what pages show is read.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from gramil.reference import Ref

WIRING: dict[str, dict[str, tuple[str, ...]]] = {
'''
MIDDLE = (
    "}",
    '"""What each figure follows from, by module: the parameters of its function."""',
    "SHOWS: dict[str, tuple[str, ...]] = {",
)
AFTER = ("}", '"""What each page shows, read off its code: edges of the graph."""', "")
FOOT = """
else:

    def __getattr__(name: str) -> Ref[Any]:
        if name.startswith("_"):
            raise AttributeError(name)
        return Ref(name)
"""
ALIASES = {value: name for name, value in vars(quantities).items() if hasattr(value, "__metadata__")}
PLAIN = {float: "float", int: "int", str: "str", bool: "bool"}


class Kinds:
    """What has to be imported and which records have references of their own, found on the way."""

    def __init__(self) -> None:
        self.imports: dict[str, set[str]] = defaultdict(set)
        self.taken: dict[str, str] = {}
        self.records: dict[type, str] = {}
        self.waiting: list[type] = []

    def import_of(self, found: type) -> str:
        """The name under which a type is imported."""
        if found.__module__ == "builtins":
            return found.__qualname__
        first = self.taken.setdefault(found.__qualname__, found.__module__)
        if first == found.__module__:
            self.imports[found.__module__].add(found.__qualname__)
            return found.__qualname__
        name = f"{found.__module__.rsplit('.', 1)[-1].title().replace('_', '')}{found.__qualname__}"
        self.imports[found.__module__].add(f"{found.__qualname__} as {name}")
        return name

    def record(self, found: type) -> str:
        """The reference class of a record."""
        if found not in self.records:
            taken = set(self.records.values())
            name = f"{found.__name__.lstrip('_')}Ref"
            if name in taken:
                name = f"{found.__module__.rsplit('.', 1)[-1].title().replace('_', '')}{name}"
            self.records[found] = name
            self.waiting.append(found)
        return self.records[found]

    def value(self, annotation: Any) -> str:
        """An annotation as it is written in the file."""
        if annotation in PLAIN:
            return PLAIN[annotation]
        if hasattr(annotation, "__metadata__"):
            if annotation not in ALIASES:
                return self.value(get_args(annotation)[0])
            name = ALIASES[annotation]
            self.imports["gramil.quantities"].add(name)
            return name
        if get_origin(annotation) is Literal:
            self.imports["typing"].add("Literal")
            return f"Literal[{', '.join(repr(each) for each in get_args(annotation))}]"
        if get_origin(annotation) is tuple and get_args(annotation)[-1] is Ellipsis:
            return f"tuple[{self.value(get_args(annotation)[0])}, ...]"
        if isinstance(annotation, type) and not get_args(annotation) and not annotation.__qualname__.startswith("_"):
            return self.import_of(annotation)
        return "Any"

    def reference(self, annotation: Any) -> str:
        """The type of a reference to a figure of this annotation."""
        if axes_of(annotation):
            self.imports["gramil.reference"].add("Rows")
            return "Rows"
        if isinstance(annotation, type) and is_dataclass(annotation) and _is_of_figures(annotation):
            return self.record(annotation)
        if get_origin(annotation) is tuple and get_args(annotation)[-1] is Ellipsis:
            self.imports["gramil.reference"].add("Members")
            one = get_args(annotation)[0]
            return f"Members[{self.reference(one)}, {self.value(one)}]"
        return f"Ref[{self.value(annotation)}]"

    def fields_of(self, record: type) -> Iterator[tuple[str, str]]:
        """A record's fields and properties, each with its reference's type."""
        hints = get_type_hints(record, include_extras=True)
        yield from ((each.name, self.reference(hints[each.name])) for each in fields(record) if _shown(each.name))
        for name, member in vars(record).items():
            made = getattr(member, "fget", None)
            if made is not None and _shown(name):
                yield name, self.reference(get_type_hints(made, include_extras=True).get("return"))


def _is_of_figures(record: Any) -> bool:
    """Whether a record holds figures: one that is not compared by its fields is what figures are worked out with."""
    return bool(record.__dataclass_params__.eq)


def _shown(name: str) -> bool:
    """Whether a field has a reference: a finding's own address is one already."""
    return name[0] != "_" and name != "address"


def written(graph: Graph) -> str:
    """The text of the file."""
    kinds, modules, lines = Kinds(), set[tuple[str, str]](), []
    for name in sorted(graph.inputs):
        lines.append(f"    {name}: {_given(kinds, graph.inputs[name])}")
    for part, dimensions in _by_module(graph):
        lines += ["", f"    # {part.replace('.', '/')}.py"]
        for each in dimensions:
            lines.append(f"    {each.name}: {kinds.reference(each.annotation)} = of({_module(part)}.{each.name})")
        room, _, module = part.rpartition(".")
        modules.add((room, module))
    records = []
    while kinds.waiting:
        record = kinds.waiting.pop(0)
        records += ["", f"    class {kinds.records[record]}(Ref[{kinds.import_of(record)}]):"]
        records += [f"        {name}: {kind}" for name, kind in kinds.fields_of(record)] or ["        pass"]
    shows = [f'    "{name}": {_names(shown)},' for name, shown in _shows(graph).items() if shown]
    edges = "\n".join([*_wiring(graph), *MIDDLE, *shows, *AFTER])
    return HEAD + edges + "\nif TYPE_CHECKING:\n" + "\n".join([*_imports(kinds, modules), *records, "", *lines]) + FOOT


def _shows(graph: Graph) -> dict[str, tuple[str, ...]]:
    return {name: shown_by(graph.dimensions[name].function) for name in sorted(graph.dimensions)}


def _wiring(graph: Graph) -> Iterator[str]:
    """Every function's parameters, by module, in the order in which they are wired."""
    for module, dimensions in groupby(graph.dimensions.values(), key=lambda each: each.module):
        yield f'    "{module}": {{'
        yield from (f'        "{each.name}": {_names(each.parameters)},' for each in dimensions)
        yield "    },"


def _names(shown: tuple[str, ...]) -> str:
    return f"({', '.join(json.dumps(each) for each in shown)},)" if shown else "()"


def _given(kinds: Kinds, given: Input) -> str:
    """The type of a reference to a base value; one that is chosen from a few words says which."""
    return kinds.reference(Literal[given.choices] if given.choices else given.annotation)


def _imports(kinds: Kinds, modules: set[tuple[str, str]]) -> Iterator[str]:
    for module, names in sorted(kinds.imports.items()):
        yield f"    from {module} import {', '.join(sorted(names))}"
    yield "    from gramil.reference import of"
    for room, module in sorted(modules):
        yield f"    from gramil.{room} import {module} as {_module(f'{room}.{module}')}"


def _module(part: str) -> str:
    room, module = part.split(".")
    return f"{room}_{module}" if room != "parts" else f"part_{module}"


def _by_module(graph: Graph) -> Iterator[tuple[str, list[Dimension]]]:
    found: dict[str, list[Dimension]] = defaultdict(list)
    for each in graph.dimensions.values():
        found[each.function.__module__.removeprefix("gramil.")].append(each)
    for part in sorted(found):
        yield part, sorted(found[part], key=lambda each: inspect.getsourcelines(each.function)[1])


if __name__ == "__main__":
    text = written(checked_graph())
    if "--check" in sys.argv and FILE.read_text(encoding="utf-8") != text:
        sys.exit("names.py is not what the graph gives: run `make names`")
    FILE.write_text(text, encoding="utf-8")
