"""The four ways of cutting the slots, side by side: what to set from where, and what each leaves."""

from gramil.parts.records import SlotOption
from gramil.quantities import Count, Mm, PerFret, Ratio

OWNS = ("cutting_",)

WAYS = (
    ("straight", "before arching", "the flat face", "nothing more"),
    ("straight", "after arching", "the crest", "nothing more"),
    ("follows the arch", "before arching", "the flat face", "a hand saw riding the arch deepens the ends"),
    ("follows the arch", "after arching", "the arched face, riding it", "nothing more"),
)


def cutting_options(
    slot_need: Mm,
    slot_fall_greatest: Mm,
    slots_crest_loss: Mm,
    slot_thinnest_at_crest: Mm,
    slot_thinnest_at_end: Mm,
    cutting_kept: tuple[Ratio, Ratio, Ratio, Ratio],
) -> tuple[SlotOption, ...]:
    """Each way with its setting, the wood that it leaves at crest and slot end, and the stiffness it keeps at worst.

    Method: straight: need + greatest fall; following: need; before arching: the crest still to come off is added.
    A pilot's depth at the slot's end is need less the fall. A straight bottom leaves the same from crest to end.
    Source: common practice.
    """
    options = []
    for bottom, cut, measured_from, then in WAYS:
        straight = bottom == "straight"
        depth = slot_need + straight * slot_fall_greatest
        options.append(
            SlotOption(
                f"{bottom}, {cut}",
                bottom,
                cut,
                depth + slots_crest_loss * (cut == "before arching"),
                measured_from,
                then,
                slot_thinnest_at_crest - depth,
                slot_thinnest_at_crest - depth if straight else slot_thinnest_at_end - slot_need,
                depth - slot_fall_greatest * (straight or cut == "before arching"),
                cutting_kept[0 if straight else 1],
                cutting_kept[2 if straight else 3],
            )
        )
    return tuple(options)


def cutting_kept(
    section_kept_straight: PerFret[Ratio],
    section_kept_following: PerFret[Ratio],
    section_kept_straight_with_neck: PerFret[Ratio],
    section_kept_following_with_neck: PerFret[Ratio],
    slot_first: Count,
) -> tuple[Ratio, Ratio, Ratio, Ratio]:
    """The least stiffness kept at any slot: board alone (straight, following), board with neck (straight, following).

    Method: the smallest of each, over the frets that have a slot.
    Source: gere_goodno
    """
    return (
        float(section_kept_straight[slot_first:].min()),
        float(section_kept_following[slot_first:].min()),
        float(section_kept_straight_with_neck[slot_first:].min()),
        float(section_kept_following_with_neck[slot_first:].min()),
    )
