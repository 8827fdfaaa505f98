"""Tags as a camera sees them, reckoned without drawing a picture: corners with the error that finding them has."""

import numpy as np

from gramil.photographs.finding_tags import FoundTag
from gramil.photographs.tags import corners

from .rendered import Scene

CORNER = 0.05
"""What a found corner is off, px: measured on rendered pictures."""


def seen_tags(scene: Scene, random: np.random.Generator, cut: tuple[float, float] = (0, 0)) -> tuple[FoundTag, ...]:
    """Every tag of a scene; `cut` is what was cut off at the left and at the top, px."""
    found = []
    for number, (x, y, turn) in scene.tags.items():
        turned = np.array([(np.cos(turn), np.sin(turn)), (-np.sin(turn), np.cos(turn))])
        seen = scene.seen(corners(scene.side) @ turned + (x, y)) - cut
        found.append(FoundTag(number, seen + random.normal(0, CORNER, seen.shape), False, 60.0, 1.5))
    return tuple(found)
