"""`gramil store anew`: a piece that is lost is begun anew: the work on it is open again."""

from pathlib import Path

import click

from gramil.cli.store_options import moment, moment_of
from gramil.store.opening import open_store
from gramil.store.writing import Hand


@click.command()
@click.argument("store", type=click.Path(path_type=Path))
@click.argument("name")
@click.argument("piece")
@moment
def anew(store: Path, name: str, piece: str, at: str | None) -> None:
    """Begin the PIECE of the instrument NAME anew: the board, the neck, the top and so on.

    The work that is done on it is open again, and what was measured of it counts no more; wood that was used up stays
    used. It is one change, and `gramil store undo` takes it back.

    \b
    gramil store anew shop.gramil Tarn board
    """
    from gramil.acts.work import begin_anew
    from gramil.change.made_rows import operations, pieces
    from gramil.shop.instruments import instrument

    with open_store(store) as opened:
        works = begin_anew(opened, instrument(opened, name), piece, Hand(moment_of(at)))
    told = ", ".join(operations()[each.operation].what for each in works)
    click.echo(f"{name}: {pieces()[piece].what} is begun anew. Open again: {told}.")
