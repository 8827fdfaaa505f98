"""A described instrument's top as a plate: what it is made of, what the strings do to it, and what a shaving does.

Whether the plate itself is solved rightly is asked in `tests/published/test_tops_as_solids.py`; here, whether the plate
is the one that is described, and what is promised comes true.
"""

import math
from dataclasses import replace

import numpy as np
import pytest
from tests.published.solids.described import described
from tests.top_of_tarn import EXAMPLES, top_of_tarn

from gramil import names as n
from gramil.faults import MakersFault
from gramil.formatter import formatter_of
from gramil.graph import Figures
from gramil.physics.plates.bar import Bar
from gramil.physics.plates.lines import area_of
from gramil.prints.pages import page_text
from gramil.prints.solved import with_top
from gramil.prints.top_rows import picture_words
from gramil.prints.whole import figures_of_files
from gramil.reference import name_of
from gramil.setups.setup import figures_on
from gramil.top.advice import ShavingGoal, advised, raised
from gramil.top.derivatives import changes_of, room_of
from gramil.top.shaving import shaving_list

ONCE = "elastic, at once, on a rigid rim"


def test_the_plate_is_the_one_that_was_written_down_for_the_solids() -> None:
    """*Tarn* as it was drawn for CalculiX by hand, before the program made its own plate of it."""
    own, by_hand = top_of_tarn()[n.braced_top][0], described("tarn")
    assert abs(area_of(own.plate.outline)) == pytest.approx(abs(area_of(by_hand.plate.outline)), rel=1e-4)
    assert own.plate.thickness == by_hand.plate.thickness
    assert [each.name for each in own.bars] == [each.name for each in by_hand.bars]
    for one, other in zip(own.bars, by_hand.bars, strict=True):
        assert one.start == pytest.approx(other.start, abs=0.06)
        assert one.stop == pytest.approx(other.stop, abs=0.06)
        assert (one.width, len(one.gaps)) == (other.width, len(other.gaps))
        assert one.height == pytest.approx(other.height, abs=1e-3)
    for one, other in zip(own.blocks, by_hand.blocks, strict=True):
        assert abs(area_of(one.ring)) == pytest.approx(abs(area_of(other.ring)), rel=1e-6)


def test_the_back_is_the_same_kind_of_plate() -> None:
    """*Tarn*'s back as described: 2.5 mm thick, four braces, no hole, its own dome of 15 ft and wood."""
    (back,) = top_of_tarn()[n.rear_plate]
    assert [each.name for each in back.bars] == ["back 1", "back 2", "back 3", "back 4"]
    assert (back.plate.thickness, back.plate.holes) == (2.5, ())
    assert back.plate.rise is not None
    apart = back.plate.rise(np.array([[245.0, 0.0], [245.0, 100.0]]))
    assert apart[0] - apart[1] == pytest.approx(100.0**2 / (2 * 15 * 304.8))
    assert back.plate.ply.wood == top_of_tarn()[n.timber_back].timber


def test_the_load_is_that_of_the_strings() -> None:
    figures = top_of_tarn()
    pulls = figures[n.braced_top][0].pulls
    assert -sum(each.force[0] for each in pulls) == pytest.approx(figures[n.string_pull_total])
    assert -sum(each.couple[1] for each in pulls) / 1000 == pytest.approx(figures[n.bridge_torque])
    assert [each.ring[:, 1].mean() for each in pulls] == pytest.approx(figures[n.string_y_bridge].tolist(), abs=1e-6)


def test_half_the_pull_turns_the_bridge_half_as_far() -> None:
    top = top_of_tarn()[n.braced_quick][0]
    halves = tuple(
        replace(each, force=(each.force[0] / 2, 0.0, 0.0), couple=(0.0, each.couple[1] / 2))
        for each in top.braced.pulls
    )
    half = replace(top, braced=replace(top.braced, pulls=halves))
    assert half.moved.turn == pytest.approx(top.moved.turn / 2, rel=1e-9)


