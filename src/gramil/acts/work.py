"""Work done and things measured: noted, taken back, or begun anew, each as one act with its checks."""

from collections.abc import Callable, Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from difflib import get_close_matches
from typing import TypeVar

from gramil import names as n
from gramil.acts.wood import keep_wood
from gramil.air.pieces import PIECE
from gramil.change.as_made import refuse_impossible
from gramil.change.in_store import figures_in_store, work_in_store
from gramil.change.made_in_store import work_on
from gramil.change.made_rows import operations, pieces
from gramil.faults import MakersFault
from gramil.formatter import shown
from gramil.graph import Figures, Pin
from gramil.now.needs import needs_met, parts_used_by, used_up_by
from gramil.prints.whole import whole_graph
from gramil.shop.corrections import begin_anew as take_back_all
from gramil.shop.corrections import not_done_after_all as take_back_done
from gramil.shop.instruments import Instrument, save_revision
from gramil.shop.made_file import NO_OPERATION
from gramil.shop.operations import Work, after_it
from gramil.shop.operations_done import (
    NOTHING,
    DoneOperation,
    Measurement,
    Noted,
    add_measurements,
    mark_done,
    measurements,
    operations_done,
)
from gramil.shop.stock import (
    Blank,
    Promise,
    blanks,
    free_counts,
    not_used_after_all,
    parts,
    promise_blank,
    promises,
    use_up,
)
from gramil.shop.wire_pressed import FRETTED, draw, press, taken
from gramil.store.items import Item, items, remove_item, shop_unit
from gramil.store.opening import Store
from gramil.store.writing import Hand, writing

Did = TypeVar("Did")
_SEEN = "look at it again, and see what stands there now"


@dataclass(frozen=True)
class UsedUp:
    """Wood that the operation used up: its name, and the need that it was promised for."""

    name: str
    need: str


def note_done(
    store: Store,
    owner: Instrument,
    operation: str,
    hand: Hand,
    noted: Noted = NOTHING,
    figures: Figures | None = None,
) -> tuple[UsedUp, ...]:
    """Note an operation as done and use up what was promised for it; gives what was used up.

    `figures` are the instrument's as made, if at hand. What was measured at no operation ("measured") is noted by
    itself. Raises MakersFault if the operation does not exist or is done already, or if the instrument cannot be worked
    out with the readings.
    """
    with writing(store, f"done: {operation}, {owner.name}", hand):
        if operation == NO_OPERATION:
            measure(store, owner, noted.measured, hand, figures=figures)
            return ()
        done = {each.operation for each in operations_done(store, owner.id)}
        refuse_work(operation, work_in_store(store, owner), done)
        _refuse_readings(store, owner, noted.measured, figures)
        mark_done(store, owner.id, operation, hand, noted)
        used = (*_use_up(store, owner.id, operation, hand), *_use_kept(store, owner, operation, hand))
        return (*used, *_press(store, owner, operation, hand, figures))


def note_and_settle(
    store: Store, owner: Instrument, operation: str, hand: Hand, noted: Noted, description: str
) -> tuple[UsedUp, ...]:
    """The same, and the description as what was measured settles it is kept as the next revision: one act.

    Raises what `note_done` does, and Conflict if somebody kept another description since the instrument was seen.
    """
    with writing(store, f"done: {operation}, {owner.name}", hand):
        used = note_done(store, owner, operation, hand, noted)
        save_revision(store, owner, description, replace(hand, why=f"as made: {operation}"))
        return used


def together(store: Store, what: str, hand: Hand, acts: Iterable[Callable[[], Did]]) -> tuple[Did, ...]:
    """Several acts as one change, told by `what`, all of them or none; gives what each gave. Raises what one raises."""
    with writing(store, what, hand):
        return tuple(act() for act in acts)


