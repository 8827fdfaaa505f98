"""A finished board's slots seen in a photograph, as a rough check: a slot cut at the wrong mark, or another scale.

Tenths of a millimetre are all that a photograph can say, where a slot's hundredth counts; so nothing is told in cents,
and what lies within the uncertainty is not told at all. The board lies on the plane of the tags, its thickness given.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from gramil.faults import MakersFault
from gramil.measure import show
from gramil.photographs.ground import Photograph, refuse_beyond
from gramil.photographs.plan import Grounds, Laid
from gramil.quantities import Mm

Array = NDArray[np.float64]
FEWEST = 4
"""Slots from which a scale and a place can be told with something left over."""
REACH: Mm = 2.5
"""How far along the board from the point a slot is sought."""
CELL: Mm = 0.05
BESIDE: tuple[Mm, ...] = (-4.0, -2.0, 0.0, 2.0, 4.0)
"""How far to the side of the points' line each slot is looked at."""
FAINTEST = 0.05
"""Share of the wood's light that a slot takes at least."""
WITHIN_LEAST: Mm = 0.15
"""What no photograph of a slot tells better, two standard deviations."""


@dataclass(frozen=True)
class SlotsSeen:
    """By slot from the first fret on: how far toward the bridge it lies from where it is drawn (mm, NaN where no dark
    line is seen), `longer` is by what share the slots' scale is longer than the drawn one, `within` two standard
    deviations of a place (mm), `longer_within` of the share.
    """

    off: Array
    longer: float
    within: Mm
    longer_within: float

    @property
    def other_scale(self) -> bool:
        """Whether the slots lie as those of another scale do."""
        return abs(self.longer) > self.longer_within

    @property
    def astray(self) -> tuple[int, ...]:
        """Frets whose slots lie elsewhere than drawn by more than is uncertain, once the scale is taken out."""
        return tuple(int(row) + 1 for row in np.flatnonzero(np.abs(self.off) > self.within))


def slots_seen(ground: Grounds, points: Sequence[Laid], drawn: Array) -> SlotsSeen:
    """Slots near points laid one on each from the first fret on, held against their drawn places (n), mm.

    The nut's place is not asked for: the middle of the slots is laid on that of the drawn ones. Raises MakersFault for
    points that are too few or too many, that lie outside the tags, or where no slot is seen.
    """
    if not FEWEST <= len(points) <= len(drawn):
        raise MakersFault.of(
            f"{len(points)} points for {len(drawn)} slots",
            f"a point on each slot from the first fret on, {FEWEST} at the least",
            "Lay them along the middle of the board, in order",
        )
    for number, each in enumerate(ground.each):
        own = np.array([ground.held(point) for point in points if point.picture == number])
        if isinstance(each, Photograph) and len(own):
            refuse_beyond(each, own)
    places = ground.places(points)
    middle, along = _axis(places)
    seen = (places - middle) @ along + _nearest_dark(ground, places, along)
    known = np.isfinite(seen)
    if known.sum() < FEWEST:
        raise MakersFault.of(
            "no slots are seen near the points",
            f"within {show(REACH, ground.unit)} of them nothing is darker than the wood",
            "Lay them on the slots, and let light fall along the board, not into the slots",
        )
    longer, start = np.polyfit(drawn[: len(seen)][known], seen[known], 1)
    within = max(WITHIN_LEAST, 2 * float(np.sqrt((ground.unsure(places) ** 2).mean())))
    spread = float(np.ptp(drawn[: len(seen)][known]))
    return SlotsSeen(seen - start - longer * drawn[: len(seen)], float(longer) - 1, within, 2 * within / spread)


def _axis(places: Array) -> tuple[Array, Array]:
    """The middle of points on a line, and the line's direction from the first to the last."""
    middle = places.mean(axis=0)
    along = np.linalg.svd(places - middle)[2][0]
    return middle, along * np.sign((places[-1] - places[0]) @ along)


def _nearest_dark(ground: Grounds, places: Array, along: Array) -> Array:
    """By point, how far along the board the middle of the dark line beside it lies; NaN where there is none."""
    steps = np.arange(-REACH, REACH + CELL / 2, CELL)
    across = np.array([-along[1], along[0]])
    beside = np.array(BESIDE)[:, None, None] * across
    cells = places[:, None, None] + beside + steps[:, None] * along
    light = np.median(ground.light(cells.reshape(-1, 2)).reshape(cells.shape[:3]), axis=1)
    wood = np.percentile(light, 70, axis=1)[:, None]
    ink = np.clip((wood - light) / np.maximum(wood, 1.0), 0, None)
    most = ink.max(axis=1)
    ink = np.where(ink > most[:, None] / 2, ink, 0.0)
    found = (ink * steps).sum(axis=1) / np.maximum(ink.sum(axis=1), 1e-12)
    return np.where(most > FAINTEST, found, np.nan)
