"""Verdicts on braces and bridge plate: the relations that a plan keeps, looked at again after every change."""

import math
from typing import Any

from gramil import names as n
from gramil.findings.finding import Finding, Findings
from gramil.findings.threshold import Bounds, at_least, at_most, judged
from gramil.parts.body_records import Brace, Stick
from gramil.quantities import Mm
from gramil.reference import Ref

OWNS = ("finding_",)

TOUCHING = 1e-6
"""In mm: parts that lie no further apart touch."""


def _room(name: str, figure: Ref[Any], value: float, bounds: Bounds, says: str, remedy: str) -> Findings:
    """One finding on a distance; none if there is nothing to measure."""
    return () if math.isnan(value) else (judged(name, figure, value, bounds, says, remedy),)


def finding_brace_outside(room_outside: tuple[str, ...], brace_list: tuple[Brace, ...]) -> Findings:
    """Whether every brace lies in the body from end to end."""
    return tuple(_outside(row, each) for row, each in enumerate(brace_list, 1) if each.name in room_outside)


def _outside(row: int, brace: Brace) -> Finding:
    """A brace with neither end in the body has no length, so its height is the figure instead."""
    of = n.brace_list[row]
    figure, value = (of.length, brace.length) if math.isfinite(brace.length) else (of.height, brace.height)
    return Finding(
        "brace outside the body",
        "stop",
        figure,
        value,
        None,
        f"The {brace.name} brace does not lie within the linings from end to end.",
        f"It is held to the {brace.held_to}: move its line, or hold it to something else.",
    )


def finding_braces_meet(brace_unmet: tuple[str, ...], brace_list: tuple[Brace, ...]) -> Findings:
    """Whether braces that are to be notched into each other meet."""
    if not brace_unmet:
        return ()
    row = next(row for row, each in enumerate(brace_list, 1) if brace_unmet[0].startswith(f"{each.name} and "))
    says = f"These are to be notched into each other, and do not meet: {'; '.join(brace_unmet)}."
    remedy = "Move the one that strayed, hold both to the same, or take the name out of crosses."
    height = brace_list[row - 1].height
    return (Finding("notched braces", "stop", n.brace_list[row].height, height, None, says, remedy),)


def finding_brace_low(brace_low: tuple[str, ...]) -> Findings:
    """Whether a brace is high enough on its dome for a straight upper edge."""
    if not brace_low:
        return ()
    says = (
        "So low on their dome that a straight upper edge would leave less over the plate than at their ends: "
        f"{', '.join(brace_low)}. Their cards follow the plate there."
    )
    remedy = "Make them higher or shorter, or lower at their ends."
    return (Finding("low braces", "note", n.brace_low, math.nan, None, says, remedy),)


def finding_plate_outside(plate_outside: tuple[str, ...], plate_back: Mm) -> Findings:
    """Whether the bridge plate lies in the body."""
    if not plate_outside:
        return ()
    says = "A corner of the bridge plate lies outside the linings."
    return (
        Finding(
            "bridge plate outside the body", "stop", n.plate_back, plate_back, None, says, "Make the plate smaller."
        ),
    )


def finding_wings(room_bridge_to_legs: Mm, limit_wing_off_leg: Mm) -> Findings:
    """Whether the bridge lands on both legs of the X."""
    return _room(
        "bridge on the X",
        n.room_bridge_to_legs,
        room_bridge_to_legs,
        at_most(n.limit_wing_off_leg, limit_wing_off_leg),
        "How far the bridge misses the leg of the X that is farthest from it.",
        "Move the crossing, open or close the X, or make the bridge longer.",
    )


def finding_plate_under_pins(room_pins_in_plate: Mm, limit_plate_under_pin: Mm) -> Findings:
    """Whether the bridge plate lies under every pin, with wood round the hole."""
    return _room(
        "bridge plate under the pins",
        n.room_pins_in_plate,
        room_pins_in_plate,
        at_least(n.limit_plate_under_pin, limit_plate_under_pin, stop=0.0),
        "How far the plate reaches past the pin's hole nearest its edge.",
        "A larger plate, or one that lies further back.",
    )


