"""`gramil sheet`: the set-up sheet of one operation, by what is drawn or by what is made."""

from collections.abc import Iterator
from datetime import datetime
from pathlib import Path
from typing import get_args

import click

from gramil import names as n
from gramil.cli.bench_options import moment, moment_of, refuse_two_shops, store_file
from gramil.cli.options import as_made, file_to_make, opened, shop_file
from gramil.description.problems import meant, nearest
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.setups.setup import Setup
from gramil.sheets.own_sheet import every_sheet
from gramil.shop.opening import Store, open_store
from gramil.shop.operations import Work
from gramil.shop.operations_file import lists_beside, work_with
from gramil.show import shower_of
from gramil.writers.paper import PaperName


@click.command()
@click.argument("operation")
@click.argument("file")
@shop_file
@store_file
@as_made
@moment
@file_to_make("--out", ending=".pdf", what="The PDF to write.", required=True)
@click.option("--paper", type=click.Choice(get_args(PaperName)), help="Paper; the shop's own if not given.")
def command(
    operation: str,
    file: str,
    shop: Path | None,
    store: Path | None,
    made: bool,
    at: str | None,
    out: Path,
    paper: PaperName | None,
) -> None:
    """The sheet of OPERATION on the instrument in FILE. With a store, FILE is an instrument's name, the figures are
    as made, and the sheet counts as given out: when a tool on it changes, `gramil now` says that it is stale.

    \b
    gramil sheet slotted tarn.toml --shop shop.toml --out slot.pdf
    gramil sheet slotted Tarn --store shop.gramil --out slot.pdf
    """
    refuse_two_shops(shop, store)
    if store is None:
        figures, _ = opened(Path(file), shop, made)
        setup = _setup(figures, operation, work_with(lists_beside(shop, Path(file))))
        lines = list(_written(setup, figures, out, paper))
    else:
        with open_store(store) as record:
            lines = list(_given(record, file, operation, out, paper, moment_of(at)))
    for line in lines:
        click.echo(line)


def _written(setup: Setup, figures: Figures, out: Path, paper: PaperName | None) -> Iterator[str]:
    """The sheet as a file."""
    from gramil.pack import pictures_of, title_of
    from gramil.sheets.bench_sheets import bench_sheets_pdf

    shower = shower_of(figures)
    if setup.closed:
        raise MakersFault.of(f"{setup.title}: this instrument does not need it", shower.filled(setup.closed))
    pictures = pictures_of(figures, shower, [setup])
    sheet = paper if paper is not None else figures[n.shop_paper]
    out.write_bytes(bench_sheets_pdf([setup], shower, pictures, title_of(figures, shower), sheet))
    yield f"{setup.title}: {out}"


def _setup(figures: Figures, operation: str, whole: Work) -> Setup:
    """The set-up of an operation, or of that name. Raises MakersFault where there is no sheet."""
    work = whole.operations
    name = (work[operation].sheet or operation) if operation in work else operation
    setups = {setup.name: setup for setup in every_sheet(figures, whole)}
    if name not in setups:
        if operation in work:
            raise MakersFault.of(f"there is no sheet for {operation}", "it has no figures on this instrument")
        near = nearest(operation, [*work, *setups])
        raise MakersFault.of(
            f"there is no sheet for {operation}", remedy=meant(near) or "see the work that gramil now --every lists"
        )
    return setups[name]


def _given(store: Store, name: str, operation: str, out: Path, paper: PaperName | None, now: datetime) -> Iterator[str]:
    """The sheet as a file, noted as given out with the tools' settings on it."""
    from gramil.change.in_store import figures_in_store
    from gramil.change.made_in_store import standing_in_store
    from gramil.now.lost_work import hangs_on
    from gramil.now.sheet_settings import settings_on
    from gramil.shop.instruments import instrument, revision
    from gramil.shop.operations_done import operations_done
    from gramil.shop.own_operations import work_of
    from gramil.shop.sheets_given import give_sheet

    owner = instrument(store, name)
    latest = revision(store, owner.id)
    figures = figures_in_store(store, owner)
    setup = _setup(figures, operation, work_of(store, owner.id))
    yield from _written(setup, figures, out, paper)
    settings = settings_on(setup, figures, store)
    give_sheet(store, owner.id, latest.number, setup.name, settings, now)
    yield f"Noted as given out, with {len(settings)} settings of tools."
    done = {each.operation: each for each in operations_done(store, owner.id)}
    work, judged = work_of(store, owner.id), standing_in_store(store, owner)
    yield from filter(None, [hangs_on(operation, work, done, judged, shower_of(figures).first)])
