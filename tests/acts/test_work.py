"""An operation noted as done is one act: wood that was promised for it goes with it, and one undo takes back both."""

from collections.abc import Iterator
from datetime import UTC, datetime, timedelta
from importlib.resources import files
from pathlib import Path

import pytest

from gramil import names as n
from gramil.acts.left_over import note_and_keep
from gramil.acts.wood import join, keep_wood, split, strike_wood
from gramil.acts.work import UsedUp, begin_anew, not_done_after_all, note_done
from gramil.change.in_store import figures_in_store
from gramil.change.stops import measured_stops
from gramil.faults import MakersFault
from gramil.measure import read_length
from gramil.now.habits import noted_in
from gramil.now.needs import needs_of, used_up_by
from gramil.now.states import WorkedOut, bench_of_store
from gramil.now.stock_on_hand import stock_of_store
from gramil.shop.instruments import Instrument, add_instrument
from gramil.shop.operations_done import Measurement, Noted, mark_done, measurements, operations_done
from gramil.shop.shop_in_store import bring_in_shop, shop_description
from gramil.shop.stock import Blank, blank_named, blanks, promise_blank, promises
from gramil.store.items import Item, add_item, items
from gramil.store.opening import Store, create_store
from gramil.store.undo import last_change, undo
from gramil.store.writing import Hand, changes, writing

EXAMPLES = files("gramil") / "data" / "examples"
NOW = datetime(2026, 1, 19, 9, 0, tzinfo=UTC)
OPERATION = "thicknessed"
PIECE_OF_A_BOARD = {"wood": "persimmon", "part": "board", "thickness": 7.4, "width": 67.5}


@pytest.fixture
def store(tmp_path: Path) -> Iterator[Store]:
    with create_store(tmp_path / "shop.gramil") as opened:
        bring_in_shop(opened, (EXAMPLES / "shop.toml").read_text(encoding="utf-8"), "shop.toml", Hand(NOW))
        yield opened


@pytest.fixture
def owner(store: Store) -> Instrument:
    return add_instrument(store, "Tarn", (EXAMPLES / "tarn.toml").read_text(encoding="utf-8"), Hand(NOW))


def promised(store: Store, owner: Instrument, which: int = 0) -> None:
    (need, *_) = used_up_by(OPERATION)
    promise_blank(store, owner.id, need, blanks(store)[which].id, Hand(NOW))


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


def test_work_that_is_struck_puts_its_wood_and_its_wire_back_in_one_change(store: Store, owner: Instrument) -> None:
    """What an earlier board took, which was begun anew, stays used: it is sawn up."""
    promised(store, owner)
    spoiled = note_done(store, owner, OPERATION, Hand(NOW))
    begin_anew(store, owner, "board", Hand(NOW))
    assert (noted_in(store).operations, noted_in(store).begun) == (1, 1)
    promised(store, owner, 1)
    before = held(store)
    for operation in (OPERATION, "fretted"):
        used = note_done(store, owner, operation, Hand(NOW + timedelta(days=1)))
        done, number = operations_done(store, owner.id)[-1], len(changes(store))
        assert not_done_after_all(store, done, Hand(NOW + timedelta(days=2))) == used
        assert len(changes(store)) == number + 1
        assert held(store) == before, operation
        last = last_change(store)
        assert last is not None
        undo(store, last.id, Hand(NOW))
        assert [each.operation for each in operations_done(store, owner.id)] == [operation]
        assert held(store) != before
        undo(store, last.id - 1, Hand(NOW))
    assert [bool(each.used_at) for each in promises(store, owner.id)] == [True, False]
    assert [each.need for each in spoiled] == ["board"]


def held(store: Store) -> tuple[list[str], float]:
    """What each promise says of its use, and how much wire there is, in mm."""
    (wire,) = (each.figures["on_hand"] for each in items(store, "wire") if each.name == "medium")
    return [each.used_at for each in promises(store)], read_length(str(wire), "mm")


def test_what_is_left_of_the_wood_is_kept_with_its_size_and_one_undo_takes_it_back(
    store: Store, owner: Instrument
) -> None:
    promised(store, owner)
    whole = blanks(store)[0]
    before = len(changes(store))

    def note() -> tuple[UsedUp, ...]:
        return note_done(store, owner, OPERATION, Hand(NOW))

    _, kept = note_and_keep(store, "done", Hand(NOW), note, [(300.0, 20.0, 6.0), (80.0, 60.0, 6.0)])
    assert [(each.name, each.length, each.width, each.wood) for each in kept] == [
        (f"{whole.name}, left over", 300.0, 20.0, whole.wood),
        (f"{whole.name}, left over 2", 80.0, 60.0, whole.wood),
    ]
    assert len(changes(store)) == before + 1
    last = last_change(store)
    assert last is not None
    undo(store, last.id, Hand(NOW))
    assert [each for each in blanks(store) if "left over" in each.name] == []


