"""The same instrument written in another way is the same instrument."""

import re
from importlib.resources import files

import numpy as np

from gramil.description.base import Base, base_values
from gramil.description.reading import parse_description, read_shop

EXAMPLES = files("gramil") / "data" / "examples"
TARN = (EXAMPLES / "tarn.toml").read_text(encoding="utf-8").partition("# The body")[0]
"""Neck and board; a body's lengths in inches are in `test_body.py`."""
LENGTHS = re.compile(
    r"^(length|width|spread|set_forward|thickness|beyond_last_fret|purfling|clearance) = ([\d.]+)", re.M
)


def of(text: str) -> Base:
    return base_values(parse_description(text), read_shop())


def assert_same(one: Base, other: Base, but: tuple[str, ...] = ()) -> None:
    for name in set(one.values) - set(but):
        a, b = one.values[name], other.values[name]
        if isinstance(a, float | np.ndarray):
            np.testing.assert_allclose(b, a, rtol=1e-14, atol=1e-14, err_msg=name)
        else:
            assert a == b, name


def test_inches_are_millimetres() -> None:
    inches = LENGTHS.sub(lambda m: f"{m[1]} = {float(m[2]) / 25.4!r}", TARN).replace('units = "mm"', 'units = "in"')
    assert inches != TARN
    assert_same(of(TARN), of(inches), ("instrument_units",))


def test_text_with_a_unit_is_a_bare_number() -> None:
    texts = LENGTHS.sub(lambda m: f'{m[1]} = "{m[2]} mm"', TARN)
    assert_same(of(TARN), of(texts))


def test_equal_outer_scales_are_one_scale() -> None:
    fanned = of(TARN.replace("length = 630 ", "bass = 630\ntreble = 630 "))
    assert_same(of(TARN), fanned, ("scale_sideways", "scale_square_at", "scale_square_at_cents"))


def test_one_radius_is_the_same_at_both_ends() -> None:
    one = of(TARN.replace('{ nut = "320 mm", end = "390 mm" }', '"350 mm"'))
    both = of(TARN.replace('{ nut = "320 mm", end = "390 mm" }', '{ nut = 350, end = "35 cm" }'))
    assert_same(one, both)


def test_what_is_left_out_is_none() -> None:
    text = TARN.replace("[binding]\nthickness = 1.8", "[binding]\nthickness = 0")
    without = re.sub(r"\[binding\].*?\n\n", "", text, flags=re.S)
    assert "[binding]" not in without
    assert_same(of(text), of(without))
