"""The package's own data: the text of its files, and the tables of those in TOML.

TOML is slow to read: the list of woods alone took a fiftieth of a short command. Beside the large files lies the same
as JSON, made by `make names`, on its first line a sum over the text that it was made from; where the two differ, the
TOML is read.
"""

import json
import tomllib
from collections.abc import Mapping
from pathlib import Path
from typing import Any
from zlib import crc32

DATA = Path(__file__).parent / "data"
COMPACT = ("cautions", "limits", "made", "materials", "operations", "species", "tolerances", "usual-by-kind")
"""The files that lie there as JSON as well."""


def data_text(name: str) -> str:
    """The text of a data file, such as `limits.toml`."""
    return (DATA / name).read_text(encoding="utf-8")


def data_tables(name: str) -> Mapping[str, Any]:
    """The tables of a data file in TOML, by its name without the ending."""
    text = data_text(f"{name}.toml")
    if name in COMPACT:
        made_from, _, tables = data_text(f"compact/{name}.json").partition("\n")
        if made_from == _sum(text):
            found: Mapping[str, Any] = json.loads(tables)
            return found
    return tomllib.loads(text)


def compact(name: str) -> str:
    """The text of the JSON that lies beside a data file in TOML."""
    text = data_text(f"{name}.toml")
    tables = json.dumps(tomllib.loads(text), ensure_ascii=False, separators=(",", ":"))
    return f"{_sum(text)}\n{tables}\n"


def _sum(text: str) -> str:
    return f"{crc32(text.encode()):08x} {len(text)}"
