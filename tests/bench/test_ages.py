"""How long ago, in the words of a workshop."""

from datetime import datetime, timedelta

import pytest

from gramil.bench.ages import ago, clock

NOW = datetime(2026, 11, 25, 9, 0)


@pytest.mark.parametrize(
    ("since", "said"),
    [
        (timedelta(0), "just now"),
        (timedelta(minutes=-5), "just now"),
        (timedelta(minutes=1), "1 minute ago"),
        (timedelta(minutes=89), "89 minutes ago"),
        (timedelta(minutes=91), "2 hours ago"),
        (timedelta(hours=47), "47 hours ago"),
        (timedelta(days=2), "2 days ago"),
        (timedelta(days=20), "20 days ago"),
        (timedelta(days=21), "3 weeks ago"),
        (timedelta(days=310), "44 weeks ago"),
    ],
)
def test_how_long_ago(since: timedelta, said: str) -> None:
    assert ago(NOW, NOW - since) == said


def test_a_moment_by_the_clock_on_the_wall() -> None:
    here = datetime.fromisoformat("2026-11-25T09:00:00+01:00")
    assert clock("2026-11-25T23:30:00+00:00", here) == "2026-11-26 00:30"
