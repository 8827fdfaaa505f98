"""What a piece of wood is stands in one record, which stock, matching and the shop's description are made of."""

import ast
import math
from dataclasses import fields
from pathlib import Path

import gramil
from gramil.description import records
from gramil.description.records import SIZES, PieceOfWood, piece_of_wood
from gramil.description.shop.tables import BlankTable
from gramil.description.wood.tables import PieceTable
from gramil.description.wood.tried_tables import TappedTable
from gramil.now.match import Stock
from gramil.shop import stock

ROOT = Path(gramil.__file__).parent
FIELDS = {"name", "wood", *SIZES}


def test_every_record_of_wood_is_made_of_the_one() -> None:
    for kind in (records.Blank, stock.Blank, Stock):
        assert issubclass(kind, PieceOfWood)
    assert {each.name for each in fields(PieceOfWood)} == FIELDS


def test_nobody_else_says_what_a_piece_of_wood_is() -> None:
    found = {
        node.name
        for path in sorted(ROOT.rglob("*.py"))
        if path.name != "names.py"
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.ClassDef) and _fields(node) >= FIELDS
    }
    forms_of_the_file = {each.__name__ for each in (BlankTable, PieceTable, TappedTable)}
    assert found - forms_of_the_file == {PieceOfWood.__name__}, "make it of PieceOfWood"


def _fields(node: ast.ClassDef) -> set[str]:
    return {
        each.target.id for each in node.body if isinstance(each, ast.AnnAssign) and isinstance(each.target, ast.Name)
    }


def test_a_size_that_is_not_noted_is_no_number() -> None:
    row = PieceTable.model_validate({"name": "one", "wood": "walnut", "thickness": 4, "length": 550})
    found = piece_of_wood(row)
    assert math.isnan(found.pop("width"))
    assert found == {"name": "one", "wood": "walnut", "length": 550.0, "thickness": 4.0}
