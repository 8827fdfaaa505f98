"""Another instrument of one's own as the start: its text, with what differs."""

import tomllib
from collections.abc import Mapping
from pathlib import Path

from gramil.description.questions import STRINGS
from gramil.description.reading import parse_description
from gramil.description.self_contained import self_contained
from gramil.description.writing import with_answers
from gramil.faults import MakersFault

NAME = "instrument.name"


def from_own(text: str, file: str, folder: Path | None, answers: Mapping[str, str]) -> str:
    """The text of an instrument with answers in place of its own, and with what it names beside it taken in.

    Raises MakersFault if the instrument is faulty, if an answer is impossible, or if it keeps the other's name.
    """
    own = parse_description(text, file, folder).instrument.instrument.name
    if answers.get(NAME, own).strip() == own:
        raise MakersFault.of(f"{own} is the name of the other", remedy="give the new one a name", where=NAME)
    if STRINGS in answers:
        remedy = "write its strings, neck and head in the new file, or begin anew"
        raise MakersFault.of("strings of another kind change more than one key", remedy=remedy, where=STRINGS)
    made = with_answers(self_contained(text, file, folder), answers)
    parse_description(made, "the new description")
    return made


def present(text: str, key: str) -> str | None:
    """What a description has at a key of a table, as it is typed; None if the key is left out."""
    table, last = key.split(".")
    value = tomllib.loads(text).get(table, {}).get(last)
    return None if value is None else str(value)
