"""Measures read and shown: texts against millimetres worked out by hand, what is refused, and what always holds.

Expected lengths follow from the definition 1 in = 25.4 mm exactly (international yard and pound agreement, 1959;
1 lb = 453.59237 g), multiplied out by hand.
"""

import math
import random
from fractions import Fraction
from typing import Annotated, Any

import pytest
from hypothesis import example, given
from hypothesis import strategies as st
from pydantic import BaseModel, BeforeValidator, ValidationError

from gramil.faults import Fault, MakersFault
from gramil.inches import in_inches, inch_places
from gramil.measure import (
    MeasureError,
    read_angle,
    read_length,
    read_mass,
    read_mass_per_length,
    read_percent,
    read_temperature,
    show,
    show_angle,
    show_change,
    show_temperature,
)

LENGTHS = {
    "655.3 mm": 655.3,
    "655.3mm": 655.3,
    " 655.3  MM ": 655.3,
    "1.2 cm": 12.0,
    "0.5 m": 500.0,
    "6 m": 6000.0,
    "630": 630.0,
    "-0.2 mm": -0.2,
    "−0.2 mm": -0.2,
    "- 0.2 mm": -0.2,
    "+0.2 mm": 0.2,
    "1/2 mm": 0.5,
    "25 1/2 in": 647.7,
    "25 1/2 in.": 647.7,
    "25.5 inches": 647.7,
    "25\u00a01/2 inch": 647.7,
    '1-7/8"': 47.625,
    "1 7/8″": 47.625,
    "1 7⁄8 IN": 47.625,
    '-1-7/8"': -47.625,
    "5/64in": 1.984375,
    '.031"': 0.7874,
    "0.012 in": 0.3048,
    "12 thou": 0.3048,
    "1/2 thou": 0.0127,
    '2½"': 63.5,
    '2 ½"': 63.5,
    "2-½”": 63.5,
    "-½ in": -12.7,
    "3'": 914.4,
    "1 ft": 304.8,
    "1 1/2 feet": 457.2,
    "2' 3 1/2\"": 698.5,
    "2'3½\"": 698.5,
    "2'-3 1/2\"": 698.5,
    "2 ft 3.5 in": 698.5,
    "-2' 3\"": -685.8,
    "0' 0\"": 0.0,
    "31/64 in + 0.002": 12.353925,
    "-31/64 in - 0.002": -12.353925,
    "25 1/2 in - 0.004": 647.5984,
    "100 m": 100000.0,
}


@pytest.mark.parametrize(("text", "mm"), LENGTHS.items())
def test_lengths_are_read_in_full(text: str, mm: float) -> None:
    assert read_length(text, "mm") == mm


@pytest.mark.parametrize(
    ("character", "numerator", "denominator"),
    [
        ("½", 1, 2), ("⅓", 1, 3), ("⅔", 2, 3), ("¼", 1, 4), ("¾", 3, 4), ("⅕", 1, 5), ("⅖", 2, 5), ("⅗", 3, 5),
        ("⅘", 4, 5), ("⅙", 1, 6), ("⅚", 5, 6), ("⅐", 1, 7), ("⅛", 1, 8), ("⅜", 3, 8), ("⅝", 5, 8), ("⅞", 7, 8),
        ("⅑", 1, 9), ("⅒", 1, 10), ("↉", 0, 3),
    ],
)  # fmt: skip
def test_every_fraction_character_is_the_double_nearest_to_its_value(
    character: str, numerator: int, denominator: int
) -> None:
    assert read_length(f"2{character} in", "mm") == float((2 + Fraction(numerator, denominator)) * Fraction(254, 10))


def test_bare_numbers_are_in_the_unit_of_the_file() -> None:
    assert read_length(630, "mm") == 630.0
    assert read_length(0.1, "in") == 2.54
    assert read_length("0.1", "in") == 2.54
    assert read_length("3/4", "in") == 19.05
    assert read_length("1 7/8", "in") == 47.625
    assert read_length("25.4 mm", "in") == 25.4
    assert read_length(1e-05, "in") == 0.000254


