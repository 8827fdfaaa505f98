"""Stock: blanks of raw wood and parts made ahead, where they lie, and what is promised to which instrument or used up.

The store itself refuses to promise one piece twice, whichever program asks.
"""

import json
from collections.abc import Mapping
from dataclasses import dataclass

from gramil.description.records import PieceOfWood
from gramil.faults import MakersFault
from gramil.quantities import Count
from gramil.store.moments import moment_text
from gramil.store.opening import Store, Value
from gramil.store.rows import delete, insert, record, records, update
from gramil.store.writing import Hand, writing


@dataclass(frozen=True)
class Blank(PieceOfWood):
    """Raw wood, `count` alike. `place` is a place's number.

    `cost` is of one, in the shop's own money.
    """

    count: Count = 1
    grain: str = ""
    cost: float | None = None
    place: int | None = None
    note: str = ""
    id: int = 0
    version: int = 0


@dataclass(frozen=True)
class Part:
    """A part made ahead: `kind` such as "bent sides"; `figures` as written, JSON in the store ("scale": "648 mm")."""

    name: str
    kind: str
    figures: Mapping[str, str]
    wood: str = ""
    cost: float | None = None
    place: int | None = None
    note: str = ""
    id: int = 0
    version: int = 0


@dataclass(frozen=True)
class Promise:
    """A blank or a part (the number of one, None for the other) promised to an instrument for one of its needs.

    `used_at` is when it was used up, empty while it is only promised.
    """

    instrument: int
    need: str
    blank: int | None
    part: int | None
    count: Count
    at: str
    used_at: str
    id: int
    version: int


def add_blank(store: Store, blank: Blank, hand: Hand) -> Blank:
    """A new blank in stock; raises MakersFault if the name is taken or a size is impossible."""
    with writing(store, f"add blank {blank.name}", hand):
        put_blank(store, blank)
    return blank_named(store, blank.name)


def put_blank(store: Store, blank: Blank) -> None:
    """Add a blank within the change under way."""
    insert(store, "blank", {"version": None, **_columns(blank)})


def blanks(store: Store) -> list[Blank]:
    """Every blank, used up or not, in the order in which they were added."""
    return records(store, Blank, "blank")


def blank_named(store: Store, name: str) -> Blank:
    """The blank of that name; raises MakersFault if there is none."""
    found = records(store, Blank, "blank", "WHERE name = ?", (name,))
    if not found:
        names = ", ".join(each.name for each in blanks(store))
        raise MakersFault.of(f"there is no wood called {name}", remedy=f"in stock are: {names}" if names else "")
    return found[0]


def update_blank(store: Store, changed: Blank, hand: Hand) -> Blank:
    """Write a blank; raises Conflict if the store holds another version."""
    with writing(store, f"change blank {changed.name}", hand):
        update(store, "blank", changed.id, changed.version, _columns(changed))
    return blank_named(store, changed.name)


def remove_blank(store: Store, gone: Blank, hand: Hand) -> None:
    """Remove a blank that was never promised; raises MakersFault otherwise."""
    with writing(store, f"remove blank {gone.name}", hand):
        delete(store, "blank", gone.id, gone.version)


def free_counts(store: Store, for_instrument: int | None = None) -> dict[int, int]:
    """How many of each blank, by its number, are promised to nobody.

    With an instrument, what is promised to it and not used yet counts as free too.
    """
    sql = (
        "SELECT blank.id, blank.count - coalesce(sum(promise.count), 0) FROM blank LEFT JOIN promise "
        "ON promise.blank = blank.id AND NOT (promise.instrument IS ? AND promise.used_at = '') GROUP BY blank.id"
    )
    return dict(store.rows(sql, (for_instrument,)))


def add_part(store: Store, part: Part, hand: Hand) -> Part:
    """Add a part made ahead; raises MakersFault if the name is taken."""
    with writing(store, f"add part {part.name}", hand):
        insert(store, "part", {"version": None, **_columns(part)})
    return part_named(store, part.name)


