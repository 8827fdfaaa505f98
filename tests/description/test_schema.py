"""The schemas of the two descriptions agree with their reader: what is wrong in shape both refuse, and what the reader
takes the schema takes.
"""

import random
import tomllib
from collections.abc import Callable, Iterator
from copy import deepcopy
from datetime import date
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any

import pytest
import tomlkit
from jsonschema import Draft7Validator
from tests.walks import fewer

from gramil.description.reading import parse_description, parse_shop
from gramil.description.schema import instrument_schema, shop_schema
from gramil.faults import MakersFault
from gramil.measure import show

from ..conftest import EXAMPLES

INSTRUMENTS = ("tarn", "tarn-plan", "fell", "scree", "mere", "corrie")
MUTATIONS = fewer(200, 80)
KINDS: tuple[Any, ...] = (True, [], {}, [{}], "", "no such word", 12, -1.5, [1, 2, 3], {"no_such_key": 1})
"""What is put in a key's place: each kind of value that TOML has."""
Tables = dict[str, Any]
Place = tuple[str | int, ...]


@cache
def validator(shop: bool) -> Draft7Validator:
    schema = shop_schema() if shop else instrument_schema()
    Draft7Validator.check_schema(schema)
    return Draft7Validator(schema)


def as_editors_have_it(value: Any) -> Any:
    """TOML as JSON: a date is its text."""
    if isinstance(value, dict):
        return {key: as_editors_have_it(each) for key, each in value.items()}
    if isinstance(value, list):
        return [as_editors_have_it(each) for each in value]
    return value.isoformat() if isinstance(value, date) else value


def taken_by_schema(tables: Tables) -> bool:
    return bool(validator("shop" in tables).is_valid(as_editors_have_it(tables)))


def taken_by_reader(tables: Tables) -> bool:
    text = tomlkit.dumps(tables)
    read: Callable[[str], object] = parse_shop if "shop" in tables else parse_description
    try:
        read(text)
    except MakersFault:
        return False
    return True


@cache
def tables_of(name: str) -> Tables:
    return tomllib.loads((EXAMPLES / f"{name}.toml").read_text(encoding="utf-8"))


def places(value: Any, at: Place = ()) -> Iterator[Place]:
    """Where every key and every member of a list stands."""
    steps = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for step, each in steps:
        yield (*at, step)
        yield from places(each, (*at, step))


def put(tables: Tables, at: Place, value: Any) -> Tables:
    changed = deepcopy(tables)
    inner: Any = changed
    for step in at[:-1]:
        inner = inner[step]
    inner[at[-1]] = value
    return changed


def without(tables: Tables, at: Place) -> Tables:
    changed = deepcopy(tables)
    inner: Any = changed
    for step in at[:-1]:
        inner = inner[step]
    del inner[at[-1]]
    return changed


@pytest.mark.parametrize("name", [*INSTRUMENTS, "shop"])
def test_the_examples_are_taken(name: str) -> None:
    assert [each.message for each in validator(name == "shop").iter_errors(as_editors_have_it(tables_of(name)))] == []


def test_the_shop_of_common_practice_is_taken() -> None:
    text = (files("gramil") / "data" / "shop-default.toml").read_text(encoding="utf-8")
    assert taken_by_schema(tomllib.loads(text))


@pytest.mark.parametrize("name", [*INSTRUMENTS, "shop"])
def test_what_the_reader_takes_the_schema_takes(name: str) -> None:
    """Keys at random with any kind of value in their place, or left out: the schema never refuses what can be read."""
    draw, tables = random.Random(f"taken {name}"), tables_of(name)
    everywhere = list(places(tables))
    for _ in range(MUTATIONS // 6 + 1):
        at = draw.choice(everywhere)
        changed = put(tables, at, draw.choice(KINDS)) if draw.random() < 0.8 else without(tables, at)
        assert taken_by_schema(changed) or not taken_by_reader(changed), at


def wrong_in_shape(tables: Tables, draw: random.Random) -> tuple[Place, Tables]:
    """A description with one thing wrong in shape, whatever its figures are."""
    everywhere = [at for at in places(tables) if not isinstance(at[-1], int)]
    at = draw.choice(everywhere)
    value: Any = tables
    for step in at:
        value = value[step]
    if isinstance(value, dict):
        return at, put(tables, at, draw.choice(("a word", 7, True, [7])))
    if draw.random() < 0.3:
        return at, put(tables, (*at[:-1], f"{at[-1]}_and_more"), value)
    wrong = {"no_such_key": 1} if isinstance(value, str | int | float | bool | date) else draw.choice((True, {"x": 1}))
    return at, put(tables, at, wrong)


@pytest.mark.parametrize("name", [*INSTRUMENTS, "shop"])
def test_what_is_wrong_in_shape_both_refuse(name: str) -> None:
    draw = random.Random(f"refused {name}")
    for _ in range(MUTATIONS // 6 + 1):
        at, changed = wrong_in_shape(tables_of(name), draw)
        assert not taken_by_schema(changed), at
        assert not taken_by_reader(changed), at


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("board.thickness", "6.3 bananas"),
        ("board.thickness", "six"),
        ("instrument.units", "cm"),
        ("instrument.handed", "both"),
        ("scale.frets", "19"),
        ("scale.frets", 0),
        ("scale.zero_fret", "no"),
        ("instrument.name", ""),
    ],
)
def test_words_and_counts_that_both_refuse(key: str, value: Any) -> None:
    table, _, name = key.partition(".")
    changed = put(tables_of("tarn"), (table, name), value)
    assert not taken_by_schema(changed)
    assert not taken_by_reader(changed)


@pytest.mark.parametrize("table", ["instrument", "scale", "nut", "board", "strings"])
def test_a_key_that_must_be_given_is_missed_by_both(table: str) -> None:
    """Which these are stands on the page of keys, which is held against the models."""
    page = (Path(__file__).parents[2] / "docs" / "keys.md").read_text(encoding="utf-8")
    rows = page.split(f"### `[{table}]`")[1].split("### ")[0].splitlines()
    needed = [row.split("`")[1] for row in rows if row.startswith("| `") and "must be given" in row]
    assert needed
    for key in needed:
        changed = without(tables_of("tarn"), (table, key))
        assert not taken_by_schema(changed), key
        assert not taken_by_reader(changed), key


WRITTEN = ("630 mm", " 63 cm ", ".63 m", "24 13/16 in", '24-13/16"', "24 ¾ in", "24¾″", "2' 3/4\"", "2 ft 13/16 inch",
           "24800 THOU", "630", "+630 Mm", "24.8 in.", "24⁄1 inches")  # fmt: skip


@pytest.mark.parametrize("written", [*WRITTEN, *(show(length, "in", "64ths") for length in (630.03, 629.9, 400.0))])
def test_a_length_however_a_maker_writes_it(written: str) -> None:
    changed = put(tables_of("tarn"), ("scale", "length"), written)
    assert taken_by_schema(changed) or not taken_by_reader(changed)


def test_at_least_most_of_them_can_be_read() -> None:
    """The lengths above are worth trying: all but two the reader takes."""
    read = [each for each in WRITTEN if taken_by_reader(put(tables_of("tarn"), ("scale", "length"), each))]
    assert len(read) >= len(WRITTEN) - 2


def test_a_long_text_is_judged_at_once() -> None:
    """A pattern that could be read in two ways would take longer than anybody waits for these."""
    for text in ("1" * 5000 + "x", "m" * 5000 + "x", "1 mm" * 2000 + "x"):
        assert not taken_by_schema(put(tables_of("tarn"), ("scale", "length"), text))
