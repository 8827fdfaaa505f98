"""Writing descriptions: a new one from a few answers, and one key changed with every comment kept."""

import re
import tomllib
from collections.abc import Mapping
from typing import Any

import tomlkit
from tomlkit import TOMLDocument
from tomlkit.exceptions import TOMLKitError
from tomlkit.items import AoT, Table

from gramil.description.line_edit import added_in_table, aligned_comment, set_in_line
from gramil.description.problems import did_you_mean, nearest, quoted
from gramil.description.questions import FANNED, QUESTIONS, STRINGS, start_for
from gramil.description.reading import parse_description
from gramil.faults import Fault, MakersFault
from gramil.package_data import data_text

_ONE_LENGTH = re.compile(r"^length = .*$", re.MULTILINE)
_TWO_LENGTHS = """\
bass = "660 mm"                  # the frets fan: each outer string has its own scale
treble = "640 mm"
square_at = 7                    # this fret is square to the centreline"""

_WORDS = frozenset({"instrument.name", "board.wood"})
_LISTS = frozenset({"strings.gauges", "strings.tuning"})
_NO_KEYS = frozenset({STRINGS})
"""What is asked and settles more than one key."""
_ROWS = frozenset(("opening", "rosette", "port", "brace"))
"""Tables of an instrument to which a row may be added by its number, the one after the last."""
_STEP = re.compile(r"([A-Za-z_][A-Za-z0-9_-]*)((?:\[\d+\])*)")


def new_description(answers: Mapping[str, str], kind_added: bool = True) -> str:
    """A commented description with the answers, by key of `QUESTIONS`, in place of the usual ones.

    Answers to `FANNED` make the frets fan. `kind_added`: whether to add what nylon strings ask of neck and head. Raises
    MakersFault if an answer is impossible, or answers no question.
    """
    asked = [question.key for question in (*QUESTIONS, *FANNED)]
    strange = [key for key in answers if key not in asked]
    if strange:
        raise MakersFault(
            Fault(where=key, what="nothing is asked by that name", remedy=did_you_mean(nearest(key, asked)))
            for key in strange
        )
    start = start_for(answers)
    fans = _fans(answers)
    text = data_text("new-description.toml") + _added(start.added, kind_added)
    if fans:
        text = _ONE_LENGTH.sub(_TWO_LENGTHS, text, count=1)
    left = {"scale.length"} if fans else {each.key for each in FANNED}
    settled = {key: answer for key, answer in {**start.answers, **answers}.items() if key not in _NO_KEYS | left}
    text = wound_among(with_answers(text, settled))
    if start.paired:
        text += paired(len(tomllib.loads(text)["strings"]["gauges"]))
    parse_description(text, "the new description")
    return text


def paired(count: int) -> str:
    """A number of strings in pairs, as the text of their courses; an odd one stands by itself on the bass side."""
    rows = ["", "# The courses, treble first: each has the strings that are stopped together, counted as they lie."]
    for row, first in enumerate(range(1, count + 1, 2), 1):
        strings = [each for each in (first, first + 1) if each <= count]
        rows += ["[[course]]", f"strings = {strings}".ljust(33) + f"# course {row}"]
    return "\n".join(rows) + "\n"


def with_answers(text: str, answers: Mapping[str, str]) -> str:
    """The text with the answers to questions, by key, in place of what it has; comments and order are kept.

    Raises MakersFault if there is no such place; whether a value is allowed is for `parse_description` to check.
    """
    for key, answer in answers.items():
        text = _set(text, key, answer if key in _WORDS else _answered(key, answer))
    return text


def _added(name: str, whole: bool) -> str:
    """What follows the table of the strings: its own last keys, and tables of other parts if they are wanted."""
    return (data_text(f"new-{name}.toml") if name else "") if whole else added_to_strings(name)


def added_to_strings(name: str) -> str:
    """The last keys of the table of the strings, by the name of a start's text; nothing without a name."""
    text = data_text(f"new-{name}.toml") if name else ""
    return text.partition("\n\n")[0] + "\n"


def wound_among(text: str) -> str:
    """The text with every string wound from the first wound one on, as many as it has gauges."""
    strings = tomllib.loads(text)["strings"]
    if not strings.get("wound"):
        return text
    wound = list(range(min(strings["wound"]), len(strings["gauges"]) + 1))
    return text if wound == strings.get("wound", wound) else _set(text, "strings.wound", wound)


