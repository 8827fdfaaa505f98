"""`gramil why`: what a figure is, its formula with the numbers in it, its source, and what it follows from."""

from collections.abc import Iterator
from pathlib import Path

import click

from gramil.address import parse_address
from gramil.cli.briefly import briefly, more_of
from gramil.cli.json_option import json_option, write_answer
from gramil.cli.options import address_meant, opened, shop_file, with_the_top
from gramil.formatter import Formatter, formatter_of
from gramil.formula_words import formula_in_words
from gramil.graph import Figures
from gramil.prints.extrapolated import extrapolation_remark
from gramil.reason import Reason, numbers_in_words, walk, why

OF_THE_TOP = ("pulled_", "mode_", "shaving_", "braced_", "finding_top_", "setup_top_", "setup_voice_", "drawing_top_")
"""What the names of the solved top's figures start with."""
LEVELS = 2
"""How many levels of what a figure follows from are shown."""


@click.command()
@click.argument("name")
@click.argument("file", type=click.Path(path_type=Path))
@shop_file
@click.option("--down", is_flag=True, help="What hangs on it, instead of what it follows from.")
@json_option
@click.option("--deep", is_flag=True, help="All the way, not two levels alone.")
def command(name: str, file: Path, shop: Path | None, as_json: bool, down: bool, deep: bool) -> None:
    """Why the figure NAME of the instrument in FILE is what it is.

    \b
    gramil why slot_depth_setting tarn.toml
    gramil why "fret_position[12]" tarn.toml
    gramil why board.thickness tarn.toml --down
    """
    figures = _asked_of(opened(file, shop)[0], name)
    formatter = formatter_of(figures)
    address = address_meant(figures, name, "NAME")
    if as_json:
        _as_answer(figures, formatter, address, down, deep)
        return
    for line in _down(figures, formatter, address, deep) if down else _up(figures, formatter, address, deep):
        click.echo(line)


def _asked_of(figures: Figures, name: str) -> Figures:
    """The figures, with the solved top's among them if the name is one of those: only then it is worked out."""
    stem = name.partition("[")[0].partition(".")[0]
    if name.replace(".", "_") in figures or stem in figures or not stem.startswith(OF_THE_TOP):
        return figures
    return with_the_top(figures)


def _as_answer(figures: Figures, formatter: Formatter, address: str, down: bool, deep: bool) -> None:
    """The same as JSON; a figure's hangers are all of them."""
    from gramil.answers.answer import whose
    from gramil.answers.figures import hangs_answer, why_answer

    if down:
        name, graph = parse_address(address)[0], figures.graph
        below = graph.hung_from([name]) - {name}
        answer = hangs_answer(address, (each for each in graph.order if each in below))
    else:
        reason = why(figures, address, formatter.text)
        answer = why_answer(reason, formatter, (step for depth, step in walk(reason) if deep or depth <= LEVELS))
    write_answer("why", [whose(figures)], answer)


def _up(figures: Figures, formatter: Formatter, address: str, deep: bool) -> Iterator[str]:
    reason = why(figures, address, formatter.text).said_in(formatter.first)
    yield click.style(f"{address} = {_both(formatter, address)}", bold=True)
    yield from (f"  {line}" for line in (*reason.what.splitlines(), *more_of(formatter, address)))
    if remark := extrapolation_remark(figures, parse_address(address)[0]):
        yield f"  {remark}"
    if reason.pinned:
        yield f"  measured {reason.pinned}; drawn as {reason.drawn}"
    if formula := formula_in_words(reason.formula):
        yield f"  = {formula}"
        if numbers := numbers_in_words(reason, figures, formatter.text):
            yield f"  = {numbers}"
    if reason.method:
        yield f"  how: {reason.method}"
    if reason.source or reason.origin:
        yield f"  from: {formatter.origin(address) or _source(reason.source)}"
    if reason.follows:
        yield "  follows from"
        steps = [(depth, step) for depth, step in walk(reason) if depth]
        shown = [each for each in steps if deep or each[0] <= LEVELS]
        yield from (_step(formatter, depth, step) for depth, step in shown)
        if len(steps) > len(shown):
            yield f"  and {len(steps) - len(shown)} more further up: --deep shows them"


def _step(formatter: Formatter, depth: int, step: Reason) -> str:
    said = f"[{formatter.origin(step.address)}]" if step.origin else formula_in_words(step.formula)
    return f"  {'  ' * depth}{step.address} = {briefly(formatter, step.address)}" + (f"   {said}" if said else "")


def _source(key: str) -> str:
    from gramil.sources import cited

    return cited(key)


def _down(figures: Figures, formatter: Formatter, address: str, deep: bool) -> Iterator[str]:
    """What uses it directly and what shows it, then what depends on it indirectly, listed or counted."""
    name, graph = parse_address(address)[0], figures.graph
    below = graph.hung_from([name]) - {name}
    yield click.style(
        f"{len(below)} {'figure hangs' if len(below) == 1 else 'figures hang'} on {name} = {briefly(formatter, name)}",
        bold=True,
    )
    first = {**dict.fromkeys(graph.shown_on[name], "  (shown on it)"), **dict.fromkeys(graph.followers[name], "")}
    for each in graph.order:
        if each in first or (deep and each in below):
            yield f"  {each}{first.get(each, '  (by way of others)')}"
    if not deep and len(below) > len(first):
        yield f"  and {len(below) - len(first)} more by way of others: --deep shows them"


def _both(formatter: Formatter, address: str) -> str:
    other = formatter.other(address)
    return briefly(formatter, address) + (f"   ({other})" if other else "")
