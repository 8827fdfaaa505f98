"""`gramil store`: the shop's record in one file: made, filled, given out, copied, put back, proved, taken back."""

from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

import click

from gramil.cli.as_read import as_read_option
from gramil.cli.reading import text_of
from gramil.cli.store_anew import anew
from gramil.cli.store_operations import kept_beside, operations
from gramil.cli.store_options import moment, moment_of
from gramil.faults import Fault, MakersFault
from gramil.shop.instruments import Instrument
from gramil.shop.opening import Store, new_store, open_store

PATH = click.Path(path_type=Path)


def _place(_: click.Context, parameter: click.Parameter, path: Path) -> Path:
    """A place for a store to be made in, in a folder that is there."""
    if path.is_dir() or not path.parent.is_dir():
        what = "is a folder" if path.is_dir() else f"has no place: there is no folder {path.parent}"
        raise click.BadParameter(f"{path} {what}; name a file in a folder that is there", param=parameter)
    return path


@click.group()
def command() -> None:
    """The shop's record in one file.

    \b
    gramil store new shop.gramil --shop shop.toml tarn.toml fell.toml
    gramil now --store shop.gramil
    gramil store backup shop.gramil copies/shop-monday.gramil
    """


@command.command()
@click.argument("store", type=PATH, callback=_place)
@click.argument("files", nargs=-1, type=PATH)
@click.option("--shop", type=PATH, help="The shop's description.")
@as_read_option
@moment
def new(store: Path, files: tuple[Path, ...], shop: Path | None, as_read: bool, at: str | None) -> None:
    """Make a new STORE of a shop's description, instruments in FILES, and what is made of each.

    \b
    gramil store new shop.gramil --shop shop.toml tarn.toml fell.toml
    """
    now = moment_of(at)
    with new_store(store) as opened:
        lines = list(_filled(opened, shop, files, now, as_read))
    for line in (*lines, f"The store is in {store.name}."):
        click.echo(line)


@command.command("import")
@click.argument("store", type=PATH)
@click.argument("files", nargs=-1, type=PATH, required=True)
@click.option("--table", help="Table that a CSV is of; air.csv is known.")
@click.option("--place", help="Place that a logger's CSV is of.")
@as_read_option
@moment
def import_(
    store: Path, files: tuple[Path, ...], table: str | None, place: str | None, as_read: bool, at: str | None
) -> None:
    """Bring FILES into STORE: instruments, a shop, an export, one table's CSV, or a place's readings.

    \b
    gramil store import shop.gramil scree.toml
    gramil store import shop.gramil export/store.toml export/air.csv
    gramil store import shop.gramil logger.csv --place bench
    """
    now = moment_of(at)
    with open_store(store) as opened:
        for line in _brought_in(opened, files, table, place, now, as_read):
            click.echo(line)


@command.command()
@click.argument("store", type=PATH)
@click.argument("folder", type=PATH)
@click.option("--work", is_flag=True, help="As files to work with: shop.toml, logs, NAME.toml and NAME.made.toml.")
@click.option("--table", help="One table as CSV.")
def export(store: Path, folder: Path, work: bool, table: str | None) -> None:
    """Everything in STORE as files in FOLDER, nothing lost.

    \b
    gramil store export shop.gramil export
    gramil store export shop.gramil files --work
    """
    from gramil.shop.export import export_csv, export_files
    from gramil.shop.working_files import working_files
    from gramil.writers.files import write_files

    with open_store(store, to_read=True) as opened:
        if table is not None:
            try:
                texts = {f"{table}.csv": export_csv(opened, table)}
            except KeyError:
                raise _no_table(table) from None
        else:
            texts = working_files(opened) if work else export_files(opened)
    write_files(folder, {name: text.encode() for name, text in texts.items()}, overwrite=False)
    for name in texts:
        click.echo(str(folder / name))


@command.command()
@click.argument("store", type=PATH)
@click.argument("copy", type=PATH, callback=_place)
def backup(store: Path, copy: Path) -> None:
    """Copy STORE as it is now to COPY, which is proved before it counts.

    \b
    gramil store backup shop.gramil copies/shop-monday.gramil
    """
    from gramil.shop.backup import backup as made

    with open_store(store, to_read=True) as opened:
        made(opened, copy)
    click.echo(f"The copy is in {copy.name}, and sound.")


@command.command()
@click.argument("store", type=PATH, callback=_place)
@click.argument("copy", type=PATH)
@moment
def restore(store: Path, copy: Path, at: str | None) -> None:
    """Put COPY in the place of STORE; what was there is kept beside it.

    \b
    gramil store restore shop.gramil copies/shop-monday.gramil
    """
    from gramil.shop.backup import restore as put_back

    kept = put_back(copy, store, moment_of(at))
    click.echo(f"{store.name} is as in {copy.name}.")
    if kept is not None:
        click.echo(f"What was there is kept in {kept.name}.")


