"""Shift: nothing moves when nothing changed; a change and its undoing are opposite; what is no longer true is named."""

from importlib.resources import files

import pytest

from gramil.change.shift import shift
from gramil.change.whole import figures_of
from gramil.description.reading import parse_description, read_shop
from gramil.description.writing import set_key
from gramil.graph import Figures

TARN = (files("gramil") / "data" / "examples" / "tarn.toml").read_text(encoding="utf-8")


def tarn(**changes: str) -> Figures:
    text = TARN
    for key, value in changes.items():
        text = set_key(text, key.replace("__", "."), value)
    return figures_of(parse_description(text), read_shop())


def test_shift_of_the_same_is_empty() -> None:
    found = shift(tarn(), tarn())
    assert (found.inputs, found.features, found.moves, found.came, found.went, found.drawings, found.setups) == (
        (),
    ) * 7
    assert found.folded == 0


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
    assert any("gauge" in title for title in found.drawings)
    assert found.setups


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
    assert (found.drawings, found.setups) == ((), ())
