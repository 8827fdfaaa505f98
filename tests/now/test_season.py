"""A season in the shop, shortened: what must never happen does not, in invented air and with what goes wrong in one.

The whole of it, over many weeks and seeds, is run by hand: `make season`.
"""

from datetime import UTC, datetime
from pathlib import Path

import pytest
from season.building import Season

from gramil.shop.kept_plans import kept_weeks
from gramil.shop.operations_done import operations_done
from gramil.store.opening import create_store
from gramil.store.undo import last_change

BEGINS = datetime(2026, 2, 2, 8, 30, tzinfo=UTC)


@pytest.fixture(scope="module")
def season(tmp_path_factory: pytest.TempPathFactory) -> Season:
    path = tmp_path_factory.mktemp("season") / "shop.gramil"
    found = Season(path, create_store(path), BEGINS, 1, names=("scree",))
    found.run(2)
    return found


def test_nothing_is_promised_twice_and_nothing_done_before_its_time(season: Season) -> None:
    assert season.counted.done > 5
    assert season.counted.promised_twice == 0
    assert season.counted.broken == []


def test_every_spoiled_piece_is_open_again(season: Season) -> None:
    assert season.counted.begun_anew == season.counted.spoiled


def test_plans_are_kept_week_by_week(season: Season) -> None:
    first, second = kept_weeks(season.store)
    assert (first.monday, second.monday) == (BEGINS.date(), BEGINS.replace(day=9).date())
    done = {each.operation for each in operations_done(season.store, 1)}
    assert {operation for _, operation in first.done} <= done
    assert last_change(season.store) is not None


def test_the_same_season_again_comes_out_the_same(season: Season, tmp_path: Path) -> None:
    again = Season(tmp_path / "shop.gramil", create_store(tmp_path / "shop.gramil"), BEGINS, 1, names=("scree",))
    assert again.air.humidity.tolist() == season.air.humidity.tolist()
    other = Season(tmp_path / "other.gramil", create_store(tmp_path / "other.gramil"), BEGINS, 2, names=("scree",))
    assert other.air.humidity.tolist() != season.air.humidity.tolist()
