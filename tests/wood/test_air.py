"""Readings typed in, and what is said of them in short."""

from datetime import datetime, timedelta

import pytest

from gramil.faults import MakersFault
from gramil.wood.air import Air, mean_air, summarise, typed_in

NOON = datetime(2025, 3, 1, 12, 0)


def _hours(*readings: tuple[float, float, float]) -> list[tuple[datetime, float, float]]:
    return [(NOON + timedelta(hours=hour), temperature, humidity) for hour, temperature, humidity in readings]


def test_readings_are_put_in_order_of_time() -> None:
    history = typed_in(_hours((5, 20, 45), (0, 18, 50)))
    assert history.origin == NOON
    assert list(history.times) == [0.0, 5 * 3600.0]
    assert list(history.humidity) == [50.0, 45.0]
    assert history.moment(history.seconds(NOON + timedelta(days=2))) == NOON + timedelta(days=2)


@pytest.mark.parametrize("odd", [(0, 20, 101), (0, 20, -1), (0, 68, 45), (5, 20, 40)])
def test_impossible_or_double_readings_are_refused(odd: tuple[float, float, float]) -> None:
    with pytest.raises(MakersFault):
        typed_in(_hours((5, 20, 45), odd))


def test_no_readings_are_refused() -> None:
    with pytest.raises(MakersFault, match="no readings"):
        typed_in([])


def test_moisture_of_held_air() -> None:
    """Equation 4-5 by hand at 20 C and 50 %: 9.271 %."""
    assert Air(20.0, 50.0).moisture == pytest.approx(9.271, abs=1e-3)


def test_summary_weighs_by_time() -> None:
    """40 % for three hours, 60 % at the end of the fourth: halves of the steps are 1.5 and 2 h, then 0.5 h. It is
    in the band until half-way to the reading that is out of it.
    """
    summary = summarise(typed_in(_hours((0, 20, 40), (1, 20, 40), (3, 20, 40), (4, 20, 60))), (40, 50))
    assert summary.humidity.mean == pytest.approx((3.5 * 40 + 0.5 * 60) / 4.0)
    assert summary.share_in_band == pytest.approx(3.5 / 4.0)
    assert summary.longest_in_band == pytest.approx(3.5)
    assert (summary.humidity.least, summary.humidity.most) == (40.0, 60.0)


def test_a_gap_does_not_speak_for_itself() -> None:
    """Two readings ten days apart at 30 % weigh as little as two hours apart."""
    summary = summarise(typed_in(_hours((0, 20, 50), (2, 20, 50), (242, 20, 30))), (45, 55))
    assert summary.humidity.mean == pytest.approx((1 * 50 + 2 * 50 + 1 * 30) / 4)


def test_one_reading_is_a_summary_too() -> None:
    summary = summarise(typed_in(_hours((0, 21, 45))), (40, 50))
    assert (summary.readings, summary.share_in_band, summary.humidity.mean) == (1, 1.0, 45.0)
    assert summary.longest_in_band == 0.0
    assert summary.dew_point.mean == pytest.approx(8.626, abs=2e-3)  # another engine: PsychroLib 2.5.0


def test_a_mean_weighs_by_time_and_leaves_gaps_out() -> None:
    """Half an hour, an hour and a half, one hour: a reading speaks for an hour at most on either side."""
    noon = datetime(2026, 1, 1, 12)
    history = typed_in(
        [(noon, 20.0, 40.0), (noon + timedelta(hours=1), 22.0, 50.0), (noon + timedelta(hours=11), 30.0, 90.0)]
    )
    mean = mean_air(history)
    assert mean.temperature == pytest.approx((0.5 * 20 + 1.5 * 22 + 30) / 3)
    assert mean.humidity == pytest.approx((0.5 * 40 + 1.5 * 50 + 90) / 3)
