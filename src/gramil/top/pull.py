"""What the strings do to the top: the bridge's turn, how far it sinks ahead and rises behind, the action that follows.

All of it is elastic, at once, on a rigid rim: what creeps in years, and what rim and neck give, comes on top.
"""

import math
from collections.abc import Callable

import numpy as np

from gramil.description.wood.timbers import TimberKnown
from gramil.physics.plates.edge import SUPPORTED
from gramil.physics.plates.surety import within
from gramil.quantities import Mm, Percent, PerString, Radians, Ratio
from gramil.top.braced import Moved, Solved
from gramil.wood.stiffness import stiffness_share

OWNS = ("pulled_",)
RIGID = "elastic, at once, on a rigid rim"
"""What the answer is, said wherever it is shown."""


def _only(tops: tuple[Solved, ...], read: Callable[[Moved], float]) -> float:
    return next((read(each.moved) for each in tops), math.nan)


def _within(quick: tuple[Solved, ...], final: tuple[Solved, ...], read: Callable[[Moved], float]) -> float:
    return float(within(_only(quick, read), _only(final, read)))


def pulled_turn(braced_final: tuple[Solved, ...]) -> Radians:
    """How far the bridge turns toward the neck in its middle, elastic, at once, on a rigid rim.

    Method: the braced plate solved under the strings; the plate's slope from the bridge's front to its back edge.
    Source: Reissner and Mindlin's plate with bars, held against solid elements.
    """
    return math.atan(_only(braced_final, lambda each: each.turn))


def pulled_turn_within(braced_quick: tuple[Solved, ...], braced_final: tuple[Solved, ...]) -> Radians:
    """How far off the bridge's turn may be because of mesh and model; the wood's own spread comes on top.

    Method: 1.5 times what two meshes differ, and 3 % for the model.
    Source: common practice in such calculations.
    """
    return _within(braced_quick, braced_final, lambda each: each.turn)


def pulled_spread(fitted_top: TimberKnown, fitted_braces: TimberKnown) -> Ratio:
    """How far off the stiffness of top and braces may be, a share: the larger of the two.

    Formula: maximum(fitted_top.spread, fitted_braces.spread)
    Source: ASTM D2555 for woods of a handbook; what was measured has its own.
    """
    return max(fitted_top.spread, fitted_braces.spread)


def pulled_turn_least(pulled_turn: Radians, pulled_turn_within: Radians, pulled_spread: Ratio) -> Radians:
    """The bridge's turn if top and braces are stiffer by their spread, less what mesh and model may be off.

    Formula: pulled_turn / (1 + pulled_spread) - pulled_turn_within
    Source: common practice.
    """
    return pulled_turn / (1 + pulled_spread) - pulled_turn_within


def pulled_turn_most(pulled_turn: Radians, pulled_turn_within: Radians, pulled_spread: Ratio) -> Radians:
    """The bridge's turn if top and braces are weaker by their spread, and what mesh and model may be off.

    Formula: pulled_turn / (1 - pulled_spread) + pulled_turn_within
    Source: common practice.
    """
    return pulled_turn / (1 - pulled_spread) + pulled_turn_within


def pulled_turn_supported(braced_quick: tuple[Solved, ...]) -> Radians:
    """The bridge's turn if the rim holds the top without clamping it: the other end of the bracket.

    Method: the same plate on coarse triangles, its edge free to lean.
    Source: common practice in such calculations.
    """
    return math.atan(_only(tuple(each.held_by(SUPPORTED) for each in braced_quick), lambda each: each.turn))


def pulled_sink(braced_final: tuple[Solved, ...]) -> Mm:
    """How far the top sinks ahead of the bridge at most, elastic, at once, on a rigid rim.

    Method: the lowest place of the solved plate.
    Source: as the bridge's turn.
    """
    return _only(braced_final, lambda each: each.sink)


def pulled_sink_within(braced_quick: tuple[Solved, ...], braced_final: tuple[Solved, ...]) -> Mm:
    """How far off the sink ahead of the bridge may be because of mesh and model.

    Method: 1.5 times what two meshes differ, and 3 % for the model.
    Source: common practice in such calculations.
    """
    return _within(braced_quick, braced_final, lambda each: each.sink)


def pulled_sink_x(braced_final: tuple[Solved, ...]) -> Mm:
    """Where along the body the top sinks most, from its edge at the neck.

    Method: the lowest place of the solved plate.
    Source: as the bridge's turn.
    """
    return _only(braced_final, lambda each: each.sunk_at[0])


