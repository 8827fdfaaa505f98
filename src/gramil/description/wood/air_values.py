"""Base values of wood and air: how the board's wood moves, the air where gluing is done, and the pieces' moisture.

How a wood moves is in the package's data, or in the shop's own. Air and moisture come from readings over time, worked
out elsewhere; here they are *not known*, and whoever has the readings replaces them.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Any

from gramil import names as n
from gramil.description.normal_row import Values, by_name
from gramil.description.shop.tables import Shop
from gramil.description.wood.own_woods import wood_of
from gramil.graph import Input, Origin
from gramil.quantities import Celsius, Percent, Unit
from gramil.reference import Ref
from gramil.sources import cited
from gramil.wood.species import Direction, Species

PerPercent = Annotated[float, Unit("1/%")]
NO_READINGS = "because the shop has no air readings"


@dataclass(frozen=True)
class WoodState:
    """A piece's mean moisture at the moment of the last readings, as a range; `when` says when it will be ready."""

    name: str
    wood: str
    part: str
    instrument: str
    place: str
    moisture_least: Percent
    moisture_likely: Percent
    moisture_most: Percent
    when: str


AIR_INPUTS: Mapping[str, Input] = by_name(
    {
        n.air_known: Input(bool, "whether there are readings of the air where gluing is done"),
        n.air_unknown_because: Input(str, "why the air is not known, or empty"),
        n.air_place: Input(str, "name of the place where gluing is done"),
        n.air_read_at: Input(str, "when that air was last read"),
        n.air_temperature: Input(Celsius, "temperature where gluing is done"),
        n.air_humidity: Input(Percent, "relative humidity where gluing is done"),
        n.air_pieces: Input(tuple[WoodState, ...], "the pieces whose moisture is known"),
        n.air_pieces_unknown: Input(tuple[str, ...], "the pieces whose moisture is not known, and why"),
    }
)
"""What readings settle."""

MOVEMENT_INPUTS: Mapping[str, Input] = by_name(
    {
        n.board_movement_radial: Input(PerPercent, "radial movement of the board's wood for each 1 % of moisture"),
        n.board_movement_tangential: Input(
            PerPercent, "tangential movement of the board's wood for each 1 % of moisture"
        ),
    }
)
"""What the board's wood settles."""


WAYS: Mapping[Ref[float], Direction] = {
    n.board_movement_radial: "radial",
    n.board_movement_tangential: "tangential",
}
"""Which way of the wood each of them is of."""


def unknown_air(because: str = NO_READINGS) -> dict[str, Any]:
    """The values of `AIR_INPUTS` where no readings are at hand."""
    values: Values = {
        n.air_known: False,
        n.air_unknown_because: because,
        n.air_place: "",
        n.air_read_at: "",
        n.air_temperature: math.nan,
        n.air_humidity: math.nan,
        n.air_pieces: (),
        n.air_pieces_unknown: (),
    }
    return by_name(values)


def movement_values(board_wood: str, shop: Shop) -> dict[str, float]:
    """How the board's wood moves; nan if the wood is not known or no source says."""
    wood = wood_of(board_wood, shop)
    return by_name({figure: _movement(wood, way) for figure, way in WAYS.items()})


def movement_origin(name: str, board_wood: str, shop: Shop) -> Origin:
    """Where a coefficient of movement comes from."""
    wood = wood_of(board_wood, shop)
    way = WAYS[Ref(name)]
    figure = wood.movement(way) if wood else None
    if figure is None:
        return Origin(f"no source gives it for {board_wood}" if wood else f"{board_wood} is not a known wood")
    return Origin(f"{board_wood}: {cited(figure.source)} ({figure.flag}{f'; {figure.note}' if figure.note else ''})")


def _movement(wood: Species | None, way: Any) -> float:
    figure = wood.movement(way) if wood else None
    return math.nan if figure is None else figure.value
