"""`gramil demo`: the bundled instruments' packs, and a short summary of the first."""

import time
from importlib.resources import as_file, files
from pathlib import Path

import click

from gramil import names as n
from gramil.cli.options import opened_with_work
from gramil.cli.pack import write_pack
from gramil.cli.verdicts import verdicts
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.pack import pack_makers
from gramil.prints.whole import findings_of
from gramil.reference import EACH, in_row

INSTRUMENTS = ("tarn", "fell", "scree", "mere", "corrie")
GLANCE = (
    ("scale", n.scale_bass),
    ("last fret from the zero line", n.fret_position[EACH]),
    ("board, nut to tail", n.board_length),
    ("width at the nut", n.nut_width),
    ("width at the tail", n.board_width_at_tail),
    ("half taper", n.board_half_taper_angle),
    ("radius at the nut", n.arch_radius_at_fret[0]),
    ("radius at the last fret", n.arch_radius_at_fret[EACH]),
    ("saw set to", n.slot_depth_setting),
    ("least wood under a slot", n.slot_left_least),
    ("blank", n.blank_length),
)
"""The board at a glance: words and addresses."""


@click.command()
@click.option("--out", type=click.Path(path_type=Path), default="out", show_default=True, help="Folder to write into.")
@click.option("--all", "every", is_flag=True, help="All bundled instruments, not the first alone.")
def command(out: Path, every: bool) -> None:
    """Build the bundled instrument's pack, and say in short what it holds.

    \b
    gramil demo --out out
    gramil demo --out out --all
    """
    with as_file(files("gramil") / "data" / "examples") as examples:
        for name in INSTRUMENTS if every else INSTRUMENTS[:1]:
            _build(name, examples, out / name)


def _build(name: str, examples: Path, out: Path) -> None:
    started = time.perf_counter()
    figures, formatter, work = opened_with_work(examples / f"{name}.toml", examples / "shop.toml")
    written = write_pack(pack_makers(figures, formatter, work, figures[n.shop_paper]), out)
    took = time.perf_counter() - started
    _glance(figures, formatter)
    click.echo("")
    for line in verdicts(findings_of(figures), formatter, fine=False):
        click.echo(line)
    click.echo(f"\n{len(written)} files in {took:.1f} s:")
    for line in written:
        click.echo(f"  {line}")


def _glance(figures: Figures, formatter: Formatter) -> None:
    click.echo(click.style(f"\n{figures[n.instrument_name]}: the board at a glance", bold=True))
    last = len(figures[n.fret_position]) - 1
    for words, figure in GLANCE:
        first, other = formatter.both(in_row(figure, last) if EACH in figure.address else figure)
        click.echo(f"  {words:<30} {first}" + (f"   ({other})" if other else ""))
    click.echo(f"  {'shop':<30} {figures[n.shop_name]} (invented for this demonstration)")
