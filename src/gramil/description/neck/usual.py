"""Base values of the neck, its carve, the top and the head that need more than their key."""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.description.instrument import Instrument
from gramil.description.neck.head_outline import HeadCurve
from gramil.description.normal_row import Normal, Values
from gramil.quantities import Mm, PerString

GAUGED = (1.0, 5.0, 9.0)
"""Frets at which a neck's back is usually gauged: common practice."""


@dataclass(frozen=True)
class _Posts:
    """Posts of one kind, in mm: nut to the first, from one to the next along the head, how far the first stand outside
    the outer strings, and how far each row moves inward.
    """

    first: float
    step: float
    beside: float
    lean: float


USUAL_POSTS = {"upright": _Posts(42.0, 38.0, 3.0, 3.5), "across": _Posts(45.0, 35.0, 0.5, 3.0)}
"""By how the tuners lie; across, where the strings come up to their rollers in the slots: common practice."""
PAIRED_POSTS = _Posts(52.0, 26.0, 7.0, 2.5)
"""Upright posts of pairs, nearer together and further out: the second string of each pair passes the first one's post
by some 4 mm. Common practice, in rounded figures of our own."""

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

NECK_ROWS: tuple[Normal, ...] = (
    Normal(
        n.top_radius,
        Mm,
        "radius of the top's dome along the centreline; flat is without end",
        ("top.radius",),
        "common practice: 25 ft",
    ),
    Normal(
        n.top_edge_thickness,
        Mm,
        "thickness of the top at its rim, where that is another than in its middle",
        ("top.edge_thickness",),
        "as in its middle",
    ),
    Normal(
        n.top_rise,
        Mm,
        "how far the top stands over its rim at the saddle, measured; else not known",
        ("top.rise",),
        "from the dome's radius",
    ),
    Normal(
        n.neck_straightedge,
        Mm,
        "how far a straightedge on the frets passes over the bridge, neck set; not known before",
        ("neck.straightedge",),
        "the neck is not set yet, or set as it should be",
    ),
    Normal(
        n.head_posts_x,
        PerString[Mm],
        "each string's post along the head from the nut",
        ("head.posts_x",),
        "half the posts a side: common practice",
    ),
    Normal(
        n.head_posts_y,
        PerString[Mm],
        "each string's post from the centreline, treble positive",
        ("head.posts_y",),
        "half the posts a side: common practice",
    ),
)
"""The same of the top's dome, the neck as it is set, and the posts."""


def carve_values(instrument: Instrument) -> Values:
    """The gauged frets, in order; frets that the board does not have are left out."""
    asked = GAUGED if instrument.carve.stations is None else instrument.carve.stations
    return {n.carve_station_frets: tuple(sorted({fret for fret in asked if fret <= instrument.scale.frets}))}


def neck_values(instrument: Instrument) -> Values:
    """The values of `NECK_ROWS`; nan for what was not measured."""
    head, strings = instrument.head, len(instrument.strings.gauges)
    x, y = usual_posts(strings, instrument.nut.spread, head.tuners, len(instrument.course) not in (0, strings))
    return {
        n.top_radius: instrument.top.radius,
        n.top_edge_thickness: _measured(instrument.top.edge_thickness),
        n.top_rise: _measured(instrument.top.rise),
        n.neck_straightedge: _measured(instrument.neck.straightedge),
        n.head_posts_x: x if head.posts_x is None else np.array(head.posts_x),
        n.head_posts_y: y if head.posts_y is None else np.array(head.posts_y),
    }


def _measured(value: float | None) -> float:
    """A measurement, or nan if nothing was measured."""
    return math.nan if value is None else value


def usual_posts(
    strings: int, nut_spread: float, tuners: str = "upright", paired: bool = False
) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    """Posts (or places on rollers) with half of them a side, mm from the nut and from the centreline: common practice.

    The outer strings go to the nearest posts, and each row leans inward a little; an odd string goes treble-side.
    """
    usual = PAIRED_POSTS if paired and tuners == "upright" else USUAL_POSTS[tuners]
    treble = np.arange(strings) < (strings + 1) // 2
    row = np.where(treble, np.arange(strings), strings - 1 - np.arange(strings))
    beside = nut_spread / 2 + usual.beside - usual.lean * row
    return usual.first + usual.step * row, np.where(treble, beside, -beside)
