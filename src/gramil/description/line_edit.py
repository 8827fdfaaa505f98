"""One key of a description changed on its own line, if its value is a single one there: the common case, without
parsing the whole text.

Unusual TOML (a table inside a multi-line string, a key written in another way) is caught by reading the result:
unless exactly that key differs, the change is not made here.
"""

import re
from typing import Any

import tomlkit

from gramil.description.toml_tables import tables_of

COMMENT = re.compile(r"(.*?[^\s])\s+(#[^#]*)")
KEY = re.compile(r"([A-Za-z_][A-Za-z0-9_-]*)\.([A-Za-z_][A-Za-z0-9_-]*)")
VALUE = r'(?:"[^"\\\n]*"|[^\s"\'\[\]{}#,]+)'
"""A single value on one line: a plain text, a number, or a flag."""


def set_in_line(text: str, key: str, value: Any) -> str | None:
    """The text with `table.key` set, if it has a line of its own with a single value; None if it does not."""
    steps = KEY.fullmatch(key)
    if steps is None or "\r" in text or not isinstance(value, bool | int | float | str):
        return None
    head = re.search(rf"^\[{steps[1]}\][ \t]*(?:#.*)?$", text, re.MULTILINE)
    if head is None:
        return None
    following = re.compile(r"^\[", re.MULTILINE).search(text, head.end())
    end = following.start() if following else len(text)
    line = re.compile(rf"^({steps[2]}[ \t]*=[ \t]*){VALUE}([ \t]*(?:#.*)?)$", re.MULTILINE).search(
        text, head.end(), end
    )
    if line is None:
        return None
    written = f"{line[1]}{tomlkit.item(value).as_string()}{line[2]}"
    new = text[: line.start()] + (aligned_comment(line[0], written) or written) + text[line.end() :]
    return new if _differs_in(text, new, steps[1], steps[2], value) else None


def _differs_in(old: str, new: str, table: str, key: str, value: Any) -> bool:
    """Whether the new text says exactly what the old one says with this key set."""
    try:
        before, after = tables_of(old), tables_of(new)
    except (ValueError, RecursionError):
        return False
    wanted = {**before, table: {**before[table], key: value}}
    return bool(wanted == after) and type(after[table][key]) is type(value)


def aligned_comment(before: str, after: str) -> str | None:
    """A changed line with its comment moved back to its column, if there is room; None if it has no comment."""
    was, is_now = COMMENT.fullmatch(before), COMMENT.fullmatch(after)
    if was is None or is_now is None or was[2] != is_now[2]:
        return None
    return is_now[1].ljust(max(was.start(2), len(is_now[1]) + 1)) + is_now[2]
