"""`gramil cost`: hours and materials of an instrument, a plain total, and a quote sheet."""

from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import click

from gramil import names as n
from gramil.cli.json_option import json_option, whose_by_name, write_answer
from gramil.cli.kinds import Number
from gramil.cli.now import wrapped
from gramil.cli.options import file_to_make, shop_file
from gramil.cli.store_options import moment, moment_of, refuse_two_shops, store_file
from gramil.description.reading import parse_description, read_description, read_shop
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.now.costs import Cost, Material, cost_of, cost_written, materials_in
from gramil.now.own_jigs import Built, without_jigs_on_hand
from gramil.pack import sheet_paper
from gramil.prints.own_addresses import checked_work
from gramil.prints.whole import figures_of
from gramil.quote import amount, quote_of
from gramil.shop.operations import Work, needed
from gramil.shop.operations_file import list_beside, lists_beside
from gramil.store.opening import Store, open_store


@dataclass(frozen=True)
class _Instrument:
    """An instrument to be costed, from files or from the store."""

    figures: Figures
    work: Work
    done: list[str]
    noted: dict[str, float]
    materials: list[Material]
    customer: str


@click.command()
@click.argument("file")
@shop_file
@store_file
@moment
@click.option("--rate", type=Number(0, 100_000), required=True, help="Money for an hour.")
@click.option("--material", multiple=True, metavar="WHAT=COST", help="Something that is paid for: tuners=85.")
@click.option("--money", default="", help="What the money is called, set behind every amount.")
@json_option
@file_to_make("--print", "printed", ending=".pdf", what="Also write a quote sheet (PDF).")
def command(
    file: str,
    shop: Path | None,
    store: Path | None,
    at: str | None,
    rate: float,
    material: tuple[str, ...],
    money: str,
    as_json: bool,
    printed: Path | None,
) -> None:
    """Hours and materials of the instrument in FILE (with a store: of that name), and a plain total.

    \b
    gramil cost tarn.toml --shop shop.toml --rate 40 --material "top set=120" --material tuners=85
    gramil cost Tarn --store shop.gramil --rate 40 --print quote.pdf
    """
    refuse_two_shops(shop, store)
    if store is not None:
        with open_store(store, to_read=True) as opened:
            asked = _from_store(opened, file)
    else:
        asked = _from_file(Path(file), shop)
    found = cost_of(
        asked.work, asked.done, asked.noted, [*asked.materials, *(_material(text) for text in material)], rate
    )
    if as_json:
        from gramil.answers.work import cost_answer

        names = [str(asked.figures[n.instrument_name])]
        write_answer("cost", whose_by_name(names, store, "drawn"), cost_answer(found, money))
    else:
        for line in listing(found, money):
            click.echo(wrapped(line))
    if printed is not None:
        paper = sheet_paper(asked.figures)
        printed.write_bytes(quote_of(asked.figures, found, money, asked.customer, moment_of(at), paper))
        click.echo(f"The quote sheet is in {printed}.", err=as_json)


def _from_file(file: Path, shop: Path | None) -> _Instrument:
    from gramil.shop.made_file import made_beside, read_made

    described, record = read_description(file), made_beside(file)
    done = list(read_made(record).operations) if record.exists() else []
    of_shop = read_shop(shop)
    figures = figures_of(described, of_shop)
    work = needed(checked_work(lists_beside(shop, file), figures, list_beside(file).name), described.instrument)
    one = Built(str(figures[n.instrument_name]), described.instrument, work, frozenset(done))
    work = without_jigs_on_hand(one, (), of_shop.shop.jig)
    return _Instrument(figures, work, done, {}, [], "")


def _from_store(store: Store, name: str) -> _Instrument:
    from gramil.change.in_store import figures_in_store
    from gramil.now.states import work_to_pay
    from gramil.shop.instruments import instrument, revision
    from gramil.shop.operations_done import operations_done

    owner = instrument(store, name)
    described = parse_description(revision(store, owner.id).text, name)
    done = operations_done(store, owner.id)
    noted = {each.operation: each.hours for each in done if each.hours is not None}
    figures = figures_in_store(store, owner, measured=False)
    work = work_to_pay(store, owner, described.instrument)
    materials = list(materials_in(store, owner.id))
    return _Instrument(figures, work, [each.operation for each in done], noted, materials, owner.customer)


def _material(text: str) -> Material:
    what, equals, cost = text.rpartition("=")
    value = cost_written(cost)
    if not equals or not what.strip() or value is None:
        raise MakersFault.of(
            f'"{text}" is not a material and its cost', remedy='write it like "tuners=85"', where="--material"
        )
    return Material(what.strip(), value)


def listing(cost: Cost, money: str) -> Iterator[str]:
    """The lines: hours by part, materials, the total, and what it rests on."""
    yield click.style("Hours", bold=True)
    for each in cost.hours:
        yield f"  {each.part:<16} {each.done:6.1f} done  {each.left:6.1f} to do"
    yield f"  {'all':<16} {cost.hours_done:6.1f} done  {cost.hours_whole - cost.hours_done:6.1f} to do"
    yield f"Work       {cost.hours_whole:7.1f} h at {amount(cost.rate, money)}   {amount(cost.work, money):>14}"
    if cost.materials:
        yield click.style("Materials", bold=True)
    for material in cost.materials:
        yield f"  {material.what:<40} {'no cost noted' if material.cost is None else amount(material.cost, money):>14}"
    yield click.style(f"Total      {amount(cost.total, money)}", bold=True)
    yield from _notes(cost)


def _notes(cost: Cost) -> Iterator[str]:
    yield (
        f"Hours are a practised pair of hands' (common practice) where none were noted: {cost.noted} of {cost.done} "
        "operations done have their hours noted. Curing takes none."
    )
    if cost.without:
        yield f"Not in the total, because no cost is noted: {', '.join(cost.without)}."
