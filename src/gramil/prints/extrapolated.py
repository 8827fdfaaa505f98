"""Figures of wood's movement that use coefficients beyond the range for which they are published, and that say so."""

from dataclasses import replace

from gramil import names as n
from gramil.findings.finding import Finding
from gramil.graph import Figures
from gramil.reference import Ref, name_of, says
from gramil.wood.movement import CARRIED_ON, outside

BEYOND = "Carried on: moisture of {} lies outside the range in which wood's movement is published."
MOVEMENTS = (n.board_movement_radial, n.board_movement_tangential, n.top_movement_radial)
MOISTURES = (n.swell_moisture_made, n.swell_moisture_dry, n.swell_moisture_wet)


def extrapolation_remark(figures: Figures, name: str) -> str:
    """The remark on a figure that depends on a moisture outside the coefficients' range; empty for any other."""
    return CARRIED_ON if _outside(figures, name) else ""


def _outside(figures: Figures, name: str) -> tuple[Ref[float], ...]:
    """The moistures outside that range on which a figure of wood's movement depends."""
    above = figures.graph.above(name)
    if not any(each.address in above or each.address == name for each in MOVEMENTS):
        return ()
    found = (each for each in MOISTURES if each.address in above or each.address == name)
    return tuple(each for each in found if outside(figures[each]))


def with_extrapolation_remark(finding: Finding, figures: Figures) -> Finding:
    """A judged finding with the remark on extrapolation added; the remark names the moisture by reference, not as a
    number.
    """
    beyond = () if finding.severity == "not judged" else _outside(figures, name_of(finding.figure))
    if not beyond:
        return finding
    return replace(finding, says=finding.says + says(" " + BEYOND, beyond[0]))
