"""Plates: springs round the edge, thickness from place to place, blocks, nodal lines, strains, repeatability."""

import math

import numpy as np
import pytest

from gramil.faults import MakersFault
from gramil.physics.plates.block import Block
from gramil.physics.plates.edge import CLAMPED, HINGED, SUPPORTED, Edge, Hold
from gramil.physics.plates.loads import pressed, pushed, spread
from gramil.physics.plates.nodal_lines import bellies, nodal_lines, rises
from gramil.physics.plates.plate import Plate
from gramil.physics.plates.plies import Ply
from gramil.physics.plates.rows import Z, reading
from gramil.physics.plates.strain import largest_in_plate
from gramil.physics.plates.surety import within
from gramil.physics.plates.timber import isotropic
from gramil.physics.plates.whole import Whole, whole_of

METAL = Ply(isotropic(70e3, 0.3, 2700.0))
OUTLINE = np.array([[0.0, 0.0], [300.0, 0.0], [300.0, 200.0], [0.0, 200.0]])


def solved(edge: Edge) -> Whole:
    return whole_of(Plate(OUTLINE, METAL, 2.0, holds=(Hold(edge),)), 16.0)


def first(edge: Edge) -> float:
    return float(solved(edge).modes(1).frequencies[0])


def test_springs_lie_between_supported_and_clamped() -> None:
    """From almost nothing to almost rigid they come from one to the other, never falling."""
    found = [first(Edge(math.inf, stiff, 0.0, math.inf, math.inf)) for stiff in (1e-3, 1e3, 1e4, 1e5, 1e9)]
    assert found == sorted(found)
    assert found[0] == pytest.approx(first(SUPPORTED), rel=1e-5)
    assert found[-1] == pytest.approx(first(Edge(math.inf, math.inf, 0.0, math.inf, math.inf)), rel=1e-4)


def test_a_plate_on_soft_springs_floats() -> None:
    """Rigid on springs k a mm of edge: sqrt(k edge / mass) / 2 pi."""
    found = solved(Edge(deflection=1e-6, outward=1e-6, along=1e-6)).modes(3).frequencies
    mass = 2700e-12 * 300.0 * 200.0 * 2.0
    assert found[:3] == pytest.approx(math.sqrt(1e-6 * 1000.0 / mass) / (2 * math.pi), rel=0.01)


def test_thickness_from_place_to_place() -> None:
    even = whole_of(Plate(OUTLINE, METAL, 2.5), 16.0).modes(3).frequencies
    same = whole_of(Plate(OUTLINE, METAL, lambda points: np.full(points.shape[:-1], 2.5)), 16.0).modes(3).frequencies
    assert same == pytest.approx(even, rel=1e-12)
    thin = Plate(OUTLINE, METAL, lambda points: 2.5 - 0.5 * (points[..., 0] > 150.0))
    between = whole_of(thin, 16.0).modes(3).frequencies
    assert (between < even).all()
    assert (between > whole_of(Plate(OUTLINE, METAL, 2.0), 16.0).modes(3).frequencies).all()


def test_a_block_of_the_same_stuff_makes_a_thicker_plate() -> None:
    """Glued all over, 2 mm on 2 mm is nearly a plate of 4 mm: the glue's neighbourhood gives a little."""
    both = whole_of(Plate(OUTLINE, METAL, 2.0), 16.0, (), [Block("b", OUTLINE, METAL, 2.0)])
    double = whole_of(Plate(OUTLINE, METAL, 4.0), 16.0)
    at = np.array([[150.0, 100.0]])
    one, other = (
        (reading(each.mesh, at, {Z: 1.0}) @ each.under(pressed(each.mesh, 1e-3))[: each.sheet.size])[0]
        for each in (both, double)
    )
    free = Plate(OUTLINE, METAL, 2.0, holds=())
    loose = whole_of(free, 16.0, (), [Block("b", OUTLINE, METAL, 2.0)]).free_modes(4).frequencies
    thick = whole_of(Plate(OUTLINE, METAL, 4.0, holds=()), 16.0).free_modes(4).frequencies
    assert loose == pytest.approx(thick, rel=0.01)
    assert one > other  # only the plate's own edge is clamped


def test_a_block_off_the_plate_is_told() -> None:
    with pytest.raises(MakersFault, match="does not lie on the plate"):
        whole_of(Plate(OUTLINE, METAL, 2.0), 16.0, (), [Block("pad", OUTLINE + 500.0, METAL, 2.0)])


