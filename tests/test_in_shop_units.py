"""The program's own words in an inch shop: each measure turned once, names and quotes left alone.

An inch is 25.4 mm, a pound-force 4.4482216 N, an inch-pound 0.11298483 N m, a psi 0.0068947573 MPa (from the
international yard and pound and the standard acceleration, all exact).
"""

import ast
import re
import tomllib
from pathlib import Path

import pytest
import tomlkit

import gramil
from gramil.description.instrument import Instrument
from gramil.description.problems import table_in
from gramil.description.reading import parse_description
from gramil.description.shop.limits import LIMITS
from gramil.description.shop.tables import Shop
from gramil.faults import MakersFault
from gramil.in_shop_units import in_shop_units, own_words_in_shop_units, phrases_in_shop_units

from .conftest import EXAMPLES

METRIC = re.compile(r"\d ?mm\b|millimet")


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


@pytest.mark.parametrize("model", [Instrument, Shop])
def test_what_a_key_is_has_its_examples_in_the_shop_s_unit(model: type) -> None:
    words = [
        each.description or ""
        for field in model.model_fields.values()  # type: ignore[attr-defined]  # both are pydantic's
        if (table := table_in(field.annotation))
        for each in table.model_fields.values()
    ]
    assert len(words) > 100
    assert [each for each in words if METRIC.search(own_words_in_shop_units(each, "in"))] == []
    assert [own_words_in_shop_units(each, "mm") for each in words] == words


def test_every_example_that_the_descriptions_rooms_quote_has_its_inches() -> None:
    """Whatever is quoted with millimetres in what they say, but for what names both units."""
    quoted = re.compile(r'"[^"]*\d ?mm\b[^"]*"')
    files = sorted((Path(gramil.__file__).parent / "description").rglob("*.py"))
    constants = [
        node.value
        for file in files
        for node in ast.walk(ast.parse(file.read_text(encoding="utf-8")))
        if isinstance(node, ast.Constant) and isinstance(node.value, str) and "\n" not in node.value
    ]
    said = {example for words in constants for example in quoted.findall(words)}
    both = {'"roll 914 mm"', '"310 x 440 mm"', r'"\1 mm"'}
    assert len(said) > 5
    assert [each for each in sorted(said - both) if METRIC.search(own_words_in_shop_units(each, "in"))] == []


@pytest.mark.parametrize("wrong", ["fret twelve", True, -1.0, None], ids=str)
def test_whatever_is_wrong_in_an_inch_file_is_answered_in_inches(wrong: str | bool | float | None) -> None:
    """Every key of *Fell* wrong, or missing. How a length is written is said for both units, as a length may be."""
    text = (EXAMPLES / "fell.toml").read_text(encoding="utf-8")
    tables = {name: table for name, table in tomllib.loads(text).items() if isinstance(table, dict)}
    spoilt = {
        name: table if name == "instrument" else {} if wrong is None else dict.fromkeys(table, wrong)
        for name, table in tables.items()
    }
    with pytest.raises(MakersFault) as raised:
        parse_description(tomlkit.dumps({"gramil": 1, **spoilt}), "fell.toml")
    said = [str(fault).replace('"18.3 mm", ', "") for fault in raised.value.faults]
    assert len(said) > 5
    assert [each for each in said if METRIC.search(each)] == []
