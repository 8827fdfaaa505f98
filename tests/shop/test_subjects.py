"""Instruments, stock, tools, sheets, pieces and progress: what each subject keeps, and what it refuses."""

import re
from dataclasses import replace
from datetime import date, datetime, timedelta

import pytest

from gramil.air.pieces import lay_piece, weigh_piece
from gramil.air.places import Place, add_place, place, places, remove_place, update_place
from gramil.description.reading import parse_shop
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.shop.instruments import (
    add_instrument,
    instrument,
    instruments,
    revision,
    revisions,
    save_revision,
    update_instrument,
)
from gramil.shop.operations_done import (
    Noted,
    add_measurements,
    mark_done,
    measurements,
    operations_done,
    pins_for,
    read_measurements,
    update_done,
)
from gramil.shop.sheets_given import give_sheet, latest_given, settings_that_changed
from gramil.shop.shop_in_store import bring_in_shop, shop_description, shop_text
from gramil.shop.stock import (
    Blank,
    Part,
    add_blank,
    add_part,
    blank_named,
    blanks,
    free_counts,
    part_named,
    parts,
    promise_blank,
    promise_part,
    promises,
    release,
    remove_blank,
    update_blank,
    update_part,
    use_up,
)
from gramil.shop.tools import add_cuts, cuts, kerf, set_constant
from gramil.store.failures import Conflict
from gramil.store.items import Item, add_item, item_named, items, remove_item, update_item
from gramil.store.opening import Store
from gramil.store.rows import insert
from gramil.store.writing import Hand, writing

from ..in_a_store import SHOP, figures_with, sheets_given

TARN = "# an instrument's description, as it is written\ngramil = 1\n"


def test_each_save_is_a_revision_with_who_when_and_why(store: Store, now: datetime) -> None:
    first = add_instrument(store, "Tarn", TARN, Hand(now, who="anna", why="drawn"), customer="a player")
    second = save_revision(
        store, first, TARN + "\n# wider\n", Hand(now + timedelta(days=1), who="ben", why="asked for")
    )
    kept = revisions(store, first.id)
    assert [(each.number, each.who, each.why) for each in kept] == [(1, "anna", "drawn"), (2, "ben", "asked for")]
    assert kept[1].at == "2026-11-03T09:30:00+01:00"
    assert revision(store, first.id, 1).text == TARN
    assert revision(store, first.id).text.endswith("# wider\n")
    assert second.version > first.version


def test_the_same_text_again_is_no_new_revision(store: Store, now: datetime) -> None:
    first = add_instrument(store, "Tarn", TARN, Hand(now))
    assert save_revision(store, first, TARN, Hand(now)) == first
    assert len(revisions(store, first.id)) == 1


def test_a_saved_revision_stays_as_it_is(store: Store, now: datetime) -> None:
    add_instrument(store, "Tarn", TARN, Hand(now))
    with pytest.raises(MakersFault, match="stays as it is"):
        store.rows("UPDATE revision SET text = ''")


def test_two_phones_that_save_the_same_instrument_are_told_with_both_texts(store: Store, now: datetime) -> None:
    seen = add_instrument(store, "Tarn", "one", Hand(now))
    save_revision(store, seen, "two", Hand(now, who="anna"))
    with pytest.raises(Conflict) as caught:
        save_revision(store, seen, "three", Hand(now, who="ben"))
    assert (caught.value.mine, caught.value.theirs) == ("three", "two")
    assert revision(store, seen.id).text == "two"


def test_an_instrument_s_name_customer_and_standing_can_change(store: Store, now: datetime) -> None:
    add_instrument(store, "Scree", "", Hand(now))
    tarn = add_instrument(store, "Tarn", "", Hand(now))
    update_instrument(store, replace(tarn, customer="a singer", standing="waiting"), Hand(now))
    assert [each.name for each in instruments(store, "waiting")] == ["Tarn"]
    assert instrument(store, "Tarn").customer == "a singer"
    with pytest.raises(Conflict) as caught:
        update_instrument(store, replace(tarn, standing="done"), Hand(now))
    assert 'standing = "done"' in caught.value.mine
    assert 'standing = "waiting"' in caught.value.theirs
    with pytest.raises(MakersFault, match="open, waiting or done"):
        update_instrument(store, replace(instrument(store, "Tarn"), standing="lost"), Hand(now))
    with pytest.raises(MakersFault, match="name already"):
        add_instrument(store, "Tarn", "", Hand(now))


