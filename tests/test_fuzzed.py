"""Every input that was once found to fail is tried again, as whoever found it did."""

import random
import subprocess
import sys
import tomllib
from functools import cache
from pathlib import Path

import pytest

if sys.platform == "win32":
    pytest.skip("this system knows no forks", allow_module_level=True)

from fuzz.__main__ import KEPT, KINDS
from fuzz.kind import Kind
from tests.every_key.descriptions import INSTRUMENTS, Place, at, places_in, text_of

BY_NAME = {each.name.replace(" ", "-"): each for each in KINDS}
KEPT_INPUTS = [each for each in sorted(KEPT.iterdir()) if each.suffix != ".md"]


@pytest.mark.parametrize("path", KEPT_INPUTS, ids=lambda each: each.name)
def test_what_failed_once_holds(tmp_path: Path, path: Path) -> None:
    BY_NAME[path.name.partition(".")[0]].check(path.read_bytes(), tmp_path)


@pytest.mark.parametrize("kind", KINDS, ids=lambda each: each.name)
def test_every_kind_makes_the_same_input_of_a_seed(kind: Kind) -> None:
    assert kind.make(random.Random("7")) == kind.make(random.Random("7"))


def test_pairs_are_two_odd_values_at_once_or_one_and_another_key_left_out() -> None:
    """As the text that comes differs from the description that it was made of, at the ends of its tables."""
    changed = [_changed(BY_NAME["pairs"].make(random.Random(f"{seed}")).decode()) for seed in range(60)]
    assert sum(put >= 2 for put, _ in changed) > 20
    assert sum(put >= 1 and gone >= 1 for put, gone in changed) > 5


def _changed(text: str) -> tuple[int, int]:
    """How many values of a description differ from those of the one that is most like it, and how many are gone."""
    new = _values(text)
    old = min(_examples(), key=lambda each: len(each.items() ^ new.items()))
    return sum(key in new and new[key] != value for key, value in old.items()), len(old.keys() - new.keys())


@cache
def _examples() -> list[dict[Place, str]]:
    return [_values(text_of(name)) for name in INSTRUMENTS]


def _values(text: str) -> dict[Place, str]:
    """What stands at each place of a description, but for the tables that other places are in."""
    whole = tomllib.loads(text)
    each = {place: at(whole, place) for place in places_in(whole)}
    return {place: repr(value) for place, value in each.items() if not any(places_in(value))}


def test_every_kind_runs() -> None:
    """So that what no test would notice is not first met by whoever lets it run for an hour.

    In a program of its own: what it may hold is reckoned from a small one.
    """
    words = [sys.executable, "-W", "ignore", "-m", "fuzz", "--seconds", "0", "--each", "2", "--seed", "7"]
    done = subprocess.run(words, cwd=KEPT.parent.parent, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout
    assert done.stdout.splitlines()[-1] == f"{2 * len(KINDS)} in all, 0 failed"
