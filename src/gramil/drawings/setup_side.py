"""A side on its sheet: unrolled and made small, with its stations numbered and their figures large enough to read.

The template at true size has the same lines; this is what is read beside the bending iron.
"""

from typing import Any

import numpy as np

from gramil import names as n
from gramil.drawings.marks import Drawing, Label, Marks, Words
from gramil.drawings.pen import FIGURE, View
from gramil.parts.body_records import SideStation
from gramil.quantities import Mm, Ratio, Series
from gramil.reference import Ref

OWNS = ("drawing_", "piece_")

ROOM = 124.0
"""How long the side is drawn, in mm."""
ROW = 4.2
"""From one line of figures to the next, in mm."""
EDGES_AT = 0.82
"""Where along the side its edges are named, as a share of its length: between lower bout and tail."""


def piece_small_side_share(side_length: Mm) -> Ratio:
    """How large the side is drawn, as a share of what it is."""
    return ROOM / side_length


def piece_small_side(
    side_along: Series[Mm], side_upper: Series[Mm], side_lower: Series[Mm], piece_small_side_share: Ratio
) -> Marks:
    """The side unrolled, the top's edge above, the neck to the left, both edges named."""
    if not side_along.size:
        return ()
    view = View((0.0, 0.0), piece_small_side_share, piece_small_side_share)
    upper, lower = (list(zip(side_along.tolist(), edge.tolist(), strict=True)) for edge in (side_upper, side_lower))
    x = EDGES_AT * float(side_along[-1])
    high, low = (float(np.interp(x, side_along, edge)) for edge in (side_upper, side_lower))
    return (
        view.shape((*upper, *reversed(lower)), "outline"),
        Words((view.at(x, 0.0)[0], view.at(x, high)[1] - 3.4), "top's edge", 2.2, anchor="middle"),
        Words((view.at(x, 0.0)[0], view.at(x, low)[1] + 1.2), "back's edge", 2.2, anchor="middle"),
    )


def piece_small_side_stations(
    side_stations: tuple[SideStation, ...],
    side_along: Series[Mm],
    side_upper: Series[Mm],
    side_lower: Series[Mm],
    piece_small_side_share: Ratio,
) -> Marks:
    """A line across at every station, its name and figures over it and under it in turn, so that none run together."""
    if not side_stations:
        return ()
    view = View((0.0, 0.0), piece_small_side_share, piece_small_side_share)
    over, under = view.at(0.0, float(side_upper.max()))[1] + 2.0, view.at(0.0, float(side_lower.min()))[1] - 2.0
    marks: Marks = ()
    for row, station in enumerate(side_stations):
        high, low = (float(np.interp(station.along, side_along, edge)) for edge in (side_upper, side_lower))
        x = view.at(station.along, 0.0)[0]
        marks += (view.line((station.along, low), (station.along, high), "dimensions"),)
        marks += _told_over(station, x, over) if row % 2 == 0 else _told_under(station, x, under)
    return marks


def _told_over(station: SideStation, x: Mm, foot: Mm) -> Marks:
    """A station's name and figures, the last line's foot at a height."""
    return _station_words(station, x, foot + ROW * (len(_figures(station)) - 1) + ROW)


def _told_under(station: SideStation, x: Mm, head: Mm) -> Marks:
    """A station's name and figures, the first line hanging from a height."""
    return _station_words(station, x, head - FIGURE)


def _station_words(station: SideStation, x: Mm, first: Mm) -> Marks:
    """The name, and below it a figure a line."""
    figures = (
        Label((x, first - ROW * row), figure, before, height=FIGURE, anchor="middle")
        for row, (figure, before) in enumerate(_figures(station), 1)
    )
    return (Words((x, first), station.name, FIGURE, anchor="middle"), *figures)


def _figures(station: SideStation) -> tuple[tuple[Ref[Any], str], ...]:
    at = n.side_stations[station.name]
    bend = () if np.isnan(station.radius) else ((at.radius, "radius "),)
    return ((at.along, "at "), (at.depth, "deep "), *bend)


def drawing_setup_side(
    instrument_name: str,
    piece_small_side: Marks,
    piece_small_side_stations: Marks,
    piece_small_side_share: Ratio,
) -> Drawing:
    """A side unrolled, small, with the stations' figures; no marks where no body is described."""
    title = f"{instrument_name}, a side with its stations"
    marks = (*piece_small_side, *piece_small_side_stations)
    return Drawing("setup-side", title, "the side", marks, scale=piece_small_side_share if marks else 1.0)
