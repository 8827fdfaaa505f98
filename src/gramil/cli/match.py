"""`gramil match`: which pieces on hand serve which needs, over all open instruments; what must be bought."""

import math
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

import click

from gramil import names as n
from gramil.cli.instrument_files import instrument_files
from gramil.cli.json_option import json_option, whose_by_name, write_answer
from gramil.cli.now import wrapped
from gramil.cli.options import shop_file
from gramil.cli.store_options import moment, moment_of, refuse_two_shops, store_file
from gramil.description.reading import ShopDescription, read_description, read_shop
from gramil.formatter import shown
from gramil.graph import Figures
from gramil.inches import A_64TH, in_64ths
from gramil.measure import LengthUnit
from gramil.now.match import Matching, Served, Stock, match
from gramil.now.needs import MadePart, Need, fit, needs_of
from gramil.now.states import chosen_in, refuse_namesakes
from gramil.now.wood_on_hand import Sticks, sticks_for
from gramil.prints.whole import figures_of
from gramil.store.items import shop_unit
from gramil.store.opening import Store, open_store
from gramil.store.writing import Hand


@dataclass(frozen=True)
class _Instrument:
    """An instrument that asks for wood: its figures, what is done, and its number in the store (0 in files)."""

    figures: Figures
    done: Collection[str]
    id: int = 0

    @property
    def name(self) -> str:
        return str(self.figures[n.instrument_name])


@click.command()
@instrument_files()
@shop_file
@store_file
@moment
@json_option
@click.option("--reserve", is_flag=True, help="Promise the pieces to the instruments; needs a store.")
def command(
    files: tuple[str, ...], shop: Path | None, store: Path | None, at: str | None, as_json: bool, reserve: bool
) -> None:
    """Which pieces on hand serve the instruments in FILES (with a store: of these names, or all open ones).

    \b
    gramil match tarn.toml fell.toml --shop shop.toml
    gramil match --store shop.gramil --reserve
    """
    if store is None and (reserve or not files):
        raise click.UsageError("pieces are promised in a --store" if reserve else "name the instruments' files")
    refuse_two_shops(shop, store)
    now = moment_of(at)
    if store is not None:
        with open_store(store) as opened:
            found, names, promised = _from_store(opened, files, now, reserve)
            unit = shop_unit(opened)
        _answer(found, names, store, as_json, unit)
        for line in promised:
            click.echo(wrapped(line), err=as_json)
        return
    described = read_shop(shop)
    asked = [_from_file(Path(file), described) for file in files]
    refuse_namesakes(each.name for each in asked)
    settled = _settled(described, now.replace(tzinfo=None))
    from gramil.now.stock_on_hand import stock_of_shop

    matched = _matched(asked, stock_of_shop(described.shop, settled), ())
    found = matched, sticks_for([(each.figures, each.done) for each in asked])
    _answer(found, [each.name for each in asked], None, as_json, described.shop.shop.units)
    click.echo("Parts made ahead are kept in a store; from files alone there are none.", err=as_json)


def _answer(
    found: tuple[Matching, Sequence[Sticks]], names: Sequence[str], store: Path | None, as_json: bool, unit: LengthUnit
) -> None:
    if as_json:
        from gramil.answers.wood import match_answer

        wanting = [line for own in found[1] for line in _wanting(own, unit)]
        write_answer("match", whose_by_name(names, store, "drawn"), match_answer(found[0], wanting))
        return
    for line in report(*found, unit):
        click.echo(wrapped(line))


def _from_file(file: Path, shop: ShopDescription) -> _Instrument:
    from gramil.shop.made_file import made_beside, read_made

    record = made_beside(file)
    done = read_made(record).operations if record.exists() else ()
    return _Instrument(figures_of(read_description(file), shop), done)


def _settled(shop: ShopDescription, now: datetime) -> dict[str, bool]:
    """Whether each piece whose moisture is known has settled for gluing."""
    from gramil.air.air_of_places import places_of
    from gramil.air.pieces_now import pieces_now
    from gramil.air.readiness import gluing_band, settled

    if not shop.shop.piece:
        return {}
    places = places_of(shop)
    band = gluing_band(shop.shop, places, now)
    return {piece.row.name: settled(piece.state, band) for piece in pieces_now(shop, places, now).known}


