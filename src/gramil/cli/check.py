"""`gramil check`: the findings, gravest first, each with its limit, where that comes from, and what would mend it."""

import sys
from collections.abc import Iterable, Iterator
from pathlib import Path

import click

from gramil.cli.bench_options import refuse_two_shops, store_file
from gramil.cli.options import as_made, instrument_file, opened, shop_file
from gramil.findings.finding import SEVERITIES, Finding, InWords, in_words
from gramil.graph import Figures
from gramil.prints.whole import findings_of
from gramil.show import Shower, shower_of
from gramil.writers.tables import findings_json, limit_origin


@click.command()
@instrument_file
@shop_file
@store_file
@as_made
@click.option("--fine", is_flag=True, help="List what was found fine as well.")
@click.option("--json", "as_json", is_flag=True, help="As JSON.")
def command(file: Path, shop: Path | None, store: Path | None, made: bool, fine: bool, as_json: bool) -> None:
    """Whether the instrument in FILE can be made with what the shop has. Exit status 1 if anything stops it.

    With a store, FILE is an instrument's name, and the figures are as made.

    \b
    gramil check tarn.toml --shop shop.toml
    gramil check Tarn --store shop.gramil
    gramil check tarn.toml --fine
    """
    refuse_two_shops(shop, store)
    figures, shower = opened(file, shop, made) if store is None else _kept(store, str(file))
    findings = findings_of(figures)
    if as_json:
        click.echo(findings_json(findings, shower), nl=False)
    else:
        for line in verdicts(findings, shower, fine):
            click.echo(line)
    sys.exit(any(each.severity == "stop" for each in findings))


def _kept(store: Path, name: str) -> tuple[Figures, Shower]:
    """The figures of an instrument of the store, in its shop and its air, by what was measured."""
    from gramil.change.in_store import figures_in_store
    from gramil.shop.instruments import instrument
    from gramil.shop.opening import open_store

    with open_store(store, to_read=True) as record:
        figures = figures_in_store(record, instrument(record, name))
    return figures, shower_of(figures)


def verdicts(findings: Iterable[Finding], shower: Shower, fine: bool) -> Iterator[str]:
    """The lines of the list, and a last line that counts them."""
    found = tuple(findings)
    for each in found:
        if fine or each.severity != "fine":
            yield from verdict(each, shower)
    counted = ((severity, sum(each.severity == severity for each in found)) for severity in SEVERITIES)
    yield ", ".join(f"{number} {severity}" for severity, number in counted if number)


def verdict(finding: Finding, shower: Shower) -> Iterator[str]:
    """One finding's lines: the figure with its limit, what it means, what mends it."""
    head = click.style(f"{finding.severity.upper():<10}", bold=finding.severity in ("stop", "caution"))
    told = in_words(finding, shower.filled)
    if told.severity == "not judged":
        yield f"{head} {told.name}: not judged, {told.says}"
    else:
        yield f"{head} {told.name}: {shower.text(told.address)}{_limit(told, shower)}   [{told.address}]"
        yield f"           {told.says}"
    if told.remedy and told.severity not in ("fine",):
        yield f"           Mend: {told.remedy}"


def _limit(told: InWords, shower: Shower) -> str:
    if not told.limit:
        return ""
    return f", limit {shower.text(told.limit)} ({limit_origin(told, shower)})"
