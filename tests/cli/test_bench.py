"""`now`, `weeks`, `match`, `done`, `cost` and `store` as the maker runs them, on the bundled bench."""

import re
import shutil
from importlib.resources import as_file, files
from pathlib import Path

import pytest

from .. import in_process

AT = "2026-01-19T09:00"


@pytest.fixture
def bench(tmp_path: Path) -> Path:
    """The bundled instruments, their records and the shop, copied."""
    with as_file(files("gramil") / "data" / "examples") as examples:
        for file in examples.iterdir():
            if file.is_file():
                shutil.copy(file, tmp_path)
        (tmp_path / "alone").mkdir()
        for name in ("tarn.toml", "scree.toml"):
            shutil.copy(examples / name, tmp_path / "alone")
    return tmp_path


def gramil(bench: Path, *words: str, status: int = 0) -> str:
    """What a command prints; the status is checked."""
    done = in_process.gramil(bench, *words)
    assert done.returncode == status, done.stderr + done.stdout
    return done.stdout if not status else done.stderr


def test_now_of_three_instruments(bench: Path) -> None:
    page = gramil(bench, "now", "tarn.toml", "fell.toml", "scree.toml", "--shop", "shop.toml", "--at", AT)
    for words in ("TARN", "FELL", "SCREE", "OPEN", "20 of"):
        assert words in page


MERE_SO_FAR = ("wood_chosen", "wood_weighed", "back_jointed", "back_thicknessed", "sides_thicknessed")


def test_a_mould_that_serves_any_body_is_one_instrument_s_at_a_time(bench: Path) -> None:
    rows = "".join(f'[[done]]\noperation = "{each}"\n' for each in (*MERE_SO_FAR, "side_form_made"))
    (bench / "mere.made.toml").write_text(f"gramil = 1\n{rows}")
    with (bench / "shop.toml").open("a") as shop:
        shop.write('\n[[jig]]\nname = "adjustable mould"\nfor = "mould"\n')
    page = gramil(bench, "now", "tarn.toml", "mere.toml", "--shop", "shop.toml", "--at", AT)
    assert "the mould holds Tarn until this is done: glue the back to the rim" in page


def test_every_operation_is_listed_when_asked_for(bench: Path) -> None:
    page = gramil(bench, "now", "fell.toml", "--shop", "shop.toml", "--at", AT, "--every", "--cautions")
    assert "Second set-up" in page
    assert "CAUTION" in page


def test_without_a_shop_and_without_readings(bench: Path) -> None:
    assert "No readings of air" in gramil(bench, "now", "alone/scree.toml", "--at", AT)


def test_now_wants_files_or_a_store(bench: Path) -> None:
    assert "name the instruments' files" in gramil(bench, "now", status=2)
    assert "is not a moment" in gramil(bench, "now", "tarn.toml", "--at", "soon", status=2)


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("now", "tarn.toml", "./tarn.toml", "--at", AT), "two of the files are of an instrument called Tarn"),
        (("match", "tarn.toml", "tarn.toml", "--at", AT), "two of the files are of an instrument called Tarn"),
        (("match", "", "--at", AT), "cannot be read"),
        (("now", "tarn.toml", "--at", "0001-01-01"), "1900 and 2199"),
        (("now", "tarn.toml", "--at", AT, "--outlook", "+99999999999 44 %"), "is not an outlook"),
        (("now", "tarn.toml", "--shop", "shop.toml", "--at", AT, "--place", "attic"), 'no place called "attic"'),
        (("now", "alone/tarn.toml", "--at", AT, "--outlook", "thu 42 %"), "The shop has no [[place]]"),
        (("weeks", "tarn.toml", "--at", AT, "--calendar", "tarn.toml"), "does not end in .ics"),
        (("cost", "tarn.toml", "--shop", "shop.toml", "--store", "s.gramil", "--rate", "1"), "leave --shop out"),
        (("check", "Tarn", "--shop", "shop.toml", "--store", "s.gramil"), "leave --shop out"),
        (("match", "--shop", "shop.toml", "--store", "s.gramil"), "leave --shop out"),
        (("done", "slotted", "fell.toml", "--measured", "a=1", "--measured", "a=2"), "a is measured twice"),
        (("store", "new", "nowhere/s.gramil"), "there is no folder nowhere"),
        (("store", "restore", ".", "s.gramil"), "is a folder"),
        (("pack", "tarn.toml", "--out", "tarn.toml"), "is a file"),
        (("pack", "tarn.toml", "--out", "o", "--printer-scale", "0,1"), "no printer's"),
        (("book", "tarn.toml", "--out", "nowhere/x.pdf"), "there is no folder nowhere. Name another place"),
    ],
)
def test_bad_luck_is_told_in_words(bench: Path, words: tuple[str, ...], says: str) -> None:
    before = (bench / "tarn.toml").read_bytes()
    told = gramil(bench, *words, status=2)
    assert says in told.replace("\n", " ")
    assert "Traceback" not in told
    assert (bench / "tarn.toml").read_bytes() == before