def pulled_rise(braced_final: tuple[Solved, ...]) -> Mm:
    """How far the top rises behind the bridge at most, elastic, at once, on a rigid rim.

    Method: the highest place of the solved plate.
    Source: as the bridge's turn.
    """
    return _only(braced_final, lambda each: each.rise)


def pulled_rise_within(braced_quick: tuple[Solved, ...], braced_final: tuple[Solved, ...]) -> Mm:
    """How far off the rise behind the bridge may be because of mesh and model.

    Method: 1.5 times what two meshes differ, and 3 % for the model.
    Source: common practice in such calculations.
    """
    return _within(braced_quick, braced_final, lambda each: each.rise)


def pulled_rise_x(braced_final: tuple[Solved, ...]) -> Mm:
    """Where along the body the top rises most, from its edge at the neck.

    Method: the highest place of the solved plate.
    Source: as the bridge's turn.
    """
    return _only(braced_final, lambda each: each.risen_at[0])


def pulled_lift(braced_final: tuple[Solved, ...]) -> Mm:
    """How far the top lifts under the saddle, negative where it sinks: a saddle ahead of the bridge's middle sinks.

    Method: the solved plate at the saddle, on the centreline.
    Source: as the bridge's turn.
    """
    return _only(braced_final, lambda each: each.lift)


def pulled_action(pulled_lift: Mm, height_saddle_share: PerString[Ratio]) -> Mm:
    """What the top's own movement adds to the action at fret 12, at once; neck and rim give besides.

    Formula: pulled_lift / mean(height_saddle_share)
    Source: similar triangles.
    """
    return float(pulled_lift / np.mean(height_saddle_share))


def pulled_turn_crept_least(pulled_turn: Radians, limit_top_creep_least: Ratio) -> Radians:
    """The bridge's turn after years under the strings, at the least to be expected.

    Formula: pulled_turn * limit_top_creep_least
    Source: common practice.
    """
    return pulled_turn * limit_top_creep_least


def pulled_turn_crept_most(pulled_turn: Radians, limit_top_creep_most: Ratio) -> Radians:
    """The bridge's turn after years under the strings, at the most to be expected.

    Formula: pulled_turn * limit_top_creep_most
    Source: common practice.
    """
    return pulled_turn * limit_top_creep_most


def pulled_turn_dry(pulled_turn: Radians, swell_moisture_dry: Percent, fitted_top: TimberKnown) -> Radians:
    """The bridge's turn in the driest air of the owner's year: the wood is stiffer; what shrinks is not in it.

    Method: the turn over the wood's stiffness there, as against what its figures hold at.
    Source: wood_handbook_5_moisture
    """
    return pulled_turn / stiffness_share(swell_moisture_dry, fitted_top.moisture)


def pulled_turn_damp(pulled_turn: Radians, swell_moisture_wet: Percent, fitted_top: TimberKnown) -> Radians:
    """The bridge's turn in the dampest air of the owner's year: the wood is weaker; what swells is not in it.

    Method: the turn over the wood's stiffness there, as against what its figures hold at.
    Source: wood_handbook_5_moisture
    """
    return pulled_turn / stiffness_share(swell_moisture_wet, fitted_top.moisture)


def pulled_strain_top(braced_final: tuple[Solved, ...]) -> Ratio:
    """The largest strain along the top's grain, at once.

    Method: on either face, wherever it is largest.
    Source: as the bridge's turn.
    """
    return next((abs(each.strained[0][1].strain) for each in braced_final), math.nan)


def pulled_strain_brace(braced_final: tuple[Solved, ...]) -> Ratio:
    """The largest strain along a brace, at once.

    Method: at foot and crest of every brace, wherever it is largest.
    Source: as the bridge's turn.
    """
    rows = [abs(place.strain) for each in braced_final for _, place in each.strained[1:]]
    return max(rows, default=math.nan)


def pulled_strained_brace(braced_final: tuple[Solved, ...]) -> str:
    """The brace that is strained most.

    Method: the one of the largest strain.
    Source: as the bridge's turn.
    """
    rows = [(abs(place.strain), name) for each in braced_final for name, place in each.strained[1:]]
    return max(rows)[1] if rows else ""


def pulled_said() -> str:
    """What is said wherever the top's movement is shown: how far the figure can be relied on.

    Method: the same words for every instrument.
    Source: the model's own bounds.
    """
    return RIGID
