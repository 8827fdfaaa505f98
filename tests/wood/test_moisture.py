"""Moisture of pieces: limits in closed form, what a move does, when a piece is ready, and what weighing teaches."""

import math
from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np
import pytest
from tests.textbooks.crank_sheet import uptake

from gramil.faults import MakersFault
from gramil.wood.air import Air, AirHistory, typed_in
from gramil.wood.moisture import (
    as_weighed,
    evenly,
    follow,
    forecast,
    moisture_band,
    moisture_now,
    ready,
    times_followed,
)
from gramil.wood.piece import PACES, Piece, end_grain_factor, sheet_of
from gramil.wood.species import find_species
from gramil.wood.stays import Kept, Stay, days_without_readings
from gramil.wood.weighing import Weighing, calibrated, dry_mass_from, moisture_by_weight

NOW = datetime(2025, 1, 10)
DAY = timedelta(days=1)
SPRUCE, ROSEWOOD, WALNUT = (find_species(name) for name in ("sitka", "Indian rosewood", "walnut"))
HOUSE, SHOP = Air(21.0, 35.0), Air(16.0, 55.0)


def _held(air: Air, begins: datetime = NOW - 30 * DAY, days: float = 60.0) -> AirHistory:
    moments = (begins, begins + timedelta(days=days))
    return typed_in([(moment, air.temperature, air.humidity) for moment in moments])


def _house_then_shop(moved: datetime) -> Kept:
    return Kept((Stay(_held(HOUSE), NOW - 20 * DAY, moved), Stay(_held(SHOP), moved, NOW + 20 * DAY)))


def test_a_piece_left_in_one_air_is_at_its_equilibrium() -> None:
    kept = Kept((Stay(_held(SHOP), NOW - 20 * DAY, NOW),))
    state = moisture_now([Piece(SPRUCE, 3.0)], [kept], NOW)[0]
    for figure in (state.mean, state.centre, *state.faces):
        assert figure.least == pytest.approx(SHOP.moisture, abs=1e-9)
        assert figure.most == pytest.approx(SHOP.moisture, abs=1e-9)


def test_a_thin_piece_changes_through_its_surface_and_a_thick_one_as_crank_says() -> None:
    """Thin: one lump, exp(-2 s t / h). Thick: a Crank sheet thicker by the surface's own depth, D/s on each side."""
    thin, thick = Piece(SPRUCE, 0.1), Piece(SPRUCE, 200.0)
    begun = evenly(thin, HOUSE.moisture, NOW)
    wait = 600.0
    sheet = sheet_of(thin, "likely")
    share = math.exp(-2 * sheet.first_face * wait / 0.1)
    wanted = SHOP.moisture + (HOUSE.moisture - SHOP.moisture) * share
    assert forecast(begun, SHOP, [0.0, wait]).mean[-1, 0] == pytest.approx(wanted, abs=0.05)
    late = 200 * 86400.0
    run = forecast(evenly(thick, HOUSE.moisture, NOW), SHOP, [0.0, late])
    layer = sheet_of(thick, "likely").layers[0]
    depth = layer.diffusion / sheet.first_face
    number = layer.diffusion * late / (200.0 + 2 * depth) ** 2
    done = (run.mean[-1, 0] - HOUSE.moisture) / (SHOP.moisture - HOUSE.moisture)
    assert done == pytest.approx(float(uptake(number)), rel=0.05)


def test_after_a_move_faces_lead_and_the_centre_lags() -> None:
    state = moisture_now([Piece(WALNUT, 20.0)], [_house_then_shop(NOW - 3 * DAY)], NOW)[0]
    assert HOUSE.moisture < state.centre.likely < state.mean.likely < state.faces[0].likely < SHOP.moisture
    assert state.mean.least < state.mean.likely < state.mean.most


def test_a_sealed_face_follows_the_other() -> None:
    piece = Piece(WALNUT, 10.0, ("open", "sealed"))
    state = moisture_now([piece], [_house_then_shop(NOW - 3 * DAY)], NOW)[0]
    double = moisture_now([Piece(WALNUT, 20.0)], [_house_then_shop(NOW - 3 * DAY)], NOW)[0]
    assert state.mean.likely == pytest.approx(double.mean.likely, abs=1e-3)
    assert state.faces[1].likely == pytest.approx(double.centre.likely, abs=1e-3)


def test_pieces_of_different_pasts_go_together() -> None:
    kept = [_house_then_shop(NOW - 3 * DAY), Kept((Stay(_held(SHOP), NOW - 2 * DAY, NOW),), 12.0)]
    pieces = [Piece(WALNUT, 20.0), Piece(SPRUCE, 3.0)]
    together = moisture_now(pieces, kept, NOW)
    for piece, past, state in zip(pieces, kept, together, strict=True):
        alone = moisture_now([piece], [past], NOW)[0]
        assert state.mean.likely == pytest.approx(alone.mean.likely, abs=1e-9)
    assert follow(pieces, kept, NOW).mean.shape[0] == times_followed(kept, NOW).size


