"""How deep the fret slots are cut, from where, and what is left under them.

A slot is deep enough where the wire's tang does not bottom before its crown seats. A straight bottom is deeper at
the crest than it needs to be; a bottom that follows the arch keeps more wood but needs a saw that rides the arch.
Depths are square to the board's flat face, which never flatters: square to the arched face they are deeper still.
"""

import numpy as np

from gramil.quantities import Count, Mm, PerFret

OWNS = ("slot_",)


def slot_need(wire_tang_depth: Mm, slots_clearance: Mm) -> Mm:
    """The least depth below the finished surface, anywhere along a slot.

    Source: common practice.
    """
    return wire_tang_depth + slots_clearance


def slot_fall_at_end(arch_fall_at_core_treble: PerFret[Mm], arch_fall_at_core_bass: PerFret[Mm]) -> PerFret[Mm]:
    """The arch's fall at each slot's end, the deeper of the two: on the core's edge, if the board is bound.

    Formula: maximum(arch_fall_at_core_treble, arch_fall_at_core_bass)
    Source: common practice.
    """
    return np.maximum(arch_fall_at_core_treble, arch_fall_at_core_bass)


def slot_first(scale_zero_fret: bool) -> Count:
    """The number of the first fret that has a slot: 0 with a zero fret, otherwise 1.

    Formula: 0 if scale_zero_fret else 1
    Source: common practice.
    """
    return 0 if scale_zero_fret else 1


def slot_fall_greatest(slot_fall_at_end: PerFret[Mm], slot_first: Count) -> Mm:
    """The greatest fall at any slot's end: one setting serves the whole board.

    Formula: max(slot_fall_at_end[slot_first:])
    Source: common practice.
    """
    return float(slot_fall_at_end[slot_first:].max())


def slot_depth_at_crest(slot_need: Mm, slot_fall_greatest: Mm, slots_bottom: str) -> Mm:
    """Depth of the finished slot below the finished crest.

    Formula: slot_need + (slot_fall_greatest if slots_bottom == "straight" else 0)
    Source: common practice.
    """
    return slot_need + (slot_fall_greatest if slots_bottom == "straight" else 0.0)


def slot_depth_setting(slot_depth_at_crest: Mm, slots_crest_loss: Mm, slots_cut: str) -> Mm:
    """What to set for the main kerf: below the flat face before arching, or below the crest after it.

    Before arching it allows for the crest that arching and levelling still take off.
    Formula: slot_depth_at_crest + (slots_crest_loss if slots_cut == "before arching" else 0)
    Source: common practice.
    """
    return slot_depth_at_crest + (slots_crest_loss if slots_cut == "before arching" else 0.0)


def slot_kerf_at_crest(slot_depth_setting: Mm, slots_crest_loss: Mm, slots_cut: str) -> Mm:
    """Depth that the main kerf has below the finished crest, by what the saw was set to: what is left hangs on this.

    Formula: slot_depth_setting - (slots_crest_loss if slots_cut == "before arching" else 0)
    Source: common practice.
    """
    return slot_depth_setting - (slots_crest_loss if slots_cut == "before arching" else 0.0)


def slot_kerf_at_end(
    slot_kerf_at_crest: Mm, slot_fall_at_end: PerFret[Mm], slots_bottom: str, slots_cut: str
) -> PerFret[Mm]:
    """Depth that the main kerf leaves at each slot's end once the board is arched.

    A kerf whose saw rode the arch keeps its depth; any other is a straight line, and the arch has fallen away from it.
    Formula: slot_kerf_at_crest - slot_fall_at_end
        * (0 if slots_bottom == "follows the arch" and slots_cut == "after arching" else 1)
    Source: common practice.
    """
    return slot_kerf_at_crest - slot_fall_at_end * (not _rode_the_arch(slots_bottom, slots_cut))


def slot_depth_at_end(slot_need: Mm, slot_kerf_at_end: PerFret[Mm]) -> PerFret[Mm]:
    """Depth of the finished slot at its end: a pilot is deepened to the need, a straight bottom is left as cut.

    Formula: maximum(slot_need, slot_kerf_at_end)
    Source: common practice.
    """
    return np.maximum(slot_need, slot_kerf_at_end)


def slot_to_deepen(slot_depth_at_end: PerFret[Mm], slot_kerf_at_end: PerFret[Mm]) -> PerFret[Mm]:
    """What the hand saw riding the arch still takes at each slot's end after arching.

    Source: common practice.
    """
    return slot_depth_at_end - slot_kerf_at_end


