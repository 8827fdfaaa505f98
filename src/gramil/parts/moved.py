"""A bridge reglued or moved: how far the saddle's line is out as found, and what becomes of its old slot."""

from gramil.quantities import Mm, PerString

OWNS = ("moved_",)


def moved_treble(height_saddle_x: PerString[Mm], nut_set_forward: Mm, found_saddle_treble: Mm) -> Mm:
    """How far the treble end of the saddle's line is to go, toward the tail positive.

    Formula: height_saddle_x[0] - nut_set_forward - found_saddle_treble
    Source: common practice.
    """
    return float(height_saddle_x[0]) - nut_set_forward - found_saddle_treble


def moved_bass(height_saddle_x: PerString[Mm], nut_set_forward: Mm, found_saddle_bass: Mm) -> Mm:
    """How far the bass end of the saddle's line is to go, toward the tail positive.

    Formula: height_saddle_x[-1] - nut_set_forward - found_saddle_bass
    Source: common practice.
    """
    return float(height_saddle_x[-1]) - nut_set_forward - found_saddle_bass


def moved_wanted_treble(height_saddle_x: PerString[Mm], nut_set_forward: Mm) -> Mm:
    """From the nut's face to where the treble string is to leave the saddle.

    Formula: height_saddle_x[0] - nut_set_forward
    Source: common practice.
    """
    return float(height_saddle_x[0]) - nut_set_forward


def moved_wanted_bass(height_saddle_x: PerString[Mm], nut_set_forward: Mm) -> Mm:
    """From the nut's face to where the bass string is to leave the saddle.

    Formula: height_saddle_x[-1] - nut_set_forward
    Source: common practice.
    """
    return float(height_saddle_x[-1]) - nut_set_forward


def moved_slots_overlap(moved_treble: Mm, moved_bass: Mm, found_saddle_slot_width: Mm, saddle_thickness: Mm) -> Mm:
    """How far the old saddle's slot and the new one run into each other where they are nearest, in a bridge that stays
    where it is; negative: the wood between them.

    Formula: (found_saddle_slot_width + saddle_thickness) / 2 - minimum(abs(moved_treble), abs(moved_bass))
    Source: common practice.
    """
    return (found_saddle_slot_width + saddle_thickness) / 2 - min(abs(moved_treble), abs(moved_bass))
