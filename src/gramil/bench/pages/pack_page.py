"""The whole pack made while one looks on: how far it is, a button to stop it, and then the file."""

from collections.abc import Mapping
from urllib.parse import urlencode

from starlette.responses import Response

from gramil.bench.long_work import LongWork
from gramil.bench.open_instruments import OpenInstrument, OpenInstruments, named
from gramil.bench.page_request import Missing, PageRequest, go
from gramil.bench.pages.files_page import file_answer, plain, zipped
from gramil.bench.pages.instrument_page import instrument_id
from gramil.bench.pages.print_page import paper_wanted, printer_of
from gramil.bench.pages.sheet_page import work_for
from gramil.bench.units import formatter_for
from gramil.pack import Maker, pack_makers, whole_pack


def pack_page(request: PageRequest, _: OpenInstruments) -> Response:
    """How far the pack is (`making`), or the button that begins it."""
    with request.record.opened() as store:
        seen = named(store, instrument_id(request))
    work = _work(request) if request.one("making") else None
    return request.page("pack.html", title=f"{seen.name}, the whole pack", seen=seen, work=work)


def begin_pack(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Begin to make the pack, for the paper and the printer that the form names."""
    makers = _makers(request, _held(request, open_instruments))
    work = request.works.begin(len(makers), whole_pack(makers), zipped)
    return go(f"/instrument/{instrument_id(request)}/pack?" + urlencode({"making": work.key}))


def stop_pack(request: PageRequest, _: OpenInstruments) -> Response:
    """Stop it; what is half made is thrown away."""
    _work(request).stop.set()
    return go(f"/instrument/{instrument_id(request)}/pack?" + urlencode({"making": request.one("making")}))


def pack_file(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Every file of the pack in one archive: that which was made (`making`), or one made at once."""
    held = _held(request, open_instruments)
    made = _work(request).made if request.one("making") else None
    content = made if made is not None else zipped(dict(whole_pack(_makers(request, held))))
    return file_answer(f"{plain(held.seen.name)}-pack.zip", content, "application/zip")


def _work(request: PageRequest) -> LongWork:
    found = request.works.found(request.one("making"))
    if found is None:
        raise Missing("pack of that name, or not any more,")
    return found


def _held(request: PageRequest, open_instruments: OpenInstruments) -> OpenInstrument:
    with request.record.opened() as store:
        return open_instruments.held(store, instrument_id(request))


def _makers(request: PageRequest, held: OpenInstrument) -> Mapping[str, Maker]:
    with request.record.opened() as store:
        work = work_for(store, held)
    formatter = formatter_for(request.session, held.figures)
    paper, scale = paper_wanted(request, held), printer_of(request, formatter.first)
    return pack_makers(held.figures, formatter, work, paper, scale)