def test_a_store_is_asked_for_what_it_has(bench: Path) -> None:
    gramil(bench, "store", "new", "s.gramil", "--shop", "shop.toml")
    (bench / "none.toml").write_text("\n")
    for words, says in (
        (("match", "Nobody", "--store", "s.gramil"), "no such instrument: Nobody"),
        (("store", "import", "s.gramil", "house-air-invented.csv", "--table", "airs"), "the store has"),
        (("store", "import", "s.gramil", "house-air-invented.csv"), "needs --place or --table"),
        (("store", "export", "s.gramil", "out", "--table", "airs"), "the store has"),
        (("store", "operations", "s.gramil", "none.toml"), "none.toml: is empty"),
    ):
        assert says.lower() in gramil(bench, *words, status=2).lower(), words


def test_weeks_are_listed_drawn_and_put_in_a_calendar(bench: Path) -> None:
    words = ("tarn.toml", "fell.toml", "scree.toml", "--shop", "shop.toml", "--at", AT, "--outlook", "wed 44 %")
    page = gramil(bench, "weeks", *words, "--calendar", "weeks.ics", "--print", "weeks.pdf")
    assert "Monday 19 January" in page
    assert "hours of hands are left" in page
    calendar = (bench / "weeks.ics").read_bytes()
    assert calendar.startswith(b"BEGIN:VCALENDAR\r\n")
    assert calendar.count(b"BEGIN:VEVENT") == calendar.count(b"END:VEVENT") > 20
    assert (bench / "weeks.pdf").read_bytes().startswith(b"%PDF")


def test_what_is_done_is_noted_and_read_back(bench: Path) -> None:
    told = gramil(
        bench,
        "done",
        "tail_end_cut",
        "tarn.toml",
        "--shop",
        "shop.toml",
        "--measured",
        "board_thickness=6.38mm",
        "--at",
        AT,
    )
    # the blank was measured 6.55, and 0.20 of it goes in levelling: this board is 6.35 thick, not the 6.30 first drawn
    assert "6.38 mm, wanted 6.35 mm: +0.03 mm" in told
    assert "as drawn" in told
    assert (bench / "tarn.made.toml").read_text().startswith("# Invented")  # what was written stays
    dims = gramil(bench, "dims", "tarn.toml", "--shop", "shop.toml", "--made", "--part", "slots")
    assert "as drawn" in dims
    assert "as drawn" not in gramil(bench, "dims", "tarn.toml", "--shop", "shop.toml", "--part", "slots")
    page = gramil(bench, "now", "tarn.toml", "--shop", "shop.toml", "--at", "2026-01-19T11:00")
    assert "tail_end_cut" not in page
    assert "closed  Taper the board's edges" in page  # what it opened waits for its wood alone
    assert "persimmon 2 has not settled" in page
    gramil(bench, "check", "tarn.toml", "--shop", "shop.toml", "--made")


