"""`gramil store operations`: a maker's own list of operations in the store, kept, printed or taken away."""

from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

import click

from gramil.change.in_store import figures_in_store
from gramil.cli.reading import text_of
from gramil.cli.store_options import moment, moment_of
from gramil.faults import Fault, MakersFault
from gramil.prints.own_addresses import refuse, wrong_addresses
from gramil.shop.instruments import instrument
from gramil.shop.opening import Store, open_store
from gramil.shop.operations_file import list_beside
from gramil.shop.own_operations import own_operations, remove_own_operations, save_own_operations

PATH = click.Path(path_type=Path)


@click.command()
@click.argument("store", type=PATH)
@click.argument("file", type=PATH, required=False)
@click.option("--for", "name", help="The instrument that the list is of; the whole shop's if not given.")
@click.option("--remove", is_flag=True, help="Take the list away.")
@moment
def operations(store: Path, file: Path | None, name: str | None, remove: bool, at: str | None) -> None:
    """Keep the list of own operations in FILE, in the place of the one there was; without FILE, print what is kept.

    \b
    gramil store operations shop.gramil own.toml
    gramil store operations shop.gramil inlay.toml --for Tarn
    gramil store operations shop.gramil --for Tarn
    """
    if file is not None and remove:
        raise click.UsageError("a list is kept or taken away, not both")
    with open_store(store, to_read=file is None and not remove) as opened:
        if file is not None:
            said = kept(opened, file, name, moment_of(at))
        else:
            said = _taken_away(opened, name, moment_of(at)) if remove else _text(opened, name)
    click.echo(said)


def kept(store: Store, file: Path, name: str | None, now: datetime) -> str:
    """Keeps the list in a file as that of an instrument, or of the shop. Raises MakersFault for a wrong list."""
    owner = None if name is None else instrument(store, name)
    seen, text = own_operations(store, owner), text_of(file)
    if not text.strip():
        remedy = "write [operation.NAME], or take the list away with --remove"
        raise MakersFault([Fault(what="is empty", remedy=remedy, file=file.name)])
    refuse(wrong_addresses((file.name, text), None if owner is None else figures_in_store(store, owner)))
    save_own_operations(store, text, now, owner=owner, seen=seen, file=file.name)
    return f"{file.name}: kept as the operations of {name or 'the shop'}."


def kept_beside(store: Store, description: Path, name: str | None, now: datetime) -> Iterator[str]:
    """The list that lies beside a description, kept with it."""
    own = list_beside(description)
    if own.exists():
        yield kept(store, own, name, now)


def _text(store: Store, name: str | None) -> str:
    found = own_operations(store, None if name is None else instrument(store, name))
    if found is None:
        raise _none(name)
    return found.text.rstrip("\n")


def _taken_away(store: Store, name: str | None, now: datetime) -> str:
    found = own_operations(store, None if name is None else instrument(store, name))
    if found is None:
        raise _none(name)
    remove_own_operations(store, found, now)
    return f"Taken away: the operations of {name or 'the shop'}."


def _none(name: str | None) -> MakersFault:
    return MakersFault.of(f"{name or 'the shop'} has no operations of its own", remedy="name a file that holds some")
