"""Which work on an instrument the wood and the air allow now, what closes the rest, and when it will open."""

import tomllib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import cache
from importlib.resources import files

from gramil.shop.air_of_places import Places, air_at
from gramil.shop.air_view import side_of
from gramil.shop.pieces_now import PieceNow, Pieces
from gramil.shop.readiness import InPlace, Readiness, readiness


@dataclass(frozen=True)
class Work:
    """An operation: what it is, the parts that must have settled, and hours of air in the band (0: any air will do)."""

    key: str
    what: str
    parts: tuple[str, ...]
    hours: float


@dataclass(frozen=True)
class Closed:
    """One reason that closes an operation, what would open it, and which piece (empty: the air, or a missing piece)."""

    why: str
    remedy: str
    piece: str = ""


@dataclass(frozen=True)
class WorkNow:
    """An operation at a moment: the pieces that it needs, and what closes it; nothing, and it is open.

    opens is the piece's place that opens it last, where every piece has one.
    """

    work: Work
    pieces: tuple[Readiness, ...]
    closed: tuple[Closed, ...]
    opens: InPlace | None


@cache
def wood_work() -> tuple[Work, ...]:
    """Every operation of the bundled file, in order."""
    rows = tomllib.loads((files("gramil") / "data" / "wood-work.toml").read_text(encoding="utf-8"))
    return tuple(Work(key, row["what"], tuple(row["parts"]), float(row["hours"])) for key, row in rows.items())


def pieces_for(instrument: str, pieces: Pieces) -> tuple[PieceNow, ...]:
    """The pieces that are kept for an instrument, and those that are kept for none in particular."""
    return tuple(each for each in pieces.known if each.row.instrument in (None, instrument))


def work_now(
    instrument: str,
    pieces: Pieces,
    places: Places,
    now: datetime,
    bands: tuple[tuple[float, float], tuple[float, float]],
) -> tuple[WorkNow, ...]:
    """Every operation of an instrument at a moment; bands: relative humidity (%) for gluing, and moisture (%)."""
    humidity, moisture = bands
    found = {each.row.name: readiness(each, places, now, moisture) for each in pieces_for(instrument, pieces)}
    air = _air(places, now, humidity)
    return tuple(_judged(work, instrument, pieces, found, air) for work in wood_work())


def _judged(
    work: Work, instrument: str, pieces: Pieces, found: Mapping[str, Readiness], air: Sequence[Closed]
) -> WorkNow:
    needed = [_of_part(part, instrument, found) for part in work.parts]
    ready = tuple(each for part in needed for each in part)
    closed = [_missing(part, instrument, pieces) for part, row in zip(work.parts, needed, strict=True) if not row]
    closed += [_not_settled(each) for each in ready if not each.settled]
    closed += air if work.hours else ()
    waits = [each.best for each in ready if not each.settled]
    known = [each for each in waits if each is not None]
    last = max(known, key=lambda each: each.ready.likely or 0.0) if known and len(known) == len(waits) else None
    return WorkNow(work, ready, tuple(closed), last)


def _of_part(part: str, instrument: str, found: Mapping[str, Readiness]) -> list[Readiness]:
    """The pieces of a part: those kept for the instrument, or else those kept for none."""
    every = [each for each in found.values() if each.piece.row.part == part]
    own = [each for each in every if each.piece.row.instrument == instrument]
    return own or every


def _missing(part: str, instrument: str, pieces: Pieces) -> Closed:
    unknown = next((each for each in pieces.unknown if each.row.part == part), None)
    if unknown is not None:
        return Closed(
            f"the moisture of {unknown.row.name} is not known: {unknown.why}", "say where it lay, or weigh it"
        )
    return Closed(f"no {part} for {instrument} is listed", "list it as a [[piece]] of the shop, with where it lay")


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


def _air(places: Places, now: datetime, band: tuple[float, float]) -> tuple[Closed, ...]:
    place = places.known.get(places.gluing)
    if place is None:
        return (Closed("the air where gluing is done is not known", "read it: `gramil air log`"),)
    humidity = air_at(place, now).humidity
    side = side_of(humidity, band)
    if side == "in the band":
        return ()
    remedy = "put water into the air" if side == "too dry" else "dry the air"
    why = f"the air of the {place.name} is {side}: {humidity:.0f} %, wanted {band[0]:.0f} to {band[1]:.0f}"
    return (Closed(why, remedy + ", or glue where it is right"),)
