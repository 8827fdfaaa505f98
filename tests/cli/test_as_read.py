"""Readings that cannot be meant, at the command line: nothing is written, exit 2, and one option takes them as read."""

from importlib.resources import files
from pathlib import Path

import pytest

from gramil.shop.instruments import instrument
from gramil.shop.operations_done import measurements
from gramil.store.opening import open_store

from ..in_process import gramil

EXAMPLES = files("gramil") / "data" / "examples"


@pytest.fixture
def bench(tmp_path: Path) -> Path:
    """Two instruments, one in inches and one in millimetres, and their shop; nothing is made yet."""
    for name in ("tarn.toml", "fell.toml", "shop.toml"):
        (tmp_path / name).write_bytes((EXAMPLES / name).read_bytes())
    text = (tmp_path / "shop.toml").read_text(encoding="utf-8")
    (tmp_path / "shop.toml").write_text(text[: text.index("[air]")], encoding="utf-8")
    return tmp_path


def stored(bench: Path) -> Path:
    """A store of the shop and two instruments."""
    made = gramil(bench, "store", "new", "shop.gramil", "--shop", "shop.toml", "tarn.toml", "fell.toml")
    assert made.returncode == 0, made.stderr
    return bench / "shop.gramil"


def measured(store: Path, name: str) -> dict[str, tuple[str, float]]:
    with open_store(store, to_read=True) as opened:
        owner = instrument(opened, name).id
        return {each.address: (each.written, each.value) for each in measurements(opened, owner)}


def test_a_bare_length_on_an_inch_instrument_is_inches(bench: Path) -> None:
    """A quarter of an inch is 6.35 mm, in a record of its own as in a store; an eighth more is 9.525."""
    whole = stored(bench).read_bytes()
    for value, words, length in (("0.25", "0.25 in", 6.35), ("1/4", "1/4 in", 6.35), ("6.35 mm", "6.35 mm", 6.35)):
        (bench / "fell.made.toml").unlink(missing_ok=True)
        done = gramil(bench, "done", "measured", "fell.toml", "--measured", f"board_thickness={value}")
        assert done.returncode == 0, done.stderr
        assert f'board_thickness = "{words}"' in (bench / "fell.made.toml").read_text(encoding="utf-8")
        (bench / "fell.made.toml").unlink()
        store = bench / "again.gramil"
        store.write_bytes(whole)
        done = gramil(
            bench, "done", "measured", "Fell", "--store", store.name, "--measured", f"board_thickness={value}"
        )
        assert done.returncode == 0, done.stderr
        written, read = measured(store, "Fell")["board_thickness"]
        assert (written, read) == (words, pytest.approx(length))
        store.unlink()


def test_a_bare_length_on_a_metric_instrument_is_millimetres(bench: Path) -> None:
    done = gramil(bench, "done", "measured", "tarn.toml", "--measured", "board_thickness=6.35")
    assert done.returncode == 0, done.stderr
    assert 'board_thickness = "6.35 mm"' in (bench / "tarn.made.toml").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("name", "value", "says"),
    [
        ("fell.toml", "board_thickness=6.35", "board_thickness: 6.35 in was read where 0.250 in is wanted, about 25.4"),
        (
            "tarn.toml",
            "board_thickness=0.25",
            "0.25 mm was read where 6.30 mm is wanted, about 25.2 times less: were inches",
        ),
        ("tarn.toml", "slot_depth_setting=1.5mm", "1.5mm was read where 2.96 mm is wanted, 1.46 mm less: was it this"),
        ("tarn.toml", "blank_width=99", "99 mm was read where"),
    ],
)
def test_what_cannot_be_meant_is_asked_about_and_nothing_is_written(
    bench: Path, name: str, value: str, says: str
) -> None:
    asked = gramil(bench, "done", "slotted", name, "--measured", value)
    assert asked.returncode == 2
    assert says in asked.stderr
    assert "--as-read" in asked.stderr
    assert "Traceback" not in asked.stderr
    record = bench / f"{Path(name).stem}.made.toml"
    assert not record.exists()
    taken = gramil(bench, "done", "slotted", name, "--measured", value, "--as-read")
    assert taken.returncode == 0, taken.stderr
    assert 'operation = "slotted"' in record.read_text(encoding="utf-8")


def test_every_doubtful_reading_is_asked_about_at_once_and_none_is_written(bench: Path) -> None:
    words = ("--measured", "blank_thickness=6.5", "--measured", "blank_width=200", "--measured", "slot_depth_setting=9")
    asked = gramil(bench, "done", "thicknessed", "tarn.toml", *words)
    assert asked.returncode == 2
    assert "blank_width" in asked.stderr
    assert "slot_depth_setting" in asked.stderr
    assert "blank_thickness" not in asked.stderr
    assert not (bench / "tarn.made.toml").exists()


def test_what_no_instrument_can_be_is_refused_even_as_read(bench: Path) -> None:
    asked = gramil(bench, "done", "measured", "tarn.toml", "--measured", "body_wall=0", "--as-read")
    assert asked.returncode == 2
    assert "cannot be worked out" in asked.stderr
    assert "Warning" not in asked.stderr
    assert not (bench / "tarn.made.toml").exists()


def test_a_store_is_guarded_alike(bench: Path) -> None:
    store = stored(bench)
    words = ("done", "slotted", "Fell", "--store", store.name, "--measured", "board_thickness=6.35")
    asked = gramil(bench, *words)
    assert asked.returncode == 2
    assert "were millimetres meant?" in asked.stderr
    assert not measured(store, "Fell")
    assert gramil(bench, *words, "--as-read").returncode == 0
    assert measured(store, "Fell")["board_thickness"] == ("6.35 in", pytest.approx(161.29))


