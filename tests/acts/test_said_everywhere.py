"""What an act says is heard at the bench and at the command line: it names no page, and no command, of one alone."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

import gramil

ROOT = Path(gramil.__file__).parent
BOTH = ("acts", "shop", "store", "air", "now", "change", "doorway")
"""Rooms whose words reach a maker by either way."""
OF_ONE_WAY = re.compile(r"\bgramil [a-z]{2,}|--[a-z]{2,}|\b(the|this|its) page\b|\bbutton\b|\bclick\b|\bbrowser\b")
ALLOWED = {
    ("acts/bringing_in.py", "a CSV file needs --place or --table"): "files are brought in by a command alone",
    (
        "acts/bringing_in.py",
        "gramil store operations STORE FILE keeps it, with --for NAME for one instrument",
    ): "the same",
    ("store/opening.py", "bring it up: gramil store upgrade "): "the bench does not open with such a store",
    (
        "air/air_of_places.py",
        "give it another name, and read it with `gramil air log`, which asks how far that is off",
    ): "a logger's file beside a shop's file: the bench goes by a store",
}


def said(path: Path) -> Iterator[str]:
    """Every text in a file that is no docstring."""
    tree = ast.parse(path.read_text(encoding="utf-8"))
    documents = {id(each.value) for each in ast.walk(tree) if isinstance(each, ast.Expr)}
    for each in ast.walk(tree):
        if isinstance(each, ast.Constant) and isinstance(each.value, str) and id(each) not in documents:
            yield each.value


@pytest.mark.parametrize("room", BOTH)
def test_words_of_acts_belong_to_neither_way_in(room: str) -> None:
    files = {path.relative_to(ROOT).as_posix(): path for path in (ROOT / room).rglob("*.py")}
    found = {(name, text) for name, path in files.items() for text in said(path) if OF_ONE_WAY.search(text)}
    assert found <= set(ALLOWED)
    assert {each for each in ALLOWED if each[0].startswith(f"{room}/")} <= found


def test_what_is_looked_for_is_found() -> None:
    for text in ("open the page again", "gramil now --every lists it", "press the button", "a CSV wants --place"):
        assert OF_ONE_WAY.search(text), text
