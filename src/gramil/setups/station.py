"""The places along the board where a hand measures, and whether the frets are square to the centreline."""

from gramil.quantities import Count, Mm, PerFret

OWNS = ("station_",)


def station_middle_fret(fret_position: PerFret[Mm]) -> Count:
    """The fret that is measured half way along: the 12th, or the last of a shorter board.

    Formula: minimum(12, len(fret_position) - 1)
    Source: common practice.
    """
    return min(12, len(fret_position) - 1)


def station_fanned(scale_run_bass: Mm, scale_run_treble: Mm) -> bool:
    """Whether the frets fan: the two outer strings have scales of their own.

    Source: common practice.
    """
    return bool(scale_run_bass != scale_run_treble)


def station_width_at_nut_end(
    nut_width: Mm, board_width_at_tail: Mm, board_nut_position: Mm, board_tail_position: Mm
) -> Mm:
    """Finished width where the board's nut end crosses the centreline.

    Method: on the straight line from the width at the zero line to the width at the tail end.
    Source: common practice.
    """
    return nut_width + (board_width_at_tail - nut_width) * board_nut_position / board_tail_position
