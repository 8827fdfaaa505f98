"""The commands as the maker runs them: on the bundled instruments, on rubbish, and twice for the same bytes."""

import json
import re
from importlib.resources import as_file, files
from pathlib import Path

import pytest
from click.testing import CliRunner

from gramil.cli import new

from ..in_process import gramil

NAMES = ("tarn", "fell", "scree", "mere")


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the example files in it."""
    folder = tmp_path_factory.mktemp("bench")
    with as_file(files("gramil") / "data" / "examples") as examples:
        for file in examples.iterdir():
            (folder / file.name).write_bytes(file.read_bytes())
    return folder


@pytest.mark.parametrize(
    ("name", "scale"),
    [
        ("tarn", "630.00 mm   (24.803 in)"),
        ("fell", "25.787 in   (25 25/32 in + 0.006)"),
        ("mere", "650.00 mm   (25.591 in)"),
    ],
)
def test_dims_have_the_maker_s_unit_and_what_stands_beside_it(bench: Path, name: str, scale: str) -> None:
    """Inches beside millimetres, 64ths beside inches; 1 in is 25.4 mm, and 25/32 is 0.78125."""
    done = gramil(bench, "dims", f"{name}.toml", "--shop", "shop.toml")
    assert done.returncode == 0, done.stderr
    assert re.search(rf"^  scale_run +{re.escape(scale)}$", done.stdout, re.MULTILINE)
    assert "\nSLOTS\n" in done.stdout


@pytest.mark.parametrize("name", NAMES)
def test_dims_of_an_inch_instrument_have_no_millimetre(bench: Path, name: str) -> None:
    done = gramil(bench, "dims", f"{name}.toml", "--shop", "shop.toml")
    assert done.returncode == 0, done.stderr
    assert bool(re.search(r"\d mm\b", done.stdout)) == (name != "fell")
    assert re.search(r"\d in\b", done.stdout)


def test_dims_as_json_and_csv(bench: Path) -> None:
    told = json.loads(gramil(bench, "dims", "tarn.toml", "--json").stdout)["told"]
    found = {row["address"]: row for row in told["dimensions"]}
    assert found["fret_position[12]"]["value"] == pytest.approx(315.0)
    assert found["fret_position[12]"]["other"] == "12.402 in"
    table = gramil(bench, "dims", "tarn.toml", "--csv", "--part", "scale").stdout
    assert "scale,fret_position[12],315.0,,mm,315.00 mm,12.402 in" in table


def test_the_table_in_a_file_is_the_one_that_is_piped(bench: Path) -> None:
    """PowerShell's `>` writes another encoding; a file that the program writes is the same everywhere."""
    asked = ("dims", "tarn.toml", "--csv", "--separator", ";", "--part", "scale")
    done = gramil(bench, *asked, "--out", "scale.csv")
    assert (done.returncode, done.stdout, "written: scale.csv" in done.stderr) == (0, "", True)
    assert (bench / "scale.csv").read_bytes() == gramil(bench, *asked).stdout.encode("utf-8")
    assert gramil(bench, "dims", "tarn.toml", "--out", "scale.csv").returncode == 2
    assert gramil(bench, *asked, "--out", "scale.toml").returncode == 2


def test_why_shows_formula_numbers_source_and_origin(bench: Path) -> None:
    told = gramil(bench, "why", "fret_position[12]", "tarn.toml").stdout
    assert "315.00 mm" in told
    assert "(fret_x_bass + fret_x_treble) / 2" in told
    assert "tarn.toml:" in gramil(bench, "why", "fret_position[12]", "tarn.toml", "--deep").stdout


def test_why_down_and_the_nearest_name(bench: Path) -> None:
    assert "slot_left_at_crest" in gramil(bench, "why", "board.thickness", "tarn.toml", "--down", "--deep").stdout
    missed = gramil(bench, "why", "fret_positon", "tarn.toml")
    assert missed.returncode == 2
    assert "fret_position" in missed.stderr


def test_check_stops_with_status_one(bench: Path) -> None:
    assert gramil(bench, "check", "tarn.toml", "--shop", "shop.toml").returncode == 0
    thin = (bench / "tarn.toml").read_text(encoding="utf-8").replace("thickness = 6.3", "thickness = 3.6")
    (bench / "thin.toml").write_text(thin, encoding="utf-8")
    done = gramil(bench, "check", "thin.toml", "--shop", "shop.toml")
    assert done.returncode == 1
    assert "STOP" in done.stdout


def test_faults_are_told_without_a_traceback(bench: Path) -> None:
    (bench / "bad.toml").write_text("gramil = 1\n[instrument]\nname = 'x'\nunits = 'mm'\n[bord]\nwidth = 'x'\n")
    for words in (
        ("check", "bad.toml"),
        ("check", "none.toml"),
        ("dims", "shop.toml"),
        ("pack", "bad.toml", "--out", "o"),
    ):
        done = gramil(bench, *words)
        assert done.returncode == 2, words
        assert "Traceback" not in done.stderr
    assert "board" in gramil(bench, "check", "bad.toml").stderr