def measure(
    store: Store,
    owner: Instrument,
    measured: Sequence[Measurement],
    hand: Hand,
    *,
    figures: Figures | None = None,
) -> tuple[Measurement, ...]:
    """Note measurements apart from any operation; gives what is new: the same reading sent twice is noted once.

    Raises MakersFault if nothing was measured, or if the instrument cannot be worked out with the readings.
    """
    if not measured:
        raise MakersFault.of("nothing was measured", remedy="write what the calipers say")
    _refuse_readings(store, owner, measured, figures)
    # a phone that lost the answer sends the same readings again: they are not a second measurement
    last = {each.address: each for each in measurements(store, owner.id)}
    fresh = tuple(each for each in measured if last.get(each.address) != each)
    if fresh:
        add_measurements(store, owner.id, fresh, hand)
    return fresh


def refuse_work(operation: str, whole: Work, done: Collection[str]) -> None:
    """Raises MakersFault if the work does not exist or is done already; `whole` is what the instrument needs.

    A set-up that belongs to no operation is work of its own.
    """
    if operation in done:
        remedy = 'what is measured now is noted by itself, as "measured"'
        raise MakersFault.of(f"{operation} is done already", remedy=remedy)
    known = operation in whole.operations or operation in whole.left_out or operation == NO_OPERATION
    if known or _by_itself(operation, whole):
        return
    near = get_close_matches(operation, whole.operations, 1)
    remedy = f"nearest: {near[0]}" if near else "see the list of all its work"
    raise MakersFault.of(f"there is no operation {operation}", remedy=remedy)


def _by_itself(name: str, whole: Work) -> bool:
    on_graph = f"setup_{name.replace('-', '_')}" in whole_graph().dimensions
    return on_graph and all(each.sheet != name for each in whole.operations.values())


def _refuse_readings(store: Store, owner: Instrument, measured: Sequence[Measurement], figures: Figures | None) -> None:
    if measured:
        known = figures_in_store(store, owner) if figures is None else figures
        refuse_impossible(known, {each.address: Pin(each.value, "") for each in measured})


def _use_up(store: Store, instrument: int, operation: str, hand: Hand) -> tuple[UsedUp, ...]:
    """Whatever was promised for a need that the operation meets is now used up."""
    needs = used_up_by(operation)
    due = [each for each in promises(store, instrument) if each.need in needs and not each.used_at]
    for each in due:
        use_up(store, each, hand)
    return _named(store, due)


def _use_kept(store: Store, owner: Instrument, operation: str, hand: Hand) -> Iterator[UsedUp]:
    """Wood in stock that has the name of a piece kept for this: used up with it, though nobody promised it."""
    named = {each.name: each for each in blanks(store)}
    for piece in pieces_used(store, owner, {operation}):
        if piece.name not in named:
            continue
        blank, promised = named[piece.name], {each.need for each in promises(store, owner.id)}
        for need, count in needs_met(operation, str(piece.figures["part"])):
            taken = min(count, free_counts(store)[blank.id])
            if taken > 0 and need not in promised:
                use_up(store, promise_blank(store, owner.id, need, blank.id, hand, count=taken), hand)
                yield UsedUp(blank.name, need)


def _press(store: Store, owner: Instrument, operation: str, hand: Hand, figures: Figures | None) -> Iterator[UsedUp]:
    """The wire that frets take, as they are cut: taken off what is on hand."""
    if operation != FRETTED:
        return
    known = figures_in_store(store, owner) if figures is None else figures
    wire, length = known[n.wire_name], float(known[n.wire_cut][known[n.slot_first] :].sum())
    if press(store, owner.id, wire, length, hand):
        yield UsedUp(f"{shown(length, 'mm', known[n.instrument_units])} of {wire} wire", "frets")


def hanging(store: Store, owner: Instrument, operation: str) -> tuple[str, ...]:
    """What was done after an operation and waited for it, through any chain: it hangs on it."""
    done = {each.operation for each in operations_done(store, owner.id)}
    return tuple(name for name in after_it(work_in_store(store, owner), operation) if name in done)


def not_done_after_all(store: Store, seen: DoneOperation, hand: Hand) -> tuple[UsedUp, ...]:
    """Mark an operation as not done, and put back what it used up, promised as before; gives that.

    What was measured at it stays. Raises Conflict if its record was changed since it was seen.
    """
    with writing(store, f"not done after all: {seen.operation}, noted {seen.at[:10]}", hand):
        back = used_up_at(store, seen)
        take_back_done(store, seen, hand)
        for each in _used_at(store, seen):
            not_used_after_all(store, each, hand)
        if seen.operation == FRETTED:
            draw(store, seen.instrument, hand)
    return back


