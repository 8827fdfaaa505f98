"""Practice limits: each of them judges or sets something, so that a maker's own never changes nothing in silence."""

import re
from importlib.resources import files
from pathlib import Path

import pytest

from gramil.description.shop.limits import LIMITS
from gramil.prints.whole import whole_graph

CODE = "\n".join(path.read_text(encoding="utf-8") for path in Path(str(files("gramil"))).rglob("*.py"))


@pytest.mark.parametrize("name", LIMITS)
def test_every_limit_is_read(name: str) -> None:
    graph, judging = whole_graph(), f"limit_{LIMITS[name].instead_of or name}"
    read = any(judging in graph.parameters(each) for each in graph.dimensions)
    assert read or re.search(rf"\b{judging}\b", CODE)
