"""Stiff strings and wire strength against published formulas, a standard's table, and figures worked out elsewhere."""

import math

import numpy as np
import pytest
from tests.published.read_values import rows
from tests.textbooks.flat_plane import flat_plane

from gramil.physics import stiff_string as string
from gramil.physics.materials import materials
from gramil.physics.stopped_string import StringStiffness, open_stiffness, stretch_stiffness
from gramil.physics.wire_strength import stress

MODULUS, DENSITY, LENGTH = 205000.0, 7850.0, 647.7
# Solid steel, E = 205 GPa, 7850 kg/m3, 647.7 mm: worked out elsewhere (not printed in a source) from the formulas of
# Fletcher and Rossing, "The Physics of Musical Instruments", 2nd ed., section 2.18; H. Fletcher, J. Acoust. Soc. Am.
# 36, 203 (1964). Diameter mm, pitch Hz, mu g/m, T N, B, epsilon, stress MPa, EA/T.
STEEL = [
    (0.3048, 329.6276, 0.57278, 104.435, 1.9565e-5, 0.0014080, 1431.0, 143.2),
    (0.4064, 246.9417, 1.01828, 104.199, 6.1976e-5, 0.0025059, 803.0, 255.2),
    (0.4572, 195.9977, 1.28876, 83.077, 1.2451e-4, 0.0035519, 506.0, 405.1),
]


def stiffness_of_open(gained: float, diameter: float) -> float:
    """epsilon of the open string, as the model of stopped strings takes it from kappa and the radius that bends."""
    string = StringStiffness(np.array([gained]), np.array([diameter / 2.0]))
    return float(open_stiffness(flat_plane(LENGTH, 0.0, 0.0, [2.0]), string)[0])


@pytest.mark.parametrize(("diameter", "pull"), [(0.3048, 104.435), (0.4572, 83.077)])
def test_inharmonicity_as_printed(diameter: float, pull: float) -> None:
    """B = pi^3 E d^4 / (64 T L^2), Fletcher and Rossing section 2.18 (read in a transcription citing both sources)."""
    epsilon = stiffness_of_open(float(stretch_stiffness(MODULUS, diameter / 2.0, pull)), diameter)
    printed = math.pi**3 * MODULUS * diameter**4 / (64.0 * pull * LENGTH**2)
    assert math.pi**2 * epsilon**2 == pytest.approx(printed, rel=1e-13)


@pytest.mark.parametrize("row", STEEL)
def test_plain_steel_strings(row: tuple[float, ...]) -> None:
    diameter, pitch, weight, pull, partials, ratio, pulled, stretch = row
    density = float(string.plain_density(diameter, DENSITY))
    tension = float(string.tension(density, LENGTH, pitch))
    gained = stretch_stiffness(MODULUS, diameter / 2.0, tension)
    epsilon = stiffness_of_open(float(gained), diameter)
    assert density == pytest.approx(weight, abs=6e-6)
    assert tension == pytest.approx(pull, abs=6e-4)
    assert epsilon == pytest.approx(ratio, abs=6e-8)
    assert math.pi**2 * epsilon**2 == pytest.approx(partials, rel=5e-5)
    assert float(stress(tension, diameter)) == pytest.approx(pulled, abs=0.6)
    assert float(gained) == pytest.approx(stretch, abs=0.06)


# ASTM A228 tensile requirements, inch and ksi (least, most), read in a wire trader's transcription of the table.
A228 = rows("astm_a228", "tensile")


@pytest.mark.parametrize(("inches", "least", "most"), A228)
def test_strength_law_is_the_standards_lower_edge(inches: float, least: float, most: float) -> None:
    """A = 2211, m = 0.145 (Shigley, Table 10-4, from memory) stays within 2 % of the least strength, below the most."""
    law = materials()["music_wire"].strength
    assert law is not None
    megapascals = 6.894757
    assert float(law.strength(inches * 25.4)) == pytest.approx(least * megapascals, rel=0.02)
    assert float(law.strength(inches * 25.4)) < most * megapascals


def test_the_law_of_music_wire_is_the_textbook_s() -> None:
    """A and m of table 10-4 and the book's own turning of A into SI, and the strength that a solution works out."""
    law = materials()["music_wire"].strength
    assert law is not None
    ((_, inch_law, exponent, metric),) = rows("shigley", "constants")
    assert law.exponent == exponent
    assert law.coefficient == pytest.approx(metric, rel=2e-3)
    assert law.coefficient == pytest.approx(6.894757 * 25.4**exponent * inch_law, rel=2e-3)
    ((inches, kpsi),) = rows("shigley", "music wire")
    assert float(law.strength(inches * 25.4)) == pytest.approx(kpsi * 6.894757, rel=2e-3)
