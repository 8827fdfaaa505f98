"""How the top swings: its lowest modes, with nothing but the plate moving, and the lowest two with the box's air.

Nodal lines are where it stays at rest; bellies are the parts that move as one. What a player would hear is not claimed.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass

import numpy as np

from gramil.parts.opening_records import Opening, Port
from gramil.physics.air_resonance import speed_of_sound
from gramil.physics.arrays import FloatArray
from gramil.physics.plates.edge import SUPPORTED
from gramil.physics.plates.nodal_lines import LEAST_BELLY, Belly, bellies, nodal_lines, rises
from gramil.physics.plates.sensitivity import near_pairs
from gramil.physics.plates.surety import within
from gramil.physics.two_mass import Box, Piston, TwoMass, two_mass
from gramil.quantities import Hertz, Mm, Mm3, Ratio
from gramil.top.braced import Solved
from gramil.top.mode import Mode

OWNS = ("mode_",)
BESIDE = 25.0
"""So near to a line at rest, in mm, the top must move for the line to be told."""
ROOM = 20.0
"""Temperature of the air in degrees Celsius."""
AIR = 1.204
"""Density of dry air at 20 degrees Celsius and 1013 hPa, kg/m3: from the gas's molar mass."""
UNIT_MASS = 1000.0
"""The modal mass of the modes as solved: a tonne, in kg."""


@dataclass(frozen=True, eq=False)
class ModePicture:
    """A mode as lines and words: where the top stays at rest, each a run (k, 2), and the parts that move as one."""

    name: str
    lines: tuple[FloatArray, ...]
    bellies: tuple[Belly, ...]


@dataclass(frozen=True)
class NearPair:
    """Two modes that nearly coincide: a change may mix them. `hertz` is that of the lower one."""

    name: str
    one: str
    other: str
    hertz: Hertz


def mode_pictures(braced_final: tuple[Solved, ...]) -> tuple[ModePicture, ...]:
    """The modes as lines and words.

    Method: where the solved mode's rise is nothing, and its largest places.
    Source: as the modes.
    """
    return tuple(picture for each in braced_final for picture in _pictures(each))


def _pictures(top: Solved) -> Iterator[ModePicture]:
    mesh = top.whole.mesh
    for number, rise in enumerate(rises(mesh, top.modes.movements).T, 1):
        lines = tuple(each for each in nodal_lines(mesh, rise) if _tells(mesh.nodes, rise, each))
        yield ModePicture(f"mode {number}", lines, bellies(mesh, rise))


def _tells(nodes: FloatArray, rise: FloatArray, line: FloatArray) -> bool:
    """Whether the top moves beside a line: in a quiet corner there are lines that tell nothing."""
    apart = np.linalg.norm(nodes[:, None] - line[None, ::4], axis=2).min(axis=1)
    return bool(np.abs(rise[apart < BESIDE]).max() > LEAST_BELLY * np.abs(rise).max())


def mode_list(
    braced_quick: tuple[Solved, ...],
    braced_final: tuple[Solved, ...],
    mode_pictures: tuple[ModePicture, ...],
    pulled_spread: Ratio,
) -> tuple[Mode, ...]:
    """The top's lowest modes, strings on, with nothing but the plate moving.

    Method: the braced plate's lowest ten; the band is that of its stiffness, by its root.
    Source: Reissner and Mindlin's plate with bars, held against solid elements.
    """
    found = []  # where one of the two meshes came to nothing there is no list
    for quick, final in zip(braced_quick, braced_final, strict=False):
        rows = zip(quick.modes.frequencies.tolist(), final.modes.frequencies.tolist(), mode_pictures, strict=True)
        for coarse, fine, picture in rows:
            off = float(within(coarse, fine))
            least, most = (fine * math.sqrt(1 + side * pulled_spread) + side * off for side in (-1, 1))
            found.append(Mode(picture.name, fine, off, least, most, len(picture.bellies)))
    return tuple(found)


def mode_near(mode_list: tuple[Mode, ...]) -> tuple[NearPair, ...]:
    """Modes that nearly coincide: a small change may mix them, and advice on either alone says little.

    Method: pairs nearer than 3 % of the lower one.
    Source: common practice in such calculations.
    """
    pairs = near_pairs(np.array([each.hertz for each in mode_list]))
    named = [(mode_list[one], mode_list[other].name) for one, other in pairs]
    return tuple(NearPair(f"{one.name} and {other}", one.name, other, one.hertz) for one, other in named)


def mode_with_air(
    braced_final: tuple[Solved, ...],
    body_air_volume: Mm3,
    body_air_openings: tuple[Mm, ...],
    opening_list: tuple[Opening, ...],
    port_list: tuple[Port, ...],
) -> tuple[TwoMass, ...]:
    """The two lowest resonances of top and box together: the mode that displaces most air, and the plug of the hole.

    Method: two masses on the springs of plate and air; sides and back do not give. Several openings count as one.
    Source: christensen_1980
    """
    if not body_air_volume > 0 or not body_air_openings:
        return ()
    area = sum(each.area for each in opening_list) + sum(each.area for each in port_list)
    box = Box(body_air_volume, area, area / sum(body_air_openings), AIR, speed_of_sound(ROOM))
    return tuple(two_mass(_piston(each), box) for each in braced_final)


def _piston(top: Solved) -> Piston:
    """The mode that displaces most air, as a piston."""
    displaced = top.displaced()
    most = int(np.abs(displaced).argmax())
    return Piston(float(top.modes.frequencies[most]), abs(float(displaced[most])), UNIT_MASS)


def mode_air_lower(mode_with_air: tuple[TwoMass, ...]) -> Hertz:
    """The lower of the two: the air in the hole and the top move against each other. Sides and back do not give.

    Method: the lower of the pair.
    Source: christensen_1980
    """
    return next((each.lower for each in mode_with_air), math.nan)


def mode_air_upper(mode_with_air: tuple[TwoMass, ...]) -> Hertz:
    """The upper of the two: the top on the spring of the air. Sides and back do not give.

    Method: the upper of the pair.
    Source: christensen_1980
    """
    return next((each.upper for each in mode_with_air), math.nan)


def mode_first_supported(braced_quick: tuple[Solved, ...]) -> Hertz:
    """The first mode if the rim holds the top without clamping it: the other end of the bracket.

    Method: the same plate on coarse triangles, its edge free to lean.
    Source: common practice in such calculations.
    """
    return next((float(each.held_by(SUPPORTED).modes.frequencies[0]) for each in braced_quick), math.nan)