def test_a_load_off_the_plate_is_told() -> None:
    mesh = solved(CLAMPED).mesh
    with pytest.raises(MakersFault, match="not on the plate"):
        pushed(mesh, (400.0, 10.0), (0.0, 0.0, 1.0))
    with pytest.raises(MakersFault, match="not on the plate"):
        spread(mesh, OUTLINE + 1000.0, (0.0, 0.0, 1.0))


@pytest.mark.parametrize("couple", [(0.0, -9000.0), (5000.0, 2000.0), (0.0, 0.0)])
def test_a_spread_load_adds_up(couple: tuple[float, float]) -> None:
    mesh = solved(CLAMPED).mesh
    area = np.array([[100.0, 60.0], [140.0, 60.0], [150.0, 150.0], [100.0, 150.0]])
    given = spread(mesh, area, (-10.0, 4.0, 7.0), couple).reshape(-1, 5)
    x, y = mesh.nodes.T
    assert given[:, :3].sum(axis=0) == pytest.approx([-10.0, 4.0, 7.0], abs=1e-9)
    middle = (given[:, 0] @ x / -10.0, given[:, 0] @ y / -10.0)
    assert given[:, 2] @ (y - middle[1]) == pytest.approx(couple[0], abs=1e-6)
    assert -given[:, 2] @ (x - middle[0]) == pytest.approx(couple[1], abs=1e-6)


# Hinged modes are sin(m pi x / a) sin(n pi y / b): the second rests along x = a / 2, the third along y = b / 2.
def test_nodal_lines_of_a_hinged_plate() -> None:
    whole = solved(HINGED)
    modes = whole.modes(3)
    assert nodal_lines(whole.mesh, rises(whole.mesh, modes.movements[:, 0])) == ()
    for mode, axis, place in ((1, 0, 150.0), (2, 1, 100.0)):
        shape = rises(whole.mesh, modes.movements[:, mode])
        (line,) = nodal_lines(whole.mesh, shape)
        along, length = line[:, 1 - axis], (200.0, 300.0)[axis]
        inside = (along > 25.0) & (along < length - 25.0)  # where the plate hardly moves a line wanders
        assert line[inside, axis] == pytest.approx(place, abs=0.5)
        assert np.ptp(along) == pytest.approx(length, abs=1e-6)
        one, other = bellies(whole.mesh, shape)
        assert one.share * other.share == pytest.approx(-1.0, rel=0.02)


def test_a_ring_at_rest_closes() -> None:
    turn = np.linspace(0.0, 2 * math.pi, 241)[:-1]
    disc = 100.0 * np.stack([np.cos(turn), np.sin(turn)], axis=1)
    whole = whole_of(Plate(disc, METAL, 2.0), 9.0)
    shape = rises(whole.mesh, whole.modes(6).movements[:, 5])
    (line,) = nodal_lines(whole.mesh, shape)
    assert (line[0] == line[-1]).all()
    assert np.hypot(*line.T) == pytest.approx(37.9, abs=1.0)


def test_strain_of_a_clamped_strip() -> None:
    """A long plate clamped on its long sides, b apart: at the edge a couple q b^2 / 12, stress that over t^2 / 6."""
    strip = np.array([[0.0, 0.0], [400.0, 0.0], [400.0, 60.0], [0.0, 60.0]])
    holds = (Hold(CLAMPED, start=0.0, stop=400.0), Hold(CLAMPED, start=460.0, stop=860.0))
    whole = whole_of(Plate(strip, Ply(METAL.wood, math.pi / 2), 1.5, holds=holds), 6.0)
    found = largest_in_plate(whole, whole.under(pressed(whole.mesh, 0.01)))
    expected = 0.01 * 60.0**2 / 12.0 * 6.0 / 1.5**2 * (1 - 0.3**2) / 70e3
    assert abs(found.strain) == pytest.approx(expected, rel=0.08)
    assert min(found.y, 60.0 - found.y) < 2.0


def test_answers_repeat_to_the_last_bit() -> None:
    one, other = (solved(CLAMPED).modes(5) for _ in range(2))
    assert (one.frequencies == other.frequencies).all()
    assert (one.movements == other.movements).all()


def test_how_sure() -> None:
    """Half as much again as the meshes differ, and 3 % of the answer."""
    assert within([100.0, -1.0], [98.0, -1.1]) == pytest.approx([1.5 * 2.0 + 0.03 * 98.0, 1.5 * 0.1 + 0.033])