def _fans(answers: Mapping[str, str]) -> bool:
    """Whether two scales are asked for. Raises MakersFault if one is missing, or if a single length is given as
    well.
    """
    given = [question.key for question in FANNED if question.key in answers]
    if not given:
        return False
    missing = [question.key for question in FANNED[:2] if question.key not in answers]
    if missing:
        remedy = "a fanned board has two scales: give bass and treble"
        raise MakersFault.of("is missing", remedy=remedy, where=missing[0])
    if "scale.length" in answers:
        remedy = "give length alone, or bass and treble"
        raise MakersFault.of("is given beside bass and treble", remedy=remedy, where="scale.length")
    return True


def _answered(key: str, answer: str) -> Any:
    if key in _LISTS:
        return [_plain(each) for each in re.split(r"[,\s]*,[,\s]*|\s{2,}", answer.strip(" []\n")) if each]
    return _plain(answer)


def set_key(text: str, key: str, value: str) -> str:
    """The text with one key changed or added; comments and order are kept.

    `key` is dotted, rows of arrays count from 1: `scale.length`, `board.arch.nut`, `jig[2].constant`. `value` is
    TOML if it can be read as such (`650`, `true`, `[1, 2]`), and text if not (`650 mm`). Raises MakersFault
    if there is no such place; whether the value is allowed there is for `parse_description` to check.
    """
    return _set(text, key, _plain(value))


def _plain(value: str) -> Any:
    value = value.strip()
    try:
        read = tomllib.loads(f"value = {value}")
    except (ValueError, RecursionError):
        return value
    return read["value"] if list(read) == ["value"] else value


def _set(text: str, key: str, value: Any) -> str:
    for quick in (set_in_line, added_in_table):
        if (found := quick(text, key, value)) is not None:
            return found
    try:
        document = tomlkit.parse(text)
    except (TOMLKitError, ValueError, RecursionError) as error:
        raise MakersFault.of("the file is not TOML", str(error), where=key) from None
    steps = _steps(key)
    _add_row(document, steps)
    table: Any = document
    for step in steps[:-1]:
        table = _inside(table, step, key)
    if not _may_hold(table, steps[-1]):
        raise _no_place(key)
    table[steps[-1]] = value
    return _aligned(text, tomlkit.dumps(document))


def _add_row(document: TOMLDocument, steps: list[str | int]) -> None:
    """A row after the last one, if an instrument may have any number of them."""
    if len(steps) == 3 and steps[0] in _ROWS and isinstance(steps[1], int):
        rows = document.get(steps[0], None)
        if steps[1] == (0 if rows is None else len(rows)):
            if rows is None:
                document[str(steps[0])] = rows = tomlkit.aot()
            rows.append(tomlkit.table())


def _aligned(old: str, new: str) -> str:
    """The new text with the comment beside a changed value moved back to its column, if there is room."""
    pairs = list(zip(old.split("\n"), new.split("\n"), strict=False))
    changed = [row for row, (one, other) in enumerate(pairs) if one != other]
    if len(changed) != 1 or old.count("\n") != new.count("\n"):
        return new
    line = aligned_comment(*pairs[changed[0]])
    if line is None:
        return new
    lines = new.split("\n")
    lines[changed[0]] = line
    aligned = "\n".join(lines)
    return aligned if tomllib.loads(aligned) == tomllib.loads(new) else new


def _may_hold(table: Any, last: str | int) -> bool:
    """Whether a value may be put there: at a key, but not over a table with a header; at a row that the list has."""
    if isinstance(last, int):
        return isinstance(table, list) and not isinstance(table, AoT) and 0 <= last < len(table)
    if not isinstance(table, dict) or (isinstance(table, TOMLDocument) and last not in table):
        return False
    return last not in table or not isinstance(table[last], Table | AoT)


def _steps(key: str) -> list[str | int]:
    steps: list[str | int] = []
    for part in key.split("."):
        match = _STEP.fullmatch(part.strip())
        if match is None:
            raise _no_place(key)
        steps.append(match[1])
        steps.extend(int(row) - 1 for row in re.findall(r"\d+", match[2]))
    return steps


def _inside(table: Any, step: str | int, key: str) -> Any:
    """The table or list one step in; a table that does not exist yet is added at the end."""
    if isinstance(step, int):
        if not isinstance(table, list) or not 0 <= step < len(table):
            raise _no_place(key)
        return table[step]
    if not isinstance(table, dict):
        raise _no_place(key)
    if step not in table:
        table[step] = tomlkit.table()
    return table[step]


def _no_place(key: str) -> MakersFault:
    return MakersFault.of(
        f"there is no place {quoted(key)} in the file", "A key is written table.key, and rows count from 1", where=key
    )
