"""Bars: their sections, their notches, and what happens where they do not stand on the plate."""

import math

import numpy as np
import pytest
from scipy.sparse.linalg import spsolve

from gramil.faults import MakersFault
from gramil.physics.arrays import FloatArray
from gramil.physics.plates.assembly import sheet_of
from gramil.physics.plates.bar import Bar, Gap, twist_stiffness, wood_between
from gramil.physics.plates.edge import EACH, FREE, Hold
from gramil.physics.plates.loads import pressed
from gramil.physics.plates.mesh import Mesh
from gramil.physics.plates.meshing import Region, mesh_of
from gramil.physics.plates.plate import Plate
from gramil.physics.plates.plies import Ply
from gramil.physics.plates.timber import Timber, isotropic
from gramil.physics.plates.whole import whole_of, with_bar

SPRUCE = Timber(11000.0, 858.0, 473.0, 704.0, 671.0, 33.0, 0.372, 0.467, 420.0)
OUTLINE = np.array([[0.0, 0.0], [240.0, 0.0], [240.0, 180.0], [0.0, 180.0]])
PLATE = Plate(OUTLINE, Ply(SPRUCE), 3.0)


def bar(name: str = "bar", height: float = 12.0, *, gaps: tuple[Gap, ...] = (), y: float = 0.0) -> Bar:
    return Bar(name, (120.0, y), (120.0, 180.0 + y), 8.0, ((0.0, height),), SPRUCE, -1, gaps)


def test_wood_between() -> None:
    ends = Bar("b", (0.0, 0.0), (100.0, 0.0), 6.0, ((0.0, 2.0), (20.0, 10.0), (80.0, 10.0), (100.0, 2.0)), SPRUCE)
    low, high = wood_between(ends, np.array([0.0, 10.0, 50.0, 95.0]))
    assert low.tolist() == [0.0] * 4
    assert high == pytest.approx([2.0, 6.0, 10.0, 4.0])


def test_notches_take_wood_from_foot_or_crest() -> None:
    notched = bar(gaps=(Gap(50.0, 8.0, 0.0, 6.0), Gap(100.0, 8.0, 7.0)))
    low, high = wood_between(notched, np.array([40.0, 50.0, 96.5, 110.0]))
    assert low.tolist() == [0.0, 6.0, 0.0, 0.0]
    assert high.tolist() == [12.0, 12.0, 7.0, 12.0]


def test_a_higher_bar_keeps_its_worked_down_ends() -> None:
    ends = Bar("b", (0.0, 0.0), (100.0, 0.0), 6.0, ((0.0, 2.0), (20.0, 10.0), (100.0, 10.0)), SPRUCE)
    assert ends.raised(1.0).crest == ((0.0, 2.0), (20.0, 11.0), (100.0, 11.0))
    assert bar().raised(-1.0).crest == ((0.0, 11.0),)


# S. P. Timoshenko and J. N. Goodier, "Theory of Elasticity", torsion of rectangles, from memory: J / (a b^3) by a/b.
RECTANGLES = [(1.0, 0.1406), (2.0, 0.229), (4.0, 0.281), (10.0, 0.312)]


@pytest.mark.parametrize(("longer", "share"), RECTANGLES)
def test_twist_of_an_isotropic_rectangle(longer: float, share: float) -> None:
    metal = isotropic(200e3, 0.25, 8000.0)
    square = Bar("b", (0.0, 0.0), (100.0, 0.0), 5.0, ((0.0, 5.0 * longer),), metal)
    found = twist_stiffness(square, np.array([5.0 * longer]))[0] / metal.shear_lr
    assert found == pytest.approx(share * 5.0 * longer * 5.0**3, rel=0.01)


def test_a_bar_in_the_air_is_told() -> None:
    with pytest.raises(MakersFault, match="bar does not stand on the plate"):
        whole_of(PLATE, 14.0, [bar(y=100.0)])


def test_a_plate_that_nothing_holds_is_told() -> None:
    loose = whole_of(Plate(OUTLINE, Ply(SPRUCE), 3.0, holds=(Hold(FREE),)), 20.0)
    with pytest.raises(MakersFault, match="the plate is not held"):
        loose.under(pressed(loose.mesh, 1e-3))


def test_negative_stiffness_is_no_wood() -> None:
    with pytest.raises(ValueError, match="above 0"):
        Timber(-1.0, 858.0, 473.0, 704.0, 671.0, 33.0, 0.372, 0.467, 420.0)
    with pytest.raises(ValueError, match="more than the moduli allow"):
        Timber(100.0, 858.0, 473.0, 704.0, 671.0, 33.0, 0.372, 0.467, 420.0)


