"""A guitar that came in: which verdicts and sheets are of it, and why something of it is not judged or has no sheet.

What concerns making a new guitar (blanks, templates, planks, channels) does not apply to one that is built. What hangs
on a measure that was not given is not judged, and says which measures are missing.
"""

from collections.abc import Iterator
from dataclasses import replace
from typing import Any

import numpy as np

from gramil import names as n
from gramil.description.base import keys_of
from gramil.description.repair.stand_ins import NOT_KNOWN
from gramil.findings.finding import Finding
from gramil.graph import Figures
from gramil.reference import Ref, name_of
from gramil.setups.setup import Setup, figures_on, setup_ref, skipped

VERDICTS: tuple[Ref[Any], ...] = (
    n.finding_action_bass, n.finding_action_treble, n.finding_string_on_crown, n.finding_nut_slots,
    n.finding_relief_wanted, n.finding_body_rise, n.finding_crown_left, n.finding_saddle_exposed,
    n.finding_saddle_low, n.finding_saddle_high, n.finding_over_top, n.finding_intonation, n.finding_nut,
    n.finding_break_points, n.finding_saddle_in_slot, n.finding_under_saddle_slot, n.finding_pins,
    n.finding_break_angle, n.finding_bridge_holds, n.finding_neck_angle, n.finding_tongue,
    n.finding_break_at_nut, n.finding_sideways_at_nut, n.finding_permits, n.finding_edge_margin, n.finding_courses,
    n.finding_string_gap, n.finding_hump, n.finding_breaking, n.finding_slack, n.finding_uneven,
    n.finding_estimates, n.finding_torque, n.finding_wire_on_hand, n.finding_shop, n.finding_gluing_air,
)  # fmt: skip
"""Of a new guitar, the verdicts that an old one is held against too."""
SHEETS: tuple[Ref[Any], ...] = (
    n.setup_nut_slots, n.setup_relief, n.setup_saddle, n.setup_saddle_slot, n.setup_strings, n.setup_in_tune,
    n.setup_owner_air,
)  # fmt: skip
"""Of a new guitar, the sheets by which an old one is worked on too."""
OWN_VERDICTS: tuple[Ref[Any], ...] = (
    n.finding_old_slots, n.finding_old_bite, n.finding_old_room, n.finding_old_left, n.finding_old_bow,
    n.finding_old_crowns, n.finding_old_saddle, n.finding_old_action, n.finding_reset_wedge, n.finding_reset_tongue,
    n.finding_reset_saddle, n.finding_moved,
)  # fmt: skip
"""The verdicts that only a guitar that came in has."""
OWN_SHEETS: tuple[Ref[Any], ...] = (
    n.setup_as_found, n.setup_old_slots, n.setup_which_wire, n.setup_refret, n.setup_reset, n.setup_bridge_again,
    n.setup_handed_back,
)  # fmt: skip
"""The sheets that only a guitar that came in has."""
MOST_NAMED = 3
"""How many missing measures are named of one verdict."""
READ = "found_"
"""What the names of readings as found start with."""
NO_READINGS = frozenset(each.address for each in (n.fret_position, n.neck_straightedge, n.repair_described))
"""What hangs on no other figure than these is read."""
_OLD = frozenset(each.address for each in (*VERDICTS, *SHEETS, *OWN_VERDICTS, *OWN_SHEETS))
_OWN = frozenset(each.address for each in (*OWN_VERDICTS, *OWN_SHEETS))


def is_of(figures: Figures, name: str) -> bool:
    """Whether a verdict or a sheet applies to this instrument, which is either a new one or one that came in."""
    return name in _OLD if figures[n.repair_described] else name not in _OWN


def missing_above(figures: Figures, name: str) -> tuple[str, ...]:
    """What a figure hangs on and was not given or not read of a guitar that came in, nearest first: keys, and readings
    by their names.
    """
    names = [each for each in (name, *_upward(figures, name)) if _is_missing(figures, each)]
    return tuple(dict.fromkeys(_key(each) for each in names))


def _key(name: str) -> str:
    """The key to write, one length of a scale rather than two; a reading has no key, and is given by its name."""
    keys = keys_of(name) or (name.replace("_", " "),)
    return "scale.length" if "scale.length" in keys else keys[0]


def _upward(figures: Figures, name: str) -> Iterator[str]:
    """What a figure follows from, nearest first."""
    seen, row = {name}, [name]
    while row:
        row = [each for at in row for each in figures.graph.parameters(at) if each not in seen]
        row = list(dict.fromkeys(row))
        seen.update(row)
        yield from row


def _is_missing(figures: Figures, name: str) -> bool:
    if name.startswith(READ):
        return set(figures.graph.parameters(name)) <= NO_READINGS and _all_unknown(figures[name])
    origin = figures.origins.get(name)
    return origin is not None and origin.text == NOT_KNOWN and name not in figures.pins


def with_missing(finding: Finding, figures: Figures) -> Finding:
    """A verdict that is not judged for a guitar that came in, with the measures that it lacks."""
    if finding.severity != "not judged" or not figures[n.repair_described]:
        return finding
    keys = missing_above(figures, name_of(finding.figure))
    if not keys:
        return finding
    return replace(finding, says=f"because not given: {_listed(keys)}", remedy="Measure it and write it down.")


def _all_unknown(value: Any) -> bool:
    return isinstance(value, float | np.ndarray) and bool(np.isnan(value).all())


def _listed(keys: tuple[str, ...]) -> str:
    more = len(keys) - MOST_NAMED
    return ", ".join(keys[:MOST_NAMED]) + (f" and {more} more" if more > 0 else "")


def as_known(figures: Figures, name: str) -> Setup:
    """A set-up; for a guitar that came in, one that would show something unknown says what to measure instead."""
    setup: Setup = figures[setup_ref(name)]
    if setup.closed or not figures[n.repair_described]:
        return setup
    shown = (each for each in figures_on(setup) if each not in setup.boxes)
    keys = [key for each in shown if _no_number(figures, each) for key in _keys(figures, each)]
    if not keys:
        return setup
    return skipped(setup.name, setup.title, setup.order, f"not given yet: {_listed(tuple(dict.fromkeys(keys)))}")


def _no_number(figures: Figures, figure: Ref[Any]) -> bool:
    """Whether a figure on a sheet is not a number; a reference that leads nowhere does not count."""
    try:
        value = figures.at(figure.address)
    except (KeyError, IndexError):
        return False
    return isinstance(value, float | np.ndarray) and bool(np.isnan(value).any())


def _keys(figures: Figures, figure: Ref[Any]) -> tuple[str, ...]:
    return missing_above(figures, name_of(figure))
