"""A bar glued to a plate: where it runs, how high it stands along its length, and what its section resists.

Heights are over the foot, so that they say how much wood there is, whichever face of the plate the bar stands on.
"""

import math
from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from gramil.physics.arrays import FloatArray, floats
from gramil.physics.plates.timber import SHEAR_SHARE, Cut, Timber

Point = tuple[float, float]
LEAST_HEIGHT = 0.3
"""In mm: an end feathered to nothing counts as so high, for a bar of no height at all cannot be reckoned with."""


@dataclass(frozen=True)
class Gap:
    """Wood that a notch takes out of a bar, `width` long around `along` its length, between two heights, in mm.

    It reaches the foot (`low` 0) or the crest (`high` without end). `glued`: what fills it is glued to its sides.
    """

    along: float
    width: float
    low: float
    high: float = math.inf
    glued: bool = True


@dataclass(frozen=True)
class Bar:
    """A straight bar from `start` to `stop`, glued by its foot to a plate's first face (`side` 1) or second (-1).

    `crest` has (along, height) from its start on, straight between: one point is a level bar. `cut` says which way the
    growth rings stand: "quarter" upright, square to the plate. Lengths in mm.
    """

    name: str
    start: Point
    stop: Point
    width: float
    crest: tuple[Point, ...]
    wood: Timber
    side: int = -1
    gaps: tuple[Gap, ...] = ()
    cut: Cut = "quarter"

    @property
    def length(self) -> float:
        """From end to end."""
        return math.dist(self.start, self.stop)

    @property
    def height(self) -> float:
        """Where it is highest."""
        return max(height for _, height in self.crest)

    @property
    def way(self) -> FloatArray:
        """Its direction, of length 1."""
        return (floats(self.stop) - floats(self.start)) / self.length

    @property
    def left(self) -> FloatArray:
        """Across it, to the left of its direction."""
        return np.array([-self.way[1], self.way[0]])

    @cached_property
    def footprint(self) -> FloatArray:
        """Its four corners on the plate, (4, 2), anticlockwise."""
        half = 0.5 * self.width * self.left
        start, stop = floats(self.start), floats(self.stop)
        return np.array([start - half, stop - half, stop + half, start + half])

    def moved(self, sideways: float) -> "Bar":
        """The bar that far to its left."""
        start, stop = (floats(end) + sideways * self.left for end in (self.start, self.stop))
        return replace(self, start=(float(start[0]), float(start[1])), stop=(float(stop[0]), float(stop[1])))

    def widened(self, more: float) -> "Bar":
        """The bar so much wider."""
        return replace(self, width=self.width + more)

    def raised(self, more: float) -> "Bar":
        """The bar so much higher: full where it is highest, nothing where it is lowest, in proportion between.

        So worked-down ends keep their height; a level bar is raised all along. What lies under a notch stays.
        """
        heights = [height for _, height in self.crest]
        least, span = min(heights), max(heights) - min(heights)
        share = [(height - least) / span if span else 1.0 for height in heights]
        crest = tuple((along, height + more * gain) for (along, height), gain in zip(self.crest, share, strict=True))
        return replace(self, crest=crest)


def wood_between(bar: Bar, along: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Heights over the foot between which a bar has wood, at places along it."""
    places, heights = zip(*bar.crest, strict=True)
    low, high = np.zeros_like(along), np.maximum(np.interp(along, places, heights), LEAST_HEIGHT)
    for gap in bar.gaps:
        here = np.abs(along - gap.along) < 0.5 * (gap.width + (0.0 if gap.glued else _slack(bar)))
        low = np.where(here & (gap.low <= 0.0), np.minimum(gap.high, high - LEAST_HEIGHT), low)
        high = np.where(here & (gap.low > 0.0), np.minimum(gap.low, high), high)
    return low, high


def _slack(bar: Bar) -> float:
    """How much longer than it is an open notch weakens a bar, mm: beside it the cut fibres carry nothing yet.

    0.28 sqrt(E / G) of the height, for notches up to half of it; worked out in plane elasticity (see the tests).
    """
    up = bar.wood.shear_lr if bar.cut == "quarter" else bar.wood.shear_lt
    return 0.28 * math.sqrt(bar.wood.longitudinal / up) * bar.height


def twist_stiffness(bar: Bar, height: FloatArray) -> FloatArray:
    """G J of a bar's section, N mm2: a rectangle whose two shear moduli differ (S. G. Lekhnitskii, by stretching it to
    an isotropic one; that one's J within 0.5 % by Roark's formula, from memory)."""
    up = bar.wood.shear_lr if bar.cut == "quarter" else bar.wood.shear_lt
    flat = bar.wood.shear_lt if bar.cut == "quarter" else bar.wood.shear_lr
    one, other = bar.width * math.sqrt(up), height * math.sqrt(flat)
    long, short = np.maximum(one, other), np.minimum(one, other)
    share = 1.0 / 3.0 - 0.21 * short / long * (1.0 - short**4 / (12.0 * long**4))
    return floats(long * short**3 * share / math.sqrt(up * flat))


def junction_stiffness(bar: Bar, height: FloatArray, thickness: FloatArray) -> FloatArray:
    """What bar and plate resist twist by as one, where they meet, beyond what each does alone, N mm2.

    alpha D^4 of a T (Roark's formula, from memory): D the largest circle in the joint, alpha 0.15 of the thinner over
    the thicker.
    """
    least = np.minimum(thickness, bar.width) / np.maximum(thickness, bar.width)
    circle = np.where(bar.width < 2.0 * thickness, thickness + 0.25 * bar.width**2 / thickness, bar.width)
    circle = np.minimum(circle, thickness + height)
    return floats(0.15 * least * circle**4 * bar.wood.shear_lr)


@dataclass(frozen=True, eq=False)
class Section:
    """What a bar resists and weighs for each mm2 of its foot, at places (p,): stretch, bend and
    their coupling belong to the foot's strain along it and the section's; weight, lean and theirs to its movements."""

    stretch: FloatArray
    stretch_bend: FloatArray
    bend: FloatArray
    shear: FloatArray
    twist: FloatArray
    sway: FloatArray
    squeeze: FloatArray
    junction: FloatArray
    weight: FloatArray
    weight_lean: FloatArray
    lean: FloatArray


def section_at(bar: Bar, along: FloatArray, thickness: FloatArray) -> Section:
    """The section at places along a bar, over a plate of these thicknesses there."""
    low, high = wood_between(bar, along)
    tall, first, second = high - low, 0.5 * (high**2 - low**2) * bar.side, (high**3 - low**3) / 3.0
    wood = bar.wood
    upright, up = (wood.radial, wood.shear_lr) if bar.cut == "quarter" else (wood.tangential, wood.shear_lt)
    heavy = 1e-12 * wood.density
    return Section(
        wood.longitudinal * tall,
        wood.longitudinal * first,
        wood.longitudinal * second,
        SHEAR_SHARE * up * tall,
        twist_stiffness(bar, tall) / bar.width,
        SHEAR_SHARE * wood.shear_rt * tall,
        3.0 * upright / tall,
        junction_stiffness(bar, tall, thickness) / bar.width,
        heavy * tall,
        heavy * first,
        heavy * second,
    )
