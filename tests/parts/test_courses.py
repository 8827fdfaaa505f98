"""Strings in courses: where they lie at nut and saddle, worked out by hand."""

from collections.abc import Callable

import numpy as np
import pytest
from tests.twelve import GAUGES, PITCHES, in_courses

from gramil.faults import MakersFault
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.prints.whole import findings_of

INCH = 25.4
Make = Callable[..., Figures]


@pytest.fixture(scope="module")
def made(derive_text: Callable[..., Figures], text_of: Callable[[str], str]) -> Make:
    """Tarn with courses, and changes to its text; each text derived once."""
    kept: dict[str, Figures] = {}

    def make(*changes: tuple[str, str], **of: object) -> Figures:
        text = in_courses(text_of("tarn"), **of)  # type: ignore[arg-type]  # the words of `in_courses`
        for old, new in changes:
            assert old in text
            text = text.replace(old, new)
        if text not in kept:
            kept[text] = derive_text(text)
        return kept[text]

    return make


def steps(across: np.ndarray) -> np.ndarray:
    """From each string to the next toward the bass."""
    return -np.diff(across)


def test_pairs_stand_as_far_apart_as_they_are_set(made: Make) -> None:
    """1.9 mm at the nut and 2.2 mm at the saddle, centre to centre; the outer strings are the spread apart."""
    figures = made()
    nut, saddle = figures["string_y_nut"], figures["string_y_bridge"]
    assert steps(nut)[::2] == pytest.approx([1.9] * 6)
    assert steps(saddle)[::2] == pytest.approx([2.2] * 6)
    assert (nut[0], nut[-1]) == pytest.approx((38.5 / 2, -38.5 / 2))
    assert (saddle[0], saddle[-1]) == pytest.approx((56.5 / 2, -56.5 / 2))


def test_courses_leave_equal_air_at_the_nut(made: Make) -> None:
    """Of 38.5 mm the six pairs take 6 x 1.9; half strings beside the five gaps and the air take the rest.

    By hand: halves (5+7 + 7+11 + 4+15 + 6+20 + 9+24) thou = 0.108 in = 2.7432 mm, and (38.5 - 11.4 - 2.7432) / 5 is
    4.87136.
    """
    air = made()["string_gap_nut"]
    assert air[1:11:2] == pytest.approx([4.87136] * 5)
    halves = [(GAUGES[row] + GAUGES[row + 1]) / 2 * INCH for row in range(0, 12, 2)]
    assert air[0:12:2] == pytest.approx([1.9 - each for each in halves])


def test_courses_have_equal_centres_at_the_saddle(made: Make) -> None:
    """Middles of pairs: (56.5 - 2.2) / 5 = 10.86 mm apart."""
    saddle = made()["string_y_bridge"]
    assert steps((saddle[::2] + saddle[1::2]) / 2) == pytest.approx([10.86] * 5)


def test_the_air_within_a_pair_may_be_given_instead(made: Make) -> None:
    """1 mm of air between the two strings of every pair at the nut: thick pairs stand further apart."""
    figures = made(('spacing = "equal gaps"', 'spacing = "equal gaps"\npair = 1\npair_by = "gap"'))
    assert figures["string_gap_nut"][0:12:2] == pytest.approx([1.0] * 6)
    assert figures["string_pair_nut"][10] == pytest.approx(1 + (0.048 + 0.026) / 2 * INCH)
    assert figures["string_pair_nut"][11] == 0


def test_equal_gaps_at_the_saddle(made: Make) -> None:
    """(56.5 - 6 x 2.2 - 2.7432) / 5 = 8.11136 mm of air between neighbouring courses."""
    figures = made(("[bridge]\n", '[bridge]\nspacing = "equal gaps"\n'))
    halves = [(GAUGES[row] + GAUGES[row + 1]) / 2 * INCH for row in range(1, 11, 2)]
    assert steps(figures["string_y_bridge"])[1::2] - halves == pytest.approx([8.11136] * 5)


def test_a_doubled_treble_beside_single_strings(made: Make) -> None:
    """Seven strings, the first course a pair: by equal centres its middle is 0.95 mm inside the outer string.

    Middles run from 19.25 - 0.95 = 18.3 to -19.25 in five steps of 7.51 mm.
    """
    seven = {"strings": (2, 1, 1, 1, 1, 1), "gauges": (0.01, *GAUGES[1:3], 0.024, 0.03, 0.04, 0.05)}
    pitches = ("E4", "E4", "B3", "G3", "D3", "A2", "E2")
    figures = made(('spacing = "equal gaps"', 'spacing = "equal centres"'), **seven, pitches=pitches)
    assert figures["string_y_nut"] == pytest.approx([19.25, 17.35, 10.79, 3.28, -4.23, -11.74, -19.25])
    assert figures["strings_course"].tolist() == [1, 1, 2, 3, 4, 5, 6]


