"""Drawings that two libraries test themselves with: read for what they hold, or refused in a sentence that is true."""

import math
from pathlib import Path

import pytest

from gramil.faults import MakersFault
from gramil.shapes.traced_outline import Reading, Traced, read_outline

FOLDER = Path(__file__).parent / "from_libraries"
KEYHOLES = 100 * 100 - 2 * 10**2 * (1 - math.pi / 4) + math.pi * (30**2 - 20**2)
"""Of negative-scale.svg, square units: a plate with two rounded corners, and at each side the half of a ring. Its
two small arcs reach their ends only with twice the radius that they name, which SVG 1.1, F.6.6, says they have."""
REFUSED = {
    "rects.svg": "the drawing has 2 closed outlines: 300.0 x 100.0 mm (rect); 300.0 x 100.0 mm (rect)",
    "polygons.svg": "the drawing has 2 closed outlines: 50.0 x 50.0 mm (polygon); 0.1 x 100.0 mm (polygon)",
    "polygons_no_points.svg": "the drawing has no lines, arcs or curves",
    "groups.svg": "goes to and fro over the same line",
    "polyline.svg": "the halves differ by",
    "ASCII_R12.dxf": "(10.511, 14.999) to (17.429, 12.758)",
    "no_layouts.dxf": "the drawing has 2 closed outlines",
    "empty_handles.dxf": "the drawing has 2 closed outlines: 165.0 x 340.0 mm",
    "r12_blocks_with_no_names.dxf": "the drawing has no lines, arcs or curves",
}
LENGTHS = {"empty_handles.dxf": 340.0, "rects.svg": 500.0, "polygons.svg": 150.0}


def read(name: str, length: float | None = None) -> Traced:
    return read_outline((FOLDER / name).read_bytes().decode(errors="replace"), name, Reading(length=length))


@pytest.mark.parametrize("name", ["circle.svg", "ellipse.svg"])
def test_a_circle_either_way(name: str) -> None:
    assert read(name, 100.0).outline.area == pytest.approx(math.pi * 50**2, rel=2e-5)


def test_a_mirrored_plate_with_arcs_that_are_too_small() -> None:
    """100 mm are 500 units, so 0.2 mm a unit."""
    assert read("negative-scale.svg").outline.area == pytest.approx(KEYHOLES * 0.2**2, rel=2e-5)


@pytest.mark.parametrize("name", REFUSED)
def test_refused_for_what_it_holds(name: str) -> None:
    with pytest.raises(MakersFault) as caught:
        read(name, LENGTHS.get(name, 100.0))
    assert REFUSED[name] in str(caught.value)


def test_every_file_is_tried() -> None:
    told = {"circle.svg", "ellipse.svg", "negative-scale.svg", *REFUSED}
    assert {each.name for each in FOLDER.iterdir()} - {"README.md"} == told
