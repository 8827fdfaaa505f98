"""Odd values at any key of either description, and in the files beside it: a maker's fault at most, no traceback.

Here a few of some thousands are tried, always the same ones; `make fuzz` tries them all.
"""

import random
from contextlib import suppress
from importlib.resources import as_file
from pathlib import Path
from typing import Any

import pytest

from gramil.description.reading import read_description, read_shop
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.prints.whole import figures_of
from gramil.shop.made_file import read_made
from gramil.shop.operations_file import work_with

from .every_key.descriptions import EXAMPLES, INSTRUMENTS, Place, lay_out_drawings, shop_text, text_of
from .every_key.odd_values import WORDS, odd_instruments, odd_values_of_shop, with_value
from .test_left_out import look_at

SEED = 20261130
TRIED, OF_SHOP = 24, 8
MADE = 'gramil = 1\n[made]\nunits = "mm"\n[[done]]\noperation = {}\nnote = {}\ndate = {}\nmeasured = {{ {} = {} }}\n'
FIGURES = ("board_thickness", '"fret_position[7]"', '"fret_position[99999999999999999999]"', '"{{}}"', '"a[b"')
VALUES = (
    '"6.4 mm"',
    "0",
    "-0.0",
    "5e-324",
    "1e300",
    "nan",
    "-inf",
    "9223372036854775808",
    '"{}"',
    '"線"',
    "[1]",
    "true",
)
OPERATIONS = ("what", "part", "air", "sheet", "hands", "clamp", "air_hours", "after", "skipped", "wood", "caution")


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the examples, and with the drawings that outlines are taken from."""
    folder = tmp_path_factory.mktemp("odd")
    with as_file(EXAMPLES) as examples:
        for file in examples.iterdir():
            (folder / file.name).write_bytes(file.read_bytes())
    lay_out_drawings(folder)
    return folder


@pytest.fixture(scope="module")
def tarn(bench: Path) -> Figures:
    return figures_of(read_description(bench / "tarn.toml"), read_shop(bench / "shop.toml"))


def chosen(every: Any, count: int) -> list[Any]:
    return random.Random(SEED).sample(list(every), count)


@pytest.mark.parametrize(("name", "place", "value"), chosen(odd_instruments(), TRIED), ids=lambda each: str(each)[:40])
def test_an_odd_value_in_an_instrument(bench: Path, name: str, place: Place, value: Any) -> None:
    file = bench / "odd.toml"
    file.write_text(with_value(text_of(name), place, value), encoding="utf-8")
    with suppress(MakersFault):
        look_at(file, bench / "shop.toml")


@pytest.mark.parametrize(("place", "value"), chosen(odd_values_of_shop(), OF_SHOP), ids=lambda each: str(each)[:40])
def test_an_odd_value_in_a_shop(bench: Path, tarn: Figures, place: Place, value: Any) -> None:
    shop = bench / "odd-shop.toml"
    shop.write_text(with_value(shop_text(), place, value), encoding="utf-8")
    with suppress(MakersFault):
        look_at(bench / "tarn.toml", shop, tarn)


@pytest.mark.parametrize("name", INSTRUMENTS)
def test_frets_that_count_from_beyond_the_last_one(bench: Path, name: str) -> None:
    """The last fret that counts is the 12th, or the board's last, where none is given."""
    file = bench / "odd.toml"
    file.write_text(with_value(text_of(name), ("intonation",), {"from_fret": 13}), encoding="utf-8")
    with pytest.raises(MakersFault, match=r"intonation\.from_fret: read 13\. The last fret that counts is 1"):
        read_description(file)


@pytest.mark.parametrize("length", [5e-324, 1e-9, -1e-4])
def test_a_length_that_nobody_could_measure(bench: Path, length: float) -> None:
    file = bench / "odd.toml"
    for place in (("nut", "spread"), ("board", "thickness"), ("bridge", "length")):
        file.write_text(with_value(text_of("tarn"), place, length), encoding="utf-8")
        with pytest.raises(MakersFault, match=r"0, or 0\.001 mm at least"):
            read_description(file)


@pytest.mark.parametrize("words", WORDS, ids=range(len(WORDS)))
def test_any_words_in_what_is_made(bench: Path, tarn: Figures, words: str) -> None:
    file = bench / "odd.made.toml"
    quoted = with_value('[t]\na = ""', ("t", "a"), words).split("= ", 1)[1].strip()
    for operation, note in ((quoted, '""'), ('"thicknessed"', quoted)):
        file.write_text(MADE.format(operation, note, "2026-11-02", "board_thickness", "6.4"), encoding="utf-8")
        with suppress(MakersFault):
            read_made(file).pins(tarn)


@pytest.mark.parametrize("value", VALUES)
def test_any_value_as_measured(bench: Path, tarn: Figures, value: str) -> None:
    file = bench / "odd.made.toml"
    for figure in FIGURES:
        file.write_text(MADE.format('"thicknessed"', '""', "0001-01-01", figure, value), encoding="utf-8")
        with suppress(MakersFault):
            read_made(file).pins(tarn)


@pytest.mark.parametrize("key", OPERATIONS)
def test_any_value_in_a_list_of_operations(key: str) -> None:
    for value in (*VALUES, "[]", '[""]', '["{}"]', "[{}]", '[{ operation = "slotted" }]', '"' + "線" * 200 + '"'):
        for name in ("slotted", "of_my_own", '"{}"'):
            with suppress(MakersFault):
                work_with([("odd.operations.toml", f"gramil = 1\n[operation.{name}]\n{key} = {value}\n")])
