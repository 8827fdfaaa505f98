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
from gramil.shapes.outline import Outline

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
        """From the centreline to its treble side; half its width, where both sides are alike."""
        return float(self.shell.side.outline.half_width(self.along))

    @cached_property
    def bass(self) -> Mm:
        """From the centreline to its bass side."""
        return float(self.shell.side.outline.bass_half.half_width(self.along))

    def across(self, outline: Outline) -> tuple[tuple[Mm, Mm], ...]:
        """From where to where the cut lies within an outline of this body: once, or twice where a horn stands apart."""
        half = float(outline.half_width(self.along))
        if outline.alike:
            return ((-half, half),)
        met = outline.meets((self.along, 0.0), (0.0, 1.0))[:, 1].tolist()
        if len(met) % 2:
            return ((-float(outline.bass_half.half_width(self.along)), half),)
        return tuple(zip(met[::2], met[1::2], strict=True))

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
        if max(hull.half, hull.bass) > 1.0:
            return hull
    return None
