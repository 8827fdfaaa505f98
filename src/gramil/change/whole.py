"""The whole graph of an instrument: every part, finding, set-up and drawing, wired to the base values."""

import importlib
import inspect
import pkgutil
from collections.abc import Callable, Iterator
from functools import cache
from types import ModuleType
from typing import Any

import gramil.drawings
import gramil.findings
import gramil.parts
import gramil.setups
from gramil.graph import Graph, build

ROOMS = (gramil.parts, gramil.findings, gramil.setups, gramil.drawings)


@cache
def whole_graph() -> Graph:
    """The graph that serves every instrument, built once and checked."""
    from gramil.description.base import INPUTS

    return build(functions(), INPUTS)


def functions() -> Iterator[Callable[..., Any]]:
    """Every dimension, finding, set-up and drawing in the rooms: the public functions of modules that own names."""
    for module in modules():
        yield from (
            value
            for name, value in vars(module).items()
            if inspect.isfunction(value) and value.__module__ == module.__name__ and not name.startswith("_")
        )


def modules() -> Iterator[ModuleType]:
    """The modules of the graph: those that say with OWNS which leading nouns their names start with."""
    for room in ROOMS:
        for found in pkgutil.iter_modules(room.__path__, room.__name__ + "."):
            module = importlib.import_module(found.name)
            if hasattr(module, "OWNS"):
                yield module
