"""The truss rod's channel: where it begins and ends, and the wood left about it on every side.

It runs on the centreline under the board. Without a rod its figures are not known, and nothing is judged.
"""

import numpy as np

from gramil.quantities import Count, Mm, PerFret, Radians
from gramil.shapes.tapered_bar import TaperedBar, room_under

OWNS = ("rod_",)


def rod_start(
    neck_rod: str,
    carve_rod_access: str,
    plank_head_start: Mm,
    carve_rod_pocket: Mm,
    rod_body_end: Mm,
    rod_asked: Mm,
) -> Mm:
    """The channel's end toward the head, from the zero line: its pocket behind the nut, or its blind end.

    Formula: nan if neck_rod == "none" else plank_head_start - carve_rod_pocket if carve_rod_access == "head"
        else rod_body_end - rod_asked
    Source: common practice.
    """
    if neck_rod == "none":
        return float("nan")
    return plank_head_start - carve_rod_pocket if carve_rod_access == "head" else rod_body_end - rod_asked


def rod_start_away(rod_start: Mm) -> Mm:
    """How far the channel's end toward the head lies from the zero line, to whichever side.

    Formula: abs(rod_start)
    Source: common practice.
    """
    return abs(rod_start)


def rod_body_end(neck_rod: str, back_bow_length: Mm, plank_tail: Mm, carve_rod_access: str, carve_rod_clear: Mm) -> Mm:
    """How far the channel may go toward the body: right through to the soundhole, or short of the neck's end.

    Formula: nan if neck_rod == "none" else plank_tail - (plank_tail - back_bow_length + carve_rod_clear)
        * (carve_rod_access == "head")
    Source: common practice.
    """
    if neck_rod == "none":
        return float("nan")
    return back_bow_length - carve_rod_clear if carve_rod_access == "head" else plank_tail


def rod_asked(
    carve_rod_length: Mm,
    carve_rod_access: str,
    rod_body_end: Mm,
    plank_head_start: Mm,
    carve_rod_pocket: Mm,
    rod_nut_end: Mm,
) -> Mm:
    """Length of the channel: as given, or all the room that there is; not known without a rod.

    Formula: carve_rod_length + 0 * rod_body_end if carve_rod_length > 0 else rod_body_end
        - where(carve_rod_access == "head", plank_head_start - carve_rod_pocket, rod_nut_end)
    Source: common practice.
    """
    if carve_rod_length > 0:
        return carve_rod_length + 0 * rod_body_end
    return rod_body_end - (plank_head_start - carve_rod_pocket if carve_rod_access == "head" else rod_nut_end)


def rod_nut_end(neck_rod: str, board_nut_position: Mm, carve_rod_clear: Mm) -> Mm:
    """The nearest to the nut that a channel with a blind end there may begin, unless its length says otherwise.

    Formula: nan if neck_rod == "none" else board_nut_position + carve_rod_clear
    Source: common practice.
    """
    return float("nan") if neck_rod == "none" else board_nut_position + carve_rod_clear


def rod_end(rod_start: Mm, rod_asked: Mm) -> Mm:
    """The channel's end toward the body, from the zero line.

    Source: common practice.
    """
    return rod_start + rod_asked


def rod_blind_left(rod_start: Mm, rod_end: Mm, carve_rod_access: str, board_nut_position: Mm, plank_tail: Mm) -> Mm:
    """Wood past the channel's blind end: to the neck's own end, or to the nut where the rod is turned at the soundhole.

    Formula: plank_tail - rod_end if carve_rod_access == "head" else rod_start - board_nut_position
    Source: common practice.
    """
    return plank_tail - rod_end if carve_rod_access == "head" else rod_start - board_nut_position


def rod_unreached(rod_start: Mm, rod_end: Mm, carve_rod_access: str, board_nut_position: Mm, back_bow_length: Mm) -> Mm:
    """Neck past the blind end that the rod does not straighten: up to the body, or up to the nut; negative: none.

    Formula: back_bow_length - rod_end if carve_rod_access == "head" else rod_start - board_nut_position
    Source: common practice.
    """
    return back_bow_length - rod_end if carve_rod_access == "head" else rod_start - board_nut_position


def rod_over(
    slot_left_at_crest: PerFret[Mm], fret_position: PerFret[Mm], slot_first: Count, rod_start: Mm, rod_end: Mm
) -> PerFret[Mm]:
    """Board left between each slot's bottom and the channel under it, on the centreline; not known beside it.

    Formula: where((arange(len(fret_position)) >= slot_first)
        & (fret_position >= rod_start) & (fret_position <= rod_end), slot_left_at_crest, nan)
    Source: common practice.
    """
    slotted = np.arange(len(fret_position)) >= slot_first
    over = slotted & (fret_position >= rod_start) & (fret_position <= rod_end)
    return np.where(over, slot_left_at_crest, np.nan)


def rod_corner(
    carve_form: TaperedBar, fret_position: PerFret[Mm], neck_rod_width: Mm, neck_rod_depth: Mm, neck_rod: str
) -> PerFret[Mm]:
    """Wood between the channel's bottom corners and the carved back, the shortest way; negative: it breaks through.

    Method: from the corner to the nearest point of the back's curve at each fret, heel left out.
    Source: plane geometry.
    """
    if neck_rod == "none":
        return np.full(len(fret_position), np.nan)
    return np.array([room_under(carve_form.at(float(x)), neck_rod_width / 2, neck_rod_depth) for x in fret_position])


def rod_under_head(
    neck_rod: str,
    carve_rod_access: str,
    head_thickness: Mm,
    head_veneer: Mm,
    head_angle: Radians,
    neck_rod_depth: Mm,
) -> Mm:
    """Wood left under the pocket where the head begins, its thinnest place; not known without a pocket there.

    Formula: (head_thickness - head_veneer) / cos(head_angle) - neck_rod_depth
        if neck_rod != "none" and carve_rod_access == "head" else nan
    Source: a right triangle.
    """
    if neck_rod == "none" or carve_rod_access != "head":
        return float("nan")
    return float((head_thickness - head_veneer) / np.cos(head_angle) - neck_rod_depth)
