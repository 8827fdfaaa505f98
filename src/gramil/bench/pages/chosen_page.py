"""What was ticked on the page of prints, as one PDF; if templates and sheets have papers of their own, as two in an
archive.
"""

from starlette.responses import Response

from gramil.bench.open_instruments import OpenInstrument, OpenInstruments
from gramil.bench.page_request import PageRequest
from gramil.bench.pages.files_page import plain, zipped
from gramil.bench.pages.instrument_page import instrument_id
from gramil.bench.pages.print_page import paper_wanted, printer_of
from gramil.bench.pages.sheet_page import work_for
from gramil.bench.stale_here import worked_out
from gramil.bench.units import formatter_for
from gramil.faults import MakersFault
from gramil.now.open_now import open_now
from gramil.now.states import bench_of_store
from gramil.print_choice import Choices, PrintChoice, choices, chosen_makers
from gramil.store.opening import Store


def printed_chosen(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The templates and sheets that were ticked."""
    with request.record.opened() as store:
        held = open_instruments.held(store, instrument_id(request))
        formatter = formatter_for(request.session, held.figures)
        known = choices(held.figures, formatter, work_for(store, held))
        chosen = _ticked(request, known)
        if request.one("today"):
            chosen |= known.of_operations(_open_now(request, store, open_instruments, held))
    paper = paper_wanted(request, held)
    makers = chosen_makers(formatter, known, chosen, paper, printer_of(request, formatter.first))
    if not makers:
        what = "of what is open now nothing has a sheet" if request.one("today") else "nothing is ticked"
        raise MakersFault.of(what, remedy="go back and tick what you want to print")
    content = {place.rpartition("/")[2]: make() for place, make in makers.items()}
    name, made = next(iter(content.items()))
    kind, shown = "application/pdf", "inline"
    if len(content) > 1:
        name, made, kind, shown = "chosen.zip", zipped(content), "application/zip", "attachment"
    headers = {"content-disposition": f'{shown}; filename="{plain(held.seen.name)}-{name}"'}
    return Response(made, media_type=kind, headers=headers)


def _ticked(request: PageRequest, known: Choices) -> PrintChoice:
    """What was ticked one by one, part by part, or all; a name that does not exist is left out."""
    if request.one("all"):
        return known.all
    templates, sheets = ({each.name for each in kind} for kind in (known.templates, known.sheets))
    one_by_one = PrintChoice(
        frozenset(templates.intersection(request.many("template"))),
        frozenset(sheets.intersection(request.many("sheet"))),
    )
    return one_by_one | known.of_parts([part for part in request.many("part") if part in known.parts])


def _open_now(request: PageRequest, store: Store, open_instruments: OpenInstruments, held: OpenInstrument) -> list[str]:
    """The operations that are open on this instrument now."""
    bench = bench_of_store(store, request.now, worked_out(open_instruments), [held.seen.name])
    return [each.operation.name for one in open_now(bench.instruments, bench.shop) for each in one.open]
