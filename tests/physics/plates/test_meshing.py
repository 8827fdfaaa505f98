"""Meshes of regions with holes and lines: what passes the gate has every line and all the area."""

import math

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gramil.faults import MakersFault
from gramil.physics.arrays import FloatArray
from gramil.physics.plates.lines import area_of, crossings_of_chains, inside, spaced_ring, with_points
from gramil.physics.plates.mesh import Mesh
from gramil.physics.plates.meshing import Region, mesh_of


def circle(x: float, y: float, radius: float, points: int = 360) -> FloatArray:
    turn = np.linspace(0.0, 2 * math.pi, points + 1)[:-1]
    return np.stack([x + radius * np.cos(turn), y + radius * np.sin(turn)], axis=1)


def waisted(length: float, waist: float) -> FloatArray:
    """An outline with a waist, as 400 points."""
    turn = np.linspace(0.0, 2 * math.pi, 401)[:-1]
    return np.stack([length / 2 * np.cos(turn), (1 - waist * np.cos(turn) ** 2) * 0.38 * length * np.sin(turn)], axis=1)


def sharpest(mesh: Mesh) -> float:
    """The least angle of any triangle, in degrees."""
    corners = mesh.nodes[mesh.triangles[:, :3]]
    ahead, back = np.roll(corners, -1, axis=1) - corners, np.roll(corners, 1, axis=1) - corners
    lengths = np.linalg.norm(ahead, axis=-1) * np.linalg.norm(back, axis=-1)
    return math.degrees(np.arccos((ahead * back).sum(axis=-1) / lengths).min())


places = st.floats(-0.3, 0.3)


@settings(max_examples=25)
@given(
    length=st.floats(350.0, 520.0),
    waist=st.floats(0.0, 0.3),
    hole=st.floats(35.0, 55.0),
    bars=st.lists(st.tuples(places, places, places, places), max_size=7),
    size=st.sampled_from([10.0, 14.0]),
)
def test_every_mesh_has_its_whole_area(
    length: float, waist: float, hole: float, bars: list[tuple[float, ...]], size: float
) -> None:
    """Whatever lines are laid across; or the maker is told, and there is no mesh: never one with less."""
    rings = (waisted(length, waist), circle(0.1 * length, 0.0, hole))
    lines = tuple(length * np.array(ends).reshape(2, 2) for ends in bars)
    lines = tuple(line for line in lines if np.linalg.norm(line[1] - line[0]) > 20.0)
    try:
        mesh = mesh_of(Region(rings[0], (rings[1],), lines), size)
    except MakersFault:
        return
    assert mesh.six.areas.sum() == pytest.approx(area_of(rings[0]) - area_of(rings[1]), rel=3e-4)
    assert sharpest(mesh) >= 5.0
    assert (mesh.six.areas > 0).all()


def test_a_mesh_has_sides_along_its_lines() -> None:
    lines = (np.array([[-150.0, -80.0], [150.0, 80.0]]), np.array([[-150.0, 80.0], [150.0, -80.0]]))
    mesh = mesh_of(Region(waisted(480.0, 0.2), (), lines), 10.0)
    sides = np.concatenate([mesh.triangles[:, [0, 1, 3]], mesh.triangles[:, [1, 2, 4]], mesh.triangles[:, [2, 0, 5]]])
    for line in lines:
        way = (line[1] - line[0]) / np.linalg.norm(line[1] - line[0])
        arms = mesh.nodes[sides] - line[0]
        off = np.abs(arms[..., 0] * way[1] - arms[..., 1] * way[0])
        on = (off < 1e-9).all(axis=1)
        steps = np.unique((arms[on] @ way).round(9), axis=0)
        covered = np.abs(steps[:, 1] - steps[:, 0]).sum() / 2 if len(steps) % 2 == 0 else np.nan
        assert covered == pytest.approx(np.linalg.norm(line[1] - line[0]) - 6.0, rel=0.01)


def test_curved_edges_lie_on_the_circle() -> None:
    mesh = mesh_of(Region(circle(0.0, 0.0, 100.0)), 20.0)
    assert np.linalg.norm(mesh.nodes[mesh.rim].reshape(-1, 2), axis=1) == pytest.approx(100.0, rel=1e-4)
    assert mesh.six.areas.sum() == pytest.approx(math.pi * 100.0**2, rel=2e-4)


def test_places_are_found_again() -> None:
    mesh = mesh_of(Region(circle(0.0, 0.0, 100.0), (circle(20.0, 0.0, 30.0),)), 18.0)
    points = np.random.default_rng(1).uniform(-100.0, 100.0, (400, 2))
    which, shares = mesh.place(points)
    counts, _ = mesh.weights(which, shares)
    there = (counts[..., None] * mesh.nodes[mesh.triangles[which]]).sum(axis=1)
    on = which >= 0
    assert there[on] == pytest.approx(points[on], abs=1e-8)
    radius, from_hole = np.hypot(*points.T), np.hypot(points[:, 0] - 20.0, points[:, 1])
    assert on[(radius < 98.0) & (from_hole > 31.0)].all()
    assert not on[(radius > 100.0) | (from_hole < 29.0)].any()


def test_an_outline_that_crosses_itself_is_told() -> None:
    bow_tie = np.array([[0.0, 0.0], [100.0, 100.0], [100.0, 0.0], [0.0, 100.0]])
    with pytest.raises(MakersFault, match="could not be cut"):
        mesh_of(Region(bow_tie), 10.0)


def test_lines_that_cross_meet_in_a_point() -> None:
    one, other = np.array([[0.0, 0.0], [10.0, 10.0]]), np.array([[0.0, 10.0], [10.0, 0.0]])
    assert crossings_of_chains(one, other) == pytest.approx(np.array([[5.0, 5.0]]))
    assert with_points(one, np.array([[5.0, 5.0]])) == pytest.approx(np.array([[0.0, 0.0], [5.0, 5.0], [10.0, 10.0]]))


def test_a_spaced_ring_keeps_its_corners() -> None:
    square = np.array([[0.0, 0.0], [100.0, 0.0], [100.0, 60.0], [0.0, 60.0]])
    ring = spaced_ring(square, 7.0)
    assert all((np.abs(ring - corner).sum(axis=1) < 1e-12).any() for corner in square)
    assert inside(square, np.array([[50.0, 30.0], [101.0, 30.0]])).tolist() == [True, False]