REFUSED = {
    "": "Nothing is written",
    "wide": "no number",
    "nan": "no number",
    "inf": "no number",
    "18,3 mm": 'Write "18.3 mm" if the comma is a decimal point.',
    "1,250": '"1250" if it marks thousands',
    "1,250,000 mm": 'Write "1250000 mm" if it marks thousands',
    "1,2,3": "comma",
    "1/2/3": "not a unit",
    "1/2/3 in": "not a unit",
    "7/0": "divided by 0",
    "1 7/0 in": "divided by 0",
    "1 7": "more than one number",
    "1-7": "more than one number",
    "1 7 in": "more than one number",
    "1 - 7/8 in": "more than one number",
    "1.5 1/2": "without a unit",
    "1.5 1/2 in": "more than one number",
    "1.5½ in": "more than one number",
    "½4 in": "without a unit",
    "1 1/2 mm": 'Write "1.5 mm"',
    "1½ cm": 'Write "1.5 cm"',
    "2 1/2 thou": 'Write "2.5 thou"',
    "3/4": "without a unit",
    "1 7/8": "without a unit",
    "17/8 in": "a space may be missing",
    "1 9/8 in": "not less than one",
    "4/4 in": "not less than one",
    "12 mil": 'Write "12 mm" or "12 thou"',
    "½ mils": 'Write "0.5 mm" or "0.5 thou"',
    "5 furlongs": "“furlongs” is not a unit of length",
    "1e3 mm": "not a unit",
    "5. mm": "not a unit",
    "1.2.3 mm": "more than one number",
    "--1 mm": "not a number with a unit",
    "mm 3": "not a number with a unit",
    "2' 6": "more than one number",
    "1.5' 3\"": "Feet with inches are whole",
    "2' 12\"": "fewer than 12",
    "2' 3\" 1/2 in": "more than one number",
    "3\" 2'": "more than one number",
    "3 in + 0.5": "less than a 64th",
    "3 mm + 0.002": "more than one number",
    "100.001 m": "between -100 m and 100 m",
    "-101 m": "between -100 m and 100 m",
    "9" * 5000: "longer than 80 characters",
}


@pytest.mark.parametrize(("text", "says"), REFUSED.items(), ids=lambda text: text[:20])
def test_what_could_be_meant_in_two_ways_is_refused_and_says_what_to_write(text: str, says: str) -> None:
    with pytest.raises(MeasureError) as refusal:
        read_length(text, "mm")
    (fault,) = refusal.value.faults
    assert says in str(fault)
    assert f"“{text.strip()[:80]}" in fault.what
    assert fault.remedy


@pytest.mark.parametrize("number", [math.nan, math.inf, -math.inf, 1e300, 10**400, True, None, [1]])
def test_numbers_that_are_no_length_are_refused(number: Any) -> None:
    with pytest.raises(MeasureError):
        read_length(number, "mm")


def test_a_number_too_long_to_print_is_refused() -> None:
    with pytest.raises(MeasureError, match="thousands of digits"):
        read_length(10**5000, "mm")


PIECES = st.sampled_from([*"0123456789 ./-+'\",½⅞⁄−″", "mm", "in", "ft", "thou", "mil", "1/2", "25.4", "m", "e"])


@given(st.one_of(st.text(), st.lists(PIECES, max_size=12).map("".join)), st.sampled_from(["mm", "in"]))
@example("½½", "in")
@example(",\x1f0", "mm")
@example("1/" + "9" * 70, "in")
def test_any_text_is_a_length_or_a_refusal(text: str, unit: Any) -> None:
    try:
        millimetres = read_length(text, unit)
    except MeasureError as refusal:
        message = str(refusal)
    else:
        assert abs(millimetres) <= 100_000
        return
    assert message.isprintable()


@given(st.floats() | st.integers(), st.sampled_from(["mm", "in"]))
def test_any_number_is_a_length_or_a_refusal(number: float, unit: Any) -> None:
    try:
        assert read_length(number, unit) == pytest.approx(number * (25.4 if unit == "in" else 1), rel=1e-14)
    except MeasureError:
        assert not abs(number) * (25.4 if unit == "in" else 1) <= 99_999.999


@given(st.integers(0, 3000), st.integers(1, 63), st.sampled_from([2, 4, 8, 16, 32, 64]))
def test_mixed_numbers_are_exact(whole: int, numerator: int, denominator: int) -> None:
    upper = numerator % denominator
    exact = (whole + Fraction(upper, denominator)) * Fraction(254, 10)
    assert read_length(f"{whole} {upper}/{denominator} in", "mm") == float(exact)
    assert read_length(f'{whole}-{upper}/{denominator}"', "mm") == float(exact)


