"""The carved neck: its back at every place, gauged at stations, and the flats that it is first planed to; the heel.

Heights are over the joint of board and neck, depths below it. The back is as wide as the finished board all along.
"""

from math import pi

import numpy as np

from gramil.parts.records import CarveLine, CarveShape, CarveStation, Run
from gramil.quantities import Count, Mm, PerFret, Radians, Ratio
from gramil.shapes.facets import even_angles, facets, vertices
from gramil.shapes.profile import Profile
from gramil.shapes.tapered_bar import TaperedBar

OWNS = ("carve_",)

HEEL_STEPS = 48
"""Straight pieces in which the heel's curve is drawn."""


def carve_shape(
    carve_exponent_at_1: Ratio,
    carve_exponent_at_10: Ratio,
    carve_blend_exponent: Ratio,
    carve_blend_at_1: Ratio,
    carve_blend_at_10: Ratio,
) -> CarveShape:
    """The back's shape at frets 1 and 10, one wide and one deep: half a superellipse, or two mixed.

    Method: |2 y / width|^n + (z / depth)^n = 1 below the joint; the share of the second shape weighs its depths.
    Source: superellipse, a formula of plane geometry.
    """
    return CarveShape(
        Profile(1.0, 1.0, carve_exponent_at_1, carve_blend_exponent, carve_blend_at_1),
        Profile(1.0, 1.0, carve_exponent_at_10, carve_blend_exponent, carve_blend_at_10),
    )


def carve_form(
    carve_shape: CarveShape,
    fret_position: PerFret[Mm],
    board_width_at_fret: PerFret[Mm],
    section_neck_depth: PerFret[Mm],
) -> TaperedBar:
    """The neck's back all along: shape and depth straight between frets 1 and 10 and level outside them.

    Method: sections at every fret, straight lines between; width is the finished board's, depth the neck's own wood.
    Source: common practice.
    """
    tenth = min(10, len(fret_position) - 1)
    shares = np.clip((fret_position - fret_position[1]) / (fret_position[tenth] - fret_position[1]), 0, 1)
    sections = zip(board_width_at_fret / 2, section_neck_depth, shares, strict=True)
    return TaperedBar(
        tuple(map(float, fret_position)),
        tuple(_section(carve_shape, float(half), float(depth), float(share)) for half, depth, share in sections),
    )


def _section(shape: CarveShape, half_width: float, depth: float, share: float) -> Profile:
    first, tenth = shape.first, shape.tenth
    exponent = first.exponent + share * (tenth.exponent - first.exponent)
    return Profile(half_width, depth, exponent, first.other_exponent, first.mix + share * (tenth.mix - first.mix))


def carve_heel_start(back_bow_length: Mm, carve_heel_length: Mm) -> Mm:
    """Where the back begins to turn down to the heel, from the zero line.

    Source: common practice.
    """
    return back_bow_length - carve_heel_length


def carve_heel_cap_start(back_bow_length: Mm, carve_heel_cap: Mm) -> Mm:
    """Where the heel's cap begins, from the zero line.

    Source: common practice.
    """
    return back_bow_length - carve_heel_cap


def carve_stations(
    carve_station_frets: tuple[float, ...],
    fret_position: PerFret[Mm],
    carve_form: TaperedBar,
    thickness_at_crest: PerFret[Mm],
    carve_heel_start: Mm,
) -> tuple[CarveStation, ...]:
    """The back at each fret where it is gauged, as far as the heel; those past where it begins are left out.

    Method: the neck's form at the fret; the whole depth adds the board at its crest.
    Source: common practice.
    """
    frets, found = np.arange(len(fret_position)), []
    for fret in carve_station_frets:
        x = float(np.interp(fret, frets, fret_position))
        if x <= carve_heel_start:
            board = float(np.interp(fret, frets, thickness_at_crest))
            found.append(_station(fret, x, carve_form.at(x), board))
    return tuple(found)


def _station(fret: float, x: float, profile: Profile, board: float) -> CarveStation:
    name = f"fret {fret:g}" if fret else "zero line"
    return CarveStation(
        name,
        fret,
        x,
        2 * profile.half_width,
        profile.depth,
        profile.depth + board,
        profile.exponent,
        profile.other_exponent,
        profile.mix,
    )


def carve_gauged(carve_stations: tuple[CarveStation, ...]) -> Count:
    """How many places the back is gauged at.

    Source: common practice.
    """
    return len(carve_stations)


def carve_facet_angle(carve_facets: Count) -> Radians:
    """The angle between two neighbouring flats: of all of them, the first and last stand square to the joint.

    Formula: pi / (carve_facets - 1)
    Source: common practice.
    """
    return pi / (carve_facets - 1)


def carve_lines(carve_stations: tuple[CarveStation, ...], carve_facets: Count) -> tuple[CarveLine, ...]:
    """The edges between the flats at each station, the side's first and the back's last; the same on both sides.

    The flats touch the back's curve: cut them with a plane to these lines, then halve the edges, then round.
    Method: flats at even angles, each touching the profile; where two neighbours meet.
    Source: tangents to a plane curve.
    """
    found = []
    for station in carve_stations:
        around = vertices(facets(station.profile, even_angles(carve_facets)))
        edges = around[1 : (carve_facets + 1) // 2]
        found += [
            CarveLine(f"{station.name}, line {number}", station.name, number, y, z)
            for number, (y, z) in enumerate(edges, 1)
        ]
    return tuple(found)


def carve_flat_back(carve_lines: tuple[CarveLine, ...], carve_facets: Count) -> Mm:
    """Width of the flat on the back at the first station, before rounding; not known without a station.

    Method: twice the last line's distance from the centreline.
    Source: tangents to a plane curve.
    """
    last = carve_facets // 2
    return next((2 * line.centre for line in carve_lines if line.number == last), float("nan"))


def carve_heel_curve(
    carve_form: TaperedBar, carve_heel_start: Mm, carve_heel_cap_start: Mm, neck_heel_depth: Mm
) -> Run:
    """The heel's line in side view, from the back to the cap: along from the zero line, height over the joint.

    Method: a quarter of an ellipse, level where it leaves the back and upright where it meets the cap.
    Source: common practice.
    """
    top = float(carve_form.at(carve_heel_start).depth)
    turns = np.linspace(0.0, pi / 2, HEEL_STEPS + 1)
    along = carve_heel_start + (carve_heel_cap_start - carve_heel_start) * np.sin(turns)
    down = neck_heel_depth - (neck_heel_depth - top) * np.cos(turns)
    return Run(tuple(zip(map(float, along), map(float, -down), strict=True)))


def carve_deepest(section_neck_depth: PerFret[Mm]) -> Mm:
    """The neck's own wood at its deepest, heel apart.

    Formula: max(section_neck_depth)
    Source: common practice.
    """
    return float(section_neck_depth.max())