@pytest.mark.parametrize(
    ("left", "told"),
    [
        ((5000.0, 900.0, 400.0), "more is left"),
        ((5000.0, 9.0, 1.0), "does not lie within"),
        (None, "nothing can be left"),
    ],
)
def test_no_more_is_left_than_there_was(
    store: Store, owner: Instrument, left: tuple[float, float, float] | None, told: str
) -> None:
    operation = OPERATION if left is not None else "nut_end_cut"
    if left is not None:
        promised(store, owner)
    with pytest.raises(MakersFault, match=told):
        note_and_keep(
            store, "done", Hand(NOW), lambda: note_done(store, owner, operation, Hand(NOW)), [left or (9.0, 9.0, 9.0)]
        )
    assert operations_done(store, owner.id) == []


def test_wire_is_taken_off_as_it_is_pressed_and_its_board_is_not_told_to_buy_any(
    store: Store, owner: Instrument
) -> None:
    """6 m are on hand in the example shop; 19 frets of 45.5 to 59 mm and 5 mm over take some 1.1 m by hand."""
    other = add_instrument(store, "Beck", (EXAMPLES / "tarn.toml").read_text(encoding="utf-8"), Hand(NOW))
    before = figures_in_store(store, owner)
    assert before[n.wire_on_hand] == 6000.0
    (used,) = note_done(store, owner, "fretted", Hand(NOW))
    assert used.need == "frets"
    assert "medium" in used.name
    assert figures_in_store(store, owner)[n.wire_on_hand] == pytest.approx(6000.0, abs=0.1)
    left = figures_in_store(store, other)[n.wire_on_hand]
    assert 6000.0 - 19 * 65 < left < 6000.0 - 19 * 50
    last = last_change(store)
    assert last is not None
    undo(store, last.id, Hand(NOW))
    assert figures_in_store(store, other)[n.wire_on_hand] == 6000.0


def test_a_board_begun_anew_takes_wire_of_its_own(store: Store, owner: Instrument) -> None:
    other = add_instrument(store, "Beck", (EXAMPLES / "tarn.toml").read_text(encoding="utf-8"), Hand(NOW))
    note_done(store, owner, "fretted", Hand(NOW))
    left = figures_in_store(store, other)[n.wire_on_hand]
    begin_anew(store, owner, "board", Hand(NOW))
    assert figures_in_store(store, owner)[n.wire_on_hand] == left, "its frets are gone with the old board"
    note_done(store, owner, "fretted", Hand(NOW))
    assert figures_in_store(store, other)[n.wire_on_hand] == pytest.approx(2 * left - 6000.0, abs=0.2)


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


def lost_board(store: Store, owner: Instrument) -> None:
    """A board thicknessed from a blank promised for it, and measured."""
    promised(store, owner)
    add_item(store, Item("piece", "marked board", {**PIECE_OF_A_BOARD, "for": owner.name}), Hand(NOW))
    note_done(store, owner, OPERATION, Hand(NOW), Noted(measured=(Measurement("blank_thickness", "3 mm", 3.0, "mm"),)))


def asked_for(store: Store, owner: Instrument) -> list[str]:
    done = [each.operation for each in operations_done(store, owner.id)]
    return [each.name for each in needs_of(figures_in_store(store, owner), done)]


def test_a_lost_part_begun_anew_asks_for_its_wood_and_its_readings_are_silent(store: Store, owner: Instrument) -> None:
    lost_board(store, owner)
    assert "board" not in asked_for(store, owner)
    assert "marked board" not in free_pieces(store, owner)
    begin_anew(store, owner, "board", Hand(NOW))
    assert "board" in asked_for(store, owner)
    assert measurements(store, owner.id) == []
    assert "marked board" not in [each.name for each in items(store, "piece")], "the old piece is written off"
    assert [bool(each.used_at) for each in promises(store, owner.id)] == [True], "its wood stays paid for"
    last = last_change(store)
    assert last is not None
    undo(store, last.id, Hand(NOW))
    assert "marked board" in [each.name for each in items(store, "piece")]
    assert "board" not in asked_for(store, owner)


