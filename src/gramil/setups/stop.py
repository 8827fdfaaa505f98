"""Where the saw's stop is set for the main kerf: from the face, or over a cradle's floor."""

from gramil.quantities import Count, Mm, PerFret

OWNS = ("stop_",)


def stop_stock(blank_thickness: Mm, thickness_before_levelling: Mm, slots_cut: str) -> Mm:
    """Thickness at the crest of the stock as it lies under the saw.

    Formula: blank_thickness if slots_cut == "before arching" else thickness_before_levelling
    Source: common practice.
    """
    return blank_thickness if slots_cut == "before arching" else thickness_before_levelling


def stop_over_cradle(shop_template_thickness: Mm, stop_stock: Mm, slot_depth_setting: Mm) -> Mm:
    """How high the teeth stop over the floor of a cradle that carries template and blank, face up.

    Source: common practice.
    """
    return shop_template_thickness + stop_stock - slot_depth_setting


def stop_thinnest_fret(slot_left_least: PerFret[Mm], slot_first: Count) -> Count:
    """The fret whose slot leaves the least wood.

    Formula: slot_first + argmin(slot_left_least[slot_first:])
    Source: common practice.
    """
    return slot_first + int(slot_left_least[slot_first:].argmin())


def stop_deepest_fret(slot_to_deepen: PerFret[Mm], slot_first: Count) -> Count:
    """The fret whose slot ends a hand saw riding the arch must deepen most.

    Formula: slot_first + argmax(slot_to_deepen[slot_first:])
    Source: common practice.
    """
    return slot_first + int(slot_to_deepen[slot_first:].argmax())
