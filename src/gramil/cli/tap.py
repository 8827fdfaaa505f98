"""`gramil tap`: a piece of wood tapped free or pushed on two supports: its own stiffness, in place of a handbook's."""

import sys
from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from gramil.cli.json_option import json_option, write_answer
from gramil.cli.kinds import UNITS, Number
from gramil.cli.options import shop_file, shop_of
from gramil.cli.store_options import moment, moment_of, refuse_two_shops, store_file
from gramil.decimals import signed
from gramil.description.reading import parse_shop
from gramil.description.shop.bare import bare_shop
from gramil.formatter import shown
from gramil.measure import LengthUnit

if TYPE_CHECKING:
    from gramil.top.tapped import TriedWood

KEYS = (
    "wood", "part", "for", "length", "width", "thickness", "mass", "moisture", "along", "across", "twist", "span",
    "weight", "given",
)  # fmt: skip


@click.command()
@click.argument("name")
@click.option("--wood", required=True, help="Its kind, for what no note tells.")
@click.option("--part", type=click.Choice(("top", "brace")), default="top", help="What it is to become.")
@click.option(
    "--for", "for_", metavar="INSTRUMENT", help="The instrument that it is for: its top is then solved by it."
)
@click.option("--length", required=True, help="Along the grain.")
@click.option("--width", required=True, help="Across it.")
@click.option("--thickness", required=True, help="The way that it bends.")
@click.option("--mass", required=True, help='What it weighs: "190 g".')
@click.option("--moisture", help="Its moisture then, %; else settled in the air for gluing.")
@click.option("--along", type=Number(), metavar="HZ", help="Note with two lines at rest across the grain.")
@click.option("--across", type=Number(), metavar="HZ", help="Note with two lines at rest along the grain.")
@click.option("--twist", type=Number(), metavar="HZ", help="Note with a cross at rest.")
@click.option("--span", help="Pushed: between its two supports.")
@click.option("--weight", help='Pushed: the weight on its middle, "1 kg" as "1000 g".')
@click.option("--given", help="Pushed: how far it gave.")
@click.option("--as", "unit", type=UNITS, default="mm", help="The unit of bare lengths.")
@shop_file
@store_file
@moment
@json_option
def command(
    name: str, unit: LengthUnit, shop: Path | None, store: Path | None, at: str | None, as_json: bool, **given: Any
) -> None:
    """What the piece NAME is, by the notes it sounds or how far it gives: stiffness along, across and in twist, carried
    to the air for gluing, and how far off each may be. With a store it is kept there, and the top that it is for is
    solved by it.

    \b
    gramil tap "top 1" --wood "Sitka spruce" --length 560mm --width 210mm --thickness 3.2mm --mass "165 g" \\
        --along 60 --twist 29 --for Tarn --store shop.gramil
    gramil tap "billet 3" --part brace --wood "Sitka spruce" --length 500mm --width 20mm --thickness 20mm \\
        --mass "86 g" --span 450mm --weight "2000 g" --given 0.25mm
    """
    refuse_two_shops(shop, store)
    given = {("for" if key == "for_" else key): value for key, value in given.items()}
    figures = {key: given[key] for key in KEYS if given.get(key) is not None}
    found = _found(name, figures, unit, shop, store)
    if as_json:
        from gramil.answers.tap import tap_answer

        write_answer("tap", [], tap_answer(found))
    for line in () if as_json else lines(found, unit):
        click.echo(line)
    if not found.known.measured:
        sys.exit(1)
    for line in _kept(name, figures, unit, store, at):
        click.echo(line, err=as_json)