@pytest.mark.parametrize(
    ("value", "mm", "decimal", "in_64ths"),
    [
        (12.3444, "12.34 mm", "0.486 in", "31/64 in + 0.002"),  # 31/64 = 0.484375, and 0.486 is 0.001625 more
        (12.34, "12.34 mm", "0.486 in", "31/64 in + 0.001"),  # 0.485827 in, 0.001452 more
        (45.5, "45.50 mm", "1.791 in", "1 51/64 in - 0.006"),
        (647.7, "647.70 mm", "25.500 in", "25 1/2 in"),
        (-647.7, "-647.70 mm", "-25.500 in", "-25 1/2 in"),
        (-12.34, "-12.34 mm", "-0.486 in", "-31/64 in - 0.001"),
        (25.4, "25.40 mm", "1.000 in", "1 in"),
        (25.3, "25.30 mm", "0.996 in", "1 in - 0.004"),
        (0.0, "0.00 mm", "0.000 in", "0 in"),
        (-0.001, "0.00 mm", "0.000 in", "0 in"),
        (-0.1, "-0.10 mm", "-0.004 in", "0 in - 0.004"),
        (0.1, "0.10 mm", "0.004 in", "0 in + 0.004"),
        (1.984375, "1.98 mm", "0.078 in", "5/64 in"),
    ],
)
def test_lengths_are_shown_rounded(value: float, mm: str, decimal: str, in_64ths: str) -> None:
    assert show(value, "mm") == mm
    assert show(value, "in") == decimal
    assert show(value, "in", "64ths") == in_64ths


@given(st.floats(-99_999, 99_999))
def test_what_is_shown_reads_back_within_its_rounding(value: float) -> None:
    slack = 1e-9
    assert abs(read_length(show(value, "mm"), "in") - value) <= 0.005 + slack
    assert abs(read_length(show(value, "in"), "mm") - value) <= 0.0005 * 25.4 + slack
    assert abs(read_length(show(value, "in", "64ths"), "mm") - value) <= 0.0005 * 25.4 + slack
    assert "-0.00 " not in show(value, "mm")


@pytest.mark.parametrize("value", [math.nan, math.inf])
def test_what_is_not_finite_is_never_shown(value: float) -> None:
    for unit, style in (("mm", "decimal"), ("in", "decimal"), ("in", "64ths")):
        with pytest.raises(ValueError, match="Fraction"):
            show(value, unit, style)  # type: ignore[arg-type]


def test_angles() -> None:
    assert read_angle("14 deg") == pytest.approx(14 * math.pi / 180, rel=1e-15)
    assert read_angle("14°") == read_angle(14) == read_angle("14")
    assert read_angle("0.2 rad") == 0.2
    assert read_angle("180 deg") == math.pi
    assert show_angle(read_angle("-1.5°")) == "-1.50°"
    assert show_angle(-1e-9) == "0.00°"
    for text in ("14 mm", "400 deg", "14° 30'", "1/2"):
        with pytest.raises(MeasureError):
            read_angle(text)


def test_masses() -> None:
    assert read_mass("210 g") == 210.0
    assert read_mass("1.9 kg") == 1900.0
    assert read_mass("1 oz") == 28.349523125
    assert read_mass("7 1/2 oz") == 212.6214234375
    for text in ("-1 g", "3 mg/mm", "1001 kg"):
        with pytest.raises(MeasureError):
            read_mass(text)


def test_masses_per_length() -> None:
    assert read_mass_per_length("0.403 g/m") == read_mass_per_length("0.403 mg/mm") == 0.403
    assert read_mass_per_length("1 lb/in") == float(Fraction(45359237, 2540))
    assert read_mass_per_length("0.00002 lb/in") == pytest.approx(0.357160, abs=1e-6)


