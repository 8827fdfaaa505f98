"""The derivation graph: dimensions are functions, wired to one another by the names of their parameters.

`wiring.py` puts one together; `derive` gives the figures of one instrument, each worked out when first asked for.
"""

import inspect
from collections.abc import Callable, Iterable, Iterator, Mapping
from contextlib import suppress
from dataclasses import dataclass, field, is_dataclass, replace
from functools import cached_property
from typing import Any, TypeVar, overload

import numpy as np

from gramil.address import LEADS_NOWHERE, Field, Step, parse_address, put_into, row_of, step_into
from gramil.quantities import Unit, axes_of, unit_of
from gramil.reference import Ref
from gramil.short_names import short_names
from gramil.shown_by import shown_by
from gramil.signature import annotation_in, annotations_of, parameters_of

T = TypeVar("T")


class WiringError(Exception):
    """The functions do not fit together: a bug in the program, never a fault in what the maker wrote."""


@dataclass(frozen=True)
class Input:
    """A value that the graph starts from: its annotation (unit and axes), what it is, the words allowed for it."""

    annotation: Any
    what: str
    choices: tuple[str, ...] = ()


@dataclass(frozen=True)
class Dimension:
    """One function of the graph: `parameters` are the names of what it follows from, `module` is where it is defined.

    `load` gives the function itself; its module is not imported before somebody asks for the figure.
    """

    name: str
    parameters: tuple[str, ...]
    module: str
    load: Callable[[], Callable[..., Any]]

    @cached_property
    def function(self) -> Callable[..., Any]:
        """The function; raises WiringError if it does not take the parameters that it was wired by."""
        function = self.load()
        taken = parameters_of(function)
        if taken != self.parameters:
            raise WiringError(f"{self.name} takes {taken} and was wired by {self.parameters}: run `make names`")
        return function

    @cached_property
    def annotation(self) -> Any:
        """What the function says that it returns."""
        return annotations_of(self.function)["return"]

    @property
    def part(self) -> str:
        """The module's own name, which is the part's."""
        return self.module.rpartition(".")[2]

    @cached_property
    def what(self) -> str:
        """The whole docstring."""
        return inspect.getdoc(self.function) or ""


@dataclass(frozen=True)
class Origin:
    """Where a base value came from: a file, its line and dotted key, or a default; `note` says more of that."""

    text: str
    file: str | None = None
    line: int | None = None
    key: str = ""
    note: str = ""

    def __str__(self) -> str:
        if self.file is None:
            return self.text
        place = f"{self.file}:{self.line}" if self.line else self.file
        return f"{place}, {self.note}" if self.note else place


@dataclass(frozen=True)
class Pin:
    """A figure replaced by what was measured; `when` is a date in words, `at` the operation noted with it, if any.

    `before` are earlier measurements of the same figure at other operations, the latest last. With `settled_by`,
    a base value was not measured itself but follows from the reading at that address. `since` is the last operation
    that was done before a measurement noted at none: empty if none was, None if everything was.
    """

    value: Any
    when: str
    at: str = ""
    before: tuple["Pin", ...] = ()
    settled_by: str = ""
    since: str | None = None

    def after(self, earlier: "Pin | None") -> "Pin":
        """The same pin noted after another one of its figure; of one operation only the last counts."""
        if earlier is None:
            return self
        noted = (*earlier.before, replace(earlier, before=()))
        return replace(self, before=tuple(each for each in noted if each.at != self.at))


