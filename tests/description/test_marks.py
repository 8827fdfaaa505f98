"""The least and the most that keys take are said once, in their tables: whoever else needs them asks the tables."""

import ast
import math
from collections.abc import Iterator
from pathlib import Path

import pytest
from pydantic import BaseModel

import gramil
from gramil.description.instrument import Instrument
from gramil.description.marks import Bounds, bounds_of, marks_of
from gramil.description.problems import table_in
from gramil.description.shop.tables import BlankTable, JigTable, Shop, WireTable

ROOT = Path(gramil.__file__).parent
ABOVE = ("bench", "cli", "acts")
"""Rooms that read what is typed."""
LARGE = 500
"""A smaller number may well be another than a bound."""


@pytest.mark.parametrize(
    ("table", "key", "bounds"),
    [
        (BlankTable, "length", Bounds(0, 5000, above=True)),
        (BlankTable, "count", Bounds(0, 10_000, above=False)),
        (JigTable, "constant", Bounds(-2000, 2000, above=False)),
        (WireTable, "name", Bounds(-math.inf, math.inf, above=False)),
    ],
)
def test_bounds_are_those_of_the_table(table: type[BaseModel], key: str, bounds: Bounds) -> None:
    assert bounds_of(table, key) == bounds


def test_what_is_outside_or_no_number_is_not_within() -> None:
    bounds = Bounds(0, 3, above=True)
    assert [bounds.holds(each) for each in (-1, 0, 0.001, 3, 3.001, math.nan)] == [
        False,
        False,
        True,
        True,
        False,
        False,
    ]
    assert Bounds(0, 3, above=False).holds(0)


def test_no_page_and_no_command_says_again_what_a_table_says() -> None:
    most = {value for value in _largest() if value >= LARGE}
    assert {5000, 10_000} <= most
    said = [
        f"{path.relative_to(ROOT)}:{number.lineno} {number.value}"
        for room in ABOVE
        for path in sorted((ROOT / room).rglob("*.py"))
        for number in _held_against(ast.parse(path.read_text(encoding="utf-8")))
        if number.value in most
    ]
    assert not said, "take it from the table with bounds_of"


def _largest() -> Iterator[float]:
    """The most of every key of the two descriptions."""
    for model in (Instrument, Shop):
        for field in model.model_fields.values():
            table = table_in(field.annotation)
            for key in table.model_fields if table else ():
                yield from (float(mark.le) for mark in marks_of(table.model_fields[key]) if hasattr(mark, "le"))


def _held_against(tree: ast.Module) -> Iterator[ast.Constant]:
    """Numbers that something is compared with, and those that stand in a dictionary."""
    for node in ast.walk(tree):
        inner = node.comparators if isinstance(node, ast.Compare) else node.values if isinstance(node, ast.Dict) else []
        for each in inner:
            yield from (one for one in ast.walk(each) if isinstance(one, ast.Constant) and _is_number(one.value))


def _is_number(value: object) -> bool:
    return isinstance(value, int | float) and not isinstance(value, bool)
