"""`gramil wood`: what is known of a kind of wood, where each figure is from, what is missing, and how it moves."""

from collections.abc import Iterator
from pathlib import Path

import click

from gramil.cli.json_option import json_option, write_answer
from gramil.cli.kinds import HUMIDITY, UNITS, size, temperature_of
from gramil.cli.options import file_to_make, shop_file
from gramil.description.reading import read_shop
from gramil.description.wood.own_woods import own_woods
from gramil.formatter import shown
from gramil.in_shop_units import in_shop_units
from gramil.measure import LengthUnit, TemperatureUnit, in_degrees
from gramil.sources import cited
from gramil.wood.equilibrium import equilibrium_moisture
from gramil.wood.movement import CARRIED_ON, movement, outside
from gramil.wood.permits import in_words
from gramil.wood.piece import Piece, assumptions_of
from gramil.wood.species import Listing, Published, Remark, Species, dust_of_every_wood, find_species, load_species

FIGURES = (
    ("density", "density at 12 % moisture", "kg/m3", 1.0),
    ("modulus", "stiffness along the grain", "GPa", 1e-3),
    ("ratio_radial", "stiffness across, radial, over along", "", 1.0),
    ("ratio_tangential", "stiffness across, tangential, over along", "", 1.0),
    ("strength_across", "strength across the grain", "MPa", 1.0),
    ("shrinkage_radial", "shrinkage green to dry, radial", "%", 1.0),
    ("shrinkage_tangential", "shrinkage green to dry, tangential", "%", 1.0),
    ("movement_radial", "movement for 1 % of moisture, radial", "%", 100.0),
    ("movement_tangential", "movement for 1 % of moisture, tangential", "%", 100.0),
)
"""Figures of a wood: field, words, unit shown, and the factor to it."""
YEAR = (25.0, 65.0)
"""Relative humidity that an owner's year swings between, for the drawing: a setting."""
FLAGS = {
    "read": "read in the source",
    "transcribed": "from a transcription of the source",
    "memory": "from memory: check it before you rely on it",
    "derived": "worked out from the source",
    "measured": "the maker's own",
}
"""What a flag says."""


@click.command()
@click.argument("name", required=False)
@shop_file
@click.option("--from-rh", type=HUMIDITY, default=45.0, show_default=True, help="Relative humidity it settled in.")
@click.option("--to-rh", type=HUMIDITY, multiple=True, help="Relative humidity it comes to; may be repeated.")
@click.option("--temperature", default="20 C", show_default=True, help="In C or F; a bare number in the shop's.")
@click.option("--width", "written", default="100 mm", show_default=True, help="What moves, across the grain.")
@click.option("--units", type=UNITS, help="Unit of lengths shown and of bare ones; the shop's, or mm, if not given.")
@json_option
@file_to_make("--plot", ending=".svg", what="Also draw its movement through a year into this SVG file.")
def command(
    name: str | None,
    shop: Path | None,
    from_rh: float,
    to_rh: tuple[float, ...],
    temperature: str,
    written: str,
    units: LengthUnit | None,
    as_json: bool,
    plot: Path | None,
) -> None:
    """What is known of the wood NAME, and how it moves from one air to another. Without NAME, the woods that are known.

    \b
    gramil wood "Sitka spruce"
    gramil wood persimmon --from-rh 45 --to-rh 25 --width "56 mm"
    """
    described = read_shop(shop).shop
    own = own_woods(described) if shop else {}
    units = units or described.shop.units
    width, degrees = size(written, units, "--width"), described.shop.temperature
    warmth = temperature_of(temperature, degrees, "--temperature")
    if name is None:
        listed = (*own.values(), *load_species().values())
        if as_json:
            from gramil.answers.wood import woods_answer

            write_answer("wood", (), woods_answer(listed))
            return
        for wood in listed:
            click.echo(f"{wood.name:<22} {wood.botanical:<26} {', '.join(wood.uses)}")
        return
    wood = find_species(name, own)
    airs = to_rh or (25.0, 65.0)
    if as_json:
        from gramil.answers.wood import wood_answer

        figures = [(field, words, unit, factor, _of(wood, field)) for field, words, unit, factor in FIGURES]
        write_answer("wood", (), wood_answer(wood, figures, width, (warmth, from_rh), airs))
    else:
        for line in (*known(wood, units), *moves(wood, from_rh, airs, warmth, width, (units, degrees))):
            click.echo(line)
    if plot is not None:
        from gramil.writers.wood_charts import movement_svg

        plot.write_text(movement_svg(wood, width, from_rh, warmth, units, YEAR), encoding="utf-8", newline="\n")
        click.echo(f"Drawn: {plot}", err=as_json)


