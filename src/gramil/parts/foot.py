"""The heel of a neck that the body is built on: the slots that the sides go into, and the foot inside the body.

The slots are sawn straight, as deep all down the heel as the wood left between them, and square to the top's rim. A
neck that is joined to a closed body has none of this: its figures here are not known, and not listed.
"""

import math

import numpy as np

from gramil.parts.body_records import Brace
from gramil.quantities import Mm, Radians
from gramil.shapes.half_outline import HalfOutline
from gramil.shapes.outline import Outline
from gramil.shapes.tapered_bar import TaperedBar

OWNS = ("foot_",)

FINENESS = 0.01
"""In mm: the outline's straight runs keep this close to it."""
STEPS = 33
"""Places along a slot at which the side's curve is held against it."""


def foot_there(instrument_build: str) -> bool:
    """Whether the body is built on the neck, whose heel then has slots for the sides and a foot inside the body.

    Formula: instrument_build == "on the neck"
    Source: common practice.
    """
    return instrument_build == "on the neck"


def foot_cheek(foot_there: bool, carve_form: TaperedBar, body_edge: Mm) -> Mm:
    """From the centreline to the heel's cheek at the board, where a side goes in.

    Method: half the finished board's width at the body's edge.
    Source: common practice.
    """
    return float(carve_form.at(body_edge).half_width) if foot_there else math.nan


def foot_slot_bottom(foot_there: bool, carve_slots_apart: Mm) -> Mm:
    """From the centreline to the bottom of each slot, where the side ends; alike all down the heel.

    Formula: carve_slots_apart / 2 if foot_there else nan
    Source: common practice.
    """
    return carve_slots_apart / 2 if foot_there else math.nan


def foot_slot_depth(foot_cheek: Mm, foot_slot_bottom: Mm) -> Mm:
    """Depth of each slot at the board, square to the centreline, in from the heel's cheek.

    Formula: foot_cheek - foot_slot_bottom
    Source: common practice.
    """
    return foot_cheek - foot_slot_bottom


def foot_slot_depth_at_cap(carve_heel_width: Mm, foot_slot_bottom: Mm) -> Mm:
    """Depth of each slot at the heel's cap, square to the centreline; negative: the carved cap does not reach it.

    Formula: carve_heel_width / 2 - foot_slot_bottom
    Source: common practice.
    """
    return carve_heel_width / 2 - foot_slot_bottom


def foot_slot_width(foot_there: bool, body_wall: Mm, carve_slot_room: Mm) -> Mm:
    """Width of each slot in the heel: the side's thickness and room for glue, or for a wedge behind it.

    Formula: body_wall + carve_slot_room if foot_there else nan
    Source: common practice.
    """
    return body_wall + carve_slot_room if foot_there else math.nan


def foot_slot_inner(foot_slot_bottom: Mm, body_outlines: tuple[Outline, ...]) -> Mm:
    """From the body's edge to the slot's front at its bottom, toward the tail: where the side's face is there.

    Method: where the outline is so far from the centreline, on the bass; without a body, at its edge.
    Source: common practice.
    """
    return _along_at(body_outlines, foot_slot_bottom)


def foot_slot_outer(foot_cheek: Mm, body_outlines: tuple[Outline, ...]) -> Mm:
    """From the body's edge to the slot's front at the heel's cheek, toward the tail: where the side's face is there.

    Method: where the outline is so far from the centreline, on the bass; without a body, at its edge.
    Source: common practice.
    """
    return _along_at(body_outlines, foot_cheek)


def _along_at(outlines: tuple[Outline, ...], across: float) -> float:
    """Where an outline, from its neck end, is first at a distance from the centreline; nan for nan."""
    if math.isnan(across):
        return math.nan
    return next((_first_at(each.bass_half, across) for each in outlines), 0.0)


def _first_at(outline: HalfOutline, across: float) -> float:
    half = outline.curve.polyline(FINENESS)
    row = int(np.argmax(half[:, 1] >= across))
    if row == 0:
        return 0.0
    (x0, y0), (x1, y1) = half[row - 1], half[row]
    return float(x0 + (x1 - x0) * (across - y0) / (y1 - y0))


def foot_slot_place(body_edge: Mm, foot_slot_outer: Mm) -> Mm:
    """From the zero line to the front of each slot at the heel's cheek, along the centreline.

    Formula: body_edge + foot_slot_outer
    Source: common practice.
    """
    return body_edge + foot_slot_outer


