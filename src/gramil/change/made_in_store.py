"""Finished work of an instrument in the store, judged against the revision that was the latest when each was done."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from datetime import datetime

from gramil.change.in_store import air_in_store, figures_in_store, shop_in_store
from gramil.change.made import Judged, judge
from gramil.change.made_rows import operations, pieces
from gramil.description.reading import parse_description
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.prints.whole import figures_of
from gramil.shop.instruments import Instrument, Revision, revision, revisions
from gramil.shop.operations_done import DoneOperation, operations_done, pins_for
from gramil.shop.own_operations import work_of
from gramil.store.opening import Store, reading


def standing_in_store(store: Store, owner: Instrument) -> tuple[Judged, ...]:
    """The verdict on everything made, by the latest revision; raises MakersFault if that has faults."""
    with reading(store):
        if _as_drawn(store, owner.id):
            return ()
        wanted = figures_in_store(store, owner)
        shop, air, pins = shop_in_store(store, owner.id), air_in_store(store), pins_for(store, owner.id)

        def figures_at(each: Revision) -> Figures:
            return figures_of(parse_description(each.text, owner.name), shop, pins, air)

        return judge(made_by(store, owner.id, figures_at, wanted), wanted, work_of(store, owner.id))


def _as_drawn(store: Store, instrument: int) -> bool:
    """Whether everything was done by the latest revision and nothing was measured, so that all of it must be right."""
    latest = datetime.fromisoformat(revision(store, instrument).at)
    early = any(datetime.fromisoformat(each.at) < latest for each in operations_done(store, instrument))
    return not pins_for(store, instrument) and not (early and len(revisions(store, instrument)) > 1)


def made_by(
    store: Store, instrument: int, figures_at: Callable[[Revision], Figures], latest: Figures
) -> Mapping[str, Figures]:
    """For each operation done, in turn, the figures by which it was done; `latest` are those of the latest revision.

    If a revision cannot be read, the one before it is used.
    """
    kept = revisions(store, instrument)
    known = {kept[-1].number: latest} if kept else {}
    found: dict[str, Figures] = {}
    for each in operations_done(store, instrument):
        found[each.operation] = latest
        for one in _at(kept, datetime.fromisoformat(each.at)):
            figures = known.get(one.number) or _read(one, figures_at)
            if figures is not None:
                found[each.operation] = known[one.number] = figures
                break
    return found


def _at(kept: Sequence[Revision], moment: datetime) -> Iterator[Revision]:
    """The latest revision at a moment and those before it, newest first; for work older than all of them, the first."""
    before = [each for each in kept if datetime.fromisoformat(each.at) <= moment]
    yield from reversed(before or kept[:1])


def _read(each: Revision, figures_at: Callable[[Revision], Figures]) -> Figures | None:
    try:
        return figures_at(each)
    except MakersFault:
        return None


def work_on(store: Store, instrument: int, piece: str) -> tuple[DoneOperation, ...]:
    """The work done on a piece of an instrument, or that joins it: all that must be done again if it is begun anew.

    Raises MakersFault if the piece does not exist.
    """
    if piece not in pieces():
        remedy = f"these are: {', '.join(sorted(pieces()))}"
        raise MakersFault.of(f'there is no piece called "{piece}"', remedy=remedy)
    on = {name for name, row in operations().items() if piece in (row.piece, *row.joins)}
    return tuple(each for each in operations_done(store, instrument) if each.operation in on)
