"""The plan of the face to hang on a wall: what a maker asks of it stands on it, each figure once and legible."""

from collections.abc import Sequence
from dataclasses import replace
from itertools import combinations

import pytest
from shapely import LineString, Point, Polygon, unary_union
from shapely import box as rectangle
from tests.drawings.conftest import figures_for

from gramil.drawings.marks import Label, Line, Polyline, Span, Words
from gramil.formatter import Formatter
from gramil.measure import LengthUnit
from gramil.writers.lettering import Lettering, corners
from gramil.writers.pdf import laid_out
from gramil.writers.plain import Plain, caption, plain


@pytest.mark.parametrize("name", ["tarn", "fell", "scree", "mere", "corrie"])
@pytest.mark.parametrize("plan", ["drawing_face_plan", "drawing_plan_face"])
def test_no_words_lie_on_others(name: str, plan: str) -> None:
    figures = figures_for(name)
    drawing, text = figures[plan], Formatter(figures, figures["instrument_units"]).text
    marks = plain(drawing, text)
    if not marks:
        assert name == "scree", "only this one has no body"
        return
    words = [each for each in (*marks, *caption(drawing, marks, text)) if isinstance(each, Lettering)]
    boxes = [(each.text, Polygon(corners(each))) for each in words]
    for (one, box), (other, another) in combinations(boxes, 2):
        assert box.intersection(another).area < 1e-9, (one, other)


@pytest.mark.parametrize("name", ["tarn", "fell", "mere"])
def test_what_a_maker_asks_for_is_on_it(name: str) -> None:
    """Each bout's width and place, body, hole, saddle, bridge, and every brace's two ends."""
    figures = figures_for(name)
    shown = {mark.figure.address for mark in figures["drawing_face_plan"].marks if isinstance(mark, Label | Span)}
    wanted = {f'body_bouts["{bout.name}"].{size}' for bout in figures["body_bouts"] for size in ("x", "width")}
    wanted |= {"body_length", "soundhole_centre", "soundhole_diameter", "body_saddle", "bridge_length", "scale_run"}
    ends = ("length", "start_x", "start_y", "stop_x", "stop_y")
    tops = [brace for brace in figures["brace_list"] if brace.plate == "top" and brace.length > 0]
    wanted |= {f'brace_list["{brace.name}"].{end}' for brace in tops for end in ends}
    assert wanted <= shown
    numbers = [mark.text for mark in figures["drawing_face_plan"].marks if isinstance(mark, Words)]
    assert {str(number) for number in range(1, len(tops) + 1)} <= set(numbers)


@pytest.mark.parametrize("hand", ["right", "left"])
def test_the_title_block_names_instrument_hand_and_scale_beside_the_plan(hand: str) -> None:
    figures = figures_for("tarn", ('handed = "right"', f'handed = "{hand}"'))
    drawing = figures["drawing_face_plan"]
    said = " ".join(mark.text for mark in drawing.marks if isinstance(mark, Words))
    assert "Tarn" in said
    assert f"{hand}-handed, treble {'down' if hand == 'left' else 'up'}; 1 : 1" in said
    block = [mark for mark in drawing.marks if isinstance(mark, Polyline) and mark.layer == "list"][-1]
    assert min(x for x, _ in block.points) > figures["body_length"]


def frame(marks: Sequence[Plain]) -> Polyline:
    """The title block's own box."""
    (found,) = [mark for mark in marks if isinstance(mark, Polyline) and mark.layer == "list"]
    return found


def framed(marks: Sequence[Plain]) -> dict[str, tuple[float, float]]:
    """What stands in the title block, from its lower left corner, to a thousandth of a millimetre."""
    low = [min(point[axis] for point in frame(marks).points) for axis in (0, 1)]
    box = Polygon(frame(marks).points)
    return {
        mark.text: (round(mark.at[0] - low[0], 3), round(mark.at[1] - low[1], 3))
        for mark in marks
        if isinstance(mark, Lettering) and box.contains(Polygon(corners(mark)))
    }


