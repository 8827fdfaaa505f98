"""The body's sheets: there with a body, skipped with a reason without one, every figure an address."""

import math
from collections.abc import Callable

from gramil.graph import Figures
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
    bare: dict[str, object] = {"plate_slant": math.nan}
    bare |= dict.fromkeys(
        (
            "body_bouts",
            "side_stations",
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
