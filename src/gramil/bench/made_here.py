"""What is made of an instrument, for the bench: the figures by which each operation was done, and whether it is still
right.
"""

from collections.abc import Mapping

from gramil.bench.open_instruments import OpenInstrument, OpenInstruments
from gramil.change.made import Judged, judge
from gramil.change.made_in_store import made_by
from gramil.graph import Figures
from gramil.now.states import Figuring, Judging
from gramil.store.opening import Store


def made_on(store: Store, open_instruments: OpenInstruments, held: OpenInstrument) -> Mapping[str, Figures]:
    """For each operation done, the figures of the revision that it was done by."""
    number = held.seen.id
    latest = held if held.revision.number == held.latest else open_instruments.held(store, number)
    return made_by(
        store, number, lambda each: open_instruments.held(store, number, each.number).figures, latest.figures
    )


def judged_on(store: Store, open_instruments: OpenInstruments, held: OpenInstrument) -> tuple[Judged, ...]:
    """How the finished work compares with the given revision; empty if all was made by that revision, and nothing
    measured.
    """
    made = made_on(store, open_instruments, held)
    if not held.figures.pins and all(figures is held.figures for figures in made.values()):
        return ()
    return judge(made, held.figures)


def judging(open_instruments: OpenInstruments) -> Judging:
    """A function that judges an instrument of the store by the figures that the bench holds."""
    return lambda store, owner: judged_on(store, open_instruments, open_instruments.held(store, owner.id))


def figuring(open_instruments: OpenInstruments) -> Figuring:
    """A function that gives the figures of an instrument of the store, as the bench holds them."""
    return lambda store, owner: open_instruments.held(store, owner.id).figures
