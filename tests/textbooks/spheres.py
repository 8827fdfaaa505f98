"""The ball and its caps: Archimedes, On the Sphere and Cylinder."""

import math

from gramil.quantities import Mm, Mm3


def cap_volume(radius: Mm, height: Mm) -> Mm3:
    """Volume in mm3 of the cap of `height` cut from a sphere: pi h^2 (3 R - h) / 3."""
    return math.pi * height**2 * (3 * radius - height) / 3
