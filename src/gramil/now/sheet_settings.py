"""Which settings of the shop's tools stand on a set-up sheet: what makes the sheet stale when a tool changes."""

from collections.abc import Iterator, Mapping
from typing import Any

from gramil import names as n
from gramil.address import parse_address
from gramil.graph import Figures
from gramil.reference import Ref
from gramil.setups.setup import Setup, figures_on
from gramil.shop.items import Item, items
from gramil.shop.opening import Store
from gramil.shop.sheets_given import Setting
from gramil.shop.tools import kerf, length_figure

TOOLS: Mapping[Ref[Any], tuple[str, str]] = {
    n.jig_taper: ("jig", "constant"),
    n.jig_slots: ("jig", "constant"),
    n.saw_main: ("saw", "kerf"),
    n.saw_deepening: ("saw", "kerf"),
}
"""Dimensions that choose a tool, with the table of the shop and the figure that goes into settings."""


def settings_on(setup: Setup, figures: Figures, store: Store) -> tuple[Setting, ...]:
    """The settings that a sheet's figures hang on, by tool."""
    shown = {parse_address(figure.address)[0] for figure in figures_on(setup)}
    above = shown.union(*(figures.graph.above(name) for name in shown))
    return tuple(_settings(above, figures, store))


def _settings(above: set[str], figures: Figures, store: Store) -> Iterator[Setting]:
    found: set[tuple[int, str]] = set()
    for dimension, (kind, figure) in TOOLS.items():
        tool = _tool(dimension, kind, figures, store) if dimension.address in above else None
        if tool is not None and (tool.id, figure) not in found:
            found.add((tool.id, figure))
            value = kerf(store, tool).used if figure == "kerf" else length_figure(store, tool, figure)
            yield Setting(tool.id, figure, value)


def _tool(dimension: Ref[Any], kind: str, figures: Figures, store: Store) -> Item | None:
    name = getattr(figures[dimension], "name", "")
    return next((item for item in items(store, kind) if item.name == name), None)
