"""Humid air against ASHRAE and against two other engines.

ASHRAE Handbook, Fundamentals, 2017, chapter 1, tables 2 and 3 and example 1, as transcribed in the tests of the
PsychroLib library. Points marked "other engine" were computed with a humid-air library, not printed in a table.
"""

import psychrolib
import pytest
from tests.published.read_values import rows
from tests.textbooks.humidity_ratio import humidity_ratio

from gramil.physics.humid_air import (
    dew_point,
    humidity_brought_to,
    saturation_pressure,
    vapour_density,
)


@pytest.mark.parametrize(("celsius", "pascal"), rows("ashrae", "saturation pressure"))
def test_saturation_pressure_table_3(celsius: float, pascal: float) -> None:
    assert float(saturation_pressure(celsius)) == pytest.approx(pascal, rel=3e-4)


@pytest.mark.parametrize(("celsius", "slack", "ratio"), rows("ashrae", "saturated ratio"))
def test_saturated_humidity_ratio_table_2(celsius: float, slack: float, ratio: float) -> None:
    assert float(humidity_ratio(celsius, 100.0)) == pytest.approx(1000.0 * ratio, rel=slack)


def test_example_1() -> None:
    """40 C with a wet bulb of 20 C: dew point 7 C, 14 % RH, 6.5 g/kg, all as rounded in the handbook."""
    ((celsius, percent, dew, grams),) = rows("ashrae", "example")
    assert float(dew_point(celsius, percent)) == pytest.approx(dew, abs=0.6)
    assert float(humidity_ratio(celsius, percent)) == pytest.approx(grams, abs=0.15)


@pytest.mark.parametrize(("celsius", "grams", "millibar"), rows("crc_handbook", "saturated vapour"))
def test_saturated_vapour_of_the_crc_handbook(celsius: float, grams: float, millibar: float) -> None:
    """Of 1981, over ice below freezing: its pressures are older, within 0.25 % over water and 1 % over ice."""
    near = 0.0025 if celsius >= 0 else 0.01
    assert float(saturation_pressure(celsius)) == pytest.approx(100.0 * millibar, rel=near)
    assert float(vapour_density(celsius, 100.0)) == pytest.approx(grams, rel=2 * near)


@pytest.mark.parametrize(
    ("celsius", "humidity", "dew", "grams_per_kg", "grams_per_m3"),
    [
        (20, 50, 9.272, 7.2617, 8.643),
        (20, 45, 7.719, 6.5279, 7.779),
        (20, 30, 1.914, 4.3368, 5.186),
        (21, 45, 8.626, 6.9481, 8.246),
        (22, 50, 11.110, 8.2242, 9.708),
        (25, 50, 13.864, 9.8810, 11.516),
    ],
)
def test_points_of_another_engine(
    celsius: float, humidity: float, dew: float, grams_per_kg: float, grams_per_m3: float
) -> None:
    """Other engine: PsychroLib 2.5.0, ASHRAE 2017 equations, 101325 Pa."""
    assert float(dew_point(celsius, humidity)) == pytest.approx(dew, abs=2e-3)
    assert float(humidity_ratio(celsius, humidity)) == pytest.approx(grams_per_kg, abs=2e-4)
    assert float(vapour_density(celsius, humidity)) == pytest.approx(grams_per_m3, abs=1e-3)


@pytest.mark.parametrize(
    ("shop", "humidity"), [(10, 95.23), (12, 83.37), (14, 73.15), (16, 64.31), (18, 56.65), (22, 44.22), (24, 39.17)]
)
def test_house_air_of_20_c_and_half_brought_elsewhere(shop: float, humidity: float) -> None:
    """Other engines: PsychroLib 2.5.0; the 16 C figure also by CoolProp 8.0's real humid air."""
    assert float(humidity_brought_to(20.0, 50.0, shop)) == pytest.approx(humidity, abs=0.01)


@pytest.mark.parametrize("celsius", [-30.0, -5.0, 0.0, 0.02, 8.0, 21.0, 38.0])
def test_beside_a_humid_air_library(celsius: float) -> None:
    psychrolib.SetUnitSystem(psychrolib.SI)
    assert float(saturation_pressure(celsius)) == pytest.approx(psychrolib.GetSatVapPres(celsius), rel=1e-9)
    for humidity in (8.0, 45.0, 90.0):
        dew = psychrolib.GetTDewPointFromRelHum(celsius, humidity / 100.0)
        assert float(dew_point(celsius, humidity)) == pytest.approx(dew, abs=5e-3)
