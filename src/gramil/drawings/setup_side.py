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
INWARD = 9.0
"""How far from the side's ends the figures of its end stations keep their middle, in mm: over the ends themselves they
would reach past the sheet's room for a drawing.
"""
EDGES_AT = 0.82
"""Where along the side its edges are named, as a share of its length: between lower bout and tail."""


UNDER = 66.0
"""How far under the bass side the treble side is drawn, where it has its own, in mm."""
HEADS = {"bass": 24.0, "treble": 24.0 - UNDER}
"""How high over the paper's zero each side's name stands, in mm."""
Edges = tuple[Series[Mm], Series[Mm], Series[Mm]]
"""Distances along a side, and the heights of its upper and lower edge there."""
Figures = tuple[tuple[Ref[Any], str], ...]
"""Figures of a station, each with what stands before it."""


def piece_small_side_share(side_length: Mm) -> Ratio:
    """How large the side is drawn, as a share of what it is."""
    return ROOM / side_length


def piece_small_side(
    side_along: Series[Mm], side_upper: Series[Mm], side_lower: Series[Mm], piece_small_side_share: Ratio
) -> Marks:
    """The side unrolled, the top's edge above, the neck to the left, both edges named."""
    return _side(View((0.0, 0.0), piece_small_side_share, piece_small_side_share), (side_along, side_upper, side_lower))


def piece_small_treble(
    treble_side_along: Series[Mm],
    treble_side_upper: Series[Mm],
    treble_side_lower: Series[Mm],
    treble_side_stations: tuple[SideStation, ...],
    piece_small_side_share: Ratio,
    instrument_handed: str,
) -> Marks:
    """The treble side under it, where the two are not alike: its stations by name, as its table has them.

    Each is said to be seen from outside or from inside: with the top above, its neck is to the left in one of them.
    """
    edges = (treble_side_along, treble_side_upper, treble_side_lower)
    view = View((0.0, -UNDER), piece_small_side_share, piece_small_side_share)
    stations = _stations(view, edges, treble_side_stations)
    outside = "treble" if instrument_handed == "left" else "bass"
    told = [
        Words((0.0, head), f"the {side} side from {'outside' if side == outside else 'inside'}, neck to the left", 2.6)
        for side, head in HEADS.items()
    ]
    return (*told, *_side(view, edges), *stations) if treble_side_along.size else ()


def _side(view: View, edges: Edges) -> Marks:
    along, upper_edge, lower_edge = edges
    if not along.size:
        return ()
    upper, lower = (list(zip(along.tolist(), edge.tolist(), strict=True)) for edge in (upper_edge, lower_edge))
    x = EDGES_AT * float(along[-1])
    high, low = (float(np.interp(x, along, edge)) for edge in (upper_edge, lower_edge))
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
    view = View((0.0, 0.0), piece_small_side_share, piece_small_side_share)
    return _stations(view, (side_along, side_upper, side_lower), side_stations, n.side_stations)


def _stations(view: View, edges: Edges, stations: tuple[SideStation, ...], addresses: Any = None) -> Marks:
    """A line across at each station with its name and, given `addresses`, its figures: over the side and under it in
    turn.
    """
    if not stations:
        return ()
    along, upper, lower = edges
    over, under = view.at(0.0, float(upper.max()))[1] + 2.0, view.at(0.0, float(lower.min()))[1] - 2.0
    marks: Marks = ()
    for row, station in enumerate(stations):
        high, low = (float(np.interp(station.along, along, edge)) for edge in (upper, lower))
        x = view.at(station.along, 0.0)[0]
        figures = () if addresses is None else _figures(station, addresses[station.name])
        marks += (view.line((station.along, low), (station.along, high), "dimensions"),)
        first = over + ROW * len(figures) if row % 2 == 0 else under - FIGURE
        said_at = min(max(x, INWARD), view.at(float(along[-1]), 0.0)[0] - INWARD) if figures else x
        marks += _station_words(station.name, figures, said_at, first)
    return marks


def _station_words(name: str, figures: Figures, x: Mm, first: Mm) -> Marks:
    """The name, and below it a figure a line."""
    labels = (
        Label((x, first - ROW * row), figure, before, height=FIGURE, anchor="middle")
        for row, (figure, before) in enumerate(figures, 1)
    )
    return (Words((x, first), name, FIGURE, anchor="middle"), *labels)


def _figures(station: SideStation, at: Any) -> Figures:
    """Where a station lies (not at the end that all is measured from), how deep the side is there, and its bend."""
    place = ((at.along, "at "),) if station.along else ()
    bend = () if np.isnan(station.radius) else ((at.radius, "radius "),)
    return (*place, (at.depth, "deep "), *bend)


def drawing_setup_side(
    instrument_name: str,
    piece_small_side: Marks,
    piece_small_side_stations: Marks,
    piece_small_treble: Marks,
    piece_small_ports: Marks,
    piece_small_side_share: Ratio,
) -> Drawing:
    """A side unrolled, small, with the stations' figures, or both where they are not alike; no marks where no body is
    described.
    """
    title = f"{instrument_name}, a side with its stations"
    marks = (*piece_small_side, *piece_small_side_stations, *piece_small_treble, *piece_small_ports)
    return Drawing("setup-side", title, "the side", marks, scale=piece_small_side_share if marks else 1.0)