def test_stiffer_wood_turns_less_by_as_much() -> None:
    """With every wood stiffer by a quarter, all movements are a quarter of themselves fewer over five."""
    figures, stiff = top_of_tarn(), ("longitudinal", "radial", "tangential", "shear_lr", "shear_lt", "shear_rt")
    woods = (n.timber_top, n.timber_braces, n.timber_bridge, n.timber_bridge_plate)
    changed = {
        each.address: replace(
            figures[each],
            timber=replace(
                figures[each].timber, **{name: 1.25 * getattr(figures[each].timber, name) for name in stiff}
            ),
        )
        for each in woods
    }
    stiffer = figures.with_base({**figures.base, **changed})
    old, new = figures[n.braced_quick][0], stiffer[n.braced_quick][0]
    assert new.moved.turn == pytest.approx(old.moved.turn / 1.25, rel=1e-6)
    assert new.modes.frequencies == pytest.approx(old.modes.frequencies * math.sqrt(1.25), rel=1e-4)


def test_advice_gives_what_it_promised() -> None:
    """Solved again by itself, braces as advised, the bridge turns as far as asked: within 5 % of the change."""
    top = top_of_tarn()[n.braced_quick][0]
    changes = changes_of(top)
    wanted = top.moved.turn - math.radians(0.1)
    legs = ("X treble", "X bass")
    advice = advised(top, changes, legs, ShavingGoal(turn=wanted))
    assert advice.off < 0
    found = raised(top, legs, -advice.off).moved.turn
    assert found - top.moved.turn == pytest.approx(wanted - top.moved.turn, rel=0.05)
    assert advice.reached


def test_never_more_than_the_brace_still_has() -> None:
    top = top_of_tarn()[n.braced_quick][0]
    changes = changes_of(top)
    bar = next(each for each in top.braced.bars if each.name == "tone bar 2")
    advice = advised(top, changes, ("tone bar 2",), ShavingGoal(turn=math.radians(3.0)))
    assert advice.off == pytest.approx(room_of(bar))
    assert room_of(bar) == pytest.approx(9.0 - 2.5, abs=1e-6)  # its height less that of its ends, as described
    assert not advice.reached
    assert any("not reached" in line for line in advice.warnings)
    with pytest.raises(MakersFault, match="tone bar 1"):
        advised(top, changes, ("tone bar 9",), ShavingGoal(turn=0.01))


def test_what_is_said_wherever_it_is_shown() -> None:
    assert top_of_tarn()[n.pulled_said] == ONCE


def test_a_mode_in_words() -> None:
    """The first mode moves all one way, with no line at rest; its belly lies near the bridge, on the centreline."""
    figures = top_of_tarn()
    picture = figures[n.mode_pictures][0]
    words = picture_words(picture, formatter_of(figures))
    assert words.startswith("one part moves, no line at rest: up 100% at ")
    assert words.endswith("on the centreline")
    bridge = figures[n.braced_top][0]
    assert bridge.front - 20 < picture.bellies[0].x < bridge.back + 20


def test_box_and_top_together_keep_their_sums() -> None:
    """Christensen and Vistisen's identities, with the mode that displaces most air."""
    pair, first = top_of_tarn()[n.mode_with_air][0], top_of_tarn()[n.mode_list][0].hertz
    assert pair.lower * pair.upper == pytest.approx(pair.box * first)
    assert pair.box == pytest.approx(top_of_tarn()[n.body_air_rigid], rel=1e-9)


def test_a_board_without_a_body_has_no_top() -> None:
    figures = top_of_tarn()
    bodiless = figures.with_base({**figures.base, n.body_outlines.address: ()})
    assert bodiless[n.braced_top] == ()
    assert math.isnan(bodiless[n.pulled_turn])
    assert "No body" in str(bodiless[n.setup_voice_top].closed)
    assert {each.severity for each in bodiless[n.finding_top_turn]} == {"not judged"}


