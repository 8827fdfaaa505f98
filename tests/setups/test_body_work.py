"""The body's sheets: there with a body, skipped with a reason without one, every figure an address."""

import math
from collections.abc import Callable
from itertools import pairwise

import pytest
from tests.drawings.conftest import figures_for

from gramil import names as n
from gramil.drawings.marks import Label, Words
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.prints.pages import page_text
from gramil.setups.setup import figures_on

NAMES = ("setup_mould", "setup_sides", "setup_brace_stock", "setup_brace_top", "setup_brace_back", "setup_bridge_plate")


def test_a_body_has_all_its_sheets(example: Callable[[str], Figures]) -> None:
    tarn = example("tarn")
    for name in NAMES:
        setup = tarn[name]
        assert not setup.closed
        assert all(tarn.at(address) is not None for address in [each.address for each in figures_on(setup)])


def test_without_a_body_each_says_why(example: Callable[[str], Figures]) -> None:
    tarn = example("tarn")
    bare: dict[str, object] = {"foot_there": False}
    bare |= dict.fromkeys(("plate_slant", "bend_thin_to", "body_wall", "top_radius"), math.nan)
    bare |= dict.fromkeys(
        (
            "body_bouts",
            "side_stations",
            "treble_side_stations",
            "bend_treble",
            "stick_list",
            "stick_billets",
            "stick_wanting",
            "brace_list",
            "brace_crossings",
            "brace_legs",
            "plate_shapes",
        ),
        (),
    )
    for name in NAMES:
        dimension = tarn.graph.dimensions[name]
        assert dimension.function(*(bare[parameter] for parameter in dimension.parameters)).closed


def test_the_cut_list_names_every_stick(example: Callable[[str], Figures]) -> None:
    tarn = example("tarn")
    said = {each.address for each in figures_on(tarn["setup_brace_stock"])}
    assert all(f'stick_list["{each.name}"].length' in said for each in tarn["stick_list"])


def test_the_cut_list_says_which_piece_yields_what(example: Callable[[str], Figures]) -> None:
    """Every stick is either wanting or yielded by some piece that the sheet names."""
    tarn = example("tarn")
    said = " ".join(map(str, tarn["setup_brace_stock"].tools))
    assert all(f'stick_billets["{each.name}"].sticks' in said for each in tarn["stick_billets"])
    yielded = sum(each.sticks for each in tarn["stick_billets"])
    assert yielded + len(tarn["stick_wanting"]) == len(tarn["stick_list"])


def test_each_brace_to_saw_out_has_its_row(example: Callable[[str], Figures]) -> None:
    """Name before it and length behind it at one height, no two nearer than a line of words is tall."""
    for name in ("tarn", "fell", "mere"):
        figures = example(name)
        marks = figures["drawing_setup_braces"].marks
        lengths = {each.figure.address: each.at[1] for each in marks if isinstance(each, Label)}
        names = {each.text: each.at[1] for each in marks if isinstance(each, Words)}
        braces = [each for each in figures["brace_list"] if each.length > 0]
        assert len(lengths) == len(names) == len(braces)
        for brace in braces:
            assert names[f"{brace.name} ({brace.plate})"] == lengths[n.brace_list[brace.name].length.address]
        heights = sorted(lengths.values())
        assert all(high - low > 1.5 * 2.6 for low, high in pairwise(heights))


def test_rows_have_the_numbers_that_the_drawing_has(example: Callable[[str], Figures]) -> None:
    """A brace's number on the plan stands before its name in the tables under it."""
    figures = example("mere")
    (first, second) = page_text(figures["setup_brace_top"], Formatter(figures))["tables"]
    listed = [brace.name for brace in figures["brace_list"] if brace.plate == "top"]
    numbers = [
        int(each.text) for each in figures["drawing_top_inside"].marks if str(getattr(each, "text", "")).isdigit()
    ]
    assert sorted(numbers) == list(range(1, len(listed) + 1))
    for table in (first, second):
        assert [row[0] for row in table["rows"]] == [f"{at} {name}" for at, name in enumerate(listed, 1)]


@pytest.mark.parametrize(("radius", "too_thick"), [(42, False), (20, True)])
def test_a_side_is_thinned_for_the_horn_only_where_it_is_too_thick_for_it(radius: int, too_thick: bool) -> None:
    """Corrie's sides are 1.9: twelve times that is a radius of 22.8, by common practice."""
    figures = figures_for("corrie", ("radius = 42", f"radius = {radius}"))
    said = " ".join(map(str, figures["setup_sides"].steps))
    assert "bend the horn first" in said
    assert ("thinned beforehand" in said) == too_thick