@dataclass(frozen=True)
class Graph:
    """Inputs and dimensions, checked. `order` lists every name after what it follows from.

    Two kinds of edges lead to a name: `parameters` give it its value, and `shows` are the figures that its page
    shows. Deriving again follows the first kind, "hangs on" and `why` follow both.
    """

    inputs: Mapping[str, Input]
    dimensions: Mapping[str, Dimension]
    order: tuple[str, ...]
    read_off: Mapping[str, tuple[str, ...]] | None = None

    @cached_property
    def followers(self) -> Mapping[str, tuple[str, ...]]:
        """For each name, the dimensions that take it as a parameter, in order."""
        found: dict[str, list[str]] = {name: [] for name in self.order}
        for name in self.order:
            for parameter in self.parameters(name):
                found[parameter].append(name)
        return {name: tuple(names) for name, names in found.items()}

    @cached_property
    def short_names(self) -> Mapping[str, str]:
        """The short name of each figure."""
        told = {name: each.what for name, each in self.inputs.items()}
        told |= {name: each.what for name, each in self.dimensions.items()}
        return short_names(told)

    def parameters(self, name: str) -> tuple[str, ...]:
        """What `name` follows from directly; empty for an input."""
        dimension = self.dimensions.get(name)
        return dimension.parameters if dimension else ()

    @cached_property
    def shows(self) -> Mapping[str, tuple[str, ...]]:
        """For each dimension that shows figures, which ones; raises WiringError for a name that is not a figure.

        They are read off the functions' code, or were when `names.py` was made (`read_off`).
        """
        found = self.read_off
        if found is None:
            found = {name: shown_by(each.function) for name, each in self.dimensions.items()}
        for name, shown in found.items():
            if lost := [each for each in shown if each not in self.inputs and each not in self.dimensions]:
                raise WiringError(f"{name} shows {lost[0]}, which nothing gives")
        return found

    def hangs_on(self, name: str) -> frozenset[str]:
        """Everything on which `name` depends, directly or not, whether for its value or for what it shows."""
        return _reach(name, lambda each: (*self.parameters(each), *self.shows.get(each, ())))

    def hung_from(self, names: Iterable[str]) -> frozenset[str]:
        """Everything whose value or page depends on one of the names, directly or not."""
        return frozenset().union(*map(self._hung, names))

    def _hung(self, name: str) -> frozenset[str]:
        if ("hung", name) not in self._reached:
            reached = _reach(name, lambda each: (*self.followers[each], *self.shown_on[each]))
            self._reached["hung", name] = reached
        return self._reached["hung", name]

    @cached_property
    def shown_on(self) -> Mapping[str, tuple[str, ...]]:
        """For each name, the dimensions that show it, in order."""
        found: dict[str, list[str]] = {name: [] for name in self.order}
        for name in self.order:
            for each in self.shows.get(name, ()):
                found[each].append(name)
        return {name: tuple(names) for name, names in found.items()}

    def annotation(self, name: str) -> Any:
        """The annotation of an input or a dimension."""
        dimension = self.dimensions.get(name)
        return dimension.annotation if dimension else self.inputs[name].annotation

    def unit(self, name: str) -> Unit | None:
        """The unit of a figure, or None for records, words and flags."""
        return self._kind(name)[0]

    def axes(self, name: str) -> tuple[str, ...]:
        """The axes that a figure runs over, as `axes_of` has them."""
        return self._kind(name)[1]

    def _kind(self, name: str) -> tuple[Unit | None, tuple[str, ...]]:
        if name not in self._kinds:
            annotation = self.annotation(name)
            self._kinds[name] = unit_of(annotation), axes_of(annotation)
        return self._kinds[name]

    @cached_property
    def _kinds(self) -> dict[str, tuple[Unit | None, tuple[str, ...]]]:
        """A cache for `unit` and `axes`."""
        return {}

    @cached_property
    def _reached(self) -> dict[tuple[str, str], frozenset[str]]:
        """A cache for `above`, `below` and `hung_from`: the wiring never changes."""
        return {}

    def above(self, name: str) -> frozenset[str]:
        """Everything on which the value of `name` depends, directly or not."""
        if ("above", name) not in self._reached:
            nearest = self.parameters(name)
            self._reached["above", name] = frozenset(nearest).union(*map(self.above, nearest))
        return self._reached["above", name]

    def below(self, name: str) -> frozenset[str]:
        """Everything whose value depends on `name`, directly or not."""
        if ("below", name) not in self._reached:
            nearest = self.followers[name]
            self._reached["below", name] = frozenset(nearest).union(*map(self.below, nearest))
        return self._reached["below", name]


def _reach(start: str, step: Callable[[str], Iterable[str]]) -> frozenset[str]:
    found: set[str] = set()
    waiting = list(step(start))
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting.extend(step(name))
    return frozenset(found)


