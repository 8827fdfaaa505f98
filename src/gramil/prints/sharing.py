"""Two states of an instrument: where they differ at the source, and what is the same in both, worked out once."""

from collections.abc import Iterable
from typing import Any

from gramil.graph import Figures, same
from gramil.prints.whole import dimensions_of, names_of
from gramil.reference import Ref, name_of


def changed(old: Figures, new: Figures) -> tuple[str, ...]:
    """The names whose values differ at the source: base values, and figures that were measured."""
    inputs = (name for name in old.graph.inputs if not same(old.base[name], new.base[name]))
    pinned = {name_of(Ref[Any](at)) for at in {**old.pins, **new.pins} if old.pins.get(at) != new.pins.get(at)}
    return (*inputs, *pinned)


def share(old: Figures, new: Figures, differ: Iterable[str]) -> None:
    """Give the new state every figure of the old one that follows from none of the names in `differ`.

    The names are what `changed` found. Dimensions and findings are worked out for it, since all of them are compared;
    of set-ups and drawings only what the old state knows already is passed on.
    """
    stale = {*differ}.union(*(old.graph.below(name) for name in differ))
    for name in (*dimensions_of(old), *names_of(old, "finding_")):
        if name not in stale:
            old[name]
    for name, value in old.known.copy().items():  # another request may be adding to it
        if name not in stale:
            new.known.setdefault(name, value)
