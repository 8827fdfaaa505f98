"""Readings of a strung instrument with invented errors: every error is found again, and mending it mends the pitch."""

from collections.abc import Callable

import numpy as np
import pytest

from gramil.change.set_up_file import SetUpReadings, parse_set_up_readings
from gramil.change.set_up_readings import SetUpReadback, pinned, read_back_set_up
from gramil.faults import MakersFault
from gramil.graph import Figures

FRETS = (1, 3, 5, 7, 9, 12, 15, 19)


@pytest.fixture(scope="module")
def tarn(example: Callable[[str], Figures]) -> Figures:
    return example("tarn")


def played(true: Figures, frets: tuple[int, ...] = FRETS) -> dict[tuple[int, int], float]:
    """What a tuner would show of an instrument that is as `true` has it."""
    cents = true["intonation_cents_after"]
    return {(row + 1, fret): float(cents[row, fret]) for row in range(len(cents)) for fret in frets}


def by_string(values: np.ndarray) -> dict[int, float]:
    return {row: float(value) for row, value in enumerate(values, 1)}


def by_name(values: dict[str, np.ndarray]) -> dict[str, float]:
    return {f"{name}[{row}]": value for name, each in values.items() for row, value in by_string(each).items()}


def test_stiffness_is_recovered_from_the_cents_alone(tarn: Figures) -> None:
    factors = np.array([1.25, 0.8, 1.4, 0.7, 1.1, 0.95])
    filed = {"saddle_set_back": tarn["saddle_set_back"]}
    true = pinned(tarn, by_name(filed | {"string_stretch": tarn["string_stretch"] * factors}))
    found = read_back_set_up(tarn, SetUpReadings(cents=played(true)))
    for each, stretch, drawn in zip(found.strings, true["string_stretch"], tarn["string_stretch"], strict=True):
        assert each.stiffness is not None
        assert each.stiffness.fitted == pytest.approx(stretch, rel=1e-4)
        assert each.stiffness.drawn == pytest.approx(drawn)
        assert 0 < each.stiffness.uncertainty < 0.5 * stretch
        assert each.stiffness.saddle_error == pytest.approx(0, abs=1e-3)


def test_a_saddle_that_acts_elsewhere_is_found_beside_the_stiffness(tarn: Figures) -> None:
    """The break points act farther out by so much than the maker reads; stiffness is off as well."""
    off = np.array([0.5, -0.4, 0.3, 0.6, -0.2, 0.8])
    acting = by_name({"saddle_set_back": tarn["saddle_set_back"] + off, "string_stretch": tarn["string_stretch"] * 1.2})
    found = read_back_set_up(tarn, SetUpReadings(cents=played(pinned(tarn, acting))))
    for each, error in zip(found.strings, off, strict=True):
        assert each.stiffness is not None
        assert each.stiffness.saddle_error == pytest.approx(error, abs=0.01)


def test_wrong_heights_and_places_are_found_and_mended(tarn: Figures) -> None:
    """The strung instrument has high action, nut and relief, and a saddle at the scale's end: all is read."""
    action = tarn["action_wanted"] + np.array([0.4, 0.3, 0.5, 0.2, 0.6, 0.7])
    nut = tarn["nut_slot_over_first"] + np.array([0.1, 0.2, 0.15, 0.1, 0.05, 0.2])
    ends = by_name({"saddle_set_back": np.full(6, 1.0)})
    true = pinned(tarn, by_name({"action_wanted": action, "action_nut": nut}) | ends | {"heights_relief": 0.35})
    readings = SetUpReadings(
        cents=played(true),
        action=by_string(action),
        nut=by_string(nut),
        set_back=by_string(np.full(6, 1.0)),
        saddle_height=by_string(true["neck_set_exposed"]),
        relief=0.35,
    )
    found = read_back_set_up(tarn, readings)
    _check_heights(tarn, true, found)
    for row, each in enumerate(found.strings):
        assert each.stiffness is not None
        assert each.stiffness.fitted == pytest.approx(tarn["string_stretch"][row], rel=1e-3)
    alone = np.array([each.moves.saddle_alone for each in found.strings if each.moves])
    mended = pinned(tarn, by_name({"saddle_set_back": 1.0 + alone}))
    cents = mended["intonation_cents_after"]
    for row, each in enumerate(found.strings):
        for note in each.notes:
            assert cents[row, note.fret] == pytest.approx(note.left, abs=1e-6)


def _check_heights(drawn: Figures, true: Figures, found: SetUpReadback) -> None:
    """Turn the neck back to its relief, file nut and saddle, and measure over both crowns: points and lines alone."""
    for row, each in enumerate(found.strings):
        x, end = true["string_x"][row], float(true["height_saddle_x"][row])
        saddle = float(true["height_at_saddle"][row]) - each.heights.off_saddle
        lowered = drawn["relief_rise"][row] - true["relief_rise"][row]
        nut = float(true["height_at_zero"][row]) + lowered[0] - each.heights.off_nut
        line = nut + (saddle - nut) * x / end
        over = line - (true["crown_top"][row] + lowered)
        assert over[12] == pytest.approx(drawn["action_wanted"][row], abs=2e-3)
        assert over[1] == pytest.approx(drawn["nut_slot_over_first"][row], abs=2e-3)


