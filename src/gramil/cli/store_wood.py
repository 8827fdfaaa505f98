"""`gramil store lay`, `split`, `join`, `part`, `strike`, `place`: wood moved, cut, counted or struck; parts; places."""

from collections.abc import Iterable
from pathlib import Path

import click

from gramil.answers.record import Counted, Cut, Lies, PartKept, PieceCut, PlaceKnown, StruckOff
from gramil.cli.as_read import as_read_option
from gramil.cli.kinds import Number
from gramil.cli.left_unsaid import InTheStore, the_store
from gramil.cli.meant_name import meant_name
from gramil.cli.store_options import hand_asked_for, moment, moment_of
from gramil.faults import MakersFault
from gramil.shop.written_sizes import read_sizes
from gramil.store.opening import open_store
from gramil.store.writing import Hand


@click.command(cls=InTheStore)
@the_store
@click.argument("piece")
@click.argument("place")
@as_read_option
@moment
def lay(store: Path, piece: str, place: str, as_read: bool, at: str | None) -> Lies:
    """Note that PIECE, wood in stock or a piece that is followed, lies in PLACE from now on.

    \b
    gramil store lay shop.gramil "back 1" cupboard
    """
    from gramil.acts import wood
    from gramil.air.pieces import PIECE
    from gramil.air.places import places
    from gramil.shop.stock import blanks
    from gramil.store.items import items

    with open_store(store) as opened:
        known = [each.name for each in blanks(opened)] + [each.name for each in items(opened, PIECE)]
        piece, place = meant_name(piece, known), meant_name(place, (each.name for each in places(opened)))
        found = next((each for each in blanks(opened) if each.name == piece), None)
        hand = hand_asked_for(opened, at, as_read)
        if found is not None:
            wood.move(opened, found, place, hand)
        else:
            wood.lay(opened, piece, place, hand)
    click.echo(f"{piece} lies in the {place}.")
    return Lies(piece, place)


@click.command(cls=InTheStore)
@the_store
@click.argument("piece")
@click.argument("parts", nargs=-1, required=True, metavar="NAME=SIZES...")
@moment
def split(store: Path, piece: str, parts: tuple[str, ...], at: str | None) -> Cut:
    """Cut one of PIECE into parts, each with its name and what it measures: length x width x thickness.

    \b
    gramil store split shop.gramil hornbeam "bridge=160 x 40 x 8" "left over=320 x 72 x 8"
    """
    from gramil.acts import wood
    from gramil.shop.stock import Blank, blank_named, blanks
    from gramil.store.items import shop_unit

    with open_store(store) as opened:
        unit, piece = shop_unit(opened), meant_name(piece, (each.name for each in blanks(opened)))
        new = [Blank(name, "", *read_sizes(text, unit, name)) for name, text in _pairs(parts, "bridge=160 x 40 x 8")]
        wood.split(opened, blank_named(opened, piece), new, Hand(moment_of(at)))
    click.echo(f"{piece} is cut into {', '.join(each.name for each in new)}.")
    return Cut(piece, tuple(PieceCut(each.name, each.length, each.width, each.thickness) for each in new))


@click.command(cls=InTheStore)
@the_store
@click.argument("piece")
@click.argument("other")
@moment
def join(store: Path, piece: str, other: str, at: str | None) -> Counted:
    """Count OTHER together with PIECE: wood of one kind and size, under the name of PIECE.

    \b
    gramil store join shop.gramil hornbeam "hornbeam of spring"
    """
    from gramil.acts import wood
    from gramil.shop.stock import blank_named, blanks

    with open_store(store) as opened:
        known = [each.name for each in blanks(opened)]
        piece, other = meant_name(piece, known), meant_name(other, known)
        kept = wood.join(opened, blank_named(opened, piece), blank_named(opened, other), Hand(moment_of(at)))
    click.echo(f"{kept.name}: {kept.count} now.")
    return Counted(kept.name, kept.count)


