"""`gramil if-glued`: what gluing wood now, as it is, would do later: go, wait until, or do this first."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

import click

from gramil.cli.moments import now_option
from gramil.cli.options import shop_file
from gramil.cli.wood_options import HUMIDITY, LENGTH, MOISTURE
from gramil.description.own_woods import own_woods
from gramil.description.reading import ShopDescription, read_shop
from gramil.faults import MakersFault
from gramil.measure import LengthUnit, show
from gramil.shop.air_of_places import Places, places_of
from gramil.shop.if_glued import Case, Figure, Sized, answer, bound_board, braced_plate, bridge, flat, neck_and_board
from gramil.shop.pieces_now import PieceNow, pieces_now
from gramil.shop.readiness import gluing_band, readiness, when
from gramil.wood.air import Air
from gramil.wood.restraint import Plate
from gramil.wood.species import Species, find_species

WHAT = ("top", "board", "bridge", "neck")
USUAL: Mapping[str, Mapping[str, Any]] = {
    "top": {"wood": "Sitka spruce", "other": "Sitka spruce", "length": 500.0, "width": 400.0, "thickness": 2.8},
    "board": {"wood": "", "other": "", "length": 430.0, "width": 56.0, "thickness": 6.3},
    "bridge": {"wood": "Sitka spruce", "other": "", "length": 500.0, "width": 400.0, "thickness": 2.8},
    "neck": {"wood": "", "other": "African mahogany", "length": 430.0, "width": 56.0, "thickness": 6.3},
}
"""Woods and sizes that stand in where none are given: common practice. "other" is what it is glued to."""
OTHER_SIZES = {"bridge": (150.0, 30.0, 9.0), "neck": (350.0, 50.0, 16.0)}
"""Length, width and thickness of what it is glued to: common practice."""


@click.command()
@click.argument("what", type=click.Choice(WHAT))
@click.option("--wood", help="Wood of the top, or of the board.")
@click.option("--moisture", type=MOISTURE, help="Its moisture now, by weighing or a meter.")
@click.option("--rh", type=HUMIDITY, help="Or the relative humidity that it has settled in.")
@click.option("--piece", help="Or the piece of the shop that it is, by name.")
@click.option("--later", type=HUMIDITY, multiple=True, help="Relative humidity met later; 25, 45 and 65 if not given.")
@click.option("--temperature", type=click.FloatRange(-30, 55), default=20.0, show_default=True, help="In C.")
@click.option("--sawn", type=click.Choice(["quarter", "flat"]), default="quarter", show_default=True)
@click.option("--thickness", type=LENGTH, help="Its thickness.")
@click.option("--width", type=LENGTH, help="Its width, for a board.")
@click.option("--binding", type=LENGTH, default="0 mm", help="Thickness of a board's binding.")
@click.option("--to", "other", help="Wood of what it is glued to: braces, bridge or neck.")
@click.option("--to-moisture", type=MOISTURE, help="Moisture of the neck; that of the board if not given.")
@click.option("--brace", nargs=2, type=LENGTH, default=("8 mm", "14 mm"), show_default=True, help="Width, height.")
@click.option("--spacing", type=LENGTH, default="90 mm", show_default=True, help="From brace to brace.")
@click.option(
    "--dome", type=LENGTH, default="7620 mm", show_default=True, help="Radius of the dome as glued; 0 is flat."
)
@click.option(
    "--units", type=click.Choice(["mm", "in"]), default="mm", show_default=True, help="Unit of lengths shown."
)
@shop_file
@now_option
def command(what: str, shop: Path | None, now: datetime, units: LengthUnit, **said: Any) -> None:
    """What comes of gluing now: a braced TOP, a BOARD (bound or not), a BRIDGE on its top, or a board to its NECK.

    \b
    gramil if-glued top --wood "Sitka spruce" --rh 60
    gramil if-glued board --shop shop.toml --piece "persimmon 2" --binding "1.8 mm" --now 2026-01-19T09:00
    gramil if-glued neck --wood persimmon --moisture 10 --to "African mahogany" --to-moisture 8
    """
    description = read_shop(shop)
    at = _Bench(description, places_of(description), now)
    piece = at.piece(said["piece"]) if said["piece"] else None
    board = _sized(what, piece, at, said)
    airs = [Air(said["temperature"], humidity) for humidity in said["later"] or (25.0, 45.0, 65.0)]
    case = _case(what, board, airs, at, said)
    for line in (*told(case, units), *verdict_told(case, piece, at)):
        click.echo(line)


@dataclass(frozen=True)
class _Bench:
    """The shop, its places, and the moment."""

    description: ShopDescription
    places: Places
    now: datetime

    @property
    def band(self) -> tuple[float, float]:
        """Moistures for gluing."""
        return gluing_band(self.description.shop, self.places, self.now)

    def piece(self, name: str) -> PieceNow:
        """A piece of the shop by its name. Raises MakersFault where there is none, or its moisture is not known."""
        found = pieces_now(self.description, self.places, self.now)
        for each in found.known:
            if each.row.name == name:
                return each
        why = next((each.why for each in found.unknown if each.row.name == name), "")
        names = ", ".join(row.name for row in self.description.shop.piece) or "none"
        if why:
            raise MakersFault.of(f"the moisture of {name} is not known", why, "say where it lay, or give --moisture")
        raise MakersFault.of(f'no piece called "{name}"', f"the shop's pieces: {names}", "name one of them")

    def wood(self, name: str, option: str) -> Species:
        """A wood by its name. Raises MakersFault with the nearest names."""
        if not name:
            raise MakersFault.of("the wood is not given", "", f'write {option}, such as {option} "persimmon"')
        return find_species(name, own_woods(self.description.shop))


def _sized(what: str, piece: PieceNow | None, at: _Bench, said: dict[str, Any]) -> Sized:
    """The top or the board: from the piece, from options, or of usual size."""
    usual = USUAL[what]
    row = piece.row if piece else None
    wood = said["wood"] or (row.wood if row else usual["wood"])
    flatsawn = (row.sawn if row else said["sawn"]) == "flat"
    moisture = _moisture(piece, said)
    return Sized(
        at.wood(wood, "--wood"),
        "tangential" if flatsawn else "radial",
        moisture,
        usual["length"],
        said["width"] or usual["width"],
        said["thickness"] or usual["thickness"],
    )


def _moisture(piece: PieceNow | None, said: dict[str, Any]) -> float:
    given = [each for each in ("moisture", "rh", "piece") if said[each] is not None]
    if len(given) != 1:
        what = "its moisture is not given" if not given else "its moisture is given in more than one way"
        raise MakersFault.of(what, "", "write one of --moisture, --rh (what it has settled in), or --piece with --shop")
    if piece is not None:
        return piece.state.mean.likely
    moisture: float = said["moisture"] if said["rh"] is None else Air(said["temperature"], said["rh"]).moisture
    return moisture


def _case(what: str, board: Sized, airs: list[Air], at: _Bench, said: dict[str, Any]) -> Case:
    if what == "board":
        return bound_board(board, said["binding"], airs)
    usual = USUAL[what]
    species = at.wood(said["other"] or usual["other"], "--to")
    if what == "top":
        width, height = said["brace"]
        plate = Plate(
            board.species, board.direction, board.thickness, species, width, height, said["spacing"], said["dome"]
        )
        return braced_plate(plate, board.moisture, airs)
    moisture = board.moisture if said["to_moisture"] is None else said["to_moisture"]
    other = Sized(species, "radial", moisture, *OTHER_SIZES[what])
    return bridge(board, other, airs) if what == "bridge" else neck_and_board(board, other, airs)


def told(case: Case, units: LengthUnit) -> Iterator[str]:
    """The lines of a case: each air with its figures, and what was assumed."""
    yield click.style(f"{case.what[:1].upper()}{case.what[1:]}, glued at {case.moisture:.1f} % moisture", bold=True)
    for later in case.laters:
        yield f"  at {later.humidity:g} %, settled at {later.moisture:.1f} % moisture"
        for figure in later.figures:
            yield f"    {figure.what:<52} {_shown(figure, units)}"
        yield f"    {later.judgement}: {later.why}"
    yield "  assumed"
    yield from (f"    {words}" for words in case.assumptions)


def _shown(figure: Figure, units: LengthUnit) -> str:
    least, most = (_value(each, figure.unit, units) for each in (figure.least, figure.most))
    return least if least == most else f"{least} to {most}"


def _value(value: float, unit: str, units: LengthUnit) -> str:
    if unit == "radius":
        return "flat" if flat(value) else f"{value / 304.8:.1f} ft" if units == "in" else f"{value / 1000:.2f} m"
    if unit == "mm":
        return show(value, units)
    return f"{value + 0.0:.2f} {unit}".replace("-0.00 ", "0.00 ")


def verdict_told(case: Case, piece: PieceNow | None, at: _Bench) -> Iterator[str]:
    """Go, wait until, or do this first."""
    word, why = answer(case, at.band)
    head = {"go": "GO", "wait": "WAIT", "do this first": "DO THIS FIRST"}[word]
    yield click.style(f"{head}: {why}.", bold=True)
    if word == "go":
        return
    if piece is None:
        band = f"{at.band[0]:.1f} to {at.band[1]:.1f} %"
        yield f"  Settle it in the air for gluing until it weighs the same for days: {band} of moisture."
        return
    found = readiness(piece, at.places, at.now, at.band)
    if found.best is None:
        yield "  No place of the shop brings it there: change the air of one."
    elif found.best.place == piece.place:
        yield f"  Left in the {found.best.place}: ready {when(found.best.ready, at.now)}."
    else:
        yield f"  Laid in the {found.best.place} now: ready {when(found.best.ready, at.now)}."
