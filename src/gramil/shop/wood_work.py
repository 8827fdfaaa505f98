"""Which work on an instrument the wood and the air allow now, what rules out the rest, and until when.

The order of work, jigs and cures are not considered here; `gramil now` considers them.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime

from gramil.air.air_bands import Limits
from gramil.air.air_of_places import Places, air_at
from gramil.air.pieces_now import PieceNow, Pieces
from gramil.air.readiness import InPlace, Readiness, readiness
from gramil.decimals import fixed
from gramil.measure import TemperatureUnit, in_degrees
from gramil.shop.operations import Operation


@dataclass(frozen=True)
class Closed:
    """One reason why an operation must wait, what would change that, and which piece is to blame (empty: the air)."""

    why: str
    remedy: str
    piece: str = ""


@dataclass(frozen=True)
class WorkNow:
    """An operation at a moment: what makes it wait, and what is not known of its wood; with neither, it is open.

    opens: of the places where its pieces get ready, the one that is last, if every piece has one.
    """

    operation: Operation
    closed: tuple[Closed, ...]
    unknown: tuple[Closed, ...]
    opens: InPlace | None


@dataclass(frozen=True)
class WoodAndAir:
    """The shop at a moment: its places, its pieces, bands of air as figures by name, the moistures for gluing (%)."""

    places: Places
    pieces: Pieces
    bands: Mapping[str, Limits]
    moisture: tuple[float, float]
    now: datetime
    degrees: TemperatureUnit = "C"


def pieces_for(instrument: str, pieces: Pieces) -> tuple[PieceNow, ...]:
    """The pieces that are kept for an instrument, and those that are kept for none in particular."""
    return tuple(each for each in pieces.known if each.row.instrument in (None, instrument))


def work_now(instrument: str, operations: Iterable[Operation], shop: WoodAndAir) -> tuple[WorkNow, ...]:
    """Those of an instrument's operations that need settled wood or a band of air, as they stand at the shop's
    moment.
    """
    pieces = pieces_for(instrument, shop.pieces)
    found = {each.row.name: readiness(each, shop.places, shop.now, shop.moisture) for each in pieces}
    return tuple(_judged(each, instrument, found, shop) for each in operations if each.wood or each.air)


def _judged(operation: Operation, instrument: str, found: Mapping[str, Readiness], shop: WoodAndAir) -> WorkNow:
    needed = {part: _of_part(part, instrument, found) for part in operation.wood}
    waits = [each for part in needed.values() for each in part if not each.settled]
    closed = [_not_settled(each) for each in waits]
    closed += _air(shop.bands[operation.air], shop) if operation.air else ()
    unknown = [_missing(part, instrument, shop.pieces) for part, rows in needed.items() if not rows]
    places = [each.best for each in waits if each.best is not None]
    last = max(places, key=_wait) if places and len(places) == len(waits) else None
    return WorkNow(operation, tuple(closed), tuple(unknown), last)


def _wait(place: InPlace) -> float:
    return place.ready.likely or 0.0


def _of_part(part: str, instrument: str, found: Mapping[str, Readiness]) -> list[Readiness]:
    """The pieces of a part: those kept for the instrument, or else those kept for none in particular."""
    every = [each for each in found.values() if each.piece.row.part == part]
    own = [each for each in every if each.piece.row.instrument == instrument]
    return own or every


def _missing(part: str, instrument: str, pieces: Pieces) -> Closed:
    unknown = next((each for each in pieces.unknown if each.row.part == part), None)
    if unknown is not None:
        return Closed(
            f"the moisture of {unknown.row.name} is not known: {unknown.why}", "say where it lay, or weigh it"
        )
    return Closed(
        f"no piece for the {part} of {instrument} is listed", "list it as a [[piece]] of the shop, with where it lay"
    )


def _not_settled(found: Readiness) -> Closed:
    piece, mean = found.piece, found.piece.state.mean
    low, high = found.band
    side = "too dry" if mean.likely < low else "too damp" if mean.likely > high else "not settled for sure"
    figures = f"{mean.likely:.1f} % ({mean.least:.1f} to {mean.most:.1f}), wanted {low:.1f} to {high:.1f}"
    best = found.best
    if best is None:
        remedy = "no place of the shop brings it there: change the air of one"
    else:
        remedy = f"leave it in the {best.place}" if best.place == piece.place else f"lay it in the {best.place}"
    return Closed(f"{piece.row.name} is {side}: {figures}", remedy, piece.row.name)


def _air(band: Limits, shop: WoodAndAir) -> Iterator[Closed]:
    place = shop.places.known.get(shop.places.gluing)
    if place is None:
        yield Closed("the air where gluing is done is not known", "read the meter there, and write it down")
        return
    air, unit = air_at(place, shop.now), shop.degrees
    warmth, (cold, warm) = in_degrees(air.temperature, unit), (in_degrees(each, unit) for each in band.temperature)
    ends = (
        (air.humidity, band.humidity, "%", ("dry", "put water into the air"), ("damp", "dry the air")),
        (warmth, (cold, warm), f"°{unit}", ("cold", "warm the room"), ("warm", "cool the room")),
    )
    for value, (least, most), symbol, below, above in ends:
        if not least <= value <= most:
            word, remedy = below if value < least else above
            told = f"the air of the {place.name} is too {word}, {fixed(value, 0)} {symbol}"
            wanted = f"{band.what} it must be {fixed(least, 0)} to {fixed(most, 0)} {symbol}"
            yield Closed(f"{told}; {wanted}", f"{remedy}, or work where it is right")
