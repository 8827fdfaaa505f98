"""The page of keys says what the models say, and every key that has a default says why."""

import re
import tomllib
from pathlib import Path

import pytest
from pydantic import BaseModel

from gramil.description.instrument import Instrument
from gramil.description.keys import describe_keys, usual_by_kind
from gramil.description.kinds import USUAL, Usual
from gramil.description.problems import table_in
from gramil.description.shop.tables import Shop

PAGE = Path(__file__).parents[2] / "docs" / "keys.md"


def test_the_page_is_up_to_date() -> None:
    assert PAGE.read_text(encoding="utf-8") == describe_keys(), "write docs/keys.md anew from describe_keys()"


@pytest.mark.parametrize("model", [Instrument, Shop])
def test_every_key_is_described(model: type[BaseModel]) -> None:
    for name, field in model.model_fields.items():
        table = table_in(field.annotation)
        for key, each in table.model_fields.items() if table else ():
            assert each.description, f"{name}.{key}"
            assert each.is_required() or isinstance(each.json_schema_extra, dict), f"{name}.{key}"


@pytest.mark.parametrize(
    "row", [each for each in USUAL if isinstance(each.value, bool | tuple)], ids=lambda row: f"{row.kind}, {row.key}"
)
def test_what_is_usual_of_a_kind_stands_as_the_file_would_have_it(row: Usual) -> None:
    table, key = row.key.split(".")
    model = table_in(Instrument.model_fields[table].annotation)
    assert model is not None
    field = next(each for name, each in model.model_fields.items() if (each.alias or name) == key)
    shown = re.findall(rf"; {row.kind}: `(.*?)`", usual_by_kind(row.key, field))[0]
    found = tomllib.loads(f"value = {shown}")["value"]
    assert (tuple(found) if isinstance(found, list) else found) == row.value
