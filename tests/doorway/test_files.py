"""The store as files and back: nothing lost, every fault of an import told with its row, and none of it half done."""

import csv
import io
import tomllib
from collections.abc import Iterator
from contextlib import contextmanager
from datetime import datetime, timedelta, timezone
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from gramil.air.outlooks import Spell, put_outlook
from gramil.air.places import Place, Reading, add_place, add_reading, air_history, import_air, place
from gramil.doorway.bringing_in import import_csv, import_files
from gramil.doorway.export import export_csv, export_files, export_toml
from gramil.doorway.verify import verify_open
from gramil.faults import MakersFault
from gramil.physics.arrays import floats
from gramil.shop.corrections import strike_reading
from gramil.shop.instruments import add_instrument, instrument, revision, save_revision
from gramil.shop.operations_done import Measurement, Noted, mark_done, measurements, operations_done
from gramil.shop.own_operations import save_own_operations
from gramil.shop.sheets_given import give_sheet, settings_that_changed
from gramil.shop.stock import (
    Blank,
    Part,
    add_blank,
    add_part,
    blank_named,
    blanks,
    parts,
    promise_blank,
    promise_part,
    promises,
    use_up,
)
from gramil.shop.tools import add_cuts
from gramil.store.items import Item, add_item, item_named, items
from gramil.store.moments import moment_text
from gramil.store.opening import Store, create_store
from gramil.store.rows import insert
from gramil.store.table_forms import TABLES
from gramil.store.toml_text import table_text
from gramil.store.writing import Hand, writing
from gramil.wood.air import AirHistory

from ..in_a_store import NOW, SHOP, sheets_given


@contextmanager
def new_store() -> Iterator[Store]:
    with TemporaryDirectory() as folder, create_store(Path(folder) / "shop.gramil") as store:
        yield store


def filled(store: Store, now: datetime) -> None:
    """Something in every table."""
    bench = add_place(store, Place("bench", {"room": 40}), Hand(now))
    import_air(
        store,
        bench.id,
        AirHistory(now, floats([0, 600.5]), floats([18.1, 18]), floats([41, 1 / 3])),
        Hand(now),
        file="a.csv",
    )
    wrong = Reading(now + timedelta(hours=1), 18.0, 4.1)
    add_reading(store, bench.id, wrong, Hand(now))
    strike_reading(store, bench, wrong, Hand(now, why="a slip"))
    spells = [Spell(datetime(2026, 11, 4), 19.5, 44.0), Spell(datetime(2026, 11, 5), 20.0, 47.0)]
    put_outlook(store, bench, spells, Hand(now))
    tarn = add_instrument(
        store, "Tarn", 'gramil = 1\r\n# "quoted" \\ and \t tab\n', Hand(now, who="anna"), customer="a player"
    )
    save_revision(store, tarn, "two\n", Hand(now, why="wider"))
    save_own_operations(store, "[operation.slotted]\r\nhands = 5\n", Hand(now))
    save_own_operations(store, '# "own"\n[operation.slotted]\nclamp = 0.5', Hand(now), owner=tarn)
    add_cuts(store, item_named(store, "saw", "table saw").id, [0.1 + 0.2, 0.6], Hand(now))
    add_blank(
        store, Blank("top, 1", "spruce", 560.0, 220.0, 0.1 + 0.2, cost=12.5, place=bench.id, note="a\nb"), Hand(now)
    )
    part = add_part(store, Part("rosette", "rosette", {"diameter": "4 in"}), Hand(now))
    promise_part(store, tarn.id, "rosette", part.id, Hand(now))
    use_up(store, promise_blank(store, tarn.id, "top", blank_named(store, "top, 1").id, Hand(now)), Hand(now))
    sled = item_named(store, "jig", "taper sled")
    given = give_sheet(store, tarn.id, 2, "Taper the edges", '[["\u00e9 \\" \\n",0.1],[]]', Hand(now))
    at = moment_text(now)
    with writing(store, "as an older program noted it", Hand(now)):
        insert(store, "sheet_setting", {"sheet": given.id, "tool": sled.id, "name": "constant", "value": 61.0})
        insert(
            store, "begun_anew", {"version": None, "instrument": tarn.id, "piece": "board", "operations": 3, "at": at}
        )
        insert(store, "weight", {"instrument": tarn.id, "what": "whole", "grams": 1200.0, "at": moment_text(now)})
    pin = Measurement("board_thickness", "6.38 mm", 6.38, "mm")
    mark_done(store, tarn.id, "slotted", Hand(now), Noted("=1+1", 1.25, ("ü 1.jpg",), (pin,)))


