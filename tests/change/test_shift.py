"""Shift: nothing moves when nothing changed; a change and its undoing are opposite; what is no longer true is named."""

import math
import re
from importlib.resources import as_file, files

import pytest

from gramil.change.overlay import differences, overlaid
from gramil.change.shift import shift, small
from gramil.cli.options import opened_with_work
from gramil.description.reading import parse_description, read_shop
from gramil.description.writing import set_key
from gramil.drawings.marks import Polyline, Span
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.prints.whole import figures_of

TARN = (files("gramil") / "data" / "examples" / "tarn.toml").read_text(encoding="utf-8")


def tarn(**changes: str) -> Figures:
    text = TARN
    for key, value in changes.items():
        text = set_key(text, key.replace("__", "."), value)
    return figures_of(parse_description(text), read_shop())


def test_shift_of_the_same_is_empty() -> None:
    found = shift(tarn(), tarn())
    assert (found.inputs, found.features, found.moves, found.came, found.went, found.papers) == ((),) * 6
    assert found.folded == 0


def test_to_an_instrument_with_other_braces_tells_the_sheets_that_name_them() -> None:
    """The list of work has each brace of the first by its name, and the second has none of that name."""
    with as_file(files("gramil") / "data" / "examples") as examples:
        one, _, work = opened_with_work(examples / "tarn.toml", examples / "shop.toml")
        other, _, _ = opened_with_work(examples / "fell.toml", examples / "shop.toml")
    named = [at for each in work.operations.values() for at in each.measure if at.startswith("brace_list[")]
    assert any(address_leads_nowhere(at, other) for at in named)
    papers = {paper.title for paper in shift(one, other, work=work).papers}
    assert {work.operations[name].what for name in ("top_voiced", "back_braces_carved")} <= papers


def address_leads_nowhere(address: str, figures: Figures) -> bool:
    try:
        figures.at(address)
    except KeyError:
        return True
    return False


def test_there_and_back_are_opposite() -> None:
    one, other = tarn(), tarn(scale__length="642 mm")
    there = {move.address: move.difference for move in shift(one, other).moves}
    back = {move.address: move.difference for move in shift(other, one).moves}
    assert there
    assert there.keys() == back.keys()
    assert all(there[address] == pytest.approx(-back[address], nan_ok=True) for address in there)


def test_a_longer_scale_moves_each_fret_by_its_share() -> None:
    """By hand: 12 mm of scale moves fret 19 by 12 (1 - 2^(-19/12)) = 7.9955 mm."""
    moves = {move.name: move for move in shift(tarn(), tarn(scale__length="642 mm")).moves}
    assert moves["fret_position"].address == "fret_position[19]"
    assert moves["fret_position"].difference == pytest.approx(7.9955, abs=1e-4)
    assert moves["fret_position"].rows == 19


def test_biggest_first_in_each_part_and_small_moves_fold() -> None:
    found = shift(tarn(), tarn(scale__length="642 mm"))
    for part in {move.part for move in found.moves}:
        sizes = [
            abs(move.difference) for move in found.moves if move.part == part and move.difference == move.difference
        ]
        assert sizes == sorted(sizes, reverse=True)
    fewer = shift(tarn(), tarn(scale__length="642 mm"), tolerance=5.0)
    assert len(fewer.moves) < len(found.moves)
    assert len(fewer.moves) + fewer.folded == len(found.moves) + found.folded


def test_templates_and_sheets_no_longer_true_and_findings_that_came() -> None:
    found = shift(tarn(), tarn(board__thickness="4.5 mm"))
    assert "wood left under the slots" in {each.name for each in found.came}
    assert any("gauge" in paper.title for paper in found.papers)
    assert any(paper.kind == "sheet" for paper in found.papers)


def test_more_frets() -> None:
    found = shift(tarn(), tarn(scale__frets="21"))
    assert "fret_position" in {move.name for move in found.moves}