def known(wood: Species, units: LengthUnit) -> Iterator[str]:
    """The lines of what is known: figures with their sources, what is missing, dust and trade."""
    also = f" (also {', '.join(wood.also)})" if wood.also else ""
    yield click.style(f"{wood.name}, {wood.botanical}{also}".replace(", (", " ("), bold=True)
    figures = [(words, unit, factor, figure) for field, words, unit, factor in FIGURES if (figure := _of(wood, field))]
    remarks = [("dust", wood.dust), ("dust of every wood", dust_of_every_wood())]
    cited_in: list[Published | Remark | Listing] = [
        *(each[3] for each in figures),
        *(each for _, each in remarks if each),
        *([wood.trade] if wood.trade else []),
    ]
    keys = list(dict.fromkeys(each.source for each in cited_in))
    for words, unit, factor, figure in figures:
        value = in_shop_units(f"{figure.value * factor:.4g} {unit}".rstrip(), units)
        yield f"  {words:<42} {value:<12} [{keys.index(figure.source) + 1}] {_how(figure)}"
    missing = [words for field, words, _, _ in FIGURES if _of(wood, field) is None]
    if missing:
        yield f"  missing, and not guessed: {'; '.join(missing)}"
    for what, remark in remarks:
        yield f"  {what}: {_remark(remark, keys)}"
    yield f"  trade: {_trade(wood, keys)}"
    yield f"  how fast it follows the air: {'; '.join(assumptions_of(Piece(wood, 1.0)))}"
    yield from (f"  [{number}] {cited(key)}" for number, key in enumerate(keys, 1))


def _of(wood: Species, field: str) -> Published | None:
    """A figure of a wood; its movement may be calculated from its shrinkage."""
    if field.startswith("movement"):
        return wood.movement("radial" if field.endswith("radial") else "tangential")
    figure: Published | None = getattr(wood, field)
    return figure


def _how(figure: Published) -> str:
    return FLAGS[figure.flag] + (f"; {figure.note}" if figure.note else "")


def _remark(remark: Remark | None, keys: list[str]) -> str:
    if remark is None:
        return "nothing known here, which does not mean harmless"
    return f"{remark.text} [{keys.index(remark.source) + 1}] {FLAGS[remark.flag]}"


def _trade(wood: Species, keys: list[str]) -> str:
    trade = wood.trade
    if trade is None:
        return "nothing known here, which does not mean free; local law comes first"
    where = f"CITES Appendix {trade.appendix}, listed since {in_words(trade.since)}: " if trade.appendix else ""
    how = f"{FLAGS[trade.flag]}{f'; {trade.note}' if trade.note else ''}; looked up in {in_words(trade.looked_up)}"
    return f"{where}{trade.text} [{keys.index(trade.source) + 1}] {how}; local law comes first"


def moves(
    wood: Species,
    from_rh: float,
    to_rh: tuple[float, ...],
    temperature: float,
    width: float,
    said_in: tuple[LengthUnit, TemperatureUnit],
) -> Iterator[str]:
    """How a width moves, quartersawn and flatsawn, from one air to others; `said_in` are the units that are told."""
    units, degrees = said_in
    begun = float(equilibrium_moisture(temperature, from_rh))
    yield ""
    settled = f"settled at {from_rh:g} % and {in_degrees(temperature, degrees):g} {degrees} ({begun:.1f} % moisture)"
    yield f"{shown(width, 'mm', units)} across the grain, {settled}:"
    for humidity in to_rh:
        later = float(equilibrium_moisture(temperature, humidity))
        found = [_moved(wood, way, width, (begun, later), units) for way in ("radial", "tangential")]
        yield f"  at {humidity:g} % ({later:.1f} % moisture): quartersawn {found[0]}, flatsawn {found[1]}"
    if outside(*(float(equilibrium_moisture(temperature, each)) for each in (from_rh, *to_rh))):
        yield f"  {CARRIED_ON}"


def _moved(wood: Species, way: str, width: float, step: tuple[float, float], units: LengthUnit) -> str:
    figure = wood.movement("radial" if way == "radial" else "tangential")
    if figure is None:
        return "not known"
    change = movement(width, figure.value, *step).change
    return f"{'+' if change > 0 else ''}{shown(change, 'mm', units)}"