def test_the_shop_in_the_store_is_the_shop_in_the_file(store: Store, now: datetime) -> None:
    bring_in_shop(store, SHOP, "shop.toml", Hand(now))
    assert shop_description(store).shop.model_dump() == parse_shop(SHOP).shop.model_dump()


def test_an_inch_shop_is_the_same_from_the_store(store: Store, now: datetime) -> None:
    text = re.sub(
        r"= ([\d.]+)$", lambda found: f"= {float(found[1]) / 25.4}", SHOP.replace('"mm"', '"in"'), flags=re.MULTILINE
    )
    text = text.replace("[9.0, ", "[0.25, ").replace(", 11.1]", ", 0.5]")
    text = re.sub(r"(gramil|frets|count) = .*", lambda found: f"{found[1]} = {1 if found[1] == 'gramil' else 2}", text)
    bring_in_shop(store, text, "shop.toml", Hand(now))
    assert shop_description(store).shop.model_dump() == parse_shop(text).shop.model_dump()
    hornbeam, sled = blank_named(store, "hornbeam"), item_named(store, "jig", "taper sled")
    assert hornbeam.length == pytest.approx(500.0)
    assert set_constant(store, sled, 61.25, now.date(), Hand(now)).figures["constant"] == "61.25 mm"
    assert shop_description(store).shop.jig[0].constant == 61.25


def test_a_shop_with_faults_or_names_that_are_taken_is_not_brought_in_by_half(stocked: Store, now: datetime) -> None:
    before = shop_text(stocked)
    with pytest.raises(MakersFault) as caught:
        bring_in_shop(stocked, SHOP, "shop.toml", Hand(now))
    assert len(caught.value.faults) == len(items(stocked)) + len(blanks(stocked))
    with pytest.raises(MakersFault, match="bare lengths here are in in"):
        bring_in_shop(stocked, 'gramil = 1\n[shop]\nname = "x"\nunits = "in"\n', "inch.toml", Hand(now))
    with pytest.raises(MakersFault, match="kerf"):
        bring_in_shop(stocked, SHOP.replace("kerf = 0.57", 'kerf = "wide"'), "shop.toml", Hand(now))
    assert shop_text(stocked) == before


def test_a_measured_kerf_is_kept_beside_its_label_and_counts(stocked: Store, now: datetime) -> None:
    saw = item_named(stocked, "saw", "table saw")
    assert (kerf(stocked, saw).used, kerf(stocked, saw).measured) == (0.58, None)
    add_cuts(stocked, saw.id, [0.70, 0.72], Hand(now), note="new blade")
    add_cuts(stocked, saw.id, [0.60, 0.62, 0.61], Hand(now + timedelta(days=1)))
    found = kerf(stocked, saw)
    assert found.label == 0.58
    assert found.used == pytest.approx(0.61)
    assert found.span == pytest.approx(0.02)
    assert len(cuts(stocked, saw.id)) == 5
    assert next(each.kerf for each in shop_description(stocked).shop.saw if each.name == "table saw") == found.used
    assert item_named(stocked, "saw", "table saw").figures["kerf"] == 0.58


def test_settings_that_an_older_program_noted_on_a_sheet_are_held_against_the_tools(
    stocked: Store, now: datetime
) -> None:
    tarn = add_instrument(stocked, "Tarn", TARN, Hand(now))
    sled, saw = item_named(stocked, "jig", "taper sled"), item_named(stocked, "saw", "table saw")
    sheet = give_sheet(stocked, tarn.id, 1, "taper", "", Hand(now))
    with writing(stocked, "as an older program noted it", Hand(now)):
        for tool, name, value in ((sled, "constant", 62.4), (saw, "kerf", 0.58)):
            insert(stocked, "sheet_setting", {"sheet": sheet.id, "tool": tool.id, "name": name, "value": value})
    assert settings_that_changed(stocked, sheet) == ()
    set_constant(stocked, sled, 62.55, date(2026, 12, 1), Hand(now))
    add_cuts(stocked, saw.id, [0.6], Hand(now))
    changed = settings_that_changed(stocked, sheet)
    assert [(each.tool.name, each.given, each.now) for each in changed] == [
        ("taper sled", 62.4, 62.55),
        ("table saw", 0.58, 0.6),
    ]
    give_sheet(stocked, tarn.id, 1, "slot", "[]", Hand(now))
    again = give_sheet(stocked, tarn.id, 1, "taper", "[]", Hand(now))
    assert [each.title for each in latest_given(stocked, tarn.id)] == ["slot", "taper"]
    assert latest_given(stocked, tarn.id)[-1] == again
    assert len(sheets_given(stocked)) == 3
    jig = next(each for each in shop_description(stocked).shop.jig if each.name == "taper sled")
    assert (jig.constant, jig.checked) == (62.55, date(2026, 12, 1))


