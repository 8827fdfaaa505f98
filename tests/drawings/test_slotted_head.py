"""A slotted head as it is drawn: slots, rollers, holes that end at the head's edge, and what it is cut by."""

from collections.abc import Callable
from itertools import pairwise

import numpy as np
import pytest
from tests.drawings.conftest import figures_for
from tests.lying_over import lying_over

from gramil.drawings.marks import Label, Line, Polyline, Words
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.writers.beside import labels_on
from gramil.writers.plain import plain


@pytest.fixture
def head(example):
    return example("mere")["drawing_head"]


def test_slots_lie_where_it_says(example, head):
    figures = example("mere")
    _, *slots = [mark for mark in head.marks if isinstance(mark, Polyline) and mark.layer == "cut"]
    assert len(slots) == 2
    for slot in slots:
        x, y = np.array(slot.points).T
        assert x.max() - x.min() == pytest.approx(115 - 45 + 2 * 10), (
            "rollers from 45 to 115 mm, a hole of 10 past each"
        )
        assert y.max() - y.min() == pytest.approx(figures["head_slot_width"])
    labels = {mark.figure.address for mark in head.marks if isinstance(mark, Label)}
    assert {"head_slots[1].start_lower_x", "head_slot_width", "head_slots_apart", "head_roller_depth"} <= labels


def test_holes_run_from_the_slot_to_the_head_s_edge(example, head):
    """The edge is 34 to 36 mm from the middle along the rollers, straight between its points."""
    holes = [mark for mark in head.marks if isinstance(mark, Line) and mark.layer == "hidden"]
    assert len(holes) == 2 * 6
    for hole in holes:
        assert hole.start[0] == hole.end[0]
        assert abs(hole.end[1]) == pytest.approx(np.interp(-hole.end[0], [24, 90, 160], [34, 35.5, 36]), abs=0.15)


@pytest.mark.parametrize("hand", ["right", "left"])
def test_no_number_lies_over_a_string(hand):
    """A string that runs on to a further roller passes between the middle and those nearer the nut."""
    figures = figures_for("mere", ('handed = "right"', f'handed = "{hand}"'))
    for drawing in (figures["drawing_head"], figures["drawing_setup_neck_head"]):
        assert lying_over(list(plain(drawing, labels_on([drawing], Formatter(figures))))) == [], drawing.name


def test_upright_posts_have_no_slots(example):
    marks = example("tarn")["drawing_head"].marks
    assert not any(isinstance(mark, Label) and mark.figure.address.startswith("head_slot") for mark in marks)


@pytest.mark.parametrize("name", ["tarn", "scree", "mere"])
def test_the_list_beside_a_head_is_read_downward(example: Callable[[str], Figures], name: str) -> None:
    """String by string from above, for either hand, and no row so near the next that words grown by half touch."""
    marks = [m for m in example(name)["drawing_head"].marks if isinstance(m, Label)]
    first = [m for m in marks if "from the middle" in m.before]
    assert [m.before.split()[0] for m in sorted(first, key=lambda m: -m.at[1])] == ["1", "2", "3", "4", "5", "6"]
    (signs,) = [m for m in example(name)["drawing_head"].marks if isinstance(m, Words) and "minus" in m.text]
    assert signs.text == "plus: treble side, minus: bass side"
    assert signs.at[1] > max(m.at[1] for m in first), "over what it is said of"
    heights = sorted([signs.at[1], *(m.at[1] for m in marks)])
    assert all(high - low >= 2 * 2.4 for low, high in pairwise(heights))
