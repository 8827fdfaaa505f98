"""Where published figures and formulas come from: the rows of `data/sources/`, by key."""

import tomllib
from collections.abc import Mapping
from functools import cache

from gramil.package_data import DATA


@cache
def sources() -> Mapping[str, Mapping[str, str]]:
    """Every source by key: author, title, year, where in it, and how it was seen."""
    found: dict[str, Mapping[str, str]] = {}
    for file in sorted((DATA / "sources").iterdir(), key=lambda each: each.name):
        if file.name.endswith(".toml"):
            found.update(tomllib.loads(file.read_text(encoding="utf-8")))
    return found


def cited(key: str) -> str:
    """A source in words; text that is not a key (common practice and the like) is returned unchanged."""
    row = sources().get(key)
    if row is None:
        return key
    named = (row.get("author"), row.get("title"), row.get("year"), row.get("where") or row.get("table"))
    return ", ".join(str(each) for each in named if each)
