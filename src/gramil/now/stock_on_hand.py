"""Pieces and made parts on hand in the form that matching needs, from the shop's description or from the store."""

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import replace

from gramil.description.records import piece_of_wood
from gramil.description.shop.tables import Shop
from gramil.description.wood.tables import PieceTable
from gramil.now.match import Stock
from gramil.now.needs import MadePart, parts_used_by
from gramil.shop.operations_done import operations_done
from gramil.shop.stock import blanks, parts, promises
from gramil.store.opening import Store

PAIRS = ("top", "back", "sides")
"""Parts that are made of two halves; a piece kept for one stands for both."""


def stock_of_shop(shop: Shop, settled: Mapping[str, bool]) -> tuple[Stock, ...]:
    """Blanks and pieces of a description; a piece with the same name as a blank adds to what is known of that blank."""
    pieces = {row.name: row for row in shop.piece}
    found = []
    for blank in shop.blank:
        row = pieces.pop(blank.name, None)
        grain, part, owner = (row.sawn, row.part, row.instrument or "") if row else ("", "", "")
        is_settled = settled.get(blank.name)
        for _ in range(blank.count):
            found.append(Stock(**piece_of_wood(blank), grain=grain, part=part, owner=owner, settled=is_settled))
    return (*found, *_of_pieces(pieces.values(), settled))


def _of_pieces(rows: Iterable[PieceTable], settled: Mapping[str, bool]) -> Iterator[Stock]:
    """Pieces that are not blanks; one that is kept for a pair stands for both halves."""
    for row in rows:
        owner, is_settled = row.instrument or "", settled.get(row.name)
        piece = Stock(**piece_of_wood(row), grain=row.sawn, part=row.part, owner=owner, settled=is_settled)
        yield from [piece] * _stands_for(row)


def stock_of_store(
    store: Store, shop: Shop, names: Mapping[int, str], settled: Mapping[str, bool]
) -> tuple[Stock, ...]:
    """The store's blanks that are not used up, one by one, and its pieces; `names` are the instruments' by number.

    A piece that is kept for an instrument is used up with the work that uses the wood of its part. One with the name of
    a blank is that blank: what nobody was promised of it is kept for that instrument, and used up likewise.
    """
    given, used, found = promises(store), _used(store, names), []
    pieces = {row.name: row for row in shop.piece}
    for blank in blanks(store):
        row, own = pieces.pop(blank.name, None), [each for each in given if each.blank == blank.id]
        owners: Counter[str] = Counter()
        for each in own:
            owners[names.get(each.instrument, "another")] += 0 if each.used_at else each.count
        free = blank.count - sum(each.count for each in own)
        piece = Stock(**piece_of_wood(blank), grain=blank.grain, settled=settled.get(blank.name), id=blank.id)
        found += [replace(piece, owner=owner) for owner in owners.elements()]
        if row is None:
            found += [piece] * free
        else:
            gone = (row.instrument, row.part) in used and not any(each.used_at for each in own)
            kept = replace(piece, grain=blank.grain or row.sawn, part=row.part, owner=row.instrument or "")
            found += [kept] * (free - _stands_for(row) * gone)
    left = (row for row in pieces.values() if (row.instrument, row.part) not in used)
    return (*found, *_of_pieces(left, settled))


def _stands_for(row: PieceTable) -> int:
    return 2 if row.part in PAIRS else 1


def _used(store: Store, names: Mapping[int, str]) -> set[tuple[str | None, str]]:
    """Whose pieces for which parts are used up: the work that uses the part's wood up is done."""
    done = {name: {each.operation for each in operations_done(store, number)} for number, name in names.items()}
    return {(name, part) for name, operations in done.items() for part in parts_used_by(operations)}


def made_parts(store: Store, names: Mapping[int, str]) -> Iterator[MadePart]:
    """Parts made ahead that are not used up."""
    given = {each.part: each for each in promises(store) if each.part is not None}
    for part in parts(store):
        promise = given.get(part.id)
        if promise is None or not promise.used_at:
            owner = names.get(promise.instrument, "another") if promise else ""
            yield MadePart(part.name, part.kind, part.figures, owner, part.id)
