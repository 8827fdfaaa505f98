"""What an instrument costs: hours by part, materials, a plain total, and the quote to hand over."""

from dataclasses import dataclass
from urllib.parse import urlencode

from starlette.responses import Response

from gramil.bench.asking import Asked
from gramil.bench.instrument_page import instrument_id
from gramil.bench.numbers import number_of
from gramil.bench.shelf import Held, Shelf
from gramil.faults import Fault, MakersFault
from gramil.now.costs import Cost, Material, cost_of, materials_in
from gramil.quote import amount, quote_of
from gramil.shop.operations import needed
from gramil.shop.operations_done import operations_done
from gramil.shop.own_operations import work_of

MOST_RATE = 100_000.0
FIELDS = ("rate", "money", "materials")


@dataclass(frozen=True)
class Costed:
    """An instrument and its cost; None with faults where what was typed cannot be read, or nothing was typed yet."""

    held: Held
    cost: Cost | None
    faults: tuple[Fault, ...] = ()


def cost_page(asked: Asked, shelf: Shelf) -> Response:
    """The cost at the rate that was typed."""
    found = _costed(asked, shelf)
    money = asked.one("money")
    query = urlencode([(key, asked.one(key)) for key in FIELDS])
    return asked.page(
        "cost.html",
        422 if found.faults else 200,
        title=f"{found.held.seen.name}, cost",
        held=found.held,
        cost=found.cost,
        faults=found.faults,
        typed={key: asked.one(key) for key in FIELDS},
        amount=lambda value: amount(value, money),
        query=query,
    )


def quote_file(asked: Asked, shelf: Shelf) -> Response:
    """The quote sheet."""
    found = _costed(asked, shelf)
    if found.cost is None:
        raise MakersFault(found.faults or [Fault(what="no rate was given", remedy="write what an hour costs")])
    held = found.held
    content = quote_of(held.figures, found.cost, asked.one("money"), held.seen.customer, asked.now)
    return Response(content, media_type="application/pdf")


def _costed(asked: Asked, shelf: Shelf) -> Costed:
    with asked.keeping.opened() as store:
        held = shelf.held(store, instrument_id(asked))
        done = operations_done(store, held.seen.id)
        promised = materials_in(store, held.seen.id)
        work = needed(work_of(store, held.seen.id), held.description.instrument)
    if not asked.one("rate"):
        return Costed(held, None)
    try:
        rate = number_of(asked, "rate")
        if not 0 <= rate <= MOST_RATE:
            raise MakersFault.of(f"{rate:g} is no rate", f"0 to {MOST_RATE:.0f}", where="rate")
        typed = [_material(line) for line in asked.one("materials").splitlines() if line.strip()]
    except MakersFault as fault:
        return Costed(held, None, fault.faults)
    noted = {each.operation: each.hours for each in done if each.hours is not None}
    return Costed(held, cost_of(work, [each.operation for each in done], noted, [*promised, *typed], rate))


def _material(line: str) -> Material:
    """A line such as `tuners 85`; raises MakersFault where it ends in no amount."""
    what, _, cost = line.strip().rpartition(" ")
    try:
        value = float(cost.replace(",", "."))
    except ValueError:
        value = -1.0
    if not what.strip() or not 0 <= value < 1e9:
        raise MakersFault.of(f'"{line.strip()}" is no material and cost', remedy="write it such as tuners 85")
    return Material(what.strip(" =:"), value)
