"""Stock: blanks and parts made ahead, which instrument they are for, what serves which need, and what must be
bought.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime

from starlette.responses import Response

from gramil import names as n
from gramil.acts.wood import let_go, reserve
from gramil.air.air_in_store import places_in_store
from gramil.air.pieces_now import pieces_now
from gramil.air.places import places
from gramil.air.readiness import gluing_band, settled
from gramil.bench.consequences import held_open
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest, go
from gramil.bench.pages.tools_page import unit_of_shop
from gramil.description.reading import ShopDescription
from gramil.faults import MakersFault
from gramil.formatter import shown
from gramil.measure import LengthUnit
from gramil.now.match import Matching, match
from gramil.now.needs import fit, kinds_made, needs_of
from gramil.now.stock_on_hand import made_parts, stock_of_store
from gramil.now.wood_on_hand import Sticks, sticks_for
from gramil.shop.instruments import instruments
from gramil.shop.operations_done import operations_done
from gramil.shop.shop_in_store import shop_description
from gramil.shop.stock import (
    Blank,
    blanks,
    free_counts,
    parts,
    promises,
)
from gramil.store.opening import Store


@dataclass(frozen=True)
class BlankRow:
    """A blank in stock: its sizes in words, where it lies, how many are free, and to which instruments others are
    promised.
    """

    blank: Blank
    sizes: str
    place: str
    free: int
    promised: tuple[str, ...]


def stock_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """What is on hand, and what the open instruments need."""
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
        names = {each.id: each.name for each in instruments(store)}
        named = {each.id: each.name for each in places(store)}
        free, given = free_counts(store), promises(store)
        rows = [
            BlankRow(
                each,
                sizes_of(each, unit),
                named.get(each.place or 0, ""),
                free.get(each.id, 0),
                tuple(
                    f"{names.get(own.instrument, 'another')}, {own.need}{' (used)' if own.used_at else ''}"
                    for own in given
                    if own.blank == each.id
                ),
            )
            for each in blanks(store)
        ]
        made = parts(store)
        found = _matching(store, open_instruments, request.now)
        sticks = [line for each in _braces(store, open_instruments) for line in _wanting(each, unit)]
        open_promises = [each for each in given if not each.used_at]
        held = {each.id: each.name for each in blanks(store)}, {each.id: each.name for each in made}
    return request.page(
        "stock.html",
        title="Stock",
        rows=rows,
        made=made,
        found=found,
        buy=_to_buy(found, unit) if found else [],
        sticks=sticks,
        promises=[
            (each, names.get(each.instrument, ""), held[0].get(each.blank or 0) or held[1].get(each.part or 0, ""))
            for each in open_promises
        ],
        unit=unit,
        kinds=kinds_made(),
    )


def sizes_of(blank: Blank, unit: LengthUnit) -> str:
    """Length × width × thickness, the unit said once: `520 × 72 × 8.5 mm`."""
    sizes = (blank.length, blank.width, blank.thickness)
    if unit == "mm":
        return " × ".join(f"{each:.1f}".removesuffix(".0") for each in sizes) + " mm"
    return " × ".join(f"{each / 25.4:.3f}".rstrip("0").removesuffix(".") for each in sizes) + " in"


def _matching(store: Store, open_instruments: OpenInstruments, now: datetime) -> Matching | None:
    """What serves what, over every open instrument that can be read; settled wood is preferred."""
    names = {each.id: each.name for each in instruments(store)}
    figures = {}
    for each in instruments(store, "open"):
        try:
            figures[each.id] = open_instruments.held(store, each.id).figures
        except MakersFault:
            continue
    if not figures:
        return None
    done = {number: [each.operation for each in operations_done(store, number)] for number in figures}
    needs = [need for number, found in figures.items() for need in needs_of(found, done[number])]
    ahead = tuple(made_parts(store, names))
    fits = {
        str(found[n.instrument_name]): [one for part in ahead if (one := fit(part, found))]
        for found in figures.values()
    }
    described = shop_description(store)
    return match(needs, stock_of_store(store, described.shop, names, _settled(store, described, now)), fits)


def _settled(store: Store, described: ShopDescription, now: datetime) -> dict[str, bool]:
    """Whether each piece whose moisture is known has settled for gluing."""
    places, clock = places_in_store(store, described, now), now.replace(tzinfo=None)
    if not described.shop.piece or not places.known:
        return {}
    band = gluing_band(described.shop, places, clock)
    return {each.row.name: settled(each.state, band) for each in pieces_now(described, places, clock).known}


def _braces(store: Store, open_instruments: OpenInstruments) -> tuple[Sticks, ...]:
    """Which billets the braces of each open instrument get, none of them twice."""
    held, free = held_open(store, open_instruments).values(), free_counts(store)
    done = [[each.operation for each in operations_done(store, one.seen.id)] for one in held]
    asked = [(one.figures, own) for one, own in zip(held, done, strict=True)]
    return sticks_for(asked, {each.name: free[each.id] for each in blanks(store)})


def _wanting(each: Sticks, unit: LengthUnit) -> Iterator[str]:
    """Brace wood that no billet in stock yields."""
    if each.wanting:
        wood = ", ".join(dict.fromkeys(stick.wood for stick in each.wanting))
        longest = shown(max(stick.length for stick in each.wanting), "mm", unit)
        yield f"{each.instrument}: {len(each.wanting)} brace sticks of {wood}, the longest {longest}"


def _to_buy(found: Matching, unit: LengthUnit) -> list[tuple[str, str]]:
    return [
        (
            f"{need.instrument}, {need.what}: {' or '.join(need.woods)}",
            " × ".join(shown(each, "mm", unit) for each in (need.length, need.width, need.thickness)),
        )
        for need in found.bought
    ]


def promise_found(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Promise what was found to its instruments; the store refuses what somebody else promised meanwhile."""
    with request.record.opened() as store:
        numbers = {each.name: each.id for each in instruments(store)}
        found = _matching(store, open_instruments, request.now)
        if found:
            sticks = _braces(store, open_instruments)
            reserve(store, found, numbers, request.hand, sticks=sticks)
    return go("/stock")


def take_back(request: PageRequest, _: OpenInstruments) -> Response:
    """Take a promise back; the form says which version of it was seen."""
    with request.record.opened() as store:
        found = next((each for each in promises(store) if str(each.id) == request.one("promise")), None)
        if found is not None and str(found.version) == request.one("version"):
            let_go(store, found, request.hand)
    return go("/stock")
