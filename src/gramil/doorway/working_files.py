"""The store as the files that a maker works with: the shop's description and logs, each instrument, what is made of it.

The commands that take files read these as they are; `bring_in_made` brings a record of what is made back in.
"""

from collections.abc import Iterator
from datetime import date, datetime, time

from gramil.air.places import air_csv, place_logs
from gramil.file_names import file_name
from gramil.graph import Figures
from gramil.shop.instruments import Instrument, instruments, revision
from gramil.shop.made_file import NO_OPERATION, Done, Made, Measured, made_text
from gramil.shop.operations_done import operations_done, put_done, put_measurements, read_measurements
from gramil.shop.own_operations import own_operations
from gramil.shop.shop_in_store import shop_text
from gramil.store.opening import Store, reading
from gramil.store.writing import Hand, writing


def working_files(store: Store) -> dict[str, str]:
    """Texts by file name: `shop.toml`, its logs, and for each instrument its latest description and its record.

    Each list of operations lies beside the description it belongs to.
    """
    with reading(store):
        files = {"shop.toml": shop_text(store)}
        files |= {name: air_csv(store, place) for place, name in place_logs(store).items()}
        files |= _own_list(store, None, "shop")
        for each in instruments(store):
            name = _free_name(each.name, files)
            files[f"{name}.toml"] = revision(store, each.id).text
            files |= _own_list(store, each, name)
            made = made_of(store, each)
            if made.done:
                files[f"{name}.made.toml"] = made_text(made)
    return files


def _own_list(store: Store, owner: Instrument | None, name: str) -> dict[str, str]:
    """An own list of operations as the file beside its description, or nothing."""
    own = own_operations(store, owner)
    return {} if own is None else {f"{name}.operations.toml": own.text}


def made_of(store: Store, owner: Instrument) -> Made:
    """What is made of an instrument, in the form of its record; days in the order in which they were noted."""
    measured: dict[int | None, list[tuple[str, Measured]]] = {}
    sql = "SELECT done, at, address, written FROM measurement WHERE instrument = ? ORDER BY id"
    for done, at, address, written in store.rows(sql, (owner.id,)):
        measured.setdefault(done, []).append((at, Measured(address, written)))
    rows = [
        (each.at, Done(each.operation, each.at[:10], each.note, tuple(one for _, one in measured.get(each.id, ()))))
        for each in operations_done(store, owner.id)
    ]
    rows += [(at, Done(NO_OPERATION, at[:10], "", (one,))) for at, one in measured.get(None, ())]
    return Made(tuple(done for _, done in sorted(rows, key=lambda row: row[0])))


def bring_in_made(store: Store, owner: Instrument, made: Made, figures: Figures, hand: Hand) -> None:
    """Bring a record of what is made into the store; days without a time are midnight in the zone of `now`.

    Raises MakersFault, with nothing brought in, for values that do not fit `figures`, and for operations that are
    done already.
    """
    made.pins(figures)
    with writing(store, f"bring in what is made of {owner.name}", hand):
        for done in made.done:
            written = {each.address: each.written for each in done.measured}
            found = read_measurements(figures, written, made.units)
            if done.operation == NO_OPERATION:
                put_measurements(store, owner.id, None, found, _moment(done.day, hand.now))
            else:
                put_done(store, owner.id, done.operation, _moment(done.day, hand.now), found, {"note": done.note})


def _moment(day: str, now: datetime) -> datetime:
    """A record's day or moment, with an offset; a record without a day counts as made now."""
    if not day:
        return now
    moment = datetime.fromisoformat(day) if len(day) > 10 else datetime.combine(date.fromisoformat(day), time())
    return moment if moment.tzinfo else moment.replace(tzinfo=now.tzinfo)


def _free_name(name: str, files: dict[str, str]) -> str:
    """A file name made from an instrument's name, with a number added if it is taken."""
    plain = file_name(name.lower()) or "instrument"
    return next(each for each in _numbered(plain) if f"{each}.toml" not in files)


def _numbered(name: str) -> Iterator[str]:
    yield name
    number = 2
    while True:
        yield f"{name}-{number}"
        number += 1
