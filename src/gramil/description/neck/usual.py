"""Base values of the carved neck and the head's outline that need more than their key."""

from gramil import names as n
from gramil.description.instrument import Instrument
from gramil.description.neck.head_outline import HeadCurve
from gramil.description.normal_row import Normal, Values

GAUGED = (1.0, 5.0, 9.0)
"""Frets at which a neck's back is usually gauged: common practice."""

CARVE_ROWS: tuple[Normal, ...] = (
    Normal(
        n.carve_station_frets,
        tuple[float, ...],
        "frets at which the neck's back is gauged",
        ("carve.stations",),
        "1, 5 and 9: common practice",
    ),
    Normal(n.head_curve, HeadCurve, "the head's edge as described", ("head.outline", "head.file"), "none described"),
)
"""Every base value of the carve that is not simply one key; the head's edge comes with the description."""


def carve_values(instrument: Instrument) -> Values:
    """The gauged frets, in order; frets that the board does not have are left out."""
    asked = GAUGED if instrument.carve.stations is None else instrument.carve.stations
    return {n.carve_station_frets: tuple(sorted({fret for fret in asked if fret <= instrument.scale.frets}))}
