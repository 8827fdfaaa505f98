"""Turning, from a figure's card: the value wanted, which input may move for it, and what that input would have to be.

The search saves nothing and changes nothing: its answer is a draft to be tried like any other.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial

from starlette.responses import Response

from gramil.address import parse_address
from gramil.bench.chosen import chosen
from gramil.bench.draft import Draft, drafted
from gramil.bench.made_here import made_on
from gramil.bench.moved import Moved, moved_between
from gramil.bench.open_instruments import OpenInstrument, OpenInstruments
from gramil.bench.page_request import Missing, PageRequest
from gramil.bench.pages.instrument_page import Desk, address_part, desk_of
from gramil.bench.section_view import address_in_words
from gramil.bench.typed_values import read_as
from gramil.change.turn import Turned
from gramil.change.turnable import Turnable, turnables, turned
from gramil.change.written_value import written
from gramil.faults import MakersFault
from gramil.formatter import Formatter, shown
from gramil.graph import Figures

MOST_ANSWERS = 5
PICKED = ("wire.use",)
"""Keys that are picked by name and no number, whatever they settle."""


@dataclass(frozen=True)
class Offered:
    """A chosen figure that may move: its key, its words, its value now, and what a step of it does."""

    key: str
    words: str
    value: str
    step: str
    moves: str


@dataclass(frozen=True)
class Question:
    """What is to be met: the figure by its address, the value that it should have, and how far the input may go."""

    address: str
    target: float
    bounds: tuple[float, float]


@dataclass(frozen=True)
class Answer:
    """A value that meets what was wanted: what to write, the value, what the figure becomes, and the draft with it."""

    written: str
    value: str
    gives: str
    draft: Draft


@dataclass(frozen=True)
class Search:
    """What a search found: its answers, or in `none` why there is none; `moved` goes with a single answer."""

    words: str
    answers: tuple[Answer, ...]
    none: str = ""
    moved: Moved | None = None


def turn_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The question, and with `key` and `wanted` its answer."""
    address = request.one("at")
    with request.record.opened() as store:
        desk = desk_of(request, store, open_instruments)
        made = made_on(store, open_instruments, desk.held)
    figures, formatter = desk.draft.figures, desk.reading.now
    try:
        offered = turnables(figures, address, partial(key_of, desk.draft))
        text = formatter.text(address)
    except KeyError:
        raise Missing(f"single figure {address}") from None
    search, fault = _searched(request, desk, offered, address, made)
    return request.page(
        "turn.html",
        title=f"Make it another value: {address_in_words(address, figures)}",
        desk=desk,
        held=desk.held,
        draft=desk.draft,
        unit=formatter.first,
        address=address,
        text=text,
        offered=[_offered(each, figures, address, formatter) for each in offered],
        measured=bool(figures.pins)
        and any(parse_address(each)[0] == parse_address(address)[0] for each in figures.pins),
        wanted=request.one("wanted"),
        turns=request.one("turn"),
        low=request.one("low"),
        high=request.one("high"),
        search=search,
        fault=fault,
        at=address_part(desk),
    )


def key_of(draft: Draft, name: str) -> str | None:
    """The key that sets a base value in this description, or None."""
    found = chosen(name, draft.data)
    return found.key if found and found.key not in PICKED else None


def words_of_key(key: str) -> str:
    """A key or a name in words: `board thickness`."""
    return key.replace(".", " ").replace("_", " ")


def _offered(each: Turnable, figures: Figures, address: str, formatter: Formatter) -> Offered:
    by = each.moves * (2.54 if _in_inches(each, formatter) else 1.0)
    moves = shown(by, figures.unit_at(address), formatter.first)
    signed = moves if by < 0 else f"+{moves}"
    return Offered(
        each.key,
        words_of_key(each.key),
        _value(each.value, each.unit, formatter),
        _step(each, formatter),
        signed,
    )


