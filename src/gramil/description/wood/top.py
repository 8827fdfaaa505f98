"""Base values of the top's wood: how it moves across the grain, how stiff it is there, and how stiff its braces are."""

import math
from collections.abc import Mapping

from gramil import names as n
from gramil.description.neck.tables import Top
from gramil.description.normal_row import by_name
from gramil.description.shop.tables import Shop
from gramil.description.wood.air_values import PerPercent
from gramil.description.wood.own_woods import wood_of
from gramil.graph import Input, Origin
from gramil.quantities import MPa
from gramil.sources import cited
from gramil.wood.species import Published

TOP_WOOD_INPUTS: Mapping[str, Input] = by_name(
    {
        n.top_movement_radial: Input(PerPercent, "radial movement of the top's wood for each 1 % of moisture"),
        n.top_modulus_across: Input(MPa, "stiffness of the top's wood across the grain, radial"),
        n.top_brace_modulus: Input(MPa, "stiffness of the braces' wood along the grain"),
    }
)
"""What the woods of the top and its braces settle."""


def top_wood_values(top: Top, shop: Shop) -> dict[str, float]:
    """The values of `TOP_WOOD_INPUTS`; nan if a wood is not known or no source says."""
    figures = {name: _figure(name, top, shop) for name in TOP_WOOD_INPUTS}
    return {name: math.nan if figure is None else figure.value for name, figure in figures.items()}


def top_wood_origin(name: str, top: Top, shop: Shop) -> Origin:
    """Where one of these values comes from."""
    wood, figure = _wood(name, top), _figure(name, top, shop)
    if figure is None:
        known = wood_of(wood, shop) is not None
        return Origin(f"no source gives it for {wood}" if known else f"{wood} is not a known wood")
    return Origin(f"{wood}: {cited(figure.source)} ({figure.flag}{f'; {figure.note}' if figure.note else ''})")


def _wood(name: str, top: Top) -> str:
    return top.brace_wood if name == n.top_brace_modulus.address else top.wood


def _figure(name: str, top: Top, shop: Shop) -> Published | None:
    """A top is quartersawn: radial is across it."""
    wood = wood_of(_wood(name, top), shop)
    if wood is None:
        return None
    if name == n.top_movement_radial.address:
        return wood.movement("radial")
    return wood.modulus if name == n.top_brace_modulus.address else wood.modulus_across("radial")