def slot_left_at_crest(thickness_at_crest: PerFret[Mm], slot_kerf_at_crest: Mm) -> PerFret[Mm]:
    """Wood left under each slot on the centreline, underside levelled if it is to be.

    Source: common practice.
    """
    return thickness_at_crest - slot_kerf_at_crest


def slot_thickness_at_end(
    thickness_crest_at_slot_treble: PerFret[Mm],
    arch_fall_at_core_treble: PerFret[Mm],
    thickness_crest_at_slot_bass: PerFret[Mm],
    arch_fall_at_core_bass: PerFret[Mm],
) -> PerFret[Mm]:
    """Thickness of the finished board at each slot's end, arch and levelling done; the less of the two ends.

    Formula: minimum(thickness_crest_at_slot_treble - arch_fall_at_core_treble,
        thickness_crest_at_slot_bass - arch_fall_at_core_bass)
    Source: common practice.
    """
    return np.minimum(
        thickness_crest_at_slot_treble - arch_fall_at_core_treble,
        thickness_crest_at_slot_bass - arch_fall_at_core_bass,
    )


def slot_left_at_treble_end(
    thickness_crest_at_slot_treble: PerFret[Mm],
    arch_fall_at_core_treble: PerFret[Mm],
    slot_need: Mm,
    slot_kerf_at_crest: Mm,
    slots_bottom: str,
    slots_cut: str,
) -> PerFret[Mm]:
    """Wood left under each slot at its treble end: thickness there less the slot's depth there.

    Formula: thickness_crest_at_slot_treble - arch_fall_at_core_treble - maximum(slot_need, slot_kerf_at_crest
        - arch_fall_at_core_treble * (0 if slots_bottom == "follows the arch" and slots_cut == "after arching" else 1))
    Source: common practice.
    """
    fallen_away = not _rode_the_arch(slots_bottom, slots_cut)
    depth = np.maximum(slot_need, slot_kerf_at_crest - arch_fall_at_core_treble * fallen_away)
    return thickness_crest_at_slot_treble - arch_fall_at_core_treble - depth


def slot_left_at_bass_end(
    thickness_crest_at_slot_bass: PerFret[Mm],
    arch_fall_at_core_bass: PerFret[Mm],
    slot_need: Mm,
    slot_kerf_at_crest: Mm,
    slots_bottom: str,
    slots_cut: str,
) -> PerFret[Mm]:
    """Wood left under each slot at its bass end: thickness there less the slot's depth there.

    Formula: thickness_crest_at_slot_bass - arch_fall_at_core_bass - maximum(slot_need, slot_kerf_at_crest
        - arch_fall_at_core_bass * (0 if slots_bottom == "follows the arch" and slots_cut == "after arching" else 1))
    Source: common practice.
    """
    fallen_away = not _rode_the_arch(slots_bottom, slots_cut)
    depth = np.maximum(slot_need, slot_kerf_at_crest - arch_fall_at_core_bass * fallen_away)
    return thickness_crest_at_slot_bass - arch_fall_at_core_bass - depth


def _rode_the_arch(bottom: str, cut: str) -> bool:
    return bottom == "follows the arch" and cut == "after arching"


def slot_left_at_end(slot_left_at_treble_end: PerFret[Mm], slot_left_at_bass_end: PerFret[Mm]) -> PerFret[Mm]:
    """Wood left under each slot at its ends, the less of the two.

    Formula: minimum(slot_left_at_treble_end, slot_left_at_bass_end)
    Source: common practice.
    """
    return np.minimum(slot_left_at_treble_end, slot_left_at_bass_end)


def slot_left_least(slot_left_at_crest: PerFret[Mm], slot_left_at_end: PerFret[Mm]) -> PerFret[Mm]:
    """The least wood left anywhere under each slot.

    Formula: minimum(slot_left_at_crest, slot_left_at_end)
    Source: common practice.
    """
    return np.minimum(slot_left_at_crest, slot_left_at_end)


def slot_thinnest_at_crest(thickness_at_crest: PerFret[Mm], slot_first: Count) -> Mm:
    """The finished board's thickness on the centreline at the slot where that is least.

    Formula: min(thickness_at_crest[slot_first:])
    Source: common practice.
    """
    return float(thickness_at_crest[slot_first:].min())


def slot_thinnest_at_end(slot_thickness_at_end: PerFret[Mm], slot_first: Count) -> Mm:
    """The finished board's thickness at the slot's end where that is least.

    Formula: min(slot_thickness_at_end[slot_first:])
    Source: common practice.
    """
    return float(slot_thickness_at_end[slot_first:].min())
