"""A change tried on the bench, for every figure that a key sets: the page is that of a bench that knew nothing before.

What a change leaves alone is not worked out again, and what is drawn of it is kept; here all of it is made anew beside.
"""

import re
import shutil
from collections.abc import Iterator
from math import isfinite
from pathlib import Path
from unittest.mock import patch

import httpx
import pytest

from gramil.bench import draft
from gramil.bench.open_instruments import OpenInstrument
from gramil.bench.wood_grain import _along
from gramil.change.settled import settled
from gramil.description.base import INPUTS, keys_of
from gramil.description.reading import parse_description
from gramil.graph import Figures, derive
from gramil.prints.whole import figures_of, figures_of_files
from gramil.quantities import unit_of
from gramil.writers.svg import _corners

from ..conftest import EXAMPLES
from ..walks import sample
from .conftest import serving

TARN = figures_of_files(EXAMPLES / "tarn.toml", EXAMPLES / "shop.toml")


def moved() -> Iterator[tuple[str, str]]:
    """Each key that sets one number of Tarn, with that number a two-hundredth larger."""
    for name, each in INPUTS.items():
        value, unit = TARN.base[name], unit_of(each.annotation)
        keys = keys_of(name)
        if keys and type(value) is float and isfinite(value) and value and not keys[0].startswith(("limits.", "shop.")):
            yield keys[0], f"{value * 1.005:.6g}{' mm' if unit and unit.symbol == 'mm' else ''}"


def all_anew(held: OpenInstrument, text: str) -> Figures:
    """The figures of another text with nothing taken over from the instrument that is open."""
    made = figures_of(parse_description(text, held.seen.name), held.shop, held.figures.pins, held.air)
    return settled(derive(made.graph, made.base, made.origins, made.pins, made.lengths))


@pytest.fixture(scope="module")
def shop_at_work(laid_out: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[httpx.Client]:
    """A client at a bench where the demonstration shop is laid out, with work done and measured."""
    folder = tmp_path_factory.mktemp("at-work")
    shutil.copyfile(laid_out, folder / "shop.gramil")
    with serving(folder) as bench, bench.client() as client:
        yield client


@pytest.mark.parametrize(("key", "value"), sample(sorted(dict(moved()).items()), 24))
def test_the_page_of_a_change_is_as_if_nothing_had_been_worked_out(
    shop_at_work: httpx.Client, numbers: dict[str, int], key: str, value: str
) -> None:
    tarn = f"/instrument/{numbers['Tarn']}"
    asked = {"fret": "7", "key": key, "value": value}
    page = shop_at_work.get(tarn, params=asked).text
    _corners.cache_clear()
    _along.cache_clear()
    with patch.object(draft, "changed", all_anew):
        assert bare(page) == bare(shop_at_work.get(tarn, params=asked).text)


def test_most_keys_that_are_moved_are_taken() -> None:
    assert len(dict(moved())) > 60


def bare(page: str) -> str:
    """A page without what is another one each time it is asked for."""
    return re.sub(r'nonce="[^"]*"', "", page)
