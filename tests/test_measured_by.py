"""What measures a length: by its row in the table of tolerances, or by how near it must come and how long it is."""

from importlib.resources import as_file, files

import pytest

from gramil.description.shop.limits import LIMITS
from gramil.formatter import Formatter
from gramil.measured_by import Way, beside_inches, tolerance_rows, way_of
from gramil.prints.whole import figures_of_files

WAYS = ("rule", "calipers", "micrometer", "dish")


def usual(name: str) -> float:
    return LIMITS[name].value


@pytest.mark.parametrize(
    ("address", "value", "way"),
    [
        ("body_length", 490.0, "rule"),  # within half a millimetre
        ("bridge_width", 33.0, "rule"),  # within 0.3 mm
        ("nut_width", 45.5, "calipers"),  # within 0.2 mm
        ("board_thickness", 6.3, "calipers"),  # within 0.1 mm
        ("saddle_end_treble", 631.0, "long rule"),  # the same, and longer than calipers reach
        ("fret_position[1]", 35.0, "calipers"),  # within 0.05 mm
        ("fret_position[12]", 315.0, "long rule"),
        ("wire_tang_thickness", 0.54, "micrometer"),  # within 0.02 mm
        ("blank_length", 447.0, "rule"),  # or more
        ("top_radius", 7620.0, "dish"),
        ("board_nut_length", 45.5, "rule"),  # by its row, which says no more
        ("markers_diameter", 6.0, "calipers"),  # by its row
        ("template_pin_last", 433.0, "long rule"),  # no row: by its length
        ("template_pin_first", -6.0, "calipers"),
        ("wire_total", 5000.0, "rule"),  # no row, and longer than any remainder counts
    ],
)
def test_what_measures_a_figure(address: str, value: float, way: Way) -> None:
    assert way_of(address, value, usual) == way


def test_a_shops_own_tolerance_decides() -> None:
    """A shop that is content with 0.3 mm on a thickness measures it with a rule."""
    assert way_of("board_thickness", 6.3, lambda name: 0.3 if name == "tolerance_height" else usual(name)) == "rule"


@pytest.mark.parametrize(
    ("value", "way", "beside"),
    [
        (17.78125 * 25.4, "rule", "17 25/32 in"),
        (17.785 * 25.4, "rule", "17 25/32 in"),
        (17.785 * 25.4, "long rule", "17 25/32 in + 0.004"),
        (7620.0, "dish", "25 ft"),
        (7500.0, "dish", "24.6 ft"),
        (406.4, "dish", ""),
        (6.35, "calipers", ""),
        (0.54, "micrometer", ""),
    ],
)
def test_what_stands_beside_decimals(value: float, way: Way, beside: str) -> None:
    """17 25/32 is 17.78125, and 17.785 is 0.00375 more; a foot is 304.8 mm."""
    assert beside_inches(value, way) == beside


def test_every_declared_way_is_one() -> None:
    assert all(row.get("by", "rule") in WAYS for row in tolerance_rows()["figure"].values())


def test_a_flat_dish_is_told_to_what_anyone_makes_it() -> None:
    """25 ft is 7620 mm; an arch of 320 mm keeps its decimals."""
    with as_file(files("gramil") / "data" / "examples") as examples:
        figures = figures_of_files(examples / "tarn.toml", examples / "shop.toml")
    radius = 'brace_list["X treble"].radius'
    assert [Formatter(figures, unit).text(radius) for unit in ("mm", "in")] == ["7620 mm", "300.0 in"]
    assert [Formatter(figures, unit).text("arching_radius_nut") for unit in ("mm", "in")] == ["320.00 mm", "12.598 in"]
