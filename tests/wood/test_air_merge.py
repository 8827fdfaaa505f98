"""Readings put together: what is new is added, what is there again is taken once, and the text reads back the same."""

from datetime import datetime, timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from gramil.wood.air import typed_in
from gramil.wood.air_log import read_air_log
from gramil.wood.air_merge import air_lines, merged

START = datetime(2026, 1, 1)
HOUR = timedelta(hours=1)


def test_an_earlier_and_a_later_run() -> None:
    before = typed_in([(START + n * HOUR, 16.0, 40.0 + n) for n in range(3, 6)])
    later = typed_in([(START + n * HOUR, 17.0, 60.0 + n) for n in range(5, 8)])
    for first, second in ((before, later), (later, before)):
        both = merged(first, second)
        assert both.origin == START + 3 * HOUR
        assert np.diff(both.times).tolist() == [3600.0] * 4
        last = 65.0 if second is later else 45.0
        assert both.humidity.tolist() == [43.0, 44.0, last, 66.0, 67.0]


@given(*[st.sets(st.integers(0, 30), min_size=1)] * 2)
def test_any_two_runs(before: set[int], later: set[int]) -> None:
    """As a table by the hour has it, in which the later run is written over the earlier one."""
    runs = [(before, 16.0, 40.0), (later, 17.0, 60.0)]
    first, second = (
        typed_in([(START + n * HOUR, degrees + n / 9, percent + n / 3) for n in hours])
        for hours, degrees, percent in runs
    )
    table = {n: (degrees + n / 9, percent + n / 3) for hours, degrees, percent in runs for n in hours}
    both = merged(first, second)
    assert [both.moment(each) for each in both.times] == [START + n * HOUR for n in sorted(table)]
    assert list(zip(both.temperature, both.humidity, strict=True)) == [table[n] for n in sorted(table)]


def test_the_text_reads_back_the_same() -> None:
    history = typed_in([(START + n * HOUR, 16.25 + n, 40.5 + n) for n in range(4)])
    again, report = read_air_log("".join(air_lines(history)))
    assert report.left_out == ()
    assert again.origin == START
    assert again.times.tolist() == history.times.tolist()
    assert again.humidity == pytest.approx(history.humidity)
    assert again.temperature == pytest.approx(history.temperature)
