"""What the commands' tests share: an input is turned by fewer steps than a maker's, since each reads a description."""

from collections.abc import Iterator
from functools import partial
from unittest.mock import patch

import pytest

from gramil.change.turn import turn


@pytest.fixture(scope="module", autouse=True)
def _fewer_places() -> Iterator[None]:
    """A crossing is closed in on from a dozen places between the bounds: how many there are, other tests know."""
    with patch("gramil.cli.turn.turn", partial(turn, steps=12)):
        yield
