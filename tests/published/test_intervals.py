"""Ratios of just intervals, as tables of scales write them, against two published lists of their cents."""

import pytest
from tests.published.read_values import rows

from gramil.description.board.scala_scale import parse_scl


@pytest.mark.parametrize(("ratio", "cents"), [*rows("just_intervals", "intervals"), *rows("hahn_1998", "intervals")])
def test_a_ratio_is_as_many_cents_as_printed(ratio: str, cents: float) -> None:
    """Printed to a hundredth; one list cuts what the other rounds."""
    scale = parse_scl(f"! one.scl\n!\none interval\n 2\n!\n {ratio}\n 2/1\n")
    assert scale.at(1) == pytest.approx(cents, abs=0.0101)
    assert scale.at(3) == pytest.approx(1200.0 + cents, abs=0.0101)
