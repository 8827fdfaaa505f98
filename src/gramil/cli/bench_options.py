"""What `now` and `weeks` share: instruments from files or from a store, a shop, a moment, an outlook."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path
from typing import Any, TypeVar

import click

from gramil.air.outlooks import Spell
from gramil.cli.instrument_files import instrument_files
from gramil.cli.options import shop_file
from gramil.cli.store_options import moment, moment_of, refuse_two_shops, store_file
from gramil.description.problems import did_you_mean, nearest
from gramil.description.reading import ShopDescription, read_shop
from gramil.faults import MakersFault
from gramil.now.chances import ON_RECORD
from gramil.now.outlook import forecast, read_outlook, typed_outlook
from gramil.now.states import Bench, WorkedOut, bench_of_files, bench_of_store
from gramil.shop.instruments import Instrument
from gramil.shop.shop_in_store import shop_description
from gramil.store.opening import Store, open_store
from gramil.text_file import text_of

F = TypeVar("F", bound=Callable[..., Any])


def bench_options(command: F) -> F:
    """The arguments and options of a command that looks at the whole bench."""
    for option in (
        click.option("--outlook", multiple=True, metavar="WORDS", help='Air to come: "thu 42 %", "+2 20 C 44 %".'),
        click.option("--outlook-file", type=click.Path(path_type=Path), help="CSV: time,temperature,humidity."),
        click.option("--place", help="Place that the outlook is of; the one where gluing is done if not given."),
        moment,
        store_file,
        shop_file,
        instrument_files(),
    ):
        command = option(command)
    return command


@dataclass(frozen=True)
class BenchOptions:
    """What those options were given."""

    files: tuple[str, ...]
    shop: Path | None
    store: Path | None
    at: str | None
    outlook: tuple[str, ...]
    outlook_file: Path | None
    place: str | None


def bench_by_options(wanted: BenchOptions, record_days: float = ON_RECORD) -> Bench:
    """The bench that the options ask for. With a store, FILES are instruments' names.

    Of a store's readings, those of the last `record_days` are looked at.
    """
    refuse_two_shops(wanted.shop, wanted.store)
    if wanted.store is None and not wanted.files:
        raise click.UsageError("name the instruments' files, or a --store")
    now, place = moment_of(wanted.at), wanted.place
    by_clock = now.replace(tzinfo=None)
    spells = tuple(replace(each, said=by_clock) for each in _spells(wanted.outlook, wanted.outlook_file, by_clock))
    if wanted.store is not None:
        with open_store(wanted.store, to_read=True) as opened:
            said = _said(spells, place, shop_description(opened))
            return bench_of_store(opened, now, WorkedOut(_stale), wanted.files, said, record_days)
    paths = [Path(file) for file in wanted.files]
    return bench_of_files(paths, wanted.shop, now.replace(tzinfo=None), _said(spells, place, read_shop(wanted.shop)))


def _stale(store: Store, owner: Instrument) -> dict[str, str]:
    """The stale sheets of an instrument by name, and why each is."""
    from gramil.sheets.handed_out import by_name, stale_in_store

    return by_name(stale_in_store(store, owner))


def _said(spells: tuple[Spell, ...], place: str | None, described: ShopDescription) -> dict[str, tuple[Spell, ...]]:
    """The outlook by place; raises MakersFault for a place that the shop does not have."""
    if not spells and place is None:
        return {}
    shop = described.shop
    names = [each.name for each in shop.place]
    of = place or shop.glued_in
    if of not in names:
        has = f"the shop has {', '.join(names)}" if names else "the shop has no [[place]]"
        what = f'no place called "{of}" for an outlook' if of else "there is no place for an outlook"
        raise MakersFault.of(what, has, did_you_mean(nearest(of, names)))
    return {of: spells}


def _spells(written: tuple[str, ...], file: Path | None, now: datetime) -> tuple[Spell, ...]:
    typed = typed_outlook(written, now)
    if file is None:
        return typed
    read = forecast(read_outlook(text_of(file), file.name), now, file.name)
    return tuple(sorted((*typed, *read), key=_begins))


def _begins(spell: Spell) -> datetime:
    return spell.begins
