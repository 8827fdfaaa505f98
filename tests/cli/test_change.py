"""`gramil shift` and `gramil turn` as the maker runs them, with a record of what is already made."""

from importlib.resources import files
from pathlib import Path

import pytest

from ..in_process import gramil

MADE = """gramil = 1
[made]
units = "mm"
[[done]]
operation = "slotted"
date = 2026-11-10
[[done]]
operation = "tapered"
date = 2026-11-11
[[done]]
operation = "arched"
"""


@pytest.fixture
def bench(tmp_path: Path) -> Path:
    for name in ("tarn.toml", "shop.toml"):
        (tmp_path / name).write_bytes((files("gramil") / "data" / "examples" / name).read_bytes())
    return tmp_path


def test_shift_says_what_moved_and_what_is_no_longer_true(bench: Path) -> None:
    done = gramil(bench, "shift", "tarn.toml", "--set", "scale.length=642mm", "--every")
    assert done.returncode == 0, done.stderr
    assert "scale.length" in done.stdout
    assert "fret_position[19]" in done.stdout
    assert "+8.00 mm" in done.stdout
    assert "NO LONGER TRUE" in done.stdout


def test_what_is_already_made_is_judged(bench: Path) -> None:
    (bench / "tarn.made.toml").write_text(MADE, encoding="utf-8")
    told = gramil(bench, "shift", "tarn.toml", "--set", "board.width=54.5mm", "--every").stdout
    assert "STILL RIGHT  fret slots cut" in told
    assert "REWORK       edges tapered" in told
    assert "plane the edges down" in told
    told = gramil(bench, "shift", "tarn.toml", "--set", "scale.length=642mm", "--every").stdout
    assert "LOST         fret slots cut" in told


def test_the_old_in_grey_under_the_new(bench: Path) -> None:
    done = gramil(bench, "shift", "tarn.toml", "--set", "scale.length=642mm", "--draw", "drawn")
    assert done.returncode == 0, done.stderr
    drawn = (bench / "drawn" / "board-shift.svg").read_text(encoding="utf-8")
    assert 'id="old"' in drawn
    assert "(+6.00)" in drawn


def test_nothing_or_both_is_refused(bench: Path) -> None:
    assert gramil(bench, "shift", "tarn.toml").returncode == 2
    assert gramil(bench, "shift", "tarn.toml", "tarn.toml", "--set", "a=1").returncode == 2
    wrong = gramil(bench, "shift", "tarn.toml", "--set", "scale.lenght=642mm")
    assert wrong.returncode == 2
    assert "length" in wrong.stderr


def test_turn_finds_the_input_and_keeps_the_comments(bench: Path) -> None:
    """The answer is checked by the command itself on a fresh derivation; the file changes only with --write."""
    before = (bench / "tarn.toml").read_text(encoding="utf-8")
    words = ("turn", "board.thickness", "tarn.toml", "--until")
    done = gramil(bench, *words, "slot_left_at_crest[1]=3.8 mm")
    assert done.returncode == 0, done.stderr
    assert "slot_left_at_crest[1] = 3.80 mm" in done.stdout
    assert (bench / "tarn.toml").read_text(encoding="utf-8") == before
    assert gramil(bench, *words, "slot_left_at_crest[1]=3.8 mm", "--write").returncode == 0
    after = (bench / "tarn.toml").read_text(encoding="utf-8")
    assert after.count("#") == before.count("#")
    assert after != before


def test_the_arch_is_turned_by_its_radius(bench: Path) -> None:
    """Fall d over half the nut's width h: the radius is (h^2 + d^2) / 2d, with h = 22.75 and d = 0.75 mm 345.42 mm."""
    turned = gramil(bench, "turn", "board.arch.nut", "tarn.toml", "--until", "arch_fall_at_nut_end=0.75 mm", "--write")
    assert "board.arch.nut = 345.42 mm gives arch_fall_at_nut_end = 0.75 mm" in turned.stdout
    text = (bench / "tarn.toml").read_text()
    assert 'end = "390 mm"' in text  # the other end stays as it was written
    assert 'nut = "345.416' in text


def test_one_end_of_a_cylinder_may_be_turned_and_a_flat_board_wants_bounds(bench: Path) -> None:
    text = (bench / "tarn.toml").read_text()
    cone = 'arch = { nut = "320 mm", end = "390 mm" }'
    (bench / "cylinder.toml").write_text(text.replace(cone, 'arch = "400 mm"'))
    (bench / "flat.toml").write_text(text.replace(cone, 'arch = "flat"'))
    until = ("--until", "arch_fall_at_nut_end=0.75 mm")
    assert "345.42 mm" in gramil(bench, "turn", "board.arch.nut", "cylinder.toml", *until, "--write").stdout
    assert "radius 400.00 mm" in gramil(bench, "why", "board_curvature_end", "cylinder.toml").stdout
    assert "give --between" in gramil(bench, "turn", "board.arch", "flat.toml", *until).stderr
    found = gramil(bench, "turn", "board.arch", "flat.toml", *until, "--between", "300 mm,500 mm").stdout
    assert "board.arch = 345.42 mm" in found