def test_everything_comes_back_as_it_was(stocked: Store, now: datetime) -> None:
    filled(stocked, now)
    files = export_files(stocked)
    assert {table for table in TABLES if stocked.row(f"SELECT 1 FROM {table}")} == set(TABLES)
    with new_store() as other:
        import_files(other, files, Hand(now))
        assert export_files(other) == files
        assert verify_open(other) == ()
        tarn = instrument(other, "Tarn")
        assert revision(other, tarn.id, 1).text == 'gramil = 1\r\n# "quoted" \\ and \t tab\n'
        assert blank_named(other, "top, 1").thickness == 0.1 + 0.2
        assert [each.used_at for each in promises(other)] == ["", "2026-11-02T09:30:00+01:00"]
        assert measurements(other, tarn.id, operations_done(other, tarn.id)[0].id)[0].value == 6.38
        (given,) = sheets_given(other)
        assert given.printed == sheets_given(stocked)[0].printed != ""
        assert [(each.given, each.now) for each in settings_that_changed(other, given)] == [(61.0, 62.4)]
        history = air_history(other, place(other, "bench").id)
        assert history is not None
        assert (history.origin, list(history.times), history.humidity[1]) == (now, [0.0, 600.5], 1 / 3)


def test_each_table_comes_back_from_its_own_csv(stocked: Store, now: datetime) -> None:
    filled(stocked, now)
    with new_store() as other:
        for table in (*TABLES, "air_reading"):
            if table not in (
                "sheet_setting",
                "measurement",
                "air_reading",
                "air_struck",
            ):  # they speak of rows by number in their file
                import_csv(other, table, export_csv(stocked, table), f"{table}.csv", Hand(now))
                assert export_csv(other, table) == export_csv(stocked, table)


def test_the_toml_file_is_plain_toml(stocked: Store, now: datetime) -> None:
    filled(stocked, now)
    data = tomllib.loads(export_toml(stocked))
    assert [row["name"] for row in data["blank"]][-1] == "top, 1"
    assert data["promise"][1] == {
        "instrument": "Tarn", "need": "top", "blank": "top, 1", "count": 1,
        "at": "2026-11-02T09:30:00+01:00", "used_at": "2026-11-02T09:30:00+01:00",
    }  # fmt: skip
    assert data["item"][0]["figures"]["on_hand"] == "6 m"


FAULTY = """name,wood,length,width,thickness,count,place,shelf
top 1,spruce,560,220,4.2,1,,
top 2,spruce,wide,220,4.2,1,,
top 1,spruce,560,220,4.2,1,,
top 3,spruce,560,220,-4.2,1,,
"top
4",spruce,560,220,,2,loft,
top 5,spruce,560,220,4.2,1.5,,3
"""


def test_every_fault_of_an_import_is_told_with_its_row_and_nothing_is_brought_in(store: Store, now: datetime) -> None:
    text = FAULTY.replace(",shelf", "").replace(",,\n", ",\n").replace("loft,\n", "loft\n").replace(",,3\n", ",\n")
    with pytest.raises(MakersFault) as caught:
        import_csv(store, "blank", text, "wood.csv", Hand(now))
    said = [(fault.line, fault.what) for fault in caught.value.faults]
    assert [line for line, _ in said] == [3, 4, 5, 6, 6, 8]
    words = ["length", "name already", "thickness is more than 0", "thickness is missing", "loft", "whole number"]
    assert all(word in what for (_, what), word in zip(said, words, strict=True))
    assert blanks(store) == []
    assert import_csv(store, "blank", "\n".join(text.splitlines()[:2]), "wood.csv", Hand(now)) == 1


def test_columns_that_there_are_not_are_told(store: Store, now: datetime) -> None:
    with pytest.raises(MakersFault, match="no such column: shelf"):
        import_csv(store, "blank", "name,wood,length,width,thickness,shelf\na,b,1,1,1,2\n", "wood.csv", Hand(now))
    with pytest.raises(MakersFault, match="nearest is thickness"):
        import_csv(store, "blank", "name,wood,length,width,thicknes\na,b,1,1,1\n", "wood.csv", Hand(now))


@pytest.mark.parametrize("text", ["", "name,name\n", "name,\n", 'name,wood\n"a,b\n', "name,wood\na,b,c\n"])
def test_what_is_no_csv_is_told(store: Store, now: datetime, text: str) -> None:
    with pytest.raises(MakersFault):
        import_csv(store, "blank", text, "wood.csv", Hand(now))


@pytest.mark.parametrize(
    ("text", "words"),
    [
        ("[[", "not TOML"),
        ("", "form"),
        ("gramil_store = 2", "form"),
        ("gramil_store = 1\n[[blnk]]\nname = 1", "blank"),
        ("gramil_store = 1\nblank = 3", "no such table"),
        ("gramil_store = 1\n[[place]]\nname = 3", "text is wanted"),
        ('gramil_store = 1\n[[place]]\nname = "a"\nfigures = { since = 2026-01-01 }', "dates in quotes"),
        ('gramil_store = 1\n[[place]]\nname = "a"\nfigures = 3', "JSON object"),
        ('gramil_store = 1\n[[revision]]\ninstrument = "x"\nnumber = true\nat = "soon"', "whole number"),
    ],
)
def test_what_is_wrong_in_a_toml_file_is_told(store: Store, now: datetime, text: str, words: str) -> None:
    with pytest.raises(MakersFault, match=words):
        import_files(store, {"store.toml": text}, Hand(now))
    assert export_csv(store, "place") == "name,figures\r\n"


