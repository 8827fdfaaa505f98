"""`gramil store anew`: a piece that is lost is begun anew: the work on it is open again."""

from pathlib import Path

import click

from gramil.answers.record import BegunAnew
from gramil.cli.as_read import as_read_option
from gramil.cli.left_unsaid import InTheStore, the_store
from gramil.cli.store_options import ask_order, hand_asked_for, moment
from gramil.store.opening import open_store


@click.command(cls=InTheStore)
@the_store
@click.argument("name")
@click.argument("piece")
@click.option("--keep", metavar="NAME", help="Keep the old piece in stock under this name, for another use.")
@click.option("--size", metavar="SIZES", help="What the old piece measures: length x width x thickness.")
@click.option("--wood", default="", help="What the old piece is made of, if the record does not say.")
@as_read_option
@moment
def anew(
    store: Path,
    name: str,
    piece: str,
    keep: str | None,
    size: str | None,
    wood: str,
    as_read: bool,
    at: str | None,
) -> BegunAnew:
    """Begin the PIECE of the instrument NAME anew: the board, the neck, the top and so on.

    The work that is done on it is open again, what was measured of it no longer counts, and `gramil match` asks for its
    wood again. The old piece is written off, or kept in stock with the sizes that it still has. It is one change, and
    `gramil store undo` takes it back.

    \b
    gramil store anew shop.gramil Tarn board
    gramil store anew shop.gramil Tarn board --keep "short board" --size "410 x 60 x 6.2"
    """
    from gramil.acts.work import begin_anew, pieces_used
    from gramil.change.days_in_order import before_it
    from gramil.change.made_in_store import work_on
    from gramil.change.made_rows import operations, pieces
    from gramil.shop.instruments import instrument
    from gramil.shop.stock import Blank
    from gramil.shop.written_sizes import read_sizes
    from gramil.store.items import shop_unit

    if (keep is None) != (size is None):
        raise click.UsageError("an old piece that is kept has a name and its sizes: --keep and --size")
    with open_store(store) as opened:
        owner = instrument(opened, name)
        kept = None if keep is None else Blank(keep, wood, *read_sizes(size or "", shop_unit(opened), "--size"))
        noted, hand = work_on(opened, owner.id, piece), hand_asked_for(opened, at, as_read)
        ask_order(before_it((each.at for each in noted), hand.now), as_read)
        gone = pieces_used(opened, owner, [each.operation for each in noted])
        works = begin_anew(opened, owner, piece, hand, kept=kept)
    told = ", ".join(operations()[each.operation].what for each in works)
    click.echo(f"{owner.name}: {pieces()[piece].is_} begun anew. Open again: {told}.")
    if gone:
        click.echo(f"Written off: {', '.join(each.name for each in gone)}.")
    click.echo("The old piece is written off." if keep is None else f"Kept in stock: {keep}.")
    return BegunAnew(piece, tuple(each.operation for each in works), tuple(each.name for each in gone), keep)
