"""Photographs of a plan with strips round it, made by reckoning: perspective, lens, light, noise, waving paper, JPEG.

Where everything lies is chosen here, so that what is read back can be held against it. The lens bends by a third term
that the solved camera does not have.
"""

from dataclasses import dataclass
from functools import lru_cache
from io import BytesIO

import numpy as np
from numpy.typing import NDArray
from PIL import Image
from scipy import ndimage
from scipy.interpolate import CubicSpline
from scipy.spatial import cKDTree
from scipy.spatial.transform import Rotation

from gramil.photographs.tags import ACROSS, pattern

Array = NDArray[np.float64]
STILL = 1e-12
"""What moves by less from one step to the next, in mm or as a tangent, has come to rest."""


@dataclass(frozen=True)
class Scene:
    """Tags by number with middle and turn (mm, rad), lines as rings (n, 2) with their width, and the camera."""

    tags: dict[int, tuple[float, float, float]]
    lines: tuple[tuple[Array, float], ...] = ()
    side: float = 36.0
    size: tuple[int, int] = (3000, 2250)
    focal: float = 2700.0
    bent: tuple[float, float, float] = (0.06, -0.05, 0.01)
    off_centre: tuple[float, float] = (9.0, -6.0)
    tilt: tuple[float, float, float] = (0.06, -0.08, 0.2)
    distance: float = 1100.0
    over: tuple[float, float] = (0.0, 0.0)
    waving: float = 0.0
    wave: tuple[float, ...] = (0.011, 0.017, 0.4, 0.007, -0.013, 1.9)
    blur: float = 0.8
    noise: float = 2.0
    seed: int = 1

    def height(self, points: Array) -> Array:
        """How high the paper stands, mm: two waves, `waving` their greatest height together."""
        a, b, c, d, e, f = self.wave
        one = np.sin(a * points[:, 0] + b * points[:, 1] + c)
        return self.waving * (0.6 * one + 0.4 * np.sin(d * points[:, 0] + e * points[:, 1] + f))

    def _turn(self) -> Rotation:
        return Rotation.from_euler("xyz", self.tilt) * Rotation.from_euler("x", np.pi)

    def seen(self, points: Array) -> Array:
        """Pixels of points of the paper (n, 2)."""
        z = self.height(points)
        room = np.column_stack((points - self.over, z))
        turned = self._turn().apply(room) + np.array([0, 0, self.distance])
        plane = turned[:, :2] / turned[:, 2:]
        square = (plane**2).sum(axis=1)
        k1, k2, k3 = self.bent
        bent = 1 + square * (k1 + square * (k2 + square * k3))
        middle = (np.array(self.size) - 1) / 2 + self.off_centre
        return plane * bent[:, None] * self.focal + middle

    def back(self, pixels: Array) -> Array:
        """Points of the paper (n, 2) seen at pixels, by steps until they are seen there."""
        middle = (np.array(self.size) - 1) / 2 + self.off_centre
        want = (pixels - middle) / self.focal
        flat = want
        k1, k2, k3 = self.bent
        for _ in range(15):
            square = flat[:, 0] ** 2 + flat[:, 1] ** 2
            before, flat = flat, want / (1 + square * (k1 + square * (k2 + square * k3)))[:, None]
            if np.abs(flat - before).max(initial=0.0) < STILL:
                break
        turn = self._turn()
        sight = turn.inv().apply(np.column_stack((flat, np.ones(len(flat)))))
        stand = -turn.inv().apply(np.array([0, 0, self.distance]))
        z = np.zeros(len(pixels))
        for _ in range(6):
            at = stand[:2] + sight[:, :2] * ((z - stand[2]) / sight[:, 2])[:, None] + self.over
            before, z = z, self.height(at)
            if np.abs(z - before).max(initial=0.0) < STILL:
                break
        return at

    def grey(self) -> NDArray[np.float32]:
        """The photograph's light."""
        width, height = self.size
        ink = np.zeros((height, width), dtype=np.float32)
        for number, (mx, my, turn) in self.tags.items():
            self._tag(ink, number, np.array([mx, my]), turn)
        for ring, wide in self.lines:
            self._line(ink, ring, wide)
        picture = ndimage.gaussian_filter(_light(self.size) * (1 - np.float32(0.9) * ink), self.blur)
        if self.noise:
            picture += np.float32(self.noise) * _noise(self.size, self.seed)
        return np.clip(picture, 0, 255)

    def jpeg(self, quality: int = 90) -> bytes:
        """The photograph as a file."""
        out = BytesIO()
        Image.fromarray(self.grey().round().astype(np.uint8)).save(out, "JPEG", quality=quality)
        return out.getvalue()

    def _tag(self, ink: NDArray[np.float32], number: int, middle: Array, turn: float) -> None:
        half = self.side / 2
        square = np.array([(-half, half), (half, half), (half, -half), (-half, -half)])
        rotate = np.array([(np.cos(turn), np.sin(turn)), (-np.sin(turn), np.cos(turn))])
        box = self.seen(square @ rotate + middle)
        (left, top), (right, bottom) = (
            np.floor(box.min(axis=0)).astype(int) - 3,
            np.ceil(box.max(axis=0)).astype(int) + 4,
        )
        left, top, right, bottom = max(left, 0), max(top, 0), min(right, self.size[0]), min(bottom, self.size[1])
        if right <= left or bottom <= top:
            return
        whole = np.ones((ACROSS, ACROSS), dtype=bool)
        whole[1:-1, 1:-1] = pattern(number)
        columns, rows = np.meshgrid(np.arange(left, right), np.arange(top, bottom))
        at = (self.back(np.column_stack((columns.ravel(), rows.ravel()))) - middle) @ rotate.T
        at = at.reshape(*columns.shape, 2)
        across, down = np.gradient(at, axis=1), np.gradient(at, axis=0)
        total = np.zeros(columns.shape)
        for dx in (-0.375, -0.125, 0.125, 0.375):
            for dy in (-0.375, -0.125, 0.125, 0.375):
                x, y = np.moveaxis(at + dx * across + dy * down, -1, 0)
                column = np.floor((x + half) / self.side * ACROSS).astype(int)
                row = np.floor((half - y) / self.side * ACROSS).astype(int)
                inside = (column >= 0) & (column < ACROSS) & (row >= 0) & (row < ACROSS)
                total += inside & whole[np.clip(row, 0, ACROSS - 1), np.clip(column, 0, ACROSS - 1)]
        ink[top:bottom, left:right] = np.maximum(ink[top:bottom, left:right], total / 16)

    def _line(self, ink: NDArray[np.float32], ring: Array, wide: float) -> None:
        pixels = self.seen(ring)
        columns, rows = np.round(pixels).astype(int).T
        kept = (columns >= 0) & (columns < self.size[0]) & (rows >= 0) & (rows < self.size[1])
        if not kept.any():
            return
        scale = np.hypot(*np.diff(pixels, axis=0).T).mean() / np.hypot(*np.diff(ring, axis=0).T).mean()
        about = int(wide * scale / 2) + 3
        left, top = max(columns[kept].min() - about, 0), max(rows[kept].min() - about, 0)
        near = np.zeros(
            ink[top : rows[kept].max() + about + 1, left : columns[kept].max() + about + 1].shape, dtype=bool
        )
        near[rows[kept] - top, columns[kept] - left] = True
        near = ndimage.binary_dilation(near, iterations=about)
        where = np.argwhere(near) + np.array((top, left))
        at = self.back(where[:, ::-1].astype(float))
        off, _ = cKDTree(ring).query(at)
        cover = np.clip((wide / 2 - off) * scale + 0.5, 0, 1)
        place = (where[:, 0], where[:, 1])
        ink[place] = np.maximum(ink[place], cover)


