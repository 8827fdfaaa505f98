"""What functions and records say of themselves: names of parameters, and annotations that were written as text read."""

import inspect
from collections.abc import Callable, Mapping
from functools import cache
from typing import Any, get_type_hints


def parameters_of(function: Callable[..., Any]) -> tuple[str, ...]:
    """The names of a function's parameters."""
    code = inspect.unwrap(function).__code__
    return code.co_varnames[: code.co_argcount + code.co_kwonlyargcount]


def annotations_of(function: Callable[..., Any]) -> Mapping[str, Any]:
    """A function's annotations, by parameter and for `return`; those that are written as text are read."""
    written = function.__annotations__
    as_text = any(isinstance(each, str) for each in written.values())
    return get_type_hints(function, include_extras=True) if as_text else written


@cache
def annotation_in(record: type, name: str) -> Any:
    """The annotation of a record's field, or of what its property returns; None for anything else."""
    made = getattr(record, name, None)
    if isinstance(made, property):
        return get_type_hints(made.fget, include_extras=True).get("return")
    return get_type_hints(record, include_extras=True).get(name)
