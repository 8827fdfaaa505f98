"""A lost piece begun anew: first what would be open again is shown, then, on confirmation, it is done."""

from urllib.parse import quote

from starlette.responses import Response

from gramil.acts import work
from gramil.bench.open_instruments import OpenInstruments, named
from gramil.bench.page_request import Missing, PageRequest, go
from gramil.bench.pages.correcting import Correction, question_page
from gramil.bench.pages.instrument_page import instrument_id
from gramil.change.made_in_store import work_on
from gramil.change.made_rows import operations, pieces
from gramil.faults import MakersFault
from gramil.shop.operations_done import DoneOperation
from gramil.store.opening import Store


def anew_page(request: PageRequest, _: OpenInstruments) -> Response:
    """What is done on the piece, before it is taken back."""
    number, piece = instrument_id(request), request.words["piece"]
    with request.record.opened() as store:
        seen, works = named(store, number), _works(store, number, piece)
    what = pieces()[piece].what
    told = ", ".join(operations()[each.operation].what for each in works)
    wrong = Correction(
        f"Begin {what} of {seen.name} anew",
        told or f"nothing is noted as done on {what}",
        (),
        (("seen", _seen(works)),),
        f"/instrument/{number}/anew/{quote(piece)}",
        f"/instrument/{number}",
        f"Begin {what} anew",
        "This work is open again, what was measured of it no longer counts, and its wood is asked for again. "
        "The old piece is written off: to keep it for another use, write it down in stock, with the sizes it has left.",
        tuple(each.at for each in works),
    )
    return question_page(request, wrong)


def begin_anew(request: PageRequest, _: OpenInstruments) -> Response:
    """Begin the piece anew; sent twice, it is done once."""
    number, piece = instrument_id(request), request.words["piece"]
    with request.record.opened() as store:
        works = _works(store, number, piece)
        if works:
            if _seen(works) != request.one("seen"):
                raise MakersFault.of("somebody else noted something meanwhile", remedy="look at the instrument again")
            work.begin_anew(store, named(store, number), piece, request.hand, seen=works)
    return go(f"/instrument/{number}")


def _works(store: Store, number: int, piece: str) -> tuple[DoneOperation, ...]:
    if piece not in pieces():
        raise Missing(f"piece {piece}")
    return work_on(store, number, piece)


def _seen(works: tuple[DoneOperation, ...]) -> str:
    return " ".join(f"{each.id}:{each.version}" for each in works)