def finding_plate_to_legs(room_plate_to_legs: Mm, limit_plate_to_leg: Mm) -> Findings:
    """Whether the bridge plate reaches the legs of the X."""
    return _room(
        "bridge plate and X",
        n.room_plate_to_legs,
        room_plate_to_legs,
        at_most(n.limit_plate_to_leg, limit_plate_to_leg),
        "How far the plate stops short of a leg of the X.",
        "A longer plate: fit it against both legs.",
    )


def finding_plate_to_braces(room_plate_to_braces: Mm, limit_brace_room: Mm) -> Findings:
    """Whether braces other than the legs of the X keep off the bridge plate."""
    return _room(
        "bridge plate and braces",
        n.room_plate_to_braces,
        room_plate_to_braces,
        at_least(n.limit_brace_room, limit_brace_room, stop=TOUCHING),
        "From the bridge plate to the nearest brace that is no leg of the X.",
        "Move the brace, or make the plate shorter there.",
    )


def finding_crossing_room(room_crossing_to_hole: Mm, limit_crossing_room: Mm) -> Findings:
    """Whether there is glue room between the X and the soundhole."""
    return _room(
        "crossing and soundhole",
        n.room_crossing_to_hole,
        room_crossing_to_hole,
        at_least(n.limit_crossing_room, limit_crossing_room, stop=0.0),
        "From the soundhole's edge to the nearest leg of the X.",
        "Move the crossing toward the bridge, or the hole toward the neck, or make it smaller.",
    )


def finding_braces_to_hole(room_braces_to_hole: Mm, limit_brace_to_hole: Mm) -> Findings:
    """Whether the soundhole cuts into a brace of the top."""
    return _room(
        "braces and soundhole",
        n.room_braces_to_hole,
        room_braces_to_hole,
        at_least(n.limit_brace_to_hole, limit_brace_to_hole, stop=0.0),
        "From the soundhole's edge to the nearest brace; negative is a brace cut through.",
        "Move the brace or the hole.",
    )


def finding_pins_clear(room_pins_to_braces: Mm, limit_pin_room: Mm) -> Findings:
    """Whether the pins' holes miss every brace."""
    return _room(
        "pins and braces",
        n.room_pins_to_braces,
        room_pins_to_braces,
        at_least(n.limit_pin_room, limit_pin_room, stop=0.0),
        "From a pin's hole to the nearest brace; negative is a hole drilled into one.",
        "Move the brace, or the line of pins.",
    )


def finding_braces_apart(
    room_between_braces: Mm, room_nearest_braces: tuple[str, ...], limit_brace_room: Mm
) -> Findings:
    """Whether braces that are not joined keep clear of each other."""
    return _room(
        "braces apart",
        n.room_between_braces,
        room_between_braces,
        at_least(n.limit_brace_room, limit_brace_room, stop=TOUCHING),
        f"These braces come nearest each other: {' and '.join(room_nearest_braces)}.",
        "Shorten one, notch them into each other (crosses), or end the one against the other.",
    )


def finding_braces_to_blocks(room_braces_to_blocks: Mm, limit_brace_room: Mm) -> Findings:
    """Whether braces keep off neck and tail block."""
    return _room(
        "braces and blocks",
        n.room_braces_to_blocks,
        room_braces_to_blocks,
        at_least(n.limit_brace_room, limit_brace_room),
        "From a block to the nearest brace; nothing where one lies over it.",
        "Move the brace, or notch the block.",
    )


def finding_brace_stock(stick_wanting: tuple[Stick, ...], stick_list: tuple[Stick, ...]) -> Findings:
    """Whether the stock yields every brace."""
    if not stick_list:
        return ()
    wanting = ", ".join(each.name for each in stick_wanting)
    return (
        Finding(
            "wood for the braces",
            "note" if stick_wanting else "fine",
            n.stick_list[stick_list.index(stick_wanting[0]) + 1].length if stick_wanting else n.stick_list[1].length,
            (stick_wanting or stick_list)[0].length,
            None,
            f"No piece in the shop's list yields: {wanting}." if stick_wanting else "The stock yields every brace.",
            "Split a billet of their wood, of the sizes in the cut list." if stick_wanting else "",
        ),
    )
