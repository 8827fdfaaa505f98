"""A whole guitar from a dozen answers: nothing stops it, at the ends of what may be answered too."""

import re
import tomllib
from itertools import product
from random import Random

import pytest
from tests.walks import fewer

from gramil.description.reading import parse_description, read_shop
from gramil.description.whole.questions import ASKED, wrong_alone
from gramil.description.whole.starting import RULED, STARTING_POINTS
from gramil.description.whole.writing import usual_of, whole_description
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.prints.whole import figures_of, findings_of

STARTS = list(STARTING_POINTS)


BY_THE_SHOP = {"fret ends in dry air", "back-bow from the frets", "relief, at its least"}
"""Cautions that hang on the usual shop's wire, kerf and air, which nobody has measured yet."""
BY_THE_BODY = {"bridge in the lower bout", "intonation, string by string", "bending the sides", "braces and blocks"}
"""Cautions about the maker's own measures at the ends of their ranges, which no rule may change: a waist that bends
tightly, a short scale on a straight saddle, few frets past the join and so little room before the hole.
"""


BY_TWELVE = {"twelve": {"torque on the bridge", "strings near breaking"}}
"""What twice as many strings pull, and the octave of the third on a long scale, whatever the rules."""


def figures(answers: dict[str, str]) -> Figures:
    return figures_of(parse_description(whole_description(answers)), read_shop())


def stops(answers: dict[str, str]) -> set[str]:
    return {each.name for each in findings_of(figures(answers)) if each.severity == "stop"}


def told_of(answers: dict[str, str]) -> set[str]:
    return {each.name for each in findings_of(figures(answers)) if each.severity in ("stop", "caution")}


@pytest.mark.parametrize(("start", "units"), product(STARTS, ("mm", "in")))
def test_every_starting_point_can_be_made(start: str, units: str) -> None:
    told = told_of({"start": start, "instrument.units": units})
    assert told <= BY_THE_SHOP | BY_TWELVE.get(start, set())


@pytest.mark.parametrize("start", STARTS)
def test_nothing_stops_it_at_the_ends_of_what_may_be_answered(start: str) -> None:
    """Corners of the ranges, chosen by lot anew for each kind but alike in every run."""
    lot = Random(start)
    for _ in range(fewer(8, 3)):
        answers = {"start": start}
        for key, ends in STARTING_POINTS[start].between.items():
            end = lot.choice(list(ends))
            answers[key] = f"{end} mm" if key not in ("scale.join", "scale.frets") else f"{end}"
        assert told_of(answers) <= BY_THE_SHOP | BY_THE_BODY | BY_TWELVE.get(start, set()), answers


@pytest.mark.parametrize("start", STARTS)
def test_every_value_has_its_comment_and_every_part_is_there(start: str) -> None:
    text = whole_description({"start": start})
    tables = set(tomllib.loads(text))
    assert {"neck", "head", "top", "body", "top_binding", "back_binding", "soundhole", "rosette", "brace"} <= tables
    plates = {each["plate"] for each in tomllib.loads(text)["brace"]}
    assert plates == {"top", "back"}
    rows = [line for line in text.partition("\n[bridge]\n")[2].splitlines() if re.match(r"[a-z_0-9]+ = ", line)]
    assert len(rows) > 90
    assert [line for line in rows if "#" not in line] == []


@pytest.mark.parametrize("start", STARTS)
def test_the_bridge_lies_on_the_x_and_the_hole_is_clear(start: str) -> None:
    found = figures({"start": start})
    end = found["body_zeros"].saddle
    assert 0.5 < end / float(tomllib.loads(whole_description({"start": start}))["body"]["outline"][-1][0]) < 0.7
    assert found["room_braces_to_hole"] >= 3.0
    if STARTING_POINTS[start].strings == "steel":
        assert found["room_bridge_to_legs"] == 0.0
        assert found["room_crossing_to_hole"] >= 6.0


def test_seven_nylon_strings_are_wound_from_the_fourth_on_and_have_their_rollers() -> None:
    seven = {
        "start": "nylon",
        "strings.gauges": "0.028, 0.032, 0.040, 0.029, 0.035, 0.043, 0.056",
        "strings.tuning": "E4, B3, G3, D3, A2, E2, B1",
        "nut.width": "58 mm",
        "nut.spread": "49 mm",
        "bridge.spread": "66 mm",
        "board.width": "70 mm",
    }
    read = tomllib.loads(whole_description(seven))
    assert read["strings"]["wound"] == [4, 5, 6, 7]
    assert len(read["head"]["posts_x"]) == len(read["head"]["posts_y"]) == 7
    assert [each > 0 for each in read["head"]["posts_y"]] == [True] * 3 + [False] * 4
    assert not stops(seven)


def test_fanned_frets_and_the_left_hand() -> None:
    fanned = {"start": "middle", "scale.bass": "655 mm", "scale.treble": "640 mm", "scale.square_at": "7"}
    assert not stops(fanned | {"instrument.handed": "left"})


@pytest.mark.parametrize(
    ("answers", "told"),
    [
        ({"start": "huge"}, "no starting point"),
        ({"body.length": "700 mm"}, r"body\.length: 700\.00 mm is outside.*480\.00 mm to 510\.00 mm"),
        ({"body.waist": "wide"}, r"body\.waist"),
        ({"scale.length": "610 mm"}, "begin from small"),
        ({"scale.join": "16"}, r"scale\.join: 16 is outside"),
        ({"start": "nylon", "strings.plain": "steel"}, "has nylon strings"),
        ({"start": "large", "strings.plain": "twelve"}, "Begin from twelve"),
        ({"start": "nylon", "strings.plain": "steel"}, "Begin from small or middle or large or baritone,"),
        ({"scale.fretz": "12"}, "nothing is asked by that name"),
    ],
)
def test_what_the_rules_do_not_hold_for_is_refused_by_name(answers: dict[str, str], told: str) -> None:
    with pytest.raises(MakersFault, match=told):
        whole_description(answers)


def test_an_answer_is_judged_by_itself() -> None:
    assert wrong_alone("body.lower", "385 mm", {"start": "middle", "instrument.units": "mm"}) is None
    fault = wrong_alone("body.lower", "500 mm", {"start": "middle", "instrument.units": "mm"})
    assert fault is not None
    assert "500.00 mm" in str(fault)


@pytest.mark.parametrize("units", ["mm", "in"])
@pytest.mark.parametrize("start", STARTS)
def test_the_usual_answers_given_in_words_are_the_same_guitar(start: str, units: str) -> None:
    so_far = {"start": start, "instrument.units": units}
    given = {each.key: usual for each in ASKED if (usual := usual_of(each.key, so_far))}
    assert set(RULED) <= set(given)
    assert whole_description(so_far | given) == whole_description(so_far)
