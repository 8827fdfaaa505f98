"""A heel that a body is built on: its slots by plain geometry, what is cut from the plank, and what says so."""

import math
from collections.abc import Callable

import numpy as np
import pytest

from gramil.description.reading import parse_description
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.prints.whole import findings_of

FLAT, ROUND = "[0, 36], [8, 80],", "[0, 0], [2, 18], [8, 45], [30, 92],"


@pytest.fixture(scope="module")
def mere(example: Callable[[str], Figures]) -> Figures:
    return example("mere")


@pytest.fixture(scope="module")
def rounded(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> Figures:
    return derive_text(text_of("mere").replace(FLAT, ROUND))


def changed(text: str, *pairs: tuple[str, str]) -> str:
    for old, new in pairs:
        assert old in text
        text = text.replace(old, new)
    return text


def test_slots_of_a_square_neck_end(mere: Figures) -> None:
    """650 / 2 = 325 at fret 12; 62 mm wide there, 16 between the slots: (62 - 16) / 2 = 23 deep, 28 / 2 - 8 = 6."""
    assert mere["foot_slot_place"] == pytest.approx(325.0)
    assert mere["foot_slot_angle"] == mere["foot_slot_bow"] == 0.0
    assert mere["foot_slot_depth"] == pytest.approx(23.0)
    assert mere["foot_slot_depth_at_cap"] == pytest.approx(6.0)
    assert mere["foot_slot_width"] == pytest.approx(2.0 + 0.2)
    assert mere["foot_step"] == mere["top_thickness"]
    assert mere["foot_end"] == pytest.approx(325.0 + 32.0)


def test_slots_of_a_rounded_neck_end_follow_the_outline(rounded: Figures) -> None:
    """Their ends lie on the outline: its half-width there is the wood between, and the cheek's."""
    (outline,) = rounded["body_outlines"]
    inner, outer = rounded["foot_slot_inner"], rounded["foot_slot_outer"]
    assert float(outline.half_width(inner)) == pytest.approx(8.0, abs=0.03)
    assert float(outline.half_width(outer)) == pytest.approx(31.0, abs=0.03)
    assert math.tan(rounded["foot_slot_angle"]) == pytest.approx((outer - inner) / 23.0)
    between = np.linspace(inner, outer, 400)
    chord = np.interp(outline.half_width(between), (8.0, 31.0), (inner, outer))
    assert rounded["foot_slot_bow"] == pytest.approx(float(np.abs(chord - between).max()), abs=0.02)


def test_the_foot_is_cut_from_the_neck_s_own_plank(mere: Figures, example: Callable[[str], Figures]) -> None:
    """No neck block to buy: the plank ends where the foot does, the blocks at the back run on to the toe's end."""
    lean = -math.tan(mere["neck_angle_face"]) * 95
    assert 0 < lean < 0.1, "it leans toward the strings by a hair, and its foot with it"
    assert mere["plank_tail"] == pytest.approx(325.0 + 32.0 + lean)
    assert mere["plank_toe"][-1] == 25.0
    assert mere["plank_toe"][0] == 0.0
    assert mere["plank_width"] >= 60.0
    tarn = example("tarn")
    assert tarn["plank_tail"] == pytest.approx(tarn["back_bow_length"] + tarn["carve_tenon"])
    assert not any(tarn["plank_toe"])
    assert math.isnan(tarn["foot_slot_width"])


def test_sides_that_stand_past_the_heel_are_told(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures], mere: Figures
) -> None:
    """Top 2.3 and sides 92 reach 94.3 below the neck's face: a heel of 88 leaves 6.3 of them without a slot."""

    def of(figures: Figures) -> str:
        (found,) = [each for each in findings_of(figures) if each.name == "heel and sides"]
        return found.severity

    short = derive_text(changed(text_of("mere"), ("heel_depth = 95", "heel_depth = 88")))
    assert short["foot_heel_over"] == pytest.approx(-6.3)
    assert (of(short), of(mere)) == ("caution", "fine")


def severity(figures: Figures, name: str) -> str:
    (found,) = [each for each in findings_of(figures) if each.name == name]
    return found.severity


