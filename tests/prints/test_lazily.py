"""Values worked out as they are asked for: how far, how often, and what they are equal to."""

import json
from collections.abc import Iterator

import pytest

from gramil.prints.lazily import Lazily


def noted(asked: list[int], count: int = 5) -> Iterator[int]:
    """The numbers from 0 on, each noted as it is worked out."""
    for number in range(count):
        asked.append(number)
        yield number


def test_nothing_is_worked_out_before_it_is_asked_for_and_once() -> None:
    asked: list[int] = []
    run = Lazily(noted(asked))
    assert asked == []
    both = zip(run, run, strict=True)
    assert [next(both), next(both)] == [(0, 0), (1, 1)]
    assert asked == [0, 1]
    assert list(run) == list(run) == [0, 1, 2, 3, 4]
    assert asked == [0, 1, 2, 3, 4]


def test_runs_are_compared_up_to_the_first_that_differs() -> None:
    asked: list[int] = []
    assert Lazily(noted(asked)) != Lazily([0, 9, 2])
    assert asked == [0, 1]


@pytest.mark.parametrize("other", [[0, 1, 2], (0, 1, 2), Lazily([0, 1, 2])])
def test_a_run_is_equal_to_what_holds_the_same(other: object) -> None:
    assert Lazily(range(3)) == other
    assert Lazily(range(2)) != other
    assert Lazily(range(4)) != other
    assert Lazily([]) != [None]


def test_a_run_is_read_as_a_list() -> None:
    run = Lazily("abc")
    assert (len(run), run[1], run[-1], list(run[:2]), repr(run)) == (3, "b", "c", ["a", "b"], "['a', 'b', 'c']")
    assert json.dumps(list(run)) == '["a", "b", "c"]'
    assert run != "abc"
