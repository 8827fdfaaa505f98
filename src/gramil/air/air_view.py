"""What a place's readings say now: the air, how much water it holds, the past day, and what would bring it into the
band.
"""

from dataclasses import dataclass
from datetime import datetime

from gramil.air.air_of_places import PlaceAir, Places, air_at, is_old, last_days
from gramil.physics.humid_air import Room, WaterRange, dew_point, humidity_brought_to, vapour_density, water_to_hold
from gramil.wood.air import Air, AirSummary, summarise

HOURS_HELD = 24.0
"""Hours that glue wants the air held: common practice, hide glue or PVA full strength."""


@dataclass(frozen=True)
class Elsewhere:
    """Air brought here from another place: which place, and its relative humidity (%) at this place's temperature."""

    place: str
    humidity: float


@dataclass(frozen=True)
class PlaceView:
    """A place at a moment: air, dew point C, water in the air g/m3, the moisture (%) that wood comes to in it.

    hours is the age of the last reading; day sums up the last 24 hours. water is what would bring it to the aim and
    hold it for HOURS_HELD (None if the room's volume or its changes of air are not known, or the air lies in the band).
    brought: other places' air in this one.
    """

    place: PlaceAir
    air: Air
    hours: float
    stale: bool
    dew_point: float
    density: float
    moisture: float
    day: AirSummary
    side: str
    water: WaterRange | None
    brought: tuple[Elsewhere, ...]


def views(places: Places, now: datetime, band: tuple[float, float], aim: float) -> tuple[PlaceView, ...]:
    """Every place with readings at a moment, against a band of relative humidity and its aim (%)."""
    return tuple(view(place, places, now, band, aim) for place in places.known.values())


def view(place: PlaceAir, places: Places, now: datetime, band: tuple[float, float], aim: float) -> PlaceView:
    """One place at a moment."""
    air, age = air_at(place, now), now - place.last
    side = side_of(air.humidity, band)
    brought = tuple(
        Elsewhere(other.name, float(humidity_brought_to(its.temperature, its.humidity, air.temperature)))
        for other in places.known.values()
        if other.name != place.name
        for its in (air_at(other, now),)
    )
    return PlaceView(
        place=place,
        air=air,
        hours=age.total_seconds() / 3600.0,
        stale=is_old(place, now),
        dew_point=float(dew_point(air.temperature, max(air.humidity, 0.1))),  # air without any water has no dew point
        density=float(vapour_density(air.temperature, air.humidity)),
        moisture=air.moisture,
        day=summarise(last_days(place, now, 1.0), band),
        side=side,
        water=None if side == "in the band" else _water(place, air, aim, _incoming(place, brought, air)),
        brought=brought,
    )


def side_of(humidity: float, band: tuple[float, float]) -> str:
    """ "too dry", "too damp" or "in the band"."""
    return "too dry" if humidity < band[0] else "too damp" if humidity > band[1] else "in the band"


def _incoming(place: PlaceAir, brought: tuple[Elsewhere, ...], air: Air) -> float | None:
    """Water (g/m3, at this temperature) in the air that leaks in, if the place it comes from has readings."""
    source = next((each for each in brought if each.place == place.air_from), None)
    return None if source is None else float(vapour_density(air.temperature, min(source.humidity, 100.0)))


def _water(place: PlaceAir, air: Air, aim: float, incoming: float | None) -> WaterRange | None:
    if place.room is None or place.air_changes is None:
        return None
    room = Room(place.room, place.air_changes)
    return water_to_hold(air.temperature, air.humidity, aim, room, HOURS_HELD, incoming)
