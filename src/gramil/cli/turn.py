"""`gramil turn`: an input turned until a figure is met, what else moves, and on request the file changed."""

from collections.abc import Callable
from math import isclose
from pathlib import Path

import click

from gramil.change.shift import shift
from gramil.change.turn import Turned, turn
from gramil.cli.changed import changed_text, figures_of_text
from gramil.cli.options import opened, shop_file, shower_of
from gramil.cli.shift import PLAY, report
from gramil.description.base import base_names
from gramil.faults import MakersFault
from gramil.graph import Figures
from gramil.measure import read_angle, read_length
from gramil.shop.made_file import made_beside, read_made
from gramil.show import Shower, shown


@click.command()
@click.argument("key", metavar="INPUT")
@click.argument("file", type=click.Path(path_type=Path))
@click.option("--until", required=True, metavar="FIGURE=VALUE", help="The figure to meet, and what it is to be.")
@click.option("--between", metavar="LOW,HIGH", help="Bounds of the input; a fifth either way if not given.")
@shop_file
@click.option("--write", is_flag=True, help="Put the answer into FILE, its comments kept.")
def command(key: str, file: Path, until: str, between: str | None, shop: Path | None, write: bool) -> None:
    """Turn INPUT of the description in FILE until a figure has the value wanted.

    \b
    gramil turn board.thickness tarn.toml --until "slot_left_least[19]=3.8 mm"
    gramil turn bridge.spread tarn.toml --until "string_margin_bass[19]=3.5 mm" --between "50 mm,60 mm"
    """
    before, shower = opened(file, shop)
    unit = _unit_of_input(before, key)
    address, target = _wanted(until, before, shower)
    low, high = _bounds(between, before, key, shower, unit)

    def text(value: float) -> str:
        return changed_text(file, [f"{key}={_written(value, unit)}"])

    def figure(value: float) -> float:
        return float(figures_of_text(text(value), file, shop).at(address))

    _check_turns(before, key, lambda value: figures_of_text(text(value), file, shop))
    found = turn(figure, target, low, high)
    if len(found.answers) != 1:
        raise click.ClickException(_no_single_answer(found, before, address, key, unit, shower))
    after = figures_of_text(text(found.answers[0]), file, shop)
    click.echo(
        f"{key} = {shown(found.answers[0], unit, shower.first)} gives {address} = {shower_of(after).text(address)}\n"
    )
    record = made_beside(file)
    for line in report(shift(before, after, PLAY), before, after, read_made(record) if record.exists() else None):
        click.echo(line)
    if write:
        file.write_text(text(found.answers[0]), encoding="utf-8")
        click.echo(f"\n{file} is changed.")


def _unit_of_input(figures: Figures, key: str) -> str | None:
    try:
        (name,) = base_names(key)[:1]
        value = figures[name]
    except (KeyError, ValueError):
        raise click.BadParameter(f"no input {key!r}; see the page of keys", param_hint="INPUT") from None
    if isinstance(value, bool | str) or not isinstance(value, int | float):
        raise click.BadParameter(f"{key} is no single number, and cannot be turned", param_hint="INPUT")
    return figures.unit_at(name)


def _check_turns(figures: Figures, key: str, changed: Callable[[float], Figures]) -> None:
    """Refuse an input that is written otherwise than it is reckoned with, such as a radius that goes in as 1/R."""
    name = base_names(key)[0]
    try:
        same = isclose(changed(figures[name])[name], figures[name], rel_tol=1e-6, abs_tol=1e-6)
    except MakersFault:
        same = False
    if not same:
        raise click.BadParameter(f"{key} cannot be turned; change it in the file, or with shift", param_hint="INPUT")


def _written(value: float, unit: str | None) -> str:
    return f"{value:.9f} {unit}" if unit in ("mm", "rad", "MPa") else f"{value:.9g}"


def _read(text: str, unit: str | None, shower: Shower) -> float:
    if unit == "mm":
        return read_length(text, shower.first)
    if unit == "rad":
        return read_angle(text)
    try:
        return float(text.split()[0])
    except (ValueError, IndexError):
        raise MakersFault.of(f"{text!r} is no number", "", "Write a number") from None


def _wanted(until: str, figures: Figures, shower: Shower) -> tuple[str, float]:
    address, equals, value = (part.strip() for part in until.rpartition("="))
    if not equals:
        raise click.BadParameter(f"{until!r} is not FIGURE=VALUE", param_hint="--until")
    try:
        float(figures.at(address))
    except (KeyError, TypeError, ValueError):
        raise click.BadParameter(f"{address!r} is no single figure", param_hint="--until") from None
    return address, _read(value, figures.unit_at(address), shower)


def _bounds(between: str | None, figures: Figures, key: str, shower: Shower, unit: str | None) -> tuple[float, float]:
    if between is None:
        value = float(figures[base_names(key)[0]])
        return (value - abs(value) / 5 or -1.0, value + abs(value) / 5 or 1.0)
    low, comma, high = between.partition(",")
    if not comma:
        raise click.BadParameter(f"{between!r} is not LOW,HIGH", param_hint="--between")
    bounds = sorted((_read(low.strip(), unit, shower), _read(high.strip(), unit, shower)))
    return bounds[0], bounds[1]


def _no_single_answer(found: Turned, figures: Figures, address: str, key: str, unit: str | None, shower: Shower) -> str:
    if found.answers:
        listed = ", ".join(shown(answer, unit, shower.first) for answer in found.answers)
        return f"There is more than one answer: {key} = {listed}. Narrow the bounds with --between."
    if found.lowest != found.lowest:
        return "No instrument can be made anywhere between the bounds. Choose others with --between."
    symbol = figures.unit_at(address)
    low, high = (shown(value, symbol, shower.first) for value in (found.lowest, found.highest))
    return f"There is no answer: between the bounds {address} goes from {low} to {high}."
