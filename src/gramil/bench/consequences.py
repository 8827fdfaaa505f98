"""What a change of the shop means for the open instruments: figures that move, verdicts that come and go, sheets."""

from collections.abc import Iterator, Mapping

from gramil.bench.moved import strip_between
from gramil.bench.shelf import Held, Shelf
from gramil.faults import MakersFault
from gramil.shop.instruments import instruments
from gramil.shop.opening import Store
from gramil.shop.operations_done import operations_done
from gramil.shop.sheets_given import stale_sheets


def held_open(store: Store, shelf: Shelf) -> Mapping[int, Held]:
    """The open instruments as they stand, by number; one that cannot be read is left out."""
    found = {}
    for each in instruments(store, "open"):
        try:
            found[each.id] = shelf.held(store, each.id)
        except MakersFault:
            continue
    return found


def consequences(store: Store, shelf: Shelf, before: Mapping[int, Held]) -> tuple[str, ...]:
    """What became of the instruments since they were held: a sentence for each that anything moved on."""
    return (*_instruments(store, shelf, before), *_sheets(store, before))


def _instruments(store: Store, shelf: Shelf, before: Mapping[int, Held]) -> Iterator[str]:
    for number, old in before.items():
        try:
            new = shelf.held(store, number)
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


def _sheets(store: Store, before: Mapping[int, Held]) -> Iterator[str]:
    for each in stale_sheets(store):
        owner = before.get(each.sheet.instrument)
        whose = f"{owner.seen.name}, " if owner else ""
        yield f"{whose}sheet {each.sheet.title.replace('_', ' ')}: stale, {each.tool.name} has changed. Print it again."