def test_what_cannot_be_noted_is_refused_and_nothing_written(bench: Path) -> None:
    before = (bench / "tarn.made.toml").read_text()
    assert "done already" in gramil(bench, "done", "slotted", "tarn.toml", status=2)
    assert "Nearest: arched" in gramil(bench, "done", "arhced", "tarn.toml", status=2)
    assert "no such figure" in gramil(bench, "done", "arched", "tarn.toml", "--measured", "nothing=3", status=2)
    assert "kept in a --store" in gramil(bench, "done", "arched", "tarn.toml", "--hours", "2", status=2)
    assert "not an address" in gramil(bench, "done", "arched", "tarn.toml", "--measured", "3", status=2)
    assert (bench / "tarn.made.toml").read_text() == before


def test_a_first_record_is_begun(bench: Path) -> None:
    (bench / "tarn.made.toml").unlink()
    gramil(bench, "done", "wood_chosen", "tarn.toml", "--note", 'bright "day"', "--at", AT)
    assert 'note = "bright \\"day\\""' in (bench / "tarn.made.toml").read_text()
    gramil(bench, "done", "wood_weighed", "tarn.toml", "--at", AT)
    assert (bench / "tarn.made.toml").read_text().count("[[done]]") == 2


def test_operations_in_one_line_are_kept(bench: Path) -> None:
    (bench / "tarn.made.toml").write_text('gramil = 1\ndone = [{ operation = "wood_chosen" }]\n')
    gramil(bench, "done", "wood_weighed", "tarn.toml", "--at", AT)
    assert "2 of" in gramil(bench, "now", "tarn.toml", "--at", "2026-01-20T09:00")


def test_pieces_are_matched_from_files(bench: Path) -> None:
    page = gramil(bench, "match", "tarn.toml", "fell.toml", "scree.toml", "--shop", "shop.toml", "--at", AT)
    assert re.search(r"half of the back +back 1 \(black walnut, kept for it\)", page)
    assert "To buy" in page
    assert "neck blank" not in page  # the neck is sawn out of it
    made = bench / "tarn.made.toml"
    made.write_text(made.read_text().replace('[[done]]\noperation = "neck_sawn"\ndate = 2025-12-17\n', ""))
    page = gramil(bench, "match", "tarn.toml", "--shop", "shop.toml", "--at", AT)
    assert re.search(r"neck, heel and all +neck blank \(red maple, kept for it\)", page)
    assert "promised in a --store" in gramil(bench, "match", "tarn.toml", "--reserve", status=2)


def test_cost_and_quote(bench: Path) -> None:
    words = ("cost", "tarn.toml", "--shop", "shop.toml", "--rate", "40", "--material", "tuners=85", "--print", "q.pdf")
    page = gramil(bench, *words)
    assert "85.00" in page
    assert (bench / "q.pdf").read_bytes().startswith(b"%PDF")
    assert "is not a material" in gramil(bench, "cost", "tarn.toml", "--rate", "40", "--material", "tuners", status=2)


FILES_OF_STORE = ("--shop", "shop.toml", "tarn.toml", "fell.toml", "scree.toml")


@pytest.fixture(scope="module")
def kept() -> dict[str, bytes]:
    """The store of the bundled bench once it was made."""
    return {}


@pytest.fixture
def store(bench: Path, kept: dict[str, bytes]) -> Path:
    """A store of the bundled bench: made for the first test that wants it, a copy of that for the others."""
    path = bench / "s.gramil"
    if kept:
        path.write_bytes(kept["store"])
    else:
        gramil(bench, "store", "new", path.name, *FILES_OF_STORE, "--at", AT)
        assert [each.name for each in bench.glob("s.gramil-*")] == []
        kept["store"] = path.read_bytes()
    return bench


