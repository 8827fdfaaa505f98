"""`gramil book`: the build book, the whole instrument on paper."""

from pathlib import Path

import click

from gramil.cli.json_option import json_option, write_answer
from gramil.cli.options import (
    file_to_make,
    instrument_file,
    opened_with_work,
    paper,
    shop_file,
    top_option,
    with_the_top,
)
from gramil.formatter import formatter_of
from gramil.pack import build_book, sheet_paper


@click.command()
@instrument_file
@shop_file
@file_to_make("--out", ending=".pdf", what="PDF file to write.", required=True)
@paper("--paper", "Paper")
@top_option
@json_option
@click.option("--overwrite", is_flag=True, help="Replace a file that is there.")
def command(
    file: Path, shop: Path | None, out: Path, paper: str | None, with_top: bool, as_json: bool, overwrite: bool
) -> None:
    """Write the build book of the instrument in FILE: title page, findings, cut lists, dimensions and every sheet.

    \b
    gramil book tarn.toml --shop shop.toml --out tarn.pdf
    """
    if out.exists() and not overwrite:
        raise click.BadParameter(f"{out} is there already; name a new file, or say --overwrite", param_hint="--out")
    figures, _, work = opened_with_work(file, shop)
    figures = with_the_top(figures, with_top)
    formatter = formatter_of(figures)
    made = build_book(figures, formatter, work, paper or sheet_paper(figures))
    out.write_bytes(made)
    if as_json:
        from gramil.answers.acts import FileAnswer, Packed
        from gramil.answers.answer import whose

        write_answer("book", [whose(figures)], Packed((FileAnswer(str(out), len(made)),), ()))
    else:
        click.echo(f"{out}")
