"""Strings, saddle and bridge as a maker writes them: what is usual, what is refused, and where."""

from importlib.resources import files

import numpy as np
import pytest

from gramil.description.base import Base, base_values
from gramil.description.reading import parse_description, read_shop
from gramil.faults import MakersFault

TARN = (files("gramil") / "data" / "examples" / "tarn.toml").read_text(encoding="utf-8")
GAUGES = "gauges = [0.012, 0.016, 0.024, 0.032, 0.042, 0.053]"
TUNING = 'tuning = ["E4", "B3", "G3", "D3", "A2", "E2"]\n'


def of(strings: str = "", tables: str = "") -> Base:
    text = TARN.replace(TUNING, "").replace(GAUGES, f"{GAUGES}\n{strings}\n#") + tables
    return base_values(parse_description(text, "tarn.toml"), read_shop())


def test_six_steel_strings_need_say_no_more() -> None:
    """ISO 16: A4 is 440 Hz, and A2 two octaves below it; over 0.020 in is wound (common practice)."""
    values = of().values
    assert values["strings_frequency"][4] == pytest.approx(110.0, abs=1e-9)
    np.testing.assert_array_equal(values["strings_wound"], [0, 0, 1, 1, 1, 1])
    assert (values["strings_plain"], values["strings_core"], values["strings_wrap"]) == (
        "music wire",
        "music wire",
        "phosphor bronze",
    )
    assert np.isnan(values["saddle_set_back_given"]).all()
    np.testing.assert_array_equal(values["intonation_nut_given"], np.zeros(6))


def test_weights_off_a_packet_in_pounds_to_the_inch_are_those_in_grams_to_the_metre() -> None:
    """0.0001 lb/in is 0.045359237 g on 25.4 mm."""
    taken = of('weights = ["0.0001 lb/in", 0, 0, 0, 0, "0.57 mg/mm"]', "").values["strings_weights"]
    np.testing.assert_allclose(taken, [1.7857967, 0, 0, 0, 0, 0.57], rtol=1e-7)


def test_what_is_written_is_taken() -> None:
    base = of(
        'tuning = ["D4", "A3", "F3", "C3", "G2", "73.4 Hz"]\na4 = 432\nplain = "nylon"\nwound = [4, 5, 6]\n'
        'weights = ["0.38 g/m", 0, 0, 0, 0, "0.006 kg/m"]\nstretch = [48.2, 0, 0, 0, 0, 0]',
        '[saddle]\nset_back = [1.5, 1.7, "2.3 mm", 1.5, 1.6, 1.8]\n[intonation]\nnut_forward = 0.4\n',
    )
    values = base.values
    assert values["strings_frequency"][5] == pytest.approx(73.4)
    assert values["strings_frequency"][1] == pytest.approx(432 / 2)
    assert values["strings_wrap"] == "silver plated copper"
    np.testing.assert_array_equal(values["strings_wound"], [0, 0, 0, 1, 1, 1])
    np.testing.assert_allclose(values["strings_weights"], [0.38, 0, 0, 0, 0, 6.0])
    np.testing.assert_allclose(values["saddle_set_back_given"], [1.5, 1.7, 2.3, 1.5, 1.6, 1.8])
    np.testing.assert_allclose(values["intonation_nut_given"], np.full(6, 0.4))
    assert base.origins["strings_frequency"].line is not None


REFUSED = [
    ('tuning = ["E4", "B3", "G3", "D3", "A2"]', "strings.tuning", "5 pitches"),
    ('tuning = ["E4", "B3", "G3", "D3", "A2", "E"]', "strings.tuning[6]", "octave"),
    ('tuning = ["E4", "B3", "G3", "D3", "A2", "1 Hz"]', "strings.tuning[6]", "15 to 2000 hz"),
    ("a4 = 44", "strings.a4", "380 hz"),
    ('plain = "oak"', "strings.plain", "phosphor bronze"),
    ('plain = "nylon"', "strings.wound", "which strings are wound"),
    ("wound = [7]", "strings.wound[1]", "1 to 6"),
    ("cores = [0, 0, 0.7, 0, 0, 0]", "strings.cores[3]", "less than the string"),
    ("cores = [0, 0, 0.3]", "strings.cores", "one a string"),
    ('weights = ["0.57", 0, 0, 0, 0, 0]', "strings.weights[1]", "g/m"),
    ('weights = ["0.00004 lb", 0, 0, 0, 0, 0]', "strings.weights[1]", "lb/in"),
    ("stretch = [-1, 0, 0, 0, 0, 0]", "strings.stretch[1]", "at least 0"),
    ("bending = [0.4, 0, 0, 0, 0, 0]", "strings.bending[1]", "0 to"),
]


@pytest.mark.parametrize(("line", "where", "says"), REFUSED)
def test_what_cannot_be_is_refused_with_its_place(line: str, where: str, says: str) -> None:
    with pytest.raises(MakersFault) as caught:
        of(line)
    fault = next(each for each in caught.value.faults if each.where == where)
    assert fault.line is not None
    assert says in str(fault).lower()


OTHERS = [
    ("[saddle]\nset_back = [1, 2]", "saddle.set_back", "one a string"),
    ('[saddle]\nset_back = "far"', "saddle.set_back", "far"),
    ("[saddle]\nset_back = 40", "saddle.set_back", "12 mm at most"),
    ("[saddle]\nslot_depth = 9.5", "saddle.slot_depth", "less than the bridge"),
    ("[intonation]\nfrom_fret = 5\nto_fret = 5", "intonation", "two frets at least"),
    ("[intonation]\nto_fret = 24", "intonation.to_fret", "1 to 19"),
    ("[intonation]\nnut_forward = [0, 0]", "intonation.nut_forward", "one a string"),
    ("[intonation]\nnut_forward = 9", "intonation.nut_forward[1]", "0 to 6"),
]


@pytest.mark.parametrize(("tables", "where", "says"), OTHERS)
def test_saddle_and_intonation_that_cannot_be(tables: str, where: str, says: str) -> None:
    with pytest.raises(MakersFault) as caught:
        of(tables=tables)
    fault = next(each for each in caught.value.faults if each.where == where)
    assert says in str(fault).lower()


def test_seven_strings_that_do_not_say_what_they_sound_are_read() -> None:
    seven = TARN.replace(TUNING, "").replace("0.053]", "0.053, 0.066]")
    assert parse_description(seven, "seven.toml").instrument.strings.tuning is None


def test_a_gauge_without_end_is_not_offered_in_other_units() -> None:
    """It had been told to write "inf mm", "inf thou"."""
    with pytest.raises(MakersFault) as raised:
        parse_description(TARN.replace("gauges = [0.012", "gauges = [inf"), "tarn.toml")
    assert "inf mm" not in str(raised.value)
    assert "finite number" in str(raised.value)