def test_the_store_says_of_now_what_the_files_say(store: Path) -> None:
    files = gramil(store, "now", "tarn.toml", "fell.toml", "scree.toml", "--shop", "shop.toml", "--at", AT, "--every")
    kept = gramil(store, "now", "--store", "s.gramil", "--at", AT, "--every")

    def blocks(page: str) -> list[list[str]]:
        unnumbered = re.sub(r"OPEN [\d ]{2} ", "OPEN    ", page)  # numbers are of a list that a store remembers
        return sorted(block.splitlines() for block in unnumbered.split("\n\n"))

    assert blocks(files) == blocks(kept)


def noted_of_tarn(bench: Path) -> int:
    """How many operations Tarn's record has as done, counted in the file."""
    return (bench / "tarn.made.toml").read_text().count("[[done]]")


OWN = '[operation.head_inlaid]\nwhat = "Let the inlay in"\npart = "neck"\nafter = ["wood_weighed"]\nhands = 240\n'


def counted(page: str) -> tuple[int, int]:
    """How many operations are done, and of how many."""
    found = re.search(r"(\d+) of (\d+) done", page)
    assert found is not None
    return int(found[1]), int(found[2])


def test_own_operations_in_the_store(store: Path) -> None:
    """A list kept in the store is what now, weeks, done and cost go by; its faults have the file's name and line."""
    (store / "own.toml").write_text(OWN)
    (store / "wrong.toml").write_text(OWN + '[operation.slotted]\nafter = ["fretd"]\n')
    kept = ("store", "operations", "s.gramil")
    assert "wrong.toml:7: operation.slotted.after" in gramil(store, *kept, "wrong.toml", status=2)
    assert "no operations of its own" in gramil(store, *kept, status=2)
    done, whole = counted(gramil(store, "now", "Tarn", "--store", "s.gramil", "--at", AT))
    before = gramil(store, "cost", "Tarn", "--store", "s.gramil", "--rate", "40")
    assert "operations of Tarn" in gramil(store, *kept, "own.toml", "--for", "Tarn", "--at", AT)
    assert gramil(store, *kept, "--for", "Tarn").strip() == OWN.strip()
    page = gramil(store, "now", "--store", "s.gramil", "--at", AT, "--every")
    assert page.count("head_inlaid") == 1  # Tarn's alone
    assert f"{done} of {whole + 1} done" in page
    assert "Let the inlay in" in gramil(store, "weeks", "Tarn", "--store", "s.gramil", "--at", AT, "--weeks", "12")
    assert gramil(store, "cost", "Tarn", "--store", "s.gramil", "--rate", "40") != before
    assert "Let the inlay in: done" in gramil(store, "done", "head_inlaid", "Tarn", "--store", "s.gramil", "--at", AT)
    later = ("now", "Tarn", "--store", "s.gramil", "--at", "2026-01-19T14:00")
    assert counted(gramil(store, *later)) == (done + 1, whole + 1)
    assert "Taken away" in gramil(store, *kept, "--for", "Tarn", "--remove", "--at", AT)
    assert counted(gramil(store, *later)) == (done, whole)


def test_a_list_beside_a_description_goes_with_it_into_the_store(bench: Path) -> None:
    (bench / "tarn.operations.toml").write_text(OWN)
    (bench / "shop.operations.toml").write_text("[operation.slotted]\nhands = 33\n")
    made = gramil(bench, "store", "new", "o.gramil", "--shop", "shop.toml", "tarn.toml", "--at", AT)
    assert "kept as the operations of the shop" in made
    assert "kept as the operations of Tarn" in made
    gramil(bench, "store", "export", "o.gramil", "files", "--work")
    assert (bench / "files" / "tarn.operations.toml").read_text() == OWN
    assert "is a list of operations" in gramil(bench, "store", "import", "o.gramil", "tarn.operations.toml", status=2)


