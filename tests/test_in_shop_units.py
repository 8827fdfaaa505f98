"""The program's own words in an inch shop: each measure turned once, names and quotes left alone.

An inch is 25.4 mm, a pound-force 4.4482216 N, an inch-pound 0.11298483 N m, a psi 0.0068947573 MPa (from the
international yard and pound and the standard acceleration, all exact).
"""

import re

import pytest

from gramil.description.shop.limits import LIMITS
from gramil.in_shop_units import in_shop_units, phrases_in_shop_units


@pytest.mark.parametrize(
    ("words", "in_inches"),
    [
        ("common practice: 2.5 to 3 mm, because", "common practice: 0.098 to 0.118 in, because"),
        ("common practice: 0.05 mm still holds", "common practice: 0.002 in still holds"),
        ("common practice: -0.01 mm; a setting", "common practice: -0.0004 in; a setting"),
        ("8 mm to 14 mm", "0.315 to 0.551 in"),
        ("7 to 11.5 N m", "62 to 102 in-lb"),
        ("360 to 430 N, at", "80.9 to 96.7 lbf, at"),
        ("13900 MPa", "2020000 psi"),
        ("10.8 GPa", "1570000 psi"),
        ("a tenth of a millimetre", "0.0039 in"),
        ("0 mm", "0 in"),
        ("12 % of 3 Newton's steps", "12 % of 3 Newton's steps"),
        ("2211 MPa mm^m", "2211 MPa mm^m"),
        ("930 mm2", "930 mm2"),
        ('the brace "5 mm bar", 5 mm high', 'the brace "5 mm bar", 0.197 in high'),
    ],
)
def test_measures_are_turned_and_names_are_not(words: str, in_inches: str) -> None:
    assert in_shop_units(words, "in") == in_inches
    assert in_shop_units(words, "mm") == words


def test_phrases_alone_leave_numbers_be() -> None:
    told = phrases_in_shop_units("5 mm bar, some tenths of a millimetre", "in")
    assert told == "5 mm bar, some hundredths of an inch"


def test_no_limit_keeps_a_millimetre_in_its_reason() -> None:
    kept = [limit.name for limit in LIMITS.values() if re.search(r"\bmm\b|millimet", in_shop_units(limit.origin, "in"))]
    assert kept == []
