"""`gramil check`: the findings, gravest first, each with its limit, where that comes from, and what would mend it."""

import sys
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

import click

from gramil import names as n
from gramil.change.made import Judged
from gramil.cli.instrument_files import instrument_files
from gramil.cli.json_option import json_option, write_answer
from gramil.cli.options import as_made_option, opened, shop_file, top_option, with_the_top
from gramil.cli.store_options import refuse_two_shops, store_file
from gramil.cli.verdicts import verdicts
from gramil.faults import Fault, MakersFault
from gramil.findings.finding import Finding
from gramil.formatter import Formatter, formatter_of
from gramil.graph import Figures
from gramil.prints.whole import findings_of

if TYPE_CHECKING:
    from gramil.change.made import Judged


@dataclass(frozen=True)
class Checked:
    """An instrument with its findings, verdicts on what is made of it, and the number of its revision in a store."""

    formatter: Formatter
    findings: tuple[Finding, ...]
    judged: tuple[Judged, ...]
    number: int | None

    @property
    def stops(self) -> bool:
        """Whether anything stops it, or is lost."""
        lost = any(each.standing == "lost" for each in self.judged)
        return lost or any(each.severity == "stop" for each in self.findings)

    def lines(self, fine: bool) -> Iterator[str]:
        """The verdicts on what is made, then the findings."""
        yield from made_verdicts(self.judged, self.formatter)
        yield from verdicts(self.findings, self.formatter, fine)


@click.command()
@instrument_files(required=True)
@shop_file
@store_file
@as_made_option
@click.option("--fine", is_flag=True, help="List what was found fine as well.")
@top_option
@json_option
def command(
    files: tuple[str, ...],
    shop: Path | None,
    store: Path | None,
    made: bool,
    fine: bool,
    with_top: bool,
    as_json: bool,
) -> None:
    """Whether the instruments in FILES can be made with what the shop has. Exit status 1 if anything stops one.

    With a store, FILES are instruments' names, and the figures are as made. What is made already is judged too: what is
    lost is a stop.

    \b
    gramil check tarn.toml --shop shop.toml
    gramil check *.toml
    gramil check Tarn --store shop.gramil
    gramil check tarn.toml --fine
    """
    refuse_two_shops(shop, store)
    found, faults = list[Checked](), list[Fault]()
    for file in files:
        try:
            found.append(_checked(file, shop, store, made, with_top))
        except MakersFault as fault:
            faults += fault.faults
    if as_json and found:
        _tell(found, len(files) > 1)
    elif not as_json:
        for line in _lines(found, fine, len(files) > 1):
            click.echo(line)
    if faults:
        raise MakersFault(dict.fromkeys(faults))  # the shop's own are those of every instrument
    sys.exit(any(each.stops for each in found))


def _checked(file: str, shop: Path | None, store: Path | None, made: bool, with_top: bool) -> Checked:
    """One instrument checked. Raises MakersFault for what is wrong in its file or in the shop."""
    figures, judged, number = _from_files(Path(file), shop, made) if store is None else _kept(store, file)
    figures = with_the_top(figures, with_top)
    return Checked(formatter_of(figures), tuple(findings_of(figures)), judged, number)


def _lines(found: Iterable[Checked], fine: bool, several: bool) -> Iterator[str]:
    """What is found, each of several instruments under its name."""
    for row, each in enumerate(found):
        if several:
            name = str(each.formatter.figures[n.instrument_name])
            yield f"{chr(10) if row else ''}{click.style(name.upper(), bold=True)}"
        yield from each.lines(fine)


def _tell(found: Sequence[Checked], several: bool) -> None:
    from gramil.answers.answer import whose
    from gramil.answers.verdicts import Checks, check_answer

    each = tuple(check_answer(one.findings, one.formatter, one.judged) for one in found)
    whole = Checks(any(one.stops for one in each), each) if several else each[0]
    write_answer("check", [whose(one.formatter.figures, one.number) for one in found], whole)


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
