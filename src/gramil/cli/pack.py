"""`gramil pack`: drawings, templates, set-up sheets and tables, whole or not at all."""

import sys
from collections.abc import Sequence
from pathlib import Path

import click

from gramil import names as n
from gramil.cli.options import as_made, instrument_file, opened_with_work, paper, shop_file
from gramil.faults import MakersFault
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.pack import chosen_makers, pack_makers, whole_pack
from gramil.shop.operations import Work
from gramil.writers.files import write_files
from gramil.writers.paper import checked


@click.command()
@instrument_file
@shop_file
@as_made
@click.option("--out", type=click.Path(path_type=Path), required=True, help="Folder to write into.")
@paper("--paper", "Paper for the templates")
@paper("--sheets-on", "Paper for sheets and book")
@click.option("--printer-scale", metavar="X,Y", help="What a 100 mm bar measures on your print, over 100: 0.998,1.003.")
@click.option(
    "--just", multiple=True, metavar="NAME", help="Just this template or sheet (mould, slot); as often as wanted."
)
@click.option("--overwrite", is_flag=True, help="Replace files in the folder that were not written by gramil.")
def command(
    file: Path,
    shop: Path | None,
    made: bool,
    out: Path,
    paper: str | None,
    sheets_on: str | None,
    printer_scale: str | None,
    just: tuple[str, ...],
    overwrite: bool,
) -> None:
    """Write the pack of the instrument in FILE: everything that goes to the bench.

    \b
    gramil pack tarn.toml --shop shop.toml --out out
    gramil pack tarn.toml --shop shop.toml --out out --paper letter --printer-scale 0.998,1.003
    gramil pack tarn.toml --shop shop.toml --out today --just mould --just sides --just brace-top
    """
    figures, formatter, work = opened_with_work(file, shop, made)
    scale = _scale(printer_scale)
    sheet = paper or figures[n.shop_paper]
    for line in write_pack(figures, formatter, work, out, sheet, scale, overwrite, sheets_on or "", just):
        click.echo(line)


def write_pack(
    figures: Figures,
    formatter: Formatter,
    work: Work,
    out: Path,
    paper: str,
    printer_scale: tuple[float, float] = (1.0, 1.0),
    overwrite: bool = False,
    sheets_on: str = "",
    just: Sequence[str] = (),
) -> list[str]:
    """Make every file, then write them all; a line for each, with its size. Raises MakersFault for a bad place.

    With `just` the templates and sheets of those names alone are made, and put beside what an earlier pack left there.
    """
    if out.is_file():
        raise MakersFault.of(f"{out} is a file", remedy="name a folder to write into")
    makers = (
        chosen_makers(figures, formatter, work, just, paper, printer_scale, sheets_on)
        if just
        else pack_makers(figures, formatter, work, paper, printer_scale, sheets_on)
    )
    watched = click.progressbar(
        whole_pack(makers), len(makers), "Making the pack", item_show_func=_name, hidden=not _watched()
    )
    with watched as bar:
        pack = dict(bar)
    write_files(out, pack, overwrite, beside=bool(just))
    return [f"{out / name}  {len(content) / 1000:.0f} kB" for name, content in pack.items()]


def _name(item: tuple[str, bytes] | None) -> str:
    return item[0] if item else ""


def _watched() -> bool:
    return sys.stderr.isatty() and sys.stdout.isatty()


def _scale(written: str | None) -> tuple[float, float]:
    if written is None:
        return (1.0, 1.0)
    try:
        x, y = (float(part) for part in written.split(","))
    except ValueError:
        raise click.BadParameter(
            f"{written!r} is not two numbers such as 0.998,1.003", param_hint="--printer-scale"
        ) from None
    return checked((x, y))
