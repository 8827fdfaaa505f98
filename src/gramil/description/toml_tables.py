"""The tables of a text, parsed once, however many ask for them. Callers must not change what they get."""

import tomllib
from collections.abc import Mapping
from functools import lru_cache
from typing import Any


@lru_cache(maxsize=16)
def tables_of(text: str) -> Mapping[str, Any]:
    """The tables of a TOML text; raises what `tomllib` raises."""
    return tomllib.loads(text)
