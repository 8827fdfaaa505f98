"""What to ask for a new description, and the usual answers, which depend on its unit and its strings."""

from collections.abc import Mapping
from dataclasses import dataclass

from gramil.faults import MakersFault
from gramil.package_data import data_tables


@dataclass(frozen=True)
class Question:
    """What to ask for a new description: the key that it sets, the words, and an example of an answer."""

    key: str
    ask: str
    usual: str


STRINGS = "strings.plain"
"""The question of what the strings are, made of and how many: the other usual answers go by it, and by the unit."""
TWELVE = "twelve"
"""The answer to it for steel strings in pairs."""
QUESTIONS: tuple[Question, ...] = (
    Question("instrument.name", "What is the instrument called", "New guitar"),
    Question("instrument.units", "Millimetres or inches (mm, in)", "mm"),
    Question("instrument.handed", "Right or left handed", "right"),
    Question(STRINGS, "Steel or nylon strings, or twelve of steel in pairs (steel, nylon, twelve)", "steel"),
    Question("scale.length", "Scale length", "650 mm"),
    Question("scale.frets", "How many frets", "20"),
    Question("scale.join", "Fret at the body", "14"),
    Question("nut.width", "Finished width of the board at the nut", "44.5 mm"),
    Question("nut.spread", "Outer strings, centre to centre, at the nut", "37.5 mm"),
    Question("bridge.spread", "The same at the saddle", "55.5 mm"),
    Question("board.wood", "Wood of the board", "persimmon"),
    Question("board.width", "Finished width of the board at fret 12", "55 mm"),
    Question("board.arch", "Radius of the board, or flat", "406 mm"),
    Question("strings.gauges", "String gauges, treble to bass, in inches", "0.012, 0.016, 0.024, 0.032, 0.042, 0.053"),
    Question("strings.tuning", "What they sound, treble to bass", "E4, B3, G3, D3, A2, E2"),
)
"""In the order to ask them; every one may be left at its usual answer."""

FANNED: tuple[Question, ...] = (
    Question("scale.bass", "Scale length of the bass string", "660 mm"),
    Question("scale.treble", "Scale length of the treble string", "640 mm"),
    Question("scale.square_at", "Fret that is square to the centreline", "7"),
)
"""What to ask instead of the scale's length where the frets fan; the first two are needed."""


@dataclass(frozen=True)
class Start:
    """Where a new description starts from: usual answers by key, the name of a text added at its end, and whether its
    strings stand in pairs.
    """

    answers: Mapping[str, str]
    added: str = ""
    paired: bool = False


def start_for(answers: Mapping[str, str]) -> Start:
    """The start that goes with the unit and the strings answered so far.

    Raises MakersFault for strings of an unknown kind.
    """
    usual = {question.key: question.usual for question in QUESTIONS}
    units, strings = (answers.get(key, usual[key]).strip().lower() for key in ("instrument.units", STRINGS))
    if strings not in ("steel", "nylon", TWELVE):
        raise MakersFault.of(f'read "{answers[STRINGS]}"', remedy=f"steel, nylon or {TWELVE}", where=STRINGS)
    return _STARTS.get((units, strings), Start({}))


def usual_answer(question: Question, answers: Mapping[str, str]) -> str:
    """The usual answer to a question, by the unit and the strings answered so far."""
    return start_for(answers).answers.get(question.key, question.usual)


def _starts() -> Mapping[tuple[str, str], Start]:
    rows = data_tables("starts")["start"]
    return {
        (row["units"], row["strings"]): Start(row["answers"], row.get("added", ""), row["strings"] == TWELVE)
        for row in rows
    }


_STARTS = _starts()
