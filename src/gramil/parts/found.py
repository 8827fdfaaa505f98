"""A guitar as it was found: what was read of it before the work. Nothing of it is known until it is read.

These are figures of their own beside those that are wanted, so that before and after the work are two states: what is
read here never takes the place of what is wanted, and only the sheets on what is there show it.
"""

import math
from collections.abc import Callable

import numpy as np

from gramil.physics.arrays import FloatArray
from gramil.quantities import Mm, PerFret, PerString, Ratio

OWNS = ("found_",)


def found_slot_width(fret_position: PerFret[Mm]) -> PerFret[Mm]:
    """Width of each old slot, its fret drawn and its glue out, as found.

    Method: read with feelers or a gauge wire; not known before.
    Source: common practice.
    """
    return np.full_like(fret_position, math.nan)


def found_slot_depth(fret_position: PerFret[Mm]) -> PerFret[Mm]:
    """Depth of each old slot where it is shallowest, as found.

    Method: read with a depth gauge; not known before.
    Source: common practice.
    """
    return np.full_like(fret_position, math.nan)


def found_board_thickness(fret_position: PerFret[Mm]) -> PerFret[Mm]:
    """Thickness of the old board at its crest at each fret, as found.

    Method: read at the edge or through the slots; not known before.
    Source: common practice.
    """
    return np.full_like(fret_position, math.nan)


def found_arch_radius(fret_position: PerFret[Mm]) -> PerFret[Mm]:
    """Radius of the old board at each fret, as found.

    Method: read with gauge cards; not known before.
    Source: common practice.
    """
    return np.full_like(fret_position, math.nan)


def found_crown(fret_position: PerFret[Mm]) -> PerFret[Mm]:
    """Height of each old crown over the board where it is worn most, as found.

    Method: read with feelers under a straightedge across two crowns; not known before.
    Source: common practice.
    """
    return np.full_like(fret_position, math.nan)


def found_action_bass() -> Mm:
    """Bass string over the crown of fret 12, as found.

    Method: read strung and at pitch; not known before.
    Source: common practice.
    """
    return math.nan


def found_action_treble() -> Mm:
    """Treble string over the crown of fret 12, as found.

    Method: read strung and at pitch; not known before.
    Source: common practice.
    """
    return math.nan


def found_nut_bass() -> Mm:
    """Bass string over the crown of fret 1, as found.

    Method: read strung and at pitch; not known before.
    Source: common practice.
    """
    return math.nan


def found_nut_treble() -> Mm:
    """Treble string over the crown of fret 1, as found.

    Method: read strung and at pitch; not known before.
    Source: common practice.
    """
    return math.nan


def found_relief() -> Mm:
    """Gap half way under a straightedge on fret 1 and the fret at the body, as found, strung.

    Method: read strung and at pitch; not known before.
    Source: common practice.
    """
    return math.nan


def found_exposed_bass() -> Mm:
    """What the old saddle shows over the bridge at its bass end, as found.

    Method: read with calipers; not known before.
    Source: common practice.
    """
    return math.nan


def found_exposed_treble() -> Mm:
    """What the old saddle shows over the bridge at its treble end, as found.

    Method: read with calipers; not known before.
    Source: common practice.
    """
    return math.nan


def found_saddle_slot_width() -> Mm:
    """Width of the old saddle's slot, as found.

    Method: read with calipers; not known before.
    Source: common practice.
    """
    return math.nan


def found_saddle_slot_depth() -> Mm:
    """Depth of the old saddle's slot where it is shallowest, as found.

    Method: read with calipers; not known before.
    Source: common practice.
    """
    return math.nan


def found_pin() -> Mm:
    """Diameter of the old pins under their heads, as found.

    Method: read with calipers; not known before.
    Source: common practice.
    """
    return math.nan


def found_saddle_bass() -> Mm:
    """From the nut's face to where the bass string leaves the old saddle, as found.

    Method: read along the string; not known before.
    Source: common practice.
    """
    return math.nan


def found_saddle_treble() -> Mm:
    """From the nut's face to where the treble string leaves the old saddle, as found.

    Method: read along the string; not known before.
    Source: common practice.
    """
    return math.nan


def found_straightedge(neck_straightedge: Mm, repair_described: bool) -> Mm:
    """How far a straightedge on the old crowns passes over the bridge's top at the saddle, as found, strings off.

    Formula: neck_straightedge if repair_described else nan
    Source: common practice.
    """
    return neck_straightedge if repair_described else math.nan