def used_up_at(store: Store, done: DoneOperation) -> tuple[UsedUp, ...]:
    """What an operation used up when it was noted: what an older piece of the same kind took is not among it."""
    wire, length = taken(store, done.instrument) if done.operation == FRETTED else ("", 0.0)
    frets = (UsedUp(f"{shown(length, 'mm', shop_unit(store))} of {wire} wire", "frets"),) if wire else ()
    return (*_named(store, _used_at(store, done)), *frets)


def _used_at(store: Store, done: DoneOperation) -> tuple[Promise, ...]:
    needs, own = used_up_by(done.operation), promises(store, done.instrument)
    return tuple(each for each in own if each.need in needs and each.used_at == done.at)


def _named(store: Store, used: Sequence[Promise]) -> tuple[UsedUp, ...]:
    raw, made = {each.id: each.name for each in blanks(store)}, {each.id: each.name for each in parts(store)}
    return tuple(
        UsedUp(raw[each.blank] if each.blank is not None else made[each.part or 0], each.need) for each in used
    )


def begin_anew(
    store: Store,
    owner: Instrument,
    piece: str,
    hand: Hand,
    *,
    seen: Sequence[DoneOperation] | None = None,
    kept: Blank | None = None,
) -> tuple[DoneOperation, ...]:
    """Begin a piece anew: the work on it is taken back, with what was measured. Gives that work.

    `seen` is the work that was shown, if any. The old piece is written off, or `kept` in stock, for anything, with the
    sizes that it has now; its wood, if that is not said, is the wood that it was made of. Raises MakersFault if the
    piece does not exist, if nothing is done on it, or if something else was noted on it meanwhile.
    """
    works = work_on(store, owner.id, piece)
    if not works:
        raise MakersFault.of(f"nothing is noted as done on {pieces()[piece].what}", "there is nothing to take back")
    if seen is not None and tuple(seen) != works:
        raise MakersFault.of("somebody else noted something meanwhile", remedy=_SEEN)
    figures = {fixed.figure for each in works for fixed in operations()[each.operation].fixes}
    what = f"{pieces()[piece].what} of {owner.name}"
    with writing(store, f"begin {what} anew", hand):
        if kept is not None:
            keep_wood(store, kept if kept.wood else replace(kept, wood=wood_made_of(store, owner, piece)), hand)
        for done in works:
            tuple(_use_kept(store, owner, done.operation, hand))
        take_back_all(store, piece, what, works, figures, hand)
        for each in pieces_used(store, owner, {work.operation for work in works}):
            remove_item(store, each, hand)
    return works


def pieces_used(store: Store, owner: Instrument, works: Collection[str]) -> tuple[Item, ...]:
    """The pieces, kept for an instrument and followed, that these operations use up."""
    parts = parts_used_by(works)
    own = (each for each in items(store, PIECE) if each.figures.get("for") == owner.name)
    return tuple(each for each in own if each.figures.get("part") in parts)


def wood_made_of(store: Store, owner: Instrument, piece: str) -> str:
    """The wood that a piece was made of: that of the blank used up for it, of the piece kept for it, or as described.

    Raises MakersFault if none of these says it.
    """
    works = [each.operation for each in work_on(store, owner.id, piece)]
    needs, raw = {need for work in works for need in used_up_by(work)}, {each.id: each for each in blanks(store)}
    used = [each.blank for each in promises(store, owner.id) if each.need in needs and each.used_at]
    found = [raw[number].wood for number in reversed(used) if number is not None]
    found += [str(each.figures["wood"]) for each in pieces_used(store, owner, works)]
    figures = figures_in_store(store, owner) if pieces()[piece].wood and not found else {}
    found += [str(figures[each]) for each in pieces()[piece].wood if each in figures]
    if not found:
        raise MakersFault.of(f"what {pieces()[piece].what} is made of is not noted", remedy="write its wood as well")
    return found[0]
