"""The whole graph of an instrument, and the figures of one: every part, finding, set-up and drawing, wired."""

import importlib
import inspect
import pkgutil
from collections.abc import Callable, Iterator, Mapping, Sequence
from functools import cache
from pathlib import Path
from types import ModuleType
from typing import TYPE_CHECKING, Any

import gramil.drawings
import gramil.findings
import gramil.parts
import gramil.setups
from gramil import names
from gramil import names as n
from gramil.description.base import INPUTS, Base, base_values
from gramil.description.reading import Description, ShopDescription, read_description, read_shop
from gramil.drawings.marks import Drawing
from gramil.findings.finding import SEVERITIES, Finding
from gramil.graph import Figures, Graph, Pin, derive
from gramil.prints.came_in import as_known, is_of, with_missing
from gramil.prints.extrapolated import with_extrapolation_remark
from gramil.prints.unknown import with_reason
from gramil.setups.setup import Setup
from gramil.wiring import wired

if TYPE_CHECKING:
    from gramil.prints.air_base import AirBase

NOT_DIMENSIONS = ("finding_", "setup_", "drawing_", "piece_")
"""Leading nouns of what is on the graph besides dimensions: verdicts, set-ups, drawings and pieces of drawings."""
ROOMS = (gramil.parts, gramil.findings, gramil.setups, gramil.drawings)


@cache
def whole_graph() -> Graph:
    """The graph that serves every instrument, by the wiring that `names.py` holds."""
    return graph_of(ROOMS)


def graph_of(rooms: Sequence[ModuleType]) -> Graph:
    """The graph of the functions in the rooms; their modules are imported as their figures are asked for."""
    starts = tuple(f"{room.__name__}." for room in rooms)
    modules = {module: takes for module, takes in names.WIRING.items() if module.startswith(starts)}
    own = {name for takes in modules.values() for name in takes}
    return wired(modules, INPUTS, {name: shown for name, shown in names.SHOWS.items() if name in own})


def functions(rooms: Sequence[ModuleType] = ROOMS) -> Iterator[Callable[..., Any]]:
    """Every dimension, finding, set-up and drawing in the rooms: the public functions of modules that own names."""
    for module in modules(rooms):
        yield from (
            value
            for name, value in vars(module).items()
            if inspect.isfunction(value) and value.__module__ == module.__name__ and not name.startswith("_")
        )


def modules(rooms: Sequence[ModuleType] = ROOMS) -> Iterator[ModuleType]:
    """The modules of the graph: those that say with OWNS which leading nouns their names start with."""
    for room in rooms:
        for found in pkgutil.iter_modules(room.__path__, room.__name__ + "."):
            module = importlib.import_module(found.name)
            if hasattr(module, "OWNS"):
                yield module


def figures_of(
    description: Description,
    shop: ShopDescription,
    pins: Mapping[str, Pin] | None = None,
    air: "AirBase | None" = None,
) -> Figures:
    """The figures of one instrument in one shop; `pins` are measurements that replace figures.

    `air` is what the readings say, if they are in the store; else those of the shop's own files are read.

    Raises MakersFault if the two do not fit together (a wire that the shop does not have, and the like).
    """
    base = with_air(base_values(description, shop), air or air_of(shop))
    return derive(whole_graph(), base.values, base.origins, pins, base.lengths)


def air_of(shop: ShopDescription) -> "AirBase | None":
    """What the readings in the shop's own files say of its air and pieces, or nothing if it names no place."""
    if not shop.shop.place:
        return None
    from gramil.prints.air_base import air_base  # the physics of moisture is slow to load, and is not needed without
    # readings of air

    return air_base(shop)


def with_air(base: Base, air: "AirBase | None") -> Base:
    """The base values with what the readings of the air say, if there are any."""
    if air is None:
        return base
    return Base({**base.values, **air.values}, {**base.origins, **air.origins}, base.lengths)


def figures_of_files(instrument: str | Path, shop: str | Path | None = None) -> Figures:
    """The figures of the instrument in a file, in the shop of another (or the package's); raises MakersFault."""
    return figures_of(read_description(instrument), read_shop(shop))


def findings_of(figures: Figures) -> tuple[Finding, ...]:
    """Every finding, gravest first, otherwise in the graph's order; one that is not judged says why."""
    names = (name for name in names_of(figures, "finding_") if is_of(figures, name))
    found = (with_missing(with_reason(each, figures), figures) for name in names for each in figures[name])
    told = [with_extrapolation_remark(each, figures) for each in found]
    return tuple(sorted(told, key=lambda each: SEVERITIES.index(each.severity)))


def setups_of(figures: Figures) -> tuple[Setup, ...]:
    """Every set-up, in the order in which the work is done."""
    names = (name for name in names_of(figures, "setup_") if is_of(figures, name))
    found = (as_known(figures, figures[name].name) for name in names)
    return tuple(sorted(found, key=lambda each: each.order))


def drawings_of(figures: Figures) -> tuple[Drawing, ...]:
    """Every drawing that has anything on it, in the graph's order: a part that the instrument lacks has none."""
    return tuple(figures[name] for name in drawing_names(figures) if figures[name].marks)


def drawing_names(figures: Figures) -> tuple[str, ...]:
    """The names of the drawings of an instrument; a guitar that came in, not drawn to be made again, has those alone
    that stand on its sheets.
    """
    names = names_of(figures, "drawing_")
    if not figures[n.repair_described]:
        return names
    shown = {each.drawing.address for each in setups_of(figures) if each.drawing is not None and not each.closed}
    return tuple(name for name in names if name in shown)


def is_drawn(figures: Figures, name: str) -> bool:
    """Whether a drawing is one of the instrument's."""
    return not figures[n.repair_described] or name in drawing_names(figures)


def file_of(name: str) -> str:
    """The name that a drawing and its file go by, from that of its figure: `drawing_top_inside` is `top-inside`."""
    return name.removeprefix("drawing_").replace("_", "-")


def dimensions_of(figures: Figures) -> tuple[str, ...]:
    """The names of all dimensions: whatever is not a verdict, a set-up, a drawing or a base value."""
    graph = figures.graph
    return tuple(name for name in graph.order if name in graph.dimensions and not name.startswith(NOT_DIMENSIONS))


def names_of(figures: Figures, prefix: str) -> tuple[str, ...]:
    """The dimensions whose names start with a noun, in the graph's order."""
    return tuple(name for name in figures.graph.order if name.startswith(prefix) and name in figures.graph.dimensions)