def test_a_jig_that_changed_makes_its_sheet_stale(store: Path) -> None:
    assert "taper" in gramil(store, "store", "sheets", "s.gramil", "Tarn", "--at", AT)
    assert "stale" not in gramil(store, "now", "Tarn", "--store", "s.gramil", "--at", AT)
    assert "Stale: sheet taper" in gramil(store, "store", "jig", "s.gramil", "taper sled", "62.5 mm", "--at", AT)
    assert "stale sheet taper" in gramil(store, "now", "Tarn", "--store", "s.gramil", "--at", AT)
    gramil(store, "store", "undo", "s.gramil", "--yes")
    assert "stale" not in gramil(store, "now", "Tarn", "--store", "s.gramil", "--at", AT)


def test_done_in_the_store_and_undone(store: Path) -> None:
    before = noted_of_tarn(store)
    words = (
        "done",
        "tail_end_cut",
        "Tarn",
        "--store",
        "s.gramil",
        "--measured",
        "board_thickness=6.38mm",
        "--hours",
        "0.5",
    )
    assert "+0.03 mm" in gramil(store, *words, "--at", AT)
    assert "done already" in gramil(store, *words, "--at", AT, status=2)
    later = ("now", "Tarn", "--store", "s.gramil", "--at", "2026-01-19T10:00")
    assert counted(gramil(store, *later))[0] == before + 1
    assert f"1 of {before + 1} operations" in gramil(store, "cost", "Tarn", "--store", "s.gramil", "--rate", "40")
    assert "done: tail_end_cut" in gramil(store, "store", "undo", "s.gramil", "--yes", "--at", AT)
    assert counted(gramil(store, *later))[0] == before


def test_pieces_are_promised_once(store: Path) -> None:
    for name in ("tarn", "fell", "scree"):
        (store / f"{name}.made.toml").unlink()
    gramil(store, "store", "new", "t.gramil", "--shop", "shop.toml", "tarn.toml", "fell.toml", "scree.toml", "--at", AT)
    page = gramil(store, "match", "--store", "t.gramil", "--reserve", "--at", AT)
    assert "Promised: hornbeam to Fell." in page
    again = gramil(store, "match", "--store", "t.gramil", "--reserve", "--at", AT)
    assert "hornbeam (hornbeam, kept for it)" in again
    assert "Promised: hornbeam" not in again
    words = ("done", "thicknessed", "Fell", "--store", "t.gramil", "--photo", "board.jpg", "--at", AT)
    assert "Used up: hornbeam, for the board." in gramil(store, *words)
    assert (
        "board.jpg" in gramil(store, "store", "export", "t.gramil", "out") + (store / "out" / "store.toml").read_text()
    )
    assert "board: hornbeam" in gramil(store, "cost", "Fell", "--store", "t.gramil", "--rate", "40")


def test_copies_and_files_of_the_store(store: Path) -> None:
    assert "is sound" in gramil(store, "store", "verify", "s.gramil")
    gramil(store, "store", "backup", "s.gramil", "copy.gramil")
    gramil(store, "done", "tail_end_cut", "Tarn", "--store", "s.gramil", "--at", AT)
    assert "is kept in" in gramil(store, "store", "restore", "s.gramil", "copy.gramil", "--yes")
    assert counted(gramil(store, "now", "Tarn", "--store", "s.gramil", "--at", AT))[0] == noted_of_tarn(store)
    gramil(store, "store", "export", "s.gramil", "out")
    gramil(store, "store", "new", "again.gramil")
    gramil(store, "store", "import", "again.gramil", "out/store.toml", "out/air.csv")
    gramil(store, "store", "export", "again.gramil", "twice")
    for name in ("store.toml", "air.csv"):
        assert (store / "out" / name).read_bytes() == (store / "twice" / name).read_bytes()
    gramil(store, "store", "export", "s.gramil", "work", "--work")
    assert (store / "work" / "tarn.made.toml").exists()
    gramil(store, "store", "export", "s.gramil", "tables", "--table", "blank")
    assert (store / "tables" / "blank.csv").read_text().startswith("name,")
    assert "no table" in gramil(store, "store", "export", "s.gramil", "tables", "--table", "nothing", status=2)