def foot_slot_angle(foot_slot_outer: Mm, foot_slot_inner: Mm, foot_slot_depth: Mm) -> Radians:
    """How far each slot is off square to the centreline, seen on the face: its outer end toward the tail positive.

    Formula: arctan((foot_slot_outer - foot_slot_inner) / foot_slot_depth)
    Source: a right triangle.
    """
    return float(np.arctan((foot_slot_outer - foot_slot_inner) / foot_slot_depth))


def foot_slot_bow(
    foot_slot_bottom: Mm,
    foot_cheek: Mm,
    foot_slot_inner: Mm,
    foot_slot_outer: Mm,
    body_outlines: tuple[Outline, ...],
) -> Mm:
    """How far the side's curve lies off the straight slot at most: room that a slot sawn straight must have.

    Method: the outline's distance along from the straight line between the slot's ends, at places between them; on
        the treble too, where a cutaway may begin in the heel.
    Source: common practice.
    """
    if math.isnan(foot_cheek):
        return math.nan
    across = np.linspace(foot_slot_bottom, foot_cheek, STEPS)
    straight = np.interp(across, (foot_slot_bottom, foot_cheek), (foot_slot_inner, foot_slot_outer))
    halves = [half for each in body_outlines for half in (each.treble_half, each.bass_half)]
    off = (abs(_first_at(half, float(y)) - x) for half in halves for y, x in zip(across, straight, strict=True))
    return float(max(off, default=0.0))


def foot_step(foot_there: bool, graduated_edge: Mm) -> Mm:
    """How far the neck's face is let down from the body's edge to the foot's end, so that the top lies flush in it.

    Formula: graduated_edge if foot_there else nan
    Source: common practice.
    """
    return graduated_edge if foot_there else math.nan


def foot_height(foot_there: bool, body_depth_neck: Mm) -> Mm:
    """Height of the foot between top and back: that of the sides at the neck.

    Formula: body_depth_neck if foot_there else nan
    Source: common practice.
    """
    return body_depth_neck if foot_there else math.nan


def foot_length(foot_there: bool, body_neck_block: Mm) -> Mm:
    """Length of the foot's block from the body's edge into the body, under the top: the neck block's.

    Formula: body_neck_block if foot_there else nan
    Source: common practice.
    """
    return body_neck_block if foot_there else math.nan


def foot_end(body_edge: Mm, foot_length: Mm) -> Mm:
    """Where the foot's block ends under the top, from the zero line.

    Formula: body_edge + foot_length
    Source: common practice.
    """
    return body_edge + foot_length


def foot_reach(foot_end: Mm, neck_angle_face: Radians, neck_heel_depth: Mm) -> Mm:
    """How far the foot's block reaches down the heel, from the zero line: with a neck that leans forward it leans too.

    Formula: foot_end + maximum(0, -tan(neck_angle_face)) * neck_heel_depth
    Source: a right triangle.
    """
    return foot_end + max(0.0, -math.tan(neck_angle_face)) * neck_heel_depth


def foot_behind_slots(
    foot_length: Mm, foot_slot_outer: Mm, foot_slot_inner: Mm, foot_slot_width: Mm, foot_slot_angle: Radians
) -> Mm:
    """Wood of the foot left behind the slots, toward the tail: what holds the sides in.

    Formula: foot_length - maximum(foot_slot_outer, foot_slot_inner) - foot_slot_width / cos(foot_slot_angle)
    Source: common practice.
    """
    return foot_length - max(foot_slot_outer, foot_slot_inner) - foot_slot_width / math.cos(foot_slot_angle)


def foot_heel_over(neck_heel_depth: Mm, foot_step: Mm, foot_height: Mm) -> Mm:
    """How far the heel reaches past the sides' lower edge at the neck; negative: the sides stand past the heel.

    Formula: neck_heel_depth - foot_step - foot_height
    Source: common practice.
    """
    return neck_heel_depth - foot_step - foot_height


def foot_toe_room(foot_length: Mm, carve_foot_toe: Mm, body_neck_block_width: Mm, brace_list: tuple[Brace, ...]) -> Mm:
    """Room along the back between the foot's toe and the brace that comes next to it; not known without such a brace.

    Method: the least distance along of the corners of those braces that come as near to the centreline as the toe does.
    Source: common practice.
    """
    half = body_neck_block_width / 2
    back = [each for each in brace_list if each.plate == "back"]
    crossing = [
        each for each in back if min(y for _, y in each.footprint) < half and max(y for _, y in each.footprint) > -half
    ]
    nearest = min((x for each in crossing for x, _ in each.footprint), default=math.nan)
    return nearest - foot_length - carve_foot_toe
