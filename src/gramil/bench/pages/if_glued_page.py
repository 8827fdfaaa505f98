"""If this were glued now: what would happen in the owner's air, and when it would be right to glue it."""

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

from starlette.responses import Response

from gramil import names as n
from gramil.air.air_in_store import places_in_store
from gramil.air.air_of_places import Places
from gramil.air.glue_up import BRACE, DOME, SPACING, USUAL, WHAT, GlueUp, What, case_of, what_first
from gramil.air.if_glued import Answer, Case, answer, figure_text
from gramil.air.pieces_now import PieceNow, pieces_now
from gramil.air.readiness import gluing_band
from gramil.bench.consequences import held_open
from gramil.bench.field_words import all_read
from gramil.bench.open_instruments import OpenInstrument, OpenInstruments
from gramil.bench.page_request import PageRequest
from gramil.bench.pages.tools_page import unit_of_shop
from gramil.description.marks import bounds_of
from gramil.description.reading import ShopDescription
from gramil.description.wood.own_woods import own_woods
from gramil.description.wood.tables import PieceTable
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit, read_length, read_percent
from gramil.shop.shop_in_store import shop_description
from gramil.wood.air import Air
from gramil.wood.movement import FIBRE_SATURATION
from gramil.wood.species import Species, find_species

WORDS: Mapping[str, str] = {
    "top": "a top to its braces",
    "board": "a board, bound or bare",
    "bridge": "a bridge to its top",
    "neck": "a board to its neck",
}
LATER = (25.0, 45.0, 65.0)
"""Relative humidities that are met later where no instrument says."""
HEADS: Mapping[Answer, str] = {"go": "Go", "wait": "Wait", "do this first": "Do this first"}


@dataclass(frozen=True)
class Outcome:
    """The answer: its word, why, what to do first, and the case that it rests on with its figures in words."""

    word: str
    why: str
    first: str
    case: Case
    figures: tuple[tuple[tuple[str, str], ...], ...]


@dataclass(frozen=True)
class Here:
    """The shop, its places and its pieces at this moment."""

    described: ShopDescription
    places: Places
    pieces: tuple[PieceNow, ...]


def if_glued_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The question and, if enough is given, the answer."""
    with request.record.opened() as store:
        described, unit = shop_description(store), unit_of_shop(request, store)
        places = places_in_store(store, described, request.now)
        known = held_open(store, open_instruments)
    now = request.now.replace(tzinfo=None)
    rows = pieces_now(described, places, now).known if described.shop.piece and places.known else ()
    here = Here(described, places, tuple(rows))
    what: What = next((each for each in WHAT if each == request.one("what")), "top")
    owner = next((each for number, each in known.items() if str(number) == request.one("instrument")), None)
    told: Outcome | None = None
    faults: tuple[Fault, ...] = ()
    if any(request.one(key) for key in ("piece", "moisture", "rh")):
        try:
            _all_readable(request, here, unit)
            told = _outcome(request, here, what, owner, unit)
        except MakersFault as fault:
            faults = fault.faults
    return request.page(
        "if_glued.html",
        422 if faults else 200,
        title="If glued now",
        what=what,
        words=WORDS,
        pieces=[each.row.name for each in here.pieces],
        instruments=[(number, each.seen.name) for number, each in known.items()],
        usual=USUAL[what],
        typed=request.one,
        told=told,
        faults=faults,
        unit=unit,
    )


def _all_readable(request: PageRequest, here: Here, unit: LengthUnit) -> None:
    """Raises MakersFault with what is wrong with any field that was typed into, all at once."""
    readers: Mapping[str, Callable[[], object]] = {
        "moisture": lambda: _percent(request, "moisture"),
        "rh": lambda: _percent(request, "rh", 100.0),
        "other_moisture": lambda: _percent(request, "other_moisture"),
        "wood": lambda: _wood(here, request.one("wood"), "wood"),
        "other": lambda: _wood(here, request.one("other"), "other"),
        "thickness": lambda: _length(request, "thickness", unit),
        "binding": lambda: _length(request, "binding", unit),
    }
    all_read(**{key: read for key, read in readers.items() if request.one(key)})


def _outcome(request: PageRequest, here: Here, what: What, owner: OpenInstrument | None, unit: LengthUnit) -> Outcome:
    now = request.now.replace(tzinfo=None)
    piece = next((each for each in here.pieces if each.row.name == request.one("piece")), None)
    case = case_of(_glue_up(request, here, what, piece, owner, unit), _airs(owner))
    band = gluing_band(here.described.shop, here.places, now)
    word, why = answer(case, band)
    first = "" if word == "go" else what_first(piece, here.places, now, band)
    figures = tuple(tuple((each.what, figure_text(each, unit)) for each in later.figures) for later in case.laters)
    return Outcome(HEADS[word], why, first, case, figures)


def _glue_up(
    request: PageRequest, here: Here, what: What, piece: PieceNow | None, owner: OpenInstrument | None, unit: LengthUnit
) -> GlueUp:
    """The glue-up as typed; what is not typed comes from the piece, then the instrument, then usual values."""
    row, own = piece.row if piece else None, _of_instrument(what, owner)
    usual = USUAL[what]
    wood = request.one("wood") or (row.wood if row else "") or own.get("wood", "") or usual.wood
    other = request.one("other") or own.get("other", "") or usual.other
    return GlueUp(
        what=what,
        wood=_wood(here, wood, "wood"),
        moisture=_moisture(request, piece),
        other=None if what == "board" else _wood(here, other, "other"),
        other_moisture=_percent(request, "other_moisture") if request.one("other_moisture") else None,
        flatsawn=row is not None and row.sawn == "flat",
        width=own.get("width"),
        thickness=_length(request, "thickness", unit) or (row.thickness if row else None) or own.get("thickness"),
        binding=_length(request, "binding", unit) or own.get("binding", 0.0),
        brace=own.get("brace", BRACE),
        spacing=own.get("spacing", SPACING),
        dome=own.get("dome", DOME),
        across=own.get("across", True),
    )


def _of_instrument(what: What, owner: OpenInstrument | None) -> dict[str, Any]:
    """What an instrument's own figures say of the glue-up, if it has them."""
    if owner is None:
        return {}
    top, figures = owner.description.instrument.top, owner.figures
    if what in ("board", "neck"):
        sizes = {"thickness": figures[n.board_thickness], "binding": figures[n.binding_thickness]}
        return {"wood": owner.description.instrument.board.wood, **_sound(sizes)}
    found = {"wood": top.wood, **_sound({"thickness": figures[n.top_thickness]})}
    if what == "top":
        brace = (float(figures[n.dome_brace_width]), float(figures[n.dome_brace_height]))
        radius = float(figures[n.top_radius])
        found |= {"other": top.brace_wood, "dome": radius if math.isfinite(radius) else 0.0}
        found |= {"across": not figures[n.across_unheld], **_sound({"spacing": figures[n.dome_brace_spacing]})}
        found |= {"brace": brace} if all(math.isfinite(each) and each > 0 for each in brace) else {}
    return found


