"""`gramil air PLACE TEMPERATURE HUMIDITY`: what the meter says, written into the store."""

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


@click.command("read", context_settings={"ignore_unknown_options": True})
@click.argument("place")
@click.argument("temperature")
@click.argument("humidity", type=HUMIDITY)
@store_file
@as_read_option
@moment
def read(place: str, temperature: str, humidity: float, store: Path | None, as_read: bool, at: str | None) -> MeterRead:
    """Write down what the meter in PLACE says: TEMPERATURE (bare in the shop's unit) and relative HUMIDITY (%).

    The word `read` may be left out.

    \b
    gramil air shop 19 45
    gramil air read shop "66 F" 45
    """
    from gramil.acts.air import read_meter
    from gramil.air.air_bands import limits_of
    from gramil.air.places import places
    from gramil.shop.shop_in_store import shop_description

    with open_store(store_by_itself(store)) as opened:
        unit, place = shop_degrees(opened), meant_name(place, (each.name for each in places(opened)))
        celsius = read_temperature(temperature, unit)
        read_meter(opened, place, celsius, humidity, hand_asked_for(opened, at, as_read))
        limits = limits_of(shop_description(opened).shop)
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
