"""The revisions of an instrument, and any two held against each other."""

from starlette.responses import Response

from gramil.bench.asking import Asked
from gramil.bench.instrument_page import instrument_id
from gramil.bench.moved import moved_between
from gramil.bench.plan_view import plan_of
from gramil.bench.shelf import Shelf, named
from gramil.bench.units import shower_for
from gramil.shop.instruments import revisions
from gramil.shop.operations_done import operations_done


def revisions_page(asked: Asked, shelf: Shelf) -> Response:
    """Every revision: when, who, why; two of them to be compared."""
    del shelf
    with asked.keeping.opened() as store:
        seen = named(store, instrument_id(asked))
        found = revisions(store, seen.id)
    return asked.page("revisions.html", title=f"{seen.name}, revisions", seen=seen, revisions=found[::-1])


def compare_page(asked: Asked, shelf: Shelf) -> Response:
    """What moved from one revision to another, the old in grey under the new."""
    number = instrument_id(asked)
    with asked.keeping.opened() as store:
        old, new = (shelf.held(store, number, _number(asked.one(key, "1"))) for key in ("old", "new"))
        done = tuple(each.operation for each in operations_done(store, number))
    shower = shower_for(asked.session, new.figures)
    return asked.page(
        "compare.html",
        title=f"{new.seen.name}, revisions {old.revision.number} and {new.revision.number}",
        old=old,
        new=new,
        moved=moved_between(old.figures, new.figures, shower, done),
        plan=plan_of(new.figures, old.figures, shower, closer=False),
        unit=shower.first,
    )


def _number(text: str) -> int:
    return int(text) if text.isdigit() and len(text) < 8 else 1
