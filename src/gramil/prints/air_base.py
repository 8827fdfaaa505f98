"""What the shop's readings put into the graph: the air where gluing is done and the pieces, at the last reading.

Moisture histories are slow to compute and depend on time, so they are worked out here, outside the graph, and enter it
as base values. The moment is that of the last reading, not the clock's, so that equal files give equal findings.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING, Any

from gramil import names as n
from gramil.air.air_of_places import PlaceAir, Places, air_at, places_of
from gramil.description.reading import ShopDescription
from gramil.description.wood.air_values import WoodState, unknown_air
from gramil.graph import Origin

if TYPE_CHECKING:
    from gramil.air.pieces_now import PieceNow


@dataclass(frozen=True)
class AirBase:
    """Base values and where they came from."""

    values: Mapping[str, Any]
    origins: Mapping[str, Origin]


def air_base(shop: ShopDescription, places: Places | None = None) -> AirBase:
    """The values of the air and the pieces; *not known, because ...* if a file cannot be read.

    `places` are the readings, if they are not in the description's own files.
    """
    places = places_of(shop) if places is None else places
    place = places.known.get(places.gluing)
    values = unknown_air(_because(places)) if place is None else _values(shop, places, place)
    told = (
        f"readings of the {places.gluing} to {values[n.air_read_at.address]}"
        if values[n.air_known.address]
        else "no readings"
    )
    return AirBase(values, dict.fromkeys(values, Origin(f"{shop.file}: {told}")))


def _because(places: Places) -> str:
    about = [str(fault) for fault in places.faults if fault.where == f"place {places.gluing}"]
    return "because of the readings: " + (about or [str(fault) for fault in places.faults] or ["there are none"])[0]


def _values(shop: ShopDescription, places: Places, place: PlaceAir) -> dict[str, Any]:
    from gramil.air.pieces_now import pieces_now  # not needed where nothing was read, and slow to load
    from gramil.air.readiness import gluing_band

    now = place.last
    air, pieces, band = air_at(place, now), pieces_now(shop, places, now), gluing_band(shop.shop, places, now)
    return {
        n.air_known.address: True,
        n.air_unknown_because.address: "",
        n.air_place.address: place.name,
        n.air_read_at.address: f"{now:%Y-%m-%d %H:%M}",
        n.air_temperature.address: air.temperature,
        n.air_humidity.address: air.humidity,
        n.air_pieces.address: tuple(_state(piece, places, now, band) for piece in pieces.known),
        n.air_pieces_unknown.address: tuple(f"{each.row.name}: {each.why}" for each in pieces.unknown),
    }


def _state(piece: "PieceNow", places: Places, now: datetime, band: tuple[float, float]) -> WoodState:
    row, mean = piece.row, piece.state.mean
    told = _piece_in_words(piece, places, now, band)
    return WoodState(
        row.name, row.wood, row.part, row.instrument or "", piece.place, mean.least, mean.likely, mean.most, told
    )


def _piece_in_words(piece: "PieceNow", places: Places, now: datetime, band: tuple[float, float]) -> str:
    """What makes it ready, in a sentence."""
    from gramil.air.readiness import readiness, when

    found = readiness(piece, places, now, band)
    if found.settled:
        return ""
    if found.best is None:
        return "No place of the shop makes it ready: change the air of one."
    where = "Leave it where it is" if found.best.place == piece.place else f"Lay it in the {found.best.place}"
    return f"{where}: ready {when(found.best.ready, now)}."
