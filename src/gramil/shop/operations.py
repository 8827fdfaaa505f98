"""The work of an instrument: what comes before what, what each operation needs, and which ones an instrument does
without.
"""

from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property, partial
from graphlib import CycleError, TopologicalSorter
from typing import Any

from gramil.air.air_bands import Band
from gramil.description.body.usual import names_of
from gramil.description.cautions import DUST, MACHINE, TOOLS
from gramil.description.instrument import Instrument
from gramil.faults import Fault, MakersFault

Skip = Mapping[str, Any]
"""Keys of the description with values under which an operation is not needed, or "differ" with two; "why" in words."""
When = tuple[tuple[str, Any], ...]
"""Keys of the description, each with the value that it must have, or "differ" with two keys; none: in any case."""


OTHERWISE = ("what", "prove", "uses", "by", "on", "hands", "clamp")
"""What an operation may have otherwise where a condition holds."""


@dataclass(frozen=True)
class Wait:
    """An operation that must be done before another if the description meets the conditions."""

    operation: str
    when: When = ()


_Known = dict[Wait, tuple[Wait, ...]]


@dataclass(frozen=True)
class Otherwise:
    """What an operation has in the place of its own if the description meets the conditions, by the names of keys."""

    when: When
    has: Mapping[str, Any]


@dataclass(frozen=True)
class Operation:
    """One operation. Hands in minutes; clamp and air_hours in hours; the rest are names, except `prove`, a whole
    sentence.

    `by` are tools and `on` what is worked, by their names in the lists of cautions and of stuffs; `own_caution` are
    whole sentences of the maker's. `safe` says why no caution is needed.

    `after` is what it waits for in any case, `after_where` what it waits for on some instruments; `needed` settles
    which, and then `after` is all. So it does with the braces of the plate in `measure_braces`: each then stands in
    `measure` by its name; and with the figures in `measure_outer`, of every string: each then stands there by the
    numbers of the first and the last string. What is in `where` on this instrument then stands in its place.
    """

    name: str
    what: str
    part: str
    hands: int
    after: tuple[str, ...] = ()
    after_where: tuple[Wait, ...] = ()
    clamp: float = 0.0
    air: str = ""
    air_hours: float = 0.0
    wood: tuple[str, ...] = ()
    uses: tuple[str, ...] = ()
    takes: tuple[str, ...] = ()
    frees: tuple[str, ...] = ()
    makes: tuple[str, ...] = ()
    sheet: str = ""
    figures: tuple[str, ...] = ()
    measure: tuple[str, ...] = ()
    measure_braces: str = ""
    measure_outer: tuple[str, ...] = ()
    by: tuple[str, ...] = ()
    on: tuple[str, ...] = ()
    own_caution: tuple[str, ...] = ()
    safe: str = ""
    prove: str = ""
    skipped: tuple[Skip, ...] = ()
    where: tuple[Otherwise, ...] = ()
    one_go: bool = False

    @property
    def caution(self) -> tuple[str, ...]:
        """What to mind, in whole sentences, when no sheet is at hand to say which species the dust is."""
        tools = [TOOLS[name] for name in self.by]
        machine = (MACHINE,) if any(tool.powered for tool in tools) else ()
        dust = (f"Dust: {DUST[:1].lower()}{DUST[1:]}",) if any(tool.dusty for tool in tools) else ()
        return (*(tool.caution for tool in tools), *machine, *dust, *self.own_caution)

    @property
    def minutes(self) -> float:
        """Minutes from its start until what follows may start."""
        return self.hands + 60.0 * self.clamp


