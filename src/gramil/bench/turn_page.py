"""Turning from a figure's card: the value wanted, what may move for it, and what it would have to be.

The search saves nothing and changes nothing: its answer is a draft to be tried like any other.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from functools import partial

from starlette.responses import Response

from gramil.address import parse_address
from gramil.bench.asking import Asked, Missing
from gramil.bench.chosen import chosen
from gramil.bench.draft import Draft, drafted
from gramil.bench.instrument_page import Desk, address_part, desk_of
from gramil.bench.made_here import made_on
from gramil.bench.moved import Moved, moved_between
from gramil.bench.section_view import said
from gramil.bench.shelf import Held, Shelf
from gramil.bench.typed_values import read_as, written
from gramil.change.turn import Turned
from gramil.change.turnable import Turnable, turnables, turned
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.show import Shower, shown

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


def turn_page(asked: Asked, shelf: Shelf) -> Response:
    """The question, and with `key` and `wanted` its answer."""
    address = asked.one("at")
    with asked.keeping.opened() as store:
        desk = desk_of(asked, store, shelf)
        made = made_on(store, shelf, desk.held)
    figures, shower = desk.draft.figures, desk.reading.now
    try:
        offered = turnables(figures, address, partial(key_of, desk.draft))
        text = shower.text(address)
    except KeyError:
        raise Missing(f"single figure {address}") from None
    search, fault = _searched(asked, desk, offered, address, made)
    return asked.page(
        "turn.html",
        title=f"Make it another value: {said(address, figures)}",
        desk=desk,
        held=desk.held,
        draft=desk.draft,
        unit=shower.first,
        address=address,
        text=text,
        offered=[_offered(each, figures, address, shower) for each in offered],
        measured=bool(figures.pins)
        and any(parse_address(each)[0] == parse_address(address)[0] for each in figures.pins),
        wanted=asked.one("wanted"),
        turns=asked.one("turn"),
        low=asked.one("low"),
        high=asked.one("high"),
        search=search,
        fault=fault,
        at=address_part(desk),
    )


def key_of(draft: Draft, name: str) -> str | None:
    """The key that settles a base value in this description, or None."""
    found = chosen(name, draft.data)
    return found.key if found and found.key not in PICKED else None


def words_of_key(key: str) -> str:
    """A key or a name as it is said: `board thickness`."""
    return key.replace(".", " ").replace("_", " ")


def _offered(each: Turnable, figures: Figures, address: str, shower: Shower) -> Offered:
    by = each.moves * (2.54 if _in_inches(each, shower) else 1.0)
    moves = shown(by, figures.unit_at(address), shower.first)
    signed = moves if by < 0 else f"+{moves}"
    return Offered(
        each.key,
        words_of_key(each.key),
        _value(each.value, each.unit, shower),
        _step(each, shower),
        signed,
    )


def _step(each: Turnable, shower: Shower) -> str:
    """A step in words, a tenth of an inch where inches are shown; none for an arch, whose steps are curvatures."""
    if each.unit == "1/mm":
        return ""
    return "0.1 in" if _in_inches(each, shower) else shown(each.step, each.unit, shower.first)


def _in_inches(each: Turnable, shower: Shower) -> bool:
    return each.unit == "mm" and shower.first == "in"


def _value(value: float, unit: str | None, shower: Shower) -> str:
    return shown(value, unit, shower.first, shower.inch_style)


def _searched(
    asked: Asked, desk: Desk, offered: tuple[Turnable, ...], address: str, made: Mapping[str, Figures]
) -> tuple[Search | None, str]:
    """The search that was asked for, or what is wrong with the asking."""
    wanted = asked.one("wanted")
    chosen_one = next((each for each in offered if each.key == asked.one("turn")), None)
    if not wanted or chosen_one is None:
        return None, "Choose what may move." if wanted and offered else ""
    shower, figures = desk.reading.now, desk.draft.figures
    try:
        target = read_as(wanted, figures.unit_at(address), shower)
        bounds = _bounds(asked, chosen_one, shower)
        found = turned(figures, chosen_one, lambda value: _changed(desk, chosen_one, value), address, target, bounds)
    except MakersFault as fault:
        return None, " ".join(map(str, fault.faults))
    return _found(desk, chosen_one, found, address, target, bounds, made), ""


def _changed(desk: Desk, each: Turnable, value: float) -> Figures:
    draft = _with(desk.held, desk.draft, each.key, written(value, each.unit))
    if draft.faults:
        raise MakersFault(draft.faults)
    return draft.figures


def _with(held: Held, draft: Draft, key: str, value: str) -> Draft:
    return drafted(held, tuple({**dict(draft.sets), key: value}.items()))


def _bounds(asked: Asked, each: Turnable, shower: Shower) -> tuple[float, float]:
    low, high = each.bounds
    given = [asked.one(key) for key in ("low", "high")]
    return (
        read_as(given[0], each.unit, shower) if given[0] else low,
        read_as(given[1], each.unit, shower) if given[1] else high,
    )


def _found(
    desk: Desk,
    each: Turnable,
    found: Turned,
    address: str,
    target: float,
    bounds: tuple[float, float],
    made: Mapping[str, Figures],
) -> Search:
    shower = desk.reading.now
    answers = tuple(_answer(desk, each, value, address) for value in found.answers[:MOST_ANSWERS])
    words = words_of_key(each.key)
    if not answers:
        return Search(words, (), _none(desk, each, found, address, target, bounds))
    moved = moved_between(desk.draft.figures, answers[0].draft.figures, shower, made) if len(answers) == 1 else None
    return Search(words, answers, "", moved)


def _answer(desk: Desk, each: Turnable, value: float, address: str) -> Answer:
    to_write, shower = written(value, each.unit), desk.reading.now
    draft = _with(desk.held, desk.draft, each.key, to_write)
    gives = shown(draft.figures.at(address), draft.figures.unit_at(address), shower.first, shower.inch_style)
    return Answer(to_write, _value(value, each.unit, shower), gives, draft)


def _none(desk: Desk, each: Turnable, found: Turned, address: str, target: float, bounds: tuple[float, float]) -> str:
    """Why there is no answer, with what is within reach."""
    shower = desk.reading.now
    low, high = (_value(value, each.unit, shower) for value in sorted(bounds))
    if math.isnan(found.lowest):
        return f"Between {low} and {high} no instrument can be made."
    unit = desk.draft.figures.unit_at(address)
    least, most = (shown(value, unit, shower.first, shower.inch_style) for value in (found.lowest, found.highest))
    wanted = shown(target, unit, shower.first, shower.inch_style)
    between = f"Between {low} and {high} it goes from {least} to {most}"
    if found.lowest <= target <= found.highest:
        return f"{between}, and never is {wanted}: it jumps over it, or no instrument can be made there."
    return f"{between}: {wanted} is out of reach."
