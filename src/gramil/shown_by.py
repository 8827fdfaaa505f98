"""Which figures a function shows: every name of `names.py` that its code, and the code of its helpers, refers to.

Read off the compiled code without running it: the edges are the same for every instrument, and include a figure
that occurs only in a branch not taken.
"""

import dis
from collections.abc import Callable, Iterator
from dataclasses import fields, is_dataclass
from functools import cache
from types import CodeType, FunctionType, ModuleType
from typing import Any

from gramil import names
from gramil.reference import Ref, name_of

PACKAGE = "gramil"


def shown_by(function: Callable[..., Any]) -> tuple[str, ...]:
    """The names of the figures that a function's code refers to, helpers of this package followed, sorted."""
    found: set[str] = set()
    met: set[int] = set()
    waiting: list[Any] = [function]
    while waiting:
        one = waiting.pop()
        if id(one) in met:
            continue
        met.add(id(one))
        if isinstance(one, FunctionType):
            shown, helpers = _referred(one)
            found |= shown
            waiting.extend(helpers)
        elif isinstance(one, Ref):
            found.add(name_of(one))
        else:
            waiting.extend(_within(one))
    return tuple(sorted(found))


@cache
def _referred(function: FunctionType) -> tuple[frozenset[str], tuple[Any, ...]]:
    """The names that a function's own code refers to, and other objects of this package that may refer to more."""
    found = list(_steps(function.__code__, function.__globals__))
    return frozenset(name for name, _ in found if name), tuple(value for _, value in found if value is not None)


def _steps(code: CodeType, known: dict[str, Any]) -> Iterator[tuple[str, Any]]:
    """Each figure's name in a code object, and each other value to be followed."""
    owner: Any = None
    for step in dis.get_instructions(code):
        if step.opname == "LOAD_GLOBAL":
            owner = known.get(step.argval)
            yield "", _followed(owner)
        elif step.opname in ("LOAD_ATTR", "LOAD_METHOD") and owner is names:
            yield step.argval, None
            owner = None
        elif step.opname in ("LOAD_ATTR", "LOAD_METHOD") and isinstance(owner, ModuleType):
            owner = getattr(owner, step.argval, None)
            yield "", _followed(owner)
        elif step.opname not in ("CACHE", "PUSH_NULL", "PRECALL"):
            owner = None
    for constant in code.co_consts:
        if isinstance(constant, CodeType):
            yield from _steps(constant, known)


def _followed(value: Any) -> Any:
    """The value, if it may hold figures: a function or a class of this package, or plain data; else None."""
    if isinstance(value, FunctionType | type):
        return value if value.__module__.split(".")[0] == PACKAGE else None
    return value if isinstance(value, Ref | tuple | list | dict) or is_dataclass(value) else None


def _within(value: Any) -> Iterator[Any]:
    """The contents of a class, a list, a dict or a record."""
    if isinstance(value, type):
        for member in vars(value).values():
            yield member.fget if isinstance(member, property) else _followed(member)
    elif isinstance(value, dict):
        yield from (*value.keys(), *value.values())
    elif isinstance(value, tuple | list):
        yield from value
    elif is_dataclass(value):
        yield from (getattr(value, each.name) for each in fields(value))
