"""The sheets for the body's edge: open on a bound body, and each saying why not on another."""

import math
from collections.abc import Callable

import pytest

from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.parts.edge_records import Cut, Edge, Strip, Tilt
from gramil.setups import body_binding
from gramil.setups.setup import figures_on

EDGE = Edge("top", 2.0, 6.0, 0.0, 1.6, "maple", 2.8, "wood")
TILT = Tilt("top", 0.03, 0.0, 0.2, 0.06)


def strip(wood: str, material: str, edge: str = "top") -> tuple[Strip, ...]:
    return (Strip(f"{edge} binding", 2, 760.0, 6.0, 2.0, wood, 40.0, material),)


def cut(ledge: float) -> tuple[Cut, ...]:
    return (Cut("top binding", 2.0, 5.9, 4.0, "rabbet, bearing 9", 12.7, 9.0, ledge, 2.0 - ledge),)


@pytest.mark.parametrize("name", ["tarn", "fell"])
def test_on_a_bound_body_every_figure_is_there(example: Callable[[str], Figures], name: str) -> None:
    figures = example(name)
    formatter = Formatter(figures)
    for sheet in ("setup_flush", "setup_binding_bend", "setup_channels", "setup_body_binding"):
        setup = figures[sheet]
        assert not setup.closed
        assert setup.by
        assert all(
            formatter.text(each) not in ("", "not known") or each.startswith("stuff_list")
            for each in [each.address for each in figures_on(setup)]
        ), sheet


def test_what_is_not_bound_says_so() -> None:
    assert body_binding.setup_flush((), math.nan, ()).closed
    assert body_binding.setup_binding_bend((), (), (), ()).closed
    assert body_binding.setup_channels((), (), (), (), ()).closed
    assert body_binding.setup_body_binding((), (), (), ()).closed


def test_purfling_is_cut_before_its_binding_and_scored(example: Callable[[str], Figures]) -> None:
    tarn, fell = example("tarn"), example("fell")
    assert [each.figure.address for each in tarn["setup_channels"].figures] == [
        'channel_cuts["top purfling"].depth',
        'channel_cuts["top binding"].depth',
        'channel_cuts["back binding"].depth',
    ]
    assert any(str(step).startswith("Score the top") for step in tarn["setup_channels"].steps)
    assert not any("purfling" in str(step) for step in fell["setup_channels"].steps)


def test_both_edges_with_purfling_still_fit_the_sheet() -> None:
    edges = tuple(Edge(name, 2.0, 6.0, 1.5, 1.6, "maple", 2.8, "wood") for name in ("top", "back"))
    cuts = tuple(
        Cut(f"{edge} {what}", 2.0, 5.9, 4.0, "rabbet, bearing 9", 12.7, 9.0, 1.85, 0.15)
        for edge in ("top", "back")
        for what in ("purfling", "binding")
    )
    setup = body_binding.setup_channels(edges, cuts, (TILT,), (), ())
    assert len(setup.figures) == 4


def test_without_a_cutter_it_is_worked_by_gauge_and_by_what_a_cutter_would_be() -> None:
    setup = body_binding.setup_channels((EDGE,), cut(math.nan), (TILT,), (), ())
    said = " ".join(map(str, (*setup.tools, setup.prove)))
    assert 'channel_cuts["top binding"].step' in said
    assert "bearing}" not in said
    assert 'channel_cuts["top binding"].ledge' not in [each.address for each in figures_on(setup)]


def test_no_cutter_leans_on_a_flat_plate() -> None:
    """A sheet had told where a flat top slopes most: by 0.00°."""
    said = {
        angle: " ".join(map(str, body_binding.setup_channels((EDGE,), cut(2.0), (tilt,), (), ()).steps))
        for angle, tilt in ((0.0, Tilt("top", 0.0, 0.0, 0.0, 0.0)), (TILT.angle, TILT))
    }
    assert "slopes by" not in said[0.0]
    assert "slopes by" in said[TILT.angle]