def test_thicker_is_slower_and_open_ends_are_quicker() -> None:
    band = moisture_band(16.0, (50.0, 60.0))
    waits = [
        ready(evenly(piece, HOUSE.moisture, NOW), SHOP, band)
        for piece in (Piece(SPRUCE, 3.0), Piece(SPRUCE, 25.0, open_length=60.0), Piece(SPRUCE, 25.0))
    ]
    likely = [wait.likely for wait in waits]
    assert likely == sorted(likely, key=lambda wait: wait or math.inf)
    for wait in waits:
        assert wait.earliest is not None
        assert wait.latest is not None
        assert wait.earliest < (wait.likely or 0.0) < wait.latest


def test_a_plate_is_ready_in_hours_to_two_days_and_a_block_in_weeks() -> None:
    """Common practice: 3 mm of spruce takes hours to two days or so, 25 mm of dense wood weeks to months."""
    band = moisture_band(16.0, (50.0, 60.0))
    plate = ready(evenly(Piece(SPRUCE, 3.0), HOUSE.moisture, NOW), SHOP, band)
    block = ready(evenly(Piece(ROSEWOOD, 25.0), HOUSE.moisture, NOW), SHOP, band)
    assert plate.earliest is not None
    assert plate.latest is not None
    assert 2 * 3600 < plate.earliest < plate.latest < 3 * 86400
    assert block.earliest is not None
    assert block.latest is not None
    assert 14 * 86400 < block.earliest < block.latest < 150 * 86400


def test_air_that_leads_elsewhere_never_makes_it_ready() -> None:
    never = ready(evenly(Piece(SPRUCE, 3.0), 9.0, NOW), HOUSE, moisture_band(20.0, (45.0, 50.0)))
    assert (never.earliest, never.likely, never.latest) == (None, None, None)
    assert "outside" in never.why
    assert never.dates(NOW) == (None, None, None)


def test_a_piece_that_is_ready_is_ready_now() -> None:
    band = moisture_band(16.0, (50.0, 60.0))
    done = ready(evenly(Piece(SPRUCE, 3.0), SHOP.moisture, NOW), SHOP, band)
    assert done.dates(NOW) == (NOW, NOW, NOW)


def test_ready_is_when_the_last_of_it_enters_the_band() -> None:
    band = moisture_band(16.0, (50.0, 60.0))
    state = evenly(Piece(WALNUT, 12.0), HOUSE.moisture, NOW)
    wait = ready(state, SHOP, band).likely
    assert wait is not None
    run = forecast(state, SHOP, [0.0, 0.97 * wait, 1.03 * wait])
    assert run.centre[1, 0] < band[0] < run.centre[2, 0]


def test_a_slow_piece_may_not_be_ready_within_the_time_looked_at() -> None:
    band = moisture_band(16.0, (50.0, 60.0))
    late = ready(evenly(Piece(ROSEWOOD, 60.0), HOUSE.moisture, NOW), SHOP, band, horizon=100 * 86400.0)
    assert late.latest is None
    assert "100 days" in late.why


def test_days_without_readings_are_said() -> None:
    short = _held(SHOP, NOW - 10 * DAY, 4.0)
    kept = Kept((Stay(short, NOW - 10 * DAY, NOW),))
    assert days_without_readings(kept) == pytest.approx(6.0)
    state = moisture_now([Piece(SPRUCE, 3.0)], [kept], NOW)[0]
    assert any("6.0 days without readings" in words for words in state.assumptions)
    assert any("derived" in words for words in moisture_now([Piece(ROSEWOOD, 3.0)], [kept], NOW)[0].assumptions)


def test_stays_that_cannot_be_are_refused() -> None:
    air = _held(SHOP)
    with pytest.raises(MakersFault, match="nowhere"):
        Kept(())
    with pytest.raises(MakersFault, match="before it begins"):
        Kept((Stay(air, NOW, NOW - DAY),))
    with pytest.raises(MakersFault, match="next begins"):
        Kept((Stay(air, NOW - 3 * DAY, NOW - 2 * DAY), Stay(air, NOW - DAY, NOW)))


def test_a_block_by_the_product_of_two_sheets() -> None:
    """What is left to change in a block is what is left through its thickness times what is left along it (Crank)."""
    times = np.array([2e6, 3e6])
    through, along = 1e-4 * times / 20.0**2, 12e-4 * times / 60.0**2
    left = (1 - uptake(through)) * (1 - uptake(along))
    quicker = 1 - uptake(end_grain_factor(20.0, 60.0, 12.0) * through)
    assert left[1] / left[0] == pytest.approx(quicker[1] / quicker[0], rel=1e-3)