@dataclass(frozen=True)
class Work:
    """Operations by name and the bands of air by name; that of an instrument has each after what comes before it.

    `wrote` has the file and line of each operation whose `after` comes from a maker's own list.
    """

    operations: Mapping[str, Operation]
    bands: Mapping[str, Band]
    left_out: Mapping[str, str] = field(default_factory=dict)
    wrote: Mapping[str, tuple[str, int | None]] = field(default_factory=dict)

    @cached_property
    def later(self) -> Mapping[str, frozenset[str]]:
        """For each operation, every one that waits for it in any case, through any chain; raises MakersFault for a
        circle.
        """
        operations, found = in_order(self).operations, dict[str, frozenset[str]]()
        direct: dict[str, set[str]] = {name: set() for name in operations}
        for name, each in operations.items():
            for before in each.after:
                direct[before].add(name)
        for name in reversed([*operations]):
            found[name] = frozenset(direct[name]).union(*(found[each] for each in direct[name]))
        return found

    def followers(self, name: str) -> tuple[str, ...]:
        """The operations that come directly after one."""
        return tuple(each.name for each in self.operations.values() if name in each.after)


def after_it(work: Work, name: str) -> tuple[str, ...]:
    """Every operation that waits for one, through any chain, in the order of the work."""
    found = {name}
    for each in work.operations.values():
        if found.intersection(each.after):
            found.add(each.name)
    return tuple(each for each in work.operations if each in found and each != name)


def needed(work: Work, instrument: Instrument) -> Work:
    """The work that an instrument needs, in order, and what is left out of it, with the reason.

    Raises MakersFault where a maker's own list lets operations of this instrument go in a circle.
    """
    reasons = {name: why for name, each in work.operations.items() if (why := _skipped(each, instrument))}
    fitting = {name: _as_described(each, instrument) for name, each in work.operations.items()}
    named = replace(work, operations={name: _by_name(each, instrument) for name, each in fitting.items()})
    return without(ordered(named, partial(key_of, instrument)), reasons)


def _as_described(each: Operation, instrument: Instrument) -> Operation:
    """The operation in the words, and with the jigs and tools, that fit what is described."""
    value_of = partial(key_of, instrument)
    has = {key: value for other in each.where if hold(other.when, value_of) for key, value in other.has.items()}
    return replace(each, where=(), **has) if each.where else each


def _by_name(each: Operation, instrument: Instrument) -> Operation:
    """The operation with each brace and each outer string that it asks to have measured by its name and number."""
    if not each.measure_braces and not each.measure_outer:
        return each
    names = (name for row in instrument.brace if row.plate == each.measure_braces for name in names_of(row))
    braces = tuple(f'brace_list["{name}"].height' for name in names)
    outer = (1, len(instrument.strings.gauges))
    strings = tuple(f"{figure}[{string}]" for figure in each.measure_outer for string in outer)
    return replace(each, measure=(*each.measure, *braces, *strings), measure_braces="", measure_outer=())


def ordered(work: Work, value_of: Callable[[str], Any]) -> Work:
    """All the work, in its order for the description whose value under a key is `value_of`(key).

    Raises MakersFault where a maker's own list lets operations go in a circle there.
    """
    return in_order(settled(work, lambda when: hold(when, value_of)))


def settled(work: Work, so: Callable[[When], bool]) -> Work:
    """The work with what each operation waits for when the conditions in `so` hold."""
    return replace(work, operations={name: _settled(each, so) for name, each in work.operations.items()})


def _settled(each: Operation, so: Callable[[When], bool]) -> Operation:
    if not each.after_where:
        return each
    more = (wait.operation for wait in each.after_where if so(wait.when))
    return replace(each, after=tuple(dict.fromkeys((*each.after, *more))), after_where=())


def in_order(work: Work) -> Work:
    """The work with each operation after what it waits for in any case; raises MakersFault for a circle."""
    operations = work.operations
    try:
        names = tuple(TopologicalSorter({name: each.after for name, each in operations.items()}).static_order())
    except CycleError as error:
        raise MakersFault([_circle(error.args[1], work.wrote)]) from None
    return replace(work, operations={name: operations[name] for name in names})


