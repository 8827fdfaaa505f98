"""Tables as TOML text: equal values give equal text, and reading the text back gives equal values."""

import json
import math
import re
from collections.abc import Iterable, Mapping
from datetime import date

Value = str | int | float | bool | date | list["Value"] | tuple["Value", ...] | Mapping[str, "Value"]
_BARE = re.compile(r"[A-Za-z0-9_-]+")


def table_text(header: str, rows: Iterable[tuple[str, Value]]) -> str:
    """A table: its header in brackets as given (`[shop]`, `[[saw]]`), then one line for each key."""
    return "\n".join([header, *(f"{key_text(key)} = {value_text(value)}" for key, value in rows)]) + "\n"


def key_text(key: str) -> str:
    """A key, in quotes where it needs them."""
    return key if _BARE.fullmatch(key) else _quoted(key)


def value_text(value: Value) -> str:
    """One value. Raises ValueError for a number that is not finite."""
    if isinstance(value, str):
        return _quoted(value) if "\n" not in value else _lines(value)
    if isinstance(value, bool):
        return str(value).lower()
    if isinstance(value, int):
        return str(value)
    if isinstance(value, float):
        return _number(value)
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, Mapping):
        return "{ " + ", ".join(f"{key_text(key)} = {value_text(each)}" for key, each in value.items()) + " }"
    return "[" + ", ".join(map(value_text, value)) + "]"


def _number(value: float) -> str:
    if not math.isfinite(value):
        raise ValueError(f"{value} has no place in a file")
    return repr(value)


def _quoted(text: str) -> str:
    """JSON's escapes are valid in TOML, except that JSON leaves DEL as it is."""
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007F")


def _lines(text: str) -> str:
    """A text of several lines, kept readable."""
    return '"""\n' + "\n".join(_quoted(line)[1:-1] for line in text.split("\n")) + '"""'
