"""Drawings in a shop that lists next to nothing, and of instruments at the ends of what may be asked for."""

from dataclasses import fields
from importlib.resources import files
from itertools import combinations
from math import isfinite

import pytest

from gramil.description.reading import parse_description, parse_shop
from gramil.drawings.marks import Label, Mark, Polyline, Words
from gramil.graph import Figures
from gramil.prints.whole import drawings_of, figures_of

EXAMPLES = files("gramil").joinpath("data", "examples")
WIRE = """
[[wire]]
name = "{}"
crown_width = 2.4
crown_height = 1.15
tang_thickness = 0.54
bead_thickness = 0.78
tang_depth = 1.6
"""
BARE = 'gramil = 1\n[shop]\nname = "one drawer"\nunits = "mm"\n' + WIRE.format("medium") + WIRE.format("large")
TWELVE = """gauges = [0.010, 0.010, 0.014, 0.014, 0.009, 0.023, 0.012, 0.030, 0.020, 0.039, 0.027, 0.047]
tuning = ["E4", "E4", "B3", "B3", "G4", "G3", "D4", "D3", "A3", "A2", "E3", "E2"]"""


def text_of(name: str) -> str:
    return EXAMPLES.joinpath(f"{name}.toml").read_text(encoding="utf-8")


def in_bare_shop(text: str) -> Figures:
    return figures_of(parse_description(text), parse_shop(BARE))


def twelve_strings() -> Figures:
    lines = text_of("tarn").splitlines()
    first = next(row for row, line in enumerate(lines) if line.startswith("gauges"))
    kept = [line for line in lines if not line.startswith(("gauges", "tuning", "posts_", "plain"))]
    kept.insert(first, TWELVE)
    return in_bare_shop("\n".join(kept))


def finite(value: object) -> bool:
    if isinstance(value, float):
        return isfinite(value)
    return all(map(finite, value)) if isinstance(value, tuple) else True


@pytest.mark.parametrize("name", ["tarn", "fell", "scree", "mere"])
@pytest.mark.parametrize("bottom", ["straight", "follows the arch"])
def test_every_mark_has_a_place_where_the_shop_lists_no_tools(name: str, bottom: str) -> None:
    text = "\n".join(
        f'bottom = "{bottom}"' if line.startswith("bottom") else line for line in text_of(name).splitlines()
    )
    for drawing in drawings_of(in_bare_shop(text)):
        for mark in drawing.marks:
            assert all(finite(getattr(mark, each.name)) for each in fields(mark)), (drawing.name, mark)


def box(mark: Mark) -> tuple[float, float, float, float]:
    """Left, foot, right and top of a figure of 12 mm (its digits and unit at a height of 2 mm)."""
    assert isinstance(mark, Label)
    x, y = mark.at
    return x - 6.0, y, x + 6.0, y + mark.height


def test_the_figures_of_twelve_strings_do_not_run_together() -> None:
    labels = [m for m in twelve_strings()["drawing_string_gauges"].marks if isinstance(m, Label)]
    assert len(labels) == 24
    for one, other in combinations(map(box, labels), 2):
        assert one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]


@pytest.mark.parametrize("name", ["Tarn", "A name as long as some makers like to give their favourite instruments"])
def test_words_stay_on_their_arch_card(name: str) -> None:
    figures = in_bare_shop(text_of("tarn").replace('name = "Tarn"', f'name = "{name}"', 1))
    marks = figures["drawing_gauges"].marks
    reaches = [float(card.reach) for card in figures["card_arches"] for _ in range(3)]
    words = [m for m in marks if isinstance(m, Words) and m.anchor == "middle" and m.at[0] == 0.0]
    assert len(words) == 9
    for mark, reach in zip(words, reaches, strict=True):
        assert 0.62 * mark.height * len(mark.text) <= 2 * reach, mark.text


def test_cards_stand_clear_of_each_other_however_deep_the_arch() -> None:
    text = text_of("tarn").replace("thickness = 6.3", "thickness = 24", 1)
    text = "\n".join(
        'arch = "34 mm"' if line.startswith("arch") else line for line in text.splitlines() if line != "[neck]"
    )
    figures = in_bare_shop(text + "\n[neck]\ndepth_at_1 = 40\ndepth_at_10 = 44\n")
    assert figures["card_arches"][-1].fall > 15
    cards = [m for m in figures["drawing_gauges"].marks if isinstance(m, Polyline) and m.closed]
    spans = [tuple(f(p[axis] for p in card.points) for axis in (0, 1) for f in (min, max)) for card in cards]
    for one, other in combinations(spans, 2):
        assert one[1] <= other[0] or other[1] <= one[0] or one[3] <= other[2] or other[3] <= one[2]
    for card, mark in zip(figures["card_arches"], cards[1::2], strict=False):
        foot, crest = (f(y for _, y in mark.points) for f in (min, max))
        assert crest - card.fall > foot


def test_a_body_without_linings_is_drawn() -> None:
    """Their height may be 0: what lies on their slope had no place."""
    text = text_of("tarn").replace("wall = 2.1", "wall = 2.1\nlinings_height = 0")
    for drawing in drawings_of(in_bare_shop(text)):
        for mark in drawing.marks:
            assert all(finite(getattr(mark, each.name)) for each in fields(mark)), (drawing.name, mark)