@pytest.mark.parametrize("paper", ["11x17", "a3"])
def test_what_its_dimensions_run_over_is_printed(paper: str) -> None:
    """A plan is read: a page that nothing but dimensions reach is one of its pages, too."""
    figures = figures_for("fell")
    (page,) = laid_out([figures["drawing_face_plan"]], Formatter(figures, "in").text, paper, unit="in")
    shown = unary_union([rectangle(*tile.window) for tile in page.tiling.tiles])
    lines = [mark for mark in page.marks if isinstance(mark, Line) and mark.layer == "dimensions"]
    assert len(lines) > 20
    assert all(shown.covers(LineString([mark.start, mark.end])) for mark in lines)


@pytest.mark.parametrize(("paper", "unit", "said"), [
    ("a2", "mm", "paper A2"), ("11x17", "in", "paper 11x17"), ("500 x 787 mm", "mm", "paper 500 x 787 mm"),
    ("508 x 762 mm", "in", "paper 20.0 x 30.0 in"), ("roll 914.4 mm", "in", "paper a roll 36.0 in wide"),
    ("a4", "mm", "paper A4"),
])  # fmt: skip
def test_the_title_block_of_a_page_says_paper_and_revision(paper: str, unit: LengthUnit, said: str) -> None:
    """It stands whole on one page, its words in their places in its frame."""
    figures = figures_for("tarn")
    drawing, text = figures["drawing_face_plan"], Formatter(figures, "mm").text
    (page,) = laid_out([drawing], text, paper, unit=unit)
    (words,) = [mark for mark in page.marks if isinstance(mark, Lettering) and "revision" in mark.text]
    assert words.text.endswith(f", {said}")
    drawn, printed = framed(plain(drawing, text)), framed(page.marks)
    assert printed.pop(words.text)
    assert len(drawn) == 8, "name, title, six sizes"
    assert printed == drawn
    block = Polygon(frame(page.marks).points)
    assert any(rectangle(*tile.window).contains(block) for tile in page.tiling.tiles)
    ruled = [mark for mark in page.marks if isinstance(mark, Line) and mark.layer == "list"]
    assert len(ruled) == 2
    assert all(block.covers(LineString([mark.start, mark.end])) for mark in ruled)
    other = laid_out([replace(drawing, marks=drawing.marks[1:])], text, paper, unit=unit)[0]
    (again,) = [mark for mark in other.marks if isinstance(mark, Lettering) and "revision" in mark.text]
    assert again.text.split()[1] != words.text.split()[1]


@pytest.mark.parametrize("hand", ["right", "left"])
def test_the_top_has_its_wood_along_the_grain_and_hole_bridge_and_board_are_clear(hand: str) -> None:
    figures = figures_for("tarn", ('handed = "right"', f'handed = "{hand}"'))
    for name, edge in (("drawing_face_plan", 0.0), ("drawing_plan_face", figures["body_edge"])):
        grain = [mark for mark in plain(figures[name], Formatter(figures).text) if mark.layer == "hatch"]
        lines = [LineString([mark.start, mark.end]) for mark in grain]
        assert len(lines) > 60
        assert all(line.coords[0][1] == pytest.approx(line.coords[1][1], abs=1e-9) for line in lines)
        hole = Point(edge + figures["soundhole_centre"], 0.0).buffer(figures["soundhole_diameter"] / 2 - 0.1)
        front, half = edge + figures["body_saddle"] - 4.0, figures["bridge_length"] / 2 - 0.1
        bridge = Polygon([(front, -half), (front, half), (front + 8.0, half), (front + 8.0, -half)])
        (top,) = [mark for mark in figures[name].marks if getattr(mark, "hatch", "") == "along the grain"]
        wood = Polygon(top.points).buffer(1e-6)
        clear = [hole, bridge]
        if name == "drawing_plan_face":
            clear.append(Polygon(figures["board_outline"].corners).buffer(-0.1))
        for line in lines:
            assert wood.contains(line)
            assert not any(line.intersects(each) for each in clear)
