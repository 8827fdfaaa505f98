"""How high each string lies: over every crown, at the nut and at the saddle, strung and before stringing.

Heights are to the strings' undersides. The *crest plane* is that of the straight board where it lies on the body, so
that relief lifts the neck's board over it (`relief_rise`). A string is a straight line through two heights that the
maker chose, one at the nut and one at fret 12, each over that string's own crown.
"""

import numpy as np

from gramil.quantities import Count, Mm, PerFret, PerString, PerStringFret, Ratio

OWNS = ("action_", "crown_", "height_")


def action_fret(fret_position: PerFret[Mm]) -> Count:
    """The fret over which the action is given: the 12th, or the last of a shorter board.

    Formula: minimum(12, len(fret_position) - 1)
    Source: common practice.
    """
    return min(12, len(fret_position) - 1)


def action_share(string_y: PerStringFret[Mm], action_fret: Count) -> PerString[Ratio]:
    """How far across each string lies at that fret: 0 for the outer treble string, 1 for the outer bass string.

    Formula: (string_y[0, action_fret] - string_y[:, action_fret])
        / (string_y[0, action_fret] - string_y[-1, action_fret])
    Source: common practice.
    """
    across = string_y[:, action_fret]
    return (across[0] - across) / (across[0] - across[-1])


def action_wanted(heights_action_treble: Mm, heights_action_bass: Mm, action_share: PerString[Ratio]) -> PerString[Mm]:
    """Each open string over the crown of fret 12, strung, relief in; straight from treble to bass.

    Source: common practice.
    """
    return heights_action_treble + (heights_action_bass - heights_action_treble) * action_share


def action_nut_fret(heights_nut_over: str, scale_zero_fret: bool) -> Count:
    """The fret over whose crown the height at the nut is given; with a zero fret the strings lie on it.

    Formula: 0 if scale_zero_fret or heights_nut_over == "the zero line" else 1
    Source: common practice.
    """
    return 0 if scale_zero_fret or heights_nut_over == "the zero line" else 1


def action_nut(
    heights_nut_treble: Mm, heights_nut_bass: Mm, action_share: PerString[Ratio], scale_zero_fret: bool
) -> PerString[Mm]:
    """Each open string over that crown at the nut; nothing with a zero fret.

    Formula: (heights_nut_treble + (heights_nut_bass - heights_nut_treble) * action_share) * (not scale_zero_fret)
    Source: common practice.
    """
    return (heights_nut_treble + (heights_nut_bass - heights_nut_treble) * action_share) * (not scale_zero_fret)


def crown_height(
    wire_crown_height: Mm,
    heights_dressing_loss: Mm,
    found_crown_mean: Mm,
    repair_described: bool,
    repair_refret: bool,
) -> Mm:
    """Height of the finished crowns over the board, frets levelled and dressed; of old frets that stay, as found.

    Formula: found_crown_mean if repair_described and not repair_refret else wire_crown_height - heights_dressing_loss
    Source: common practice.
    """
    return found_crown_mean if repair_described and not repair_refret else wire_crown_height - heights_dressing_loss


def crown_top(
    crown_height: Mm,
    arch_fall_under_string: PerStringFret[Mm],
    relief_rise: PerStringFret[Mm],
    lean_under_string: PerStringFret[Mm],
) -> PerStringFret[Mm]:
    """Top of each crown under each string over the crest plane, relief in.

    Source: common practice.
    """
    return crown_height - arch_fall_under_string + relief_rise + lean_under_string


def height_slope(
    crown_top: PerStringFret[Mm],
    action_wanted: PerString[Mm],
    action_nut: PerString[Mm],
    action_fret: Count,
    action_nut_fret: Count,
    string_x: PerStringFret[Mm],
) -> PerString[Ratio]:
    """How much each string rises over the crest plane for each mm along the board, from nut to saddle.

    Formula: (crown_top[:, action_fret] + action_wanted - crown_top[:, action_nut_fret] - action_nut)
        / (string_x[:, action_fret] - string_x[:, action_nut_fret])
    Source: common practice.
    """
    rise = crown_top[:, action_fret] + action_wanted - crown_top[:, action_nut_fret] - action_nut
    return rise / (string_x[:, action_fret] - string_x[:, action_nut_fret])


def height_at_zero(
    crown_top: PerStringFret[Mm],
    action_wanted: PerString[Mm],
    action_fret: Count,
    height_slope: PerString[Ratio],
    string_x: PerStringFret[Mm],
) -> PerString[Mm]:
    """Each string over the crest plane at the zero line.

    Formula: crown_top[:, action_fret] + action_wanted
        - height_slope * (string_x[:, action_fret] - string_x[:, 0])
    Source: common practice.
    """
    run = string_x[:, action_fret] - string_x[:, 0]
    return crown_top[:, action_fret] + action_wanted - height_slope * run


