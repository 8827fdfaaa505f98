"""Readings of a twelve-string: a pair on one break point is told one move, and one on two a move for each string."""

from collections.abc import Callable, Mapping

import pytest
from tests.twelve import in_courses

from gramil.change.set_up_file import SetUpReadings
from gramil.change.set_up_readings import pinned, read_back_set_up
from gramil.change.set_up_report import report
from gramil.formatter import formatter_of
from gramil.graph import Figures

FRETS = tuple(range(1, 13))
OFF = 0.6
"""How much nearer the nut than it was drawn the last pair breaks, in mm."""


@pytest.fixture(scope="module")
def lines(derive_text: Callable[..., Figures], text_of: Callable[[str], str]) -> Callable[[str, tuple[int, ...]], str]:
    """The report on an instrument whose last pair was filed wrongly, of the strings that were read."""

    def told(pair: str, strings: tuple[int, ...]) -> str:
        drawn = derive_text(in_courses(text_of("tarn")) + f'\n[intonation]\npair = "{pair}"\n')
        filed = drawn["saddle_set_back"].copy()
        filed[10:] -= OFF
        true = pinned(drawn, {f"saddle_set_back[{row}]": float(each) for row, each in enumerate(filed, 1)})
        cents = true["intonation_cents_after"]
        readings = {(row, fret): float(cents[row - 1, fret]) for row in strings for fret in FRETS}
        return "\n".join(report(read_back_set_up(drawn, SetUpReadings(cents=readings)), formatter_of(drawn)))

    return told


Told = Callable[[str, tuple[int, ...]], str]


def of_strings(text: str) -> Mapping[str, str]:
    """What is said of each string that was read."""
    parts = text.split("\nString ")[1:]
    return {part.split("\n")[0]: part for part in parts}


def test_a_pair_on_one_break_point_is_told_one_move(lines: Told) -> None:
    """Both go back by the 0.6 mm that they are out; the drawn place is rounded to a tenth, so within half of that."""
    said = of_strings(lines("one break point", (11, 12)))
    moves = [next(line for line in said[each].split("\n") if "saddle, both" in line) for each in ("11", "12")]
    for move in moves:
        assert float(move.split()[2]) == pytest.approx(OFF, abs=0.06)
        assert "toward the tail" in move
    assert moves[0].split()[2] == moves[1].split()[2]
    assert "saddle alone" not in said["11"]


def test_a_pair_of_which_one_string_was_read_asks_for_the_other(lines: Told) -> None:
    assert "read string 12 too" in lines("one break point", (11,))


def test_a_pair_on_two_break_points_is_told_a_move_for_each(lines: Told) -> None:
    said = of_strings(lines("two break points", (11, 12)))
    assert all("saddle alone" in said[each] for each in ("11", "12"))
