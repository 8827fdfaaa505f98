"""A camera: where a point of the room is seen in the picture, and where a line of sight meets a plane.

The plane of the printed tags is z = 0, x to the right, y up, z toward the camera. The lens bends by k1 r2 + k2 r4 of
the distance from its axis. Source: R. Hartley and A. Zisserman, Multiple View Geometry in Computer Vision, 2nd edition,
2004, sections 6.1 and 7.4 (from memory).
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.spatial.transform import Rotation

from gramil.quantities import Mm

Array = NDArray[np.float64]
LENS, POSE = 5, 6
"""How many numbers a lens has (log of the focal length, centre x and y, k1, k2), and how many a camera's place has."""


@dataclass(frozen=True)
class Camera:
    """`lens` is log focal length (px), centre (px, two) and k1, k2; `pose` is the turn (a rotation vector) and the
    shift (mm) that take the plane's coordinates to the camera's: x right, y down, z forward.

    Several cameras may stand in one, (..., 5) and (..., 6): all of them see at once.
    """

    lens: Array
    pose: Array

    def seen(self, points: Array) -> Array:
        """Where points (..., n, 2) of the plane, or (..., n, 3) of the room, are seen, in pixels (..., n, 2)."""
        turn = self._turn()[..., : points.shape[-1]]
        turned = points @ np.swapaxes(turn, -1, -2) + self.pose[..., None, 3:]
        flat = turned[..., :2] / turned[..., 2:]
        focal, centre = np.exp(self.lens[..., None, :1]), self.lens[..., None, 1:3]
        return np.asarray(flat * self._bent(flat)[..., None] * focal + centre)

    def _turn(self) -> Array:
        """The turn from the plane's coordinates to the camera's (..., 3, 3)."""
        vectors = self.pose[..., :3]
        return np.asarray(Rotation.from_rotvec(vectors.reshape(-1, 3)).as_matrix()).reshape(*vectors.shape, 3)

    def _bent(self, flat: Array) -> Array:
        """By how much the lens moves what is seen in a direction away from its axis."""
        square = flat[..., 0] ** 2 + flat[..., 1] ** 2  # numpy's sum along a short axis takes ten times as long
        return np.asarray(1 + square * (self.lens[..., 3:4] + square * self.lens[..., 4:5]))

    def on_plane(self, pixels: Array, height: Mm = 0.0) -> Array:
        """Where lines of sight through pixels (n, 2) meet the plane that lies `height` over that of the tags (n, 2)."""
        sight = self.sight(pixels)
        stand = self.stands()
        return stand[:2] + sight[:, :2] * ((height - stand[2]) / sight[:, 2])[:, None]

    def sight(self, pixels: Array) -> Array:
        """Directions of the lines of sight through pixels (n, 3), in the plane's coordinates."""
        bent = (pixels - self.lens[1:3]) / np.exp(self.lens[0])
        flat = bent
        for _ in range(12):
            flat = bent / self._bent(flat)[:, None]
        forward = np.column_stack((flat, np.ones(len(flat))))
        return np.asarray(forward @ self._turn())

    def stands(self) -> Array:
        """Where the camera stands (3), in mm."""
        return np.asarray(-self.pose[3:] @ self._turn())

    def slant(self, pixels: Array) -> Array:
        """Tangent of the angle at which each pixel's line of sight leans from square to the plane (n)."""
        sight = self.sight(pixels)
        return np.asarray(np.hypot(sight[:, 0], sight[:, 1]) / np.abs(sight[:, 2]))


def placed(perspective: Array, lens: Array) -> Array:
    """A camera's pose from the perspective (3, 3) of the plane to pixels, for a lens without bending."""
    focal = np.exp(lens[0])
    inner = np.array([(focal, 0, lens[1]), (0, focal, lens[2]), (0, 0, 1)])
    columns = np.linalg.inv(inner) @ perspective
    columns /= np.sqrt(np.linalg.norm(columns[:, 0]) * np.linalg.norm(columns[:, 1]))
    if columns[2, 2] < 0:
        columns = -columns
    first, second = columns[:, 0], columns[:, 1]
    left, _, right = np.linalg.svd(np.column_stack((first, second, np.cross(first, second))))
    turn = left @ np.diag((1, 1, np.linalg.det(left @ right))) @ right
    return np.concatenate((Rotation.from_matrix(turn).as_rotvec(), columns[:, 2]))