@pytest.mark.parametrize("change", ["higher", "longer"])
def test_one_bar_changed_is_as_good_as_all_made_new(change: str) -> None:
    others = [Bar("other", (60.0, 10.0), (190.0, 90.0), 6.0, ((0.0, 8.0),), SPRUCE)]
    start = whole_of(PLATE, 14.0, [bar(), *others])
    fresh = (
        bar(height=10.0)
        if change == "higher"
        else Bar("bar", (120.0, 0.0), (120.0, 150.0), 8.0, ((0.0, 12.0),), SPRUCE)
    )
    changed = with_bar(start, fresh)
    anew = whole_of(PLATE, 14.0, [fresh, *others])
    assert changed.modes(4).frequencies == pytest.approx(anew.modes(4).frequencies, rel=6e-3)
    assert not np.allclose(changed.modes(4).frequencies, start.modes(4).frequencies, rtol=0.01)


def side_view(height: float, notch: tuple[float, float] | None, length: float = 160.0) -> FloatArray:
    """A bar seen from the side; `notch` is its width and depth, from below, in the middle."""
    if notch is None:
        return np.array([[0.0, 0.0], [length, 0.0], [length, height], [0.0, height]])
    width, depth = notch
    low, high = (length - width) / 2, (length + width) / 2
    inner = [[low, 0.0], [low, depth], [high, depth], [high, 0.0]]
    return np.array([[0.0, 0.0], *inner, [length, 0.0], [length, height], [0.0, height]])


def turned(outline: FloatArray, height: float) -> float:
    """How far the end of a bar, a sheet 1 mm thick stressed in its plane, turns under a couple; one end held."""
    wood = Timber(11000.0, 858.0, 858.0, 704.0, 704.0, 704.0, 0.372, 0.372, 420.0)
    mesh = mesh_of(Region(outline), 1.0)
    sheet = sheet_of(Plate(outline, Ply(wood), 1.0, holds=()), mesh)
    x, y = mesh.nodes.T
    held = np.zeros((len(x), EACH), dtype=bool)
    held[:, 2:] = True
    held[np.abs(x) < 1e-6, 0] = True
    held[np.argmin(np.abs(x) + np.abs(y - height / 2)), 1] = True
    free = np.flatnonzero(~held.ravel())
    pull = _couple(mesh, height)
    moved = np.zeros(held.size)
    moved[free] = spsolve(sheet.stiffness.tocsc()[free][:, free], pull[free])
    return float(pull @ moved) / (height**3 / 12.0)


def _couple(mesh: Mesh, height: float) -> FloatArray:
    """A pull on the far end that rises evenly with height, nothing at the middle."""
    places, weights = np.polynomial.legendre.leggauss(3)
    share = 0.5 * (1 + places)
    counts = np.stack([(1 - share) * (1 - 2 * share), share * (2 * share - 1), 4 * share * (1 - share)], axis=1)
    load = np.zeros(EACH * len(mesh.nodes))
    end = mesh.nodes[:, 0].max()
    for side in mesh.rim[(np.abs(mesh.nodes[mesh.rim, 0] - end) < 1e-6).all(axis=1)]:
        place = counts @ mesh.nodes[side, 1]
        length = np.linalg.norm(mesh.nodes[side[1]] - mesh.nodes[side[0]])
        np.add.at(load, EACH * side, 0.5 * length * (weights * (place - height / 2)) @ counts)
    return load


@pytest.mark.parametrize(("height", "width"), [(13.0, 7.0), (10.0, 7.0), (13.0, 14.0)])
def test_an_open_notch_weakens_a_bar_beyond_its_own_length(height: float, width: float) -> None:
    """Half the height notched: as long a half-high piece as turns the same, from plane elasticity solved here."""
    depth = height / 2
    full = 1.0 / (11000.0 * height**3 / 12.0)
    left = 1.0 / (11000.0 * (height - depth) ** 3 / 12.0)
    couple = height**3 / 12.0
    more = turned(side_view(height, (width, depth)), height) - turned(side_view(height, None), height)
    length = more / couple / (left - full)
    notched = Bar(
        "b", (0.0, 0.0), (160.0, 0.0), 7.0, ((0.0, height),), SPRUCE, -1, (Gap(80.0, width, 0.0, depth, glued=False),)
    )
    along = np.linspace(0.0, 160.0, 160001)
    counted = float((wood_between(notched, along)[0] > 0).mean() * 160.0)
    assert counted == pytest.approx(length, rel=0.03)
    assert length > width + 10.0


def test_a_glued_notch_is_as_long_as_it_is() -> None:
    along = np.linspace(0.0, 180.0, 18001)
    low, _ = wood_between(bar(gaps=(Gap(90.0, 8.0, 0.0, 6.0),)), along)
    assert math.isclose(float((low > 0).sum()) * 0.01, 8.0, rel_tol=0.01)
