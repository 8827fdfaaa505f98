"""`gramil store`: the shop's record in one file: made, filled, given out, copied, put back, proved, taken back."""

from datetime import datetime
from pathlib import Path

import click

from gramil.answers.acts import FileAnswer
from gramil.answers.record import (
    ChangeAnswer,
    CopyMade,
    FilesBrought,
    HandedOut,
    JigChecked,
    Proved,
    PutBack,
    StaleAnswer,
    Upgraded,
)
from gramil.cli.as_read import as_read_option
from gramil.cli.json_option import answers_in_lines
from gramil.cli.left_unsaid import InTheStore, the_store, the_store_alone
from gramil.cli.meant_name import meant_name
from gramil.cli.store_anew import anew
from gramil.cli.store_brought import JudgedFile, judged_files, lines_of_files
from gramil.cli.store_corrected import mark, measured, not_done, reading
from gramil.cli.store_operations import operations
from gramil.cli.store_options import hand_asked_for, moment, moment_of
from gramil.cli.store_returned import return_to_revision
from gramil.cli.store_wood import join, lay, part, place, split, strike
from gramil.faults import Fault, MakersFault
from gramil.store.opening import Store, new_store, open_store
from gramil.store.writing import Change, Hand

PATH = click.Path(path_type=Path)
GONE_SHOWN = 5
"""How many of the changes that would be lost are named."""


def _place(_: click.Context, parameter: click.Parameter, path: Path) -> Path:
    """A path for a store to be made, in a folder that exists."""
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
def new(store: Path, files: tuple[Path, ...], shop: Path | None, as_read: bool, at: str | None) -> FilesBrought:
    """Make a new STORE of a shop's description, instruments in FILES, and what is made of each.

    \b
    gramil store new shop.gramil --shop shop.toml tarn.toml fell.toml
    """
    now = moment_of(at)
    with new_store(store) as opened:
        brought = _filled(opened, shop, files, now, as_read)
        lines = list(lines_of_files(brought))
    for line in (*lines, f"The store is in {store.name}."):
        click.echo(line)
    return FilesBrought(store.name, tuple(each.told for each in brought))


@command.command("import")
@click.argument("store", type=PATH)
@click.argument("files", nargs=-1, type=PATH, required=True)
@click.option("--table", help="Table that a CSV is of; air.csv is known.")
@click.option("--place", help="Place that a logger's CSV is of.")
@as_read_option
@moment
def import_(
    store: Path, files: tuple[Path, ...], table: str | None, place: str | None, as_read: bool, at: str | None
) -> FilesBrought:
    """Bring FILES into STORE: instruments, a shop, an export, one table's CSV, or a place's readings.

    \b
    gramil store import shop.gramil scree.toml
    gramil store import shop.gramil export/store.toml export/air.csv
    gramil store import shop.gramil logger.csv --place bench
    """
    from gramil.acts.bringing_in import bring_in
    from gramil.cli.store_readings import asks

    now = moment_of(at)
    with open_store(store) as opened:
        ask = None if as_read else asks()
        brought = judged_files(opened, bring_in(opened, files, Hand(now), table=table, where=place, asks=ask))
    for line in lines_of_files(brought):
        click.echo(line)
    return FilesBrought(store.name, tuple(each.told for each in brought))


@command.command()
@click.argument("store", type=PATH)
@click.argument("folder", type=PATH)
@click.option("--work", is_flag=True, help="As files to work with: shop.toml, logs, NAME.toml and NAME.made.toml.")
@click.option("--table", help="One table as CSV.")
def export(store: Path, folder: Path, work: bool, table: str | None) -> tuple[FileAnswer, ...]:
    """Everything in STORE as files in FOLDER, nothing lost.

    \b
    gramil store export shop.gramil export
    gramil store export shop.gramil files --work
    """
    from gramil.acts.bringing_in import no_table
    from gramil.doorway.export import export_csv, export_files
    from gramil.doorway.working_files import working_files
    from gramil.writers.files import write_files

    with open_store(store, to_read=True) as opened:
        if table is not None:
            try:
                texts = {f"{table}.csv": export_csv(opened, table)}
            except KeyError:
                raise no_table(table) from None
        else:
            texts = working_files(opened) if work else export_files(opened)
    write_files(folder, {name: text.encode() for name, text in texts.items()}, overwrite=False)
    for name in texts:
        click.echo(str(folder / name))
    return tuple(FileAnswer(str(folder / name), len(text.encode())) for name, text in texts.items())


