"""Each key that either description may leave out, left out by itself: a maker's fault at most, never a traceback.

At the gate one in nine of an instrument's keys, one in three of a shop's, and of these the commands in turn.

Every such key is given in one of the files beside this test or in an example, so that leaving it out says something; a
new key fails here until it is given in one of them.
"""

import tomllib
from collections.abc import Callable, Iterator
from contextlib import suppress
from functools import cache
from importlib.resources import as_file, files
from pathlib import Path
from typing import Any

import pytest
import tomlkit
from click.testing import CliRunner
from tests.walks import picked, sample

from gramil.cli import gramil
from gramil.description.instrument import Instrument
from gramil.description.reading import read_description, read_shop
from gramil.description.shop.tables import Shop
from gramil.faults import MakersFault
from gramil.findings.finding import in_words
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.prints.whole import drawings_of, figures_of, findings_of, setups_of
from gramil.setups.setup import figures_on

from .every_key.descriptions import (
    INSTRUMENTS,
    Key,
    Place,
    at,
    first_places,
    key_at,
    lay_out_drawings,
    optional_in,
    places_in,
    shop_text,
    text_of,
)

EXAMPLES = files("gramil") / "data" / "examples"
WITH_AIR = ("air", "place", "piece", "wood")
"""Tables of a shop that every command on wood and air reads."""
NOW = "2026-01-19T09:00"


def without(text: str, place: Place) -> str:
    """The file less what stands at a place."""
    whole = tomlkit.parse(text)
    del at(whole, place[:-1])[place[-1]]
    return tomlkit.dumps(whole)


@cache
def given_at(name: str) -> dict[Key, Place]:
    """The first place of each key that a file of an instrument gives."""
    return first_places(text_of(name))


def cases() -> list[tuple[str, Place]]:
    """Each optional key of an instrument, in the first file that gives it."""
    found = []
    for key in optional_in(Instrument):
        name = next((name for name in INSTRUMENTS if key in given_at(name)), None)
        if name is not None:
            found.append((name, given_at(name)[key]))
    return found


def shop_cases() -> list[Place]:
    """Each optional key of a shop, the first time that it stands there; where a piece lay, wherever it stands.

    Pieces differ in what else is known of them.
    """
    optional, first = set(optional_in(Shop)), first_places(shop_text())
    every = places_in(tomllib.loads(shop_text()))
    return [each for each in every if key_at(each) in optional and (each in first.values() or each[-1] == "lay")]


def named(case: Any) -> str:
    return ".".join(map(str, case)) if isinstance(case, tuple) else str(case)


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the examples, and with the drawings that outlines are taken from."""
    folder = tmp_path_factory.mktemp("bench")
    with as_file(EXAMPLES) as examples:
        for file in examples.iterdir():
            (folder / file.name).write_bytes(file.read_bytes())
    lay_out_drawings(folder)
    return folder


def test_every_key_that_may_be_left_out_is_given_somewhere() -> None:
    given = {key for name in INSTRUMENTS for key in given_at(name)}
    assert set(optional_in(Instrument)) - given == set()
    assert set(optional_in(Shop)) - {key_at(place) for place in places_in(tomllib.loads(shop_text()))} == set()


@pytest.mark.parametrize("name", ["square", "fanned"])
def test_with_every_key_they_can_be_read(bench: Path, name: str) -> None:
    (bench / f"{name}.toml").write_text(text_of(name), encoding="utf-8")
    look_at(bench / f"{name}.toml", bench / "shop.toml")


@pytest.mark.parametrize(("name", "place"), sample(cases(), 9, lambda case: named(case[1])), ids=named)
def test_an_instrument_without_it(bench: Path, whole: Callable[[str], Figures], name: str, place: Place) -> None:
    file = bench / f"{name}-left.toml"
    file.write_text(without(text_of(name), place), encoding="utf-8")
    with suppress(MakersFault):  # a key that others go with
        look_at(file, bench / "shop.toml", whole(name))


@pytest.fixture(scope="module")
def whole(bench: Path) -> Callable[[str], Figures]:
    """The figures of an instrument with every key that its file gives, worked out once."""

    @cache
    def figures(name: str) -> Figures:
        file = bench / f"{name}-whole.toml"
        file.write_text(text_of(name), encoding="utf-8")
        found = figures_of(read_description(file), read_shop(bench / "shop.toml"))
        assert all(found[each] is not None for each in found)
        return found

    return figures


def look_at(file: Path, shop: Path, like: Figures | None = None) -> None:
    """Everything that follows from a description, worked out and put into words.

    What is no other than in the figures that it is `like` is taken from them.
    """
    figures = figures_of(read_description(file), read_shop(shop))
    if like is not None:
        figures = like.with_base(figures.base, figures.origins, figures.lengths)
    formatter = Formatter(figures)
    for name in figures:
        assert figures[name] is not None
    for found in findings_of(figures):
        assert in_words(found, formatter).says
    for setup in setups_of(figures):
        told = [*map(formatter.text, figures_on(setup)), *map(formatter.filled, setup.texts)]
        assert all(isinstance(each, str) for each in told)
    assert drawings_of(figures)


@pytest.mark.parametrize("place", sample(shop_cases(), 3, named), ids=named)
def test_a_shop_without_it(bench: Path, place: Place) -> None:
    shop = bench / "left.toml"
    shop.write_text(without(shop_text(), place), encoding="utf-8")
    every = [*commands(str(bench / "tarn.toml"), str(shop), str(place[0]) in WITH_AIR)]
    picks = [words for words in every if picked((words[0], named(place)), 3)]
    for words in picks or every[:1]:
        done = CliRunner().invoke(gramil, words)
        assert done.exception is None or isinstance(done.exception, SystemExit | MakersFault), (words, done.exception)


def commands(instrument: str, shop: str, with_air: bool) -> Iterator[list[str]]:
    """Every command that reads the shop's tables of a kind."""
    yield ["check", instrument, "--shop", shop]
    yield ["match", instrument, "--shop", shop, "--at", NOW]
    if with_air:
        yield ["ready", instrument, "--shop", shop, "--now", NOW, "--why"]
        yield ["now", instrument, "--shop", shop, "--at", NOW]
        yield ["air", "show", "--shop", shop]
        yield ["if-glued", "top", "--piece", "top 1", "--shop", shop, "--now", NOW]
        yield ["if-glued", "board", "--piece", "hill oak 1", "--shop", shop, "--now", NOW]


def test_a_piece_that_lay_nowhere_known_is_told_so(bench: Path) -> None:
    """Its moisture is not known, and everything else is as it was."""
    shop = bench / "stray.toml"
    stray = '\n[[piece]]\nname = "stray"\nwood = "black walnut"\nthickness = 4\n'
    shop.write_text((EXAMPLES / "shop.toml").read_text("utf-8") + stray, encoding="utf-8")
    done = CliRunner().invoke(gramil, ["now", str(bench / "tarn.toml"), "--shop", str(shop), "--at", NOW])
    assert done.exit_code == 0, done.exception
    assert "stray: it is not known where it lay" in done.output
    same = CliRunner().invoke(
        gramil, ["now", str(bench / "tarn.toml"), "--shop", str(bench / "shop.toml"), "--at", NOW]
    )
    assert [line for line in done.output.splitlines() if "stray" not in line] == same.output.splitlines()
