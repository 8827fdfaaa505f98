"""A part's card, opened by tapping it on the drawing: its figures, what stands against it, its work and its papers; and
the card of findings at one place.
"""

from dataclasses import dataclass

from starlette.responses import Response

from gramil.bench.describing import TABLES
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import Missing, PageRequest
from gramil.bench.pages.instrument_page import Desk, Placed, address_part, desk_of, placed
from gramil.bench.shown_rows import ShownRow, shown_row
from gramil.bench.stale_here import given_on, work_on
from gramil.bench.things import Kind, first_figures_of, kind_of
from gramil.in_shop_units import in_shop_units
from gramil.prints.listed import headings_of
from gramil.prints.whole import dimensions_of
from gramil.shop.operations import Work
from gramil.shop.operations_done import operations_done


@dataclass(frozen=True)
class WorkRow:
    """An operation on the part: its name and words, the day it was done, and whether its sheet is handed out."""

    name: str
    what: str
    done: str
    given: bool


def part_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The card of the part named."""
    name = request.one("name")
    with request.record.opened() as store:
        desk = desk_of(request, store, open_instruments)
        kind = kind_of(desk.draft.figures, name)
        if kind is None:
            raise Missing(f"part {name}")
        done = {each.operation: each.at[:10] for each in operations_done(store, desk.held.seen.id)}
        work = _work(kind, work_on(store, desk.held), done, given_on(store, desk.held))
    return request.page(
        "part.html",
        title=name[:1].upper() + name[1:],
        desk=desk,
        held=desk.held,
        draft=desk.draft,
        at=address_part(desk),
        x_text=f"{desk.cut.x:.4f}",
        first=_first(desk, kind),
        more=_more(desk, kind),
        findings=[each for each in placed(desk) if each.finding.address.startswith(kind.nouns)],
        work=work,
        described=TABLES,
    )


def _first(desk: Desk, kind: Kind) -> list[ShownRow]:
    return [
        shown_row(words, figure.address, desk.reading) for words, figure in first_figures_of(kind, desk.draft.figures)
    ]


def _more(desk: Desk, kind: Kind) -> list[tuple[str, str, str]]:
    """Every other figure of the part: what it is, its address, its value."""
    figures = desk.draft.figures
    listed = headings_of(figures, (each for each in dimensions_of(figures) if each.startswith(kind.nouns)))
    shown = desk.reading.now
    return [(in_shop_units(each.what, shown.first), each.name, shown.text(each.name)) for each in listed]


def _work(kind: Kind, work: Work, done: dict[str, str], given: frozenset[str]) -> tuple[WorkRow, ...]:
    """The operations on the part, those still to be done first."""
    rows = [
        WorkRow(each.name, each.what, done.get(each.name, ""), bool({each.name, each.sheet} & given))
        for each in work.operations.values()
        if each.part in kind.work
    ]
    return tuple(sorted(rows, key=lambda row: bool(row.done)))


def found_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The findings of the numbers given, as folded into one mark on the drawing."""
    with request.record.opened() as store:
        desk = desk_of(request, store, open_instruments)
    wanted = request.many("n")
    found: list[Placed] = [each for each in placed(desk) if each.number in wanted]
    if not found:
        raise Missing("finding of that number")
    words = "Finding" if len(found) == 1 else f"{len(found)} findings here"
    return request.page(
        "found.html", title=words, desk=desk, held=desk.held, draft=desk.draft, at=address_part(desk), findings=found
    )