@lru_cache(2)
def _light(size: tuple[int, int]) -> NDArray[np.float32]:
    """Paper that is lit from one side, and darker toward the picture's corners."""
    width, height = size
    x, y = np.linspace(-1, 1, width, dtype=np.float32), np.linspace(-1, 1, height, dtype=np.float32)[:, None]
    return 225 - 25 * x - 15 * y - 20 * (x**2 + y**2)


@lru_cache(2)
def _noise(size: tuple[int, int], seed: int) -> NDArray[np.float32]:
    return np.random.default_rng(seed).standard_normal(size[::-1], dtype=np.float32)


def strips_round(wide: float = 620, tall: float = 480) -> dict[int, tuple[float, float, float]]:
    """Four strips, 220 mm from tag to tag, laid round by eye: tags by number, middle and turn."""
    places = [(0, tall / 2, 0.05), (-20, -tall / 2, -0.04), (-wide / 2, 10, 1.6), (wide / 2, -20, 1.52)]
    found = {}
    for strip, (x, y, turn) in enumerate(places):
        along = np.array([np.cos(turn), np.sin(turn)]) * 110
        found[2 * strip] = (x - along[0], y - along[1], turn)
        found[2 * strip + 1] = (x + along[0], y + along[1], turn)
    return found


def body(count: int = 4000) -> Array:
    """A closed outline of ours, 490 mm long, with its points close together, anticlockwise about its middle."""
    half = [(0, 0), (4, 45), (17, 88), (48, 120), (91, 133), (140, 125), (185, 117), (230, 130), (285, 165)]
    half += [(350, 186), (410, 172), (455, 131), (480, 72), (490, 0)]
    ring = np.array([*half, *((x, -y) for x, y in half[-2:0:-1])], dtype=float) - (245, 0)
    closed = np.vstack((ring, ring[:1]))
    at = np.concatenate(([0], np.cumsum(np.hypot(*np.diff(closed, axis=0).T))))
    return CubicSpline(at, closed, bc_type="periodic")(np.linspace(0, at[-1], count, endpoint=False))


def off_the_line(points: Array, ring: Array) -> Array:
    """How far points (n, 2) lie from a closed line once they are moved and turned onto it as near as they come."""
    run = np.roll(ring, -1, axis=0) - np.roll(ring, 1, axis=0)
    square = np.column_stack((-run[:, 1], run[:, 0])) / np.hypot(*run.T)[:, None]
    tree, moved = cKDTree(ring), points
    for _ in range(40):
        near = tree.query(moved)[1]
        out = ((ring[near] - moved) * square[near]).sum(axis=1)
        turning = square[near, 1] * moved[:, 0] - square[near, 0] * moved[:, 1]
        x, y, turn = np.linalg.lstsq(np.column_stack((square[near], turning)), out, rcond=None)[0]
        moved = moved @ np.array([(np.cos(turn), np.sin(turn)), (-np.sin(turn), np.cos(turn))]) + (x, y)
    return out