@command.command()
@click.argument("store", type=PATH)
@click.argument("copy", type=PATH)
def backup(store: Path, copy: Path) -> CopyMade:
    """Copy STORE as it is now to COPY, which is proved before it counts; its folder is made if it is not there.

    \b
    gramil store backup shop.gramil copies/shop-monday.gramil
    """
    from gramil.doorway.backup import backup as made

    with open_store(store, to_read=True) as opened:
        copy.parent.mkdir(parents=True, exist_ok=True)
        made(opened, copy)
    click.echo(f"The copy is in {copy.name}, and sound.")
    return CopyMade(str(store), str(copy), copy.stat().st_size)


@command.command()
@click.argument("store", type=PATH, callback=_place)
@click.argument("copy", type=PATH)
@click.option("--yes", is_flag=True, help="Do not ask.")
@moment
def restore(store: Path, copy: Path, yes: bool, at: str | None) -> PutBack:
    """Put COPY in the place of STORE, after saying what the copy knows nothing of; what was there is kept beside it.

    \b
    gramil store restore shop.gramil copies/shop-monday.gramil
    """
    from gramil.acts.record import put_back

    gone = _gone_with(store, copy)
    for each in gone[:GONE_SHOWN]:
        click.echo(f"  would be gone: {each.what}, {each.at[:16]}")
    if gone and not yes:
        click.confirm(
            f"{len(gone)} change{'s' if len(gone) > 1 else ''} would be gone. Put {copy.name} back?", abort=True
        )
    kept = put_back(copy, store, moment_of(at), gone[0].id if gone else None)
    click.echo(f"{store.name} is as in {copy.name}.")
    if kept is not None:
        click.echo(f"What was there is kept in {kept.name}.")
    told = tuple(ChangeAnswer(each.at, each.what) for each in gone)
    return PutBack(str(store), str(copy), told, None if kept is None else kept.name)


@command.command()
@the_store_alone
def verify(store: Path) -> Proved:
    """Whether STORE is sound: the file, its tables, its rules.

    \b
    gramil store verify shop.gramil
    """
    from gramil.doorway.verify import verify as proved

    faults = proved(store)
    if faults:
        raise MakersFault(faults)
    click.echo(f"{store.name} is sound.")
    return Proved(str(store), sound=True)


@command.command()
@click.argument("store", type=PATH)
@moment
def upgrade(store: Path, at: str | None) -> Upgraded:
    """Bring a STORE that an older Gramil wrote to this one's form; a copy of the old one is kept beside it.

    \b
    gramil store upgrade shop.gramil
    """
    from gramil.store.opening import upgrade_store

    kept = upgrade_store(store, moment_of(at))
    click.echo(f"{store.name} is now in this program's form. What was there is kept in {kept.name}.")
    return Upgraded(str(store), kept.name)


@command.command()
@the_store_alone
@click.option("--yes", is_flag=True, help="Do not ask.")
@moment
def undo(store: Path, yes: bool, at: str | None) -> ChangeAnswer:
    """Take back the last change of STORE.

    \b
    gramil store undo shop.gramil
    """
    from gramil.acts.record import take_back
    from gramil.store.undo import last_change

    with open_store(store) as opened:
        last = last_change(opened)
        if last is None:
            raise MakersFault([Fault(what="there is no change to take back", file=store.name)])
        if not yes:
            click.confirm(f"Take back: {last.what}, {last.at}?", abort=True)
        taken = take_back(opened, last.id, Hand(moment_of(at)))
    click.echo(f"Taken back: {taken.what}.")
    return ChangeAnswer(taken.at, taken.what)


