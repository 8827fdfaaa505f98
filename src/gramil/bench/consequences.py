"""What a change of the shop means for the open instruments: figures that move, verdicts that come and go, sheets."""

from collections.abc import Iterator, Mapping

from gramil.bench.moved import strip_between
from gramil.bench.open_instruments import OpenInstrument, OpenInstruments
from gramil.bench.stale_here import stale_on
from gramil.faults import MakersFault
from gramil.shop.instruments import instruments
from gramil.shop.operations_done import operations_done
from gramil.store.opening import Store


def held_open(store: Store, open_instruments: OpenInstruments) -> Mapping[int, OpenInstrument]:
    """The open instruments as they stand, by number; one that cannot be read is left out."""
    found = {}
    for each in instruments(store, "open"):
        try:
            found[each.id] = open_instruments.held(store, each.id)
        except MakersFault:
            continue
    return found


def consequences(
    store: Store, open_instruments: OpenInstruments, before: Mapping[int, OpenInstrument]
) -> tuple[str, ...]:
    """What has happened to the instruments since `held_open`: a sentence for each on which anything moved."""
    stale = stale_lines(store, open_instruments, held_open(store, open_instruments))
    return (*_instruments(store, open_instruments, before), *(f"Stale: {line}. Print it again." for line in stale))


def _instruments(
    store: Store, open_instruments: OpenInstruments, before: Mapping[int, OpenInstrument]
) -> Iterator[str]:
    for number, old in before.items():
        try:
            new = open_instruments.held(store, number)
        except MakersFault as fault:
            yield f"{old.seen.name} cannot be worked out any more: {fault.faults[0]}"
            continue
        made = dict.fromkeys((each.operation for each in operations_done(store, number)), old.figures)
        strip = strip_between(old.figures, new.figures, made)
        if strip.figures or strip.came or strip.went:
            lost = [f"{word}: {line}" for word, line in strip.spoilt]
            came = [f"{each.severity} comes: {each.name}" for each in strip.came]
            went = [f"{each.severity} goes: {each.name}" for each in strip.went]
            yield f"{old.seen.name}: {'; '.join([strip.words, *lost, *came, *went])}."


def stale_lines(
    store: Store, open_instruments: OpenInstruments, open_now: Mapping[int, OpenInstrument]
) -> Iterator[str]:
    """The instruments' sheets that are no longer true, and what has changed on each."""
    for held in open_now.values():
        for each in stale_on(store, open_instruments, held):
            yield f"{held.seen.name}, sheet {each.given.title.replace('_', ' ')}: {each.why}"
