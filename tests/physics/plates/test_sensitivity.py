"""What a shaving changes, against solving again with the shaving made."""

from collections.abc import Callable
from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from scipy.sparse import csr_matrix, vstack

from gramil.physics.arrays import FloatArray
from gramil.physics.plates.bar import Bar, Gap
from gramil.physics.plates.block import Block
from gramil.physics.plates.loads import spread
from gramil.physics.plates.plate import Plate, spherical
from gramil.physics.plates.plies import Ply
from gramil.physics.plates.rows import Z, reading
from gramil.physics.plates.sensitivity import (
    BarChange,
    Movements,
    bar_changes,
    movements_of,
    near_pairs,
    thickness_change,
)
from gramil.physics.plates.timber import Timber
from gramil.physics.plates.whole import Whole, whole_of, with_bar

SPRUCE = Timber(11000.0, 858.0, 473.0, 704.0, 671.0, 33.0, 0.372, 0.467, 420.0)
OUTLINE = np.array([[0.0, 0.0], [300.0, 0.0], [300.0, 220.0], [0.0, 220.0]])
AREA = np.array([[140.0, 70.0], [170.0, 70.0], [170.0, 150.0], [140.0, 150.0]])
WORKED = ((0.0, 3.0), (35.0, 11.0), (165.0, 11.0), (200.0, 3.0))


def plate(thickness: float = 2.8) -> Plate:
    return Plate(OUTLINE, Ply(SPRUCE), thickness, rise=spherical(5000.0, (150.0, 110.0)))


@cache
def start() -> Whole:
    bars = [
        Bar("leg", (60.0, 30.0), (200.0, 172.8), 7.0, WORKED, SPRUCE, -1, (Gap(110.0, 7.0, 5.5),)),
        Bar("cross", (90.0, 10.0), (95.0, 200.0), 6.0, ((0.0, 8.0),), SPRUCE),
    ]
    block = Block("block", AREA, Ply(SPRUCE, np.pi / 2), 6.0)
    return whole_of(plate(), 13.0, bars, [block])


def asked(whole: Whole) -> csr_matrix:
    """How far the block's two edges are apart in height, and how deep a place lies."""
    places = np.array([[142.0, 110.0], [168.0, 110.0], [110.0, 100.0]])
    read = reading(whole.mesh, places, {Z: 1.0})
    return csr_matrix(vstack([read[1] - read[0], read[2]]))


def load(whole: Whole) -> FloatArray:
    return spread(whole.mesh, AREA, (-300.0, 0.0, 0.0), (0.0, -4000.0))


def answer(whole: Whole) -> tuple[FloatArray, FloatArray]:
    return asked(whole) @ whole.under(load(whole))[: whole.sheet.size], whole.modes(6).frequencies


@cache
def between() -> Movements:
    whole = start()
    return movements_of(whole, whole.under(load(whole)), asked(whole), whole.modes(6))


@cache
def told() -> tuple[BarChange, ...]:
    return bar_changes(start(), between())


def solved_again(change: Callable[[Bar, float], Bar], row: int, step: float) -> tuple[FloatArray, FloatArray]:
    whole = start()
    up, down = (answer(with_bar(whole, change(whole.bars[row].bar, way * step))) for way in (1, -1))
    return (up[0] - down[0]) / (2 * step), (up[1] - down[1]) / (2 * step)


@pytest.mark.parametrize("row", [0, 1])
def test_height_is_exact(row: int) -> None:
    quantities, frequencies = solved_again(Bar.raised, row, 0.02)
    assert told()[row].higher.quantities == pytest.approx(quantities, rel=1e-4)
    assert told()[row].higher.frequencies == pytest.approx(frequencies, rel=1e-3, abs=1e-3)


@pytest.mark.parametrize("row", [0, 1])
def test_width(row: int) -> None:
    quantities, frequencies = solved_again(Bar.widened, row, 0.3)
    assert told()[row].wider.quantities == pytest.approx(quantities, rel=0.02, abs=0.02 * np.abs(quantities).max())
    assert told()[row].wider.frequencies == pytest.approx(frequencies, abs=0.02 * np.abs(frequencies).max())


@pytest.mark.parametrize("row", [0, 1])
def test_place(row: int) -> None:
    quantities, frequencies = solved_again(Bar.moved, row, 2.0)
    assert told()[row].aside.quantities == pytest.approx(quantities, abs=0.12 * np.abs(quantities).max())
    assert told()[row].aside.frequencies == pytest.approx(frequencies, abs=0.12 * np.abs(frequencies).max())


def test_thickness_is_exact() -> None:
    whole, step = start(), 0.01
    bars, blocks = [each.bar for each in whole.bars], [each.block for each in whole.blocks]
    up, down = (answer(whole_of(plate(2.8 + way * step), 13.0, bars, blocks)) for way in (1, -1))
    found = thickness_change(whole, between())
    assert found.quantities == pytest.approx((up[0] - down[0]) / (2 * step), rel=1e-3)
    assert found.frequencies == pytest.approx((up[1] - down[1]) / (2 * step), rel=1e-3)


def test_raising_every_span_raises_the_bar() -> None:
    """A level bar rises all along, so the spans' shares add up to the whole."""
    level = told()[1]
    assert level.raised.quantities.sum(axis=0) == pytest.approx(level.higher.quantities, rel=1e-9)
    assert level.raised.frequencies.sum(axis=0) == pytest.approx(level.higher.frequencies, rel=1e-9)


def test_a_shaving_gives_what_it_promised() -> None:
    """0.4 mm off the leg: within 5 % of what the first order says."""
    whole = start()
    before, after = answer(whole), answer(with_bar(whole, whole.bars[0].bar.raised(-0.4)))
    assert after[0] - before[0] == pytest.approx(-0.4 * told()[0].higher.quantities, rel=0.05)
    change = after[1] - before[1]
    assert change == pytest.approx(-0.4 * told()[0].higher.frequencies, rel=0.05, abs=0.02 * np.abs(change).max())


def test_modes_that_nearly_coincide_are_told() -> None:
    assert near_pairs(np.array([100.0, 102.0, 140.0, 143.0, 150.0])) == ((0, 1), (2, 3))
    assert near_pairs(np.array([100.0, 110.0])) == ()
    assert near_pairs(np.array([100.0, 104.0]), within=0.05) == ((0, 1),)


def test_a_square_metal_plate_has_a_pair() -> None:
    square = np.array([[0.0, 0.0], [200.0, 0.0], [200.0, 200.0], [0.0, 200.0]])
    metal = replace(SPRUCE, longitudinal=11000.0, radial=11000.0, tangential=11000.0, shear_rt=671.0)
    whole = whole_of(Plate(square, Ply(metal), 2.0), 16.0)
    assert (1, 2) in near_pairs(whole.modes(4).frequencies)


@pytest.mark.parametrize("height", [10.5, 4.0])
def test_a_bar_changed_is_solved_by_the_old_factor_as_by_its_own(height: float) -> None:
    """A little and a lot (where the old factor does not help): the same movements and frequencies either way."""
    old = start()
    known = (old.under(load(old)), old.modes(6))[1]
    bar = next(each.bar for each in old.bars if each.bar.name == "leg")
    new = with_bar(old, replace(bar, crest=tuple((along, min(each, height)) for along, each in bar.crest)))
    near = replace(new, near=old.kept_near(known))
    moved, alone = near.under(load(near)), new.under(load(new))
    assert moved == pytest.approx(alone, abs=1e-7 * np.abs(alone).max())
    assert near.modes(6).frequencies == pytest.approx(new.modes(6).frequencies, rel=1e-5)