def _found(name: str, figures: dict[str, Any], unit: LengthUnit, shop: Path | None, store: Path | None) -> "TriedWood":
    """What the piece comes to. Raises MakersFault for a row that a shop's description would not accept."""
    from gramil.description.shop.limits import LIMITS
    from gramil.description.wood.timbers import tried
    from gramil.top.tapped import fitted
    from gramil.wood.equilibrium import equilibrium_moisture

    around = shop_of(shop, store)
    row = parse_shop(_row(name, figures, unit), "what was typed").shop.tapped[0]
    settled = equilibrium_moisture(LIMITS["owner_temperature"].value, LIMITS["gluing_humidity"].value)
    return fitted(tried(row, around), float(settled))


def _row(name: str, figures: dict[str, Any], unit: LengthUnit) -> str:
    from gramil.store.toml_text import table_text

    return "\n".join([bare_shop(unit), table_text("[[tapped]]", [("name", name), *figures.items()])])


def lines(found: "TriedWood", unit: LengthUnit) -> Iterator[str]:
    """What a piece came to, in lines."""
    for fault in found.faults:
        yield click.style(str(fault), bold=True)
    wood = found.known.timber
    if not found.known.measured:
        yield "Nothing of the piece is used: its wood's figures of a handbook are."
    rows = (
        ("along the grain", wood.longitudinal, found.along_within),
        ("across it", wood.radial, found.across_within),
        ("in twist", wood.shear_lr, found.twist_within),
    )
    for what, modulus, within in rows:
        yield f"  stiffness {what:<16} {shown(modulus, 'MPa', unit)} ± {100 * within:.0f} %"
    yield f"  density                    {shown(wood.density, 'kg/m3', unit)}"
    if found.known.measured:
        yield f"  carried to {found.known.moisture:.1f} % moisture: {signed(100 * (found.carried - 1), 1)} % stiffness"
    if found.shear_share:
        yield f"  of the push, shear was {100 * found.shear_share:.1f} % over bending"
    yield from (f"  {line}" for line in found.known.told)
    if found.known.measured and not found.shear_share:
        yield from _thickness(found, unit)


def _thickness(found: "TriedWood", unit: LengthUnit) -> Iterator[str]:
    """How thick a top of it bends as a usual one: a rule, and a range."""
    from gramil.description.neck.tables import Top
    from gramil.description.wood.timbers import SOFT
    from gramil.top.tapped import thickness_like

    usual = Top().thickness
    pairs = (
        (SOFT.longitudinal, found.known.timber.longitudinal, found.along_within),
        (SOFT.radial, found.known.timber.radial, found.across_within),
    )
    ends = [end for pair in pairs if pair[2] < 0.2 for end in thickness_like(usual, *pair)]
    if ends:
        least, most = (shown(end, "mm", unit) for end in (min(ends), max(ends)))
        yield (
            f"  a top of it bends as one of {shown(usual, 'mm', unit)} of Sitka spruce by the handbook at {least} to "
            f"{most}: a rule of practice, of the same stiffness in bending"
        )


def _kept(name: str, figures: dict[str, Any], unit: LengthUnit, store: Path | None, at: str | None) -> Iterator[str]:
    """The piece written down in the store, or the row for the shop's file."""
    if store is None:
        from gramil.store.toml_text import table_text

        yield "In the shop's file (bare lengths in its unit):"
        yield table_text("[[tapped]]", [("name", name), *_with_units(figures, unit).items()]).rstrip()
        return
    from gramil.acts.tools import keep_tool
    from gramil.store.items import Item
    from gramil.store.opening import open_store
    from gramil.store.writing import Hand

    with open_store(store) as record:
        keep_tool(record, Item("tapped", name, _with_units(figures, unit)), Hand(moment_of(at)))
    yield f"{name} is written down in {store.name}."


def _with_units(figures: dict[str, Any], unit: LengthUnit) -> dict[str, Any]:
    """The figures with a unit on each bare length, so that they hold in any file."""
    from gramil.bare_numbers import with_unit

    lengths = ("length", "width", "thickness", "span", "given")
    return {key: with_unit(value, "mm", unit) if key in lengths else value for key, value in figures.items()}
