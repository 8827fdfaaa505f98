"""Undo: whatever a change did, the store is as it was before it, and no version comes back."""

from dataclasses import replace
from datetime import datetime, timedelta

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from gramil.air.places import Place, add_place, air_history, import_air, place
from gramil.doorway.export import export_files
from gramil.doorway.verify import verify_open
from gramil.faults import MakersFault
from gramil.physics.arrays import floats
from gramil.shop.instruments import add_instrument, instrument, save_revision
from gramil.shop.operations_done import Measurement, Noted, mark_done
from gramil.shop.shop_in_store import bring_in_shop
from gramil.shop.stock import Blank, add_blank, blank_named, blanks, promise_blank, promises, remove_blank, use_up
from gramil.shop.tools import add_cuts, set_constant
from gramil.store.failures import Conflict
from gramil.store.items import item_named
from gramil.store.moments import moment_text
from gramil.store.opening import Store, create_store
from gramil.store.rows import insert
from gramil.store.undo import last_change, undo
from gramil.store.writing import KEPT_CHANGES, Hand, changes, writing
from gramil.wood.air import AirHistory

from ..in_a_store import NOW, SHOP


def air(readings: int, start: datetime) -> AirHistory:
    count = range(readings)
    return AirHistory(
        start, floats([600.0 * row for row in count]), floats([18.0 for _ in count]), floats([41.5 for _ in count])
    )


def test_undo_takes_back_the_last_change_and_then_the_one_before(store: Store, now: datetime) -> None:
    add_blank(store, Blank("top", "spruce", 560.0, 220.0, 4.2), Hand(now))
    add_blank(store, Blank("back", "walnut", 560.0, 220.0, 4.2), Hand(now))
    last = last_change(store)
    assert last is not None
    assert undo(store, last.id, Hand(now, who="anna")).what == "add blank back"
    assert [each.name for each in blanks(store)] == ["top"]
    before = last_change(store)
    assert before is not None
    undo(store, before.id, Hand(now))
    assert blanks(store) == []
    assert last_change(store) is None
    assert [(each.what, each.undoes) for each in changes(store)] == [
        ("undo: add blank top", before.id),
        ("undo: add blank back", last.id),
        ("add blank back", None),
        ("add blank top", None),
    ]


def test_undo_is_of_the_change_that_was_seen(store: Store, now: datetime) -> None:
    add_blank(store, Blank("top", "spruce", 560.0, 220.0, 4.2), Hand(now))
    seen = last_change(store)
    add_blank(store, Blank("back", "walnut", 560.0, 220.0, 4.2), Hand(now))
    assert seen is not None
    with pytest.raises(MakersFault, match="add blank back"):
        undo(store, seen.id, Hand(now))
    assert len(blanks(store)) == 2


def test_a_version_does_not_come_back_with_the_row(store: Store, now: datetime) -> None:
    seen = add_instrument(store, "Tarn", "one", Hand(now))
    newer = save_revision(store, seen, "two", Hand(now))
    last = last_change(store)
    assert last is not None
    undo(store, last.id, Hand(now))
    back = instrument(store, "Tarn")
    assert back.version > newer.version
    with pytest.raises(Conflict):
        save_revision(store, newer, "three", Hand(now))


def test_readings_go_with_the_import_that_brought_them(store: Store, now: datetime) -> None:
    bench = add_place(store, Place("bench", {}), Hand(now))
    import_air(store, bench.id, air(10, now), Hand(now))
    import_air(store, bench.id, air(30, now + timedelta(days=1)), Hand(now))
    last = last_change(store)
    assert last is not None
    undo(store, last.id, Hand(now))
    history = air_history(store, bench.id)
    assert history is not None
    assert history.times.size == 10


def test_a_change_too_far_back_is_told(store: Store, now: datetime) -> None:
    add_place(store, Place("bench", {}), Hand(now))
    for number in range(KEPT_CHANGES + 5):
        add_place(store, Place(f"shelf {number}", {}), Hand(now))
    for _ in range(KEPT_CHANGES):
        last = last_change(store)
        assert last is not None
        undo(store, last.id, Hand(now))
    with pytest.raises(MakersFault, match="too far back"):
        undo(store, last_change(store).id, Hand(now))  # type: ignore[union-attr]  # there are changes left: made above
    assert place(store, "shelf 4").name == "shelf 4"


def work(store: Store, kind: str, number: int, now: datetime) -> None:
    """One change of a kind, as different as they come; some are refused, and change nothing."""
    name = f"{kind} {number}"
    match kind:
        case "instrument":
            add_instrument(store, name, "text", Hand(now))
        case "save":
            tarn = instrument(store, "Tarn")
            save_revision(store, tarn, name, Hand(now))
        case "blank":
            add_blank(store, Blank(name, "spruce", 560.1 + number, 220.0, 0.1 + 0.2), Hand(now))
        case "remove":
            remove_blank(store, blanks(store)[-1], Hand(now))
        case "promise":
            promise_blank(store, instrument(store, "Tarn").id, name, blank_named(store, "hornbeam").id, Hand(now))
        case "use":
            use_up(store, promises(store)[0], Hand(now))
        case "constant":
            set_constant(store, item_named(store, "jig", "taper sled"), 60.0 + number / 7, now.date(), Hand(now))
        case "cuts":
            add_cuts(store, item_named(store, "saw", "table saw").id, [0.1 + number, 0.3], Hand(now))
        case "done":
            pin = Measurement("board_thickness", "6.4 mm", 6.4, "mm")
            mark_done(store, instrument(store, "Tarn").id, name, Hand(now), Noted(photos=("a.jpg",), measured=(pin,)))
        case "weight":
            tarn = instrument(store, "Tarn").id
            with writing(store, "weigh the instrument", Hand(now)):
                insert(store, "weight", {"instrument": tarn, "grams": 1000.0 + number, "at": moment_text(now)})
        case "air":
            import_air(store, place(store, "bench").id, air(3, now + timedelta(hours=number)), Hand(now))
        case "shop":
            bring_in_shop(store, SHOP.replace('name = "', f'name = "{number} '), f"{number}.toml", Hand(now))


KINDS = ["instrument", "save", "blank", "remove", "promise", "use", "constant", "cuts", "done", "weight", "air", "shop"]


@settings(max_examples=20, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(st.lists(st.sampled_from(KINDS), min_size=1, max_size=8))
def test_undoing_everything_gives_back_every_state_in_turn(tmp_path_factory, kinds: list[str]) -> None:
    with create_store(tmp_path_factory.mktemp("undo") / "shop.gramil") as store:
        bring_in_shop(store, SHOP, "shop.toml", Hand(NOW))
        add_instrument(store, "Tarn", "one", Hand(NOW))
        add_place(store, Place("bench", {}), Hand(NOW))
        states = [export_files(store)]
        for number, kind in enumerate(kinds):
            try:
                work(store, kind, number, NOW)
            except (MakersFault, IndexError):
                assert export_files(store) == states[-1]
                continue
            states.append(export_files(store))
        for state in reversed(states[:-1]):
            last = last_change(store)
            assert last is not None
            undo(store, last.id, Hand(NOW))
            assert export_files(store) == state
        assert verify_open(store) == ()


def test_a_refused_change_is_not_noted(store: Store, now: datetime) -> None:
    add_blank(store, Blank("top", "spruce", 560.0, 220.0, 4.2), Hand(now))
    with pytest.raises(MakersFault):
        add_blank(store, replace(blank_named(store, "top"), id=0), Hand(now))
    assert len(changes(store)) == 1
