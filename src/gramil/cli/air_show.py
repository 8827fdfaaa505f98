"""`gramil air show`: each place's air now, its day, and what would bring it into the band for gluing."""

from collections.abc import Iterable, Iterator
from datetime import datetime
from pathlib import Path

import click

from gramil.air.air_bands import limits_of
from gramil.air.air_of_places import places_of
from gramil.air.air_view import HOURS_HELD, PlaceView, views
from gramil.air.readiness import gluing_humidity
from gramil.cli.json_option import json_option, write_answer
from gramil.cli.kinds import Number
from gramil.cli.moments import now_option
from gramil.cli.options import shop_itself
from gramil.decimals import fixed
from gramil.description.reading import read_shop
from gramil.faults import MakersFault
from gramil.file_names import file_name
from gramil.measure import TemperatureUnit, in_degrees


@click.command()
@shop_itself
@now_option
@json_option
@click.option("--plot", type=click.Path(path_type=Path), help="Also draw each place's air into this folder.")
@click.option("--days", type=Number(0.1, 3660), default=28.0, show_default=True, help="Days that are drawn.")
def show(shop: Path, now: datetime, as_json: bool, plot: Path | None, days: float) -> None:
    """How the air of each place stands: now, over its last day, against the band for gluing.

    \b
    gramil air show --shop shop.toml
    gramil air show --shop shop.toml --now 2026-01-19T09:00 --plot .
    """
    description = read_shop(shop)
    places = places_of(description)
    band, aim = gluing_humidity(description.shop), limits_of(description.shop)["gluing_humidity"]
    if not places.known:
        none = MakersFault.of(
            "the shop has no readings of air", "", "give a [[place]] with a log, or readings typed in"
        )
        raise MakersFault(places.faults) if places.faults else none
    for fault in places.faults:
        click.echo(str(fault), err=True)
    if as_json:
        from gramil.answers.air import air_answer

        write_answer("air show", (), air_answer(now, band, aim, views(places, now, band, aim), places.gluing))
    else:
        _listed(views(places, now, band, aim), now, band, aim, places.gluing, description.shop.shop.temperature)
    if plot is not None:
        from gramil.writers.wood_charts import air_svg

        plot.mkdir(parents=True, exist_ok=True)
        for place in places.known.values():
            path = plot / f"{file_name(place.name)}-air.svg"
            path.write_text(air_svg(place, now, days, band), encoding="utf-8", newline="\n")
            click.echo(f"Drawn: {path}", err=as_json)


def _listed(
    found: Iterable[PlaceView],
    now: datetime,
    band: tuple[float, float],
    aim: float,
    gluing: str,
    degrees: TemperatureUnit,
) -> None:
    click.echo(click.style(f"{now:%Y-%m-%d %H:%M}, for gluing {band[0]:g} to {band[1]:g} %, aim {aim:g}", bold=True))
    for each in found:
        for line in place_lines(each, gluing, aim, degrees):
            click.echo(line)


def place_lines(each: PlaceView, gluing: str, aim: float, unit: TemperatureUnit) -> Iterator[str]:
    """The lines of one place."""
    where = " (gluing is done here)" if each.place.name == gluing else ""
    yield ""
    yield click.style(f"{each.place.name}{where}: {each.side}", bold=True)
    yield (
        f"  {each.air.humidity:.0f} % at {_degrees(each.air.temperature, unit)} {unit}; "
        f"dew point {_degrees(each.dew_point, unit)} {unit}, "
        f"{each.density:.1f} g of water in a cubic metre; wood left here comes to {each.moisture:.1f} %"
    )
    if each.stale:
        yield f"  The last reading is {_age(each.hours)} old: read the air again before you trust this."
    day = each.day
    if day.readings == 1:
        yield "  last day: one reading alone, which says nothing of its course"
    else:
        coldest, warmest = (_degrees(end, unit) for end in (day.temperature.least, day.temperature.most))
        yield (
            f"  last day: {day.humidity.least:.0f} to {day.humidity.most:.0f} %, {coldest} to {warmest} {unit}; "
            f"in the band {100 * day.share_in_band:.0f} % of it, "
            f"{day.longest_in_band:.0f} hours at a stretch"
        )
    yield from _water(each, aim)
    for other in each.brought:
        if other.place == each.place.air_from:
            yield _brought(other.place, other.humidity)


def _degrees(celsius: float, unit: TemperatureUnit) -> str:
    return fixed(in_degrees(celsius, unit), 1)


def _water(each: PlaceView, aim: float) -> Iterator[str]:
    if each.water is None:
        if each.side != "in the band":
            yield "  Give the place its room and air_changes, to know how much water that is."
        return
    amounts = sorted((abs(each.water.least), abs(each.water.most)))
    verb = "put in" if each.water.most > 0 else "take out"
    yield (
        f"  To {aim:g} %, held for {HOURS_HELD:.0f} hours: {verb} {amounts[0]:.0f} to {amounts[1]:.0f} g of water; "
        "walls and wood take up some too, so more on the first day"
    )


def _brought(place: str, humidity: float) -> str:
    if humidity >= 100:
        return f"  Air let in from the {place} condenses here: too damp for this temperature."
    return f"  Air let in from the {place} comes to {humidity:.0f} % here."


def _age(hours: float) -> str:
    return f"{hours:.0f} hours" if hours < 48 else f"{hours / 24:.0f} days"
