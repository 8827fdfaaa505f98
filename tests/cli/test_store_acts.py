"""What is put right, struck, moved, cut and counted together from the command line, each as one act."""

import shutil
from pathlib import Path

import pytest
from click.testing import CliRunner

from gramil.cli import gramil
from gramil.faults import MakersFault
from gramil.shop.instruments import instrument
from gramil.shop.kept_plans import kept_weeks
from gramil.shop.operations_done import measurements, operations_done
from gramil.shop.stock import blank_named, blanks, parts
from gramil.store.opening import open_store
from gramil.store.writing import Hand

from ..acts.laid import lay_out

AT = ("--at", "2026-02-02T09:00")


@pytest.fixture(scope="module")
def laid(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return lay_out(tmp_path_factory.mktemp("laid"))


@pytest.fixture
def shop(laid: Path, tmp_path: Path) -> Path:
    return Path(shutil.copyfile(laid, tmp_path / laid.name))


def run(*words: str | Path, refused: bool = False) -> str:
    result = CliRunner().invoke(gramil, [str(word) for word in words])
    assert (result.exit_code != 0) == refused, result.output
    fault = result.exception
    assert fault is None or isinstance(fault, SystemExit | MakersFault), result.output
    return result.output + (" ".join(map(str, fault.faults)) if isinstance(fault, MakersFault) else "")


def test_work_done_long_ago_is_struck_and_what_hangs_on_it_is_said(shop: Path) -> None:
    run("done", "wood_chosen", "tarn", "--store", shop, *AT)
    run("done", "wood_weighed", "Tarn", "--store", shop, *AT)
    assert "hanging on it: wood_weighed" in run("store", "not-done", shop, "tarn", "wood_chosen", *AT)
    with open_store(shop) as store:
        assert [each.operation for each in operations_done(store, instrument(store, "Tarn").id)][-1] == "wood_weighed"
    assert "Done are:" in run("store", "not-done", shop, "Tarn", "wood_chosen", *AT, refused=True)


def test_work_that_is_struck_says_what_wood_it_puts_back(shop: Path) -> None:
    used = run("done", "thicknessed", "Tarn", "--store", shop, "--left", "90 x 60 x 7", *AT)
    wood = used.partition("Used up: ")[2].partition(",")[0]
    struck = run("store", "not-done", shop, "Tarn", "thicknessed", *AT)
    assert f"Put back: {wood}, for the board." in struck
    assert f'gramil store strike "{wood}, left over"' in struck


def test_a_measurement_is_put_right_or_struck_and_a_wild_one_is_asked_about(shop: Path) -> None:
    wild = run("store", "measured", shop, "Tarn", "board_thickness", "63.5mm", *AT, refused=True)
    assert "--as-read" in wild
    assert "6.38mm now" in run("store", "measured", shop, "Tarn", "board_thickness", "6.38mm", *AT)
    with open_store(shop) as store:
        assert [each.value for each in measurements(store, instrument(store, "Tarn").id)] == [6.38]
    assert "struck" in run("store", "measured", shop, "Tarn", "board_thickness", "--strike", *AT)
    with open_store(shop) as store:
        assert measurements(store, instrument(store, "Tarn").id) == []


def test_a_reading_of_air_is_struck_once(shop: Path) -> None:
    run("store", "place", shop, "loft", *AT)
    with open_store(shop) as store:
        from gramil.acts.air import read_meter
        from gramil.cli.store_options import moment_of

        read_meter(store, "loft", 19.0, 44.0, Hand(moment_of("2026-02-01T08:00")))
    assert "41 % 18 C now" in run("store", "reading", shop, "loft", "2026-02-01T08:00", "--right", "41", "18", *AT)
    assert "struck" in run("store", "reading", shop, "loft", "2026-02-01T08:00", *AT)
    assert "no reading of that moment" in run("store", "reading", shop, "loft", "2026-02-01T08:00", *AT, refused=True)


def test_an_instrument_marked_done_asks_for_no_wood(shop: Path) -> None:
    run("store", "mark", shop, "Fell", "done", *AT)
    assert "Fell" not in run("match", "--store", shop, *AT)
    run("store", "mark", shop, "fell", "open", *AT)
    assert "no such instrument: scree" in run("store", "mark", shop, "scree", "done", *AT, refused=True)


def test_wood_is_laid_cut_and_counted_together(shop: Path) -> None:
    run("store", "lay", shop, "plank", "attic", *AT)
    run("store", "split", shop, "plank", "short=400 x 90 x 30", "left over=490 x 90 x 30", *AT)
    with open_store(shop) as store:
        names = [each.name for each in blanks(store)]
        assert "plank" not in names
        short = blank_named(store, "short")
        assert (short.wood, short.length, short.place is not None) == ("walnut", 400.0, True)
    too_much = run("store", "split", shop, "short", "one=400 x 90 x 31", *AT, refused=True)
    assert "more than the piece" in too_much
    assert "not alike" in run("store", "join", shop, "short", "left over", *AT, refused=True)
    run("store", "split", shop, "short", "half=200 x 90 x 30", "other half=200 x 90 x 30", *AT)
    run("store", "lay", shop, "other half", "shop", *AT)
    apart = run("store", "join", shop, "half", "other half", *AT, refused=True)
    assert "half and other half lie in different places" in apart
    run("store", "lay", shop, "other half", "attic", *AT)
    assert "half: 2 now" in run("store", "join", shop, "half", "other half", *AT)


@pytest.mark.parametrize("sizes", ["901 x 10 x 10", "10 x 91 x 10", "10 x 10 x 91", "10 x 40 x 31", "31 x 10 x 95"])
def test_no_part_is_longer_or_wider_than_what_it_is_cut_from(shop: Path, sizes: str) -> None:
    """Of 900 x 90 x 30, however little wood is in the part; on its edge it may stand."""
    told = run("store", "split", shop, "plank", f"part={sizes}", *AT, refused=True)
    assert "part does not lie within plank. That is 900 x 90 x 30 mm" in told


def test_a_part_may_be_turned_on_its_edge(shop: Path) -> None:
    assert "is cut into" in run("store", "split", shop, "plank", "part=900 x 30 x 90", *AT)


def test_what_is_promised_is_not_cut(shop: Path) -> None:
    with open_store(shop) as store:
        from gramil.shop.stock import free_counts

        free = free_counts(store)
        taken = next(each.name for each in blanks(store) if free[each.id] == 0)
    assert "is free" in run("store", "split", shop, taken, "a=10 x 10 x 1", *AT, refused=True)


def test_a_part_made_ahead_and_a_place_are_written_down(shop: Path) -> None:
    run("store", "part", shop, "sides of May", "bent sides", "length=760mm", "--wood", "walnut", *AT)
    with open_store(shop) as store:
        assert [each.name for each in parts(store)] == ["sides of May"]
    assert "no longer" in run("store", "strike", shop, "sides of May", *AT)
    with open_store(shop) as store:
        assert parts(store) == []
    assert "there is no wood" in run("store", "strike", shop, "sides of May", *AT, refused=True)
    assert "serves no need" in run("store", "part", shop, "thing", "bent wings", *AT, refused=True)
    assert "room 54.5" in run("store", "place", shop, "shop", "--room", "54.5", *AT)
    assert "room" in run("store", "place", shop, "shop", "--room", "-1", *AT, refused=True)


@pytest.mark.parametrize(
    "words",
    [
        ("done", "wood_chosen", "Tarn", "--store", "{shop}"),
        ("air", "attic", "19", "45", "--store", "{shop}"),
        ("store", "lay", "{shop}", "plank", "attic"),
        ("store", "jig", "{shop}", "taper sled", "62.4 mm"),
        ("store", "not-done", "{shop}", "Tarn", "index_template_made"),
    ],
)
def test_a_year_ahead_is_asked_about(shop: Path, words: tuple[str, ...]) -> None:
    """By whatever command something is noted whose moment counts later."""
    asked = (*(str(shop) if each == "{shop}" else each for each in words), "--at", "2199-02-02T09:00")
    assert "days ahead" in run(*asked, refused=True)
    run(*asked, "--as-read")


def test_a_day_that_cannot_be_is_asked_about(shop: Path) -> None:
    """Work before what it follows, or after what follows it, and what is taken back before it was noted."""
    run("done", "ledge_cut", "Tarn", "--store", shop, "--at", "2026-02-10T09:00")
    glued = ("done", "bound", "Tarn", "--store", shop)
    told = run(*glued, "--at", "2026-02-09T17:00", refused=True)
    assert 'before the day when "Cut the ledge for the binding" was done, 2026-02-10' in told
    both = run(*glued, "--measured", "blank_width=99", "--at", "2026-02-09T17:00", refused=True)
    assert "before the day" in both, "one answer takes both questions: both are asked"
    assert "was read where" in both
    run(*glued, "--at", "2026-02-10T17:00")
    assert "was over, 2026-02-11" in run(
        "done", "markers_set", "Tarn", "--store", shop, "--at", "2026-02-10T18:00", refused=True
    )
    assert "after the day when" in run(
        "done", "tapered", "Tarn", "--store", shop, "--at", "2026-02-12T09:00", refused=True
    )
    for words in (("not-done", shop, "Tarn", "bound"), ("anew", shop, "Tarn", "board")):
        early = ("store", *words, "--at", "2026-02-09T09:00")
        assert "is before this was noted, 2026-02-10" in run(*early, refused=True)
    with open_store(shop) as store:
        assert {"ledge_cut", "bound"} <= {
            each.operation for each in operations_done(store, instrument(store, "Tarn").id)
        }
    run("store", "not-done", shop, "Tarn", "bound", "--at", "2026-02-09T09:00", "--as-read")
    run(*glued, "--at", "2026-02-09T17:00", "--as-read")


def test_a_correction_before_what_it_corrects_is_asked_about(shop: Path) -> None:
    thick = ("--measured", "board_thickness=6.2mm", "--store", shop)
    run("done", "thicknessed", "Tarn", *thick, "--at", "2026-02-10T09:00")
    run("air", "shop", "18", "44", "--store", shop, "--at", "2026-02-10T08:00")
    for words in (
        ("measured", shop, "Tarn", "board_thickness", "6.25mm"),
        ("measured", shop, "Tarn", "board_thickness", "--strike"),
        ("reading", shop, "shop", "2026-02-10T08:00"),
    ):
        early = ("store", *words, "--at", "2026-02-09T09:00")
        assert "is before this was noted, 2026-02-10" in run(*early, refused=True)
        run(*early, "--as-read")


def test_a_restore_says_what_it_would_lose(shop: Path) -> None:
    copy = shop.with_name("copy.gramil")
    run("store", "backup", shop, copy)
    run("done", "wood_chosen", "Tarn", "--store", shop, *AT)
    told = run("store", "restore", shop, copy, *AT, refused=True)
    assert "would be gone: done: wood_chosen, Tarn" in told
    run("store", "restore", shop, copy, "--yes", *AT)
    with open_store(shop) as store:
        done = [each.operation for each in operations_done(store, instrument(store, "Tarn").id)]
        assert "wood_chosen" not in done


def test_a_week_s_plan_is_kept_and_held_against_what_was_done(shop: Path) -> None:
    told = run("weeks", "Tarn", "--store", shop, "--keep", "--outlook", "+1 45 %", "--at", "2026-02-02T08:00")
    assert "week of 2026-02-02 is kept" in told
    with open_store(shop) as store:
        (week,) = kept_weeks(store)
        whose, operation = week.planned[0]
    run("done", operation, whose, "--store", shop, "--at", "2026-02-04T10:00")
    told = run("weeks", "Tarn", "--store", shop, "--at", "2026-02-09T08:00")
    assert f"Week of 2026-02-02: 1 of {len(week.planned)} planned operations" in told
    run("store", "undo", shop, "--yes")
    assert f": 0 of {len(week.planned)} planned" in run("weeks", "Tarn", "--store", shop, "--at", "2026-02-09T08:00")


def test_the_only_store_here_need_not_be_named(shop: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(shop.parent)
    assert "lies in the attic" in run("store", "lay", "plank", "attic", *AT)
    assert "Tarn is waiting" in run("store", "mark", "Tarn", "waiting", *AT)
    assert "is the decimal point" in run("store", "jig", "taper sled", "628 mm", *AT, refused=True)
    shutil.copyfile(shop, "other.gramil")
    told = run("store", "lay", "plank", "attic", *AT, refused=True)
    assert "no store is named" in told
    assert "before the rest" in told
    assert "lies in the attic" in run("store", "lay", shop, "plank", "attic", *AT)


def test_a_bare_value_below_zero_is_no_option(shop: Path) -> None:
    told = run("done", "nut_end_cut", "Tarn", "--store", shop, ".3h", "-0.02", *AT)
    assert "-0.02 mm, wanted 0.00 mm" in told.replace("\N{NO-BREAK SPACE}", " ")
    assert "No such option" in run("done", "nut_end_cut", "Tarn", "--stroe", shop, *AT, refused=True)
