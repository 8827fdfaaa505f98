"""A maker's own list of operations, of the shop or of one instrument: read, written anew, removed after a question."""

from starlette.responses import Response

from gramil.acts.own_operations import keep_list, take_list_away
from gramil.bench.asking import Asked, go
from gramil.bench.correcting import Wrong, asked_whether
from gramil.bench.shelf import Shelf, named
from gramil.faults import Fault, MakersFault
from gramil.shop.instruments import Instrument
from gramil.shop.opening import Store
from gramil.shop.own_operations import OwnOperations, own_operations
from gramil.shop.trouble import Conflict

BEGIN = """\
# Operations of your own, and changes of usual ones. Minutes of hands; the rest stays as it is.

[operation.top_jointed]
hands = 50
"""


def operations_page(asked: Asked, _: Shelf) -> Response:
    """The list as it is kept, or how one begins."""
    with asked.keeping.opened() as store:
        owner = _owner(asked, store)
        kept = own_operations(store, owner)
    return _page(asked, owner, kept, kept.text if kept else BEGIN)


def _owner(asked: Asked, store: Store) -> Instrument | None:
    """The instrument that is asked for; None for the shop's own list."""
    return named(store, asked.number("for")) if asked.one("for") else None


def _page(
    asked: Asked,
    owner: Instrument | None,
    kept: OwnOperations | None,
    text: str,
    faults: tuple[Fault, ...] = (),
) -> Response:
    whose = f"{owner.name}'s" if owner else "The shop's"
    return asked.page(
        "operations.html",
        422 if faults else 200,
        title=f"{whose} operations",
        owner=owner,
        kept=kept,
        text=text,
        faults=faults,
        version=asked.one("version", _seen(kept)),
    )


def _seen(kept: OwnOperations | None) -> str:
    return f"{kept.id}.{kept.version}" if kept else ""


def keep_operations(asked: Asked, shelf: Shelf) -> Response:
    """The list as written; one that does not hold together is told with its lines, and nothing is saved."""
    with asked.keeping.opened() as store:
        owner = _owner(asked, store)
        kept, text = own_operations(store, owner), asked.one("text").replace("\r\n", "\n") + "\n"
        try:
            seen = kept if asked.one("version") == _seen(kept) else None
            keep_list(store, text, asked.now, owner=owner, seen=seen, file="the list", who=asked.session.who)
        except Conflict as conflict:
            return _page(asked, owner, kept, text, (*conflict.faults, Fault(where="theirs", what=conflict.theirs)))
        except MakersFault as fault:
            return _page(asked, owner, kept, text, fault.faults)
    return go(f"/operations?for={owner.id}&kept=1" if owner else "/operations?kept=1")


def remove_operations_page(asked: Asked, _: Shelf) -> Response:
    """Whether a list is to go, before it does."""
    with asked.keeping.opened() as store:
        owner = _owner(asked, store)
        kept = own_operations(store, owner)
    wrong = Wrong(
        f"Remove {owner.name}'s own operations?" if owner else "Remove the shop's own operations?",
        f"{len(kept.text.splitlines())} lines" if kept else "there is none",
        (),
        (("for", asked.one("for")), ("version", _seen(kept))),
        "/operations/remove",
        f"/operations?for={asked.one('for')}",
        "Remove the list",
        "The usual operations hold from then on. What is done stays done.",
    )
    return asked_whether(asked, wrong)


def remove_operations(asked: Asked, _: Shelf) -> Response:
    """A list removed, if it still is as it was seen; sent twice, it is removed once."""
    with asked.keeping.opened() as store:
        owner = _owner(asked, store)
        kept = own_operations(store, owner)
        if kept is not None:
            if asked.one("version") != _seen(kept):
                raise MakersFault.of("somebody else changed this list", remedy="look at it again")
            take_list_away(store, kept, asked.now, asked.session.who)
    return go(f"/operations?for={owner.id}" if owner else "/operations")
