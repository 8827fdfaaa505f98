"""Which saw cuts the slots, and which one deepens them after arching."""

import math

from gramil.description.records import Saw
from gramil.quantities import Mm

OWNS = ("saw_",)

NO_SAW = Saw("none", math.nan, "", False, "no saw in the shop does this")


def saw_main(
    shop_saws: tuple[Saw, ...],
    wire_tang_thickness: Mm,
    slots_bottom: str,
    slots_cut: str,
    slots_saw: str,
    slot_fall_greatest: Mm,
) -> Saw:
    """The saw for the main kerf: the one that the maker named, else the best of those that can make this cut.

    Method: before arching, and on a board that stays flat, any saw serves; after it, a straight bottom needs a saw
    from above with its stop over the crest, an arched bottom one whose stop rides on the arch. Of these a saw that
    does not ride the arch is taken first where either serves, then the least |kerf - tang|.
    Source: common practice.
    """
    flat_face = slots_cut == "before arching" or slot_fall_greatest == 0
    able = [saw for saw in shop_saws if (flat_face or _cuts_arched(saw, slots_bottom)) and slots_saw in ("", saw.name)]
    return min(able, key=lambda saw: (saw.rides_arch, abs(saw.kerf - wire_tang_thickness)), default=NO_SAW)


def _cuts_arched(saw: Saw, bottom: str) -> bool:
    if bottom == "straight":
        return saw.cuts == "from above" and not saw.rides_arch
    return saw.rides_arch


def saw_deepening(shop_saws: tuple[Saw, ...], slots_bottom: str, slots_cut: str, saw_main: Saw) -> Saw:
    """The saw that deepens a pilot's ends after arching: one riding the arch, its kerf nearest the main one's.

    Method: needed only for a bottom that follows the arch cut before arching; otherwise no saw.
    Source: common practice.
    """
    if slots_bottom != "follows the arch" or slots_cut != "before arching":
        return NO_SAW
    able = [saw for saw in shop_saws if saw.rides_arch]
    return min(able, key=lambda saw: abs(saw.kerf - saw_main.kerf), default=NO_SAW)


def saw_kerf(saw_main: Saw) -> Mm:
    """Kerf of the saw that cuts the slots, as measured.

    Source: the shop's own measurement.
    """
    return saw_main.kerf


def saw_kerf_over(saw_deepening: Saw, saw_kerf: Mm) -> Mm:
    """How much wider the deepening saw's kerf is than the main one's; not a number where nothing is deepened.

    Source: the shop's own measurement.
    """
    return saw_deepening.kerf - saw_kerf
