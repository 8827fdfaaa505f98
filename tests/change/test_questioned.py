"""Readings are questioned before they are believed: slips of the unit, figures far off, whole columns of them."""

import math
from collections.abc import Callable
from dataclasses import replace

import pytest

from gramil.change.questioned import HAIR, Question, Reading, faults, meaning, question, questions, sentence, slip_of
from gramil.change.set_up_file import as_readings as set_up_as_readings
from gramil.change.set_up_file import parse_set_up_readings
from gramil.change.slot_readings import SLOTTED
from gramil.description.shop.tolerances import tolerance_of
from gramil.graph import Figures, Pin
from gramil.prints.whole import setups_of

Example = Callable[[str], Figures]


def near_of(figures: Figures, address: str) -> float | None:
    return tolerance_of(address).near(lambda name: float(figures[f"limit_{name}"]))


@pytest.mark.parametrize(
    ("read", "wanted", "near", "slip"),
    [
        (25.4 * 6.3, 6.3, 0.1, "millimetres"),  # 6.3 typed where inches are read
        (6.3 / 25.4, 6.3, 0.1, "inches"),  # 0.248 typed where millimetres are read
        (25.4 * 1.0999 * 6.3, 6.3, 0.1, "millimetres"),  # 27.9 times, within a tenth of 25.4
        (0.9001 / 25.4 * 6.3, 6.3, 0.1, "inches"),
        (0.2 / 25.4, 0.2, 0.075, "inches"),  # a relief of 0.008: under ten of its tolerances off, a slip none the less
        (63.0, 6.3, 0.1, "point"),
        (0.63, 6.3, 0.1, "point"),
        (7.31, 6.3, 0.1, "far"),  # 1.01 off, 1.00 is ten times 0.1
        (7.29, 6.3, 0.1, None),
        (5.31, 6.3, 0.1, None),
        (6.3, 6.3, 0.1, None),
        (7.57, 6.3, None, "far"),  # 1.27 off, a fifth of 6.3 is 1.26
        (7.55, 6.3, None, None),
        (25.4 * 6.3, 6.3, None, "millimetres"),
        (0.002 * 25.4, 0.002, 0.1, None),  # 0.05 mm off, whatever the ratio
        (2.0, 0.0, None, "far"),  # nothing was wanted there
        (0.05, 0.0, 0.1, None),
        (-6.3, 6.3, 0.1, "far"),
        (400.0, math.inf, 10.0, "far"),  # an arch on a board drawn flat
        (6.3, math.nan, 0.1, None),  # nothing is known of it
    ],
)
def test_what_is_asked_about(read: float, wanted: float, near: float | None, slip: str | None) -> None:
    assert slip_of(read, wanted, "mm", near) == slip


def test_only_lengths_are_taken_for_another_unit() -> None:
    assert slip_of(25.4, 1.0, "cent", 3.0) is None
    assert slip_of(254.0, 10.0, "cent", 3.0) == "far"


@pytest.mark.parametrize("name", ["tarn", "fell", "mere", "scree"])
def test_every_box_of_every_sheet_is_guarded(example: Example, name: str) -> None:
    """By its own tolerance, ten times over, or by a fifth; and by both slips of the unit."""
    figures = example(name)
    boxes = dict.fromkeys(box.address for setup in setups_of(figures) for box in setup.boxes)
    for address in boxes:
        wanted, near = float(figures.at(address)), near_of(figures, address)
        if not math.isfinite(wanted):
            continue
        far = 10.02 * near if near is not None else 0.202 * abs(wanted)
        wrong = [wanted + far, wanted - far]
        if figures.unit_at(address) == "mm":
            wrong += [25.4 * wanted, wanted / 25.4]
        for value in filter(lambda each: abs(each - wanted) > HAIR, wrong):
            assert slip_of(value, wanted, figures.unit_at(address) or "", near), (address, value)
        for value in (wanted + 0.97 * far, wanted - 0.97 * far):
            slip = slip_of(value, wanted, figures.unit_at(address) or "", near)
            assert slip is None or abs(value / wanted) > 20 or abs(wanted / value) > 20, (address, value)