def test_a_sheet_is_of_a_revision_that_there_is(stocked: Store, now: datetime) -> None:
    tarn = add_instrument(stocked, "Tarn", TARN, Hand(now))
    with pytest.raises(MakersFault, match="not there"):
        give_sheet(stocked, tarn.id, 2, "taper", "", Hand(now))


def test_tools_can_be_added_changed_and_removed_but_not_twice_at_once(stocked: Store, now: datetime) -> None:
    dish = add_item(stocked, Item("block", "dish", {"radius": "25 ft"}), Hand(now))
    changed = update_item(stocked, replace(dish, figures={"radius": "28 ft"}), Hand(now))
    assert changed.figures == {"radius": "28 ft"}
    with pytest.raises(Conflict):
        update_item(stocked, replace(dish, figures={"radius": "15 ft"}), Hand(now))
    with pytest.raises(Conflict):
        remove_item(stocked, dish, Hand(now))
    remove_item(stocked, changed, Hand(now))
    with pytest.raises(MakersFault, match="no block called dish"):
        item_named(stocked, "block", "dish")
    with pytest.raises(MakersFault, match="not a finite number"):
        add_item(stocked, Item("saw", "odd", {"kerf": float("nan")}), Hand(now))


def test_no_blank_is_promised_twice(stocked: Store, now: datetime) -> None:
    tarn, scree = add_instrument(stocked, "Tarn", "", Hand(now)), add_instrument(stocked, "Scree", "", Hand(now))
    hornbeam = blank_named(stocked, "hornbeam")  # two alike
    promise_blank(stocked, tarn.id, "board", hornbeam.id, Hand(now))
    promise_blank(stocked, scree.id, "board", hornbeam.id, Hand(now))
    with pytest.raises(MakersFault, match="promised already"):
        promise_blank(stocked, scree.id, "bridge", hornbeam.id, Hand(now))
    with pytest.raises(MakersFault, match="more of the blank are promised"):
        update_blank(stocked, replace(hornbeam, count=1), Hand(now))
    with pytest.raises(MakersFault, match="promised already"):
        stocked.rows("UPDATE promise SET count = 2")
    assert free_counts(stocked)[hornbeam.id] == 0
    assert free_counts(stocked, tarn.id)[hornbeam.id] == 1


def test_a_promise_is_used_up_or_released(stocked: Store, now: datetime) -> None:
    tarn = add_instrument(stocked, "Tarn", "", Hand(now))
    piece = blank_named(stocked, "locust")
    promise = promise_blank(stocked, tarn.id, "board", piece.id, Hand(now))
    assert "locust" in [each.name for each in shop_description(stocked, tarn.id).shop.blank]
    assert "locust" not in [each.name for each in shop_description(stocked).shop.blank]
    release(stocked, promise, Hand(now))
    again = use_up(stocked, promise_blank(stocked, tarn.id, "board", piece.id, Hand(now)), Hand(now))
    assert again.used_at == "2026-11-02T09:30:00+01:00"
    assert "locust" not in [each.name for each in shop_description(stocked, tarn.id).shop.blank]
    assert promises(stocked, tarn.id) == [again]
    with pytest.raises(MakersFault, match="used up"):
        release(stocked, again, Hand(now))
    with pytest.raises(MakersFault, match="still needed"):
        remove_blank(stocked, piece, Hand(now))


def test_a_part_made_ahead_is_promised_once_and_keeps_its_figures(store: Store, now: datetime) -> None:
    tarn, scree = add_instrument(store, "Tarn", "", Hand(now)), add_instrument(store, "Scree", "", Hand(now))
    shelf = add_place(store, Place("shelf", {}), Hand(now))
    sides = add_part(store, Part("sides 3", "bent sides", {"outline": "tarn", "height": "98 mm"}, "walnut"), Hand(now))
    sides = update_part(store, replace(sides, place=shelf.id), Hand(now))
    assert part_named(store, "sides 3").figures == {"outline": "tarn", "height": "98 mm"}
    assert parts(store)[0].place == shelf.id
    promise_part(store, tarn.id, "sides", sides.id, Hand(now))
    with pytest.raises(MakersFault, match="part already"):
        promise_part(store, scree.id, "sides", sides.id, Hand(now))
    with pytest.raises(MakersFault, match="still needed"):
        remove_place(store, shelf, Hand(now))


