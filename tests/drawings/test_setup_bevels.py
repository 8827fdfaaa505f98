"""A bevel cut across for its sheets: what is left lies inside its two lines, which are where they were asked for."""

import pytest
from tests.drawings.conftest import figures_for

from gramil.drawings.marks import Label, Polyline, Span
from gramil.formatter import Formatter
from gramil.pack import TALLEST
from gramil.sheets.page_size import room_for_drawing
from gramil.writers.legible import legible

RIBS = "\n[rib_bevel]\nwidth = 18\ndrop = 22\nlength = 240\n"


def test_what_is_drawn_of_the_wood_ends_at_the_bevel() -> None:
    """*Corrie*'s is 26 mm in on the top and 14 mm down: no wood lies nearer to the corner than the line between."""
    drawn = figures_for("corrie")["drawing_setup_bevels"]
    points = [
        (x / drawn.scale, z / drawn.scale)
        for mark in drawn.marks
        if isinstance(mark, Polyline) and mark.layer == "outline"
        for x, z in mark.points
    ]
    from_the_corner = [x / 26.0 - z / 14.0 for x, z in points]
    assert min(from_the_corner) == pytest.approx(1.0)
    for end in ((26.0, 0.0), (0.0, -14.0)):
        assert any(point == pytest.approx(end, abs=1e-9) for point in points)
    shown = {mark.figure.address for mark in drawn.marks if isinstance(mark, Label | Span)}
    assert shown == {
        *(f'bevel_list["arm"].{each}' for each in ("width", "drop", "slope")),
        *(f'bevelled_blocks["arm"].{each}' for each in ("width", "height")),
    }


@pytest.mark.parametrize("unit", ["mm", "in"])
def test_both_bevels_stand_beside_one_another_with_their_words(unit: str) -> None:
    figures = figures_for("corrie", ("[arm_bevel]", f"{RIBS}[arm_bevel]"))
    drawn = figures["drawing_setup_bevels"]
    picture = legible(drawn, Formatter(figures, "in" if unit == "in" else "mm").text, (room_for_drawing("a4"), TALLEST))
    assert picture.key == ()
    assert picture.svg.count("bevel, at its middle") == 2


def test_a_body_without_bevels_has_no_such_drawing() -> None:
    assert figures_for("tarn")["drawing_setup_bevels"].marks == ()