def _step(each: Turnable, formatter: Formatter) -> str:
    """A step in words, a tenth of an inch where inches are shown; none for an arch, whose steps are curvatures."""
    if each.unit == "1/mm":
        return ""
    return "0.1 in" if _in_inches(each, formatter) else shown(each.step, each.unit, formatter.first)


def _in_inches(each: Turnable, formatter: Formatter) -> bool:
    return each.unit == "mm" and formatter.first == "in"


def _value(value: float, unit: str | None, formatter: Formatter) -> str:
    return shown(value, unit, formatter.first)


def _searched(
    request: PageRequest, desk: Desk, offered: tuple[Turnable, ...], address: str, made: Mapping[str, Figures]
) -> tuple[Search | None, str]:
    """The search asked for, or what is wrong with the question."""
    wanted = request.one("wanted")
    chosen_one = next((each for each in offered if each.key == request.one("turn")), None)
    if not wanted or chosen_one is None:
        return None, "Choose what may move." if wanted and offered else ""
    formatter, figures = desk.reading.now, desk.draft.figures
    try:
        target = read_as(wanted, figures.unit_at(address), formatter)
        bounds = _bounds(request, chosen_one, formatter)
        found = turned(figures, chosen_one, lambda value: _changed(desk, chosen_one, value), address, target, bounds)
    except MakersFault as fault:
        return None, " ".join(map(str, fault.faults))
    return _found(desk, chosen_one, found, Question(address, target, bounds), made), ""


def _changed(desk: Desk, each: Turnable, value: float) -> Figures:
    draft = _with(desk.held, desk.draft, each.key, written(value, each.unit))
    if draft.faults:
        raise MakersFault(draft.faults)
    return draft.figures


def _with(held: OpenInstrument, draft: Draft, key: str, value: str) -> Draft:
    return drafted(held, tuple({**dict(draft.sets), key: value}.items()))


def _bounds(request: PageRequest, each: Turnable, formatter: Formatter) -> tuple[float, float]:
    low, high = each.bounds
    given = [request.one(key) for key in ("low", "high")]
    return (
        read_as(given[0], each.unit, formatter) if given[0] else low,
        read_as(given[1], each.unit, formatter) if given[1] else high,
    )


def _found(desk: Desk, each: Turnable, found: Turned, asked: Question, made: Mapping[str, Figures]) -> Search:
    formatter = desk.reading.now
    answers = tuple(_answer(desk, each, value, asked.address) for value in found.answers[:MOST_ANSWERS])
    words = words_of_key(each.key)
    if not answers:
        return Search(words, (), _none(desk, each, found, asked))
    moved = moved_between(desk.draft.figures, answers[0].draft.figures, formatter, made) if len(answers) == 1 else None
    return Search(words, answers, "", moved)


def _answer(desk: Desk, each: Turnable, value: float, address: str) -> Answer:
    to_write, formatter = written(value, each.unit), desk.reading.now
    draft = _with(desk.held, desk.draft, each.key, to_write)
    gives = shown(draft.figures.at(address), draft.figures.unit_at(address), formatter.first)
    return Answer(to_write, _value(value, each.unit, formatter), gives, draft)


def _none(desk: Desk, each: Turnable, found: Turned, asked: Question) -> str:
    """Why there is no answer, with what can be reached."""
    formatter = desk.reading.now
    low, high = (_value(value, each.unit, formatter) for value in sorted(asked.bounds))
    if math.isnan(found.lowest):
        return f"Between {low} and {high} no instrument can be made."
    unit = desk.draft.figures.unit_at(asked.address)
    least, most = (shown(value, unit, formatter.first) for value in (found.lowest, found.highest))
    wanted = shown(asked.target, unit, formatter.first)
    between = f"Between {low} and {high} it goes from {least} to {most}"
    if found.lowest <= asked.target <= found.highest:
        return f"{between}, and never is {wanted}: it jumps over it, or no instrument can be made there."
    return f"{between}: {wanted} is out of reach."