@command.command()
@click.argument("store", type=PATH)
def verify(store: Path) -> None:
    """Whether STORE is sound: the file, its tables, its rules.

    \b
    gramil store verify shop.gramil
    """
    from gramil.shop.verify import verify as proved

    faults = proved(store)
    if faults:
        raise MakersFault(faults)
    click.echo(f"{store.name} is sound.")


@command.command()
@click.argument("store", type=PATH)
@moment
def upgrade(store: Path, at: str | None) -> None:
    """Bring a STORE that an older Gramil wrote to this one's form; a copy of the old one is kept beside it.

    \b
    gramil store upgrade shop.gramil
    """
    from gramil.shop.opening import upgrade_store

    kept = upgrade_store(store, moment_of(at))
    click.echo(f"{store.name} is of this program's form now. What was there is kept in {kept.name}.")


@command.command()
@click.argument("store", type=PATH)
@click.option("--yes", is_flag=True, help="Do not ask.")
@moment
def undo(store: Path, yes: bool, at: str | None) -> None:
    """Take back the last change of STORE.

    \b
    gramil store undo shop.gramil
    """
    from gramil.shop.undo import last_change
    from gramil.shop.undo import undo as take_back

    with open_store(store) as opened:
        last = last_change(opened)
        if last is None:
            raise MakersFault([Fault(what="there is no change to take back", file=store.name)])
        if not yes:
            click.confirm(f"Take back: {last.what}, {last.at}?", abort=True)
        taken = take_back(opened, last.id, moment_of(at))
    click.echo(f"Taken back: {taken.what}.")


@command.command()
@click.argument("store", type=PATH)
@click.argument("name")
@moment
def sheets(store: Path, name: str, at: str | None) -> None:
    """Note that the set-up sheets of the instrument NAME were given out, with the tools' settings on them.

    When a jig or a saw changes afterwards, `gramil now` says which of them are stale.

    \b
    gramil store sheets shop.gramil Tarn
    """
    with open_store(store) as opened:
        for line in _given(opened, name, moment_of(at)):
            click.echo(line)


@command.command()
@click.argument("store", type=PATH)
@click.argument("jig")
@click.argument("constant")
@as_read_option
@moment
def jig(store: Path, jig: str, constant: str, as_read: bool, at: str | None) -> None:
    """Note that the JIG's constant was measured, and is CONSTANT now; a bare length is in the shop's unit.

    \b
    gramil store jig shop.gramil "taper sled" "62.5 mm"
    """
    from gramil.cli.store_readings import ask_constant
    from gramil.measure import read_length
    from gramil.shop.items import item_named, shop_unit
    from gramil.shop.measured import with_unit
    from gramil.shop.sheets_given import stale_sheets
    from gramil.shop.tools import set_constant

    now = moment_of(at)
    with open_store(store) as opened:
        found, unit = item_named(opened, "jig", jig), shop_unit(opened)
        length, written = read_length(constant, unit), with_unit(constant, "mm", unit)
        if not as_read:
            ask_constant(opened, found, length, written, unit)
        set_constant(opened, found, length, now.date(), now)
        click.echo(f"{jig}: {written}, measured {now:%Y-%m-%d}.")
        for each in stale_sheets(opened):
            click.echo(f"Stale: sheet {each.sheet.title} of {each.sheet.at[:10]} has {each.name} {each.given:g} mm.")


command.add_command(operations)
command.add_command(anew)


def _filled(store: Store, shop: Path | None, files: tuple[Path, ...], now: datetime, as_read: bool) -> Iterator[str]:
    if shop is not None:
        yield from _brought_in(store, (shop,), None, None, now, as_read)
    if files:
        yield from _brought_in(store, files, None, None, now, as_read)


def _brought_in(
    store: Store, files: tuple[Path, ...], table: str | None, place: str | None, now: datetime, as_read: bool
) -> Iterator[str]:
    """Each file by what it is; an export's files go in together."""
    from gramil.cli.store_readings import asks_rows
    from gramil.shop.bringing_in import import_csv, import_files

    if place is not None and table is None:
        for file in files:
            yield from _readings(store, place, file, now)
        return
    texts = {file: text_of(file) for file in files}
    whole = {file.name: text for file, text in texts.items() if file.name in ("store.toml", "air.csv")}
    if whole and table is None:
        import_files(store, whole, now)
        yield f"Brought in: {', '.join(whole)}."
    for file, text in texts.items():
        if table is not None:
            try:
                look = asks_rows(file.name) if table == "measurement" and not as_read else None
                count = import_csv(store, table, text, file.name, now, look=look)
            except KeyError:
                raise _no_table(table) from None
            yield f"{file.name}: {count} rows."
        elif file.name not in whole:
            yield from _description(store, file, text, now, as_read)


def _no_table(table: str) -> MakersFault:
    from gramil.shop.export import AIR
    from gramil.shop.table_forms import TABLES

    return MakersFault.of(f'there is no table "{table}"', f"the store has {', '.join((*TABLES, AIR))}")