def _from_store(
    store: Store, names: Sequence[str], now: datetime, reserve: bool
) -> tuple[tuple[Matching, Sequence[Sticks]], list[str], list[str]]:
    """What serves which needs, the instruments asked for, and what was promised to them, in words."""
    from gramil.air.air_in_store import places_in_store
    from gramil.air.pieces_now import pieces_now
    from gramil.air.readiness import gluing_band, settled
    from gramil.change.in_store import figures_in_store
    from gramil.now.stock_on_hand import made_parts, stock_of_store
    from gramil.shop.instruments import instruments
    from gramil.shop.operations_done import operations_done
    from gramil.shop.shop_in_store import shop_description
    from gramil.shop.stock import blanks, free_counts

    described, chosen = shop_description(store), chosen_in(store, names)
    asked = [
        _Instrument(
            figures_in_store(store, each, measured=False),
            [done.operation for done in operations_done(store, each.id)],
            each.id,
        )
        for each in chosen
    ]
    numbers = {each.id: each.name for each in instruments(store)}
    places = places_in_store(store, described, now)
    clock = now.replace(tzinfo=None)
    known = pieces_now(described, places, clock).known if described.shop.piece else ()
    band = gluing_band(described.shop, places, clock) if known else (0.0, 0.0)
    is_settled = {piece.row.name: settled(piece.state, band) for piece in known}
    found = _matched(
        asked, stock_of_store(store, described.shop, numbers, is_settled), tuple(made_parts(store, numbers))
    )
    free = free_counts(store)
    sticks = sticks_for(
        [
            (figures_in_store(store, owner, measured=False), each.done)
            for owner, each in zip(chosen, asked, strict=True)
        ],
        {each.name: free[each.id] for each in blanks(store)},
    )
    said: list[str] = []
    if reserve:
        from gramil.acts import wood
        from gramil.cli.last_list import list_goes_on

        with list_goes_on(store):
            promised = wood.reserve(store, found, {each.name: each.id for each in asked}, Hand(now), sticks=sticks)
        said = [f"Promised: {each.name} to {each.instrument}." for each in promised]
    return (found, sticks), [each.name for each in asked], said


def _matched(asked: Sequence[_Instrument], stock: Sequence[Stock], parts: Sequence[MadePart]) -> Matching:
    needs = [need for each in asked for need in needs_of(each.figures, each.done)]
    fits = {each.name: [found for part in parts if (found := fit(part, each.figures))] for each in asked}
    return match(needs, stock, fits)


def _wanting(each: Sticks, unit: LengthUnit) -> Iterator[str]:
    """Brace wood that no billet in stock yields."""
    if each.wanting:
        longest = max(stick.length for stick in each.wanting)
        wood = ", ".join(dict.fromkeys(stick.wood for stick in each.wanting))
        long = _length(longest, unit)
        yield f"  {each.instrument}: {len(each.wanting)} brace sticks of {wood}, the longest {long}"


def report(found: Matching, braces: Sequence[Sticks], unit: LengthUnit) -> Iterator[str]:
    """The lines: what serves what, what nearly fits, what to buy."""
    for own in braces:
        if own.billets:
            split = ", ".join(f"{count} of {name}" for name, count in own.billets.items())
            yield f"{own.instrument}: brace sticks out of {split}"
    sticks = [line for own in braces for line in _wanting(own, unit)]
    for name in dict.fromkeys(each.need.instrument for each in found.served):
        yield click.style(name, bold=True)
        for each in found.served:
            if each.need.instrument == name:
                yield from _served(each)
    for name, near in found.near:
        yield f"{near.part.name} ({near.part.kind}) would fit {name} if reworked: " + " ".join(near.off)
    if found.bought or sticks:
        yield click.style("To buy", bold=True)
    for need, count in _counted(found.bought).items():
        yield f"  {_size(need, unit)}   {count} of {' or '.join(need.woods)}: {need.instrument}, {need.what}"
    yield from sticks
    if not (found.served or found.bought or found.near or sticks):
        yield "No wood is wanted."


def _served(each: Served) -> Iterator[str]:
    remarks = f" ({'; '.join(each.remarks)})" if each.remarks else ""
    if each.fit is not None:
        yield f"  {each.need.what:<28} {each.fit.part.name}, made ahead{remarks}"
        yield f"      done on it already: {', '.join(each.fit.done)}"
    elif each.stock is not None:
        share = f", {100 * each.waste / each.need.volume:.0f} % over" if each.waste else ""
        mine = ", kept for it" if each.stock.owner else ""
        yield f"  {each.need.what:<28} {each.stock.name} ({each.stock.wood}{mine}){share}{remarks}"


def _counted(needs: Sequence[Need]) -> Mapping[Need, int]:
    """Needs that are alike together, the first of them and how many."""
    alike: dict[tuple[str, str], list[Need]] = {}
    for need in needs:
        alike.setdefault((need.instrument, need.name), []).append(need)
    return {same[0]: len(same) for same in alike.values()}


def _size(need: Need, unit: LengthUnit) -> str:
    """Length, width and thickness, no less than wanted: to the millimetre or the 64th above."""
    if unit == "in":
        return " x ".join(_length(size, unit) for size in (need.length, need.width, need.thickness))
    return " x ".join(shown(round(size + 0.499), "mm").removesuffix(".00 mm") for size in (need.length, need.width)) + (
        f" x {need.thickness:.1f} mm"
    )


def _length(value: float, unit: LengthUnit) -> str:
    """A length of wood to buy: inches to the 64th above, as a rule says them."""
    return f"{value:.0f} mm" if unit == "mm" else in_64ths(math.ceil(value / A_64TH - 1e-6) * A_64TH)