def found_lie_first() -> Ratio:
    """The fret nearest the nut on whose crown the straightedge lay, as found.

    Method: fret 1, unless it is read otherwise.
    Source: common practice.
    """
    return 1.0


def found_lie_last(scale_join: Ratio) -> Ratio:
    """The fret nearest the body on whose crown the straightedge lay, as found.

    Method: the last before the body, unless it is read otherwise.
    Source: common practice.
    """
    return scale_join // 1


def found_slot_width_least(found_slot_width: PerFret[Mm]) -> Mm:
    """The narrowest of the old slots that were read.

    Method: the least of those read; not known before.
    Source: common practice.
    """
    return _of(np.min, found_slot_width)


def found_slot_width_most(found_slot_width: PerFret[Mm]) -> Mm:
    """The widest of the old slots that were read.

    Method: the most of those read; not known before.
    Source: common practice.
    """
    return _of(np.max, found_slot_width)


def found_slot_width_mean(found_slot_width: PerFret[Mm]) -> Mm:
    """The mean width of the old slots that were read.

    Method: the mean of those read; not known before.
    Source: common practice.
    """
    return _of(np.mean, found_slot_width)


def found_slot_depth_least(found_slot_depth: PerFret[Mm]) -> Mm:
    """The shallowest of the old slots that were read.

    Method: the least of those read; not known before.
    Source: common practice.
    """
    return _of(np.min, found_slot_depth)


def found_left_least(found_board_thickness: PerFret[Mm], found_slot_depth: PerFret[Mm]) -> Mm:
    """The least wood left under an old slot, where both its depth and the board's thickness were read.

    Method: the least of thickness less depth over the frets with both; not known before.
    Source: common practice.
    """
    return _of(np.min, found_board_thickness - found_slot_depth)


def found_crown_least(found_crown: PerFret[Mm]) -> Mm:
    """The lowest old crown that was read.

    Method: the least of those read; not known before.
    Source: common practice.
    """
    return _of(np.min, found_crown)


def found_crown_mean(found_crown: PerFret[Mm]) -> Mm:
    """The mean height of the old crowns that were read.

    Method: the mean of those read; not known before.
    Source: common practice.
    """
    return _of(np.mean, found_crown)


def found_crown_most(found_crown: PerFret[Mm]) -> Mm:
    """The highest old crown that was read.

    Method: the most of those read; not known before.
    Source: common practice.
    """
    return _of(np.max, found_crown)


def found_crown_at_twelve(found_crown: PerFret[Mm], found_crown_mean: Mm) -> Mm:
    """The old crown under the place where the action is read: fret 12, or the mean where that was not read.

    Method: the reading at fret 12, else the mean of those read.
    Source: common practice.
    """
    return _at(found_crown, 12.0, found_crown_mean)


def found_crown_at_saddle(
    found_crown: PerFret[Mm],
    found_crown_mean: Mm,
    found_lie_first: Ratio,
    found_lie_last: Ratio,
    fret_position: PerFret[Mm],
    height_saddle_x: PerString[Mm],
) -> Mm:
    """How high over the crest plane a straightedge on the two old crowns passes at the saddle.

    Method: the straight line over the two crowns that it lay on, drawn on; a crown not read is taken as the mean.
    Source: similar triangles.
    """
    if math.isnan(found_lie_first + found_lie_last):
        return math.nan
    first, last = (_at(found_crown, fret, found_crown_mean) for fret in (found_lie_first, found_lie_last))
    start, end = (float(np.interp(fret, range(len(fret_position)), fret_position)) for fret in
                  (found_lie_first, found_lie_last))  # fmt: skip
    if end <= start:
        return math.nan
    return first + (last - first) / (end - start) * (float(height_saddle_x.mean()) - start)


def _of(one: Callable[[FloatArray], object], values: PerFret[Mm]) -> float:
    """One figure worked out from those rows that were read; nan if none was."""
    known = values[~np.isnan(values)]
    return float(np.asarray(one(known))) if known.size else math.nan


def _at(crowns: PerFret[Mm], fret: float, otherwise: float) -> float:
    """The reading at a fret, or another value if there is none."""
    row = int(fret)
    read = float(crowns[row]) if 0 <= row < len(crowns) else math.nan
    return otherwise if math.isnan(read) else read