def test_a_changed_description_is_solved_again() -> None:
    """Whichever way it is asked: a top that was solved before the change is never told for the one after it."""
    usual = figures_of_files(str(EXAMPLES / "tarn.toml"))
    before = with_top(usual)[n.braced_top][0]
    thinner = usual.with_base({**usual.base, n.top_thickness.address: 2.5})
    assert with_top(thinner)[n.braced_top][0].plate.thickness == 2.5
    assert before.plate.thickness == 2.8


def changed(**values: object) -> Figures:
    figures = top_of_tarn()
    return figures.with_base({**figures.base, **values})


def test_a_brace_in_the_air_is_told() -> None:
    """Moved a body's length away: nothing under it, and nothing is solved with it; the sentence names it."""
    braces = top_of_tarn().base[n.braces_asked.address]
    away = tuple(
        replace(each, held_to="body", start=(900.0, 10.0), stop=(960.0, 40.0), start_at="point", stop_at="point")
        if each.name == "tone bar 2"
        else each
        for each in braces
    )
    figures = changed(**{n.braces_asked.address: away})
    (told,) = {str(each.says) for each in figures[n.finding_top_solved]}
    assert "tone bar 2" in told
    assert {each.severity for each in figures[n.finding_top_turn]} == {"not judged"}
    assert figures[n.mode_list] == ()


def test_strings_that_pull_nobody_knows_how_hard_turn_nobody_knows_how_far() -> None:
    top = top_of_tarn()[n.braced_quick][0]
    unknown = tuple(replace(each, couple=(0.0, math.nan)) for each in top.braced.pulls)
    moved = replace(top, braced=replace(top.braced, pulls=unknown)).moved
    assert all(math.isnan(each) for each in (moved.turn, moved.sink, moved.rise, moved.lift))


def test_the_rest_of_the_graph_does_without_it() -> None:
    figures = top_of_tarn()
    plain = figures.graph.hung_from(["braced_top"])
    assert plain
    assert all(figures.graph.dimensions[name].function.__module__.startswith("gramil.top.") for name in plain)
    assert np.isfinite(figures[n.pulled_turn_within])


@pytest.mark.parametrize("name", [n.setup_top_under_strings.address, n.setup_voice_top.address])
def test_a_sheet_says_what_its_figures_are_and_shows_what_the_graph_knows(name: str) -> None:
    figures = top_of_tarn()
    page, graph = page_text(figures[name], formatter_of(figures)), figures.graph
    assert ONCE in " ".join(page["steps"])
    edges = {each for above in (name, *graph.above(name)) for each in graph.shows.get(above, ())}
    assert {name_of(each) for each in figures_on(figures[name])} <= edges
    assert all("not known" not in cell for table in page["tables"] for row in table["rows"] for cell in row)


@pytest.mark.parametrize("group", ["X", "finger"])
def test_what_width_and_place_do_is_what_solving_again_finds(group: str) -> None:
    """By the same triangles, half a millimetre either way: twins mirrored, both toward the tail."""
    figures = top_of_tarn()
    top = figures[n.braced_quick][0]
    names = next(each for each in figures[n.shaving_groups] if each[0].startswith(group))
    bars = [each for each in top.braced.bars if each.name in names]
    (told,) = shaving_list((names,), (changes_of(top),), (top,))

    def turned(changed: list[Bar]) -> float:
        return top.with_bars(changed).moved.turn

    wider = turned([each.widened(0.5) for each in bars]) - turned([each.widened(-0.5) for each in bars])
    assert told.wider_turn == pytest.approx(wider, rel=0.03, abs=2e-6)
    ways = [math.copysign(0.5, float(each.left[0])) for each in bars]
    pairs = list(zip(bars, ways, strict=True))
    aside = turned([bar.moved(way) for bar, way in pairs]) - turned([bar.moved(-way) for bar, way in pairs])
    assert told.aside_turn == pytest.approx(aside, abs=0.12 * abs(told.turn))
