"""The day's curve read back from its own points: where the day begins and ends, and where the band lies."""

import re
from datetime import datetime

import pytest

from gramil.air.air_of_places import PlaceAir
from gramil.bench.day_curve import HIGH, ROOM, WIDE, day_curve
from gramil.physics.arrays import floats
from gramil.wood.air import AirHistory

MORNING = datetime(2026, 11, 25, 9, 0)


def place(hours: list[float], humidity: list[float]) -> PlaceAir:
    """A place called <shed>, read so many hours after the morning."""
    history = AirHistory(
        MORNING, floats([3600.0 * each for each in hours]), floats([20.0] * len(hours)), floats(humidity)
    )
    return PlaceAir("<shed>", history, None, None, None, None)


def points(drawn: str) -> list[tuple[float, float]]:
    found = re.search(r'points="([^"]+)"', drawn)
    assert found is not None
    return [tuple(map(float, each.split(","))) for each in found[1].split()]  # type: ignore[misc]


def test_the_day_ends_at_its_moment_and_stands_against_the_band() -> None:
    """Twelve hours before the end is half way; from 40 - 3 to 60 + 3 %, 50 % stands half way up."""
    drawn = day_curve(place([-30.0, 0.0, 12.0], [90.0, 50.0, 60.0]), datetime(2026, 11, 25, 21, 0), (40.0, 50.0))
    (x0, y0), (x1, y1) = points(drawn)
    assert (x0, x1) == (WIDE / 2, WIDE)
    assert y0 == pytest.approx(HIGH / 2, abs=0.05)
    assert y1 == pytest.approx(HIGH * ROOM / 26.0, abs=0.05)
    band = re.search(r'class="band" x="0" y="([\d.]+)" width="240" height="([\d.]+)"', drawn)
    assert band is not None
    assert float(band[1]) == pytest.approx(y0, abs=0.05)
    assert float(band[2]) == pytest.approx(HIGH * 10 / 26, abs=0.05)


def test_one_reading_is_a_short_stroke_and_a_name_is_no_markup() -> None:
    drawn = day_curve(place([0.0], [45.0]), MORNING, (40.0, 50.0))
    assert [x for x, _ in points(drawn)] == [WIDE - ROOM, WIDE]
    assert "<shed>" not in drawn
    assert "&lt;shed&gt;, the day to 2026-11-25 09:00: 45 to 45 %" in drawn
