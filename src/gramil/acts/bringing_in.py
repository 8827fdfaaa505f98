"""Files of any kind brought into the record as one act: all of them or none, with one undo for all."""

import tomllib
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any, Literal

from gramil.acts.own_operations import keep_list
from gramil.air.air_of_places import load_air
from gramil.air.places import import_air, place
from gramil.description.reading import parse_description
from gramil.description.self_contained import self_contained
from gramil.doorway.bringing_in import import_csv, import_files
from gramil.doorway.export import AIR, AIR_FILE, TOML_FILE
from gramil.doorway.working_files import bring_in_made
from gramil.faults import Fault, MakersFault
from gramil.graph import Figures
from gramil.prints.whole import figures_of
from gramil.shop.instruments import Instrument, add_instrument, instrument, instruments, save_revision
from gramil.shop.made_file import Made, made_beside, read_made
from gramil.shop.operations_file import list_beside
from gramil.shop.own_operations import own_operations
from gramil.shop.shop_in_store import bring_in_shop, shop_description
from gramil.store.opening import Store
from gramil.store.table_forms import TABLES
from gramil.store.writing import Hand, writing
from gramil.text_file import text_of
from gramil.wood.air_log import LogReport

Kind = Literal["export", "rows", "readings", "shop", "operations", "instrument", "revision", "made"]


@dataclass(frozen=True)
class Brought:
    """What a file brought: its name, what it was, whose, how many rows, and how many were there already.

    `report` says what was found while reading a logger's file.
    """

    file: str
    kind: Kind
    whose: str = ""
    count: int = 0
    there_already: int = 0
    report: LogReport | None = None


@dataclass(frozen=True)
class Asks:
    """How the maker is asked about unlikely readings: in a record of what is made, and in rows of a file.

    Each raises MakersFault for a reading that is not to be taken as it stands.
    """

    made: Callable[[Made, Figures], None]
    rows: Callable[[str], Callable[[Store], None]]


def bring_in(
    store: Store,
    files: Sequence[Path],
    hand: Hand,
    *,
    table: str | None = None,
    where: str | None = None,
    asks: Asks | None = None,
) -> tuple[Brought, ...]:
    """Bring files in, each according to its kind; the files of one export go in together. Gives what each brought.

    `table` says which table CSV files are of, `where` which place's readings they are; without `asks` every reading is
    taken as it stands. Raises MakersFault, with nothing brought in, if anything is wrong in any of them.
    """
    with writing(store, f"bring in {', '.join(file.name for file in files)}", hand):
        if where is not None and table is None:
            return tuple(_readings(store, where, file, hand) for file in files)
        texts = {file: text_of(file) for file in files}
        if table is not None:
            return tuple(_rows(store, table, file.name, text, hand, asks) for file, text in texts.items())
        whole = {file.name: text for file, text in texts.items() if file.name in (TOML_FILE, AIR_FILE)}
        found = [Brought(", ".join(whole), "export")] if whole else []
        if whole:
            import_files(store, whole, hand)
        for file, text in texts.items():
            if file.name not in whole:
                found += _description(store, file, text, hand, asks)
        return tuple(found)


def _rows(store: Store, table: str, file: str, text: str, hand: Hand, asks: Asks | None) -> Brought:
    look = asks.rows(file) if asks is not None and table == "measurement" else None
    try:
        return Brought(file, "rows", count=import_csv(store, table, text, file, hand, look=look))
    except KeyError:
        raise no_table(table) from None


def no_table(table: str) -> MakersFault:
    """The fault for a table that the store does not have."""
    return MakersFault.of(f'there is no table "{table}"', f"the store has {', '.join((*TABLES, AIR))}")


def _description(store: Store, file: Path, text: str, hand: Hand, asks: Asks | None) -> Iterator[Brought]:
    """A shop's or an instrument's description, told apart by their first table."""
    try:
        tables = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        remedy = "a CSV file needs --place or --table" if file.suffix.lower() == ".csv" else ""
        raise MakersFault([Fault(what="is not TOML", why=str(error), remedy=remedy, file=file.name)]) from None
    if "operation" in tables:
        remedy = "gramil store operations STORE FILE keeps it, with --for NAME for one instrument"
        raise MakersFault([Fault(what="is a list of operations", remedy=remedy, file=file.name)])
    if "shop" in tables:
        bring_in_shop(store, text, file.name, hand)
        yield Brought(file.name, "shop")
        yield from _logs(store, file, tables, hand)
        yield from _own_list(store, file, None, hand)
    else:
        yield from _instrument(store, file, text, hand, asks)


def _logs(store: Store, file: Path, tables: Mapping[str, Any], hand: Hand) -> Iterator[Brought]:
    """The readings that a shop's places name, from the files beside it."""
    rows = tables.get("place", [])
    for row in rows if isinstance(rows, list) else []:
        if "log" in row:
            yield _readings(store, row["name"], file.parent / row["log"], hand)


def _readings(store: Store, name: str, file: Path, hand: Hand) -> Brought:
    history, report = load_air(file)
    found = import_air(store, place(store, name).id, history, hand, file=file.name)
    return Brought(file.name, "readings", name, found.added, found.there_already, report)


def _instrument(store: Store, file: Path, text: str, hand: Hand, asks: Asks | None) -> Iterator[Brought]:
    """An instrument, new or as its next revision, and the record beside it."""
    text = self_contained(text, file.name, file.parent)
    described = parse_description(text, file.name)
    name = described.instrument.instrument.name
    known = {each.name: each for each in instruments(store)}
    if name in known:
        save_revision(store, known[name], text, replace(hand, why=f"brought in from {file.name}"))
        yield Brought(file.name, "revision", name)
        yield from _own_list(store, file, name, hand)
        return
    record = made_beside(file)
    made = read_made(record) if record.exists() else None
    added = add_instrument(store, name, text, replace(hand, why=f"brought in from {file.name}"))
    yield Brought(file.name, "instrument", name)
    yield from _own_list(store, file, name, hand)
    if made is not None:
        yield _made(store, added, made, figures_of(described, shop_description(store)), hand, asks)


def _made(store: Store, owner: Instrument, made: Made, figures: Figures, hand: Hand, asks: Asks | None) -> Brought:
    if asks is not None:
        asks.made(made, figures)
    bring_in_made(store, owner, made, figures, hand)
    return Brought(made.file or "", "made", owner.name, len(made.done))


def _own_list(store: Store, description: Path, name: str | None, hand: Hand) -> Iterator[Brought]:
    """The list of operations that lies beside a description, kept with it."""
    own = list_beside(description)
    if own.exists():
        yield bring_in_list(store, own, name, hand)


def bring_in_list(store: Store, file: Path, name: str | None, hand: Hand) -> Brought:
    """The list of operations in a file, kept as that of the named instrument, or of the shop."""
    owner = None if name is None else instrument(store, name)
    keep_list(store, text_of(file), hand, owner=owner, seen=own_operations(store, owner), file=file.name)
    return Brought(file.name, "operations", name or "the shop")