def test_a_misspelt_command(bench: Path) -> None:
    done = gramil(bench, "chekc", "tarn.toml")
    assert done.returncode == 2
    assert "Nearest: check" in done.stderr


def test_new_writes_what_check_accepts(bench: Path) -> None:
    assert gramil(bench, "new", "made.toml", "--name", 'A "b" \\ c', "--usual").returncode == 0
    assert gramil(bench, "check", "made.toml").returncode == 0
    assert gramil(bench, "new", "made.toml", "--usual").returncode == 2
    assert gramil(bench, "new", "moss.toml", "--strings", "nylon", "--units", "in", "--usual").returncode == 0
    assert 'length = "25 5/8 in"' in (bench / "moss.toml").read_text(encoding="utf-8")
    fanned = ("new", "fanned.toml", "--bass", "710 mm", "--treble", "680 mm", "--usual")
    assert gramil(bench, *fanned).returncode == 0
    assert "= 710.00 mm" in gramil(bench, "why", "scale.bass", "fanned.toml").stdout
    both = gramil(bench, "new", "both.toml", "--square-at", "7", "--length", "650 mm", "--usual")
    assert "scale.bass: is missing" in both.stderr


def test_a_whole_guitar_is_begun_from_a_dozen_answers(bench: Path) -> None:
    assert gramil(bench, "new", "whole.toml", "--whole", "--usual").returncode == 0
    done = gramil(bench, "check", "whole.toml")
    assert done.returncode == 0, done.stdout
    assert "bridge on the X" in gramil(bench, "check", "whole.toml", "--fine").stdout
    small = ("new", "small.toml", "--start", "small", "--body-length", "19 in", "--units", "in", "--usual")
    assert gramil(bench, *small).returncode == 0
    assert "[19, 0]," in (bench / "small.toml").read_text(encoding="utf-8")
    refused = gramil(bench, "new", "no.toml", "--start", "large", "--body-waist", "310 mm", "--usual")
    assert (refused.returncode, "body.waist: 310.00 mm is outside" in refused.stderr) == (2, True)
    assert not (bench / "no.toml").exists()


def test_a_shop_is_begun_and_checks_go_by_it(bench: Path) -> None:
    answers = (
        "Fen\nmm\na4\nmedium\ntable saw\n\n\nwide\n.61\ny\n62.4\n2026-10-14\nn\n\np1\npersimmon\n520\n72\n8.5\nnone\n"
    )
    done = CliRunner().invoke(new.command, [str(bench / "fen.toml"), "--shop"], input=answers)
    assert done.exit_code == 0, done.output
    assert "cannot be read as a length" in done.output
    text = (bench / "fen.toml").read_text(encoding="utf-8")
    for line in ('kerf = ".61 mm"', 'constant = "62.4 mm"', "checked = 2026-10-14", 'width = "72 mm"'):
        assert line in text
    assert gramil(bench, "check", "tarn.toml", "--shop", "fen.toml").returncode in (0, 1)
    refused = gramil(bench, "new", "no.toml", "--shop", "--frets", "19", "--usual")
    assert (refused.returncode, "the rest is an instrument's" in refused.stderr) == (2, True)


def test_another_of_one_s_own_is_where_a_new_one_begins(bench: Path) -> None:
    wren = ("new", "wren.toml", "--from", "tarn.toml", "--name", "Wren", "--length", "620 mm", "--usual")
    assert gramil(bench, *wren).returncode == 0
    assert 'length = "620 mm"' in (bench / "wren.toml").read_text(encoding="utf-8")
    assert "is the name of the other" in gramil(bench, "new", "two.toml", "--from", "tarn.toml", "--usual").stderr
    assert gramil(bench, "new", "two.toml", "--from", "tarn.toml", "--whole", "--usual").returncode == 2


def files_in(folder: Path) -> dict[str, bytes]:
    found = (file for file in folder.rglob("*") if file.is_file())
    return {file.relative_to(folder).as_posix(): file.read_bytes() for file in found}


@pytest.mark.slow
def test_the_pack_twice_is_the_same_bytes_and_refuses_strangers(bench: Path) -> None:
    words = ("pack", "scree.toml", "--shop", "shop.toml", "--out")
    for out in ("one", "two"):
        done = gramil(bench, *words, out)
        assert done.returncode == 0, done.stderr
    one, two = files_in(bench / "one"), files_in(bench / "two")
    assert one == two
    wanted = {"cut/board.dxf", "cut/gauges.dxf", "cut/board.svg", "print/bench-sheets.pdf", "read/findings.json"}
    assert {"contents.html", *wanted} <= set(one)
    few = (*words, "few", "--just", "slot")
    assert gramil(bench, *few).returncode == 0
    mine = next((bench / "few").rglob("*.pdf"))
    mine.write_text("mine")
    refused = gramil(bench, *few)
    assert refused.returncode == 2
    assert mine.name in refused.stderr
    assert mine.read_text() == "mine"
    assert gramil(bench, *few, "--overwrite").returncode == 0
    assert mine.read_bytes().startswith(b"%PDF")


