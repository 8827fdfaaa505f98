"""The moisture of pieces: now, from the air they have lain in; later, in constant air; and when they will be ready.

Moisture moves only through the thickness, at three paces between which the truth lies. Diffusion is assumed not to
change with moisture or temperature over the narrow range of a shop.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta

import numpy as np
from numpy.typing import ArrayLike

from gramil.physics.arrays import FloatArray, floats
from gramil.physics.diffusion import Course, course, modes_of
from gramil.physics.diffusion_end import in_held_air, profile_at_end
from gramil.wood.air import Air
from gramil.wood.equilibrium import equilibrium_moisture
from gramil.wood.piece import PACES, Pace, Piece, assumptions_of, sheet_of
from gramil.wood.stays import Kept, common_times, days_without_readings, drawn_to

_LOOKS = 600  # moments at which a forecast is computed: 2 % apart, from a minute to a year


@dataclass(frozen=True)
class Range:
    """Least, likely and most."""

    least: float
    likely: float
    most: float


@dataclass(frozen=True)
class MoistureNow:
    """Moisture content (%) of a piece at a moment: mean, centre and both faces as ranges over the paces.

    profiles has, for each pace, the moisture through the thickness, from which a forecast continues.
    """

    piece: Piece
    moment: datetime
    mean: Range
    centre: Range
    faces: tuple[Range, Range]
    profiles: Mapping[Pace, FloatArray]
    assumptions: tuple[str, ...]


@dataclass(frozen=True)
class Ready:
    """When a piece will have settled within a band: seconds from now, earliest, likely and latest.

    None if the air never brings it there within the time considered; `why` says so in words.
    """

    earliest: float | None
    likely: float | None
    latest: float | None
    settles_at: float
    why: str
    assumptions: tuple[str, ...]

    def dates(self, now: datetime) -> tuple[datetime | None, datetime | None, datetime | None]:
        """Earliest, likely and latest moment."""
        waits = (self.earliest, self.likely, self.latest)
        early, likely, late = (None if wait is None else now + timedelta(seconds=wait) for wait in waits)
        return early, likely, late


def follow(pieces: Sequence[Piece], kept: Sequence[Kept], until: datetime, pace: Pace = "likely") -> Course:
    """Moisture of each piece from the earliest beginning to `until`, at each reading of any of their places.

    A piece whose own past begins later stands still until then. Rows are those of `times_followed`.
    """
    origin = min(past.begins for past in kept)
    drawn = {id(past): drawn_to(past, origin) for past in kept}
    times = common_times(list(drawn.values()), (until - origin).total_seconds())
    starts = [_start(piece, past) for piece, past in zip(pieces, kept, strict=True)]
    air = np.empty((times.size, len(pieces)))
    for row, (piece, past, start) in enumerate(zip(pieces, kept, starts, strict=True)):
        when, moisture = drawn[id(past)]
        air[:, row] = np.where(times < when[0], start, np.interp(times, when, moisture) + piece.offset)
    return course([modes_of(sheet_of(piece, pace)) for piece in pieces], starts, times, air)


def times_followed(kept: Sequence[Kept], until: datetime) -> FloatArray:
    """Seconds since the earliest beginning at the rows of `follow`."""
    origin = min(past.begins for past in kept)
    return common_times([drawn_to(past, origin) for past in kept], (until - origin).total_seconds())


def moisture_now(pieces: Sequence[Piece], kept: Sequence[Kept], now: datetime) -> tuple[MoistureNow, ...]:
    """Moisture of each piece from the air it has lain in, as ranges over the three paces."""
    return tuple(_now(piece, past, now) for piece, past in zip(pieces, kept, strict=True))


def evenly(piece: Piece, moisture: float, now: datetime) -> MoistureNow:
    """A piece with the same moisture (%) throughout, by weighing or by a meter."""
    points = modes_of(sheet_of(piece, "likely")).stores.size
    same = Range(moisture, moisture, moisture)
    profiles = {pace: np.full(points, moisture) for pace in PACES}
    words = (*assumptions_of(piece), "even through the thickness")
    return MoistureNow(piece, now, same, same, (same, same), profiles, words)


def as_weighed(state: MoistureNow, moisture: float) -> MoistureNow:
    """The state with its mean as a weight gives it (%): the true figure; the shape through the thickness is kept.

    Each pace's profile is moved up or down as a whole.
    """
    modes = modes_of(sheet_of(state.piece, "likely"))
    stores = modes.stores / modes.stores.sum()
    profiles = {pace: state.profiles[pace] + moisture - float(stores @ state.profiles[pace]) for pace in PACES}
    words = (*state.assumptions, f"mean of {moisture:.1f} % by weight")
    return _state(state.piece, state.moment, profiles, words)


def carried_on(state: MoistureNow, kept: Kept, now: datetime) -> MoistureNow:
    """The state carried on through the air that the piece has lain in since."""
    profiles = _through_air(state.piece, kept, (state.moment, now), state.profiles)
    return _state(state.piece, now, profiles, state.assumptions)


def forecast(state: MoistureNow, air: Air, seconds: ArrayLike, pace: Pace = "likely") -> Course:
    """Moisture at these seconds from now (rising, from 0 on) in constant air."""
    looks = floats(seconds)
    drawn = np.full(looks.size, air.moisture + state.piece.offset)
    return course([modes_of(sheet_of(state.piece, pace))], [state.profiles[pace]], looks, drawn)


def moisture_band(temperature: float, humidities: tuple[float, float]) -> tuple[float, float]:
    """The moisture contents (%) between which wood settles at a temperature (C) within a band of humidity (%)."""
    low, high = equilibrium_moisture(temperature, sorted(humidities))
    return float(low), float(high)


def ready(state: MoistureNow, air: Air, band: tuple[float, float], horizon: float = 366 * 86400.0) -> Ready:
    """When mean, centre and faces will all keep within a band of moisture (%), in constant air.

    horizon: how far ahead to look, s. A range over the paces; None if the air itself leads out of the band.
    """
    settles_at = air.moisture + state.piece.offset
    if not band[0] < settles_at < band[1]:
        why = f"this air brings it to {settles_at:.1f} %, outside {band[0]:.1f} to {band[1]:.1f} %"
        return Ready(None, None, None, settles_at, why, state.assumptions)
    waits = [_wait(state, air, band, horizon, pace) for pace in PACES]
    known = [wait for wait in waits if wait is not None]
    latest = max(known) if len(known) == len(waits) else None
    why = "" if latest is not None else f"at the slow pace not within {horizon / 86400.0:.0f} days"
    return Ready(min(known, default=None), waits[1], latest, settles_at, why, state.assumptions)


def _wait(state: MoistureNow, air: Air, band: tuple[float, float], horizon: float, pace: Pace) -> float | None:
    """Seconds until the piece keeps within the band, at a pace; None if that is beyond the horizon."""
    looks = np.concatenate([[0.0], np.geomspace(60.0, horizon, _LOOKS)])
    modes = modes_of(sheet_of(state.piece, pace))
    figures = in_held_air(modes, state.profiles[pace], looks, air.moisture + state.piece.offset)
    outside = np.maximum(band[0] - figures, figures - band[1]).max(axis=1)
    out = np.flatnonzero(outside > 0)
    if out.size == 0:
        return 0.0
    last = int(out[-1])
    if last == looks.size - 1:
        return None
    share = outside[last] / (outside[last] - outside[last + 1])
    return float(looks[last] + share * (looks[last + 1] - looks[last]))


def _now(piece: Piece, past: Kept, now: datetime) -> MoistureNow:
    """One piece after its own past."""
    start = _start(piece, past)
    profiles = _through_air(piece, past, (past.begins, now), dict.fromkeys(PACES, start))
    return _state(piece, now, profiles, assumptions_of(piece) + _what_is_assumed(past))


def _through_air(
    piece: Piece, past: Kept, span: tuple[datetime, datetime], starts: Mapping[Pace, ArrayLike]
) -> dict[Pace, FloatArray]:
    """Profiles at the end of a span of a piece's past, at each pace, from those at its start."""
    begins, ends = span
    when, drawn = drawn_to(past, begins)
    until = max(0.0, (ends - begins).total_seconds())
    times = np.concatenate([[0.0], when[(when > 0.0) & (when < until)], [until]])
    air = np.interp(times, when, drawn) + piece.offset
    return {pace: profile_at_end(modes_of(sheet_of(piece, pace)), starts[pace], times, air) for pace in PACES}


