"""Verdicts on braces and bridge plate: the relations that a plan keeps, looked at again after every change."""

import math
from typing import Any

from gramil import names as n
from gramil.findings.finding import Finding, Findings, Severity, at_least, within
from gramil.parts.body_records import Brace, Stick
from gramil.quantities import Mm
from gramil.reference import Ref

OWNS = ("finding_",)


def _room(
    name: str, severity: Severity, address: Ref[Any], value: float, limit: Ref[Any], says: str, remedy: str
) -> Findings:
    """One finding on a distance, none where there is nothing to measure."""
    if math.isnan(value):
        return ()
    return (Finding(name, severity, address, value, limit, says, "" if severity == "fine" else remedy),)


def finding_brace_outside(room_outside: tuple[str, ...], brace_list: tuple[Brace, ...]) -> Findings:
    """Whether every brace lies in the body from end to end."""
    named = [row for row, each in enumerate(brace_list, 1) if each.name in room_outside]
    return tuple(
        Finding(
            "brace outside the body",
            "stop",
            n.brace_list[row].length,
            brace_list[row - 1].length,
            None,
            f"The {brace_list[row - 1].name} brace does not lie within the linings from end to end.",
            f"It is held to the {brace_list[row - 1].held_to}: move its line, or hold it to something else.",
        )
        for row in named
    )


def finding_braces_meet(brace_unmet: tuple[str, ...]) -> Findings:
    """Whether braces that are to be notched into each other meet."""
    if not brace_unmet:
        return ()
    says = f"These are to be notched into each other, and do not meet: {'; '.join(brace_unmet)}."
    remedy = "Move the one that strayed, hold both to the same, or take the name out of crosses."
    return (Finding("notched braces", "stop", n.brace_unmet, math.nan, None, says, remedy),)


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
        within(room_bridge_to_legs, limit_wing_off_leg, math.inf),
        n.room_bridge_to_legs,
        room_bridge_to_legs,
        n.limit_wing_off_leg,
        "How far the bridge misses the leg of the X that is farthest from it.",
        "Move the crossing, open or close the X, or make the bridge longer.",
    )


def finding_plate_under_pins(room_pins_in_plate: Mm, limit_plate_under_pin: Mm) -> Findings:
    """Whether the bridge plate lies under every pin, with wood round the hole."""
    return _room(
        "bridge plate under the pins",
        at_least(room_pins_in_plate, limit_plate_under_pin, 0.0),
        n.room_pins_in_plate,
        room_pins_in_plate,
        n.limit_plate_under_pin,
        "How far the plate reaches past the pin's hole nearest its edge.",
        "A larger plate, or one that lies further back.",
    )


def finding_plate_to_legs(room_plate_to_legs: Mm, limit_plate_to_leg: Mm) -> Findings:
    """Whether the bridge plate reaches the legs of the X."""
    return _room(
        "bridge plate and X",
        within(room_plate_to_legs, limit_plate_to_leg, math.inf),
        n.room_plate_to_legs,
        room_plate_to_legs,
        n.limit_plate_to_leg,
        "How far the plate stops short of a leg of the X.",
        "A longer plate: fit it against both legs.",
    )


def finding_plate_to_braces(room_plate_to_braces: Mm, limit_brace_room: Mm) -> Findings:
    """Whether braces other than the legs of the X keep off the bridge plate."""
    return _room(
        "bridge plate and braces",
        "stop" if room_plate_to_braces == 0 else at_least(room_plate_to_braces, limit_brace_room, 0.0),
        n.room_plate_to_braces,
        room_plate_to_braces,
        n.limit_brace_room,
        "From the bridge plate to the nearest brace that is no leg of the X.",
        "Move the brace, or make the plate shorter there.",
    )


def finding_crossing_room(room_crossing_to_hole: Mm, limit_crossing_room: Mm) -> Findings:
    """Whether there is glue room between the X and the soundhole."""
    return _room(
        "crossing and soundhole",
        at_least(room_crossing_to_hole, limit_crossing_room, 0.0),
        n.room_crossing_to_hole,
        room_crossing_to_hole,
        n.limit_crossing_room,
        "From the soundhole's edge to the nearest leg of the X.",
        "Move the crossing toward the bridge, or the hole toward the neck, or make it smaller.",
    )


def finding_braces_to_hole(room_braces_to_hole: Mm, limit_brace_to_hole: Mm) -> Findings:
    """Whether the soundhole cuts into a brace of the top."""
    return _room(
        "braces and soundhole",
        at_least(room_braces_to_hole, limit_brace_to_hole, 0.0),
        n.room_braces_to_hole,
        room_braces_to_hole,
        n.limit_brace_to_hole,
        "From the soundhole's edge to the nearest brace; negative is a brace cut through.",
        "Move the brace or the hole.",
    )


def finding_pins_clear(room_pins_to_braces: Mm, limit_pin_room: Mm) -> Findings:
    """Whether the pins' holes miss every brace."""
    return _room(
        "pins and braces",
        at_least(room_pins_to_braces, limit_pin_room, 0.0),
        n.room_pins_to_braces,
        room_pins_to_braces,
        n.limit_pin_room,
        "From a pin's hole to the nearest brace; negative is a hole drilled into one.",
        "Move the brace, or the line of pins.",
    )


def finding_braces_apart(
    room_between_braces: Mm, room_nearest_braces: tuple[str, ...], limit_brace_room: Mm
) -> Findings:
    """Whether braces that are not joined keep clear of each other."""
    severity: Severity = "stop" if room_between_braces == 0 else within(-room_between_braces, -limit_brace_room, 0.0)
    return _room(
        "braces apart",
        severity,
        n.room_between_braces,
        room_between_braces,
        n.limit_brace_room,
        f"These braces come nearest each other: {' and '.join(room_nearest_braces)}.",
        "Shorten one, notch them into each other (crosses), or end the one against the other.",
    )


def finding_braces_to_blocks(room_braces_to_blocks: Mm, limit_brace_room: Mm) -> Findings:
    """Whether braces keep off neck and tail block."""
    return _room(
        "braces and blocks",
        at_least(room_braces_to_blocks, limit_brace_room, -1.0),
        n.room_braces_to_blocks,
        room_braces_to_blocks,
        n.limit_brace_room,
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
