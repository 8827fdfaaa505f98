"""`gramil check`: the findings, gravest first, each with its limit, where that comes from, and what would mend it."""

import sys
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import click

from gramil.cli.json_option import json_option, told
from gramil.cli.options import as_made_option, instrument_file, opened, shop_file, top_option, with_the_top
from gramil.cli.store_options import refuse_two_shops, store_file
from gramil.cli.verdicts import verdicts
from gramil.formatter import Formatter, formatter_of
from gramil.graph import Figures
from gramil.prints.whole import findings_of

if TYPE_CHECKING:
    from gramil.change.made import Judged


@click.command()
@instrument_file
@shop_file
@store_file
@as_made_option
@click.option("--fine", is_flag=True, help="List what was found fine as well.")
@top_option
@json_option
def command(
    file: Path, shop: Path | None, store: Path | None, made: bool, fine: bool, with_top: bool, as_json: bool
) -> None:
    """Whether the instrument in FILE can be made with what the shop has. Exit status 1 if anything stops it.

    With a store, FILE is an instrument's name, and the figures are as made. What is made already is judged too: what is
    lost is a stop.

    \b
    gramil check tarn.toml --shop shop.toml
    gramil check Tarn --store shop.gramil
    gramil check tarn.toml --fine
    """
    refuse_two_shops(shop, store)
    figures, judged, number = _from_files(file, shop, made) if store is None else _kept(store, str(file))
    figures = with_the_top(figures, with_top)
    findings, formatter = findings_of(figures), formatter_of(figures)
    if as_json:
        from gramil.answers.answer import whose
        from gramil.answers.verdicts import check_told

        told("check", [whose(figures, number)], check_told(findings, formatter, judged))
    else:
        for line in (*made_verdicts(judged, formatter), *verdicts(findings, formatter, fine)):
            click.echo(line)
    sys.exit(any(each.severity == "stop" for each in findings) or any(each.standing == "lost" for each in judged))


def _from_files(file: Path, shop: Path | None, made: bool) -> tuple[Figures, "tuple[Judged, ...]", None]:
    """The figures of an instrument in a file, as made or as drawn; a verdict on the finished work by what was
    measured; and no number of a revision.
    """
    figures, _ = opened(file, shop, made)
    if not made:
        return figures, (), None
    from gramil.change.made import judge  # what it takes to judge finished work is not loaded where there is none
    from gramil.shop.made_file import made_beside, read_made

    return figures, judge(dict.fromkeys(read_made(made_beside(file)).operations, figures), figures), None


def _kept(store: Path, name: str) -> tuple[Figures, "tuple[Judged, ...]", int]:
    """An instrument of the store, in its shop and its air, by what was measured; a verdict on the finished work; and
    the number of its revision.
    """
    from gramil.change.in_store import figures_in_store
    from gramil.change.made_in_store import standing_in_store
    from gramil.shop.instruments import instrument, revision
    from gramil.store.opening import open_store

    with open_store(store, to_read=True) as record:
        owner = instrument(record, name)
        number = revision(record, owner.id).number
        return figures_in_store(record, owner), standing_in_store(record, owner), number


def made_verdicts(judged: "tuple[Judged, ...]", formatter: Formatter) -> Iterator[str]:
    """Finished work that is no longer right, one line each."""
    if not judged:
        return
    from gramil.change.made_words import lines as made_lines

    for each, line in made_lines(judged, formatter.first):
        yield click.style(f"{each.standing.upper():<10}", bold=True) + f" {line}."