def _state(piece: Piece, now: datetime, profiles: Mapping[Pace, FloatArray], words: tuple[str, ...]) -> MoistureNow:
    """A state from its profiles: mean, centre and faces, each as a range over the paces."""
    modes = modes_of(sheet_of(piece, "likely"))
    readers = np.vstack([modes.stores / modes.stores.sum(), modes.middle])
    figures = [[*(readers @ profiles[pace]).tolist(), *profiles[pace][[0, -1]].tolist()] for pace in PACES]
    mean, centre, first, last = (_range(*map(float, three)) for three in zip(*figures, strict=True))
    return MoistureNow(piece, now, mean, centre, (first, last), profiles, words)


def _start(piece: Piece, past: Kept) -> float:
    """Moisture (%) at the beginning; a piece that is taken to have settled keeps its own offset."""
    return past.start() + (piece.offset if past.moisture is None else 0.0)


def _range(slow: float, likely: float, fast: float) -> Range:
    return Range(min(slow, likely, fast), likely, max(slow, likely, fast))


def _what_is_assumed(past: Kept) -> tuple[str, ...]:
    words = () if past.moisture is not None else ("settled in its first place's air when its record begins",)
    days = days_without_readings(past)
    # less would be told as 0.0 days
    return (*words, f"{days:.1f} days without readings, the nearest held") if days > 0.05 else words
