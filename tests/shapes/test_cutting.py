"""Pieces out of boards, counted by hand."""

import pytest

from gramil.shapes.cutting import packed, sets_in, strips_across


@pytest.mark.parametrize(("width", "count"), [(49.9, 0), (50.0, 1), (102.9, 1), (103.0, 2), (156.0, 3)])
def test_strips_have_a_kerf_between_them(width: float, count: int) -> None:
    """Strips of 50 with a kerf of 3: two take 103, three 156."""
    assert strips_across(width, 50.0, 3.0) == count


def test_pieces_lie_one_after_another_a_kerf_apart() -> None:
    """600 and 300 need 903 in one strip."""
    cuts = packed([300.0, 600.0], 903.0, 1, 3.0)
    assert cuts is not None
    assert [(cut.row, cut.strip, cut.start) for cut in cuts] == [(0, 0, 603.0), (1, 0, 0.0)]
    assert packed([300.0, 600.0], 902.9, 1, 3.0) is None


def test_a_second_strip_takes_what_the_first_does_not() -> None:
    cuts = packed([300.0, 600.0], 700.0, 2, 3.0)
    assert cuts is not None
    assert [cut.strip for cut in cuts] == [1, 0]


def test_whole_sets() -> None:
    """Two sets of 500 and 100 fit two strips of 603 (500 + 3 + 100 each); a third does not."""
    assert sets_in([500.0, 100.0], 603.0, 2, 3.0) == 2
    assert sets_in([500.0, 100.0], 602.0, 2, 3.0) == 1
    assert sets_in([500.0], 499.0, 5, 3.0) == 0
