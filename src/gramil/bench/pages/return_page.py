"""Return to an earlier revision: first what it was kept for is shown, then, on confirmation, it becomes the next
one.
"""

from dataclasses import replace

from starlette.responses import Response

from gramil.acts.descriptions import return_to
from gramil.bench.ages import clock
from gramil.bench.open_instruments import OpenInstruments, named
from gramil.bench.page_request import Missing, PageRequest, go, whole_number
from gramil.bench.pages.correcting import Correction, question_page
from gramil.bench.pages.instrument_page import instrument_id
from gramil.shop.instruments import Revision, revisions
from gramil.store.opening import Store
from gramil.store.undo import last_change


def return_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The revision asked for, before returning to it."""
    number = instrument_id(request)
    with request.record.opened() as store:
        seen, wanted = named(store, number), _wanted(request, store)
    said = f"{wanted.why or 'kept'}, {wanted.who + ', ' if wanted.who else ''}{clock(wanted.at, request.now)}"
    wrong = Correction(
        f"Return {seen.name} to revision {wanted.number}?",
        said,
        (),
        (("version", str(seen.version)),),
        f"/instrument/{number}/return/{wanted.number}",
        f"/instrument/{number}/revisions",
        f"Return to revision {wanted.number}",
        "Its description is kept as the next revision. Those between stay in the list.",
    )
    return question_page(request, wrong)


def _wanted(request: PageRequest, store: Store) -> Revision:
    number = whole_number(request.words["revision"])
    found = next((each for each in revisions(store, instrument_id(request)) if each.number == number), None)
    if found is None:
        raise Missing("revision of that number")
    return found


def return_to_it(request: PageRequest, _: OpenInstruments) -> Response:
    """Return to the revision; refused if somebody kept another since the question was shown."""
    number = instrument_id(request)
    with request.record.opened() as store:
        seen = replace(named(store, number), version=request.number("version"))
        return_to(store, seen, _wanted(request, store).number, request.hand)
        last = last_change(store)
    return go(f"/instrument/{number}?kept={last.id if last else 0}")
