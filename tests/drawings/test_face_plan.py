"""The plan of the face to hang on a wall: what a maker asks of it stands on it, each figure once and legible."""

from itertools import combinations

import pytest
from shapely import Polygon
from tests.drawings.conftest import figures_for

from gramil.drawings.marks import Label, Polyline, Span, Words
from gramil.formatter import Formatter
from gramil.writers.lettering import Lettering, corners
from gramil.writers.plain import caption, plain


@pytest.mark.parametrize("name", ["tarn", "fell", "scree", "mere"])
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