def _description(store: Store, file: Path, text: str, now: datetime, as_read: bool) -> Iterator[str]:
    """A shop's or an instrument's description, told apart by their first table."""
    import tomllib

    from gramil.shop.on_hand import bring_in_shop

    try:
        tables = tomllib.loads(text)
    except tomllib.TOMLDecodeError as error:
        remedy = "a CSV file wants --place or --table" if file.suffix.lower() == ".csv" else ""
        raise MakersFault([Fault(what="is not TOML", why=str(error), remedy=remedy, file=file.name)]) from None
    if "operation" in tables:
        remedy = "gramil store operations STORE FILE keeps it, with --for NAME for one instrument"
        raise MakersFault([Fault(what="is a list of operations", remedy=remedy, file=file.name)])
    if "shop" in tables:
        bring_in_shop(store, text, file.name, now)
        yield f"Brought in: {file.name}."
        yield from _logs(store, file, tables, now)
        yield from kept_beside(store, file, None, now)
    else:
        yield from _instrument(store, file, text, now, as_read)


def _logs(store: Store, file: Path, tables: dict[str, object], now: datetime) -> Iterator[str]:
    """The readings that a shop's places name, from the files beside it."""
    rows = tables.get("place", [])
    for row in rows if isinstance(rows, list) else []:
        if "log" in row:
            yield from _readings(store, row["name"], file.parent / row["log"], now)


def _readings(store: Store, name: str, file: Path, now: datetime) -> Iterator[str]:
    """A place's readings from a logger's file, and what was found on the way."""
    from gramil.shop.air_of_places import load_air
    from gramil.shop.places import import_air, place
    from gramil.wood.log_words import found_on_the_way

    history, report = load_air(file)
    found = import_air(store, place(store, name).id, history, now, file=file.name)
    yield f"{file.name}: {found.added} readings of the {name}, {found.there_already} were there already."
    yield from found_on_the_way(report)


def _instrument(store: Store, file: Path, text: str, now: datetime, as_read: bool) -> Iterator[str]:
    """An instrument, new or as its next revision, and the record beside it."""
    from gramil.cli.store_readings import ask_made
    from gramil.description.reading import parse_description
    from gramil.description.self_contained import self_contained
    from gramil.prints.whole import figures_of
    from gramil.shop.instruments import add_instrument, instruments, save_revision
    from gramil.shop.made_file import made_beside, read_made
    from gramil.shop.on_hand import shop_description
    from gramil.shop.working_files import bring_in_made

    text = self_contained(text, file.name, file.parent)
    described = parse_description(text, file.name)
    name = described.instrument.instrument.name
    known = {each.name: each for each in instruments(store)}
    if name in known:
        saved = save_revision(store, known[name], text, now, why=f"brought in from {file.name}")
        yield f"{name}: saved as a revision."
        yield from _spoilt(store, saved)
        yield from kept_beside(store, file, name, now)
        return
    record = made_beside(file)
    made = read_made(record) if record.exists() else None
    figures = figures_of(described, shop_description(store)) if made is not None else None
    if made is not None and figures is not None and not as_read:
        ask_made(made, figures)
    added = add_instrument(store, name, text, now, why=f"brought in from {file.name}")
    yield f"{name}: added."
    yield from kept_beside(store, file, name, now)
    if made is not None and figures is not None:
        bring_in_made(store, added, made, figures, now)
        yield f"{name}: {len(made.done)} operations done."


def _spoilt(store: Store, owner: Instrument) -> Iterator[str]:
    """What is made of an instrument and is not right any more by its latest revision."""
    from shlex import quote as quoted

    from gramil.change.made_in_store import standing_in_store
    from gramil.change.made_words import lines, lost_pieces
    from gramil.description.reading import parse_keys
    from gramil.shop.instruments import revision

    try:
        judged = standing_in_store(store, owner)
    except MakersFault as fault:
        yield f"  What is made is not judged: {fault.faults[0]}"
        return
    first = parse_keys(revision(store, owner.id).text, owner.name).instrument.units
    for each, line in lines(judged, first):
        yield f"  {each.standing.upper():<8} {line}."
    for piece in lost_pieces(judged):
        command = f"gramil store anew {store.path.name} {quoted(owner.name)} {quoted(piece.name)}"
        yield f"  When {piece.what} is begun anew: {command}"


def _given(store: Store, name: str, now: datetime) -> Iterator[str]:
    from gramil.change.in_store import figures_in_store, work_in_store
    from gramil.now.sheet_settings import settings_on
    from gramil.sheets.own_sheet import setup_sheets
    from gramil.shop.instruments import instrument, revision
    from gramil.shop.sheets_given import give_sheet

    owner = instrument(store, name)
    latest = revision(store, owner.id)
    figures = figures_in_store(store, owner)
    for sheet in setup_sheets(figures, work_in_store(store, owner)):
        setup, settings = sheet.setup, settings_on(sheet.setup, sheet.figures, store)
        if settings and not setup.closed:
            give_sheet(store, owner.id, latest.number, setup.name, settings, now)
            yield f"Given: {setup.name}, with {len(settings)} settings of tools."
