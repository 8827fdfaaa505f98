"""The air to come: windows of a band, and how an outlook is written."""

from datetime import datetime, timedelta

import pytest

from gramil.air.air_bands import Limits
from gramil.air.outlooks import Spell
from gramil.faults import MakersFault
from gramil.now.outlook import Outlook, forecast, read_outlook, typed_outlook

NOW = datetime(2026, 1, 19, 9)  # a Monday
BAND = Limits("for gluing", (40.0, 50.0), (12.0, 30.0))


def outlook(*spells: tuple[float, float]) -> Outlook:
    return Outlook(tuple(Spell(NOW + timedelta(hours=hours), 20.0, humidity) for hours, humidity in spells))


def test_windows_that_touch_are_one() -> None:
    air = outlook((0, 30), (10, 40), (20, 50), (30, 51), (40, 45))
    assert air.windows(BAND) == (
        (NOW + timedelta(hours=10), NOW + timedelta(hours=30)),
        (NOW + timedelta(hours=40), None),
    )
    assert air.first(BAND, NOW, 20) == NOW + timedelta(hours=10)
    assert air.first(BAND, NOW, 20.1) == NOW + timedelta(hours=40)
    assert air.first(BAND, NOW + timedelta(hours=15), 15) == NOW + timedelta(hours=15)
    assert air.leaves(BAND, NOW + timedelta(hours=15)) == NOW + timedelta(hours=30)
    assert air.leaves(BAND, NOW) is None


def test_cold_air_is_outside_too() -> None:
    assert not BAND.holds(11.9, 45)
    assert BAND.holds(12.0, 40.0)


def test_outlooks_typed() -> None:
    spells = typed_outlook(["thu 42 %", "+1 18 C 44", "2026-01-21T13:00 50%"], NOW)
    assert spells == (
        Spell(datetime(2026, 1, 20), 18.0, 44.0),
        Spell(datetime(2026, 1, 21, 13), 20.0, 50.0),
        Spell(datetime(2026, 1, 22), 20.0, 42.0),
    )
    assert typed_outlook(["mon 42"], NOW)[0].begins == datetime(2026, 1, 26)


@pytest.mark.parametrize("text", ["dry", "thu", "thu x", "thu 120", "thu 1 2 3"])
def test_outlooks_that_cannot_be_read_are_refused(text: str) -> None:
    with pytest.raises(MakersFault):
        typed_outlook([text], NOW)


def test_a_forecast_counts_by_its_age() -> None:
    """For a week from its first line: later lines are left out, and after that nothing of it counts."""
    begins = datetime(2026, 1, 19, 8)
    spells = [Spell(begins + timedelta(days=day), 20.0, 40.0 + day) for day in range(12)]
    found = forecast(spells, begins + timedelta(days=3), "air.csv")
    assert [spell.humidity for spell in found] == [40.0 + day for day in range(8)]
    with pytest.raises(MakersFault, match="a forecast 9 days old"):
        forecast(spells, begins + timedelta(days=9), "air.csv")


def test_outlooks_from_a_table() -> None:
    spells = read_outlook("time,temperature,humidity\n2026-01-20T08:00,20,42\n\n2026-01-19 20:00,18,30\n", "air.csv")
    assert [spell.humidity for spell in spells] == [30.0, 42.0]
    with pytest.raises(MakersFault) as caught:
        read_outlook("2026-01-20,20\n2026-13-01,20,42\n2026-01-20,20,142\n", "air.csv")
    assert [fault.line for fault in caught.value.faults] == [1, 2, 3]
    with pytest.raises(MakersFault, match="no outlook"):
        read_outlook("time,temperature,humidity\n", "air.csv")
