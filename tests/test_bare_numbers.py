"""The unit of a bare number is said in one place, and every reader of what is written asks there."""

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

import gramil
from gramil.bare_numbers import length_unit, reader_of, with_unit
from gramil.description.strings.tables import Strings
from gramil.measure import LengthUnit

ROOT = Path(gramil.__file__).parent
HOME = ROOT / "bare_numbers.py"
KNOW_IT_BY_THE_KEY = ("description", "measure.py", "api.py")
"""A key of a description is known to be an angle by its type, before there is a figure."""


@pytest.mark.parametrize(
    ("said", "otherwise", "unit"),
    [("in", "mm", "in"), ("mm", "in", "mm"), (None, "mm", "mm"), ("", "in", "in"), ("IN", "mm", "mm"), (7, "in", "in")],
)
def test_the_unit_of_bare_lengths(said: object, otherwise: LengthUnit, unit: LengthUnit) -> None:
    assert length_unit(said, otherwise) == unit


@pytest.mark.parametrize(
    ("written", "symbol", "lengths", "read"),
    [
        ("1", "mm", "in", 25.4),
        ("1", "mm", "mm", 1.0),
        ("1 mm", "mm", "in", 1.0),
        ("180", "rad", "in", 3.141592653589793),
        ("2", "g", "in", 2.0),
        ("32 F", "C", "in", 0.0),
    ],
)
def test_only_a_bare_length_follows_what_it_is_written_in(
    written: str, symbol: str, lengths: LengthUnit, read: float
) -> None:
    reader = reader_of(symbol, lengths)
    assert reader is not None
    assert reader(written) == pytest.approx(read, abs=1e-12)


def test_a_number_that_has_no_other_unit_has_no_reader() -> None:
    assert [reader_of(each, "mm") for each in (None, "", "MPa", "count")] == [None] * 4


def test_a_bare_gauge_is_in_inches_in_a_file_of_either_unit() -> None:
    tuned = {"gauges": (0.012, "0.3 mm"), "tuning": ("E4", "B3")}
    for unit in ("mm", "in"):
        read = Strings.model_validate(tuned, context={"unit": unit}).gauges
        assert read == pytest.approx((0.3048, 0.3))


def test_a_bare_length_with_its_unit_keeps_every_digit() -> None:
    assert with_unit(648.1234567, "mm", "in") == "648.1234567 in"
    assert with_unit(0.0000005, "mm", "mm") == "0.0000005 mm"
    assert [with_unit(each, "mm", "in") for each in ('3"', "3 mm", "3/4", "flat")] == ['3"', "3 mm", "3/4 in", "flat"]
    assert with_unit(14, "rad", "in") == "14"


def test_nobody_else_settles_the_unit_of_a_bare_length() -> None:
    others = [path for path in sorted(ROOT.rglob("*.py")) if path != HOME]
    found = [
        f"{path.relative_to(ROOT)}:{line}"
        for path in others
        for line in _settled_in(ast.parse(path.read_text(encoding="utf-8")))
    ]
    assert not found, "ask length_unit"


def test_nobody_else_reads_an_angle_by_the_unit_of_its_figure() -> None:
    found = [
        path.relative_to(ROOT).as_posix()
        for path in sorted(ROOT.rglob("*.py"))
        if path != HOME and path.relative_to(ROOT).parts[0] not in KNOW_IT_BY_THE_KEY
        if "read_angle" in path.read_text(encoding="utf-8")
    ]
    assert not found, "ask reader_of"


def _settled_in(tree: ast.Module) -> Iterator[int]:
    """Lines where "in" is given for what equals "in"."""
    for node in ast.walk(tree):
        match node:
            case ast.IfExp(
                test=ast.Compare(ops=[ast.Eq()], comparators=[ast.Constant(value="in")]), body=ast.Constant(value="in")
            ):
                yield node.lineno
