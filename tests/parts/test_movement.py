"""The board's movement through its owner's year, worked by hand from the handbook's tables."""

from collections.abc import Callable

import numpy as np
import pytest

from gramil.graph import Figures

# Forest Products Laboratory, Wood Handbook, FPL-GTR-282, 2021, table 4-2, 21.1 C (read in a transcription):
# moisture at 25, 45 and 65 % relative humidity, rounded there to 0.1.
DRY, MADE, DAMP = 5.4, 8.5, 12.0
# The same, FPL-GTR-190, 2010, table 13-5: persimmon, radial and tangential (from memory).
RADIAL, TANGENTIAL = 0.00278, 0.00403
# Core of the bound board at its last fret: width in proportion to distance, less twice the binding, which is 1.8 mm
# square to an edge that leans by so little that it does not show here.
LAST = 630.0 * (1.0 - 2.0 ** (-19.0 / 12.0))
CORE = 45.5 + (56.0 - 45.5) * LAST / 315.0 - 2.0 * 1.8


def test_moistures_are_those_of_the_table(example: Callable[[str], Figures]) -> None:
    tarn = example("tarn")
    found = [tarn[f"swell_moisture_{air}"] for air in ("dry", "made", "wet")]
    assert found == pytest.approx([DRY, MADE, DAMP], abs=0.07)


def test_fret_ends_stand_out_by_half_of_what_the_board_shrinks(example: Callable[[str], Figures]) -> None:
    tarn = example("tarn")
    assert tarn["sprout_most"] == pytest.approx(CORE * TANGENTIAL * (MADE - DRY) / 2, rel=0.03)
    assert tarn["sprout_least"] == pytest.approx(CORE * RADIAL * (MADE - DRY) / 2, rel=0.03)
    assert tarn["swell_width_wet_most"][19] == pytest.approx(CORE * TANGENTIAL * (DAMP - MADE), rel=0.03)


def test_a_board_fretted_at_the_moisture_given_keeps_within_the_limit(example: Callable[[str], Figures]) -> None:
    tarn = example("tarn")
    shrinks = CORE * TANGENTIAL * (tarn["sprout_moisture"] - tarn["swell_moisture_dry"])
    assert shrinks / 2 == pytest.approx(0.2, rel=1e-3)


def test_an_unbound_board_has_no_step(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures], example: Callable[[str], Figures]
) -> None:
    unbound = derive_text(text_of("tarn").replace("thickness = 1.8", "thickness = 0"))
    assert unbound["swell_step_dry"] == 0.0
    edge = 6.3 - (320.0 - (320.0**2 - 22.75**2) ** 0.5)  # thickest at the nut: the crest less the arch's fall there
    assert example("tarn")["swell_step_dry"] == pytest.approx(-edge * TANGENTIAL * (MADE - DRY), rel=0.03)


def test_a_wood_that_is_not_known_moves_by_nobody_knows_what(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    figures = derive_text(text_of("tarn").replace('wood = "persimmon"', 'wood = "moonwood"'))
    assert np.isnan(figures["sprout_most"])
    for name in ("finding_sprout", "finding_binding_step"):
        (found,) = figures[name]
        assert found.severity == "not judged"
        assert "moonwood" in found.says
    assert "moonwood is not a known wood" in str(figures.origins["board_movement_radial"])


def test_the_makers_own_wood_is_used(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> None:
    own = '\n[[wood]]\nname = "moonwood"\nlike = "persimmon"\nmovement_tangential = 0.00806\n'
    board = text_of("tarn").replace('wood = "persimmon"', 'wood = "moonwood"')
    twice = derive_text(board, text_of("shop") + own)
    plain = derive_text(text_of("tarn"), text_of("shop"))
    assert twice["sprout_most"] == pytest.approx(2 * plain["sprout_most"])
    assert twice["sprout_least"] == pytest.approx(plain["sprout_least"])
