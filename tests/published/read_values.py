"""Published values as tests take them: rows of `values/`, a file a source, each table with where it stands there.

No value in them comes from this program. `tools/published.py` counts them without running anything of it.
"""

import tomllib
from pathlib import Path
from typing import Any

FOLDER = Path(__file__).parent / "values"


def rows(source: str, table: str) -> list[tuple[Any, ...]]:
    """The rows of a source's table: what was given, then what is published. Raises KeyError for one that is none."""
    found = tomllib.loads((FOLDER / f"{source}.toml").read_text(encoding="utf-8"))["table"]
    by_name = {each["name"]: each["rows"] for each in found}
    return [tuple(row) for row in by_name[table]]