@dataclass(frozen=True, eq=False)
class Figures(Mapping[str, Any]):
    """The figures of one instrument. Reading a figure works it out, with all it follows from, and keeps it.

    `lengths` gives the number of rows of each axis; an array of the wrong shape raises WiringError.
    """

    graph: Graph
    base: Mapping[str, Any]
    origins: Mapping[str, Origin] = field(default_factory=dict)
    pins: Mapping[str, Pin] = field(default_factory=dict)
    lengths: Mapping[str, int] = field(default_factory=dict)
    known: dict[str, Any] = field(default_factory=dict, repr=False)

    @overload
    def __getitem__(self, name: Ref[T]) -> T: ...
    @overload
    def __getitem__(self, name: str) -> Any: ...
    def __getitem__(self, name: Ref[Any] | str) -> Any:
        if (name := str(name)) not in self.known:
            self.known[name] = self._find(name)
        return self.known[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self.graph.order)

    def __len__(self) -> int:
        return len(self.graph.order)

    def __contains__(self, name: object) -> bool:
        return str(name) in self.graph.inputs or str(name) in self.graph.dimensions

    def _find(self, name: str) -> Any:
        dimension = self.graph.dimensions.get(name)
        if dimension is None:
            value = self.base[name]
        else:
            known = self.known  # asked before `self` is: most is known, and a call for each of thousands tells
            value = dimension.function(*[known[each] if each in known else self[each] for each in dimension.parameters])
        return self._settled(name, self._pinned(name, value))

    def _pinned(self, name: str, value: Any) -> Any:
        """The figure replaced by what was measured; measurements of what this instrument lacks are left out."""
        for steps, pin in self._pins_by_name.get(name, ()):
            if not steps:
                return pin.value
            with suppress(*LEADS_NOWHERE):
                value = self._with(name, value, steps, pin)
        return value

    @cached_property
    def _pins_by_name(self) -> Mapping[str, list[tuple[tuple[Step, ...], Pin]]]:
        """The pins of each figure, in their order: every figure that is worked out asks for its own."""
        parsed = [(*parse_address(address), pin) for address, pin in self.pins.items()]
        return {name: [(steps, pin) for other, steps, pin in parsed if other == name] for name, _, _ in parsed}

    def _with(self, name: str, value: Any, steps: tuple[Step, ...], pin: Pin) -> Any:
        annotation = self.graph.annotation(name)
        if not axes_of(annotation):
            return put_into(value, steps, pin.value)
        value = np.array(value, dtype=np.float64)
        value[row_of(annotation, steps)] = pin.value
        return value

    def _settled(self, name: str, value: Any) -> Any:
        axes = self.graph.axes(name)
        if not axes:
            return value
        value = np.asarray(value, dtype=np.float64)
        wanted = tuple(self.lengths.get(axis) for axis in axes)
        if axes != ("any",) and None not in wanted and value.shape != wanted:
            raise WiringError(f"{name} has shape {value.shape}, not {wanted}")
        value.setflags(write=False)
        return value

    def drawn(self, name: Ref[Any] | str) -> Any:
        """The figure as the description alone gives it, without any measurement."""
        return replace(self, pins={}, known={})[name] if self.pins else self[name]

    def with_pins(self, pins: Mapping[str, Pin]) -> "Figures":
        """The same with other measurements: only what depends on one that differs is worked out again."""
        if not (differing := {each for each in {*self.pins, *pins} if self.pins.get(each) != pins.get(each)}):
            return self
        return replace(self, pins=pins, known=self._known_still({parse_address(each)[0] for each in differing}))

    def with_base(
        self,
        base: Mapping[str, Any],
        origins: Mapping[str, Origin] | None = None,
        lengths: Mapping[str, int] | None = None,
    ) -> "Figures":
        """Figures of a changed description: only what depends on a changed input is worked out again."""
        kept = self._known_still({name for name in self.graph.inputs if not same(self.base[name], base[name])})
        return replace(self, base=base, origins=origins or self.origins, lengths=lengths or self.lengths, known=kept)

    def _known_still(self, changed: set[str]) -> dict[str, Any]:
        """What is worked out and depends on nothing that changed; a copy, as other threads add to it."""
        kept = self.known.copy()
        for name in changed.union(*(self.graph.below(name) for name in changed if name in self)):
            kept.pop(name, None)
        return kept

    def at(self, figure: Ref[Any] | str) -> Any:
        """The figure at a reference, or at an address that a maker wrote.

        `slot_depth`, `slot_depth_at_edge[7]`, `string_hump[6]`, `findings["..."].value`.

        Frets count from 0 (the zero line), strings from 1 (at the treble). Raises KeyError with the address if
        there is no such figure.
        """
        address = str(figure)
        name, steps = parse_address(address)
        if name not in self:
            raise KeyError(address)
        value = self[name]
        try:
            if self.graph.axes(name):
                return value[row_of(self.graph.annotation(name), steps)] if steps else value
            for step in steps:
                value = step_into(value, step)
        except LEADS_NOWHERE:
            raise KeyError(address) from None
        return value

    def unit_at(self, figure: Ref[Any] | str) -> str | None:
        """The unit's symbol of the figure at an address, or None if it has none; raises KeyError as `at` does."""
        address = str(figure)
        name, steps = parse_address(address)
        unit = self.graph.unit(name)
        if unit is None and steps and isinstance(steps[-1], Field):
            owner = self.at(address[: address.rindex(".")])
            if not hasattr(owner, steps[-1].name):
                raise KeyError(address)
            if is_dataclass(owner):
                kind: type = type(owner)
                unit = unit_of(annotation_in(kind, steps[-1].name))
        return unit.symbol if unit else None


def derive(
    graph: Graph,
    base: Mapping[str, Any],
    origins: Mapping[str, Origin] | None = None,
    pins: Mapping[str, Pin] | None = None,
    lengths: Mapping[str, int] | None = None,
) -> Figures:
    """The figures that follow from `base`; `pins` replaces figures, by address, with what was measured."""
    missing = [name for name in graph.inputs if name not in base]
    if missing:
        raise WiringError("no value for " + ", ".join(missing))
    return Figures(graph, base, origins or {}, pins or {}, lengths or {})


def same(one: Any, other: Any) -> bool:
    """Whether two figures are equal, arrays element by element."""
    if isinstance(one, np.ndarray) or isinstance(other, np.ndarray):
        return bool(np.array_equal(one, other, equal_nan=True))
    return bool(one == other) or (one != one and other != other)
