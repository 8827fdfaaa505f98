"""`gramil store return`: an instrument's description as it was in an earlier revision, kept as the next one."""

from pathlib import Path

import click

from gramil.answers.record import Returned
from gramil.cli.left_unsaid import InTheStore, the_store
from gramil.cli.store_options import moment, moment_of
from gramil.store.opening import open_store
from gramil.store.writing import Hand


@click.command("return", cls=InTheStore)
@the_store
@click.argument("name")
@click.argument("revision", type=click.IntRange(min=1))
@moment
def return_to_revision(store: Path, name: str, revision: int, at: str | None) -> Returned:
    """Return the instrument NAME to an earlier REVISION, which is kept as the next one; those between stay.

    \b
    gramil store return shop.gramil Tarn 1
    """
    from gramil.acts.descriptions import return_to
    from gramil.cli.store_brought import spoilt
    from gramil.shop.instruments import instrument
    from gramil.shop.instruments import revision as revision_of

    with open_store(store) as opened:
        owner = return_to(opened, instrument(opened, name), revision, Hand(moment_of(at)))
        found, number = spoilt(opened, owner), revision_of(opened, owner.id).number
    for line in (f"{name}: as in revision {revision} again.", *found.lines):
        click.echo(line)
    return Returned(name, revision, number, found.made, found.not_judged)
