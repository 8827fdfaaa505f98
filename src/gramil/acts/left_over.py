"""What is left of the wood that an operation used up: kept in stock with its size, in one change with the work."""

from collections.abc import Callable, Collection, Sequence
from dataclasses import replace
from itertools import chain, count

from gramil.acts.cut_sizes import refuse_larger, volume
from gramil.acts.work import UsedUp, pieces_used
from gramil.faults import MakersFault
from gramil.now.needs import used_up_by
from gramil.quantities import Mm
from gramil.shop.instruments import Instrument
from gramil.shop.stock import Blank, add_blank, blanks, promises
from gramil.store.opening import Store
from gramil.store.writing import Hand, writing

Sizes = tuple[Mm, Mm, Mm]
"""Length along the grain, width and thickness."""
LEFT = "left"
"""Where faults in the sizes are said to be."""


def note_and_keep(
    store: Store, what: str, hand: Hand, note: Callable[[], tuple[UsedUp, ...]], left: Sequence[Sizes]
) -> tuple[tuple[UsedUp, ...], tuple[Blank, ...]]:
    """Note work with `note`, and keep in stock what is left of the first piece of wood that it used up.

    Gives what was used up and what was kept. It is one change, told by `what`. Raises MakersFault, and notes nothing,
    where no wood was used up or more is left than there was; and whatever `note` raises.
    """
    with writing(store, what, hand):
        used = note()
        whole = next((each for one in used for each in blanks(store) if each.name == one.name), None)
        if whole is None:
            raise MakersFault.of(
                "nothing can be left over",
                "no wood that is in stock was used up",
                "say nothing of what is left",
                where=LEFT,
            )
        if sum(length * width * thickness for length, width, thickness in left) > volume(whole):
            raise MakersFault.of(
                f"more is left than {whole.name} was", remedy="write what is left, less the cuts", where=LEFT
            )
        refuse_larger(whole, [_rest(store, whole, sizes) for sizes in left], where=LEFT)
        kept = []
        for sizes in left:
            kept.append(add_blank(store, _rest(store, whole, sizes), hand))
        return used, tuple(kept)


def left_of(store: Store, names: Collection[str]) -> tuple[str, ...]:
    """What is in stock as left over of these pieces of wood, by name."""
    return tuple(each.name for each in blanks(store) for name in names if each.name.startswith(_called(name)))


def wood_for(store: Store, owner: Instrument, operation: str) -> str:
    """The name of the first piece of wood in stock that an operation will use up, promised or kept for the instrument;
    nothing if it uses none.
    """
    needs = used_up_by(operation)
    names = {each.id: each.name for each in blanks(store)}
    taken = (each for each in promises(store, owner.id) if each.need in needs and not each.used_at)
    promised = (names[each.blank] for each in taken if each.blank is not None)
    kept = (each.name for each in pieces_used(store, owner, {operation}) if each.name in names.values())
    return next(chain(promised, kept), "")


def _rest(store: Store, whole: Blank, sizes: Sizes) -> Blank:
    """A left-over of a piece: of its wood and grain, in its place, at its share of the cost, by a name of its own."""
    length, width, thickness = sizes
    rest = replace(whole, length=length, width=width, thickness=thickness, count=1, id=0, version=0, note="")
    cost = None if whole.cost is None else whole.cost * volume(rest) / volume(whole)
    return replace(rest, name=_free_name(_called(whole.name), store), cost=cost)


def _called(name: str) -> str:
    return f"{name}, left over"


def _free_name(name: str, store: Store) -> str:
    taken = {each.name for each in blanks(store)}
    return next(each for each in chain((name,), (f"{name} {number}" for number in count(2))) if each not in taken)
