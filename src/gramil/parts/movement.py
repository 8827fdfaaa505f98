"""How the board swells and shrinks through its owner's year, and what that does to fret ends and binding.

The frets keep their length and the board does not: in dry air its edges draw in and the fret ends stand out (sprout).
How the board is sawn is not known, so each figure is a range: from a quartersawn board, whose width is radial, to a
flatsawn one, whose width is tangential.
"""

import numpy as np

from gramil.description.wood.air_values import PerPercent
from gramil.quantities import Celsius, Mm, Percent, PerFret
from gramil.wood.equilibrium import equilibrium_moisture

OWNS = ("sprout_", "swell_")


def swell_moisture_made(limit_gluing_humidity: Percent, limit_owner_temperature: Celsius) -> Percent:
    """Moisture of the board while it is worked: settled in the air that gluing aims for.

    Method: equilibrium moisture of wood in that air.
    Source: wood_handbook_4_5
    """
    return float(equilibrium_moisture(limit_owner_temperature, limit_gluing_humidity))


def swell_moisture_dry(limit_owner_humidity_least: Percent, limit_owner_temperature: Celsius) -> Percent:
    """Moisture that the board comes to in the driest air of its owner's year.

    Method: equilibrium moisture of wood in that air.
    Source: wood_handbook_4_5
    """
    return float(equilibrium_moisture(limit_owner_temperature, limit_owner_humidity_least))


def swell_moisture_wet(limit_owner_humidity_most: Percent, limit_owner_temperature: Celsius) -> Percent:
    """Moisture that the board comes to in the dampest air of its owner's year.

    Method: equilibrium moisture of wood in that air.
    Source: wood_handbook_4_5
    """
    return float(equilibrium_moisture(limit_owner_temperature, limit_owner_humidity_most))


def swell_moistures(
    swell_moisture_dry: Percent, swell_moisture_made: Percent, swell_moisture_wet: Percent
) -> tuple[Percent, ...]:
    """The moistures that the wood comes to, from the driest air to the dampest.

    Method: those of the three airs.
    Source: wood_handbook_4_5
    """
    return swell_moisture_dry, swell_moisture_made, swell_moisture_wet


def swell_width_dry_least(
    core_width_at_fret: PerFret[Mm],
    board_movement_radial: PerPercent,
    swell_moisture_dry: Percent,
    swell_moisture_made: Percent,
) -> PerFret[Mm]:
    """Change of the board's width (shrinking negative) in the driest air, quartersawn; between the bindings, if bound.

    Source: wood_handbook_13_5
    """
    return core_width_at_fret * board_movement_radial * (swell_moisture_dry - swell_moisture_made)


def swell_width_dry_most(
    core_width_at_fret: PerFret[Mm],
    board_movement_tangential: PerPercent,
    swell_moisture_dry: Percent,
    swell_moisture_made: Percent,
) -> PerFret[Mm]:
    """Change of the board's width (shrinking negative) in the driest air, flatsawn; between the bindings, if bound.

    Source: wood_handbook_13_5
    """
    return core_width_at_fret * board_movement_tangential * (swell_moisture_dry - swell_moisture_made)


def swell_width_wet_least(
    core_width_at_fret: PerFret[Mm],
    board_movement_radial: PerPercent,
    swell_moisture_wet: Percent,
    swell_moisture_made: Percent,
) -> PerFret[Mm]:
    """Change of the board's width (growing positive) in the dampest air, quartersawn.

    Source: wood_handbook_13_5
    """
    return core_width_at_fret * board_movement_radial * (swell_moisture_wet - swell_moisture_made)


def swell_width_wet_most(
    core_width_at_fret: PerFret[Mm],
    board_movement_tangential: PerPercent,
    swell_moisture_wet: Percent,
    swell_moisture_made: Percent,
) -> PerFret[Mm]:
    """Change of the board's width (growing positive) in the dampest air, flatsawn.

    Source: wood_handbook_13_5
    """
    return core_width_at_fret * board_movement_tangential * (swell_moisture_wet - swell_moisture_made)


def sprout_least(swell_width_dry_least: PerFret[Mm]) -> Mm:
    """How far each end of the widest fret stands out in the driest air, if the board is quartersawn.

    Formula: max(-swell_width_dry_least) / 2
    Source: half of the change of width, from each edge.
    """
    return float((-swell_width_dry_least).max()) / 2


def sprout_most(swell_width_dry_most: PerFret[Mm]) -> Mm:
    """How far each end of the widest fret stands out in the driest air, if the board is flatsawn.

    Formula: max(-swell_width_dry_most) / 2
    Source: half of the change of width, from each edge.
    """
    return float((-swell_width_dry_most).max()) / 2


def sprout_moisture(
    limit_sprout: Mm,
    core_width_at_fret: PerFret[Mm],
    board_movement_tangential: PerPercent,
    swell_moisture_dry: Percent,
) -> Percent:
    """Moisture of the board at fretting that would keep the widest fret's ends within the limit, if it is flatsawn.

    Formula: swell_moisture_dry + 2 * limit_sprout / (max(core_width_at_fret) * board_movement_tangential)
    Source: wood_handbook_13_5
    """
    return swell_moisture_dry + 2 * limit_sprout / (float(core_width_at_fret.max()) * board_movement_tangential)


def swell_step_dry(
    core_inset: Mm,
    thickness_at_edge_treble: PerFret[Mm],
    board_movement_tangential: PerPercent,
    swell_moisture_dry: Percent,
    swell_moisture_made: Percent,
) -> Mm:
    """How far the board sinks (negative) beside its binding in the driest air; 0 on an unbound board.

    The thickness of a quartersawn board is tangential, and the binding is taken to keep its own.
    Formula: sign(core_inset) * max(thickness_at_edge_treble) * board_movement_tangential
        * (swell_moisture_dry - swell_moisture_made)
    Source: wood_handbook_13_5
    """
    bound, thickest = float(np.sign(core_inset)), float(thickness_at_edge_treble.max())
    return bound * thickest * board_movement_tangential * (swell_moisture_dry - swell_moisture_made)
