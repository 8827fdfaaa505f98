"""`gramil store operations`: a maker's own list of operations in the store, kept, printed or taken away."""

from datetime import datetime
from pathlib import Path

import click

from gramil.answers.record import OwnList
from gramil.cli.store_options import moment, moment_of
from gramil.faults import MakersFault
from gramil.shop.instruments import instrument
from gramil.shop.own_operations import own_operations
from gramil.store.opening import Store, open_store
from gramil.store.writing import Hand

PATH = click.Path(path_type=Path)


@click.command()
@click.argument("store", type=PATH)
@click.argument("file", type=PATH, required=False)
@click.option("--for", "name", help="The instrument that the list is of; the whole shop's if not given.")
@click.option("--remove", is_flag=True, help="Take the list away.")
@moment
def operations(store: Path, file: Path | None, name: str | None, remove: bool, at: str | None) -> OwnList:
    """Keep the list of own operations in FILE, in the place of the one there was; without FILE, print what is kept.

    \b
    gramil store operations shop.gramil own.toml
    gramil store operations shop.gramil inlay.toml --for Tarn
    gramil store operations shop.gramil --for Tarn
    """
    from gramil.acts.bringing_in import bring_in_list
    from gramil.cli.store_brought import kept_words

    if file is not None and remove:
        raise click.UsageError("a list is kept or taken away, not both")
    with open_store(store, to_read=file is None and not remove) as opened:
        if file is not None:
            said = kept_words(bring_in_list(opened, file, name, Hand(moment_of(at))))
        else:
            said = _taken_away(opened, name, moment_of(at)) if remove else _text(opened, name)
        kept = None if remove else _text(opened, name)
    click.echo(said)
    return OwnList(name or "", kept)


def _text(store: Store, name: str | None) -> str:
    found = own_operations(store, None if name is None else instrument(store, name))
    if found is None:
        raise _none(name)
    return found.text.rstrip("\n")


def _taken_away(store: Store, name: str | None, now: datetime) -> str:
    from gramil.acts.own_operations import take_list_away

    found = own_operations(store, None if name is None else instrument(store, name))
    if found is None:
        raise _none(name)
    take_list_away(store, found, Hand(now))
    return f"Taken away: the operations of {name or 'the shop'}."


def _none(name: str | None) -> MakersFault:
    return MakersFault.of(f"{name or 'the shop'} has no operations of its own", remedy="name a file that holds some")
