"""Figures of wood's movement that stand on coefficients carried on beyond where they are published, and that say so."""

from dataclasses import replace

from gramil import names as n
from gramil.findings.finding import Finding
from gramil.graph import Figures
from gramil.reference import name_of
from gramil.wood.movement import CARRIED_ON, outside

MOVEMENTS = (n.board_movement_radial, n.board_movement_tangential, n.top_movement_radial)
MOISTURES = (n.swell_moisture_made, n.swell_moisture_dry, n.swell_moisture_wet)


def carried_on(figures: Figures, name: str) -> str:
    """What is to be said of a figure that hangs on a moisture outside the coefficients' range; empty for any other."""
    above = figures.graph.above(name) | {name}
    if not any(each.address in above for each in MOVEMENTS):
        return ""
    return CARRIED_ON if outside(*(figures[each] for each in MOISTURES if each.address in above)) else ""


def with_carried_on(finding: Finding, figures: Figures) -> Finding:
    """A finding that is judged, with the remark of its figure."""
    remark = "" if finding.severity == "not judged" else carried_on(figures, name_of(finding.figure))
    return replace(finding, says=finding.says + f" {remark}") if remark else finding