def test_slots_that_hold_no_side_and_a_foot_that_is_cut_through_are_stops(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures], mere: Figures
) -> None:
    """Wood of 60 between them leaves (62 - 60) / 2 = 1 mm, less than a side; a foot of 1 mm ends in the slot."""
    wide = derive_text(changed(text_of("mere"), ("slots_apart = 16", "slots_apart = 60")))
    short = derive_text(changed(text_of("mere"), ("[body]\n", "[body]\nneck_block = 1\n")))
    assert wide["foot_slot_depth"] == pytest.approx(1.0)
    assert (severity(wide, "slots at the board"), severity(mere, "slots at the board")) == ("stop", "fine")
    assert (severity(short, "foot behind the slots"), severity(mere, "foot behind the slots")) == ("stop", "fine")


def test_a_toe_under_a_brace_of_the_back_is_told(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures], mere: Figures
) -> None:
    """Back 1 is 7 mm wide at 90: it begins at 86.5, 29.5 past a toe that ends at 32 + 25; one of 60 runs under it."""
    assert mere["foot_toe_room"] == pytest.approx(86.5 - 57.0)
    long = derive_text(changed(text_of("mere"), ("foot_toe = 25", "foot_toe = 60")))
    assert (severity(long, "toe and back brace"), severity(mere, "toe and back brace")) == ("caution", "fine")


def test_without_a_body_there_is_nothing_to_build_on_the_neck(
    text_of: Callable[[str], str], derive_text: Callable[..., Figures]
) -> None:
    """The heel has its slots all the same: its board and the building are told why they are not needed."""
    text = text_of("mere")
    figures = derive_text(text[: text.index("[body]")] + text[text.index("[work]") :])
    assert figures["setup_build_board"].closed == figures["setup_built_on"].closed == "no body is described"
    assert not figures["setup_heel_slots"].closed


def test_a_toe_as_high_as_the_foot_is_refused(text_of: Callable[[str], str]) -> None:
    text = changed(
        text_of("mere"), ("foot_toe_height = 12", "foot_toe_height = 50"), ("depth_neck = 92", "depth_neck = 50")
    )
    with pytest.raises(MakersFault, match="foot_toe_height"):
        parse_description(text)


BUILD = 'build = "on the neck"            # usual for nylon: the sides are let into the heel\n'


@pytest.mark.parametrize(
    ("build", "more", "on_the_neck"),
    [
        ("", "", True),
        ("", '[work]\nneck_joint = "bolted"\n', False),
        ('build = "neck to body"\n', "", False),
        ("", '[work]\nneck_joint = "built on"\n', True),
    ],
)
def test_nylon_is_built_on_the_neck_unless_it_says_otherwise(
    build: str, more: str, on_the_neck: bool, text_of: Callable[[str], str]
) -> None:
    text = changed(text_of("mere"), (BUILD, build), ("[work]\n", more or "[work]\n"))
    instrument = parse_description(text).instrument
    assert (instrument.instrument.build == "on the neck") is on_the_neck
    assert (instrument.work.neck_joint == "built on") is on_the_neck
    assert (instrument.carve.heel == "built on") is on_the_neck


def test_steel_is_built_on_its_neck_where_its_heel_is_said_to_be(text_of: Callable[[str], str]) -> None:
    plain = parse_description(text_of("tarn")).instrument
    assert plain.instrument.build == "neck to body"
    heel = parse_description(text_of("scree") + '\n[carve]\nheel = "built on"\n').instrument
    assert heel.instrument.build == "on the neck"
    assert heel.work.neck_joint == "built on"


@pytest.mark.parametrize(
    ("build", "work"), [("on the neck", "bolted"), ("neck to body", "built on")], ids=["bolted", "built on"]
)
def test_what_excludes_each_other_is_refused(build: str, work: str, text_of: Callable[[str], str]) -> None:
    text = changed(text_of("mere"), (BUILD, f'build = "{build}"\n'), ("[work]\n", f'[work]\nneck_joint = "{work}"\n'))
    with pytest.raises(MakersFault) as fault:
        parse_description(text)
    assert "neck_joint" in str(fault.value)
    assert "instrument.build" in str(fault.value)
