"""What may come next on a command line: commands, options, parts, operations, keys and addresses of figures.

Shells ask at every press of TAB, so this loads nothing but a list (`data/completion.json`, made by `make names`) and,
beside it, the names of operations in the maker's own lists in this folder. If nothing is found, the shell completes the
names of files.
"""

import json
import tomllib
from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

from gramil.package_data import data_text

ASK = "__complete"
"""The first word by which a shell asks."""
NOTHING = '""'
"""How a shell that drops empty words says that nothing is typed yet; one that does not hands on these very letters."""
OWN_LISTS = "*.operations.toml"
Words = Mapping[str, str]
"""What may come next, each with a few words on what it is (or none)."""


def candidates(words: Sequence[str]) -> Words:
    """What the last of these words, which follow `gramil`, may become."""
    table = json.loads(data_text("completion.json"))
    *before, begun = ["" if word == NOTHING else word for word in words] or [""]
    found = _next(table, before, begun)
    return {word: told for word, told in found.items() if word.startswith(begun)}


def _next(table: Mapping[str, Any], before: Sequence[str], begun: str) -> Words:
    node: Mapping[str, Any] = {"commands": table["commands"], "options": table["options"], "takes": []}
    known = {**table["commands"]["store"]["commands"], **table["commands"]}  # the word store may be left out
    given, awaited = 0, ""
    for word in before:
        if awaited:
            awaited = ""
        elif word.startswith("-"):
            awaited = node["options"].get(word, ["", ""])[1]
        elif word in known:
            node, given = known[word], 0
            known = node.get("commands", {})
        else:
            given += 1
    if awaited:
        return _of_kind(table, awaited)
    if begun.startswith("-"):
        return {name: told for name, (told, _) in node["options"].items()}
    if "commands" in node and not given:
        return {name: each["help"] for name, each in node["commands"].items()}
    takes = node["takes"]
    return _of_kind(table, takes[min(given, len(takes) - 1)]) if takes else {}


def _of_kind(table: Mapping[str, Any], kind: str) -> Words:
    """Every word of a kind; a list of choices stands in the table itself, parted by strokes."""
    if "|" in kind:
        return dict.fromkeys(kind.split("|"), "")
    found = dict(table["words"].get(kind, {}))
    return {**found, **dict(_own_operations())} if kind in ("operation", "sheet") else found


def _own_operations() -> Iterator[tuple[str, str]]:
    """The operations of the maker's own lists in this folder; a list that cannot be read gives none."""
    for file in sorted(Path().glob(OWN_LISTS)):
        try:
            rows = tomllib.loads(file.read_text(encoding="utf-8"))["operation"]
            yield from ((name, str(row.get("what", ""))) for name, row in rows.items() if not row.get("leave_out"))
        except (OSError, ValueError, LookupError, AttributeError, TypeError):
            continue


def answer(words: Sequence[str]) -> None:
    """Write what may come next, a line each: the word, a tab, and what it is."""
    print("\n".join(f"{word}\t{told}" for word, told in candidates(words).items()))
