"""Loads on a plate as vectors of forces on its movements: pressure all over, forces and couples at a point or an area.

Forces are (along x, along y, along z) in N and act at the plate's middle; couples are about x and about y,
right-handed, in N mm: one about y lifts what lies toward less x.
"""

import numpy as np

from gramil.faults import MakersFault
from gramil.physics.arrays import FloatArray, floats
from gramil.physics.plates.edge import EACH
from gramil.physics.plates.lines import left_round
from gramil.physics.plates.mesh import Mesh
from gramil.physics.plates.rows import LEAN_X, LEAN_Y, X, Y, Z, reading, summed_rows

_FINE = 12
"""Into how many steps an area's triangles are cut to spread a load."""


def pressed(mesh: Mesh, pressure: float) -> FloatArray:
    """An even pressure in MPa along z over the whole plate, as (n,)."""
    load = np.zeros(EACH * len(mesh.nodes))
    np.add.at(load, EACH * mesh.triangles + Z, pressure * mesh.six.areas @ mesh.six.counts)
    return load


def pushed(
    mesh: Mesh, point: tuple[float, float], force: tuple[float, float, float], couple: tuple[float, float] = (0.0, 0.0)
) -> FloatArray:
    """A force and a couple at one point, as (n,).

    Raises MakersFault for a point off the plate.
    """
    at = floats(point).reshape(1, 2)
    if mesh.place(at)[0][0] < 0:
        raise MakersFault.of(
            f"a load at ({point[0]:g}, {point[1]:g}) is not on the plate", remedy="give a place on the plate"
        )
    kinds = {X: force[0], Y: force[1], Z: force[2], LEAN_X: couple[1], LEAN_Y: -couple[0]}
    return summed_rows(reading(mesh, at, kinds))


def spread(
    mesh: Mesh, ring: FloatArray, force: tuple[float, float, float], couple: tuple[float, float] = (0.0, 0.0)
) -> FloatArray:
    """A force and a couple about the area's middle, spread over a convex ring (k, 2), as (n,).

    Force along z and couple press as a plane of pressure, that falls evenly from one side to the other; what lies in
    the plane is spread evenly. What lies off the plate carries nothing.
    Raises MakersFault where the ring lies off the plate.
    """
    points, areas = _grains(ring)
    on = mesh.place(points)[0] >= 0
    if not on.any():
        raise MakersFault.of("a load's area is not on the plate", remedy="give an area on the plate")
    points, areas = points[on], areas[on]
    even = areas / areas.sum()
    arms = points - even @ points
    plane = np.stack([np.ones(len(arms)), arms[:, 0], arms[:, 1]])
    up = areas * (np.linalg.solve((plane * areas) @ plane.T, [force[2], -couple[1], couple[0]]) @ plane)
    kinds = {X: force[0] * even, Y: force[1] * even, Z: up}
    return summed_rows(reading(mesh, points, kinds))


def _grains(ring: FloatArray) -> tuple[FloatArray, FloatArray]:
    """Points that stand for a convex ring's area, and the area (mm2) of each."""
    ring = left_round(floats(ring))
    after, middle = np.roll(ring, -1, axis=0), ring.mean(axis=0)
    rows = [(i, j, flip) for i in range(_FINE) for j in range(_FINE - i) for flip in (0, 1) if flip + i + j < _FINE]
    steps = np.array([(i + (1 + flip) / 3, j + (1 + flip) / 3) for i, j, flip in rows]) / _FINE
    first, second = ring - middle, after - middle
    points = middle + steps[None, :, :1] * first[:, None] + steps[None, :, 1:] * second[:, None]
    areas = 0.5 * (first[:, 0] * second[:, 1] - first[:, 1] * second[:, 0]) / len(rows)
    return points.reshape(-1, 2), np.repeat(areas, len(rows))