def test_courses_of_one_string_each_are_single_strings(made: Make, example: Callable[[str], Figures]) -> None:
    """Six courses of one lie where six strings without courses do, to the last bit."""
    six = {"strings": (1,) * 6, "gauges": (0.012, 0.016, 0.024, 0.032, 0.042, 0.053)}
    figures = made(**six, pitches=("E4", "B3", "G3", "D3", "A2", "E2"))
    for name in ("string_y_nut", "string_y_bridge", "string_gap_nut"):
        assert figures[name].tolist() == example("tarn")[name].tolist()


def test_all_strings_pull_together(made: Make) -> None:
    """The pull is that of each string by itself: plain ones by hand, weight x (2 x length x pitch)^2."""
    figures = made()
    pull, length = figures["string_pull"], figures["string_speaking_length"] / 1000
    for row, pitch in ((0, 329.6276), (1, 329.6276), (5, 391.9954), (7, 293.6648)):
        across = GAUGES[row] * INCH / 1000
        weight = 7850 * np.pi * across**2 / 4
        assert pull[row] == pytest.approx(weight * (2 * length[row] * pitch) ** 2, rel=0.01)
    assert figures["string_pull_total"] == pytest.approx(pull.sum())


@pytest.mark.parametrize(
    ("rows", "says"),
    [
        ("[[course]]\nstrings = [1, 2, 3]\n", "course[1].strings"),
        ("[[course]]\nstrings = [2, 1]\n", "write [1, 2]"),
        ("[[course]]\nstrings = [1]\n\n[[course]]\nstrings = [3]\n", "write [2]"),
        ("[[course]]\nstrings = [1, 2]\n" * 2, "write [3, 4]"),
        ("".join(f"[[course]]\nstrings = [{row}, {row + 1}]\n" for row in (1, 3, 5, 7)), "strings up to 6"),
        ("[[course]]\nstrings = [1, 2]\n", "give string 3 a [[course]]"),
    ],
)
def test_courses_that_leave_a_string_out_are_refused(
    rows: str, says: str, derive_text: Make, text_of: Callable[[str], str]
) -> None:
    with pytest.raises(MakersFault) as refused:
        derive_text(text_of("tarn") + "\n" + rows)
    assert says in str(refused.value).lower()


def test_twelve_strings_in_courses_are_no_longer_asked_about(made: Make) -> None:
    assert len(PITCHES) == made()["strings_count"]
    assert made()["finding_courses"] == ()


def test_pairs_that_take_the_whole_spread_are_refused(made: Make) -> None:
    """At the nut 6 x 7 mm within pairs are more than the 38.5 mm of the spread."""
    with pytest.raises(MakersFault) as refused:
        made(('spacing = "equal gaps"', 'spacing = "equal gaps"\npair = 7'))
    assert "nut.spread" in str(refused.value)


def test_a_pair_on_one_break_point_cannot_be_given_two(made: Make) -> None:
    given = "[saddle]\nset_back = [2, 2, 2, 2, 2, 2, 3, 3, 3, 3, 4, 3.5]\n\n[board]\n"
    one = '[intonation]\npair = "one break point"\n\n'
    with pytest.raises(MakersFault) as refused:
        made(("[board]\n", one + given))
    assert "strings 11 and 12 break in two places" in str(refused.value)
    assert made(("[board]\n", given))["saddle_set_back"][10:].tolist() == [4, 3.5]


def test_the_nut_s_top_is_one_line_over_a_pair(made: Make, example: Callable[[str], Figures]) -> None:
    """Half of the thicker string lies in the nut: of the fifth course 0.040 in, so 0.508 mm for both of its slots."""
    figures = made()
    assert figures["limit_nut_slot_share"] == 0.5
    assert figures["nut_slot_depth"][8:10] == pytest.approx([0.508, 0.508])
    assert example("tarn")["nut_slot_depth"][4] == pytest.approx(0.042 * INCH / 2)


@pytest.mark.parametrize(
    ("pair", "by", "severity"), [(1.4, "centres", "caution"), (1.6, "centres", "fine"), (1.6, "gap", "caution")]
)
def test_a_pair_too_near_or_too_far_apart_is_told(pair: float, by: str, severity: str, made: Make) -> None:
    """1.6 mm of air is 1.6 + (0.048 + 0.026) / 2 in = 2.54 mm from middle to middle in the sixth course: over 2.2."""
    figures = made(('spacing = "equal gaps"', f'spacing = "equal gaps"\npair = {pair}\npair_by = "{by}"'))
    found = next(each for each in findings_of(figures) if each.name == "strings of a pair, nut")
    assert found.severity == severity
    if by == "gap":
        assert (found.figure.address, found.value) == ("string_pair_nut[11]", pytest.approx(1.6 + 0.037 * INCH))


def test_single_strings_are_not_judged_as_pairs(example: Callable[[str], Figures]) -> None:
    assert not [each for each in findings_of(example("tarn")) if "pair" in each.name]


def test_one_string_s_gauge_says_where_it_stands(made: Make) -> None:
    figures = made()
    assert Formatter(figures).origin("strings_gauges[3]") == Formatter(figures).origin("strings_gauges") != ""