def test_another_join_carries_features_by_what_they_are_held_to() -> None:
    """By hand: from fret 12 to 13 the body's edge moves 630 (2^-1 - 2^(-13/12)) = 17.6796 mm, and the saddle with it.

    The saddle's own set-back is made anew for the new heights, a few hundredths of a millimetre.
    """
    found = {each.name: each for each in shift(tarn(scale__join="12"), tarn()).features}
    assert found["bridge"].held_to == "saddle"
    assert found["bridge"].by == pytest.approx(-17.6796, abs=0.05)
    assert {each.by for each in found.values() if each.held_to == "saddle"} == {found["bridge"].by}
    assert "upper transverse" not in found


def test_another_name_alone_spoils_no_drawing() -> None:
    found = shift(tarn(), tarn(instrument__name="Twin"))
    assert found.papers == ()


def test_the_old_state_lies_in_grey_under_the_new_one_with_its_difference_behind_each_figure() -> None:
    """By hand: the saddle moves by half of what the scale grows by, 12 mm, and by what its set-back is made anew."""
    before, after = tarn(), tarn(scale__length="642 mm")
    both = overlaid(before["drawing_face_plan"], after["drawing_face_plan"], before, after, 0.05)
    grey = [mark for mark in both.marks if mark.layer == "old"]
    assert grey
    assert not any(mark.hatch for mark in grey if isinstance(mark, Polyline))
    (saddle,) = [mark for mark in both.marks if isinstance(mark, Span) and "body_saddle" in mark.figure.address]
    said = differences(Formatter(after).text, before, after)(saddle.figure)
    figure, moved = re.fullmatch(r"([\d.]+) mm \(\+([\d.]+)\)", said).groups()
    assert float(figure) == pytest.approx(after["body_saddle"], abs=0.006)
    assert float(moved) == pytest.approx(12 * 2 ** (-13 / 12), abs=0.2)
    (length,) = [mark for mark in both.marks if isinstance(mark, Span) and "body_length" in mark.figure.address]
    assert length.figure.address == "body_length"


@pytest.mark.parametrize(
    ("old", "new", "unit", "folds"),
    [
        (300.0, 300.04, "mm", True),
        (300.0, 300.06, "mm", False),
        (0.0240, 0.0240 + math.radians(0.04), "rad", True),
        (0.0240, 0.0240 + math.radians(0.06), "rad", False),
        (0.90, 0.904, None, True),
        (0.90, 0.91, None, False),
        (3.2e8, 3.2e8 + 1e6, "N mm2", True),
        (3.2e8, 3.3e8, "N mm2", False),
        (math.inf, math.inf, "mm", True),
        (math.inf, 400.0, "mm", False),
        ("tone bar", "X bass", None, False),
    ],
)
def test_what_folds_away_at_five_hundredths(old: float | str, new: float | str, unit: str | None, folds: bool) -> None:
    """Lengths by 0.05 mm, angles by 0.05 degrees, what has no scale of its own by a two-hundredth of itself."""
    assert small(old, new, unit, 0.05) is folds


def test_the_necks_angle_is_among_what_moves() -> None:
    """Another join changes the angle by a tenth of a degree, 0.002 in radians: no small move for a neck set."""
    moves = {move.name for move in shift(tarn(scale__join="12"), tarn(), 0.05).moves}
    assert "neck_angle_target" in moves


def test_a_wider_lower_bout_lists_no_places_of_the_template() -> None:
    """Another outline gives the side's template other places: none of them is a dimension that moved."""
    wider = TARN.replace("[350, 186], [410, 172]", "[350, 192], [410, 177]")
    assert wider != TARN
    found = shift(tarn(), figures_of(parse_description(wider), read_shop()), 0.05)
    moved = {move.name for move in found.moves}
    assert {"body_width", "side_length"} <= moved
    assert all(move.old is not None and move.new is not None for move in found.moves if move.name.startswith("side_"))
    assert "Bend the sides" in [paper.title for paper in found.papers]
