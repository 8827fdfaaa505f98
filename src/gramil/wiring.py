"""How a graph is put together: functions wired to inputs and to one another by the names of their parameters.

`build` checks the wiring (two functions with one name, a missing input, a cycle, a unit or a shape that does not
match). `wired` takes a wiring that was checked and written down, and imports no function before it is asked for.
"""

from collections.abc import Callable, Iterable, Mapping
from difflib import get_close_matches
from functools import partial
from graphlib import CycleError, TopologicalSorter
from importlib import import_module
from typing import Any

from gramil.graph import Dimension, Graph, Input, WiringError
from gramil.signature import annotations_of, parameters_of


def build(
    functions: Iterable[Callable[..., Any]],
    inputs: Mapping[str, Input],
    read_off: Mapping[str, tuple[str, ...]] | None = None,
) -> Graph:
    """Wire functions to inputs and to each other by parameter name.

    `read_off` is what each function shows, if that is known already.

    Raises WiringError, naming the place, for two functions with one name, a parameter that nothing provides, a cycle
    (in full), or a parameter whose unit, shape or type differs from what provides it.
    """
    dimensions: dict[str, Dimension] = {}
    for function in functions:
        dimension = _dimension(function)
        if dimension.name in dimensions or dimension.name in inputs:
            raise WiringError(f"two things are called {dimension.name}")
        dimensions[dimension.name] = dimension
    _check_edges(dimensions, inputs)
    return Graph(dict(inputs), dimensions, _in_order(dimensions, inputs), read_off)


def wired(
    modules: Mapping[str, Mapping[str, tuple[str, ...]]],
    inputs: Mapping[str, Input],
    read_off: Mapping[str, tuple[str, ...]],
) -> Graph:
    """The graph of functions whose wiring is written down: by module, each function's name and its parameters.

    Nothing is imported yet. A test holds what is written down against what `build` finds, which checks all of it.
    """
    dimensions = {
        name: Dimension(name, parameters, module, partial(_found, module, name))
        for module, functions in modules.items()
        for name, parameters in functions.items()
    }
    return Graph(dict(inputs), dimensions, _in_order(dimensions, inputs), read_off)


def _found(module: str, name: str) -> Callable[..., Any]:
    function: Callable[..., Any] = getattr(import_module(module), name)
    return function


def _in_order(dimensions: Mapping[str, Dimension], inputs: Mapping[str, Input]) -> tuple[str, ...]:
    """Every name after what it follows from, inputs that nothing takes first; raises WiringError for a circle."""
    sorter = TopologicalSorter({name: each.parameters for name, each in dimensions.items()})
    try:
        order = tuple(sorter.static_order())
    except CycleError as error:
        raise WiringError("a circle: " + " -> ".join(reversed(error.args[1]))) from None
    taken = set(order)
    return tuple(name for name in inputs if name not in taken) + order


def _dimension(function: Callable[..., Any]) -> Dimension:
    if "return" not in annotations_of(function):
        raise WiringError(f"{function.__name__} does not say what it returns")
    return Dimension(function.__name__, parameters_of(function), function.__module__, lambda: function)


def _check_edges(dimensions: Mapping[str, Dimension], inputs: Mapping[str, Input]) -> None:
    for dimension in dimensions.values():
        hints = annotations_of(dimension.function)
        for parameter in dimension.parameters:
            if parameter in inputs:
                given = inputs[parameter].annotation
            elif parameter in dimensions:
                given = dimensions[parameter].annotation
            else:
                near = _nearest(parameter, (*inputs, *dimensions))
                raise WiringError(f"{dimension.name} asks for {parameter}, which nothing gives{near}")
            if given != hints.get(parameter):
                raise WiringError(f"{dimension.name} takes {parameter} as {hints.get(parameter)}, but it is {given}")


def _nearest(name: str, names: Iterable[str]) -> str:
    """The names most like one that nothing gives, as the end of a sentence; nothing if none is like it."""
    near = get_close_matches(name, names, 2)
    return f"; the nearest is {' or '.join(near)}" if near else ""
