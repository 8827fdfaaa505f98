"""The text of a guitar that came in, from the few answers that it takes: frets and strings, and the scale if known."""

import re
import tomllib
from collections.abc import Mapping
from fractions import Fraction

from gramil.description.questions import QUESTIONS, STRINGS, Question, start_for
from gramil.description.reading import parse_description
from gramil.description.writing import added_to_strings, paired, with_answers, wound_among
from gramil.faults import MakersFault
from gramil.inches import INCH
from gramil.package_data import data_text

_ASKED = (
    *("instrument.name", "instrument.units", "instrument.handed", STRINGS, "scale.length", "scale.frets"),
    *("scale.join", "strings.gauges", "strings.tuning"),
)
NOT_KNOWN_YET = "leave it empty if it is not known yet"
MAY_BE_EMPTY = frozenset(("scale.length", "scale.join"))
"""What is asked and may be left unanswered."""
REPAIRED: tuple[Question, ...] = tuple(each for key in _ASKED for each in QUESTIONS if each.key == key)
"""In the order to ask them."""
FRETS = "scale.frets"
EXAMPLE = re.compile(r'^(# \w+ = )"([\d.]+) mm"( *)', re.MULTILINE)
"""A key that may be given, in a comment, with an example of it."""


def repair_description(answers: Mapping[str, str]) -> str:
    """A commented description of a guitar that came in, from answers by the keys of `REPAIRED`.

    Only `scale.frets` must be answered; an empty answer counts as none. Raises MakersFault for an impossible answer, or
    one to no question.
    """
    given = {key: answer for key, answer in answers.items() if answer.strip()}
    strange = next((key for key in given if key not in _ASKED), None)
    if strange is not None:
        raise MakersFault.of("is not asked of a guitar that came in", remedy="leave it out", where=strange)
    if FRETS not in given:
        raise MakersFault.of("is missing", remedy="count the frets, and give how many there are", where=FRETS)
    start = start_for(given)
    usual = {key: start.answers[key] for key in ("strings.gauges", "strings.tuning") if key in start.answers}
    text = data_text("new-repair.toml") + added_to_strings(start.added)
    if given.get("instrument.units", "mm").strip().lower() == "in":
        text = EXAMPLE.sub(_in_16ths, text)
    settled = {key: answer for key, answer in {**usual, **given}.items() if key != STRINGS}
    text = wound_among(with_answers(text, settled))
    if start.paired:
        text += paired(len(tomllib.loads(text)["strings"]["gauges"]))
    parse_description(text, "the new description")
    return text


def _in_16ths(found: re.Match[str]) -> str:
    """An example in inches, as a rule is read; what is said beside it stays in its column."""
    whole, part = divmod(round(Fraction(found[2]) / INCH * 16), 16)
    inches = " ".join(filter(None, (str(whole or ""), str(Fraction(part, 16)) if part else "")))
    written = f'"{inches} in"'
    beside = " " * (len(found[2]) + len('" mm"') + len(found[3]) - len(written)) if found[3] else ""
    return f"{found[1]}{written}{beside}"
