"""What a plan says that it assumes: of every place whose air it counts on, and of no other."""

from dataclasses import replace
from datetime import datetime, timedelta

import numpy as np
import pytest

from gramil.air.air_bands import Band
from gramil.air.air_of_places import PlaceAir, Places
from gramil.air.outlooks import KeptOutlook, Spell
from gramil.description.shop.tables import Shop
from gramil.now.assumed import rests_on
from gramil.now.conditions import conditions
from gramil.wood.air import AirHistory

NOW = datetime(2026, 3, 2, 9, 0)
BANDS = {name: Band(name, f"for {name}", (40.0, 50.0), (12.0, 30.0)) for name in ("gluing", "finishing")}


def place(name: str, *, days_ago: int = 0, humidifier: float = 0.0) -> PlaceAir:
    """Read every hour for twenty days; then, as the case may be, no more."""
    begins = NOW - timedelta(days=20 + days_ago)
    history = AirHistory(begins, np.arange(481) * 3600.0, np.full(481, 20.0), np.full(481, 45.0))
    return PlaceAir(name, history, 40.0, (1.0, 1.0), None, None, (humidifier, 0.0))


def assumed(finishing: str, *known: PlaceAir) -> str:
    places = Places({each.name: each for each in known}, (), "shop", 7.0, finishing)
    return rests_on(
        conditions(Shop.model_validate({"shop": {"name": "x", "units": "mm"}, "gramil": 1}), places, NOW, BANDS)
    )


def test_each_place_is_told_once_with_its_own_machines() -> None:
    """40 m3 at 20 C hold 692 g where saturated; 100 g an hour at one change an hour moves that by 14 %."""
    alone = assumed("", place("shop"))
    assert alone.startswith("Nobody gave an outlook of the shop: ")
    assert alone.count("outlook") == 1
    assert assumed("shop", place("shop")) == alone
    both = assumed("booth", place("shop"), place("booth", humidifier=100.0))
    assert both.startswith(alone)
    assert "open for finishing" in both
    assert "The booth's humidifier" in both
    assert "air of 26 to 50 % into the band for finishing" in both


def test_after_an_outlook_the_days_count_that_held_on_record() -> None:
    """All twenty days on record were in the band throughout; of the twentieth the thirteen hours are not over."""
    spell = Spell(NOW + timedelta(days=1), 20.0, 44.0, NOW)
    told = assumed("", replace(place("shop"), kept=(KeptOutlook(NOW, "", (spell,)),)))
    assert told.startswith("The outlook of Monday 2 March counts until Thursday 5 March")
    assert "After that, on 20 of 20 days on record the air held long enough for gluing" in told


@pytest.mark.parametrize(
    ("known", "told"),
    [
        ((), "No readings of the air where gluing is done"),
        ((place("booth"),), "No readings of the air where gluing is done"),
        ((place("shop"),), "No readings of the air where finishing is done"),
        ((place("shop"), place("booth", days_ago=40)), "The booth's readings are too old"),
    ],
)
def test_a_place_that_was_not_read_is_named_by_its_work(known: tuple[PlaceAir, ...], told: str) -> None:
    assert told in assumed("booth", *known)
