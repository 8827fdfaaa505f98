"""A run of straight steps and arcs, each arc given by its bulge: the tangent of a quarter of its angle (DXF's way)."""

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
STRAIGHT = 1e-9
"""A bulge below this leaves the chord by less than rounding does."""


def bulged_extent(corners: Array, bulges: Array) -> Array:
    """Places whose box is about the run's: its corners, and the top of each arc. `bulges`: one for each step."""
    start, end = corners[:-1], corners[1:]
    across = np.stack((end[:, 1] - start[:, 1], start[:, 0] - end[:, 0]), axis=-1)
    tops = (start + end) / 2 + across * bulges[:, None] / 2
    return np.vstack((corners, tops))


def bulged_points(corners: Array, bulges: Array, counts: NDArray[np.intp]) -> tuple[Array, NDArray[np.bool_]]:
    """Points on the run, shape (n, 2), and whether each step is straight, (n - 1,); `counts` as `chords_of` gives it.

    `corners` has shape (m, 2), m > 1, no two neighbours alike; `bulges` shape (m - 1,).
    """
    row = np.repeat(np.arange(len(counts)), counts)
    within = np.arange(len(row)) - np.repeat(np.cumsum(counts) - counts, counts)
    places = _on_steps(corners, bulges, row, within / counts[row])
    return np.vstack((places, corners[-1:])), np.abs(bulges)[row] < STRAIGHT


def chords_of(corners: Array, bulges: Array, sag: float) -> NDArray[np.intp]:
    """Chords for each step: one for a straight one, as many for an arc as keep within `sag` of it, at least four."""
    chords = np.hypot(*np.diff(corners, axis=0).T)
    bent = np.abs(bulges) >= STRAIGHT
    bulge = np.where(bent, np.abs(bulges), 1.0)
    radius = chords * (1 + bulge**2) / (4 * bulge)
    angle = 2 * np.arccos(np.clip(1 - sag / radius, 0.0, 1 - 1e-12))
    counts = np.maximum(4, np.ceil(4 * np.arctan(bulge) / angle))
    return np.where(bent, counts, 1).astype(np.intp)


def _on_steps(corners: Array, bulges: Array, row: NDArray[np.intp], share: Array) -> Array:
    """Places at shares of steps; an arc's by the angle run, measured from its chord.

    Seen from the arc's start, a place lies off the chord by half the angle still to run, to the right of a positive
    bulge's chord, and as far off as the chord of the angle run is to the whole chord.
    """
    start, along = corners[row], corners[row + 1] - corners[row]
    half = 2 * np.arctan(bulges[row])
    bent = np.abs(bulges[row]) >= STRAIGHT
    safe = np.where(bent, half, 1.0)
    reach = np.where(bent, np.sin(safe * share) / np.sin(safe), share)
    turn = np.where(bent, -half * (1 - share), 0.0)
    cos, sin = np.cos(turn), np.sin(turn)
    turned = np.stack((along[:, 0] * cos - along[:, 1] * sin, along[:, 0] * sin + along[:, 1] * cos), axis=-1)
    return np.asarray(start + reach[:, None] * turned)
