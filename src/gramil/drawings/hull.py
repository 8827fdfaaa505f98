"""Where the body's plates lie at a cut across it: on their domes, over the rim plane that leans with the neck's set."""

from dataclasses import dataclass
from functools import cached_property
from math import cos, sin

import numpy as np
from numpy.typing import NDArray

from gramil import names as n
from gramil.drawings.marks import Point
from gramil.drawings.section_at import Cut, value_at
from gramil.graph import Figures
from gramil.parts.body_records import Shell
from gramil.quantities import Mm

Array = NDArray[np.float64]


@dataclass(frozen=True)
class Hull:
    """The body at a cut: `along` from its edge at the neck, `rim` the height (z) of its rim plane there."""

    shell: Shell
    along: Mm
    rim: Mm
    top: Mm

    @cached_property
    def half(self) -> Mm:
        """Half its width."""
        return float(self.shell.side.outline.half_width(self.along))

    @cached_property
    def ends(self) -> tuple[Point, Point]:
        """The ends of its centreline."""
        outline = self.shell.side.outline
        return (outline.start, 0.0), (outline.end, 0.0)

    def over(self, y: Array) -> Array:
        """z of the top's face at y."""
        return np.asarray(self.rim - self.shell.side.upper.fall_from_chord(np.full_like(y, self.along), y, *self.ends))

    def under(self, y: Array) -> Array:
        """z of the top's underside at y."""
        return self.over(y) - self.top

    def back(self, y: Array) -> Array:
        """z of the back's inside at y."""
        side, (start, end) = self.shell.side, self.ends
        depth = np.interp(self.along, (start[0], end[0]), (side.depth_start, side.depth_end))
        fall = side.lower.fall_from_chord(np.full_like(y, self.along), y, start, end)
        return np.asarray(self.rim - self.top - depth + fall)


def hull_at(figures: Figures, cut: Cut) -> Hull | None:
    """The body at a cut, or None where there is none, or none is described."""
    start, angle = figures[n.piece_plan_turned]
    along = (cut.x - float(start)) / cos(angle)
    rim = -along * sin(angle) - value_at(figures, cut.of(n.thickness_at_crest), cut)
    for shell in figures[n.body_shells]:
        hull = Hull(shell, along, float(rim), float(figures[n.top_thickness]))
        if hull.half > 1.0:
            return hull
    return None
