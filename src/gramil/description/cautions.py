"""What to be careful of with each tool, and with materials other than wood: rows of `data/cautions.toml`."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from gramil.package_data import data_tables


@dataclass(frozen=True)
class Tool:
    """A tool, or a kind of work: its caution, whether something in it rotates, and whether it cuts or sands."""

    name: str
    caution: str
    powered: bool = False
    dusty: bool = False


_DATA: Mapping[str, Any] = data_tables("cautions")
TOOLS: Mapping[str, Tool] = {name: Tool(name, **row) for name, row in _DATA["tool"].items()}
"""Every tool by its name."""
MACHINE: str = _DATA["line"]["machine"]
"""What holds at every machine in which something turns."""
DUST: str = _DATA["line"]["dust"]
"""What keeps dust out of lungs, whatever is worked."""
WOOD_DUST: str = _DATA["line"]["wood"]
"""What holds for the dust of every wood, whether or not more is known of it."""
NO_WOOD: Mapping[str, tuple[str, str]] = {name: (row["what"], row["dust"]) for name, row in _DATA["stuff"].items()}
"""Stuff that is worked besides wood: what it is called, and what its dust does."""