def test_faults_in_readings_are_told_with_their_rows(store: Store, now: datetime) -> None:
    add_place(store, Place("bench", {}), Hand(now))
    text = (
        "place,at,temperature,humidity\n"
        "bench,2026-11-02T10:00:00+01:00,18,41\n"
        "loft,2026-11-02T10:10:00+01:00,18,41\n"
        "bench,2026-11-02 10:20,18,41\n"
        "bench,2026-11-02T10:30:00+01:00,68,140\n"
        "bench,,18,41\n"
    )
    with pytest.raises(MakersFault) as caught:
        import_csv(store, "air_reading", text, "air.csv", Hand(now))
    assert [fault.line for fault in caught.value.faults] == [3, 4, 5, 5, 6]
    assert air_history(store, place(store, "bench").id) is None
    import_csv(store, "air_reading", "\n".join(text.splitlines()[:2]), "air.csv", Hand(now))
    history = air_history(store, place(store, "bench").id)
    assert history is not None
    assert history.times.size == 1


def test_many_faults_are_counted(store: Store, now: datetime) -> None:
    text = "name,wood,length,width,thickness\n" + "a,b,c,d,e\n" * 50
    with pytest.raises(MakersFault, match="and 50 more faults"):
        import_csv(store, "blank", text, "wood.csv", Hand(now))


WORDS = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\0"), max_size=30)
NAMES = WORDS.filter(bool)
SIZES = st.floats(min_value=0.1, max_value=500)
JSON = st.recursive(
    st.one_of(WORDS, st.booleans(), st.integers(-(2**60), 2**60), st.floats(allow_nan=False, allow_infinity=False)),
    lambda inner: st.one_of(st.lists(inner, max_size=3), st.dictionaries(WORDS, inner, max_size=3)),
    max_leaves=5,
)
BLANKS = st.builds(
    Blank,
    NAMES,
    NAMES,
    SIZES,
    SIZES,
    SIZES,
    st.integers(0, 10_000),
    WORDS,
    st.none() | st.floats(0, 1e9),
    st.none(),
    WORDS,
)
ITEMS = st.builds(
    lambda name, kind, constant: Item("jig", name, {"for": kind, "constant": constant}),
    NAMES,
    st.sampled_from(["taper", "slots"]),
    st.floats(0.1, 2000),
)
"""What a file brings in is proved: of a kind that the shop's description has, and well written."""
PARTS = st.builds(Part, NAMES, NAMES, st.dictionaries(WORDS, WORDS, max_size=3), WORDS)
ZONES = st.integers(-14 * 60, 14 * 60).map(lambda minutes: timezone(timedelta(minutes=minutes)))
MOMENTS = st.datetimes(datetime(1900, 1, 3), datetime(2199, 12, 29), timezones=ZONES)
READINGS = st.lists(st.tuples(st.floats(-40, 60), st.floats(0, 100)), min_size=1, max_size=5)


@settings(max_examples=30)
@given(
    st.lists(BLANKS, max_size=3, unique_by=lambda each: each.name),
    st.lists(ITEMS, max_size=3, unique_by=lambda each: f"{each.kind}: {each.name}"),
    st.lists(PARTS, max_size=2, unique_by=lambda each: each.name),
    MOMENTS,
    READINGS,
    WORDS,
)
def test_the_round_trip_is_exact_whatever_is_written(
    some_blanks, some_items, some_parts, moment, readings, text
) -> None:
    with new_store() as store, new_store() as other:
        for each in some_blanks:
            add_blank(store, each, Hand(NOW))
        for each in some_items:
            add_item(store, each, Hand(NOW))
        for each in some_parts:
            add_part(store, each, Hand(NOW))
        add_instrument(store, text or "none", text, Hand(moment, who=text, why=text))
        owner = add_place(store, Place(text or "none", {}), Hand(moment))
        times = floats([60.0 * row for row in range(len(readings))])
        history = AirHistory(moment, times, floats([row[0] for row in readings]), floats([row[1] for row in readings]))
        import_air(store, owner.id, history, Hand(moment))
        files = export_files(store)
        import_files(other, files, Hand(NOW))
        assert export_files(other) == files
        assert [(each.name, each.thickness, each.note) for each in blanks(other)] == [
            (each.name, each.thickness, each.note) for each in some_blanks
        ]
        assert [(each.kind, each.name, each.figures) for each in items(other)] == [
            (each.kind, each.name, each.figures) for each in some_items
        ]
        assert [dict(each.figures) for each in parts(other)] == [dict(each.figures) for each in some_parts]
        back = air_history(other, place(other, text or "none").id)
        assert back is not None
        assert back.origin == moment
        assert back.origin.utcoffset() == moment.utcoffset()
        assert list(back.temperature) == [row[0] for row in readings]


@given(st.dictionaries(WORDS, JSON, max_size=5))
def test_toml_text_reads_back_equal(values) -> None:
    assert tomllib.loads(table_text("[t]", values.items()))["t"] == values


def test_the_example_shop_is_small_enough_to_read(stocked: Store) -> None:
    assert len(list(csv.reader(io.StringIO(export_csv(stocked, "blank"))))) == SHOP.count("[[blank]]") + 1
