"""The diffusion of this program against Crank's plane sheet.

J. Crank, The Mathematics of Diffusion, 2nd edition, Oxford University Press, 1975, pages 47 and 48. The series is
the reference; the figures below marked "series" were computed from it elsewhere, the three long ones are printed in the
documentation of an open polymer-engineering library that cites the same pages.
"""

from itertools import pairwise

import numpy as np
import pytest
from tests.published.read_values import rows
from tests.textbooks.crank_sheet import centre, uptake

from gramil.physics.diffusion import SEALED, Layer, Sheet, course, modes_of

# D t / L2, uptake, centre: series
SERIES = [
    (0.001, 0.071365, 0.000000),
    (0.0025, 0.112838, 0.000000),
    (0.005, 0.159577, 0.000001),
    (0.01, 0.225676, 0.000814),
    (0.02, 0.319154, 0.024839),
    (0.04, 0.451237, 0.154200),
    (0.05, 0.504088, 0.227688),
    (0.075, 0.613236, 0.393196),
    (0.10, 0.697882, 0.525513),
    (0.20, 0.887403, 0.823133),
    (0.25, 0.931260, 0.892023),
    (0.50, 0.994170, 0.990843),
]
NUMBERS = np.array([row[0] for row in SERIES])


def _suddenly(points: int, last: float | None = None) -> tuple[np.ndarray, np.ndarray]:
    thickness = 2.0 if last is None else 1.0
    sheet = Sheet((Layer(thickness, 4.0),)) if last is None else Sheet((Layer(thickness, 4.0),), last_face=last)
    run = course([modes_of(sheet, points)], [0.0], np.r_[0.0, NUMBERS], np.ones(NUMBERS.size + 1))
    return run.mean[1:, 0], run.centre[1:, 0] if last is None else run.faces[1:, 0, 1]


@pytest.mark.parametrize("last", [None, SEALED])
def test_uptake_to_a_tenth_of_a_percent(last: float | None) -> None:
    """A sheet 2 thick with D = 4 has D t / L2 = t; and so has one of 1 with a sealed face."""
    mean, inner = _suddenly(17, last)
    assert mean == pytest.approx([row[1] for row in SERIES], rel=1e-3)
    assert inner == pytest.approx([row[2] for row in SERIES], abs=1e-3)


def test_more_points_come_nearer() -> None:
    """Mesh study over the table's times: each four points more must gain, and 25 points reach a hundred-thousandth."""
    errors = [float(np.max(np.abs(_suddenly(points)[0] / uptake(NUMBERS) - 1.0))) for points in (9, 13, 17, 21, 25)]
    assert all(finer < 0.4 * coarser for coarser, finer in pairwise(errors))
    assert errors[-1] < 1e-5


def test_printed_values() -> None:
    """Half thickness 0.2 mm, D 1e-10 m2/s, 100 s; and D t / a2 = 0.125."""
    series = {"uptake": uptake, "middle": centre}
    printed = {(what, number): share for what, number, share in rows("crank", "printed")}
    for (what, number), share in printed.items():
        assert float(series[what](number)) == pytest.approx(share, rel=1e-12)
    run = course([modes_of(Sheet((Layer(0.4, 1e-4),)))], [0.0], [0.0, 50.0, 100.0], np.ones(3))
    assert run.mean[1:, 0] == pytest.approx([printed["uptake", 0.03125], printed["uptake", 0.0625]], rel=1e-5)
    assert run.centre[-1, 0] == pytest.approx(printed["middle", 0.0625], rel=1e-4)


@pytest.mark.parametrize(
    ("share", "number"),
    [(0.10, 0.0019635), (0.25, 0.0122718), (0.50, 0.0491827), (0.75, 0.1191827), (0.90, 0.2120214), (0.99, 0.4453220)],
)
def test_times_to_a_given_uptake(share: float, number: float) -> None:
    """Series; Crank prints 0.049 for the half time (from memory)."""
    assert float(uptake(number)) == pytest.approx(share, abs=2e-6)


def test_a_plate_and_a_billet_in_hours() -> None:
    """Series, D 1e-10 m2/s: 2.8 mm half way after 3856 s, 20 mm after 54.6 h and 90 % after 236 h."""
    sheets = [modes_of(Sheet((Layer(thickness, 1e-4),))) for thickness in (2.8, 20.0)]
    run = course(sheets, [0.0, 0.0], [0.0, 3856.0, 54.6 * 3600, 236 * 3600], np.ones(4))
    assert run.mean[1, 0] == pytest.approx(0.5, abs=1e-3)
    assert run.mean[2:, 1] == pytest.approx([0.5, 0.9], abs=1e-3)
