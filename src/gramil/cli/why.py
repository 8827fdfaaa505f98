"""`gramil why`: what a figure is, its formula with the numbers in it, its source, and what it follows from."""

from collections.abc import Iterator
from pathlib import Path

import click

from gramil.address import parse_address
from gramil.cli.briefly import briefly, more_of
from gramil.cli.options import address_meant, opened, shop_file
from gramil.graph import Figures
from gramil.reason import Reason, readable, walk, why
from gramil.show import Shower


@click.command()
@click.argument("name")
@click.argument("file", type=click.Path(path_type=Path))
@shop_file
@click.option("--down", is_flag=True, help="What hangs on it, instead of what it follows from.")
def command(name: str, file: Path, shop: Path | None, down: bool) -> None:
    """Why the figure NAME of the instrument in FILE is what it is.

    \b
    gramil why slot_depth_setting tarn.toml
    gramil why "fret_position[12]" tarn.toml
    gramil why board.thickness tarn.toml --down
    """
    figures, shower = opened(file, shop)
    address = address_meant(figures, name, "NAME")
    for line in _down(figures, shower, address) if down else _up(figures, shower, address):
        click.echo(line)


def _up(figures: Figures, shower: Shower, address: str) -> Iterator[str]:
    reason = why(figures, address, shower.text)
    yield click.style(f"{address} = {_both(shower, address)}", bold=True)
    yield from (f"  {line}" for line in (*reason.what.splitlines(), *more_of(shower, address)))
    if reason.pinned:
        yield f"  measured {reason.pinned}; drawn as {reason.drawn}"
    if reason.formula:
        yield f"  = {readable(reason.formula)}"
        if reason.numbers != reason.formula:
            yield f"  = {readable(reason.numbers)}"
    if reason.method:
        yield f"  how: {reason.method}"
    if reason.source or reason.origin:
        yield f"  from: {reason.origin or _source(reason.source)}"
    if reason.follows:
        yield "  follows from"
        for depth, step in walk(reason):
            if depth:
                yield _step(shower, depth, step)


def _step(shower: Shower, depth: int, step: Reason) -> str:
    told = f"[{step.origin}]" if step.origin else readable(step.formula)
    return f"  {'  ' * depth}{step.address} = {briefly(shower, step.address)}" + (f"   {told}" if told else "")


def _source(key: str) -> str:
    from gramil.sources import cited

    return cited(key)


def _down(figures: Figures, shower: Shower, address: str) -> Iterator[str]:
    name = parse_address(address)[0]
    below = figures.graph.below(name)
    yield click.style(
        f"{len(below)} {'figure hangs' if len(below) == 1 else 'figures hang'} on {name} = {briefly(shower, name)}",
        bold=True,
    )
    for each in figures.graph.order:
        if each in below:
            direct = "" if name in figures.graph.parameters(each) else "  (by way of others)"
            yield f"  {each}{direct}"


def _both(shower: Shower, address: str) -> str:
    other = shower.other(address)
    return briefly(shower, address) + (f"   ({other})" if other else "")