def test_one_sentence_says_what_was_read_what_was_wanted_and_the_likely_slip(example: Example) -> None:
    (asked,) = questions(example("tarn"), [Reading("board_thickness", 0.25, "0.25 mm")])
    said = sentence(asked, "mm")
    assert said == "0.25 mm was read where 6.30 mm is wanted, about 25.2 times less: were inches meant?"
    (asked,) = questions(example("tarn"), [Reading("board_thickness", 660 * 25.4, "660 in")])
    assert sentence(asked, "in").startswith("660 in was read where 0.248 in is wanted, ")


def test_the_question_says_what_it_would_mean(example: Example) -> None:
    """A blank 2 mm thin is a board that much thinner, by the same row as any already made; one 2 mm thick is planed."""
    figures = example("tarn")
    wanted = figures["blank_thickness"]
    thin, thick = (questions(figures, [Reading("blank_thickness", wanted + by)], "thicknessed")[0] for by in (-2, 2))
    assert meaning(thin).startswith("If it stands, board planed to thickness: rework. Take the board that much thinner")
    assert meaning(thick).startswith("If it stands, board planed to thickness: rework. Plane it thinner")
    (alone,) = questions(figures, [Reading("blank_thickness", wanted - 2)])
    assert meaning(alone) == meaning(thin), "measured at no operation, it is judged by those that fix it"


def test_what_makes_an_instrument_impossible_is_asked_about_and_not_a_traceback(example: Example) -> None:
    for address, value in (("wire_tang_thickness", 13.7), ("fret_position[12]", 0.0), ("body_wall", 0.0)):
        (asked,) = questions(example("tarn"), [Reading(address, value)], "slotted")
        assert sentence(asked, "mm").endswith("?")


def test_a_reading_is_held_against_what_is_drawn_not_against_the_last_one(example: Example) -> None:
    figures = example("tarn")
    made = replace(figures, pins={"blank_thickness": Pin(9.1, "today")}, known={})
    (asked,) = questions(made, [Reading("blank_thickness", 9.1)])
    assert asked.wanted == figures["blank_thickness"]
    assert not questions(made, [Reading("blank_thickness", figures["blank_thickness"])])


def test_the_shop_says_how_near(text_of: Callable[[str], str], derive_text: Callable[..., Figures]) -> None:
    """With a tolerance of 0.02 instead of 0.1 a reading 0.3 off is asked about."""
    shop = text_of("shop")
    usual, own = (
        derive_text(text_of("tarn"), shop.replace("[limits]\n", "[limits]\n" + more))
        for more in ("", "tolerance_height = 0.02\n")
    )
    reading = Reading("slot_depth_setting", usual["slot_depth_setting"] + 0.3)
    assert not questions(usual, [reading])
    assert questions(own, [reading])


def column(figures: Figures, times: float) -> list[Reading]:
    places = figures["fret_position"].tolist()
    return [Reading(f"fret_position[{fret}]", place * times, of=SLOTTED) for fret, place in enumerate(places)]


def test_a_whole_column_in_the_other_unit_is_one_question(example: Example) -> None:
    figures = example("tarn")
    for times, meant in ((25.4, "millimetres"), (1 / 25.4, "inches")):
        asked = questions(figures, column(figures, times))
        assert len(asked) == 19, "the nut line itself is nothing in either unit"
        (fault,) = faults(asked, "mm", "Nothing was written.", "slots.csv").faults
        assert str(fault).startswith("slots.csv: 19 readings are off in one way, such as fret_position[1]: ")
        assert f"were {meant} meant?" in str(fault)
        assert str(fault).endswith("Nothing was written.")
        assert meaning(asked[0], many=True) == "If they stand, fret slots cut: lost. Begin a new board."
        assert "If they stand, fret slots cut: lost." in str(fault)
    assert not questions(figures, column(figures, 1.0005)), "0.2 mm at the last fret"