def _circle(names: list[str], wrote: Mapping[str, tuple[str, int | None]]) -> Fault:
    """Reported at the maker's own list that closes the circle."""
    own = next((name for name in names if name in wrote), names[0])
    file, line = wrote.get(own, (None, None))
    remedy = "take one of these out of `after`, or let it hold on some instruments only"
    return Fault(line, f"operation.{own}.after", "operations go in a circle", " before ".join(names), remedy, file)


def without(work: Work, reasons: Mapping[str, str]) -> Work:
    """The work less some operations; what came after them comes after what came before them."""
    known: _Known = {}
    stay = (each for name, each in work.operations.items() if name not in reasons)
    operations = {each.name: _bridged(each, work, reasons, known) for each in stay}
    return replace(work, operations=operations, left_out={**work.left_out, **reasons})


def waits_of(each: Operation) -> tuple[Wait, ...]:
    """All that an operation waits for, in any case or on some instruments."""
    return (*map(Wait, each.after), *each.after_where)


def _bridged(each: Operation, work: Work, gone: Mapping[str, str], known: _Known) -> Operation:
    waits = waits_of(each)
    if not any(wait.operation in gone for wait in waits):
        return each
    kept = [found for wait in waits for found in _standing(wait, work, gone, known)]
    after = tuple(dict.fromkeys(wait.operation for wait in kept if not wait.when))
    where = tuple(wait for wait in dict.fromkeys(kept) if wait.when and wait.operation not in after)
    return replace(each, after=after, after_where=where)


def _standing(wait: Wait, work: Work, gone: Mapping[str, str], known: _Known) -> tuple[Wait, ...]:
    """What is waited for instead of an operation that is left out, if both conditions can hold at once.

    Found once for each, and `known` then: where a whole body is left out, thousands of ways lead back through it.
    """
    if wait.operation not in gone:
        return (wait,)
    if wait not in known:
        ways = _ways_on(wait, waits_of(work.operations[wait.operation]))
        known[wait] = tuple(dict.fromkeys(found for each in ways for found in _standing(each, work, gone, known)))
    return known[wait]


def _ways_on(wait: Wait, before: Iterable[Wait]) -> Iterator[Wait]:
    """What a wait comes to that goes on to what came before it, where both conditions can hold at once."""
    for each in before:
        both = (*wait.when, *(condition for condition in each.when if condition not in wait.when))
        keys = [key for key, _ in both if key != "differ"]
        if len(set(keys)) == len(keys):
            yield Wait(each.operation, both)


def _skipped(operation: Operation, instrument: Instrument) -> str:
    value_of = partial(key_of, instrument)
    return next((str(skip["why"]) for skip in operation.skipped if hold(conditions_in(skip), value_of)), "")


def conditions_in(row: Mapping[str, Any]) -> When:
    """The conditions on the description in a row of a list: all but its words and the operation that it names."""
    return tuple(
        (key, tuple(value) if isinstance(value, list) else value)
        for key, value in row.items()
        if key not in ("why", "operation", *OTHERWISE)
    )


def hold(conditions: When, value_of: Callable[[str], Any]) -> bool:
    """Whether there are conditions and all of them hold; a condition on a key without a value does not hold."""
    return bool(conditions) and all(_holds(key, value, value_of) for key, value in conditions)


def _holds(key: str, value: Any, value_of: Callable[[str], Any]) -> bool:
    if key == "differ":
        one, other = map(value_of, value)
        return bool(one != other)
    return _equal(value_of(key), value)


def key_of(instrument: Instrument, key: str) -> Any:
    """The value of an instrument's description at a key such as `board.arch.nut`; None if there is no such key."""
    value: Any = instrument
    for name in key.split("."):
        value = getattr(value, name, None)
    return value


def _equal(value: Any, wanted: Any) -> bool:
    return value is not None and (len(value) == 0 if isinstance(wanted, tuple) else bool(value == wanted))
