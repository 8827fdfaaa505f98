"""`dataclass` as the standard library has it, made in a quarter of the time where the record is frozen.

The standard one writes six methods for every class and compiles each by itself: with some two hundred classes, a sixth
of a short command went by on that. Here only `__init__` is compiled; the other methods are the same for all records. To
the type checker, and to `fields`, `replace` and `is_dataclass`, there is no difference. Modules of many records that
most commands load import it from here; elsewhere the standard one does.
"""

import dataclasses
from collections.abc import Callable
from dataclasses import MISSING, FrozenInstanceError
from operator import attrgetter
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from dataclasses import dataclass as dataclass
else:

    def dataclass(record: Any = None, *, frozen: bool = False, eq: bool = True) -> Any:
        """As `dataclasses.dataclass`; a record that can change is made by that one."""
        if frozen and eq:
            return _frozen
        wanted = dataclasses.dataclass(frozen=frozen, eq=eq)
        return wanted if record is None else wanted(record)


def _frozen(record: Any) -> Any:
    if any(map(dataclasses.is_dataclass, record.__bases__)):
        return dataclasses.dataclass(frozen=True)(record)
    made = dataclasses.dataclass(init=False, repr=False, eq=False)(record)
    made.__dataclass_params__.init = made.__dataclass_params__.repr = True
    made.__dataclass_params__.eq = made.__dataclass_params__.frozen = True
    own = dict(vars(made))
    values = _values_of([each.name for each in dataclasses.fields(made) if each.compare])
    methods = {
        "__init__": _initialiser(made),
        "__repr__": _shown,
        "__eq__": _equality(values),
        "__hash__": lambda self: hash(values(self)),
        "__setattr__": _refuse_to_set,
        "__delattr__": _refuse_to_delete,
    }
    for name, method in methods.items():
        if name not in own:
            setattr(made, name, method)
    return made


def _values_of(names: list[str]) -> Callable[[Any], tuple[Any, ...]]:
    """What gives the values of these fields, always as a tuple."""
    if len(names) > 1:
        return attrgetter(*names)
    return lambda record: tuple(getattr(record, name) for name in names)


def _initialiser(record: Any) -> Any:
    """The `__init__` of a record: its fields as parameters, each with its default, and a check of its own afterwards if
    it has one.
    """
    takes, sets, given = [], [], {"put": object.__setattr__, "absent": MISSING}
    for each in dataclasses.fields(record):
        name, value = each.name, each.name
        if each.default_factory is not MISSING:
            given[f"make_{name}"] = each.default_factory
            takes.append(f"{name}=absent")
            value = f"make_{name}() if {name} is absent else {name}"
        elif each.default is not MISSING:
            given[f"usual_{name}"] = each.default
            takes.append(f"{name}=usual_{name}")
        else:
            takes.append(name)
        sets.append(f"  put(self, {name!r}, {value})")
    if hasattr(record, "__post_init__"):
        sets.append("  self.__post_init__()")
    lines = [f" def __init__({', '.join(['self', *takes])}):", *(sets or ["  pass"]), " return __init__"]
    found: dict[str, Any] = {}
    exec("\n".join([f"def made({', '.join(given)}):", *lines]), {"__name__": record.__module__}, found)
    made = found["made"](**given)
    made.__qualname__ = f"{record.__qualname__}.__init__"
    return made


def _equality(values: Callable[[Any], tuple[Any, ...]]) -> Callable[[Any, Any], Any]:
    def equal(self: Any, other: Any) -> Any:
        return values(self) == values(other) if other.__class__ is self.__class__ else NotImplemented

    return equal


def _shown(self: Any) -> str:
    shown = (f"{each.name}={getattr(self, each.name)!r}" for each in dataclasses.fields(self) if each.repr)
    return f"{self.__class__.__qualname__}({', '.join(shown)})"


def _refuse_to_set(self: Any, name: str, _: Any) -> None:
    raise FrozenInstanceError(f"cannot assign to field {name!r}")


def _refuse_to_delete(self: Any, name: str) -> None:
    raise FrozenInstanceError(f"cannot delete field {name!r}")
