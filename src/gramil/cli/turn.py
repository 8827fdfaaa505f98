"""`gramil turn`: an input turned until a figure is met, what else moves, and on request the file changed."""

from math import isfinite, nan
from pathlib import Path

import click

from gramil.bare_numbers import reader_of
from gramil.change.turn import Turned, turn
from gramil.cli.changed import figures_in
from gramil.cli.json_option import json_option
from gramil.cli.options import address_meant, opened, shop_file
from gramil.cli.turn_answer import Met, met_lines, turn_answer
from gramil.cli.turned_input import TurnedInput, turned_input
from gramil.faults import MakersFault
from gramil.formatter import Formatter, shown
from gramil.graph import Figures
from gramil.shop.made_file import made_beside, read_made
from gramil.text_file import LARGEST
from gramil.written_file import alone_with, imprint_in, put_text


@click.command()
@click.argument("key", metavar="INPUT")
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--until", required=True, metavar="FIGURE=VALUE", help="The figure to meet, and what it is to be.")
@click.option("--between", metavar="LOW,HIGH", help="Bounds of the input; a fifth either way if not given.")
@shop_file
@json_option
@click.option("--write", is_flag=True, help="Put the answer into FILE, its comments kept.")
def command(
    key: str, file: Path, until: str, between: str | None, shop: Path | None, as_json: bool, write: bool
) -> None:
    """Turn INPUT of the description in FILE until a figure has the value wanted.

    \b
    gramil turn board.thickness tarn.toml --until "slot_left_least[19]=3.8 mm"
    gramil turn bridge.spread tarn.toml --until "string_margin_bass[19]=3.5 mm" --between "50 mm,60 mm"
    gramil turn board.arch.nut tarn.toml --until "arch_fall_at_nut_end=0.7 mm"
    """
    seen = imprint_in(file, LARGEST)
    before, formatter = opened(file, shop)
    read = figures_in(file, shop)
    turned = turned_input(before, key, file, read)
    address, target = _wanted(until, before, formatter)
    low, high = _bounds(between, turned, formatter)

    def figure(value: float) -> float:
        return float(read(turned.text(value)).at(address))

    found = turn(figure, target, low, high)
    if len(found.answers) != 1:
        raise click.ClickException(_no_single_answer(found, before, address, turned, formatter))
    after = read(turned.text(found.answers[0]))
    record = made_beside(file)
    answer = Met(key, found.answers[0], turned.unit or "", address)
    made = read_made(record) if record.exists() else None
    if as_json:
        turn_answer(answer, before, after, made)
    else:
        for line in met_lines(answer, before, after, made):
            click.echo(line)
    if write:
        with alone_with(file):  # if an editor saved meanwhile, the answer is not about that text
            put_text(file, turned.text(found.answers[0]), seen)
        click.echo(f"{'' if as_json else chr(10)}{file} is changed.", err=as_json)


def _read(text: str, unit: str | None, formatter: Formatter) -> float:
    if unit in ("mm", "rad") and (read := reader_of(unit, formatter.first)):
        return read(text)
    written, _, own_unit = text.partition(" ")
    try:
        value = float(written)
    except ValueError:
        value = nan
    if not isfinite(value) or own_unit.strip() not in ("", unit or ""):
        raise MakersFault.of(f"{text!r} is no number" + f" of {unit}" * bool(unit), "", f"Write it like {_like(unit)}")
    return value


def _like(unit: str | None) -> str:
    return f'"12.5 {unit}"' if unit else '"12.5"'


def _wanted(until: str, figures: Figures, formatter: Formatter) -> tuple[str, float]:
    name, equals, value = (part.strip() for part in until.rpartition("="))
    if not equals:
        raise click.BadParameter(f"{until!r} is not FIGURE=VALUE", param_hint="--until")
    address = address_meant(figures, name, "--until")
    try:
        float(figures.at(address))
    except (TypeError, ValueError):
        raise click.BadParameter(f"{name!r} is not a single figure", param_hint="--until") from None
    return address, _read(value, figures.unit_at(address), formatter)


def _bounds(between: str | None, turned: TurnedInput, formatter: Formatter) -> tuple[float, float]:
    if between is None:
        if not isfinite(turned.value):
            raise click.BadParameter(f"{turned.key} is flat: give --between LOW,HIGH", param_hint="INPUT")
        return (turned.value - abs(turned.value) / 5 or -1.0, turned.value + abs(turned.value) / 5 or 1.0)
    low, comma, high = between.partition(",")
    if not comma:
        raise click.BadParameter(f"{between!r} is not LOW,HIGH", param_hint="--between")
    bounds = sorted((_read(low.strip(), turned.unit, formatter), _read(high.strip(), turned.unit, formatter)))
    return bounds[0], bounds[1]


def _no_single_answer(found: Turned, figures: Figures, address: str, turned: TurnedInput, formatter: Formatter) -> str:
    if found.lowest == found.highest:
        return f"{turned.key} does not move {address}: it stays {formatter.text(address)}. `gramil why` says what does."
    if found.answers:
        listed = ", ".join(shown(answer, turned.unit, formatter.first) for answer in found.answers)
        return f"There is more than one answer: {turned.key} = {listed}. Narrow the bounds with --between."
    if found.lowest != found.lowest:
        return "No instrument can be made anywhere between the bounds. Choose others with --between."
    symbol = figures.unit_at(address)
    low, high = (shown(value, symbol, formatter.first) for value in (found.lowest, found.highest))
    return f"There is no answer: between the bounds {address} goes from {low} to {high}."
