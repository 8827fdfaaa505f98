"""Every input that was once found to fail is tried again, as whoever found it did."""

import sys
from pathlib import Path

import pytest

if sys.platform == "win32":
    pytest.skip("this system knows no forks", allow_module_level=True)

from fuzz.__main__ import KEPT, KINDS
from fuzz.kind import Kind

BY_NAME = {each.name.replace(" ", "-"): each for each in KINDS}
KEPT_INPUTS = [each for each in sorted(KEPT.iterdir()) if each.suffix != ".md"]


@pytest.mark.parametrize("path", KEPT_INPUTS, ids=lambda each: each.name)
def test_what_failed_once_holds(tmp_path: Path, path: Path) -> None:
    BY_NAME[path.name.partition(".")[0]].check(path.read_bytes(), tmp_path)


@pytest.mark.parametrize("kind", KINDS, ids=lambda each: each.name)
def test_every_kind_makes_the_same_input_of_a_seed(kind: Kind) -> None:
    import random

    assert kind.make(random.Random("7")) == kind.make(random.Random("7"))