def test_the_octave_alone_goes_by_the_rule(tarn: Figures) -> None:
    """One reading at fret 12, two cents sharp: 2 x 630.06 x ln 2 / 1200 = 0.728 mm toward the tail."""
    found = read_back_set_up(tarn, SetUpReadings(cents={(1, 12): 2.0}))
    (first,) = found.strings
    assert first.moves is not None
    assert first.moves.saddle_alone == pytest.approx(0.728, rel=0.02), (
        "the exact slope is a little less than the rule's"
    )
    assert np.isnan(first.moves.nut)
    assert first.per_cent == pytest.approx(0.3639, abs=1e-4)


def test_the_nut_is_parted_from_the_saddle(tarn: Figures) -> None:
    """Break points off by known amounts, and nothing else: both come back."""
    best = pinned(tarn, by_name({"saddle_set_back": tarn["intonation_saddle_best"]}))
    best = pinned(best, by_name({"intonation_nut_forward": tarn["intonation_nut_best"]}))
    off_nut, off_saddle = 0.25, -0.6
    wrong = pinned(
        best,
        by_name(
            {
                "saddle_set_back": tarn["intonation_saddle_best"] + off_saddle,
                "intonation_nut_forward": tarn["intonation_nut_best"] + off_nut,
            }
        ),
    )
    rights, wrongs = played(best, (1, 5, 12)), played(wrong, (1, 5, 12))
    cents = {key: wrongs[key] - rights[key] for key in rights}
    found = read_back_set_up(tarn, SetUpReadings(cents=cents))
    for each in found.strings:
        assert each.moves is not None
        assert each.moves.nut == pytest.approx(-off_nut, abs=0.01)
        assert each.moves.saddle_with_nut == pytest.approx(-off_saddle, abs=0.015)
        assert each.moves.left_both < 0.05


def test_cents_that_no_string_could_give_are_said_and_the_rest_stands(tarn: Figures) -> None:
    found = read_back_set_up(tarn, SetUpReadings(cents={(1, 1): -30.0, (1, 12): -40.0}, action={1: 2.0}))
    (first,) = found.strings
    assert first.stiffness is not None
    assert np.isnan(first.stiffness.fitted)
    assert first.heights.off_saddle == pytest.approx(2 * (2.0 - 1.8), rel=1e-2)


def test_what_was_not_read_asks_for_nothing(tarn: Figures) -> None:
    found = read_back_set_up(tarn, SetUpReadings(action={3: float(tarn["action_wanted"][2])}))
    (third,) = found.strings
    assert (third.moves, third.stiffness, third.notes) == (None, None, ())
    assert third.heights.off_saddle == pytest.approx(0, abs=1e-9)
    assert third.heights.off_nut == 0
    assert np.isnan(found.relief)


FILE = """string,what,value
1,cents@12,+1.4
1, cents@5 ,0.8 cent
6,action,"0.11 in"
6,nut@1,0.55
6,saddle_height,3.9 mm
,relief,0.2
"""


def test_a_file_is_read() -> None:
    found = parse_set_up_readings(FILE, "readings.csv", "mm", 6, 19)
    assert found.cents == {(1, 12): 1.4, (1, 5): 0.8}
    assert found.action[6] == pytest.approx(2.794)
    assert (found.nut, found.saddle_height, found.relief) == ({6: 0.55}, {6: 3.9}, 0.2)


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("7,cents@12,1", "1 to 6"),
        ("1,cents@20,1", "1 to 19"),
        ("1,cents,1", "cents@12"),
        ("1,cents@12,lots", "cents"),
        ("1,cents@12,240", "100"),
        ("1,hum,1", "none of"),
        ("1,action@5,2", "action@12"),
        ("1,saddle_height@3,2", "no fret"),
        ("x,nut@1,2", "string 'x'"),
        ("1,nut@1,1 foo", "foo"),
        ("1,cents@12,1\n1,cents@12,2", "earlier line"),
    ],
)
def test_what_cannot_be_read_is_said_with_its_line(line: str, says: str) -> None:
    with pytest.raises(MakersFault) as caught:
        parse_set_up_readings(f"string,what,value\n{line}\n", "readings.csv", "mm", 6, 19)
    (fault,) = caught.value.faults
    assert fault.line == 2 + line.count("\n")
    assert says in str(fault)


@pytest.mark.parametrize("text", ["", "string,value\n1,2\n", "string,what,value\n"])
def test_a_file_with_nothing_in_it_is_refused(text: str) -> None:
    with pytest.raises(MakersFault):
        parse_set_up_readings(text, "readings.csv", "mm", 6, 19)
