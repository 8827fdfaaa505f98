"""`gramil air outlook PLACE WORDS`: what somebody says of a place's air to come, kept in the store with its moment."""

from pathlib import Path

import click

from gramil.answers.record import OutlookKept, SpellAnswer
from gramil.cli.as_read import as_read_option
from gramil.cli.meant_name import meant_name
from gramil.cli.store_options import hand_asked_for, moment, store_file
from gramil.cli.which_shop import store_by_itself
from gramil.measure import show_temperature
from gramil.store.items import shop_degrees
from gramil.store.opening import open_store


@click.command("outlook")
@click.argument("place")
@click.argument("words", nargs=-1)
@click.option("--file", type=click.Path(path_type=Path), help="A forecast's CSV: time,temperature,humidity.")
@store_file
@as_read_option
@moment
def outlook(
    place: str, words: tuple[str, ...], file: Path | None, store: Path | None, as_read: bool, at: str | None
) -> OutlookKept:
    """Keep what WORDS or a forecast's file say of PLACE's air to come: `now` and `weeks` count it by its chance.

    It counts for a week, the less the further ahead; what was then read teaches how far the next one is trusted.

    \b
    gramil air outlook shop "thu 42 %" "sat 38 %"
    gramil air outlook shop "+1 66 F 44 %"
    gramil air outlook shop --file forecast.csv
    """
    from gramil.acts.air import keep_outlook
    from gramil.air.air_in_store import places_in_store
    from gramil.air.places import places as known_places
    from gramil.now.chances import ON_RECORD
    from gramil.now.conditions import place_now
    from gramil.now.outlook import forecast, read_outlook, typed_outlook
    from gramil.shop.shop_in_store import shop_description
    from gramil.text_file import text_of

    if bool(words) == (file is not None):
        raise click.UsageError('give WORDS such as "thu 42 %", or --file')
    with open_store(store_by_itself(store)) as opened:
        hand, unit = hand_asked_for(opened, at, as_read), shop_degrees(opened)
        now, place = hand.now.replace(tzinfo=None), meant_name(place, (each.name for each in known_places(opened)))
        if file is None:
            spells = typed_outlook(words, now)
        else:
            spells = forecast(read_outlook(text_of(file), file.name), now, file.name)
        keep_outlook(opened, place, spells, hand, file="" if file is None else file.name)
        places = places_in_store(opened, shop_description(opened), hand.now, ON_RECORD)
        known = places.known.get(place)
        trusted = place_now(known, now, places.outlook_days, ()).outlook.told if known else ""
    for each in spells:
        air = f"{each.humidity:g} % at {show_temperature(each.temperature, unit, 0)}"
        click.echo(f"{place}: {air} from {each.begins:%A} {each.begins.day} {each.begins:%B, %H:%M}.")
    if trusted:
        click.echo(trusted)
    rows = tuple(SpellAnswer(each.begins.isoformat(), each.temperature, each.humidity) for each in spells)
    return OutlookKept(place, hand.now.isoformat(), rows, trusted)
