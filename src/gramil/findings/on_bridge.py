"""Verdicts on saddle and bridge: break points on the saddle, wood round its slot, the strings' hold behind it."""

import numpy as np

from gramil import names as n
from gramil.findings.finding import Findings
from gramil.findings.threshold import at_least, at_most, judged, not_judged, saying
from gramil.quantities import Mm, PerString, Radians, Ratio
from gramil.reference import says

OWNS = ("finding_",)


def finding_break_points(saddle_to_face: PerString[Mm], limit_saddle_edge: Mm) -> Findings:
    """Whether every string's break point lies on the saddle, with something to either face of it."""
    if np.isnan(saddle_to_face).any():
        because = "because the best set-back is not known: some string is too slack for the model"
        remedy = "Give set-backs, or gauges and tuning that go together."
        return (not_judged("break points on the saddle", n.saddle_to_face, because, remedy),)
    worst = int(saddle_to_face.argmin())
    left = float(saddle_to_face[worst])
    return (
        judged(
            "break points on the saddle",
            n.saddle_to_face[worst + 1],
            left,
            at_least(n.limit_saddle_edge, limit_saddle_edge, stop=0.0),
            "The break point that comes nearest to a face of the saddle.",
            "A thicker saddle, or set-backs nearer to a straight line.",
        ),
    )


def finding_saddle_in_slot(saddle_showing: Ratio, limit_saddle_shows: Ratio, instrument_units: str) -> Findings:
    """Whether the saddle stands deep enough in the bridge for what shows of it: the strings lean it forward."""
    return (
        judged(
            "saddle in its slot",
            n.saddle_showing,
            saddle_showing,
            at_most(n.limit_saddle_shows, limit_saddle_shows, stop=2 * limit_saddle_shows),
            f"The most that shows over the bridge, for each {instrument_units} that stands in the slot.",
            "A deeper slot, or a taller bridge and a lower saddle.",
        ),
    )


def finding_under_saddle_slot(bridge_under_slot: Mm, limit_under_saddle_slot: Mm) -> Findings:
    """Whether enough of the bridge is left under the saddle's slot."""
    return (
        judged(
            "bridge under the saddle's slot",
            n.bridge_under_slot,
            bridge_under_slot,
            at_least(n.limit_under_saddle_slot, limit_under_saddle_slot, stop=limit_under_saddle_slot / 2),
            "Wood left in the bridge under the slot.",
            "A shallower slot, or a thicker bridge.",
        ),
    )


def finding_pins(
    bridge_hold: str,
    bridge_hold_spacing: Ratio,
    bridge_hold_wall: PerString[Mm],
    limit_pin_spacing: Ratio,
    limit_pin_spacing_least: Ratio,
    limit_pin_to_saddle: Mm,
) -> Findings:
    """Whether the holes behind the saddle leave wood between them, and between them and the saddle's slot."""
    nearest = int(bridge_hold_wall.argmin())
    wall = float(bridge_hold_wall[nearest])
    hole = "pins" if bridge_hold == "pins" else "holes of the tie block"
    return (
        judged(
            f"{hole} apart",
            n.bridge_hold_spacing,
            bridge_hold_spacing,
            at_least(n.limit_pin_spacing_least, limit_pin_spacing_least, "stop")
            + at_least(n.limit_pin_spacing, limit_pin_spacing),
            says("Centre to centre, in diameters of a hole; wood between two holes: {}.", n.bridge_hold_wood),
            "A wider spread at the pins, or thinner pins.",
        ),
        judged(
            f"{hole} behind the saddle",
            n.bridge_hold_wall[nearest + 1],
            wall,
            at_least(n.limit_pin_to_saddle, limit_pin_to_saddle, stop=limit_pin_to_saddle / 2),
            "Wood between the saddle's slot and the nearest hole.",
            "Holes further back, or alongside the saddle; a thinner saddle.",
        ),
    )


def finding_rows_of_pins(
    bridge_hold_row: PerString[Ratio],
    bridge_hold_between: Ratio,
    bridge_hold_clear: PerString[Mm],
    bridge_hold_back: PerString[Mm],
    bridge_pin_diameter: Mm,
    limit_pin_spacing_least: Ratio,
    limit_string_to_pin: Mm,
) -> Findings:
    """Whether two rows of pins leave wood between and behind them, and each string runs clear of the others' holes."""
    if bridge_hold_row.max() == 1:
        return ()
    last = int(bridge_hold_back.argmin())
    nearest = int(bridge_hold_clear.argmin())
    return (
        judged(
            "rows of pins apart",
            n.bridge_hold_between,
            bridge_hold_between,
            at_least(n.limit_pin_spacing_least, limit_pin_spacing_least, "stop"),
            says("Row to row, in diameters of a hole; wood between two holes: {}.", n.bridge_hold_wood_across),
            "Rows further apart, a wider spread at the pins, or thinner pins.",
        ),
        judged(
            "pins from the bridge's back",
            n.bridge_hold_back[last + 1],
            float(bridge_hold_back[last]),
            at_least(n.bridge_pin_diameter, bridge_pin_diameter / 2, stop=0.0),
            "Wood between a hole of the second row and the bridge's back edge: half a hole's diameter is wanted.",
            "A wider bridge, or rows nearer together.",
        ),
        judged(
            "strings past other pins",
            n.bridge_hold_clear[nearest + 1],
            float(bridge_hold_clear[nearest]),
            at_least(n.limit_string_to_pin, limit_string_to_pin),
            "Room between a string and the hole of another that it passes; a pin's head is wider than its hole.",
            "Staggered rows, the other string of each pair in front, or thinner pins.",
        ),
    )


def finding_break_angle(
    bridge_break_angle: PerString[Radians], limit_break_angle_saddle: Radians, limit_break_angle_saddle_least: Radians
) -> Findings:
    """Whether every string goes down steeply enough behind the saddle to stay on it."""
    least = int(bridge_break_angle.argmin())
    angle = float(bridge_break_angle[least])
    return (
        judged(
            "angle behind the saddle",
            n.bridge_break_angle[least + 1],
            angle,
            at_least(n.limit_break_angle_saddle_least, limit_break_angle_saddle_least, "stop")
            + at_least(n.limit_break_angle_saddle, limit_break_angle_saddle),
            "The shallowest angle at which a string goes down behind the saddle.",
            "Ramp the holes deeper, bring them nearer, or show more saddle.",
        ),
    )


def finding_bridge_holds(bridge_hold_y: PerString[Mm], saddle_reach: Mm, bridge_length: Mm) -> Findings:
    """Whether saddle and holes lie within the bridge's length."""
    reach = max(saddle_reach, float(abs(bridge_hold_y).max()))
    return (
        judged(
            "length of the bridge",
            n.bridge_length,
            bridge_length,
            saying(at_most(None, bridge_length / 2, "stop", of=reach), "Saddle or holes run out of the bridge's ends."),
            "Saddle and holes lie within the bridge.",
            "A longer bridge, or a narrower spread.",
        ),
    )
