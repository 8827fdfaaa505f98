"""A day at the bench in few strokes: numbers of the list shown last, bare values, a reading, the day's sheets."""

import io
import re
import shlex
import shutil
from datetime import UTC, datetime
from pathlib import Path

import pytest

from gramil.acts.air import read_meter
from gramil.cli.last_list import beside
from gramil.cli.meant_name import meant_name
from gramil.cli.short_values import hours_in, with_values
from gramil.faults import MakersFault
from gramil.shop.instruments import instrument, instruments
from gramil.shop.operations_done import measurements, operations_done
from gramil.store.opening import open_store
from gramil.store.writing import Hand

from ..conftest import EXAMPLES
from ..in_process import gramil

AT = ("--at", "2026-01-19T09:00")
NAMES = ("tarn.toml", "fell.toml", "scree.toml", "mere.toml")
OF_A_BODY = ("mould-made", "side-form-made", "top-dish-made", "back-dish-made", "index-template-made")
"""Of what is open on the first day, what has a sheet on an instrument with a body; Scree is a neck alone."""
OF_A_BODY_BUILT_ON_ITS_NECK = "work-board-made"
"""The board that Mere is built on."""
OF_A_BOUND_BOARD = "wire-cut"
"""Its tangs are nipped back: the boards of Tarn and Scree."""
MOST = 250
"""Keystrokes of a busy day: what was asked for."""


