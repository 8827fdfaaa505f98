"""Where a piece has lain and in what air: the moisture that its faces tended to, from then to now."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime

import numpy as np

from gramil.faults import Fault, MakersFault
from gramil.physics.arrays import FloatArray
from gramil.wood.air import AirHistory

_MOVING = 1e-3  # seconds that a piece takes from one place to another, so that times always rise


@dataclass(frozen=True)
class Stay:
    """A piece lay in a place's air from one moment to another."""

    air: AirHistory
    begins: datetime
    ends: datetime


@dataclass(frozen=True)
class Kept:
    """What is known of a piece's past: stays one after another, and its moisture (%, even) when the first began.

    Without a moisture it is assumed to have settled in the air of the first place on its first day.
    Raises MakersFault for stays that end before they begin, overlap, or leave a gap between them.
    """

    stays: tuple[Stay, ...]
    moisture: float | None = None

    def __post_init__(self) -> None:
        faults = [] if self.stays else [Fault(what="a piece has lain nowhere", remedy="say where it has been kept")]
        for stay in self.stays:
            if stay.ends <= stay.begins:
                faults.append(Fault(where=f"{stay.begins:%Y-%m-%d %H:%M}", what="a stay ends before it begins"))
        for stay, later in zip(self.stays, self.stays[1:], strict=False):
            if later.begins != stay.ends:
                what = f"one stay ends {stay.ends:%Y-%m-%d %H:%M} and the next begins {later.begins:%Y-%m-%d %H:%M}"
                faults.append(Fault(what=what, remedy="let each stay begin when the one before it ends"))
        if faults:
            raise MakersFault(faults)

    @property
    def begins(self) -> datetime:
        """When what is known begins."""
        return self.stays[0].begins

    def start(self) -> float:
        """Moisture (%) at the beginning: as given, or the mean that the first day's air leads to."""
        if self.moisture is not None:
            return self.moisture
        times, moisture = _drawn_by(self.stays[0])
        first_day = times <= times[0] + 86400.0  # a whole day: a reading alone goes by the hour at which it was taken
        return float(moisture[first_day].mean())


def drawn_to(kept: Kept, origin: datetime) -> tuple[FloatArray, FloatArray]:
    """Seconds since an origin, rising, and the moisture content (%) that the piece's faces tended to then."""
    parts = [_drawn_by(stay) for stay in kept.stays]
    shifts = [(stay.begins - origin).total_seconds() for stay in kept.stays]
    starts = [_MOVING if row else 0.0 for row in range(len(parts))]
    times = [np.concatenate([[when[0] + late], when[1:]]) + shift
             for (when, _), shift, late in zip(parts, shifts, starts, strict=True)]  # fmt: skip
    return np.concatenate(times), np.concatenate([moisture for _, moisture in parts])


def days_without_readings(kept: Kept) -> float:
    """Days of the stays before the first or after the last reading of their place: for these the nearest reading is
    used.
    """
    seconds = 0.0
    for stay in kept.stays:
        first, last = stay.air.moment(stay.air.times[0]), stay.air.moment(stay.air.times[-1])
        within = (min(stay.ends, last) - max(stay.begins, first)).total_seconds()
        seconds += (stay.ends - stay.begins).total_seconds() - max(0.0, within)
    return seconds / 86400.0


def common_times(courses: Sequence[tuple[FloatArray, FloatArray]], until: float) -> FloatArray:
    """All moments (s) at which any of the pieces' air was read, to `until`, which is one of them.

    The moment before each piece's own beginning is among them, so that nothing is drawn before it.
    """
    distinct: list[FloatArray] = []
    for times, _ in courses:
        if not any(np.array_equal(times, other) for other in distinct):
            distinct.append(times)
    befores = [times[:1] - _MOVING for times in distinct]
    every = np.unique(np.concatenate([*distinct, *befores, [0.0, until]]))
    return every[(every >= 0.0) & (every <= until)]


def _drawn_by(stay: Stay) -> tuple[FloatArray, FloatArray]:
    """Seconds since the stay began and the moisture that its air draws to; the ends put in by straight lines."""
    length = (stay.ends - stay.begins).total_seconds()
    offset = stay.air.seconds(stay.begins)
    times = stay.air.times - offset
    inside = times[(times > _MOVING) & (times < length)]
    own = np.concatenate([[0.0], inside, [length]])
    return own, np.interp(own, times, stay.air.moisture)
