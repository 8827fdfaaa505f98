"""New descriptions, and one key changed with every comment kept."""

import re
from importlib.resources import files

import pytest

from gramil.description.reading import parse_description
from gramil.description.writing import FANNED, QUESTIONS, new_description, set_key
from gramil.faults import MakersFault

TARN = (files("gramil") / "data" / "examples" / "tarn.toml").read_text(encoding="utf-8")
SHOP = (files("gramil") / "data" / "examples" / "shop.toml").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    ("key", "value", "old", "new"),
    [
        ("scale.length", "650mm", "length = 630  ", 'length = "650mm"'),
        ("scale.length", "650", "length = 630", "length = 650"),
        ("scale.zero_fret", "true", "zero_fret = false", "zero_fret = true "),
        ("board.arch.nut", "330 mm", 'nut = "320 mm"', 'nut = "330 mm"'),
        ("strings.gauges[1]", "0.013", "[0.012,", "[0.013,"),
        ("markers.double", "[7, 12]", "double = [12]", "double = [7, 12]"),
    ],
)
def test_one_key_changes_and_nothing_else(key: str, value: str, old: str, new: str) -> None:
    written = set_key(TARN, key, value)
    squeezed = re.sub(" +", " ", TARN.replace(old, new, 1))
    assert re.sub(" +", " ", written) == squeezed
    assert written.count("\n") == TARN.count("\n")


def test_comments_keep_their_column() -> None:
    line = next(line for line in TARN.splitlines() if line.startswith("length"))
    changed = next(line for line in set_key(TARN, "scale.length", "650 mm").splitlines() if line.startswith("length"))
    assert changed.index("#") == line.index("#")


def test_a_key_that_was_not_there_and_a_table_that_was_not() -> None:
    written = set_key(set_key(TARN, "slots.crest_loss", "0.1"), "neck.modulus", "11 GPa")
    instrument = parse_description(written).instrument
    assert (instrument.slots.crest_loss, instrument.neck.modulus) == (0.1, 11000.0)


def test_a_row_of_the_shop() -> None:
    assert "constant = 58.4 " in set_key(SHOP, "jig[2].constant", "58.4")


@pytest.mark.parametrize(
    "key", ["", "length", "scale", "board.arch.nut.x", "jig[1].constant", "strings.gauges[7]", "a b.c"]
)
def test_no_such_place(key: str) -> None:
    with pytest.raises(MakersFault):
        set_key(TARN, key, "1")


def test_a_new_description_reads_and_keeps_its_comments() -> None:
    answers = {
        "instrument.name": "42",
        "instrument.units": "in",
        "scale.length": "25 1/2",
        "nut.width": "1.75",
        "board.arch": "flat",
        "strings.gauges": "0.010, .013 , 17 thou",
        "strings.tuning": "E4, B3, F#3",
    }
    instrument = parse_description(new_description(answers)).instrument
    assert instrument.instrument.name == "42"
    assert instrument.scale.length == pytest.approx(647.7, abs=1e-9)
    assert instrument.nut.width == pytest.approx(44.45, abs=1e-9)
    assert instrument.strings.gauges == pytest.approx((0.254, 0.3302, 0.4318), abs=1e-9)
    assert instrument.strings.tuning == ("E4", "B3", "F#3")
    assert new_description({}).count("#") > 20


def test_the_usual_answers_are_those_of_the_new_file() -> None:
    usual = {question.key: question.usual for question in QUESTIONS}
    assert parse_description(new_description(usual)).instrument == parse_description(new_description({})).instrument


def test_a_new_fanned_board_has_two_scales() -> None:
    text = new_description({"scale.bass": "710 mm", "scale.treble": "26 3/4 in", "scale.square_at": "8"})
    scale = parse_description(text).instrument.scale
    assert (scale.length, scale.bass, scale.square_at) == (None, 710.0, 8.0)
    assert scale.treble == pytest.approx(679.45, abs=1e-9)  # 26.75 x 25.4
    assert "# the frets fan" in text
    usual = {question.key: question.usual for question in (*QUESTIONS, *FANNED) if question.key != "scale.length"}
    assert parse_description(new_description(usual)).instrument.scale.bass == 660.0


@pytest.mark.parametrize(
    ("answers", "told"),
    [
        ({"scale.bass": "710 mm"}, "scale.treble"),
        ({"scale.square_at": "7"}, "scale.bass"),
        ({"scale.bass": "710 mm", "scale.treble": "680 mm", "scale.length": "690 mm"}, "length alone"),
        ({"scale.bass": "710 mm", "scale.treble": "400 mm"}, "scale"),
    ],
)
def test_scales_that_do_not_go_together(answers: dict[str, str], told: str) -> None:
    with pytest.raises(MakersFault, match=told):
        new_description(answers)


def test_answers_that_cannot_be() -> None:
    with pytest.raises(MakersFault, match="last fret"):
        new_description({"scale.frets": "12"})
    with pytest.raises(MakersFault, match=r"scale\.frets"):
        new_description({"scale.fretz": "12"})
