"""Secant formulas: their limits."""

import numpy as np
import pytest
from tests.textbooks import beam_column


def test_small_loads_come_to_first_order() -> None:
    for exact, small in (
        (beam_column.deflection_pinned, beam_column.first_order_pinned),
        (beam_column.deflection_cantilever, beam_column.first_order_cantilever),
    ):
        assert float(exact(0.01, 12.0, 350.0, 4e8)) == pytest.approx(float(small(0.01, 12.0, 350.0, 4e8)), rel=1e-5)


def test_nothing_is_said_from_the_critical_load_on() -> None:
    pinned = beam_column.critical_load_pinned(350.0, 4e8)
    cantilever = beam_column.critical_load_cantilever(350.0, 4e8)
    assert np.isnan(beam_column.deflection_pinned(pinned * 1.001, 1.0, 350.0, 4e8))
    assert np.isnan(beam_column.deflection_cantilever(cantilever * 1.001, 1.0, 350.0, 4e8))
    assert float(beam_column.deflection_pinned(pinned * 0.999, 1.0, 350.0, 4e8)) > 100.0


def test_a_cantilever_is_half_of_a_pinned_beam_twice_as_long() -> None:
    one = beam_column.deflection_cantilever(500.0, 8.0, 200.0, 3e8)
    assert float(one) == pytest.approx(float(beam_column.deflection_pinned(500.0, 8.0, 400.0, 3e8)), rel=1e-14)
