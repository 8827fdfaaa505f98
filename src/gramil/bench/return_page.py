"""An earlier revision returned to: what it was kept for, and then, when asked to, it is the next one."""

from dataclasses import replace

from starlette.responses import Response

from gramil.acts.descriptions import return_to
from gramil.bench.ages import clock
from gramil.bench.asking import Asked, Missing, go, whole_number
from gramil.bench.correcting import Wrong, asked_whether
from gramil.bench.instrument_page import instrument_id
from gramil.bench.shelf import Shelf, named
from gramil.shop.instruments import Revision, revisions
from gramil.shop.opening import Store


def return_page(asked: Asked, _: Shelf) -> Response:
    """The revision that is asked for, before it is returned to."""
    number = instrument_id(asked)
    with asked.keeping.opened() as store:
        seen, wanted = named(store, number), _wanted(asked, store)
    said = f"{wanted.why or 'kept'}, {wanted.who + ', ' if wanted.who else ''}{clock(wanted.at, asked.now)}"
    wrong = Wrong(
        f"Return {seen.name} to revision {wanted.number}?",
        said,
        (),
        (("version", str(seen.version)),),
        f"/instrument/{number}/return/{wanted.number}",
        f"/instrument/{number}/revisions",
        f"Return to revision {wanted.number}",
        "Its description is kept as the next revision. Those between stay in the list.",
    )
    return asked_whether(asked, wrong)


def _wanted(asked: Asked, store: Store) -> Revision:
    number = whole_number(asked.words["revision"])
    found = next((each for each in revisions(store, instrument_id(asked)) if each.number == number), None)
    if found is None:
        raise Missing("revision of that number")
    return found


def return_to_it(asked: Asked, _: Shelf) -> Response:
    """The revision returned to; refused where somebody kept another since the question stood there."""
    number = instrument_id(asked)
    with asked.keeping.opened() as store:
        seen = replace(named(store, number), version=asked.number("version"))
        return_to(store, seen, _wanted(asked, store).number, asked.now, asked.session.who)
    return go(f"/instrument/{number}?kept=1")
