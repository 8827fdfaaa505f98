"""A text as its tables: read once, however many ask for it. What is given back is never changed by who asks."""

import tomllib
from collections.abc import Mapping
from functools import lru_cache
from typing import Any


@lru_cache(maxsize=16)
def tables_of(text: str) -> Mapping[str, Any]:
    """The tables of a TOML text; raises what `tomllib` raises."""
    return tomllib.loads(text)
