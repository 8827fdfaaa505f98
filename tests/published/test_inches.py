"""Lengths as a maker writes them against a machinists' chart of fractions of an inch."""

import pytest
from tests.published.read_values import rows

from gramil.measure import read_length, show


@pytest.mark.parametrize(("fraction", "millimetres"), rows("inch_fractions", "fractions"))
def test_every_64th_of_the_chart(fraction: str, millimetres: float) -> None:
    """Printed to four decimals of a millimetre, halves of the last rounded up or down."""
    assert read_length(f"{fraction} in", "mm") == pytest.approx(millimetres, abs=5.1e-5)
    assert read_length(fraction + '"', "in") == pytest.approx(millimetres, abs=5.1e-5)
    assert show(millimetres, "in", "64ths") == f"{fraction} in"
