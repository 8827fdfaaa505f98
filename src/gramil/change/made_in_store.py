"""What is made of an instrument of the store, each work judged by the revision that was the latest when it was done."""

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
    """How everything made stands by the latest revision; raises MakersFault for what is wrong in that."""
    with reading(store):
        if _as_drawn(store, owner.id):
            return ()
        wanted = figures_in_store(store, owner)
        shop, air, pins = shop_in_store(store, owner.id), air_in_store(store), pins_for(store, owner.id)

        def figures_at(each: Revision) -> Figures:
            return figures_of(parse_description(each.text, owner.name), shop, pins, air)

        return judge(made_by(store, owner.id, figures_at, wanted), wanted, work_of(store, owner.id))


def _as_drawn(store: Store, instrument: int) -> bool:
    """Whether everything was done by the latest revision, and nothing was measured: then all of it is right."""
    latest = datetime.fromisoformat(revision(store, instrument).at)
    early = any(datetime.fromisoformat(each.at) < latest for each in operations_done(store, instrument))
    return not pins_for(store, instrument) and not (early and len(revisions(store, instrument)) > 1)


def made_by(
    store: Store, instrument: int, figures_at: Callable[[Revision], Figures], latest: Figures
) -> Mapping[str, Figures]:
    """For each operation done, in turn, the figures that it was done by; `latest` are those of the latest revision.

    A revision that cannot be read is passed over for the one before it.
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
    """The latest revision at a moment and those before it, newest first; of what was done before all, the first."""
    before = [each for each in kept if datetime.fromisoformat(each.at) <= moment]
    yield from reversed(before or kept[:1])


def _read(each: Revision, figures_at: Callable[[Revision], Figures]) -> Figures | None:
    try:
        return figures_at(each)
    except MakersFault:
        return None


def work_on(store: Store, instrument: int, piece: str) -> tuple[DoneOperation, ...]:
    """What is done on a piece of an instrument, or joins it: all that is to be done again when it is begun anew.

    Raises MakersFault for a piece that there is not.
    """
    if piece not in pieces():
        remedy = f"these are: {', '.join(sorted(pieces()))}"
        raise MakersFault.of(f'there is no piece called "{piece}"', remedy=remedy)
    on = {name for name, row in operations().items() if piece in (row.piece, *row.joins)}
    return tuple(each for each in operations_done(store, instrument) if each.operation in on)
