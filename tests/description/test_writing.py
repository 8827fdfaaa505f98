"""New descriptions, and one key changed with every comment kept."""

import re
from collections.abc import Iterator
from fractions import Fraction
from importlib.resources import files

import pytest

from gramil.description.questions import FANNED, QUESTIONS, STRINGS, usual_answer
from gramil.description.reading import parse_description
from gramil.description.writing import new_description, set_key
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


STARTS = [{"instrument.units": units, STRINGS: strings} for units in ("mm", "in") for strings in ("steel", "nylon")]
INCHES = re.compile(r'"(?:(?P<whole>\d+) )?(?P<part>\d+/\d+|\d+(?:\.\d+)?) (?P<unit>in|thou)"')


def in_millimetres(text: str) -> str:
    """An inch file's lengths written in millimetres, worked out by hand: whole inches and a fraction times 25.4."""

    def written(found: re.Match[str]) -> str:
        inches = Fraction(found["whole"] or 0) + Fraction(found["part"])
        return str(float(inches * Fraction("25.4") / (1000 if found["unit"] == "thou" else 1)))

    return INCHES.sub(written, text).replace('units = "in"', 'units = "mm"')


@pytest.mark.parametrize("start", STARTS, ids=lambda start: " ".join(start.values()))
def test_usual_answers_go_by_unit_and_strings(start: dict[str, str]) -> None:
    asked = {question.key: usual_answer(question, start) for question in QUESTIONS} | start
    assert parse_description(new_description(asked)).instrument == parse_description(new_description(start)).instrument


@pytest.mark.parametrize("strings", ["steel", "nylon"])
def test_an_inch_start_is_written_in_inches_and_equals_its_millimetre_twin(strings: str) -> None:
    text = new_description({"instrument.units": "in", STRINGS: strings})
    assert " mm" not in text.replace('"mm" or "in"', "")
    twin = in_millimetres(text)
    assert ' in"' not in twin.replace('"mm" or "in"', "")
    one, other = (dict(leaves(parse_description(each).instrument.model_dump())) for each in (text, twin))
    assert (one.pop(".instrument.units"), other.pop(".instrument.units")) == ("in", "mm")
    assert one.keys() == other.keys()
    for key, value in one.items():
        assert value == (pytest.approx(other[key], abs=1e-9) if isinstance(value, float) else other[key]), key


def leaves(value: object, key: str = "") -> Iterator[tuple[str, object]]:
    """Every value in tables and lists, by where it stands."""
    if isinstance(value, dict | tuple):
        rows = value.items() if isinstance(value, dict) else enumerate(value)
        for name, each in rows:
            yield from leaves(each, f"{key}.{name}")
    else:
        yield key, value


@pytest.mark.parametrize("strings", ["steel", "nylon"])
def test_an_inch_start_is_about_the_millimetre_one(strings: str) -> None:
    """Each as a maker of that unit would round it: within 2.5 parts in a hundred."""
    inch, metric = (
        parse_description(new_description({"instrument.units": units, STRINGS: strings})).instrument
        for units in ("in", "mm")
    )
    for table, key in (
        ("scale", "length"),
        ("nut", "width"),
        ("nut", "spread"),
        ("bridge", "spread"),
        ("board", "width"),
        ("board", "thickness"),
        ("board", "beyond_last_fret"),
        ("slots", "clearance"),
    ):
        one, other = (getattr(getattr(each, table), key) for each in (inch, metric))
        assert one == pytest.approx(other, rel=0.025), f"{table}.{key}"


def test_a_nylon_start_has_what_belongs_to_it() -> None:
    instrument = parse_description(new_description({STRINGS: "nylon", "instrument.name": "Moss"})).instrument
    assert (instrument.strings.plain, instrument.neck.rod, instrument.head.tuners) == ("nylon", "none", "across")
    assert (instrument.bridge.hold, instrument.scale.join, instrument.heights.action_bass) == ("tie block", 12, 4.0)


def test_a_nylon_start_with_fewer_strings_winds_those_there_are() -> None:
    answers = {STRINGS: "nylon", "strings.gauges": "0.024, 0.032, 0.036, 0.03", "strings.tuning": "A4, E4, C4, G3"}
    assert parse_description(new_description(answers)).instrument.strings.wound == (4,)


def test_a_fanned_nylon_start_in_inches_has_inch_scales() -> None:
    text = new_description({"instrument.units": "in", STRINGS: "nylon", "scale.bass": "26", "scale.treble": "25 1/4"})
    scale = parse_description(text).instrument.scale
    assert (scale.bass, scale.treble) == (pytest.approx(660.4), pytest.approx(641.35))


def test_strings_of_neither_kind_are_told() -> None:
    with pytest.raises(MakersFault, match="Steel, nylon or twelve"):
        new_description({STRINGS: "gut"})
