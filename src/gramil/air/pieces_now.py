"""The moisture of the pieces that a shop's description lists, from where they lay and what they weighed."""

from dataclasses import dataclass, replace
from datetime import datetime

from gramil.air.air_of_places import Places
from gramil.description.reading import ShopDescription
from gramil.description.wood.own_woods import own_woods
from gramil.description.wood.tables import PieceTable
from gramil.faults import MakersFault
from gramil.wood.moisture import MoistureNow, as_weighed, carried_on, evenly, moisture_now
from gramil.wood.piece import Face, Piece
from gramil.wood.species import Species, find_species
from gramil.wood.stays import Kept, Stay
from gramil.wood.weighing import Weighing, calibrated, dry_mass_from, moisture_by_weight

FACES: dict[str, tuple[Face, Face]] = {
    "none": ("open", "open"),
    "one face": ("open", "sealed"),
    "both faces": ("sealed", "sealed"),
}
"""Faces of a piece by what the description says of it."""


@dataclass(frozen=True)
class PieceNow:
    """A piece as described, its moisture at a moment, and where it lies at that moment (empty: not known)."""

    row: PieceTable
    state: MoistureNow
    place: str


@dataclass(frozen=True)
class PieceUnknown:
    """A piece whose moisture cannot be told, and why not."""

    row: PieceTable
    why: str


@dataclass(frozen=True)
class Pieces:
    """Pieces whose moisture is known, and the others."""

    known: tuple[PieceNow, ...]
    unknown: tuple[PieceUnknown, ...]


def pieces_now(description: ShopDescription, places: Places, now: datetime) -> Pieces:
    """Every piece of the shop at a moment."""
    woods, known, unknown = own_woods(description.shop), [], []
    for row in description.shop.piece:
        try:
            known.append(_piece_now(row, find_species(row.wood, woods), places, now))
        except MakersFault as fault:
            unknown.append(PieceUnknown(row, "; ".join(f"{each.where} {each.what}".strip() for each in fault.faults)))
    return Pieces(tuple(known), tuple(unknown))


def piece_of(row: PieceTable, species: Species) -> Piece:
    """A piece as the moisture model needs it."""
    return Piece(species, row.thickness, FACES[row.sealed], row.length if row.open_ends else None)


def kept_of(row: PieceTable, places: Places, now: datetime) -> Kept:
    """Where a piece has lain up to a moment. Raises MakersFault if it lay in a place without readings."""
    stays = []
    for stay, later in zip(row.lay, (*row.lay[1:], None), strict=False):  # where it lay may not be known
        ends = stay.ends or (later.begins if later else max(now, stay.begins))
        place = places.known.get(stay.place)
        if place is None:
            raise MakersFault.of(f"it lay in the {stay.place}, which has no readings")
        if stay.begins < now:
            stays.append(Stay(place.history, stay.begins, min(ends, now)))
    if not stays:
        raise MakersFault.of("it is not known where it lay", remedy="write lay = [{ place = ..., from = ... }]")
    return Kept(tuple(stays), row.moisture)


def _piece_now(row: PieceTable, species: Species, places: Places, now: datetime) -> PieceNow:
    piece, weighings = piece_of(row, species), _weighings(row, now)
    lies = next((stay.place for stay in reversed(row.lay) if stay.begins < now and not stay.ends), "")
    if not row.lay and row.moisture is not None:
        return PieceNow(row, evenly(piece, row.moisture, now), "")
    kept, dry = kept_of(row, places, now), _dry_mass(row, weighings)
    if dry is None:
        return PieceNow(row, moisture_now([piece], [kept], now)[0], lies)
    return PieceNow(row, _weighed(row, piece, kept, weighings, dry, now), lies)


def _weighings(row: PieceTable, now: datetime) -> tuple[Weighing, ...]:
    ordered = sorted(row.weighings, key=lambda each: each.at)
    return tuple(Weighing(each.at, each.mass) for each in ordered if each.at <= now)


def _dry_mass(row: PieceTable, weighings: tuple[Weighing, ...]) -> float | None:
    """Oven-dry mass as given, or from the first weight and the moisture at the beginning; None if neither helps."""
    if not weighings:
        return None
    if row.dry_mass is not None:
        return row.dry_mass
    return None if row.moisture is None else dry_mass_from(weighings[0].mass, row.moisture)


def _weighed(
    row: PieceTable, piece: Piece, kept: Kept, weighings: tuple[Weighing, ...], dry: float, now: datetime
) -> MoistureNow:
    """The state after the last weighing, carried on to now: its mean as weighed, its pace fitted to all the
    weighings.
    """
    last, past = weighings[-1], kept
    if len(weighings) > 1:
        piece = calibrated(piece, kept, weighings, dry, row.balance)
        past = _from(kept, weighings[0], dry)
    before = moisture_now([piece], [past], last.moment)[0]
    state = as_weighed(before, moisture_by_weight(last.mass, dry))
    return carried_on(state, kept, now) if now > last.moment else state


def _from(kept: Kept, first: Weighing, dry: float) -> Kept:
    """The air that it lay in since its first weighing, with the moisture that it had then."""
    stays = tuple(
        replace(stay, begins=max(stay.begins, first.moment)) for stay in kept.stays if stay.ends > first.moment
    )
    return Kept(stays, moisture_by_weight(first.mass, dry))
