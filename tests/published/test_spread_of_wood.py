"""How far woods of one kind differ: ASTM D2555, clear wood (coefficients of variation, read in a transcription)."""

import pytest
from tests.published.read_values import rows

from gramil.description.shop.limits import LIMITS
from gramil.physics.plates.blank import HANDBOOK_SPREAD


def test_the_range_of_stiffness_is_the_standard_s() -> None:
    ((_, percent),) = rows("astm_d2555", "variation")
    assert LIMITS["modulus_least"].value == pytest.approx(1 - percent / 100)
    assert LIMITS["modulus_most"].value == pytest.approx(1 + percent / 100)
    assert pytest.approx(percent / 100) == HANDBOOK_SPREAD
