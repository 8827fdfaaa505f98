"""An instrument is marked as open, waiting or done."""

from dataclasses import replace

from starlette.responses import Response

from gramil.acts.standing import mark
from gramil.bench.open_instruments import OpenInstruments, named
from gramil.bench.page_request import PageRequest, go
from gramil.bench.pages.instrument_page import instrument_id


def mark_it(request: PageRequest, _: OpenInstruments) -> Response:
    """Mark the instrument, if it is still as it was seen; only open ones ask for work and wood."""
    with request.record.opened() as store:
        seen = named(store, instrument_id(request))
        mark(
            store, replace(seen, version=request.number("version", seen.version)), request.one("standing"), request.hand
        )
    return go(f"/instrument/{seen.id}")