@pytest.mark.slow
def test_a_nylon_string_guitar_goes_through_the_whole(bench: Path) -> None:
    checked = gramil(bench, "check", "mere.toml", "--shop", "shop.toml")
    assert checked.returncode == 0, "nothing stops it"
    assert "steel" not in checked.stdout, "no limit of steel strings is held against it"
    done = gramil(bench, "pack", "mere.toml", "--shop", "shop.toml", "--out", "nylon")
    assert done.returncode == 0, done.stderr
    wanted = {"contents.html", "cut/head.dxf", "read/build-book.pdf", "print/bench-sheets.pdf"}
    assert wanted <= set(files_in(bench / "nylon"))


def test_readback_and_its_plot(bench: Path) -> None:
    (bench / "readings.csv").write_text("fret,position\n1,35.48\n5,158.15\n12,315.12\n19,419.88\n")
    done = gramil(bench, "readback", "slots", "tarn.toml", "readings.csv", "--plot", "errors.svg")
    assert done.returncode == 0, done.stderr
    assert "zero is off the nut line" in done.stdout
    assert (bench / "errors.svg").read_text(encoding="utf-8").startswith("<svg")


def test_every_command_has_an_example_in_its_help(bench: Path) -> None:
    from gramil.cli import COMMANDS

    for name in COMMANDS:
        assert f"gramil {name}" in gramil(bench, name, "--help").stdout.split("Options:")[0].split("Usage:")[1][30:], (
            name
        )


def test_the_examples_in_the_first_help_have_options_that_are_there(bench: Path) -> None:
    shown = [line.split() for line in gramil(bench, "--help").stdout.splitlines() if line.startswith("  gramil ")]
    assert shown
    for _, command, *words in shown:
        told = gramil(bench, command, "--help").stdout
        assert all(word in told for word in words if word.startswith("--")), (command, words)


@pytest.mark.slow
def test_a_pack_without_a_saw_for_the_slots_is_whole(bench: Path, tmp_path: Path) -> None:
    """Of a board alone, whose slots are what a saw is for: no figure that there is not stands on a drawing."""
    text = (bench / "shop.toml").read_text(encoding="utf-8").replace('cuts = "face down"', 'cuts = "from above"')
    kept = text.split("[[saw]]")[0] + "[[cutter]]" + text.split("[[cutter]]", 1)[1]
    (tmp_path / "shop.toml").write_text(kept, encoding="utf-8")
    done = gramil(bench, "pack", "scree.toml", "--shop", str(tmp_path / "shop.toml"), "--out", str(tmp_path / "out"))
    assert done.returncode == 0, done.stderr
    drawings = [*(tmp_path / "out").rglob("*.svg")]
    assert len(drawings) > 5
    for drawing in drawings:
        assert "nan" not in drawing.read_text(encoding="utf-8").replace("Finance", "").lower().split("</desc>")[-1]


def test_why_of_a_sheet_a_drawing_and_a_verdict_is_short(bench: Path) -> None:
    """They are whole records: what they say is told line by line, and no line holds all that is in them."""
    sheet = gramil(bench, "why", "setup_slot", "tarn.toml").stdout
    assert sheet.splitlines()[0] == "setup_slot = the sheet slot: Cut the slots"
    assert "[slot_depth_setting]" in sheet
    assert "prove it: Slot an offcut" in sheet
    assert "not needed: a straight bottom" in gramil(bench, "why", "setup_deepen", "tarn.toml").stdout
    drawing = gramil(bench, "why", "drawing_board", "tarn.toml").stdout
    assert "the drawing board: Tarn, fretboard, seen from the face" in drawing
    assert "figures on it: scale_bass" in drawing
    assert "FINE" in gramil(bench, "why", "finding_neck_angle", "tarn.toml").stdout
    assert "{" not in sheet.split("follows from")[0]
    values = [line.split(" = ")[1] for line in (sheet + drawing).splitlines() if " = " in line]
    assert all("points 0" not in value and "tolerance ±" not in value for value in values)


def test_lists_of_parts_are_opened(bench: Path) -> None:
    closed = gramil(bench, "dims", "tarn.toml", "--part", "body").stdout
    opened = gramil(bench, "dims", "tarn.toml", "--part", "body", "--every").stdout
    assert '["waist"].width' not in closed
    assert '["waist"].width' in opened
    assert max(map(len, closed.splitlines())) < 220