def test_a_store_that_cannot_be_filled_is_not_left_behind(bench: Path) -> None:
    (bench / "bad.toml").write_text("gramil = 1\n")
    gramil(bench, "store", "new", "bad.gramil", "bad.toml", status=2)
    assert not (bench / "bad.gramil").exists()


def test_readings_are_brought_in_once(store: Path) -> None:
    words = ("store", "import", "s.gramil", "shop-air-invented.csv", "--place", "shop")
    assert "0 readings of the shop" in gramil(store, *words)


def test_readings_that_run_newest_first_are_turned_round(store: Path) -> None:
    rows = [
        f"2026-11-27 {hour:02d}:{minute:02d},20.0,{40 + 0.1 * hour:.1f}\n" for hour in range(24) for minute in (0, 30)
    ]
    (store / "back.csv").write_text("time,temperature C,rh %\n" + "".join(reversed(rows)), encoding="utf-8")
    done = gramil(store, "store", "import", "s.gramil", "back.csv", "--place", "house")
    assert "48 readings of the house" in done
    assert "newest first: it was turned round" in done
    gramil(store, "store", "export", "s.gramil", "files", "--work")
    logs = "".join(path.read_text(encoding="utf-8") for path in sorted((store / "files").glob("air-*.csv")))
    assert re.findall(r"2026-11-27T\d\d:\d\d:00,20.0,[\d.]+", logs) == [
        row.strip().replace(" ", "T").replace(",20.0", ":00,20.0") for row in rows
    ]


def test_the_sheet_of_one_operation(store: Path) -> None:
    assert "Cut the slots" in gramil(store, "sheet", "slotted", "tarn.toml", "--shop", "shop.toml", "--out", "slot.pdf")
    assert (store / "slot.pdf").read_bytes().startswith(b"%PDF")
    assert "given out, as it is printed" in gramil(
        store, "sheet", "tapered", "Tarn", "--store", "s.gramil", "--out", "t.pdf"
    )
    gramil(store, "store", "jig", "s.gramil", "taper sled", "62.5 mm", "--at", AT)
    assert "stale sheet taper" in gramil(store, "now", "Tarn", "--store", "s.gramil", "--at", AT)
    assert "nothing to be minded" in gramil(store, "sheet", "wood_weighed", "tarn.toml", "--out", "t.pdf", status=2)
    assert "nearest is slotted" in gramil(store, "sheet", "sloted", "tarn.toml", "--out", "t.pdf", status=2)
    assert "does not need it" in gramil(store, "sheet", "ledge_cut", "fell.toml", "--out", "t.pdf", status=2)


def test_a_sheet_keeps_its_target_whatever_was_read_and_says_what_was_made(store: Path) -> None:
    """Tarn's record has the slots' depth as 3.05; the sheet as drawn says what it should be."""
    slotted = "sheet", "slotted"
    for where in (("tarn.toml", "--shop", "shop.toml", "--made"), ("Tarn", "--store", "s.gramil")):
        line = gramil(store, *slotted, *where, "--out", "slot.pdf").splitlines()[1]
        said = re.fullmatch(r".*: ([\d.]+) mm, made 3\.05 mm, ([+-][\d.]+) mm", line)
        assert said is not None, line
        assert float(said[1]) + float(said[2]) == pytest.approx(3.05)
        assert f"slot_depth_setting = {said[1]} mm" in gramil(store, "why", "slot_depth_setting", "tarn.toml")
    assert "made" not in gramil(store, *slotted, "tarn.toml", "--shop", "shop.toml", "--out", "slot.pdf")
