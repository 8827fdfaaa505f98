"""`gramil dims`: every dimension, grouped by part, in the maker's unit with the other beside it."""

import itertools
from collections.abc import Iterator
from pathlib import Path

import click

from gramil.cli.json_option import json_option, write_answer
from gramil.cli.manners import aside
from gramil.cli.options import (
    as_made_option,
    drawn_beside,
    file_to_make,
    instrument_file,
    opened,
    shop_file,
    top_option,
    with_the_top,
)
from gramil.description.problems import did_you_mean, nearest
from gramil.formatter import Formatter, formatter_of
from gramil.graph import Figures
from gramil.in_shop_units import in_shop_units
from gramil.prints.listed import headings_of, on_this_instrument
from gramil.prints.whole import dimensions_of
from gramil.rows import Heading, Row, rows
from gramil.writers.tables import SEPARATORS, dimensions_csv

LONGEST = 160
"""Letters that a dimension is shown in; records of many figures are cut, and opened by --every."""


@click.command()
@instrument_file
@shop_file
@as_made_option
@click.option("--part", help="Only this part, such as slots.")
@click.option("--every", is_flag=True, help="Open up the figures by fret and by string, and lists of parts.")
@top_option
@json_option
@click.option("--csv", "as_csv", is_flag=True, help="As CSV, which spreadsheets open.")
@click.option(
    "--separator",
    type=click.Choice(tuple(SEPARATORS)),
    help="What parts the cells of the CSV; with ; numbers have a decimal comma.",
)
@file_to_make("--out", ending=".csv", what="The CSV file to write; a shell that changes what is piped cannot spoil it.")
def command(
    file: Path,
    shop: Path | None,
    made: bool,
    part: str | None,
    every: bool,
    with_top: bool,
    as_json: bool,
    as_csv: bool,
    separator: str | None,
    out: Path | None,
) -> None:
    """Every dimension of the instrument in FILE, grouped by part.

    \b
    gramil dims tarn.toml --shop shop.toml
    gramil dims tarn.toml --part slots --every
    gramil dims tarn.toml --made
    gramil dims tarn.toml --csv --out dims.csv
    gramil dims tarn.toml --csv --separator ";" --out dims.csv
    """
    if as_json and as_csv:
        raise click.UsageError("--json or --csv, not both")
    if (separator or out) and not as_csv:
        raise click.UsageError(f"{'--separator' if separator else '--out'} goes with --csv")
    figures = with_the_top(opened(file, shop, made)[0], with_top)
    formatter = formatter_of(figures)
    names = _chosen(figures, part)
    if as_json:
        from gramil.answers.answer import whose
        from gramil.answers.figures import dims_answer

        write_answer("dims", [whose(figures)], dims_answer(figures, formatter, names))
    elif as_csv:
        table = dimensions_csv(figures, formatter, names, separator or ",")
        if out is None:
            click.echo(table, nl=False)
        else:
            out.write_text(table, encoding="utf-8", newline="\n")
            aside(f"written: {out}")
    else:
        for line in listing(figures, formatter, names, every):
            click.echo(line)


def _chosen(figures: Figures, part: str | None) -> tuple[str, ...]:
    names = on_this_instrument(figures, dimensions_of(figures))
    if part is None:
        return names
    chosen = tuple(name for name in names if figures.graph.dimensions[name].part.replace("_", " ") == part.lower())
    if not chosen:
        parts = sorted({figures.graph.dimensions[name].part.replace("_", " ") for name in names})
        near = did_you_mean(nearest(part.lower(), parts))
        listed = f"{near}; " if near else ""
        raise click.BadParameter(f"no part {part!r}; {listed}the parts are {', '.join(parts)}", param_hint="--part")
    return chosen


def listing(figures: Figures, formatter: Formatter, names: tuple[str, ...], every: bool) -> Iterator[str]:
    """The lines of the listing, with a heading for each part."""
    found = sorted(headings_of(figures, names), key=lambda heading: heading.part)
    drawn = drawn_beside(figures)
    for part, group in itertools.groupby(found, key=lambda heading: heading.part):
        yield ""
        yield click.style(part.upper(), bold=True)
        for heading in group:
            yield from _lines(figures, formatter, heading, every, drawn)


def _lines(
    figures: Figures, formatter: Formatter, heading: Heading, every: bool, drawn: Formatter | None
) -> Iterator[str]:
    first, other = formatter.both(heading.name)
    yield _line(heading.name, first if len(first) <= LONGEST else f"{first[:LONGEST].rsplit(' ', 1)[0]} ...", other)
    yield from _as_drawn(heading.name, formatter, drawn)
    yield click.style(f"      {in_shop_units(heading.what.splitlines()[0], formatter.first)}", dim=True)
    if heading.remark:
        yield click.style(f"      {heading.remark}", dim=True)
    value = figures[heading.name]
    if every and isinstance(value, tuple):
        yield from (line for row in rows(figures, (heading.name,)) for line in _opened(row, heading.name, formatter))
    if every and getattr(value, "ndim", 0) == 1:
        lowest = 1 if heading.name in _by_string(figures) else 0
        for row in range(lowest, lowest + len(value)):
            address = f"{heading.name}[{row}]"
            yield _line(f"  [{row}]", *formatter.both(address))
            yield from _as_drawn(address, formatter, drawn)


def _opened(row: Row, name: str, formatter: Formatter) -> Iterator[str]:
    """One figure of a list of records, by the end of its address."""
    if row.address != name:
        yield _line(f"  {row.address.removeprefix(name)}", *formatter.both(row.address))


def _as_drawn(address: str, formatter: Formatter, drawn: Formatter | None) -> Iterator[str]:
    """The figure as drawn, if it differs as made."""
    if drawn is not None and drawn.text(address) != formatter.text(address):
        yield _line("", f"as drawn {drawn.text(address)}", "")


def _by_string(figures: Figures) -> frozenset[str]:
    from gramil.quantities import axes_of

    return frozenset(name for name, each in figures.graph.dimensions.items() if axes_of(each.annotation) == ("string",))


def _line(name: str, first: str, other: str) -> str:
    return f"  {name:<34} {first}" + (f"   ({other})" if other else "")
