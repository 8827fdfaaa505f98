"""Whatever is described, or left out: a figure that is no number is never fine, nor a stop, and no sheet prints one."""

import math
import re
import tomllib
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import tomlkit
from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st
from tests.walks import fewer

from gramil.description.instrument import Instrument
from gramil.description.reading import parse_shop, read_description
from gramil.faults import MakersFault
from gramil.findings.finding import in_words
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.prints.whole import figures_of, findings_of, setups_of
from gramil.setups.setup import figures_on

from ..every_key.descriptions import (
    EXAMPLES,
    INSTRUMENTS,
    Place,
    at,
    key_at,
    lay_out_drawings,
    optional_in,
    places_in,
    text_of,
)

BARE = 'gramil = 1\n[shop]\nname = "bare"\nunits = "mm"\n'
WIRE = """
[[wire]]
name = "{}"
crown_width = 2.4
crown_height = 1.15
tang_thickness = 0.54
bead_thickness = 0.78
tang_depth = 1.6
"""
FACTORS = (0.003, 0.05, 0.3, 0.6, 0.8, 0.9, 1.1, 1.3, 2.0, 5.0, 50.0)
"""By how much one figure of a description is off."""


@cache
def shop_called(name: str) -> str:
    """The example shop without its places, whose readings lie in other files; or one with next to nothing in it."""
    if name == "bare":
        return BARE + WIRE.format("medium") + WIRE.format("large")
    whole = tomlkit.parse((EXAMPLES / "shop.toml").read_text("utf-8"))
    for table in ("air", "place", "piece"):
        whole.remove(table)
    return tomlkit.dumps(whole)


@cache
def places_of(name: str) -> tuple[list[Place], list[Place]]:
    """The places of a description that may be left out, and those of its plain numbers."""
    whole, optional = tomllib.loads(text_of(name)), set(optional_in(Instrument))
    every = [place for place in places_in(whole) if place[0] not in ("gramil", "instrument")]
    numbers = [place for place in every if type(at(whole, place)) in (int, float)]
    return [place for place in every if key_at(place) in optional], numbers


@st.composite
def descriptions(draw: Callable[..., Any]) -> str:
    """An example with some of it left out, and some of its figures far off."""
    name = draw(st.sampled_from(INSTRUMENTS))
    optional, numbers = places_of(name)
    whole = tomllib.loads(text_of(name))
    for place in draw(st.lists(st.sampled_from(numbers), max_size=2, unique=True)):
        inner = at(whole, place[:-1])
        inner[place[-1]] = type(inner[place[-1]])(inner[place[-1]] * draw(st.sampled_from(FACTORS)))
    gone = draw(st.lists(st.sampled_from(optional), max_size=4, unique=True))
    for place in sorted(gone, key=lambda each: [(isinstance(step, str), step) for step in each], reverse=True):
        leave_out(whole, place)
    return tomlkit.dumps(whole)


def leave_out(whole: Any, place: Place) -> None:
    """What stands at a place, if it stands there still."""
    try:
        del at(whole, place[:-1])[place[-1]]
    except (KeyError, IndexError):
        return


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with the drawings that outlines are taken from."""
    folder = tmp_path_factory.mktemp("bench")
    lay_out_drawings(folder)
    return folder


def figures_in(folder: Path, text: str, shop: str) -> Figures:
    """The figures of a description's text; raises MakersFault for one that is refused."""
    file = folder / "any.toml"
    file.write_text(text, encoding="utf-8")
    return figures_of(read_description(file), parse_shop(shop_called(shop)))


def no_number_is_judged(figures: Figures) -> None:
    formatter = Formatter(figures)
    for found in findings_of(figures):
        told = in_words(found, formatter)
        assert str(found.says).startswith("because ") == (found.severity == "not judged"), found
        if found.severity in ("stop", "caution", "fine"):
            assert math.isfinite(found.value), found
            assert figures.at(found.figure.address) == pytest.approx(found.value, abs=1e-12), found
        for text in (told.says, told.remedy):
            assert not re.search(r"\b(nan|inf)\b", text), text


def no_sheet_prints_one(figures: Figures) -> None:
    formatter = Formatter(figures)
    for setup in setups_of(figures):
        for text in (*map(formatter.filled, setup.texts), *map(formatter.text, figures_on(setup))):
            assert not re.search(r"\b(nan|inf)\b", text), (setup.name, text)


@pytest.mark.slow
@settings(max_examples=fewer(150, 15), suppress_health_check=[HealthCheck.filter_too_much, HealthCheck.too_slow])
@given(descriptions(), st.sampled_from(["example", "bare"]))
def test_of_any_instrument(bench: Path, text: str, shop: str) -> None:
    try:
        figures = figures_in(bench, text, shop)
    except MakersFault:
        assume(False)
    no_number_is_judged(figures)
    no_sheet_prints_one(figures)


def test_a_dome_that_does_not_span_the_top_is_told_as_what_is_not_known(bench: Path) -> None:
    """A radius of 25 mm, where 25 ft was meant: five verdicts were fine, the neck angle a stop."""
    figures = figures_in(bench, text_of("scree") + "\n[top]\nradius = 25\n", "example")
    no_number_is_judged(figures)
    found = {each.name: each for each in findings_of(figures)}
    names = ("neck angle", "tongue over the top", "saddle over the bridge", "strings over the top")
    for name in (*names, "torque on the bridge", "saddle, lowest string", "angle behind the saddle"):
        assert found[name].severity == "not judged", name
        assert "how far the top stands over the rim plane at the saddle" in str(found[name].says)
    assert found["top's dome in dry air"].severity == "not judged"


@pytest.mark.parametrize("strings", [5, 7, 12])
def test_strings_of_no_known_pitch_pull_nobody_knows_what(bench: Path, strings: int) -> None:
    """A neck was told that it folds up under them, with a stop."""
    whole = tomllib.loads(text_of("fell"))
    whole["strings"] = {"gauges": [0.012 + 0.003 * row for row in range(strings)]}
    figures = figures_in(bench, tomlkit.dumps(whole), "example")
    assert math.isnan(figures.at("string_pull_total"))
    no_number_is_judged(figures)
    no_sheet_prints_one(figures)
    found = {each.name: each for each in findings_of(figures)}
    for name in ("relief, too much", "relief, too little"):
        assert found[name].severity == "not judged"
        assert "pitches are not given" in str(found[name].says)
