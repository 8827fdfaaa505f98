"""On which line each key of a TOML text stands, which the parsers do not tell.

The scanner trusts that the text is valid TOML (it has been parsed before) and never raises; what it does not
understand has no line.
"""

import re
import tomllib
from collections.abc import Mapping
from contextlib import suppress
from dataclasses import dataclass, field
from typing import NamedTuple

Path = tuple[str | int, ...]
"""Where a value stands: table, key, and the row (from 0) in an array of tables or a list."""

_TOKEN = re.compile(
    r"""(?P<string>\"{3}(?:\\.|[^\\])*?\"{3,5}|'{3}.*?'{3,5}|"(?:\\.|[^"\\\n])*"|'[^'\n]*')"""
    r"""|(?P<skip>[ \t\r]+|\#[^\n]*)|(?P<mark>[\[\]{}=,.\n])|(?P<bare>[^\s\[\]{}=,.\#"']+|.)""",
    re.DOTALL,
)


class _Token(NamedTuple):
    text: str
    line: int
    key: bool


@dataclass
class _Scan:
    tokens: list[_Token]
    at: int = 0
    lines: dict[Path, int] = field(default_factory=dict)
    rows: dict[Path, int] = field(default_factory=dict)

    @property
    def now(self) -> str:
        return self.tokens[self.at].text if self.at < len(self.tokens) else ""

    def skip(self, marks: str) -> None:
        while self.now and self.now in marks:
            self.at += 1

    def skip_past(self, marks: str) -> None:
        while self.now and self.now not in marks:
            self.at += 1
        self.at += 1

    def note(self, path: Path) -> None:
        line = self.tokens[min(self.at, len(self.tokens) - 1)].line
        for end in range(1, len(path) + 1):
            self.lines.setdefault(path[:end], line)


def locate(text: str) -> Mapping[Path, int]:
    """The line, counted from 1, of every table, key and list item in a valid TOML text."""
    scan = _Scan(_tokens(text))
    with suppress(RecursionError):
        _document(scan)
    return scan.lines


def line_of(lines: Mapping[Path, int], path: Path) -> int | None:
    """The line of a value, or of the nearest enclosing thing that has one."""
    for end in range(len(path), 0, -1):
        if path[:end] in lines:
            return lines[path[:end]]
    return None


def _tokens(text: str) -> list[_Token]:
    found = []
    line = 1
    for match in _TOKEN.finditer(text):
        kind = match.lastgroup
        if kind == "skip":
            continue
        token = match.group()
        found.append(_Token(token, line, kind in ("bare", "string")))
        if "\n" in token:
            line += token.count("\n")
    return found


def _document(scan: _Scan) -> None:
    table: Path = ()
    while scan.now:
        if scan.now == "\n":
            scan.at += 1
        elif scan.now == "[":
            table = _header(scan)
        else:
            _pair(scan, table)
            scan.skip_past("\n")


def _header(scan: _Scan) -> Path:
    """Read `[a.b]` or `[[a.b]]` and give the path of the table it opens."""
    scan.at += 1
    many = scan.now == "["
    scan.at += many
    keys = _keys(scan)
    path: Path = ()
    for depth, key in enumerate(keys, 1):
        path = (*path, key)
        if many and depth == len(keys):
            scan.rows[path] = scan.rows.get(path, -1) + 1
        if path in scan.rows:
            path = (*path, scan.rows[path])
    scan.note(path)
    scan.skip_past("\n")
    return path


def _keys(scan: _Scan) -> list[str]:
    keys = []
    while scan.at < len(scan.tokens) and (scan.tokens[scan.at].key or scan.now == "."):
        if scan.now != ".":
            keys.append(_plain(scan.now))
        scan.at += 1
    return keys


def _plain(token: str) -> str:
    if not token.startswith(('"', "'")):
        return token
    try:
        return str(tomllib.loads(f"k = {token}")["k"])
    except ValueError:
        return token


def _pair(scan: _Scan, table: Path) -> None:
    start = scan.at
    path = (*table, *_keys(scan))
    end, scan.at = scan.at, start
    scan.note(path)
    scan.at = end
    if scan.now == "=":
        scan.at += 1
        _value(scan, path)


def _value(scan: _Scan, path: Path) -> None:
    if scan.now == "[":
        _list(scan, path)
    elif scan.now == "{":
        _inline(scan, path)
    else:
        while scan.now and scan.now not in ",]}\n":
            scan.at += 1


def _list(scan: _Scan, path: Path) -> None:
    scan.at += 1
    row = 0
    while scan.now:
        scan.skip("\n,")
        if scan.now == "]":
            scan.at += 1
            return
        before = scan.at
        scan.note((*path, row))
        _value(scan, (*path, row))
        scan.at += scan.at == before
        row += 1


def _inline(scan: _Scan, path: Path) -> None:
    scan.at += 1
    while scan.now:
        scan.skip("\n,")
        if scan.now == "}":
            scan.at += 1
            return
        before = scan.at
        _pair(scan, path)
        scan.at += scan.at == before
