"""The neck under the strings' pull: how much relief that gives, what the frets take back, what the rod must do.

Always a range: woods of one kind differ by a fifth in stiffness, slots filled with wire are somewhere between cut and
whole, and nobody knows how much of the frets' wedging the wood keeps.
"""

from dataclasses import dataclass

import numpy as np

from gramil.physics.arrays import FloatArray
from gramil.physics.bent_beam import Ends, gap_under_straightedge, shape_from_curvature, shape_under_pull
from gramil.quantities import (
    Mm,
    Newton,
    NewtonMm,
    NewtonMm2,
    PerFret,
    PerMm,
    PerString,
    PerStringFret,
    Series,
)

OWNS = ("relief_",)


@dataclass(frozen=True)
class PulledNeck:
    """The neck as a beam, clamped at the body: stations from the zero line to the join and what it is there.

    `stiffest` is EI with woods at their stiffest and no slots, `softest` with woods at their softest and slotted all
    along, `lever` the strings' height over the neutral axis, `first` where fret 1 lies and `far_end` the saddle.
    """

    stations: FloatArray
    stiffest: FloatArray
    softest: FloatArray
    lever: FloatArray
    first: Mm
    far_end: Mm


def relief_curvature(heights_relief: Mm, back_bow_span: Mm) -> PerMm:
    """Curvature of a neck with the wanted relief, taken as even from the zero line to the join.

    Source: an arc over its chord.
    """
    return 8 * heights_relief / back_bow_span**2


def relief_rise(relief_curvature: PerMm, back_bow_length: Mm, string_x: PerStringFret[Mm]) -> PerStringFret[Mm]:
    """How far the relief lifts the neck's board over the crest plane of the board on the body.

    Formula: relief_curvature * maximum(0, back_bow_length - string_x) ** 2 / 2
    Source: an arc that leaves the body without a kink.
    """
    return relief_curvature * np.maximum(0.0, back_bow_length - string_x) ** 2 / 2


def relief_lever(
    height_over_crown: PerStringFret[Mm],
    crown_height: Mm,
    arch_fall_under_string: PerStringFret[Mm],
    thickness_at_crest: PerFret[Mm],
    neck_section_axis: PerFret[Mm],
    lean_under_string: PerStringFret[Mm],
) -> PerFret[Mm]:
    """The strings' mean height over the neck's neutral axis at each fret: the lever of their pull.

    Formula: mean(height_over_crown - arch_fall_under_string + lean_under_string, axis=0)
        + crown_height + thickness_at_crest - neck_section_axis
    Source: common practice.
    """
    over_crest = (height_over_crown - arch_fall_under_string + lean_under_string).mean(axis=0) + crown_height
    return over_crest + thickness_at_crest - neck_section_axis


def relief_stations(fret_position: PerFret[Mm], back_bow_length: Mm) -> Series[Mm]:
    """Places along the neck at which it is reckoned: zero line, frets, join.

    Formula: append(fret_position[fret_position < back_bow_length - 0.001], back_bow_length)
    Source: common practice.
    """
    return np.append(fret_position[fret_position < back_bow_length - 0.001], back_bow_length)


def relief_neck(
    relief_stations: Series[Mm],
    fret_position: PerFret[Mm],
    neck_section_stiffness_most: PerFret[NewtonMm2],
    neck_section_stiffness_least: PerFret[NewtonMm2],
    relief_lever: PerFret[Mm],
    height_saddle_x: PerString[Mm],
) -> PulledNeck:
    """The neck as a beam from zero line to join.

    Method: figures at the frets, read between them at the join.
    Source: gere_goodno
    """
    stiffest, softest, lever = (
        np.interp(relief_stations, fret_position, each)
        for each in (neck_section_stiffness_most, neck_section_stiffness_least, relief_lever)
    )
    saddle = float(height_saddle_x.mean())
    return PulledNeck(relief_stations, stiffest, softest, lever, float(fret_position[1]), saddle)


