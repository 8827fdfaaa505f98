"""How to begin: a new instrument from six questions and a ruler; and the unit that is shown first."""

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

from starlette.responses import Response

from gramil.acts.descriptions import begin
from gramil.bench.field_words import at_fields
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest, go, own_address
from gramil.bench.pages.tools_page import unit_of_shop
from gramil.description.questions import QUESTIONS, STRINGS, TWELVE, usual_answer
from gramil.description.reading import parse_description
from gramil.description.whole.questions import STARTS, wrong_alone
from gramil.description.whole.starting import RULED, START, STARTING_POINTS
from gramil.description.whole.writing import whole_description
from gramil.description.writing import new_description
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit

ASKED = ("instrument.name", START, "scale.length", "scale.join", "nut.width", "instrument.handed")
"""The six questions of a new instrument; all else is left usual and can be changed on its page."""
BOARDS: Mapping[str, str] = {
    "board and neck alone, steel": "steel",
    "board and neck alone, nylon": "nylon",
    "board and neck alone, twelve strings": TWELVE,
}
"""What may be begun other than a whole guitar, and its strings."""
CHOICES: Mapping[str, tuple[str, ...]] = {
    "instrument.handed": ("right", "left"),
    START: (*STARTING_POINTS, *BOARDS),
}
"""Questions that have a few answers, which are offered."""
SAYS: Mapping[str, str] = {name: f"{name}: {point.says}" for name, point in STARTING_POINTS.items()}
"""What a choice is, where its name does not say it."""


@dataclass(frozen=True)
class QuestionAsked:
    """A question on the page: its words, what is usual or may be chosen, what was typed and what is wrong with it."""

    key: str
    ask: str
    usual: str
    choices: tuple[str, ...] = ()
    typed: str = ""
    fault: str = ""


def six(
    unit: LengthUnit, answers: Mapping[str, str] | None = None, faults: Mapping[str, str] | None = None
) -> tuple[QuestionAsked, ...]:
    """The six questions, in order, with what is usual in a unit."""
    known = {question.key: question for question in (*QUESTIONS, STARTS)}
    given, wrong, first = answers or {}, faults or {}, _begun_in(unit)
    return tuple(
        QuestionAsked(
            key,
            re.sub(r" \([^)]*\)$", "", known[key].ask) if key in CHOICES else known[key].ask,
            usual_answer(known[key], first),
            CHOICES.get(key, ()),
            given.get(key, ""),
            wrong.get(key, ""),
        )
        for key in ASKED
    )


def by_ruler(
    answers: Mapping[str, str] | None = None, faults: Mapping[str, str] | None = None
) -> tuple[QuestionAsked, ...]:
    """What a ruler tells of the body; left empty, it is that of the starting point."""
    given, wrong = answers or {}, faults or {}
    return tuple(QuestionAsked(key, ask, "", (), given.get(key, ""), wrong.get(key, "")) for key, ask in RULED.items())


def _begun_in(unit: LengthUnit) -> dict[str, str]:
    return {"instrument.units": unit}


def new_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The six questions."""
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
    return request.page("new.html", title="New instrument", questions=six(unit), ruler=by_ruler(), says=SAYS, faults=())


def make_new(request: PageRequest, _: OpenInstruments) -> Response:
    """A new instrument from the answers; faults come back with what was typed."""
    answers: Mapping[str, str] = {key: request.one(key) for key in (*ASKED, STRINGS, *RULED) if request.one(key)}
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
    try:
        text = _begun({**_begun_in(unit), **answers})
        name = parse_description(text).instrument.instrument.name
        with request.record.opened() as store:
            made = begin(store, name, text, request.hand)
    except MakersFault as fault:
        found, rest = at_fields((*_each_alone(unit, answers), *fault.faults), (*ASKED, *RULED))
        shown = {"questions": six(unit, answers, found), "ruler": by_ruler(answers, found), "says": SAYS}
        return request.page("new.html", 422, title="New instrument", **shown, faults=rest if not found else ())
    return go(f"/instrument/{made.id}")


def _is_whole(answers: Mapping[str, str]) -> bool:
    """Whether a whole guitar is begun: a starting point is chosen, or a ruler's measure typed."""
    return answers.get(START, "") in STARTING_POINTS or (START not in answers and any(key in answers for key in RULED))


def _begun(answers: Mapping[str, str]) -> str:
    """The text of what was chosen to begin. Raises MakersFault."""
    if _is_whole(answers):
        return whole_description({key: text for key, text in answers.items() if key != STRINGS})
    if measures := [key for key in RULED if key in answers]:
        raise MakersFault.of(
            "a board has no body", remedy="begin from a whole guitar, or leave it out", where=measures[0]
        )
    strings = BOARDS.get(answers.get(START, ""))
    board = {key: text for key, text in answers.items() if key != START}
    return new_description(board | ({STRINGS: strings} if strings else {}))


def _each_alone(unit: LengthUnit, answers: Mapping[str, str]) -> Iterator[Fault]:
    """What is wrong with each answer taken by itself, so that all faults are shown at once."""
    if _is_whole(answers):
        so_far = {**_begun_in(unit), START: answers.get(START, STARTS.usual)}
        for key in answers:
            if key not in (START, STRINGS) and (fault := wrong_alone(key, answers[key], so_far)):
                yield replace(fault.faults[0], where=key)
        return
    for key, answer in answers.items():
        try:
            parse_description(_begun({**_begun_in(unit), key: answer}))
        except MakersFault as fault:
            yield replace(fault.faults[0], where=key)


def swap_unit(request: PageRequest, _: OpenInstruments) -> Response:
    """Millimetres or inches first, for this browser."""
    if request.one("unit") in ("mm", "in"):
        request.session.unit = request.one("unit")
    return go(own_address(request.one("back", "/")))
