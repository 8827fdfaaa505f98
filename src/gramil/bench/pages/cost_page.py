"""What an instrument costs: hours by part, materials, a plain total, and the quote to hand over."""

from dataclasses import dataclass
from urllib.parse import urlencode

from starlette.responses import Response

from gramil.bench.field_words import all_read
from gramil.bench.numbers import number_of
from gramil.bench.open_instruments import OpenInstrument, OpenInstruments
from gramil.bench.page_request import PageRequest
from gramil.bench.pages.instrument_page import instrument_id
from gramil.faults import Fault, MakersFault
from gramil.now.costs import Cost, Material, cost_of, cost_written, materials_in
from gramil.now.states import work_to_pay
from gramil.pack import sheet_paper
from gramil.quote import amount, quote_of
from gramil.shop.operations_done import operations_done

MOST_RATE = 100_000.0
FIELDS = ("rate", "money", "materials")


@dataclass(frozen=True)
class Costed:
    """An instrument and its cost; the cost is None, with faults, if what was typed cannot be read, or if nothing was
    typed yet.
    """

    held: OpenInstrument
    cost: Cost | None
    faults: tuple[Fault, ...] = ()


def cost_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The cost at the rate that was typed."""
    found = _costed(request, open_instruments)
    money = request.one("money")
    query = urlencode([(key, request.one(key)) for key in FIELDS])
    return request.page(
        "cost.html",
        422 if found.faults else 200,
        title=f"{found.held.seen.name}, cost",
        held=found.held,
        cost=found.cost,
        faults=found.faults,
        typed={key: request.one(key) for key in FIELDS},
        amount=lambda value: amount(value, money),
        query=query,
    )


def quote_file(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The quote sheet."""
    found = _costed(request, open_instruments)
    if found.cost is None:
        raise MakersFault(found.faults or [Fault(what="no rate was given", remedy="write what an hour costs")])
    held = found.held
    paper = sheet_paper(held.figures)
    content = quote_of(held.figures, found.cost, request.one("money"), held.seen.customer, request.now, paper)
    return Response(content, media_type="application/pdf")


def _costed(request: PageRequest, open_instruments: OpenInstruments) -> Costed:
    with request.record.opened() as store:
        held = open_instruments.held(store, instrument_id(request))
        done = operations_done(store, held.seen.id)
        promised = materials_in(store, held.seen.id)
        work = work_to_pay(store, held.seen, held.description.instrument)
    if not request.one("rate"):
        return Costed(held, None)
    lines = request.one("materials").splitlines()
    try:
        rate, typed = all_read(
            rate=lambda: _rate(request), materials=lambda: [_material(line) for line in lines if line.strip()]
        )
    except MakersFault as fault:
        return Costed(held, None, fault.faults)
    noted = {each.operation: each.hours for each in done if each.hours is not None}
    return Costed(held, cost_of(work, [each.operation for each in done], noted, [*promised, *typed], rate))


def _rate(request: PageRequest) -> float:
    rate = number_of(request, "rate")
    if not 0 <= rate <= MOST_RATE:
        raise MakersFault.of(f"{rate:g} is no rate", f"0 to {MOST_RATE:.0f}")
    return rate


def _material(line: str) -> Material:
    """A line such as `tuners 85`; raises MakersFault where it ends in no amount."""
    what, _, cost = line.strip().rpartition(" ")
    value = cost_written(cost.replace(",", "."))
    if not what.strip() or value is None:
        raise MakersFault.of(f'"{line.strip()}" is not a material and its cost', remedy="write it such as tuners 85")
    return Material(what.strip(" =:"), value)
