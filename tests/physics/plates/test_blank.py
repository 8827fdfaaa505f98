"""A tapped board: notes that fit, notes that fit no board, and how far off what comes out may be."""

import math

import numpy as np
import pytest

from gramil.physics.plates.blank import Blank, Sure, Way, identified
from gramil.physics.plates.edge import FREE, Hold
from gramil.physics.plates.plate import Plate
from gramil.physics.plates.plies import Ply
from gramil.physics.plates.timber import Timber
from gramil.physics.plates.whole import whole_of

REAL = Timber(12500.0, 790.0, 520.0, 820.0, 760.0, 42.0, 0.372, 0.467, 431.0)
HANDBOOK = Timber(11000.0, 858.0, 473.0, 704.0, 671.0, 37.0, 0.372, 0.467, 420.0)
BOARD = Blank(520.0, 210.0, 3.4, 520.0 * 210.0 * 3.4 * 431e-9)


def notes() -> dict[Way, float]:
    """What the board itself would give, on a finer mesh than the fit's; bending by a free beam's note, twist lowest."""
    outline = np.array([[0.0, 0.0], [520.0, 0.0], [520.0, 210.0], [0.0, 210.0]])
    plate = Plate(outline, Ply(REAL), 3.4, holds=(Hold(FREE),))
    found = whole_of(plate, 13.0).free_modes(6).frequencies
    along, across = (
        found[np.abs(found - free_beam(modulus, length)).argmin()]
        for modulus, length in ((12500.0, 520.0), (790.0, 210.0))
    )
    return {"twist": float(found[0]), "along": float(along), "across": float(across)}


def free_beam(modulus: float, length: float) -> float:
    """22.3733 / (2 pi L^2) sqrt(E h^2 / 12 rho), Hz."""
    return 22.3733 / (2 * math.pi * length**2) * math.sqrt(modulus * 3.4**2 / (12.0 * 431e-12))


def test_a_board_of_wood_comes_back() -> None:
    found = identified(BOARD, notes(), HANDBOOK)
    assert found.faults == ()
    for one, other in ((found.along, 12500.0), (found.across, 790.0), (found.twist, 820.0)):
        assert one.value == pytest.approx(other, rel=0.01)
        assert one.measured


def test_two_notes_leave_the_third_to_the_handbook() -> None:
    given = notes()
    found = identified(BOARD, {"along": given["along"], "twist": given["twist"]}, HANDBOOK)
    assert found.along.value == pytest.approx(12500.0, rel=0.01)
    assert not found.across.measured
    assert found.across.within == 0.22
    assert 0.95 * 858.0 < found.across.value < 1.2 * 858.0


def test_uncertainty_follows_what_was_measured() -> None:
    """With every size sure, a modulus is twice as unsure as its note; thickness counts three times."""
    sure = identified(BOARD, notes(), HANDBOOK, Sure(notes=0.01, mass=0.0, plan=0.0, thickness=0.0))
    assert sure.along.within == pytest.approx(0.02, rel=0.1)
    thick = identified(BOARD, notes(), HANDBOOK, Sure(notes=0.0, mass=0.0, plan=0.0, thickness=0.02))
    assert [each.within for each in (thick.along, thick.across, thick.twist)] == pytest.approx([0.06] * 3, rel=0.02)


def swapped() -> dict[Way, float]:
    given = notes()
    return {"along": given["across"], "across": given["along"], "twist": given["twist"]}


IMPOSSIBLE: list[tuple[Blank, dict[Way, float], str]] = [
    (BOARD, {"along": 60.0}, "one note tells one stiffness of three"),
    (BOARD, {"along": 60.0, "twist": -40.0}, "not a number above 0"),
    (BOARD, {"along": 60.0, "twist": float("nan")}, "not a number above 0"),
    (Blank(520.0, 210.0, 3.4, 1.6), {"along": 60.0, "twist": 40.0}, "weight and sizes do not go together"),
    (BOARD, {"along": 60.0, "twist": 8.0}, "the note for twist may be another's"),
    (BOARD, {"along": 30.0, "across": 130.0, "twist": 35.0}, "the two notes may be swapped"),
]


@pytest.mark.parametrize(("board", "given", "said"), IMPOSSIBLE)
def test_notes_that_fit_no_board_are_told(board: Blank, given: dict[Way, float], said: str) -> None:
    found = identified(board, given, HANDBOOK)
    assert any(said in fault.what for fault in found.faults)
    assert found.wood == HANDBOOK
    assert not any(each.measured for each in (found.along, found.across, found.twist))


def test_notes_near_each_other_are_told() -> None:
    """On a board cut so that two notes nearly coincide, either may be the other's."""
    outline = np.array([[0.0, 0.0], [300.0, 0.0], [300.0, 152.0], [0.0, 152.0]])
    plate = Plate(outline, Ply(REAL), 3.4, holds=(Hold(FREE),))
    found = whole_of(plate, 12.0).free_modes(4).frequencies
    board = Blank(300.0, 152.0, 3.4, 300.0 * 152.0 * 3.4 * 431e-9)
    given: dict[Way, float] = {"twist": float(found[0]), "along": float(found[1]), "across": float(found[1]) * 1.01}
    said = identified(board, given, HANDBOOK).faults
    assert any("nearly coincide" in fault.what or "no single mode" in fault.what for fault in said)