def test_turn_says_when_there_is_no_answer(bench: Path) -> None:
    done = gramil(bench, "turn", "board.thickness", "tarn.toml", "--until", "fret_position[5]=3 mm")
    assert done.returncode == 1
    assert "does not move" in done.stderr
    done = gramil(bench, "turn", "board.thickness", "tarn.toml", "--until", "slot_left_at_crest[1]=300 mm")
    assert done.returncode == 1
    assert "no answer" in done.stderr
    assert gramil(bench, "turn", "board.wood", "tarn.toml", "--until", "fret_position[5]=3 mm").returncode == 2
    assert gramil(bench, "turn", "board.thickness", "tarn.toml", "--until", "nothing=3 mm").returncode == 2


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (("shift", "tarn.toml", "--set", "scale.length=640mm", "--tolerance", "nan"), "tolerance"),
        (("turn", "board.arch", "tarn.toml", "--until", "slot_left_least[19]=3 mm"), "turn board.arch.nut"),
        (("turn", "scale.temperament", "tarn.toml", "--until", "slot_left_least[19]=3 mm"), "not a single number"),
        (("shift", "tarn.toml", "--set", "scale.length=640mm", "--draw", "tarn.toml"), "tarn.toml"),
        (("new", "nowhere/x.toml", "--usual"), "nowhere"),
        (("why", "saw_main.__class__", "tarn.toml"), "no figure"),
        (("why", "scale_frets.bit_length", "tarn.toml"), "no figure"),
        (("readback", "slots", "tarn.toml", "good.csv", "--plot", "no/e.svg"), "Name another place"),
        (("readback", "slots", "tarn.toml", "good.csv", "--plot", "tarn.toml"), "does not end in .svg"),
        (("readback", "slots", "tarn.toml", "long.csv"), "long.csv:3: is not CSV"),
        (("readback", "setup", "tarn.toml", "long.csv"), "Write string,what,value"),
        (("sheet", "slotted", "tarn.toml", "--out", "tarn.toml"), "does not end in .pdf"),
        (("shift", "tarn.toml", "--set", "board.width=57", "--set", "board.width=58"), "board.width is set twice"),
        (("dims", "tarn.toml", "--json", "--csv"), "not both"),
        (("why", "fret_position[99]", "tarn.toml"), "fret_position has rows [0 to 19]"),
        (("why", "string_pull[0]", "tarn.toml"), "string_pull has rows [1 to 6]"),
        (("turn", "board.thickness", "tarn.toml", "--until", "string_pull_total=nan"), "no number of N"),
        (("turn", "board.thickness", "tarn.toml", "--until", "string_pull_total=150 lb"), "no number of N"),
        (("turn", "board.thickness", "tarn.toml", "--until", "neck_angle_target=x"), "read as an angle"),
    ],
)
def test_what_cannot_be_done_is_one_plain_message(bench: Path, words: tuple[str, ...], says: str) -> None:
    (bench / "good.csv").write_text("fret,position\n1,35.36\n2,68.73\n", encoding="utf-8")
    (bench / "long.csv").write_text("fret,position\n\n1," + "9" * 200_000, encoding="utf-8")
    done = gramil(bench, *words)
    assert done.returncode == 2
    assert says in done.stderr
    assert "Traceback" not in done.stderr


def test_turn_an_input_that_is_no_length(bench: Path) -> None:
    done = gramil(bench, "turn", "neck.modulus", "tarn.toml", "--until", "neck_modulus=11000", "--write")
    assert done.returncode == 0, done.stderr
    assert 'modulus = "11000' in (bench / "tarn.toml").read_text(encoding="utf-8")


@pytest.mark.skipif(not Path("/dev/zero").exists(), reason="no endless file on this machine")
def test_readings_without_end_are_not_read(bench: Path) -> None:
    done = gramil(bench, "readback", "slots", "tarn.toml", "/dev/zero")
    assert done.returncode == 2
    assert "device, not a file" in done.stderr


def test_why_shows_two_levels_and_all_of_them_on_asking(bench: Path) -> None:
    """The setting hangs on the depth at the crest, that on the need, that on the wire's tang: the third is left out."""
    brief, deep = (gramil(bench, "why", "slot_depth_setting", "tarn.toml", *more).stdout for more in ((), ("--deep",)))
    assert "slot_need" in brief
    assert "wire_tang_depth =" not in brief
    assert "further up: --deep shows them" in brief
    assert "wire_tang_depth =" in deep
    assert "--deep" not in deep


def test_what_hangs_on_a_figure_is_what_shows_it_too(bench: Path) -> None:
    """The slots' sheet prints the tang's thickness and takes no value from it."""
    told = gramil(bench, "why", "wire_tang_thickness", "tarn.toml", "--down").stdout
    assert "  setup_slot  (shown on it)" in told


def test_turn_answers_in_a_dozen_lines(bench: Path) -> None:
    done = gramil(bench, "turn", "board.thickness", "tarn.toml", "--until", "slot_left_at_crest[1]=3.8 mm")
    assert len(done.stdout.splitlines()) <= 12
    assert "Papers no longer true: " in done.stdout
