"""`gramil if-glued`: what gluing wood now, as it is, would do later: go, wait until, or do this first."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

import click

from gramil.air.air_of_places import Places, places_of
from gramil.air.glue_up import USUAL, WHAT, GlueUp, What, case_of, what_first
from gramil.air.if_glued import Case, answer, figure_text
from gramil.air.pieces_now import PieceNow, pieces_now
from gramil.air.readiness import gluing_band
from gramil.cli.json_option import json_option, write_answer
from gramil.cli.kinds import HUMIDITY, MOISTURE, UNITS, length, size, temperature_of
from gramil.cli.moments import now_option
from gramil.cli.options import shop_file
from gramil.description.reading import ShopDescription, read_shop
from gramil.description.wood.own_woods import own_woods
from gramil.faults import MakersFault
from gramil.in_shop_units import in_shop_units
from gramil.measure import LengthUnit
from gramil.wood.air import Air
from gramil.wood.species import Species, find_species


@click.command()
@click.argument("what", type=click.Choice(WHAT))
@click.option("--wood", help="Wood of the top, or of the board.")
@click.option("--moisture", type=MOISTURE, help="Its moisture now, by weighing or a meter.")
@click.option("--rh", type=HUMIDITY, help="Or the relative humidity that it has settled in.")
@click.option("--piece", help="Or the piece of the shop that it is, by name.")
@click.option("--later", type=HUMIDITY, multiple=True, help="Relative humidity met later; 25, 45 and 65 if not given.")
@click.option("--temperature", default="20 C", show_default=True, help="In C or F; a bare number in the shop's.")
@click.option("--sawn", type=click.Choice(["quarter", "flat"]), default="quarter", show_default=True)
@click.option("--thickness", help="Its thickness.")
@click.option("--width", help="Its width, for a board.")
@click.option("--binding", default="0 mm", help="Thickness of a board's binding.")
@click.option("--to", "other", help="Wood of what it is glued to: braces, bridge or neck.")
@click.option("--to-moisture", type=MOISTURE, help="Moisture of the neck; that of the board if not given.")
@click.option("--brace", nargs=2, default=("8 mm", "14 mm"), show_default=True, help="Width, height.")
@click.option("--spacing", default="90 mm", show_default=True, help="From brace to brace.")
@click.option("--dome", default="7620 mm", show_default=True, help="Radius of the dome as glued; 0 is flat.")
@click.option("--fan", is_flag=True, help="A top braced along its grain: its dome is not judged.")
@click.option("--units", type=UNITS, help="Unit of lengths shown and of bare ones; the shop's, or mm, if not given.")
@shop_file
@json_option
@now_option
def command(what: What, shop: Path | None, now: datetime, units: LengthUnit | None, as_json: bool, **said: Any) -> None:
    """What comes of gluing now: a braced TOP, a BOARD (bound or not), a BRIDGE on its top, or a board to its NECK.

    \b
    gramil if-glued top --wood "Sitka spruce" --rh 60
    gramil if-glued board --shop shop.toml --piece "persimmon 2" --binding "1.8 mm" --now 2026-01-19T09:00
    gramil if-glued neck --wood persimmon --moisture 10 --to "African mahogany" --to-moisture 8
    """
    description = read_shop(shop)
    units = units or description.shop.shop.units
    said |= _lengths(said, units)
    said["temperature"] = temperature_of(said["temperature"], description.shop.shop.temperature, "--temperature")
    at = _Bench(description, places_of(description), now)
    piece = at.piece(said["piece"]) if said["piece"] else None
    airs = [Air(said["temperature"], humidity) for humidity in said["later"] or (25.0, 45.0, 65.0)]
    case = case_of(_asked(what, piece, at, said), airs)
    if as_json:
        from gramil.answers.air import IfGlued

        word, why = answer(case, at.band)
        first = "" if word == "go" else what_first(piece, at.places, at.now, at.band)
        write_answer("if-glued", (), IfGlued(case, word, why, first))
        return
    for line in (*case_lines(case, units), *verdict_lines(case, piece, at)):
        click.echo(line)


def _lengths(said: dict[str, Any], unit: LengthUnit) -> dict[str, Any]:
    """The lengths that were given, in mm."""
    sizes = {
        key: size(said[key], unit, f"--{key}") for key in ("thickness", "width", "spacing") if said[key] is not None
    }
    plain = {key: length(said[key], unit, f"--{key}") for key in ("binding", "dome")}
    return {**sizes, **plain, "brace": tuple(size(each, unit, "--brace") for each in said["brace"])}


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
        """A piece of the shop by its name. Raises MakersFault if there is none, or its moisture is not known."""
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


def _asked(what: What, piece: PieceNow | None, at: _Bench, said: dict[str, Any]) -> GlueUp:
    """The glue-up: from the piece, from options, or of usual woods and sizes."""
    row, usual = piece.row if piece else None, USUAL[what]
    return GlueUp(
        what=what,
        wood=at.wood(said["wood"] or (row.wood if row else usual.wood), "--wood"),
        moisture=_moisture(piece, said),
        other=None if what == "board" else at.wood(said["other"] or usual.other, "--to"),
        other_moisture=said["to_moisture"],
        flatsawn=(row.sawn if row else said["sawn"]) == "flat",
        width=said["width"],
        thickness=said["thickness"],
        binding=said["binding"],
        brace=said["brace"],
        spacing=said["spacing"],
        dome=said["dome"],
        across=not said["fan"],
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


def case_lines(case: Case, units: LengthUnit) -> Iterator[str]:
    """The lines of a case: each air with its figures, and what was assumed."""
    yield click.style(f"{case.what[:1].upper()}{case.what[1:]}, glued at {case.moisture:.1f} % moisture", bold=True)
    for later in case.laters:
        yield f"  at {later.humidity:g} %, settled at {later.moisture:.1f} % moisture"
        for figure in later.figures:
            yield f"    {figure.what:<52} {figure_text(figure, units)}"
        yield f"    {later.judgement}: {in_shop_units(later.why, units)}"
    yield "  assumed"
    yield from (f"    {in_shop_units(words, units)}" for words in case.assumptions)


def verdict_lines(case: Case, piece: PieceNow | None, at: _Bench) -> Iterator[str]:
    """Go, wait until, or do this first."""
    word, why = answer(case, at.band)
    head = {"go": "GO", "wait": "WAIT", "do this first": "DO THIS FIRST"}[word]
    yield click.style(f"{head}: {why}.", bold=True)
    if word == "go":
        return
    yield f"  {what_first(piece, at.places, at.now, at.band)}"