def test_temperatures() -> None:
    assert read_temperature("21 C") == read_temperature("21°C") == read_temperature(21) == 21.0
    assert read_temperature("70 F") == pytest.approx(21.1111111111111)
    assert read_temperature("32 °F") == read_temperature("32", "F") == read_temperature(32, "F") == 0.0
    assert read_temperature("-40 F") == read_temperature("-40 C") == -40.0
    with pytest.raises(MeasureError, match=r"between -273\.15 C"):
        read_temperature("-460 F")


def test_percentages() -> None:
    assert read_percent("45 %") == read_percent("45%") == read_percent(45) == 45.0
    with pytest.raises(MeasureError):
        read_percent("45 C")


def test_a_fault_reads_as_a_place_and_sentences() -> None:
    fault = Fault(7, "board.width", "it is 12 mm", "The strings need 45 mm.", "Write a wider board", "tarn.toml")
    assert str(fault) == "tarn.toml:7: board.width: it is 12 mm. The strings need 45 mm. Write a wider board."
    assert str(Fault(line=7, what="a quote is missing")) == "line 7: a quote is missing."
    assert str(Fault(file="tarn.toml", what="there is no such file")) == "tarn.toml: there is no such file."


def test_faults_are_shown_a_paragraph_each() -> None:
    faults = MakersFault([Fault(what="one"), Fault(where="nut.width", what="two")])
    assert str(faults) == "one.\n\nnut.width: two."
    assert MakersFault.of("no such fret", "there are 19", where="slot[20]").faults == (
        Fault(where="slot[20]", what="no such fret", why="there are 19"),
    )
    with pytest.raises(ValueError, match="at least one"):
        MakersFault([])


def test_a_model_gathers_refusals_with_its_own() -> None:
    class Board(BaseModel):
        width: Annotated[float, BeforeValidator(lambda text: read_length(text, "mm"))]

    with pytest.raises(ValidationError, match=r'Write "18\.3 mm"'):
        Board(width="18,3 mm")  # type: ignore[arg-type]


@pytest.mark.parametrize("seed", range(4))
def test_shown_as_the_exact_decimal_is_rounded(seed: int) -> None:
    """Half to even on the decimal as written, near ties and far from them; the fractions are worked out here."""
    draw = random.Random(seed)
    values = [draw.uniform(-900, 900) for _ in range(300)]
    values += [round(draw.uniform(-50, 50), 3) for _ in range(300)]
    values += [draw.randrange(-4000, 4000) / 8 + 0.005 for _ in range(100)]
    for value in values:
        hundredths = round(Fraction(repr(value)) * 100)
        whole, rest = divmod(abs(hundredths), 100)
        assert show(value, "mm") == f"{'-' if hundredths < 0 else ''}{whole}.{rest:02d} mm"
        thousandths = round(Fraction(repr(value)) / Fraction("25.4") * 1000)
        whole, rest = divmod(abs(thousandths), 1000)
        assert show(value, "in") == f"{'-' if thousandths < 0 else ''}{whole}.{rest:03d} in"


@pytest.mark.parametrize(
    ("value", "places", "text"),
    [
        (0.05, 3, "0.002 in"),  # 0.0019685 in
        (0.3048, 3, "0.012 in"),
        (0.0508, 3, "0.002 in"),  # two thou exactly
        (0.2, 4, "0.0079 in"),  # 0.007874 in
        (0.26, 3, "0.010 in"),
        (45.5, 3, "1.791 in"),
    ],
)
def test_a_thin_length_has_a_fourth_decimal(value: float, places: int, text: str) -> None:
    assert inch_places(value) == places
    assert in_inches(value, places) == text


@pytest.mark.parametrize(
    ("celsius", "in_c", "in_f"),
    [(21.0, "21.0 °C", "69.8 °F"), (-40.0, "-40.0 °C", "-40.0 °F"), (0.0, "0.0 °C", "32.0 °F")],
)
def test_temperatures_in_either_unit(celsius: float, in_c: str, in_f: str) -> None:
    """F = 1.8 C + 32."""
    assert show_temperature(celsius, "C") == in_c
    assert show_temperature(celsius, "F") == in_f
    assert read_temperature(in_f) == pytest.approx(celsius)


def test_a_change_has_its_sign_and_nothing_has_none() -> None:
    assert show_change(0.0254, "in") == "+0.0010 in"
    assert show_change(-1.5, "mm") == "-1.500 mm"
    assert show_change(-0.0001, "mm") == "0.000 mm"
