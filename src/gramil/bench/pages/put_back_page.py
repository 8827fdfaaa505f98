"""A copy of the record put back: first the copies that lie beside it and what each would undo, then, on confirmation,
it is done.
"""

from starlette.responses import Response

from gramil.bench.ages import clock
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest, go
from gramil.doorway.copies import copies_beside, gone_with
from gramil.faults import MakersFault
from gramil.store.writing import changes

SHOWN = 20
"""How many of the changes that would be lost are listed."""


def copies_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The copies beside the record, each a link; with `copy`, what would be lost by putting it back, before that is
    done.
    """
    path = request.record.path
    found = copies_beside(path)
    if not request.one("copy"):
        rows = [(each, clock(each.last.at, request.now) if each.last else "") for each in found]
        return request.page("copies.html", title="Copies", rows=rows, folder=path.parent.absolute())
    chosen = _chosen(request)
    with request.record.opened() as store:
        gone, last = gone_with(store, path.with_name(chosen)), changes(store, 1)
    listed = [(each, clock(each.at, request.now)) for each in gone[:SHOWN]]
    seen = last[0].id if last else 0
    return request.page("put_back.html", title="Put a copy back", copy=chosen, rows=listed, count=len(gone), seen=seen)


def put_back(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Put the copy in the record's place, if nothing was noted since; the old record is kept beside it."""
    path, chosen = request.record.path, _chosen(request)
    kept = request.record.put_back(path.with_name(chosen), request.now, request.number("seen"))
    open_instruments.forget()
    beside = (
        f"What was there before is kept beside it as {kept.name}, and can be put back in the same way." if kept else ""
    )
    request.session.told = (f"The record is as in {chosen}.", beside)
    return go("/record?told=1")


def _chosen(request: PageRequest) -> str:
    """The copy that was asked for, one of those beside the record and sound enough to be opened."""
    for each in copies_beside(request.record.path):
        if each.name == request.one("copy"):
            if each.fault:
                raise MakersFault.of(f"{each.name} cannot be put back", each.fault)
            return each.name
    raise MakersFault.of("there is no such copy beside the record", remedy="look at the copies again")
