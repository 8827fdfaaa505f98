"""The bridge in plan and the strings' cards: marks lie where strings, saddle and holes are, on every example."""

import math
from collections.abc import Callable

import numpy as np
import pytest

from gramil.drawings.marks import Circle, Label, Line, Polyline, Words
from gramil.graph import Figures


def on(drawing, layer, kind):
    return [mark for mark in drawing.marks if isinstance(mark, kind) and mark.layer == layer]


@pytest.fixture(params=["tarn", "fell", "scree", "mere"])
def figures(request: pytest.FixtureRequest, example: Callable[[str], Figures]) -> Figures:
    return example(request.param)


def turn(figures: Figures) -> int:
    """A left-handed drawing is turned over."""
    return -1 if figures["instrument_handed"] == "left" else 1


def holds(figures: Figures) -> list[tuple[float, float]]:
    """The middles of the pins' holes, or of the mouths of a tie block's: each a pair of dashed lines from its face."""
    drawing = figures["drawing_bridge"]
    if figures["bridge_hold"] == "pins":
        return [hole.centre for hole in on(drawing, "pins", Circle)]
    (face,) = on(drawing, "core", Line)
    walls = [line for line in on(drawing, "hidden", Line) if line.start[1] == line.end[1]]
    pairs = list(zip(walls[::2], walls[1::2], strict=True))
    for low, high in pairs:
        assert high.start[1] - low.start[1] == pytest.approx(figures["bridge_pin_diameter"])
        assert low.end[0] == pytest.approx(figures["bridge_front_edge"] + figures["bridge_width"]), "through the block"
    assert {face.start[0], face.end[0]} == {walls[0].start[0]}, "the scales are equal: the face lies square"
    return [(low.start[0], (low.start[1] + high.start[1]) / 2) for low, high in pairs]


def test_strings_run_from_their_own_lines_over_break_points_to_holes(figures: Figures) -> None:
    drawing, side = figures["drawing_bridge"], turn(figures)
    runs, holes = on(drawing, "strings", Polyline), holds(figures)
    assert len(runs) == len(holes) == figures["strings_count"]
    for row, (run, hole) in enumerate(zip(runs, holes, strict=True)):
        _, broken, held = run.points
        own_scale = figures["string_length"][row]
        share = 1 - figures["string_fraction"][row, 12]
        rest = own_scale * share
        run_x = math.sqrt(rest**2 - (share * (figures["string_y_bridge"][row] - figures["string_y_nut"][row])) ** 2)
        assert broken[0] == pytest.approx(
            figures["string_x"][row, 12] + run_x + figures["saddle_set_back"][row], abs=1e-6
        )
        assert broken[1] == pytest.approx(side * figures["string_y_bridge"][row])
        assert held == pytest.approx(hole)


def test_the_slot_is_a_box_round_the_saddles_line(figures: Figures) -> None:
    drawing, side = figures["drawing_bridge"], turn(figures)
    _, slot = on(drawing, "cut", Polyline)
    corners = [np.array(each) for each in slot.points]
    ends = sorted(
        float(np.hypot(*(one - other))) for one, other in zip(corners, corners[1:] + corners[:1], strict=True)
    )
    assert ends[:2] == pytest.approx([figures["saddle_thickness"]] * 2)
    assert ends[2:] == pytest.approx([figures["saddle_length"]] * 2)
    middle = sum(corners) / 4
    assert middle == pytest.approx([figures["saddle_position"], 0.0])
    treble_end = max(corners, key=lambda each: side * each[1])
    assert treble_end[0] == pytest.approx(figures["saddle_end_treble"], abs=figures["saddle_thickness"])


def test_break_points_lie_within_the_saddle(figures: Figures) -> None:
    slant = figures["saddle_slant"]
    for x, y in zip(figures["saddle_break_x"], figures["string_y_bridge"], strict=True):
        off = (x - figures["saddle_position"] - slant * y) / math.hypot(1, slant)
        assert abs(off) < figures["saddle_thickness"] / 2


def test_every_figure_has_an_address(figures: Figures) -> None:
    for name in ("drawing_bridge", "drawing_string_gauges"):
        for mark in figures[name].marks:
            if isinstance(mark, Label):
                figures.at(mark.figure.address)


def test_the_saddle_card_stands_as_tall_as_the_saddle(figures: Figures) -> None:
    """The card's top over its foot, at each string, is the saddle's height."""
    saddle = next(each for each in on(figures["drawing_string_gauges"], "cut", Polyline))
    tops, foot = saddle.points[1:-3], saddle.points[-1][1]
    for (y, z), place, tall in zip(tops, figures["string_along_saddle"], figures["saddle_tall"], strict=True):
        assert y == pytest.approx(turn(figures) * place)
        assert z - foot == pytest.approx(tall)


def test_the_left_hands_cards_have_the_treble_on_the_left(figures: Figures) -> None:
    """Seen from the bridge toward the nut the thinnest string is on the right of a right-handed instrument."""
    drawing, side = figures["drawing_string_gauges"], turn(figures)
    sides = {mark.text: mark for mark in drawing.marks if isinstance(mark, Words) and mark.text in ("treble", "bass")}
    assert sides["treble"].at[0] * side > 0 > sides["bass"].at[0] * side
    assert {sides["treble"].anchor, sides["bass"].anchor} == {"left", "right"}
    assert not any("turn over" in mark.text for mark in drawing.marks if isinstance(mark, Words))


def test_spacing_strips_are_marked_at_the_strings(figures: Figures) -> None:
    marks = on(figures["drawing_string_gauges"], "slots", Line)
    wanted = [turn(figures) * y for y in (*figures["string_along_nut"], *figures["string_along_saddle"])]
    assert [mark.start[0] for mark in marks] == pytest.approx(wanted)


def test_on_the_sheets_the_bridge_lies_across_the_page_for_either_hand(figures: Figures) -> None:
    """A quarter turned: along the centreline is down the page, treble to the right; to the left for the left hand."""
    sheet, plan, side = figures["drawing_setup_bridge"], figures["drawing_bridge"], turn(figures)
    (lying,), (standing, _) = on(sheet, "outline", Polyline), on(plan, "cut", Polyline)
    for (x, y), (along, across) in zip(lying.points, standing.points, strict=True):
        assert (x, y) == pytest.approx((sheet.scale * across, -sheet.scale * along))
    holes = zip(on(sheet, "pins", Circle), on(plan, "pins", Circle), strict=True)
    for one, other in holes:
        assert one.radius == pytest.approx(sheet.scale * other.radius)
        assert one.centre == pytest.approx((sheet.scale * other.centre[1], -sheet.scale * other.centre[0]))
    first = next(
        mark for mark in sheet.marks if isinstance(mark, Label) and mark.figure.address == "saddle_set_back[1]"
    )
    assert first.at[0] * side > 0
