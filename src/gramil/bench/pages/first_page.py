"""The first page: each place's air, and for each instrument what could be done now and what the rest waits for."""

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime
from itertools import groupby

from starlette.responses import Response

from gramil.air.air_bands import Limits
from gramil.air.air_of_places import STALE
from gramil.bench.ages import ago
from gramil.bench.day_curve import day_curve, day_span
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest
from gramil.bench.pages.beginning import SAYS, by_ruler, six
from gramil.bench.pages.tools_page import unit_of_shop
from gramil.bench.stale_here import worked_out
from gramil.change.made_words import lines as made_lines
from gramil.faults import MakersFault
from gramil.now.air_now import PlaceNow
from gramil.now.open_now import Closed, InstrumentNow, InstrumentState, Open, day_of, open_now
from gramil.now.states import Bench, bench_of_store
from gramil.prints.whole import findings_of
from gramil.shop.instruments import instruments
from gramil.store.opening import Store

OPEN_SHOWN = 3
"""How many open operations are shown in full; the rest are folded."""
LOST_SHOWN = 3
"""How many operations that depend on something lost are named; the rest are counted."""
CLOSES = {
    "lost": "lost",
    "cure": "curing",
    "jig": "jig",
    "wood": "wood",
    "stock": "wood",
    "air": "air",
    "reading": "air",
}


@dataclass(frozen=True)
class AirNow:
    """A place's line: its air, how long ago it was read, whether gluing is open in it, and its last day as a chart.

    `day` is the least and the most (%) of that day.
    """

    place: PlaceNow
    age: str
    gluing: str
    chart: str
    day: tuple[float, float]


@dataclass(frozen=True)
class ClosedNow:
    """Operations closed for one and the same reason, and when they open."""

    what: tuple[str, ...]
    by: str
    why: str
    when: str


@dataclass(frozen=True)
class OnBench:
    """An instrument's row. `verdicts` counts findings that call for action; `fault` is why it cannot be read."""

    id: int
    name: str
    done: int
    all: int
    open: tuple[Open, ...]
    more: tuple[Open, ...]
    closed: tuple[ClosedNow, ...]
    waiting: int
    stale: Mapping[str, str]
    spoilt: tuple[tuple[str, str], ...]
    verdicts: Mapping[str, int]
    fault: str = ""


def first_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """What is on the bench now; with an empty store, how to begin."""
    with request.record.opened() as store:
        known = {each.name: each.id for each in instruments(store)}
        if not known:
            questions = six(unit_of_shop(request, store))
            return request.page(
                "empty.html", title="Begin", questions=questions, ruler=by_ruler(), says=SAYS, faults=()
            )
        bench = bench_of_store(
            store,
            request.now,
            worked_out(open_instruments),
        )
        rows = _rows(store, open_instruments, bench, known, request.now.replace(tzinfo=None))
        others = [each for each in instruments(store) if each.standing != "open"]
    now = bench.shop.now
    air = tuple(_air(bench, place, now) for place in bench.shop.places.values())
    return request.page(
        "bench.html",
        degrees=bench.shop.degrees,
        title="On the bench",
        rows=rows,
        air=air,
        faults=bench.faults,
        others=others,
        day=f"{now:%A} {now.day} {now:%B}",
    )


def _air(bench: Bench, place: PlaceNow, now: datetime) -> AirNow:
    band = bench.shop.bands["gluing"]
    gluing, to = "", place.read_at if place.old else now
    if place.name == bench.shop.gluing:
        gluing = _gluing(place, band)
    known = bench.places.known[place.name]
    chart = day_curve(known, to, band.humidity) if len(known.history.times) > 1 else ""
    age = ago(now, place.read_at)
    if not place.old and now - place.read_at > STALE:
        age = f"{age}, which still holds by its own habit"
    return AirNow(place, age, gluing, chart, day_span(bench.places.known[place.name], to))


def _gluing(place: PlaceNow, band: Limits) -> str:
    """Whether gluing is open where it is done; readings that are too old open nothing."""
    least, most = band.humidity
    said = f"its band is {least:.0f} to {most:.0f} %"
    if place.old:
        return f"gluing is closed here until it is read again, {said}"
    return f"gluing is {'open' if band.holds(place.temperature, place.humidity) else 'closed'} here, {said}"


def _rows(
    store: Store, open_instruments: OpenInstruments, bench: Bench, known: Mapping[str, int], now: datetime
) -> tuple[OnBench, ...]:
    found = open_now(bench.instruments, bench.shop)
    states = {state.name: state for state in bench.instruments}
    rows = [_row(store, open_instruments, one, known[one.name], states[one.name], now) for one in found]
    named = {one.name for one in found}
    lost = [each for each in instruments(store, "open") if each.name not in named]
    faults = {each.name: next((text for text in bench.faults if text.startswith(each.name)), "") for each in lost}
    rows += [OnBench(each.id, each.name, 0, 0, (), (), (), 0, {}, (), {}, faults[each.name]) for each in lost]
    return tuple(rows)


def _row(
    store: Store,
    open_instruments: OpenInstruments,
    one: InstrumentNow,
    number: int,
    state: InstrumentState,
    now: datetime,
) -> OnBench:
    here = [each for each in one.closed if each.by != "before"]
    return OnBench(
        number,
        one.name,
        one.done,
        one.all,
        one.open[:OPEN_SHOWN],
        one.open[OPEN_SHOWN:],
        tuple(_together(here, now)),
        len(one.closed) - len(here),
        state.stale,
        (
            *(("stop", line.rstrip(".")) for line in state.stops),
            *((each.standing, line) for each, line in made_lines(state.judged, state.unit)),
        ),
        *_verdicts(store, open_instruments, number),
    )


def _together(closed: list[Closed], now: datetime) -> list[ClosedNow]:
    """Operations that wait for the same reason, as one line."""

    def alike(each: Closed) -> tuple[str, str, str]:
        return each.by, each.why.rstrip("."), str(each.when)

    found = []
    for (by, why, _), group in groupby(sorted(closed, key=alike), key=alike):
        together = list(group)
        when = together[0].when
        opens = f"opens {day_of(when, now)}" if when is not None else ""
        names = [each.operation.what for each in together]
        if by == "lost" and len(names) > LOST_SHOWN:
            names = [*names[:LOST_SHOWN], f"and {len(names) - LOST_SHOWN} more"]
        found.append(ClosedNow(tuple(names), CLOSES.get(by, by), why, opens))
    return found


def _verdicts(store: Store, open_instruments: OpenInstruments, number: int) -> tuple[Mapping[str, int], str]:
    try:
        severities = [each.severity for each in findings_of(open_instruments.held(store, number).figures)]
    except MakersFault as fault:
        return {}, str(fault.faults[0])
    return {word: severities.count(word) for word in ("stop", "caution") if word in severities}, ""