def height_over_crown(
    height_at_zero: PerString[Mm],
    height_slope: PerString[Ratio],
    string_x: PerStringFret[Mm],
    crown_top: PerStringFret[Mm],
) -> PerStringFret[Mm]:
    """Each open string over each fret's crown, strung, relief in: how far a finger presses it down there.

    Formula: height_at_zero[:, None] + height_slope[:, None] * (string_x - string_x[:, :1]) - crown_top
    Source: common practice.
    """
    return height_at_zero[:, None] + height_slope[:, None] * (string_x - string_x[:, :1]) - crown_top


def height_at_scale_end(
    height_at_zero: PerString[Mm],
    height_slope: PerString[Ratio],
    string_scale_end_x: PerString[Mm],
    string_x: PerStringFret[Mm],
) -> PerString[Mm]:
    """Each string's line over the crest plane at the end of its scale: from there its set-back is sought along it.

    Formula: height_at_zero + height_slope * (string_scale_end_x - string_x[:, 0])
    Source: common practice.
    """
    return height_at_zero + height_slope * (string_scale_end_x - string_x[:, 0])


def height_saddle_x(saddle_break_x: PerString[Mm], string_scale_end_x: PerString[Mm]) -> PerString[Mm]:
    """Where each string leaves the saddle, along the centreline: its break point; unknown, the end of its scale.

    Formula: where(isnan(saddle_break_x), string_scale_end_x, saddle_break_x)
    Source: common practice.
    """
    return np.where(np.isnan(saddle_break_x), string_scale_end_x, saddle_break_x)


def height_run(height_saddle_x: PerString[Mm], string_x: PerStringFret[Mm]) -> PerString[Mm]:
    """From the zero line to where each string leaves the saddle, along the centreline.

    Formula: height_saddle_x - string_x[:, 0]
    Source: common practice.
    """
    return height_saddle_x - string_x[:, 0]


def height_at_saddle(
    height_at_zero: PerString[Mm], height_slope: PerString[Ratio], height_run: PerString[Mm]
) -> PerString[Mm]:
    """Each string over the crest plane where it leaves the saddle, strung, relief in.

    On a straight neck with fret 12 half way to the break point it is c + 2 a - n - 2 s12 + s0: crown, action, height
    over fret 0's crown, and the arch's fall under the string at fret 12 and at the zero line.
    Source: common practice.
    """
    return height_at_zero + height_slope * height_run


def height_over_chord(
    height_at_saddle: PerString[Mm],
    crown_top: PerStringFret[Mm],
    height_saddle_x: PerString[Mm],
    string_x: PerStringFret[Mm],
    scale_join: Ratio,
) -> PerString[Mm]:
    """Each string at the saddle over the line through its own crowns at the nut and at the join, strung.

    On a straight neck with fret 12 half way to the break point it is 2 a - n. It is what a straightedge on those
    crowns would show.
    Method: the crowns' line at the join is read between frets; the line is drawn on to the saddle.
    Source: common practice.
    """
    frets = np.arange(crown_top.shape[1])
    join_z = np.array([np.interp(scale_join, frets, row) for row in crown_top])
    join_x = np.array([np.interp(scale_join, frets, row) for row in string_x])
    first = crown_top[:, 0]
    line = first + (join_z - first) * (height_saddle_x - string_x[:, 0]) / (join_x - string_x[:, 0])
    return height_at_saddle - line


def height_saddle_share(height_run: PerString[Mm], string_x: PerStringFret[Mm], action_fret: Count) -> PerString[Ratio]:
    """How much a string moves at the saddle for each mm of action at fret 12: 2 where fret 12 is half way to it.

    Formula: height_run / (string_x[:, action_fret] - string_x[:, 0])
    Source: similar triangles.
    """
    return height_run / (string_x[:, action_fret] - string_x[:, 0])


def height_at_saddle_unloaded(
    height_at_saddle: PerString[Mm], heights_body_rise: Mm, height_saddle_share: PerString[Ratio]
) -> PerString[Mm]:
    """Each string's place over the crest plane at the saddle before stringing: what the neck is set to.

    Under the pull the body turns and the top rises, and with them the action; that much is left out beforehand.
    Source: common practice.
    """
    return height_at_saddle - heights_body_rise * height_saddle_share
