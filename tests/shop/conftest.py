"""What the store's tests share: a moment in a zone ahead of universal time, a new store, the example shop in one."""

from collections.abc import Iterator
from datetime import datetime, timedelta, timezone
from importlib.resources import files
from pathlib import Path

import pytest

from gramil.shop.on_hand import bring_in_shop
from gramil.shop.opening import Store, create_store

NOW = datetime(2026, 11, 2, 9, 30, tzinfo=timezone(timedelta(hours=1)))
SHOP = (files("gramil") / "data" / "examples" / "shop.toml").read_text(encoding="utf-8")


@pytest.fixture
def now() -> datetime:
    return NOW


@pytest.fixture
def path(tmp_path: Path) -> Path:
    return tmp_path / "shop.gramil"


@pytest.fixture
def store(path: Path) -> Iterator[Store]:
    with create_store(path) as opened:
        yield opened


@pytest.fixture
def stocked(store: Store, now: datetime) -> Store:
    """The store with the example shop in it."""
    bring_in_shop(store, SHOP, "shop.toml", now)
    return store