def test_a_lost_part_is_kept_for_another_use_of_the_wood_that_it_was_made_of(store: Store, owner: Instrument) -> None:
    lost_board(store, owner)
    begin_anew(store, owner, "board", Hand(NOW), kept=Blank("short board", "", 410.0, 60.0, 3.0))
    kept = blank_named(store, "short board")
    assert kept.wood == blanks(store)[0].wood
    last = last_change(store)
    assert last is not None
    undo(store, last.id, Hand(NOW))
    assert "short board" not in [each.name for each in blanks(store)]


def test_a_piece_with_a_blank_s_name_is_that_blank_kept_for_its_instrument(store: Store, owner: Instrument) -> None:
    """ "persimmon 2" is in the example shop's stock, and followed as a piece for *Tarn*'s board."""
    shop, names = shop_description(store).shop, {owner.id: owner.name}

    def there() -> list[tuple[str, str]]:
        return [
            (each.owner, each.part) for each in stock_of_store(store, shop, names, {}) if each.name == "persimmon 2"
        ]

    assert there() == [("Tarn", "board")]
    (used,) = note_done(store, owner, OPERATION, Hand(NOW))
    assert used.name == "persimmon 2"
    assert there() == []
    begin_anew(store, owner, "board", Hand(NOW))
    assert "persimmon 2" not in free_pieces(store, owner)
    for _ in range(2):
        last = last_change(store)
        assert last is not None
        undo(store, last.id, Hand(NOW))
    assert there() == [("Tarn", "board")]


def test_one_board_done_before_its_wood_was_counted_so_is_not_offered(store: Store, owner: Instrument) -> None:
    """A record kept by an older program: the work is done, and its blank was never used up."""
    mark_done(store, owner.id, OPERATION, Hand(NOW))
    assert "persimmon 2" not in free_pieces(store, owner)
    begin_anew(store, owner, "board", Hand(NOW))
    assert "persimmon 2" not in free_pieces(store, owner), "the old piece is written off"


def test_wood_that_is_cut_joined_or_struck_is_not_there_as_a_followed_piece_either(
    store: Store, owner: Instrument
) -> None:
    """By hand: 462 x 67.5 x 7.4 mm make two bridges; nobody gets a board of 448 mm of them."""
    halves = [Blank(name, "", 220.0, 67.5, 7.4) for name in ("front half", "back half")]
    split(store, blank_named(store, "persimmon 2"), halves, Hand(NOW))
    pieces = {each.name: each.figures for each in items(store, "piece")}
    assert "persimmon 2" not in free_pieces(store, owner)
    assert pieces["front half"]["lay"] == pieces["back half"]["lay"] != ()
    assert "for" not in pieces["front half"]
    assert free_pieces(store, owner).count("front half") == 1
    shop_description(store)  # it is still read
    join(store, blank_named(store, "front half"), blank_named(store, "back half"), Hand(NOW))
    assert free_pieces(store, owner).count("front half") == 2
    assert "back half" not in free_pieces(store, owner)
    strike_wood(store, blank_named(store, "front half"), Hand(NOW))
    assert "front half" not in free_pieces(store, owner)


def test_wood_counted_as_one_costs_what_it_cost(store: Store) -> None:
    for name, count, cost in (("cheap", 3, 10.0), ("dear", 1, 30.0), ("given", 2, None)):
        keep_wood(store, Blank(name, "walnut", 900.0, 90.0, 30.0, count=count, cost=cost), Hand(NOW))
    both = join(store, blank_named(store, "cheap"), blank_named(store, "dear"), Hand(NOW))
    assert (both.count, both.cost) == (4, 15.0)
    assert join(store, both, blank_named(store, "given"), Hand(NOW)).cost == 15.0


def free_pieces(store: Store, owner: Instrument) -> list[str]:
    return [each.name for each in stock_of_store(store, shop_description(store).shop, {owner.id: owner.name}, {})]


def test_a_stop_that_a_reading_makes_is_told_until_the_piece_is_begun_anew(store: Store, owner: Instrument) -> None:
    assert measured_stops(figures_in_store(store, owner)) == ()
    lost_board(store, owner)
    assert any("as measured" in each for each in measured_stops(figures_in_store(store, owner)))
    assert now_stops(store), "told again by every look at the bench"
    begin_anew(store, owner, "board", Hand(NOW))
    assert measured_stops(figures_in_store(store, owner)) == ()


def now_stops(store: Store) -> tuple[str, ...]:
    return bench_of_store(store, NOW, WorkedOut(lambda *_: {})).instruments[0].stops
