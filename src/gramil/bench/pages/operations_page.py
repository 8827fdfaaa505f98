"""A maker's own list of operations, of the shop or of one instrument: read, written anew, removed after a question."""

from starlette.responses import Response

from gramil.acts.own_operations import keep_list, take_list_away
from gramil.bench.field_words import placed
from gramil.bench.open_instruments import OpenInstruments, named
from gramil.bench.page_request import PageRequest, go
from gramil.bench.pages.correcting import Correction, question_page
from gramil.faults import Fault, MakersFault
from gramil.shop.instruments import Instrument
from gramil.shop.own_operations import OwnOperations, own_operations
from gramil.store.failures import Conflict
from gramil.store.opening import Store

BEGIN = """\
# Operations of your own, and changes of usual ones. Minutes of hands; the rest stays as it is.

[operation.top_jointed]
hands = 50
"""


def operations_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The list as it is kept, or an example to begin one."""
    with request.record.opened() as store:
        owner = _owner(request, store)
        kept = own_operations(store, owner)
    return _page(request, owner, kept, kept.text if kept else BEGIN)


def _owner(request: PageRequest, store: Store) -> Instrument | None:
    """The instrument that is asked for; None for the shop's own list."""
    return named(store, request.number("for")) if request.one("for") else None


def _page(
    request: PageRequest,
    owner: Instrument | None,
    kept: OwnOperations | None,
    text: str,
    faults: tuple[Fault, ...] = (),
) -> Response:
    whose = f"{owner.name}'s" if owner else "The shop's"
    return request.page(
        "operations.html",
        422 if faults else 200,
        title=f"{whose} operations",
        owner=owner,
        kept=kept,
        text=text,
        faults=faults,
        version=request.one("version", _seen(kept)),
    )


def _seen(kept: OwnOperations | None) -> str:
    return f"{kept.id}.{kept.version}" if kept else ""


def keep_operations(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Save the list; one with faults is shown again with the lines at fault, and nothing is saved."""
    with request.record.opened() as store:
        owner = _owner(request, store)
        kept, text = own_operations(store, owner), request.one("text").replace("\r\n", "\n") + "\n"
        try:
            seen = kept if request.one("version") == _seen(kept) else None
            keep_list(store, text, request.hand, owner=owner, seen=seen, file="the list")
        except Conflict as conflict:
            return _page(request, owner, kept, text, (*conflict.faults, Fault(where="theirs", what=conflict.theirs)))
        except MakersFault as fault:
            at_text = tuple(placed(each, "text") for each in fault.faults)
            return _page(request, owner, kept, text, at_text)
    return go(f"/operations?for={owner.id}&kept=1" if owner else "/operations?kept=1")


def remove_operations_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The question before a list is removed."""
    with request.record.opened() as store:
        owner = _owner(request, store)
        kept = own_operations(store, owner)
    wrong = Correction(
        f"Remove {owner.name}'s own operations?" if owner else "Remove the shop's own operations?",
        f"{len(kept.text.splitlines())} lines" if kept else "there is none",
        (),
        (("for", request.one("for")), ("version", _seen(kept))),
        "/operations/remove",
        f"/operations?for={request.one('for')}",
        "Remove the list",
        "The usual operations hold from then on. What is done stays done.",
    )
    return question_page(request, wrong)


def remove_operations(request: PageRequest, _: OpenInstruments) -> Response:
    """Remove a list, if it is still as it was seen; sent twice, it is removed once."""
    with request.record.opened() as store:
        owner = _owner(request, store)
        kept = own_operations(store, owner)
        if kept is not None:
            if request.one("version") != _seen(kept):
                raise MakersFault.of("somebody else changed this list", remedy="look at it again")
            take_list_away(store, kept, request.hand)
    return go(f"/operations?for={owner.id}" if owner else "/operations")
