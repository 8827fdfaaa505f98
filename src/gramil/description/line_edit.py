"""One key of a description changed on its own line, or added to its own table, without parsing the whole text: that
takes longer than all else that an edit on the bench asks of the description.

Unusual TOML (a table inside a multi-line string, a key written in another way) is caught by reading the result:
unless exactly that key differs, the change is not made here.
"""

import re
from typing import Any

import tomlkit
from tomlkit.exceptions import TOMLKitError

from gramil.description.toml_tables import tables_of

COMMENT = re.compile(r"(.*?[^\s])\s+(#[^#]*)")
KEY = re.compile(r"([A-Za-z_][A-Za-z0-9_-]*)\.([A-Za-z_][A-Za-z0-9_-]*)")
HEADER = re.compile(r"""^\[\[?[A-Za-z_"'][^\]\n]*\]\]?[ \t]*(?:#.*)?$""", re.MULTILINE)
"""The line at which a table begins."""
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


def added_in_table(text: str, key: str, value: Any) -> str | None:
    """The text with `table.key` added: to its table, if that stands in one piece and lacks the key, or with a table of
    its own at the end, if there is none; None where it is not so plain.
    """
    steps = KEY.fullmatch(key)
    if steps is None or "\r" in text:
        return None
    table, last = steps.groups()
    found = _in_one_piece(text, table)
    if found is None:
        return None
    start, end = found
    try:
        part: Any = tomlkit.parse(text[start:end] or f"\n[{table}]\n")
        if last in part[table]:
            return None
        part[table][last] = value
    except (TOMLKitError, ValueError, RecursionError):
        return None
    new = text[:start] + tomlkit.dumps(part) + text[end:]
    return new if _differs_in(text, new, table, last, value) else None


def _in_one_piece(text: str, table: str) -> tuple[int, int] | None:
    """Where a table begins and ends; the text's end if there is none. None where it may be spread over the text."""
    heads = list(HEADER.finditer(text))
    own = [row for row, each in enumerate(heads) if re.match(rf"\[\[?{table}[\].]", each[0])]
    if not own:
        return (len(text), len(text)) if re.search(r"[^\n]\n\Z", text) else None
    if len(own) > 1 or not heads[own[0]][0].startswith(f"[{table}]"):
        return None
    return heads[own[0]].start(), [*(each.start() for each in heads), len(text)][own[0] + 1]


def _differs_in(old: str, new: str, table: str, key: str, value: Any) -> bool:
    """Whether the new text says exactly what the old one says with this key set."""
    try:
        before, after = tables_of(old), tables_of(new)
    except (ValueError, RecursionError):
        return False
    wanted = {**before, table: {**before.get(table, {}), key: value}}
    return bool(wanted == after) and type(after[table][key]) is type(value)


def aligned_comment(before: str, after: str) -> str | None:
    """A changed line with its comment moved back to its column, if there is room; None if it has no comment."""
    was, is_now = COMMENT.fullmatch(before), COMMENT.fullmatch(after)
    if was is None or is_now is None or was[2] != is_now[2]:
        return None
    return is_now[1].ljust(max(was.start(2), len(is_now[1]) + 1)) + is_now[2]
