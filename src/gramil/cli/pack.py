"""`gramil pack`: drawings, templates, set-up sheets and tables, whole or not at all."""

import sys
from collections.abc import Callable, Mapping
from pathlib import Path

import click

from gramil import names as n
from gramil.cli.json_option import json_option, write_answer
from gramil.cli.options import (
    as_made_option,
    instrument_file,
    opened_with_work,
    paper,
    shop_file,
    top_option,
    with_the_top,
)
from gramil.cli.store_options import moment, moment_of
from gramil.faults import MakersFault
from gramil.formatter import formatter_of
from gramil.measure import LengthUnit
from gramil.pack import pack_makers, whole_pack
from gramil.print_choice import Choices, PrintChoice, choices, chosen_makers
from gramil.writers.files import Written, write_files
from gramil.writers.paper import checked, read_scale


@click.command()
@instrument_file
@shop_file
@as_made_option
@click.option("--out", type=click.Path(path_type=Path), required=True, help="Folder to write into.")
@paper("--paper", "Paper for the templates")
@paper("--sheets-on", "Paper for sheets and book")
@click.option(
    "--printer-scale",
    metavar="X,Y",
    help="What the bar measures on your print over what it should (0.998,1.003), or its length (3.992 in,4.012 in).",
)
@click.option(
    "--just",
    multiple=True,
    metavar="NAME",
    help="Just this template, sheet or operation (mould, slot, slotted); as often as wanted.",
)
@click.option(
    "--part", multiple=True, metavar="PART", help="Just what is for this part (board, top); as often as wanted."
)
@click.option("--today", is_flag=True, help="Just the sheets of what is open now, by NAME.made.toml beside the file.")
@moment
@top_option
@click.option("--overwrite", is_flag=True, help="Replace files in the folder that were not written by gramil.")
@json_option
def command(
    file: Path,
    shop: Path | None,
    made: bool,
    out: Path,
    paper: str | None,
    sheets_on: str | None,
    printer_scale: str | None,
    just: tuple[str, ...],
    part: tuple[str, ...],
    today: bool,
    at: str | None,
    with_top: bool,
    overwrite: bool,
    as_json: bool,
) -> None:
    """Write the pack of the instrument in FILE: everything that goes to the bench.

    The files lie in folders by what is done with them (cut, print, read), and contents.html shows what there is. With
    --just, --part or --today only what is asked for is printed, into one PDF for each paper.

    \b
    gramil pack tarn.toml --shop shop.toml --out out
    gramil pack tarn.toml --shop shop.toml --out out --paper letter --printer-scale 0.998,1.003
    gramil pack tarn.toml --shop shop.toml --out today --just mould --just sides --just brace-top
    gramil pack tarn.toml --shop shop.toml --out today --today --part bridge
    """
    figures, formatter, work = opened_with_work(file, shop, made)
    figures = with_the_top(figures, with_top)
    formatter = formatter_of(figures)
    scale = _scale(printer_scale, formatter.first)
    sheet = paper or figures[n.shop_paper]
    if just or part or today:
        known = choices(figures, formatter, work)
        chosen = known.named(just) | known.of_parts(part)
        if today:
            chosen |= _of_today(known, file, shop, at)
        makers = chosen_makers(formatter, known, chosen, sheet, scale, sheets_on or "")
        beside = True
    else:
        makers, beside = pack_makers(figures, formatter, work, sheet, scale, sheets_on or ""), False
    pack, done = written_pack(makers, out, overwrite, beside)
    if as_json:
        from gramil.answers.acts import packed
        from gramil.answers.answer import whose

        write_answer("pack", [whose(figures)], packed(out.as_posix(), pack, done.left, done.removed))
        return
    for line in pack_lines(out, pack, done):
        click.echo(line)


def write_pack(makers: Mapping[str, Callable[[], bytes]], out: Path, beside: bool = False) -> list[str]:
    """Make every file, then write them all; a line for each, with its size. Raises MakersFault for a bad place."""
    return pack_lines(out, *written_pack(makers, out, beside=beside))


def written_pack(
    makers: Mapping[str, Callable[[], bytes]], out: Path, overwrite: bool = False, beside: bool = False
) -> tuple[dict[str, bytes], Written]:
    """Make every file, then write them all: the files, and what happened in the folder.

    With `beside` what an earlier pack left there stays. A file of an earlier pack that was changed since is left.
    Raises MakersFault for a bad place.
    """
    if out.is_file():
        raise MakersFault.of(f"{out} is a file", remedy="name a folder to write into")
    watched = click.progressbar(
        whole_pack(makers), len(makers), "Making the pack", item_show_func=_name, hidden=not _watched()
    )
    with watched as bar:
        pack = dict(bar)
    done = write_files(out, pack, overwrite, beside)
    return pack, done


def pack_lines(out: Path, pack: Mapping[str, bytes], done: Written) -> list[str]:
    """A line for each file written, with its size, and for each of an earlier pack that was removed or left."""
    gone = [f"{out / name}  removed: no longer made" for name in done.removed]
    stayed = [f"{out / name}  left as it is: no longer made, and changed since it was written" for name in done.left]
    return [*(f"{out / name}  {len(content) / 1000:.0f} kB" for name, content in pack.items()), *gone, *stayed]


def _of_today(known: Choices, file: Path, shop: Path | None, at: str | None) -> PrintChoice:
    """The sheets of the operations that are open at a moment. Raises MakersFault if none of them has a sheet."""
    from gramil.now.open_now import open_now
    from gramil.now.states import bench_of_files

    bench = bench_of_files([file], shop, moment_of(at).replace(tzinfo=None))
    (one,) = open_now(bench.instruments, bench.shop)
    chosen = known.of_operations([each.operation.name for each in one.open])
    if not chosen.sheets:
        raise MakersFault.of("nothing that is open now has a sheet", remedy="see what gramil now says")
    return chosen


def _name(item: tuple[str, bytes] | None) -> str:
    return item[0] if item else ""


def _watched() -> bool:
    return sys.stderr.isatty() and sys.stdout.isatty()


def _scale(written: str | None, unit: LengthUnit) -> tuple[float, float]:
    if written is None:
        return (1.0, 1.0)
    try:
        x, y = written.split(",")
    except ValueError:
        raise click.BadParameter(
            f"{written!r} is not two numbers such as 0.998,1.003", param_hint="--printer-scale"
        ) from None
    return checked((read_scale(x.strip(), unit), read_scale(y.strip(), unit)))
