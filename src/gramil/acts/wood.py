"""Wood: promised to instruments and let go again, written down and struck off, laid somewhere and weighed."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace

from gramil.acts.cut_sizes import refuse_larger, volume
from gramil.air.pieces import PIECE, lay_piece, weigh_piece
from gramil.air.places import place
from gramil.faults import MakersFault
from gramil.now.match import Matching
from gramil.now.needs import STICKS, kinds_made
from gramil.now.wood_on_hand import Sticks
from gramil.quantities import Gram
from gramil.shop.stock import (
    Blank,
    Part,
    Promise,
    add_blank,
    add_part,
    blanks,
    free_counts,
    promise_blank,
    promise_part,
    promises,
    release,
    remove_blank,
    remove_part,
    update_blank,
)
from gramil.store.items import Item, add_item, items, length_text, remove_item
from gramil.store.opening import Store
from gramil.store.writing import Hand, writing

_PASSED_ON = ("wood", "sawn", "sealed", "lay", "moisture")
"""What is known of a piece and holds for what is cut of it."""


@dataclass(frozen=True)
class Promised:
    """A piece of wood or a part made ahead that was promised to an instrument, by their names."""

    name: str
    instrument: str


def reserve(
    store: Store,
    found: Matching,
    numbers: Mapping[str, int],
    hand: Hand,
    *,
    sticks: Sequence[Sticks] = (),
) -> tuple[Promised, ...]:
    """Promise everything found to the instruments that it serves, by name and number; gives what was promised.

    Billets for `sticks` are among it, as many as are not promised to the instrument already.
    All of it or none: raises MakersFault if somebody else promised one of them meanwhile.
    """
    promised = []
    with writing(store, "promise wood to instruments", hand):
        for each in found.served:
            owner = numbers[each.need.instrument]
            if each.fit is not None and not each.fit.part.promised:
                promise_part(store, owner, each.need.name, each.fit.part.id, hand)
                promised.append(Promised(each.fit.part.name, each.need.instrument))
            elif each.stock is not None and each.stock.id and (each.stock.part or not each.stock.owner):
                promise_blank(store, owner, each.need.name, each.stock.id, hand)
                promised.append(Promised(each.stock.name, each.need.instrument))
        for sticks_of in sticks:
            promised += _promise_billets(store, numbers[sticks_of.instrument], sticks_of, hand)
    return tuple(promised)


def _promise_billets(store: Store, owner: int, sticks: Sticks, hand: Hand) -> list[Promised]:
    named = {each.name: each.id for each in blanks(store)}
    own = [each for each in promises(store, owner) if each.need == STICKS and not each.used_at]
    found = []
    for name, count in sticks.billets.items():
        more = count - sum(each.count for each in own if each.blank == named[name])
        if more > 0:
            promise_blank(store, owner, STICKS, named[name], hand, count=more)
            found.append(Promised(name, sticks.instrument))
    return found


def let_go(store: Store, seen: Promise, hand: Hand) -> None:
    """Take a promise back. Raises MakersFault if it is used up, Conflict if it is no longer as it was seen."""
    release(store, seen, hand)


def keep_wood(store: Store, wood: Blank, hand: Hand) -> None:
    """Write a piece of wood down, a new one (number 0) or an existing one; the same new one sent twice is added once.

    Raises MakersFault if the name is taken, Conflict if it is no longer as it was seen.
    """
    same = next((each for each in blanks(store) if each.name == wood.name and each.id != wood.id), None)
    if same is not None and replace(same, id=0, version=0) == wood:
        return
    if same is not None:
        raise MakersFault.of("there is one of that name already", remedy="write another name on it", where="name")
    if wood.id:
        update_blank(store, wood, hand)
    else:
        add_blank(store, wood, hand)


def strike_wood(store: Store, seen: Blank, hand: Hand) -> None:
    """Remove a piece of wood from the list, and the piece of its name that is followed. Raises MakersFault if it was
    ever promised, Conflict if it was changed since.
    """
    with writing(store, f"strike {seen.name}", hand):
        remove_blank(store, seen, hand)
        _follow_no_more(store, seen.name, hand)


def strike_part(store: Store, seen: Part, hand: Hand) -> None:
    """Remove a part made ahead from the list. Raises MakersFault if it was ever promised, Conflict if it was changed
    since.
    """
    remove_part(store, seen, hand)


def move(store: Store, seen: Blank, where: str, hand: Hand) -> Blank:
    """Note that wood in stock lies in a place from now on; a piece of the same name that is followed is laid there too.

    Raises MakersFault if there is no such place, Conflict if the wood was changed since it was seen.
    """
    to = place(store, where)
    with writing(store, f"lay {seen.name} in the {to.name}", hand):
        for piece in items(store, PIECE):
            if piece.name == seen.name:
                lay_piece(store, piece, to.name, _to_the_second(hand))
        return update_blank(store, replace(seen, place=to.id), hand)


def split(store: Store, seen: Blank, parts: Sequence[Blank], hand: Hand) -> None:
    """Cut one of a kind of wood into parts, each with its name and sizes: one less of it, and the parts in stock.

    They are of its wood and grain, lie where it lies, and share its cost by their volumes. If it is followed, they are
    from there on: they lay where it lay, and are kept for nothing; what it weighed says nothing of them. Raises
    MakersFault if none of it is free, if a part or all of them are larger than it was, or if a name is taken.
    """
    whole = volume(seen)
    if free_counts(store).get(seen.id, 0) < 1:
        raise MakersFault.of(f"none of {seen.name} is free", "it is promised or used", "let it go first")
    if not parts or sum(map(volume, parts)) > whole * (1 + 1e-9):
        raise MakersFault.of("the parts are more than the piece", remedy="write what was cut from it, less the cuts")
    refuse_larger(seen, parts)
    rest = replace(seen, count=seen.count - 1)
    with writing(store, f"cut {seen.name} into {', '.join(each.name for each in parts)}", hand):
        if rest.count or any(each.blank == seen.id for each in promises(store)):
            update_blank(store, rest, hand)
        else:
            remove_blank(store, seen, hand)
        for each in parts:
            cost = None if seen.cost is None else seen.cost * volume(each) / whole
            of_it = replace(each, wood=seen.wood, grain=seen.grain, place=seen.place, cost=cost)
            add_blank(store, of_it, hand)
        _follow_parts(store, seen.name, parts, hand)
        if not rest.count:
            _follow_no_more(store, seen.name, hand)


def join(store: Store, one: Blank, other: Blank, hand: Hand) -> Blank:
    """Count two kinds of wood as one that are alike in wood, grain and sizes, under the first one's name.

    Each costs what they cost in the mean, where both costs are known. Raises MakersFault if they differ or lie in
    different places, or if the other was ever promised; Conflict if either was changed since.
    """
    alike = ("wood", "grain", "length", "width", "thickness")
    if one.id == other.id or any(getattr(one, key) != getattr(other, key) for key in alike):
        raise MakersFault.of(f"{one.name} and {other.name} are not alike", "only wood of one size is counted together")
    if one.place != other.place:
        remedy = f"lay {other.name} where {one.name} lies first"
        raise MakersFault.of(f"{one.name} and {other.name} lie in different places", remedy=remedy)
    with writing(store, f"count {other.name} with {one.name}", hand):
        remove_blank(store, other, hand)
        _follow_no_more(store, other.name, hand)
        return update_blank(store, replace(one, count=one.count + other.count, cost=_mean_cost(one, other)), hand)


def _mean_cost(one: Blank, other: Blank) -> float | None:
    count = one.count + other.count
    if one.cost is None or other.cost is None or not count:
        return other.cost if one.cost is None else one.cost
    return (one.cost * one.count + other.cost * other.count) / count


def _follow_parts(store: Store, name: str, parts: Sequence[Blank], hand: Hand) -> None:
    """Pieces for what is cut of one that is followed: what is known of where it lay, and their own sizes."""
    for whole in [each for each in items(store, PIECE) if each.name == name]:
        known = {key: value for key, value in whole.figures.items() if key in _PASSED_ON}
        for each in parts:
            sizes = {key: length_text(getattr(each, key)) for key in ("length", "width", "thickness")}
            add_item(store, Item(PIECE, each.name, {**known, **sizes}), hand)


def _follow_no_more(store: Store, name: str, hand: Hand) -> None:
    """Wood that is in stock no more is not followed either, or it would count as a piece of its own."""
    for each in items(store, PIECE):
        if each.name == name:
            remove_item(store, each, hand)


def make_ahead(store: Store, part: Part, hand: Hand) -> Part:
    """Write down a part made ahead. Raises MakersFault if its name is taken, or if no instrument asks for its kind."""
    if part.kind not in kinds_made():
        remedy = f"these are: {', '.join(kinds_made())}"
        raise MakersFault.of(f'"{part.kind}" serves no need', remedy=remedy, where="kind")
    return add_part(store, part, hand)


def lay(store: Store, piece: str, where: str, hand: Hand) -> None:
    """Note that a followed piece lies in a place from now on. Raises MakersFault if it does not exist."""
    lay_piece(store, _followed(store, piece), place(store, where).name, _to_the_second(hand))


def weigh(store: Store, piece: str, grams: Gram, hand: Hand) -> None:
    """Note what a followed piece weighs now. Raises MakersFault if a weight does not tell its moisture."""
    weigh_piece(store, _followed(store, piece), grams, _to_the_second(hand))


def _to_the_second(hand: Hand) -> Hand:
    return replace(hand, now=hand.now.replace(microsecond=0))


def _followed(store: Store, name: str) -> Item:
    """The piece of that name whose moisture is followed; raises MakersFault if there is none."""
    found = next((each for each in items(store, PIECE) if each.name == name), None)
    if found is None:
        names = ", ".join(each.name for each in items(store, PIECE))
        remedy = f"these are: {names}" if names else "none is followed yet"
        raise MakersFault.of(f'there is no piece "{name}"', remedy=remedy)
    return found