def remove_part(store: Store, gone: Part, hand: Hand) -> None:
    """Remove a part that was never promised; raises MakersFault otherwise."""
    with writing(store, f"remove part {gone.name}", hand):
        delete(store, "part", gone.id, gone.version)


def parts(store: Store) -> list[Part]:
    """Every part made ahead, used up or not, in the order in which they were added."""
    return _parts(store, "ORDER BY id")


def part_named(store: Store, name: str) -> Part:
    """The part of that name; raises MakersFault if there is none."""
    found = _parts(store, "WHERE name = ?", name)
    if not found:
        raise MakersFault.of(f"there is no such part: {name}")
    return found[0]


def update_part(store: Store, changed: Part, hand: Hand) -> Part:
    """Write a part; raises Conflict if the store holds another version."""
    with writing(store, f"change part {changed.name}", hand):
        update(store, "part", changed.id, changed.version, _columns(changed))
    return part_named(store, changed.name)


def promise_blank(store: Store, instrument: int, need: str, blank: int, hand: Hand, *, count: int = 1) -> Promise:
    """Promise a number of a blank (by its number); raises MakersFault if they are promised or used already."""
    return _promise(store, {"instrument": instrument, "need": need, "blank": blank, "count": count}, hand)


def promise_part(store: Store, instrument: int, need: str, part: int, hand: Hand) -> Promise:
    """Promise a part, by its number; raises MakersFault if it is promised or used already."""
    return _promise(store, {"instrument": instrument, "need": need, "part": part, "count": 1}, hand)


def promises(store: Store, instrument: int | None = None) -> list[Promise]:
    """Every promise, or those to one instrument, the oldest first; used ones are among them."""
    if instrument is None:
        return records(store, Promise, "promise")
    return records(store, Promise, "promise", "WHERE instrument = ? ORDER BY id", (instrument,))


def use_up(store: Store, promise: Promise, hand: Hand) -> Promise:
    """Note that what was promised is used; raises Conflict if the store holds another version."""
    with writing(store, f"use up for {promise.need}", hand):
        update(store, "promise", promise.id, promise.version, {"used_at": moment_text(hand.now)})
    return record(store, Promise, "promise", "WHERE id = ?", (promise.id,))


def not_used_after_all(store: Store, promise: Promise, hand: Hand) -> Promise:
    """Note that what was used is there after all, and promised as before; raises Conflict if the store holds another
    version.
    """
    with writing(store, f"put back for {promise.need}", hand):
        update(store, "promise", promise.id, promise.version, {"used_at": ""})
    return record(store, Promise, "promise", "WHERE id = ?", (promise.id,))


def release(store: Store, promise: Promise, hand: Hand) -> None:
    """Take a promise back; raises MakersFault if it is used up, Conflict if the store holds another version."""
    if promise.used_at:
        remedy = "if it was a slip, note the work that used it as not done after all: that puts it back"
        raise MakersFault.of("this is used up", f"on {promise.used_at}", remedy)
    with writing(store, f"release {promise.need}", hand):
        delete(store, "promise", promise.id, promise.version)


def _promise(store: Store, row: Mapping[str, Value], hand: Hand) -> Promise:
    with writing(store, f"promise for {row['need']}", hand):
        number = insert(store, "promise", {"version": None, **row, "at": moment_text(hand.now), "used_at": ""})
    return record(store, Promise, "promise", "WHERE id = ?", (number,))


def _parts(store: Store, rest: str, *values: str) -> list[Part]:
    """Parts with their figures read from JSON."""
    names = "name, kind, figures, wood, cost, place, note, id, version"
    rows = store.rows(f"SELECT {names} FROM part {rest}", values)
    return [Part(row[0], row[1], json.loads(row[2]), *row[3:]) for row in rows]


def _columns(row: Blank | Part) -> dict[str, Value]:
    """The columns that a maker edits."""
    values = {name: value for name, value in vars(row).items() if name not in ("id", "version")}
    if isinstance(row, Part):
        values["figures"] = json.dumps(dict(row.figures), ensure_ascii=False)
    return values
