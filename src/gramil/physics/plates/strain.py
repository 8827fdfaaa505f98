"""Where a loaded plate and its bars are strained most along their grain."""

from dataclasses import dataclass

import numpy as np

from gramil.physics.arrays import FloatArray
from gramil.physics.plates.bar import wood_between
from gramil.physics.plates.bar_energy import rows, strains
from gramil.physics.plates.glued import GluedBar
from gramil.physics.plates.plate import thickness_at
from gramil.physics.plates.whole import Whole


@dataclass(frozen=True)
class Strained:
    """A strain along the grain, stretch positive, and where it is: in the plan, in mm."""

    strain: float
    x: float
    y: float


def largest_in_plate(whole: Whole, moved: FloatArray) -> Strained:
    """The largest along the plate's grain on either face, of movements (n,)."""
    sheet, three = whole.sheet, whole.mesh.three
    read = np.einsum("mgsk,mk->mgs", sheet.strains, moved[sheet.columns])
    c, s = np.cos(sheet.plate.ply.grain), np.sin(sheet.plate.ply.grain)
    flat, bent = (read[..., first : first + 3] @ [c * c, s * s, c * s] for first in (0, 3))
    half = 0.5 * thickness_at(sheet.plate, three.points)
    faces = np.stack([flat + half * bent, flat - half * bent])
    at = np.unravel_index(np.abs(faces).argmax(), faces.shape)
    x, y = three.points[at[1:]].tolist()
    return Strained(float(faces[at]), x, y)


def largest_in_bar(glued: GluedBar, moved: FloatArray) -> Strained:
    """The largest along a bar, at its foot or its crest, of movements (n,)."""
    samples, bar = glued.samples, glued.bar
    readings = strains(samples, samples.read)
    foot, bent = (rows(samples, readings.of_plate[row], readings.of_bar[row], glued.size) @ moved for row in (0, 1))
    ends = [foot * samples.on + bar.side * height * bent for height in wood_between(bar, samples.along)]
    both = np.where(samples.on > 0, np.stack(ends), 0.0)
    at = np.unravel_index(np.abs(both).argmax(), both.shape)
    place = np.asarray(bar.start) + samples.along[at[1]] * bar.way + samples.across[at[1]] * bar.left
    return Strained(float(both[at]), float(place[0]), float(place[1]))