@pytest.mark.parametrize(
    ("change", "words"),
    [
        ({"length": 0.0}, "length is more than 0"),
        ({"count": -1}, "not less than 0"),
        ({"name": ""}, "name written on it"),
        ({"width": float("inf")}, "finite"),
        ({"note": "a\0b"}, "character"),
        ({"note": "\ud800"}, "character"),
        ({"count": 10**30}, "too large"),
        ({"place": 99}, "not there"),
        ({"wood": None}, "missing or of the wrong kind"),
    ],
)
def test_what_cannot_be_is_refused_in_words(store: Store, now: datetime, change: dict, words: str) -> None:
    with pytest.raises(MakersFault, match=words):
        add_blank(store, replace(Blank("top", "spruce", 560.0, 220.0, 4.2), **change), Hand(now))
    assert blanks(store) == []


def test_places_can_be_added_renamed_and_removed(store: Store, now: datetime) -> None:
    box = add_place(store, Place("drying box", {"room": 0.4}), Hand(now))
    update_place(store, replace(box, name="box"), Hand(now))
    assert [each.name for each in places(store)] == ["box"]
    with pytest.raises(Conflict):
        remove_place(store, box, Hand(now))
    remove_place(store, place(store, "box"), Hand(now))
    assert places(store) == []


def test_a_piece_is_moved_and_weighed_by_the_shop_s_own_clock(stocked: Store, now: datetime) -> None:
    add_place(stocked, Place("bench", {}), Hand(now))
    add_place(stocked, Place("box", {}), Hand(now))
    piece = add_item(
        stocked, Item("piece", "top 1", {"wood": "Sitka spruce", "thickness": 4.0, "dry_mass": "180 g"}), Hand(now)
    )
    piece = lay_piece(stocked, piece, "bench", Hand(now))
    piece = lay_piece(stocked, piece, "box", Hand(now + timedelta(days=2)))
    weigh_piece(stocked, piece, 214.5, Hand(now + timedelta(days=3)))
    found = shop_description(stocked).shop.piece[0]
    assert [(stay.place, stay.begins.day, stay.ends and stay.ends.day) for stay in found.lay] == [
        ("bench", 2, 4),
        ("box", 4, None),
    ]
    assert [(each.at, each.mass) for each in found.weighings] == [(datetime(2026, 11, 5, 9, 30), 214.5)]


def test_an_operation_done_gives_its_measurements_as_pins(stocked: Store, figures: Figures, now: datetime) -> None:
    tarn = add_instrument(stocked, "Tarn", TARN, Hand(now))
    written = {"board_thickness": "6.38 mm", "core_width_at_fret[7]": 52.1}
    measured = read_measurements(figures, written)
    done = mark_done(stocked, tarn.id, "slotted", Hand(now), Noted("clean", 1.5, ("slots.jpg",), measured))
    add_measurements(
        stocked, tarn.id, read_measurements(figures, {"board_thickness": "1/4 in"}), Hand(now + timedelta(days=2))
    )
    pins = pins_for(stocked, tarn.id)
    assert (pins["board_thickness"].value, pins["board_thickness"].when) == (6.35, "2026-11-04")
    assert figures_with(pins)["board_thickness"] == 6.35
    assert figures_with(pins)["core_width_at_fret"][7] == 52.1
    assert [each.written for each in measurements(stocked, tarn.id, done.id)] == ["6.38 mm", "52.1 mm"]
    assert operations_done(stocked, tarn.id) == [done]
    assert (done.photos, done.hours, done.note) == (("slots.jpg",), 1.5, "clean")
    changed = update_done(stocked, replace(done, note="one chip", photos=("a.jpg", "b.jpg")), Hand(now))
    assert changed.photos == ("a.jpg", "b.jpg")
    with pytest.raises(Conflict):
        update_done(stocked, replace(done, note="other"), Hand(now))
    with pytest.raises(MakersFault, match="already"):
        mark_done(stocked, tarn.id, "slotted", Hand(now))


def test_every_fault_of_measurements_is_told(figures: Figures) -> None:
    with pytest.raises(MakersFault) as caught:
        read_measurements(figures, {"board_thickness": "6,38", "board_thicknes": 6.4, "core_width_at_fret": 50.0})
    assert [fault.where for fault in caught.value.faults] == ["board_thickness", "board_thicknes", "core_width_at_fret"]
