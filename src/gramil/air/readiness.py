"""When a piece will be ready: in the air of each place, from now on, within the range in which its pace is known."""

from dataclasses import dataclass
from datetime import datetime, timedelta

from gramil.air.air_bands import limits_of
from gramil.air.air_of_places import Places, air_ahead, air_at
from gramil.air.pieces_now import PieceNow
from gramil.description.shop.tables import Shop
from gramil.wood.air import Air
from gramil.wood.moisture import MoistureNow, Ready, moisture_band, ready

HORIZON = 366 * 86400.0
"""Seconds that are looked ahead."""


@dataclass(frozen=True)
class InPlace:
    """A piece left in a place from now on: the air that the place is taken to have, and when the piece is ready
    there.
    """

    place: str
    air: Air
    ready: Ready


@dataclass(frozen=True)
class Readiness:
    """A piece against the band (% moisture): whether it is surely in it now, and what each place would do.

    Places are in the order in which they make it ready, the one where it lies first among equals.
    """

    piece: PieceNow
    band: tuple[float, float]
    settled: bool
    places: tuple[InPlace, ...]

    @property
    def here(self) -> InPlace | None:
        """The place where it lies."""
        return next((each for each in self.places if each.place == self.piece.place), None)

    @property
    def best(self) -> InPlace | None:
        """The place that makes it ready soonest, or None where none does."""
        return next((each for each in self.places if each.ready.likely is not None), None)


def gluing_humidity(shop: Shop) -> tuple[float, float]:
    """Least and most relative humidity (%) for gluing."""
    limits = limits_of(shop)
    return limits["gluing_humidity_least"], limits["gluing_humidity_most"]


def gluing_band(shop: Shop, places: Places, now: datetime) -> tuple[float, float]:
    """The moistures (%) that the band for gluing leads to, at the temperature where gluing is done."""
    place = places.known.get(places.gluing)
    warmth = air_at(place, now).temperature if place else limits_of(shop)["owner_temperature"]
    return moisture_band(warmth, gluing_humidity(shop))


def readiness(piece: PieceNow, places: Places, now: datetime, band: tuple[float, float]) -> Readiness:
    """A piece against a band of moisture, in every place from now on."""
    state = piece.state
    found = [
        InPlace(place.name, air, ready(state, air, band, HORIZON))
        for place in places.known.values()
        for air in (air_ahead(place, now, places.outlook_days),)
    ]
    found.sort(key=lambda each: (_wait(each), each.place != piece.place))
    return Readiness(piece, band, settled(state, band), tuple(found))


def settled(state: MoistureNow, band: tuple[float, float]) -> bool:
    """Whether mean, centre and faces all lie in the band, at every pace in the range."""
    figures = (state.mean, state.centre, *state.faces)
    return all(band[0] <= each.least and each.most <= band[1] for each in figures)


def _wait(each: InPlace) -> float:
    return HORIZON * 2 if each.ready.likely is None else each.ready.likely


def when(wait: Ready, now: datetime) -> str:
    """The range of days on which it will be ready, with the likely one: "2 to 9 December, likely 4 December"."""
    early, likely, late = wait.dates(now)
    if likely is None or early is None:
        return "not within a year"
    if late is None:
        return f"{day(early, now)} or later, likely {day(likely, now)}"
    if early == now:
        return f"perhaps already, likely {day(likely, now)}, by {day(late, now)} at the latest"
    if late - now < timedelta(hours=36):  # told in days it would be today or tomorrow
        return f"in {_hours(wait.earliest)} to {_hours(wait.latest)} hours, likely {_hours(wait.likely)}"
    return f"{day(early, now)} to {day(late, now)}, likely {day(likely, now)}"


def day(moment: datetime, now: datetime) -> str:
    """A day in words: with its year if it is not this one, with the hour if it is today."""
    if moment.date() == now.date():
        return f"today {moment:%H}:00"
    return f"{moment.day} {moment:%B}" + (f" {moment.year}" if moment.year != now.year else "")


def _hours(seconds: float | None) -> str:
    return f"{(seconds or 0.0) / 3600.0:.0f}"
