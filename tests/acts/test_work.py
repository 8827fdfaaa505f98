"""An operation noted as done is one act: wood that was promised for it goes with it, and one undo takes back both."""

from collections.abc import Iterator
from datetime import UTC, datetime
from importlib.resources import files
from pathlib import Path

import pytest

from gramil.acts.work import note_done
from gramil.faults import MakersFault
from gramil.now.needs import used_up_by
from gramil.shop.instruments import Instrument, add_instrument
from gramil.shop.operations_done import operations_done
from gramil.shop.shop_in_store import bring_in_shop
from gramil.shop.stock import blanks, promise_blank, promises
from gramil.store.opening import Store, create_store
from gramil.store.undo import last_change, undo
from gramil.store.writing import Hand, changes, writing

EXAMPLES = files("gramil") / "data" / "examples"
NOW = datetime(2026, 1, 19, 9, 0, tzinfo=UTC)
OPERATION = "thicknessed"


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    with create_store(tmp_path / "shop.gramil") as opened:
        bring_in_shop(opened, (EXAMPLES / "shop.toml").read_text(encoding="utf-8"), "shop.toml", Hand(NOW))
        yield opened


@pytest.fixture
def owner(store: Store) -> Instrument:
    return add_instrument(store, "Tarn", (EXAMPLES / "tarn.toml").read_text(encoding="utf-8"), Hand(NOW))


def promised(store: Store, owner: Instrument) -> None:
    (need, *_) = used_up_by(OPERATION)
    promise_blank(store, owner.id, need, blanks(store)[0].id, Hand(NOW))


def test_one_undo_takes_back_the_work_and_the_wood(store: Store, owner: Instrument) -> None:
    promised(store, owner)
    before = len(changes(store))
    (used,) = note_done(store, owner, OPERATION, Hand(NOW))
    assert used.name == blanks(store)[0].name
    assert len(changes(store)) == before + 1
    assert [bool(each.used_at) for each in promises(store, owner.id)] == [True]
    last = last_change(store)
    assert last is not None
    undo(store, last.id, Hand(NOW))
    assert operations_done(store, owner.id) == []
    assert [bool(each.used_at) for each in promises(store, owner.id)] == [False]


def test_what_fails_half_way_leaves_nothing(store: Store, owner: Instrument, monkeypatch: pytest.MonkeyPatch) -> None:
    promised(store, owner)

    def fails(*_: object) -> None:
        raise MakersFault.of("the disk is full")

    monkeypatch.setattr("gramil.acts.work.use_up", fails)
    with pytest.raises(MakersFault, match="the disk is full"):
        note_done(store, owner, OPERATION, Hand(NOW))
    assert operations_done(store, owner.id) == []


def test_a_change_within_a_change_is_a_part_of_it(store: Store) -> None:
    before = len(changes(store))
    with writing(store, "the whole", Hand(NOW)) as whole, writing(store, "a step", Hand(NOW)) as step:
        assert step == whole
    assert [each.what for each in changes(store)][: len(changes(store)) - before] in (["the whole"], [])