@pytest.fixture(scope="module")
def filled(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A store with four instruments of which nothing is done."""
    folder = tmp_path_factory.mktemp("filled")
    for file in EXAMPLES.iterdir():
        shutil.copy(file, folder)
    for made in folder.glob("*.made.toml"):
        made.unlink()
    new = ("store", "new", "shop.gramil", "--shop", "shop.toml", *NAMES, "--at", "2026-01-18T09:00")
    assert gramil(folder, *new).returncode == 0
    return folder


@pytest.fixture
def bench(filled: Path, tmp_path: Path) -> Path:
    """A folder of its own in which nothing but the store lies."""
    shutil.copy(filled / "shop.gramil", tmp_path)
    return tmp_path


def told(bench: Path, line: str) -> str:
    words = shlex.split(line)[1:]
    done = gramil(bench, *words, *(() if "--at" in words else AT))
    assert done.returncode == 0, done.stderr
    return done.stdout


def numbered(page: str) -> dict[int, str]:
    """The names of open operations by their numbers, as the page shows them."""
    more = " ".join(re.findall(r"open as well:(.*(?:\n {10}.*)*)", page))
    rows = (*re.findall(r"OPEN (\d+)\s.*?\[(\w+)\]", page), *re.findall(r"(\d+) (\w+)", more))
    return {int(number): name for number, name in sorted(rows, key=lambda row: int(row[0]))}


def opened(said: str) -> dict[int, str]:
    """The names of the operations that done work has opened, by their numbers."""
    return {int(number): name for number, name in re.findall(r"OPEN (\d+)\s.*?\[(\w+)\]", said, re.DOTALL)}


def done_on(bench: Path, name: str) -> set[str]:
    with open_store(bench / "shop.gramil", to_read=True) as store:
        return {each.operation for each in operations_done(store, instrument(store, name).id)}


@pytest.mark.slow
def test_a_busy_day(bench: Path) -> None:
    """The air read, the list asked for three times, its sheets printed, eight operations noted with their hours, one of
    them with what was measured, a jig checked, wood promised, the weeks looked at: every key counted, the return too.
    """
    strokes = 0

    def typed(line: str) -> str:
        nonlocal strokes
        strokes += len(line) + 1
        return told(bench, line)

    assert "outside the band" in typed("gramil air shop 19 61")
    names = numbered(typed("gramil now"))
    assert list(names) == list(range(1, len(names) + 1))
    typed("gramil sheet today")
    sheets = [f"{name}-{sheet}" for name in ("Fell", "Mere", "Tarn") for sheet in OF_A_BODY]
    sheets += [f"{name}-{OF_A_BOUND_BOARD}" for name in ("Scree", "Tarn")]
    sheets += [f"Mere-{OF_A_BODY_BUILT_ON_ITS_NECK}"]
    assert sorted(each.stem for each in bench.glob("*.pdf")) == sorted(sheets)
    chosen = [str(number) for number, name in names.items() if name == "wood_chosen"]
    assert typed(f"gramil done {','.join(chosen)} 1.5h").count("done.\n") == 4
    names = numbered(typed("gramil now"))
    weighed = [str(number) for number, name in names.items() if name == "wood_weighed"][:3]
    typed(f"gramil done {','.join(weighed)} 1h")
    names = numbered(typed("gramil now --every"))
    number = next(number for number, name in names.items() if name == "thicknessed")
    assert "0.260 in" in typed(f"gramil done {number} 45min 0.26")  # the first is Fell, in inches
    assert "taper sled: 62.5 mm, measured" in typed("gramil store jig taper 62.5")
    assert "Promised" in typed("gramil match --reserve")
    assert "Hands: " in typed("gramil weeks")
    with open_store(bench / "shop.gramil", to_read=True) as store:
        noted = [each for one in instruments(store) for each in operations_done(store, one.id)]
    assert sorted(each.operation for each in noted) == ["thicknessed"] + 4 * ["wood_chosen"] + 3 * ["wood_weighed"]
    assert sorted(each.hours or 0.0 for each in noted) == [0.75, 1.0, 1.0, 1.0, 1.5, 1.5, 1.5, 1.5]
    assert strokes < MOST, strokes


def test_a_number_means_the_list_that_was_shown(bench: Path) -> None:
    assert "no list was shown" in gramil(bench, "done", "1", *AT).stderr
    names = numbered(told(bench, "gramil now"))
    missed = gramil(bench, "done", "999", *AT)
    assert missed.returncode == 2
    assert "there is no line 999" in missed.stderr
    told(bench, "gramil done 1")
    assert "done already" in gramil(bench, "done", "1", *AT).stderr
    assert names[2] not in done_on(bench, "Fell")
    told(bench, "gramil done 2")


def test_several_numbers_are_noted_together_or_not_at_all_and_one_undo_takes_them_back(bench: Path) -> None:
    names = numbered(told(bench, "gramil now"))
    one, two = [str(number) for number, name in names.items() if name == "wood_chosen"][:2]
    assert "values are of one operation" in gramil(bench, "done", f"{one},{two}", "0.26", *AT).stderr
    told(bench, f"gramil done {two} 1h")
    assert "done already" in gramil(bench, "done", f"{one},{two}", *AT).stderr
    with open_store(bench / "shop.gramil", to_read=True) as store:
        assert sum(len(operations_done(store, each.id)) for each in instruments(store)) == 1
    told(bench, "gramil store undo --yes")
    told(bench, "gramil now")
    told(bench, f"gramil done {one},{two} 1h")
    told(bench, "gramil store undo --yes")
    with open_store(bench / "shop.gramil", to_read=True) as store:
        assert sum(len(operations_done(store, each.id)) for each in instruments(store)) == 0


@pytest.mark.parametrize(
    ("written", "meant"),
    [
        ("taper", "taper sled"),
        ("Taper Sled", "taper sled"),
        ("sled", "sled"),
        ("back", "back 1"),
        ("nothing", "nothing"),
    ],
)
def test_a_name_is_found_by_the_beginning_of_one_of_its_words(written: str, meant: str) -> None:
    names = ("taper sled", "sled", "slotting rail", "back 1")
    assert meant_name(written, names) == meant
    with pytest.raises(MakersFault, match="may be taper sled or sled or slotting rail"):
        meant_name("sl", names)


def test_if_another_hand_has_changed_the_record_since_it_names_the_operation_and_asks(
    bench: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    told(bench, "gramil now")
    with open_store(bench / "shop.gramil") as store:
        read_meter(store, "shop", 19.0, 45.0, Hand(datetime(2026, 1, 19, 8, 50, tzinfo=UTC)))
    told(bench, "gramil air 19 44")  # the maker's own reading after it does not make the list good again
    monkeypatch.setattr("sys.stdin", io.StringIO("n\n"))
    asked = gramil(bench, "done", "2", *AT)
    assert asked.returncode == 130
    assert "The record has changed since that list. Is it this: " in asked.stdout + asked.stderr
    assert not done_on(bench, "Fell")
    told(bench, "gramil now")
    told(bench, "gramil done 2")


def test_the_makers_own_reading_jig_and_wood_leave_the_list_counting(bench: Path) -> None:
    """Nobody is asked about changes that are their own; where no list was shown, none is made."""
    told(bench, "gramil air 19 45")
    assert "no list was shown" in gramil(bench, "done", "1", *AT).stderr
    told(bench, "gramil now")
    for own in ("gramil air 19 46 --at 2026-01-19T09:20", "gramil jig taper 62.5", "gramil match --reserve"):
        told(bench, own)
    told(bench, "gramil done 2")
    assert done_on(bench, "Fell")


def test_what_the_work_has_opened_is_told_with_numbers_that_go_on(bench: Path) -> None:
    """Weighing comes after choosing, and laying to settle after weighing; what was listed before keeps its number."""
    names = numbered(told(bench, "gramil now"))
    number = next(number for number, name in names.items() if name == "wood_chosen")
    more = opened(told(bench, f"gramil done {number}"))
    assert list(more) == list(range(len(names) + 1, len(names) + len(more) + 1))
    assert "wood_weighed" in more.values()
    weighing = next(number for number, name in more.items() if name == "wood_weighed")
    again = opened(told(bench, f"gramil done {weighing}"))
    assert not set(again) & (set(names) | set(more))
    assert not set(again.values()) & {"wood_weighed"}
    assert {"wood_chosen", "wood_weighed"} <= done_on(bench, "Fell")
    shown = numbered(told(bench, "gramil now --every"))
    assert set(again.values()) <= set(shown.values())


def test_a_reading_without_a_place_is_of_the_one_where_gluing_is_done(bench: Path) -> None:
    """In the bundled shop that is the shop; a temperature may be below zero, with a place and without."""
    assert told(bench, "gramil air 19 61").startswith("shop: 19.0 C, 61 %")
    assert told(bench, "gramil air -4 61 --as-read --at 2026-01-19T09:10").startswith("shop: -4.0 C, 61 %")
    assert told(bench, "gramil air read 19 47 --at 2026-01-19T09:20").startswith("shop: 19.0 C, 47 %")
    assert told(bench, "gramil air hou 20 52").startswith("house: 20.0 C, 52 %")
    assert "Missing argument 'HUMIDITY'" in gramil(bench, "air", "house", "20").stderr


def test_the_word_store_may_be_left_out(bench: Path) -> None:
    told(bench, "gramil done wood_chosen Fell --store shop.gramil")
    assert "Taken back: done: wood_chosen, Fell." in told(bench, "gramil undo --yes")
    assert "shop.gramil is sound." in gramil(bench, "verify").stdout
    assert "No command 'verfy'" in gramil(bench, "verfy").stderr


def test_a_torn_list_is_no_list(bench: Path) -> None:
    beside(bench / "shop.gramil").write_text('{"change": 1, "li', encoding="utf-8")
    assert "no list was shown" in gramil(bench, "done", "1", *AT).stderr


def test_each_store_has_its_own_list() -> None:
    """A copy beside it may differ in its ending alone, and count other lines."""
    assert len({beside(Path(name)) for name in ("shop.gramil", "shop.monday", "shop", "other/shop.gramil")}) == 4


def test_which_store_is_meant_is_asked_if_there_are_two(bench: Path) -> None:
    shutil.copy(bench / "shop.gramil", bench / "other.gramil")
    missed = gramil(bench, "air", "shop", "19", "45", *AT)
    assert missed.returncode == 2
    assert "other.gramil, shop.gramil" in missed.stderr


@pytest.mark.parametrize(
    ("words", "hours", "rest"),
    [
        (("1.5h", "21.44"), 1.5, ("21.44",)),
        (("21.44", "1H30"), 1.5, ("21.44",)),
        (("45min",), 0.75, ()),
        (("21.44 mm",), None, ("21.44 mm",)),
        ((".5h",), 0.5, ()),
        (("1h75",), None, ("1h75",)),
    ],
)
def test_hours_among_values(words: tuple[str, ...], hours: float | None, rest: tuple[str, ...]) -> None:
    assert hours_in(words) == (hours, rest)


def test_hours_twice_and_a_value_too_many_are_refused() -> None:
    with pytest.raises(MakersFault, match="twice"):
        hours_in(("1h", "2h"))
    assert with_values({"a": "1"}, ("2",), ("a", "b"), "slotted") == {"a": "1", "b": "2"}
    with pytest.raises(MakersFault, match=r"3 is a value too many for slotted.*asks for b"):
        with_values({"a": "1"}, ("2", "3"), ("a", "b"), "slotted")


def test_nothing_measured_writes_nothing(bench: Path) -> None:
    missed = gramil(bench, "done", "measured", "Tarn", *AT)
    assert missed.returncode == 2
    assert "nothing was measured" in missed.stderr
    assert not done_on(bench, "Tarn")


def test_bare_values_go_to_the_boxes_of_the_sheet_where_the_work_itself_names_no_figure(bench: Path) -> None:
    """The mould's sheet has a box for its length and one for its width; a third value has none."""
    refused = gramil(bench, "done", "mould_made", "Tarn", "490", "390", "1", "--store", "shop.gramil", *AT)
    assert refused.returncode != 0
    assert "1 is a value too many" in refused.stderr
    told(bench, "gramil done mould_made Tarn 490 390 --store shop.gramil --as-read")
    with open_store(bench / "shop.gramil", to_read=True) as store:
        found = measurements(store, instrument(store, "Tarn").id)
    assert [(each.address, each.value) for each in found] == [("body_length", 490.0), ("body_width", 390.0)]


def test_a_name_beside_two_stores_is_told_to_name_one(bench: Path) -> None:
    """A copy was laid beside the store: the name of an instrument had been taken for a file that is not there."""
    shutil.copy(bench / "shop.gramil", bench / "monday.gramil")
    refused = gramil(bench, "done", "wire_cut", "tarn", *AT)
    assert refused.returncode == 2
    assert "This folder has monday.gramil, shop.gramil. Name one with --store" in refused.stderr