@click.command(cls=InTheStore)
@the_store
@click.argument("name")
@click.argument("kind")
@click.argument("figures", nargs=-1, metavar="FIGURE=VALUE...")
@click.option("--wood", default="", help="What it is made of.")
@moment
def part(store: Path, name: str, kind: str, figures: tuple[str, ...], wood: str, at: str | None) -> PartKept:
    """Write down a part made ahead: its NAME, its KIND such as "bent sides", and what it measures.

    \b
    gramil store part shop.gramil "sides of May" "bent sides" length=760mm thickness=2.0mm --wood walnut
    """
    from gramil.acts.wood import make_ahead
    from gramil.shop.stock import Part

    measures = dict(_pairs(figures, "length=760mm or length=30in"))
    with open_store(store) as opened:
        made = make_ahead(opened, Part(name, kind, measures, wood), Hand(moment_of(at)))
    click.echo(f"{made.name} ({made.kind}) is in stock.")
    return PartKept(made.name, made.kind, measures)


@click.command(cls=InTheStore)
@the_store
@click.argument("piece")
@moment
def strike(store: Path, piece: str, at: str | None) -> StruckOff:
    """Strike PIECE, wood in stock or a part made ahead, off the list: it was written down by mistake, or is gone.

    One that was promised or used stays: `gramil store undo` takes a change back.

    \b
    gramil store strike shop.gramil "sides of May"
    """
    from gramil.acts.wood import strike_part, strike_wood
    from gramil.shop.stock import blanks, parts

    with open_store(store) as opened:
        raw = next((each for each in blanks(opened) if each.name == piece), None)
        made = next((each for each in parts(opened) if each.name == piece), None)
        if raw is not None:
            strike_wood(opened, raw, Hand(moment_of(at)))
        elif made is not None:
            strike_part(opened, made, Hand(moment_of(at)))
        else:
            names = ", ".join([each.name for each in blanks(opened)] + [each.name for each in parts(opened)])
            remedy = f"these are: {names}" if names else "none is written down"
            raise MakersFault.of(f'there is no wood and no part made ahead called "{piece}"', remedy=remedy)
    click.echo(f"{piece} is no longer on the list.")
    return StruckOff(piece)


@click.command(cls=InTheStore)
@the_store
@click.argument("name")
@click.option("--room", type=Number(), metavar="M3", help="Volume of air in it, m3.")
@click.option("--air-changes", nargs=2, type=Number(), metavar="LEAST MOST", help="Changes of its air an hour.")
@click.option("--air-from", help="Name of the place whose air leaks in.")
@click.option(
    "--humidifier", type=Number(), metavar="GRAMS", help="Water that a humidifier puts into its air in an hour, g."
)
@click.option(
    "--dehumidifier", type=Number(), metavar="GRAMS", help="Water that a dryer takes out of its air in an hour, g."
)
@moment
def place(
    store: Path,
    name: str,
    room: float | None,
    air_changes: tuple[float, float] | None,
    air_from: str | None,
    humidifier: float | None,
    dehumidifier: float | None,
    at: str | None,
) -> PlaceKnown:
    """Change what is known of the place NAME; what is not named stays as it is. A new place is added.

    \b
    gramil store place shop.gramil cupboard --room 0.4 --air-changes 0.1 0.3 --air-from shop
    """
    from gramil.acts.air import change_place, name_place
    from gramil.air.places import place as place_named
    from gramil.air.places import places

    changes = list(air_changes) if air_changes else None
    machines = {"humidifier": humidifier, "dehumidifier": dehumidifier}
    given = {"room": room, "air_changes": changes, "air_from": air_from, **machines}
    with open_store(store) as opened:
        if name not in [each.name for each in places(opened)]:
            name_place(opened, name, Hand(moment_of(at)))
        seen = place_named(opened, name)
        new = {**seen.figures, **{key: value for key, value in given.items() if value is not None}}
        if new != seen.figures:
            change_place(opened, seen, new, Hand(moment_of(at)))
    click.echo(f"{name}: " + (", ".join(f"{key} {value}" for key, value in new.items()) or "nothing more is known."))
    return PlaceKnown(name, new)


def _pairs(texts: Iterable[str], example: str) -> list[tuple[str, str]]:
    """Names and values, written with an equals sign between them. Raises MakersFault for any other form."""
    found = [tuple(part.strip() for part in text.partition("=")) for text in texts]
    for (name, equals, value), text in zip(found, texts, strict=True):
        if not (name and equals and value):
            raise MakersFault.of(f'"{text}" is not a name and what it measures', remedy=f"write it like {example}")
    return [(name, value) for name, _, value in found]