def test_a_slot_that_is_far_off_alone_is_filled_and_cut_anew(example: Example) -> None:
    """What a reading would mean is told of the work that it is read of: slots that are cut hold no frets yet."""
    figures = example("tarn")
    readings = column(figures, 1.0)
    (asked,) = questions(figures, [*readings[:7], replace(readings[7], value=readings[7].value + 10), *readings[8:]])
    assert meaning(asked).startswith("If it stands, fret slots cut: rework. Fill that slot with a strip")


def test_a_reading_of_a_set_up_is_judged_by_the_work_that_it_is_first_read_at(example: Example) -> None:
    (asked,) = questions(example("tarn"), [Reading("action_wanted[1]", 0.5)])
    assert meaning(asked).startswith("If it stands, saddle brought to its height: rework. Glue a slip")


def test_many_readings_far_off_are_counted(example: Example) -> None:
    figures = example("tarn")
    told = faults(questions(figures, column(figures, 1.2)), "mm", "Look.").faults
    assert len(told) == 7
    assert told[-1].what == "13 more readings are as far off"
    assert told[-1].remedy == "Look."


SET_UP = (
    "string,what,value\n1,action,0.07\n6,action@12,0.09\n2,nut,0.016\n,relief,0.006\n3,cents@12,2\n4,set_back,0.12\n"
)


def test_every_kind_of_reading_of_a_strung_instrument_is_questioned(example: Example) -> None:
    """Inches in the file of an instrument in millimetres: five lengths are asked about at once, the cents are not."""
    figures = example("tarn")
    read = parse_set_up_readings(SET_UP, "set-up.csv", "mm", 6, 19)
    asked = questions(figures, set_up_as_readings(read))
    assert {each.slip for each in asked} == {"inches"}
    assert [each.reading.address for each in asked] == [
        "action_wanted[1]",
        "action_wanted[6]",
        "nut_slot_over_first[2]",
        "saddle_set_back[4]",
        "heights_relief",
    ]
    assert len(faults(asked, "mm", "").faults) == 1
    assert not questions(figures, set_up_as_readings(parse_set_up_readings(SET_UP, "set-up.csv", "in", 6, 19)))


def test_cents_no_finger_makes_are_asked_about(example: Example) -> None:
    (asked,) = questions(example("tarn"), [Reading("intonation_cents_after[1, 12]", 45.0)])
    assert "45.00 cent was read where" in sentence(asked, "mm")


def test_a_tool_is_held_against_what_it_was() -> None:
    asked = question(Reading("sled", 2.45, "2.45 mm"), 62.4, "mm", 0.1)
    assert isinstance(asked, Question)
    said = sentence(replace(asked, so_far=True), "mm")
    assert said == "2.45 mm was read where it was 62.40 mm so far, about 25.5 times less: were inches meant?"


def test_a_reading_is_held_against_what_its_sheet_says_by_what_was_read_before(example: Example) -> None:
    """A board 2.00 too thick when it was arched, taken as read: levelled it is 2.00 too thick at the crest, and nobody
    asks; levelled as it was drawn it is 2.00 off what its sheet says, and that is asked about."""
    drawn = example("tarn")
    made = drawn.with_pins({"board_thickness": Pin(drawn["board_thickness"] + 2.0, "2026-01-05", "arched")})
    follows = drawn["thickness_at_crest"][12] + 2.0
    assert not questions(made, [Reading("thickness_at_crest[12]", follows)], "levelled")
    assert questions(drawn, [Reading("thickness_at_crest[12]", follows)], "levelled")
    (asked,) = questions(made, [Reading("thickness_at_crest[12]", follows - 2.0)], "levelled")
    assert asked.wanted == pytest.approx(follows)


def test_a_relief_that_was_read_is_not_what_a_second_set_up_is_held_against(example: Example) -> None:
    drawn = example("tarn")
    made = drawn.with_pins({"heights_relief": Pin(2.5, "2026-01-05", "relief_set")})
    assert not questions(made, [Reading("heights_relief", drawn["heights_relief"])], "second_set_up")
    (asked,) = questions(made, [Reading("heights_relief", 2.5)], "second_set_up")
    assert asked.wanted == drawn["heights_relief"]
