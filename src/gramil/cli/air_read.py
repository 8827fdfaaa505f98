"""`gramil air PLACE TEMPERATURE HUMIDITY`: what the meter says, written into the store."""

import re
from pathlib import Path

import click

from gramil.answers.record import AirAnswer, MeterRead
from gramil.cli.as_read import as_read_option
from gramil.cli.kinds import HUMIDITY
from gramil.cli.meant_name import meant_name
from gramil.cli.store_options import hand_asked_for, moment, store_file
from gramil.cli.which_shop import store_by_itself
from gramil.measure import in_degrees, read_temperature
from gramil.store.items import shop_degrees
from gramil.store.opening import open_store

FIGURE = re.compile(r"-?\.?\d")
"""What a temperature begins with, and no place."""


class Reading(click.Command):
    """A reading, whose PLACE may be left out: it is the one where gluing is done."""

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        """The words, with an empty one for the place if they begin with a figure."""
        return super().parse_args(ctx, ["", *args] if args and FIGURE.match(args[0]) else args)


@click.command("read", cls=Reading, context_settings={"ignore_unknown_options": True})
@click.argument("place", metavar="[PLACE]")
@click.argument("temperature")
@click.argument("humidity", type=HUMIDITY)
@store_file
@as_read_option
@moment
def read(place: str, temperature: str, humidity: float, store: Path | None, as_read: bool, at: str | None) -> MeterRead:
    """Write down what the meter in PLACE says: TEMPERATURE (bare in the shop's unit) and relative HUMIDITY (%).

    The word `read` may be left out, and the place where gluing is done.

    \b
    gramil air 19 45
    gramil air house 20 52
    gramil air read shop "66 F" 45
    """
    from gramil.acts.air import read_meter
    from gramil.air.air_bands import limits_of
    from gramil.air.places import places
    from gramil.cli.last_list import list_goes_on
    from gramil.shop.shop_in_store import shop_description

    with open_store(store_by_itself(store)) as opened:
        unit, described = shop_degrees(opened), shop_description(opened)
        place = meant_name(place, (each.name for each in places(opened))) if place else described.shop.glued_in
        celsius = read_temperature(temperature, unit)
        with list_goes_on(opened):
            read_meter(opened, place, celsius, humidity, hand_asked_for(opened, at, as_read))
        limits = limits_of(described.shop)
    least, most = limits["gluing_humidity_least"], limits["gluing_humidity_most"]
    where = "in" if least <= humidity <= most else "outside"
    told = f"{place}: {in_degrees(celsius, unit):.1f} {unit}, {humidity:g} %"
    click.echo(f"{told}: {where} the band for gluing ({least:g} to {most:g} %).")
    if where == "outside":
        click.echo(
            "What needs that band is closed until the meter says otherwise, or air to come is given: "
            f'gramil air outlook {place} "+1 45 %".'
        )
    return MeterRead(place, AirAnswer(humidity, float(celsius)), (least, most), where == "in")
