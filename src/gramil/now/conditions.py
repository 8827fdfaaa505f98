"""The shop's conditions at a moment, from its description and the readings of its places: air, bands, jigs, pieces."""

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import replace
from datetime import datetime, timedelta
from itertools import pairwise

from gramil.air.air_bands import Band, Limits, band_limits
from gramil.air.air_of_places import PlaceAir, Places, air_ahead, air_at, is_old, last_days
from gramil.air.air_view import HOURS_HELD, view
from gramil.air.outlooks import KeptOutlook, Spell
from gramil.air.pieces_now import PieceNow, Pieces
from gramil.air.readiness import Readiness, readiness, settled, when
from gramil.description.shop.tables import Shop
from gramil.now.air_now import PlaceNow
from gramil.now.chances import Record
from gramil.now.open_now import Conditions, WoodNow
from gramil.now.outlook import Outlook, joined
from gramil.now.trust import learnt, still_said
from gramil.physics.humid_air import Room, humidity_moved
from gramil.wood.moisture import moisture_band

NIGHT = 12.0
"""For how many hours a machine runs before a day on which work counts on it."""


def conditions(
    shop: Shop,
    places: Places,
    now: datetime,
    bands: Mapping[str, Band],
    said: Mapping[str, Sequence[Spell]] | None = None,
) -> Conditions:
    """The shop at a moment; `said` is an outlook by place, which precedes what the description expects.

    There is one of each jig, unless the shop lists several `for` that operation.
    """
    said = said or {}
    limits = {name: band_limits(band, shop) for name, band in bands.items()}
    known = {
        name: place_now(place, now, places.outlook_days, said.get(name, ())) for name, place in places.known.items()
    }
    for name in {places.gluing, places.finishing} & set(known):
        opening = {band: _opening(places.known[name], places, now, each) for band, each in limits.items()}
        known[name] = replace(known[name], opening=opening)
    jigs = Counter(jig.purpose for jig in shop.jig)
    own = shop.shop
    return Conditions(now, limits, known, places.gluing, jigs, own.temperature, places.finishing, own.paper_of_sheets)


def _opening(place: PlaceAir, places: Places, now: datetime, limits: Limits) -> str:
    """How much water would bring a place's air into the middle of a band, and hold it there for a day.

    Empty where the air is in the band, or where the room and its changes of air are not known.
    """
    seen = view(place, places, now, limits.humidity, sum(limits.humidity) / 2.0)
    if seen.water is None:
        return ""
    least, most = sorted((abs(seen.water.least), abs(seen.water.most)))
    verb = "put into" if seen.water.most > 0 else "taken out of"
    told = f"{least:.0f} to {most:.0f} g of water {verb} its air would bring and hold it there for {HOURS_HELD:.0f} h"
    machine, rate = _machine(place, seen.water.most > 0)
    if not rate:
        return told
    if least > rate * HOURS_HELD:
        return f"{told}: more than its {machine} moves in that time"
    return f"{told}: {least / rate:.0f} to {most / rate:.0f} h of its {machine}"


def _machine(place: PlaceAir, damper: bool) -> tuple[str, float]:
    """What makes a place's air damper, or drier, and how many grams of water an hour; 0 if it has none."""
    humidifier, dryer = place.machines
    return ("humidifier", humidifier) if damper else ("dryer", dryer)


def place_now(place: PlaceAir, now: datetime, days: float, said: Sequence[Spell]) -> PlaceNow:
    """A place's air as last read, and what is ahead of it.

    An outlook that is `said` now precedes those that are kept. If nobody gave one that still counts, the air is taken
    to stay as read until tomorrow, and then to be the mean of recent days.
    """
    air, day = air_at(place, now), last_days(place, now, 1.0)
    read_at = min(place.last, now)
    return PlaceNow(
        place.name,
        read_at,
        air.temperature,
        air.humidity,
        (float(day.humidity.min()), float(day.humidity.max())),
        _outlook(place, now, days, said),
        is_old(place, now),
        Record(place.history, now),
        machines=_machines_move(place, air.temperature),
    )