def test_caliper_readings_of_the_other_unit_are_one_question(bench: Path) -> None:
    """630 (1 - 2^(-n/12)) mm in the file of a board in inches of another scale, and inches for one in millimetres."""
    (bench / "mm.csv").write_text(
        "fret,position\n" + "".join(f"{n},{650 * (1 - 2 ** (-n / 12)):.2f}\n" for n in range(15))
    )
    asked = gramil(bench, "readback", "slots", "fell.toml", "mm.csv")
    assert asked.returncode == 2
    assert asked.stderr.count("was read where") == 1
    assert "14 readings are off in one way" in asked.stderr
    assert "Likely cause" not in asked.stdout
    assert "Likely cause" in gramil(bench, "readback", "slots", "fell.toml", "mm.csv", "--as-read").stdout
    (bench / "in.csv").write_text("fret,position\n5,6.22\n12,12.40\n")
    asked = gramil(bench, "readback", "slots", "tarn.toml", "in.csv")
    assert asked.returncode == 2
    assert "were inches meant?" in asked.stderr


def test_a_scale_of_another_length_is_asked_about_with_its_cause(bench: Path) -> None:
    """A board slotted for 650 mm where 630 is drawn: 20 / 630 is 31.75 in a thousand. One question, and no fret is
    pulled for it."""
    rows = "".join(f"{n},{650 * (1 - 2 ** (-n / 12)):.3f}\n" for n in range(1, 20))
    (bench / "long.csv").write_text("fret,position\n" + rows)
    asked = gramil(bench, "readback", "slots", "tarn.toml", "long.csv")
    assert asked.returncode == 2
    assert "scale long by 31.7" in asked.stderr
    assert "cut to a scale of 650.0" in asked.stderr
    assert asked.stderr.count("was read where") == 1
    assert "Pull" not in asked.stderr


def test_set_up_readings_of_the_other_unit_are_one_question(bench: Path) -> None:
    (bench / "set-up.csv").write_text("string,what,value\n1,action,2.0\n6,action,2.4\n1,cents@12,2\n")
    asked = gramil(bench, "readback", "setup", "fell.toml", "set-up.csv")
    assert asked.returncode == 2
    assert "2 readings are off in one way" in asked.stderr
    assert "take" in gramil(bench, "readback", "setup", "fell.toml", "set-up.csv", "--as-read").stdout
    assert gramil(bench, "readback", "setup", "tarn.toml", "set-up.csv").returncode == 0


def test_a_record_of_what_is_made_is_questioned_when_a_store_takes_it(bench: Path) -> None:
    """In the record's own lines; nothing of the instrument is brought in before it is answered."""
    (bench / "tarn.made.toml").write_text(
        'gramil = 1\n[made]\nunits = "in"\n[[done]]\noperation = "thicknessed"\nmeasured = { blank_thickness = 6.5 }\n'
    )
    words = ("store", "new", "new.gramil", "--shop", "shop.toml", "tarn.toml")
    asked = gramil(bench, *words)
    assert asked.returncode == 2
    assert "tarn.made.toml:6: blank_thickness: 6.5 in was read where 6.50 mm is wanted" in asked.stderr
    assert not (bench / "new.gramil").exists()
    assert gramil(bench, *words, "--as-read").returncode == 0
    assert measured(bench / "new.gramil", "Tarn")["blank_thickness"][1] == pytest.approx(165.1)


def test_a_table_of_measurements_is_questioned_as_it_comes_in(bench: Path) -> None:
    store = stored(bench)
    head = "instrument,address,written,value,unit,at\n"
    rows = (
        f"Tarn,fret_position[{n}],x,{630 * 25.4 * (1 - 2 ** (-n / 12))},mm,2026-11-02T09:30:00+01:00\n"
        for n in (5, 7, 12)
    )
    (bench / "rows.csv").write_text(head + "".join(rows))
    words = ("store", "import", store.name, "rows.csv", "--table", "measurement")
    asked = gramil(bench, *words)
    assert asked.returncode == 2
    assert "3 readings are off in one way" in asked.stderr
    assert not measured(store, "Tarn")
    assert gramil(bench, *words, "--as-read").returncode == 0
    assert len(measured(store, "Tarn")) == 3


def test_a_jig_s_constant_is_held_against_what_it_was(bench: Path) -> None:
    store = stored(bench)
    asked = gramil(bench, "store", "jig", store.name, "taper sled", "2.457")
    assert asked.returncode == 2
    assert "2.457 mm was read where it was 62.40 mm so far" in asked.stderr
    assert "were inches meant?" in asked.stderr
    assert gramil(bench, "store", "jig", store.name, "taper sled", "62.5").returncode == 0
    asked = gramil(bench, "store", "jig", store.name, "taper sled", "64")
    assert asked.returncode == 2
    assert "1.50 mm more" in asked.stderr
    taken = gramil(bench, "store", "jig", store.name, "taper sled", "64", "--as-read")
    assert "64 mm, measured" in taken.stdout


def test_a_day_that_cannot_be_is_asked_about_in_a_file_as_well(bench: Path) -> None:
    assert gramil(bench, "done", "ledge_cut", "tarn.toml", "--at", "2026-02-10T09:00").returncode == 0
    record = bench / "tarn.made.toml"
    before = record.read_bytes()
    asked = gramil(bench, "done", "bound", "tarn.toml", "--at", "2026-02-09T09:00")
    assert asked.returncode == 2
    assert 'before the day when "Cut the ledge for the binding" was done, 2026-02-10' in asked.stderr
    assert record.read_bytes() == before
    taken = gramil(bench, "done", "bound", "tarn.toml", "--at", "2026-02-09T09:00", "--as-read")
    assert taken.returncode == 0, taken.stderr