def _sound(sizes: Mapping[str, Any]) -> dict[str, Any]:
    """Sizes greater than zero only: an instrument without a body has no sizes for it."""
    return {key: float(size) for key, size in sizes.items() if math.isfinite(size) and size > 0}


def _airs(owner: OpenInstrument | None) -> list[Air]:
    """The airs met later: at the owner's, dry, between and damp; or usual ones."""
    if owner is None:
        return [Air(20.0, humidity) for humidity in LATER]
    figures = owner.figures
    dry, wet = float(figures[n.limit_owner_humidity_least]), float(figures[n.limit_owner_humidity_most])
    return [Air(float(figures[n.limit_owner_temperature]), each) for each in (dry, 0.5 * (dry + wet), wet)]


def _wood(here: Here, name: str, where: str) -> Species:
    if not name:
        raise MakersFault.of("this wood is not given", remedy="write its name", where=where)
    try:
        return find_species(name, own_woods(here.described.shop))
    except MakersFault as fault:
        raise MakersFault(Fault(None, where, each.what, each.why, each.remedy) for each in fault.faults) from None


def _moisture(request: PageRequest, piece: PieceNow | None) -> float:
    """The moisture from the piece's record, from a meter, or as the wood comes to in a given air."""
    if request.one("moisture"):
        return _percent(request, "moisture")
    if request.one("rh"):
        return Air(20.0, _percent(request, "rh", 100.0)).moisture
    if piece is None:
        raise MakersFault.of("there is no such piece", remedy="choose one from the list", where="piece")
    return piece.state.mean.likely


def _percent(request: PageRequest, key: str, most: float = FIBRE_SATURATION) -> float:
    try:
        percent = float(read_percent(request.one(key).replace(",", ".")))
    except ValueError as error:
        raise MakersFault.of(str(error), where=key) from None
    if not 0 <= percent <= most:
        raise MakersFault.of(f"read {percent:g} %", f"0 to {most:g} %", where=key)
    return percent


def _length(request: PageRequest, key: str, unit: LengthUnit) -> float | None:
    if not request.one(key):
        return None
    try:
        length = float(read_length(request.one(key).replace(",", "."), unit))
    except ValueError as error:
        raise MakersFault.of(str(error), where=key) from None
    bounds = bounds_of(PieceTable, "thickness")
    if not bounds.holds(length):
        raise MakersFault.of(f"read {request.one(key)}", f"more than 0, at most {bounds.most:g} mm", where=key)
    return length