def _machines_move(place: PlaceAir, temperature: float) -> tuple[float, float]:
    """By how much (%) a place's humidifier, and its dryer, move its air in a night; 0 if the room is not known."""
    if place.room is None or place.air_changes is None:
        return 0.0, 0.0
    room = Room(place.room, place.air_changes)
    damper, drier = (humidity_moved(rate, temperature, room, NIGHT) for rate in place.machines)
    return damper, drier


def _outlook(place: PlaceAir, now: datetime, days: float, said: Sequence[Spell]) -> Outlook:
    air = air_at(place, now)
    current = Spell(now, air.temperature, air.humidity)
    if said and not any(each.said for each in said):
        return Outlook(tuple(joined(current, said)))
    tomorrow = (now + timedelta(days=1)).replace(hour=0, minute=0, second=0, microsecond=0)
    later = air_ahead(place, now, days)
    expected = Spell(tomorrow, later.temperature, later.humidity)
    given = (KeptOutlook(now, "", tuple(said)),) if said else place.kept
    spells, until = still_said(given, now, expected)
    if spells:
        return Outlook(tuple(joined(current, spells)), True, learnt(place.kept, place.history, now), until)
    return Outlook((current, expected), place.outlook is not None)


def pieces_of(name: str, pieces: Pieces) -> Mapping[str, tuple[PieceNow, ...]]:
    """An instrument's pieces by part: those kept for it or, if there are none, those kept for nobody."""
    found: dict[str, tuple[PieceNow, ...]] = {}
    for part in {piece.row.part for piece in pieces.known}:
        rows = [piece for piece in pieces.known if piece.row.part == part]
        own = tuple(piece for piece in rows if piece.row.instrument == name)
        free = tuple(piece for piece in rows if piece.row.instrument is None)
        if kept := own or free:
            found[part] = kept
    return found


def wood_now(piece: PieceNow, places: Places, now: datetime, band: tuple[float, float]) -> WoodNow:
    """A piece against the band of moisture (%), and when some place of the shop makes it ready."""
    if settled(piece.state, band):
        return WoodNow(piece.row.name, True)
    mean = piece.state.mean
    has = f"It has {mean.least:.1f} to {mean.most:.1f} % of moisture, and wants {band[0]:.1f} to {band[1]:.1f} %."
    likely, told = _ready(readiness(piece, places, now, band), now)
    return WoodNow(piece.row.name, False, likely, f"{has} {told}")


def _ready(found: Readiness, now: datetime) -> tuple[datetime | None, str]:
    if found.best is None:
        return None, "No place of the shop makes it ready: change the air of one."
    if found.best is found.here:
        return found.best.ready.dates(now)[1], f"Where it lies it is ready {when(found.best.ready, now)}."
    return found.best.ready.dates(now)[1], f"In the {found.best.place} it is ready {when(found.best.ready, now)}."


def gluing_moisture(limits: Limits, places: Places, now: datetime) -> tuple[float, float]:
    """The moistures (%) that a band of air leads to, at the temperature where gluing is done; 20 C if not known."""
    place = places.known.get(places.gluing)
    return moisture_band(air_at(place, now).temperature if place else 20.0, limits.humidity)


def curve(place: PlaceAir, now: datetime, columns: int = 24) -> str:
    """The day's humidity as a row of bars in eight heights; a blank where nothing was read."""
    day = last_days(place, now, 1.0)
    edges = [now - timedelta(hours=24 * (columns - step) / columns) for step in range(columns + 1)]
    seconds = [day.seconds(edge) for edge in edges]
    heights = []
    for start, end in pairwise(seconds):
        inside = day.humidity[(day.times > start) & (day.times <= end)]
        heights.append(_height(float(inside.mean())) if inside.size else " ")
    return "".join(heights)


def _height(humidity: float) -> str:
    """One of eight heights, from 20 to 80 %."""
    return "▁▂▃▄▅▆▇█"[max(0, min(7, int((humidity - 20.0) / 60.0 * 8.0)))]