def test_end_grain_of_a_half_sealed_piece_is_that_of_its_double() -> None:
    half, whole = Piece(WALNUT, 10.0, ("open", "sealed"), 80.0), Piece(WALNUT, 20.0, open_length=80.0)
    diffusions = [sheet_of(piece, "likely").layers[0].diffusion for piece in (half, whole)]
    assert diffusions[0] == pytest.approx(diffusions[1], rel=1e-12)


def test_a_piece_that_differs_from_the_tables_has_settled_by_its_own_measure() -> None:
    kept = Kept((Stay(_held(SHOP), NOW - 20 * DAY, NOW),))
    state = moisture_now([Piece(SPRUCE, 3.0, offset=0.7)], [kept], NOW)[0]
    assert state.mean.likely == pytest.approx(SHOP.moisture + 0.7, abs=1e-9)


def test_a_weight_overrides_the_mean_and_keeps_the_shape() -> None:
    state = moisture_now([Piece(WALNUT, 20.0)], [_house_then_shop(NOW - 3 * DAY)], NOW)[0]
    weighed = as_weighed(state, 9.2)
    assert forecast(weighed, SHOP, [0.0]).mean[0, 0] == pytest.approx(9.2, abs=1e-9)
    assert forecast(weighed, SHOP, [0.0], "slow").mean[0, 0] == pytest.approx(9.2, abs=1e-9)
    assert weighed.faces[0].likely - weighed.centre.likely == pytest.approx(
        state.faces[0].likely - state.centre.likely, abs=1e-9
    )


def test_weights() -> None:
    assert moisture_by_weight(216.0, 200.0) == pytest.approx(8.0)
    assert dry_mass_from(216.0, 8.0) == pytest.approx(200.0)
    for mass in (150.0, 300.0, 0.216):
        with pytest.raises(MakersFault, match="Check both"):
            moisture_by_weight(mass, 200.0)


@pytest.mark.parametrize(("speed", "offset"), [(0.4, 0.0), (1.0, 0.8), (2.5, -0.6)])
def test_weighing_finds_how_fast_a_piece_is_and_where_it_goes(speed: float, offset: float) -> None:
    """A piece made up with a known speed and offset, weighed to 0.01 g while it takes up water, is found again."""
    true = Piece(WALNUT, 8.0, speed=speed, offset=offset)
    kept = Kept((Stay(_held(SHOP, NOW, 40.0), NOW, NOW + 40 * DAY),), 6.0)
    days = np.array([0.0, 1.0, 2.0, 4.0, 8.0, 16.0, 32.0])
    run = forecast(evenly(true, 6.0, NOW), SHOP, days * 86400.0)
    weighings = [
        Weighing(NOW + timedelta(days=float(day)), round(200.0 * (1 + moisture / 100.0), 2))
        for day, moisture in zip(days, run.mean[:, 0], strict=True)
    ]
    found = calibrated(Piece(WALNUT, 8.0), kept, weighings, 200.0, balance=0.01)
    assert found.speed == pytest.approx(speed, rel=0.1)
    assert found.offset == pytest.approx(offset, abs=0.1)
    assert found.spread is not None
    assert found.spread < 1.5


def test_a_weighed_piece_is_foretold_more_closely() -> None:
    taught = replace(Piece(WALNUT, 20.0), speed=0.8, spread=1.2)
    band = moisture_band(16.0, (50.0, 60.0))
    loose, tight = (ready(evenly(piece, 6.0, NOW), SHOP, band) for piece in (Piece(WALNUT, 20.0), taught))
    assert loose.earliest is not None
    assert loose.latest is not None
    assert tight.earliest is not None
    assert tight.latest is not None
    assert tight.latest / tight.earliest < loose.latest / loose.earliest
    assert any("weighed" in words for words in tight.assumptions)


def test_weighings_that_teach_nothing_are_refused() -> None:
    kept = Kept((Stay(_held(SHOP, NOW, 40.0), NOW, NOW + 40 * DAY),), 6.0)
    with pytest.raises(MakersFault, match="shows no speed"):
        calibrated(Piece(WALNUT, 8.0), kept, [Weighing(NOW, 212.0)], 200.0, 0.1)
    with pytest.raises(MakersFault, match="not known where"):
        calibrated(Piece(WALNUT, 8.0), kept, [Weighing(NOW - DAY, 212.0), Weighing(NOW, 212.0)], 200.0, 0.1)


def test_paces_run_from_slow_to_fast() -> None:
    for species in (SPRUCE, WALNUT, ROSEWOOD):
        sheets = [sheet_of(Piece(species, 3.0, open_length=50.0), pace) for pace in PACES]
        assert [sheet.layers[0].diffusion for sheet in sheets] == sorted(sheet.layers[0].diffusion for sheet in sheets)
        assert [sheet.first_face for sheet in sheets] == sorted(sheet.first_face for sheet in sheets)
    with pytest.raises(ValueError, match="above 0"):
        Piece(SPRUCE, 0.0)