@command.command(cls=InTheStore)
@the_store
@click.argument("name")
@moment
def sheets(store: Path, name: str, at: str | None) -> HandedOut:
    """Note that the sheets of the instrument NAME were given out, as they would be printed now.

    When something else would be printed on one of them, `gramil now` says that it is stale.

    \b
    gramil store sheets shop.gramil Tarn
    """
    from gramil.acts.sheets import hand_out
    from gramil.change.in_store import figures_in_store, work_in_store
    from gramil.sheets.own_sheet import every_sheet
    from gramil.shop.instruments import instrument

    with open_store(store) as opened:
        owner = instrument(opened, name)
        sheets = every_sheet(figures_in_store(opened, owner), work_in_store(opened, owner))
        needed = [each for each in sheets if not each.setup.closed]
        given = hand_out(opened, owner, needed, Hand(moment_of(at)))
    for each in given:
        click.echo(f"Given: {each.title}.")
    return HandedOut(tuple(each.title for each in given))


@command.command(cls=InTheStore)
@the_store
@click.argument("jig")
@click.argument("constant")
@as_read_option
@moment
def jig(store: Path, jig: str, constant: str, as_read: bool, at: str | None) -> JigChecked:
    """Note that the JIG's constant was measured, and is CONSTANT now; a bare length is in the shop's unit.

    \b
    gramil store jig shop.gramil "taper sled" "62.5 mm"
    gramil store jig taper 62.5
    """
    from gramil.acts.tools import check_jig
    from gramil.bare_numbers import with_unit
    from gramil.cli.last_list import list_goes_on
    from gramil.cli.store_readings import ask_constant
    from gramil.measure import read_length
    from gramil.sheets.handed_out import stale_in_store
    from gramil.shop.instruments import instruments
    from gramil.store.items import item_named, items, shop_unit

    with open_store(store) as opened:
        jig = meant_name(jig, (each.name for each in items(opened, "jig")))
        found, unit = item_named(opened, "jig", jig), shop_unit(opened)
        length, written = read_length(constant, unit), with_unit(constant, "mm", unit)
        hand = hand_asked_for(opened, at, as_read)
        if not as_read:
            ask_constant(opened, found, length, written, unit)
        with list_goes_on(opened):
            check_jig(opened, found, length, hand)
        click.echo(f"{jig}: {written}, measured {hand.now:%Y-%m-%d}.")
        stale = [
            StaleAnswer(owner.name, each.given.title, each.given.at, each.why)
            for owner in instruments(opened, "open")
            for each in stale_in_store(opened, owner)
        ]
    for told in stale:
        click.echo(f"Stale: sheet {told.sheet} of {told.instrument}, {told.at[:10]}: {told.why}.")
    return JigChecked(jig, float(length), written, tuple(stale))


for _each in (
    anew,
    join,
    lay,
    mark,
    measured,
    not_done,
    operations,
    part,
    place,
    reading,
    return_to_revision,
    split,
    strike,
):
    command.add_command(_each)
for _name, _each in command.commands.items():
    answers_in_lines(_each, f"store {_name}")


def _gone_with(store: Path, copy: Path) -> tuple[Change, ...]:
    """The changes of a store, newest first, that a copy knows nothing of; none of a store that cannot be read."""
    from gramil.doorway.copies import gone_with

    if not store.exists():
        return ()
    try:
        with open_store(store, to_read=True) as opened:
            return gone_with(opened, copy)
    except MakersFault:  # a damaged store, or a copy that is no store: restoring says which
        return ()


def _filled(
    store: Store, shop: Path | None, files: tuple[Path, ...], now: datetime, as_read: bool
) -> tuple[JudgedFile, ...]:
    from gramil.acts.bringing_in import bring_in
    from gramil.cli.store_readings import asks

    named = files if shop is None else (shop, *files)
    if not named:
        return ()
    return judged_files(store, bring_in(store, named, Hand(now), asks=None if as_read else asks()))
