"""What is made of an instrument on the bench: the figures that each work was done by, and how it stands now."""

from collections.abc import Mapping

from gramil.bench.open_instruments import OpenInstrument, OpenInstruments
from gramil.change.made import Judged, judge
from gramil.change.made_in_store import made_by
from gramil.graph import Figures
from gramil.now.states import Judging
from gramil.store.opening import Store


def made_on(store: Store, open_instruments: OpenInstruments, held: OpenInstrument) -> Mapping[str, Figures]:
    """For each operation done, the figures of the revision that it was done by."""
    number = held.seen.id
    latest = held if held.revision.number == held.latest else open_instruments.held(store, number)
    return made_by(
        store, number, lambda each: open_instruments.held(store, number, each.number).figures, latest.figures
    )


def judged_on(store: Store, open_instruments: OpenInstruments, held: OpenInstrument) -> tuple[Judged, ...]:
    """How what is made stands by the revision that is held; nothing where it was all made by that, and not measured."""
    made = made_on(store, open_instruments, held)
    if not held.figures.pins and all(figures is held.figures for figures in made.values()):
        return ()
    return judge(made, held.figures)


def judging(open_instruments: OpenInstruments) -> Judging:
    """What judges an instrument of the store by the figures that the bench keeps."""
    return lambda store, owner: judged_on(store, open_instruments, open_instruments.held(store, owner.id))
