"""What an instrument weighs: bodies of plain shapes by hand, and the examples between what such guitars weigh."""

import re
from importlib.resources import files

import numpy as np
import pytest

from gramil.change.made import Judged, judge
from gramil.description.reading import parse_description, read_shop
from gramil.description.shop.tolerances import tolerance_of
from gramil.description.wood.timbers import SOFT, TimberKnown
from gramil.formatter import Formatter
from gramil.graph import Figures, Pin
from gramil.measured_by import digits_worth
from gramil.package_data import data_tables
from gramil.parts.whole import whole_board, whole_bought, whole_bridge, whole_head, whole_heel, whole_rim, whole_shaft
from gramil.prints.solved import solved_graph
from gramil.prints.whole import figures_of
from gramil.quantities import Gram
from gramil.shapes.strip_section import Moments

EXAMPLES = files("gramil") / "data" / "examples"
WOOD = TimberKnown(SOFT, 0.1, False, ())
"""448 kg/m3, which is 0.448 mg a cubic millimetre."""
BETWEEN = {"tarn": (1500, 2100), "fell": (1600, 2300), "mere": (1300, 1700), "corrie": (1800, 2500)}
"""Grams: of a small and a large steel-string guitar, a nylon one, a twelve-string one. Common practice, from memory."""


def area(*values: float) -> Moments:
    found = np.array(values)
    return Moments(found, found, found)


def test_plain_shapes_by_hand() -> None:
    per_mm3 = 448e-6
    frets = np.array([0.0, 100.0, 400.0])
    assert whole_rim(1500.0, 90.0, 110.0, 2.0, WOOD) == pytest.approx(1500 * 100 * 2 * per_mm3)
    assert whole_head(160.0, 70.0, 15.0, WOOD) == pytest.approx(160 * 70 * 15 * 0.7 * per_mm3)
    assert whole_heel(95.0, 28.0, 50.0, WOOD) == pytest.approx(95 * 28 * 50 / 2 * per_mm3)
    assert whole_bridge(155.0, 32.0, 9.0, WOOD) == pytest.approx(155 * 32 * 9 * 0.7 * per_mm3)
    # 600 mm2 at the zero line, 700 at 100 mm, 1000 at 400 mm, and so 900 at the join, 300 mm along
    assert whole_shaft(area(600.0, 700.0, 1000.0), frets, 300.0, WOOD) == pytest.approx(
        (650 * 100 + 800 * 200) * per_mm3, rel=1e-3
    )
    assert whole_board(area(300.0, 340.0, 340.0), frets, 450.0, WOOD) == pytest.approx(
        (320 * 100 + 340 * 300) / 400 * 450 * per_mm3
    )
    assert whole_bought(np.ones(6), "upright", "two way", 0) == 6 * 33 + 100 + 120
    assert whole_bought(np.ones(6), "across", "none", 2) == 6 * 30 + 2 * 15 + 120


@pytest.fixture(scope="module", params=BETWEEN)
def figures(request: pytest.FixtureRequest) -> tuple[str, Figures]:
    text = (EXAMPLES / f"{request.param}.toml").read_text(encoding="utf-8")
    return request.param, figures_of(parse_description(text, request.param), read_shop())


def test_the_examples_weigh_what_such_guitars_do(figures: tuple[str, Figures]) -> None:
    name, found = figures
    least, most = BETWEEN[name]
    assert least < found["whole_weight"] < most


def test_what_the_scales_say_is_judged_by_what_the_sheet_says(figures: tuple[str, Figures]) -> None:
    """A quarter of a kilogram, as common practice has it; the sheet had said an eighth of the whole."""
    _, drawn = figures
    assert "± 250 g" in str(tolerance_of("whole_weight").words)
    for off, standing in ((-251.0, "rework"), (-249.0, "still right"), (249.0, "still right"), (251.0, "rework")):
        pin = {"whole_weight": Pin(float(drawn["whole_weight"]) + off, "2026-05-01", "instrument_weighed")}
        (found,) = judge({"instrument_weighed": drawn.with_pins(pin)}, drawn)
        assert isinstance(found, Judged)
        assert found.standing == standing, off


def test_an_estimate_is_shown_as_coarse_as_it_is_worth(figures: tuple[str, Figures]) -> None:
    """Judged within 250 g, it ends in a whole ten; what the scales said is shown as they said it."""
    _, drawn = figures
    whole = Formatter(drawn).text("whole_weight")
    assert re.fullmatch(r"\d{3}0 g", whole)
    assert abs(float(whole.split()[0]) - drawn["whole_weight"]) <= 5.0
    for name in ("whole_body", "whole_bridge", "graduated_weight", "whole_heel"):
        assert len(Formatter(drawn).text(name).split()[0].rstrip("0")) <= 2, name
    read = Pin(1712.0, "2026-05-01", "instrument_weighed")
    assert Formatter(drawn.with_pins({"whole_weight": read})).text("whole_weight") == "1712.0 g"


def test_every_weight_that_is_worked_out_is_an_estimate(figures: tuple[str, Figures]) -> None:
    """A wood's density differs from piece to piece: no weight is worth a tenth of a gram."""
    _, drawn = figures
    weights = [name for name in drawn.graph.dimensions if drawn.graph.annotation(name) == Gram]
    assert len(weights) >= 13
    assert [name for name in weights if digits_worth(name) is None] == []
    solved = solved_graph().dimensions
    assert set(data_tables("tolerances")["estimate"]) <= set(solved)
