"""Sheets for a nylon-string guitar: a slotted head, strings tied to the bridge, no truss rod; none of it for steel."""

import math
from collections.abc import Callable

import pytest

from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.setups.setup import Setup


@pytest.fixture(scope="module")
def mere(example: Callable[[str], Figures]) -> Figures:
    return example("mere")


@pytest.fixture(scope="module")
def tarn(example: Callable[[str], Figures]) -> Figures:
    return example("tarn")


@pytest.fixture(scope="module")
def joined(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Figures:
    """The same guitar with its neck bolted to a closed body, and so with a neck to set."""
    text = text_of("mere").replace('build = "on the neck"', 'build = "neck to body"')
    return derive_text(text.replace("[work]\n", '[work]\nneck_joint = "bolted"\n'))


def said(figures: Figures, name: str) -> str:
    """What a sheet says, figures put in."""
    sheet: Setup = figures[f"setup_{name}"]
    show = Formatter(figures)
    words = (sheet.title, *(each.what for each in sheet.figures), *sheet.steps, sheet.prove)
    return " ".join(show.filled(each) for each in words)


def test_a_slotted_head_is_bored_below_its_face(mere: Figures) -> None:
    """Rollers 10 mm under the face of a head 20 mm thick; a depth has no minus."""
    words = said(mere, "neck_head")
    assert "the hole's middle 10.00 mm below the face" in words
    assert "-10.00" not in words
    assert "post" not in words
    assert "prick" not in words.lower()


def test_posts_are_pricked_and_bored_from_the_face(tarn: Figures) -> None:
    words = said(tarn, "neck_head")
    assert "Prick every post" in words
    assert "roller" not in words


def test_a_tie_block_is_bored_along_the_strings(mere: Figures, tarn: Figures) -> None:
    """58 mm of spread over five steps: 11.60 mm apart."""
    words = said(mere, "saddle_slot")
    assert "tie block" in words
    assert "11.60 mm apart" in words
    assert "pin" not in words
    assert "pin's hole" in said(tarn, "saddle_slot")


def test_without_a_rod_nothing_speaks_of_its_being_slack(mere: Figures, tarn: Figures) -> None:
    words = said(mere, "relief")
    assert words.startswith("Check the relief")
    assert "rod" not in words.split()
    assert "slack" not in words
    assert "rod slack" in said(tarn, "relief")


def test_nylon_is_tuned_up_for_days(mere: Figures, tarn: Figures) -> None:
    assert "nylon goes on stretching" in said(mere, "strings")
    assert "nylon" not in said(tarn, "strings")


@pytest.mark.parametrize("name", ["neck_set", "markers", "owner_air", "nut_slots", "relief"])
def test_no_sheet_takes_up_a_rod_or_a_post_that_is_not_there(
    mere: Figures, joined: Figures, tarn: Figures, name: str
) -> None:
    """The example for nylon has neither a truss rod nor tuners upright in its head, and its board is not bound."""
    words = said(joined if name == "neck_set" else mere, name)
    for absent in ("truss rod", "a rod", "the rod.", "post", "binding"):
        assert absent not in words.replace("without a rod", "").replace("no truss rod", ""), (absent, words)
    assert "toward its tuner" in said(tarn, "nut_slots")
    assert "Slacken the truss rod" in said(tarn, "neck_set")


def test_a_flat_board_is_not_told_of_its_arch(mere: Figures) -> None:
    assert "arch" not in said(mere, "slot")


def test_nothing_is_measured_over_a_bridge_that_the_straightedge_strikes(joined: Figures, tarn: Figures) -> None:
    """A flat-set neck with a high action: the plane of the frets ends under the bridge's top, in the wood."""
    assert joined["neck_set_straightedge"] < 0
    assert [each.address for each in joined["setup_neck_set"].boxes] == ["neck_set_straightedge_over_top"]
    assert "bridge off" in said(joined, "neck_set")
    assert len(tarn["setup_neck_set"].boxes) == 2


def test_lines_that_fan_are_sawn_where_they_are_seen(example: Callable[[str], Figures]) -> None:
    """Face down, lines on the face lie on the table."""
    scree = example("scree")
    assert "over both edges to the back" in said(scree, "slot")
    show = Formatter(scree)
    assert "template" not in " ".join(show.filled(each) for each in scree["setup_slot"].tools)


def test_a_body_built_on_its_neck_asks_for_the_slope_of_its_board(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures], tarn: Figures
) -> None:
    """The neck's face meets the body's edge at fret 12, 325 mm from the nut: it drops by the angle's tangent of that.

    A bridge 2.39 mm thicker and a join half way to the saddle ask for 2.39 mm more at the nut, within what the saddle's
    set-back and the turn of the strings' height change.
    """
    text = text_of("mere").replace("[bridge]\n", "[bridge]\nthickness = {}\n")
    low, high = (derive_text(text.replace("{}", str(thick))) for thick in (8.0, 10.39))
    assert high["neck_set_drop"] - low["neck_set_drop"] == pytest.approx(2.39, abs=0.03)
    assert high["neck_set_drop"] == pytest.approx(325 * math.tan(high["neck_angle_face"]))
    assert "built on the neck" in Formatter(high).filled(high["setup_neck_set"].closed)
    for name in ("build_board", "built_on"):
        assert high[f"setup_{name}"].figures[0].figure.address == "neck_set_drop"
        assert tarn[f"setup_{name}"].closed
    assert not tarn["setup_neck_set"].closed


def test_the_heel_s_slots_take_the_place_of_the_neck_s_joint(mere: Figures, tarn: Figures) -> None:
    words = said(mere, "heel_slots")
    assert "16.00 mm" in words
    assert "2.30 mm from the body's edge to the foot's end" in words
    assert mere["setup_neck_joint"].closed
    assert tarn["setup_heel_slots"].closed


def test_a_neck_that_stands_over_the_rim_is_planed_for_and_one_below_it_packed(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    """A bridge of 6 mm has the neck lean toward the strings, one of 11 mm away from them."""
    text = text_of("mere").replace("[bridge]\n", "[bridge]\nthickness = {}\n")
    low, high = (derive_text(text.replace("{}", str(thick))) for thick in (6.0, 11.0))
    assert low["neck_set_drop"] < 0 < high["neck_set_drop"]
    assert "plane the board away" in said(low, "build_board")
    assert "over it, and so negative" in said(low, "build_board")
    assert "glue a packing" in said(high, "build_board")