def relief_under_pull_least(relief_neck: PulledNeck, string_pull_total: Newton) -> Mm:
    """The relief that the strings' pull gives the stiffest neck: woods at their stiffest, slots as good as whole.

    Method: EI v'' = pull x (line - v), clamped at the body; the gap half way under a straightedge on fret 1 and join.
    Source: gere_goodno
    """
    return _under_pull(relief_neck, relief_neck.stiffest, string_pull_total)


def relief_under_pull_most(relief_neck: PulledNeck, string_pull_total: Newton) -> Mm:
    """The relief that the strings' pull gives the softest neck: woods at their softest, slotted all along.

    Method: EI v'' = pull x (line - v), clamped at the body; the gap half way under a straightedge on fret 1 and join.
    Source: gere_goodno
    """
    return _under_pull(relief_neck, relief_neck.softest, string_pull_total)


def _under_pull(neck: PulledNeck, stiffness: FloatArray, pull: float) -> float:
    """The relief in mm; without end for a neck that would fold up, not known for one that is not measured."""
    if not _is_known(neck, stiffness):  # numpy raises ValueError for these too, which would read as a neck folded up
        return np.nan
    try:
        shape = shape_under_pull(neck.stations, stiffness, neck.lever, pull, Ends.LAST_CLAMPED, neck.far_end)
    except ValueError:
        return np.inf
    return _gap(neck, shape)


def _is_known(neck: PulledNeck, stiffness: FloatArray) -> bool:
    return bool(np.isfinite(neck.stations).all() and np.isfinite(stiffness).all() and np.isfinite(neck.lever).all())


def _gap(neck: PulledNeck, shape: FloatArray) -> float:
    """Half way under a straightedge on fret 1 and the join."""
    join = float(neck.stations[-1])
    return float(gap_under_straightedge(neck.stations, shape, neck.first, join, (neck.first + join) / 2))


def relief_predicted_least(relief_under_pull_least: Mm, back_bow_most: Mm) -> Mm:
    """The least relief to expect, only frets against the strings: the stiffest neck, bowed back most by its frets.

    Source: common practice.
    """
    return relief_under_pull_least - back_bow_most


def relief_predicted_most(relief_under_pull_most: Mm, back_bow_least: Mm) -> Mm:
    """The most relief to expect, only frets against the strings: the softest neck, bowed back least by its frets.

    Source: common practice.
    """
    return relief_under_pull_most - back_bow_least


def relief_for_rod_least(relief_predicted_least: Mm, heights_relief: Mm) -> Mm:
    """The least relief over what is wanted, which is to be taken out of the neck; negative: to push in.

    Source: common practice.
    """
    return relief_predicted_least - heights_relief


def relief_for_rod_most(relief_predicted_most: Mm, heights_relief: Mm) -> Mm:
    """The most relief over what is wanted, which is to be taken out of the neck; negative: to push in.

    Source: common practice.
    """
    return relief_predicted_most - heights_relief


def relief_rod_moment_least(relief_for_rod_least: Mm, relief_neck: PulledNeck, neck_rod: str) -> NewtonMm:
    """The bending moment that the rod gives the whole neck at its least, on the stiffest neck; negative: forward.

    Not known without a rod.

    Method: an even moment from zero line to join; its bend against that of a moment of 1 N mm.
    Source: gere_goodno
    """
    if neck_rod == "none":
        return np.nan
    return relief_for_rod_least / _gap_of_moment(relief_neck, relief_neck.stiffest)


def relief_rod_moment_most(relief_for_rod_most: Mm, relief_neck: PulledNeck, neck_rod: str) -> NewtonMm:
    """The bending moment that the rod gives the whole neck for its most, on the softest neck; not known without one.

    Method: an even moment from zero line to join; its bend against that of a moment of 1 N mm.
    Source: gere_goodno
    """
    if neck_rod == "none":
        return np.nan
    return relief_for_rod_most / _gap_of_moment(relief_neck, relief_neck.softest)


def _gap_of_moment(neck: PulledNeck, stiffness: FloatArray) -> float:
    """The relief that an even moment of 1 N mm gives."""
    if not _is_known(neck, stiffness):
        return np.nan
    return _gap(neck, shape_from_curvature(neck.stations, 1 / stiffness, Ends.LAST_CLAMPED))
