"""Air and moisture as answers: how places stand, what gluing now would cost, which work wood and air allow."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime

from gramil.air.air_view import PlaceView
from gramil.air.if_glued import Answer, Case
from gramil.air.pieces_now import Pieces
from gramil.air.readiness import Readiness
from gramil.shop.wood_work import Closed, WorkNow
from gramil.wood.moisture import Range


@dataclass(frozen=True)
class PlaceAir:
    """A place: its air (%, C), dew point (C), grams of water in a cubic metre, the moisture (%) that wood left
    there comes to, its last day, and on which side of the band for gluing it is. `stale` if read too long ago to
    go by.
    """

    name: str
    glued_here: bool
    humidity: float
    temperature: float
    dew_point: float
    water: float
    moisture: float
    hours_since_read: float
    stale: bool
    day_least: float
    day_most: float
    day_in_band: float
    longest_in_band: float
    side: str


@dataclass(frozen=True)
class AirShow:
    """The air of each place at a moment, and the band for gluing: least and most relative humidity, and the aim."""

    at: datetime
    band: tuple[float, float]
    aim: float
    places: tuple[PlaceAir, ...]


@dataclass(frozen=True)
class IfGlued:
    """What comes of gluing now: each air met later with what happens there, the answer, why, and what to do first."""

    case: Case
    answer: Answer
    why: str
    first: str


@dataclass(frozen=True)
class WorkAnswer:
    """An operation that needs wood or air: open, closed, or not judged, for these reasons; `ready` is when its
    wood is.
    """

    operation: str
    what: str
    state: str
    reasons: tuple[Closed, ...]
    ready: datetime | None


@dataclass(frozen=True)
class PieceAnswer:
    """A piece: where it lies, its moisture (%) on the whole, in its middle and at both faces, whether it has
    settled, and where and when it is ready soonest.
    """

    name: str
    wood: str
    place: str
    moisture: Range
    middle: Range
    faces: tuple[Range, Range]
    settled: bool
    best_place: str
    ready: datetime | None


@dataclass(frozen=True)
class NotKnown:
    """A piece whose moisture is not known, and why."""

    name: str
    wood: str
    why: str


@dataclass(frozen=True)
class Ready:
    """Which work wood and air allow at a moment; the bands for gluing, of air (%) and of moisture (%); and the
    pieces.
    """

    at: datetime
    humidity: tuple[float, float]
    moisture: tuple[float, float]
    work: tuple[WorkAnswer, ...]
    pieces: tuple[PieceAnswer, ...]
    not_known: tuple[NotKnown, ...]


def air_answer(at: datetime, band: tuple[float, float], aim: float, found: Iterable[PlaceView], gluing: str) -> AirShow:
    """How the places stand."""
    return AirShow(at, band, aim, tuple(_place(each, gluing) for each in found))


def _place(each: PlaceView, gluing: str) -> PlaceAir:
    return PlaceAir(
        each.place.name,
        each.place.name == gluing,
        each.air.humidity,
        each.air.temperature,
        each.dew_point,
        each.density,
        each.moisture,
        each.hours,
        each.stale,
        each.day.humidity.least,
        each.day.humidity.most,
        each.day.share_in_band,
        each.day.longest_in_band,
        each.side,
    )


def ready_answer(
    at: datetime,
    humidity: tuple[float, float],
    moisture: tuple[float, float],
    work: Iterable[WorkNow],
    found: Sequence[Readiness],
    pieces: Pieces,
) -> Ready:
    """Which work wood and air allow, and the pieces."""
    unknown = (NotKnown(each.row.name, each.row.wood, each.why) for each in pieces.unknown)
    return Ready(
        at,
        humidity,
        moisture,
        tuple(_work(each, at) for each in work),
        tuple(_piece(each, at) for each in found),
        tuple(unknown),
    )


def _work(each: WorkNow, at: datetime) -> WorkAnswer:
    state = "closed" if each.closed else "not judged" if each.unknown else "open"
    ready = each.opens.ready.dates(at)[1] if each.opens else None
    return WorkAnswer(each.operation.name, each.operation.what, state, (*each.closed, *each.unknown), ready)


def _piece(each: Readiness, at: datetime) -> PieceAnswer:
    state, row, best = each.piece.state, each.piece.row, each.best
    return PieceAnswer(
        row.name,
        row.wood,
        each.piece.place,
        state.mean,
        state.centre,
        state.faces,
        each.settled,
        best.place if best else "",
        best.ready.dates(at)[1] if best else None,
    )
