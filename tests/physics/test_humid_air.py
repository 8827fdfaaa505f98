"""Humid air against itself: laws that must hold whatever the formula's constants."""

import numpy as np
import pytest

from gramil.physics.humid_air import (
    Room,
    dew_point,
    humidity_at,
    humidity_brought_to,
    saturation_pressure,
    vapour_density,
    vapour_pressure,
    water_to_hold,
)


def test_dew_point_is_where_the_air_is_just_saturated() -> None:
    temperatures = np.repeat([-15.0, -2.0, 5.0, 20.0, 35.0], 4)
    humidities = np.tile([3.0, 30.0, 70.0, 99.0], 5)
    held = vapour_pressure(temperatures, humidities)
    assert saturation_pressure(dew_point(temperatures, humidities)) == pytest.approx(held, rel=1e-9)


def test_saturated_air_has_its_dew_point_at_its_own_temperature() -> None:
    for celsius in (-20.0, -0.5, 0.5, 12.0, 40.0):
        assert float(dew_point(celsius, 100.0)) == pytest.approx(celsius, abs=1e-9)


def test_ice_and_water_meet_at_the_triple_point() -> None:
    below, above = saturation_pressure(0.0099), saturation_pressure(0.0101)
    assert float(above / below) == pytest.approx(1.0, abs=1e-4)


def test_air_brought_away_and_back_is_the_same_air() -> None:
    colder = humidity_brought_to(21.0, 42.0, 14.0)
    assert float(humidity_brought_to(14.0, colder, 21.0)) == pytest.approx(42.0, rel=1e-12)
    assert float(humidity_at(14.0, vapour_pressure(21.0, 42.0))) == pytest.approx(float(colder), rel=1e-12)


def test_house_air_in_a_cold_shop_may_condense() -> None:
    assert float(humidity_brought_to(22.0, 60.0, 8.0)) > 100.0


def test_water_for_a_tight_room_is_what_its_air_lacks() -> None:
    """50 m3 from 30 to 45 % at 20 C, no air change: 50 x (7.779 - 5.186) g, whatever the hours."""
    need = water_to_hold(20.0, 30.0, 45.0, Room(50.0, (0.0, 0.0)), hours=24.0)
    assert need.least == need.most == pytest.approx(50.0 * (7.779 - 5.186), abs=0.1)


def test_water_goes_with_air_changes_and_has_a_sign() -> None:
    wetting = water_to_hold(20.0, 30.0, 45.0, Room(50.0, (0.3, 1.0)), hours=10.0)
    lacks = 50.0 * float(vapour_density(20.0, 45.0) - vapour_density(20.0, 30.0))
    assert wetting.least == pytest.approx(4.0 * lacks)
    assert wetting.most == pytest.approx(11.0 * lacks)
    drying = water_to_hold(20.0, 45.0, 30.0, Room(50.0, (0.3, 1.0)), hours=10.0)
    assert (drying.least, drying.most) == pytest.approx((-wetting.most, -wetting.least))


def test_incoming_air_is_what_leaks() -> None:
    """Air from outside that is already at the wanted density costs nothing to hold."""
    wanted = float(vapour_density(20.0, 45.0))
    need = water_to_hold(20.0, 45.0, 45.0, Room(50.0, (0.5, 2.0)), hours=10.0, incoming=wanted)
    assert (need.least, need.most) == pytest.approx((0.0, 0.0), abs=1e-9)


@pytest.mark.parametrize(
    ("room", "hours"),
    [(Room(0.0, (0.3, 1.0)), 10.0), (Room(50.0, (0.3, 1.0)), -1.0), (Room(50.0, (-0.1, 1.0)), 10.0)],
)
def test_impossible_rooms_are_refused(room: Room, hours: float) -> None:
    with pytest.raises(ValueError, match="negative"):
        water_to_hold(20.0, 30.0, 45.0, room, hours)
