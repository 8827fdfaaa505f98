"""A shop begun: the usual wire, saws, cutters and blocks kept or left out, jigs, places and wood, on one page."""

from collections.abc import Iterator

from starlette.responses import Response

from gramil.acts.tools import bring_in_description
from gramil.bare_numbers import length_unit
from gramil.bench.field_words import at_field
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest, go
from gramil.bench.pages.tools_page import unit_of_shop
from gramil.description.shop.new_shop import (
    JIGS,
    KINDS,
    USUAL_PAPER,
    Jig,
    NewShop,
    Piece,
    new_shop,
    usual_names,
    usual_radii,
)
from gramil.faults import Fault, MakersFault
from gramil.formatter import shown
from gramil.measure import LengthUnit, read_length
from gramil.paper_sizes import SIZES

TITLE = "The shop"
PIECES = 4
"""Rows for wood in stock: more is written down on its own page."""
SIZED = ("length", "width", "thickness")


def new_shop_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The questions of a shop, the usual answers in them."""
    return _shown(request)


def make_shop(request: PageRequest, _: OpenInstruments) -> Response:
    """The shop as answered, brought into the record as one act; faults come back with what was typed."""
    with request.record.opened() as store:
        unit = _unit(request, unit_of_shop(request, store))
        try:
            bring_in_description(store, new_shop(_answered(request, unit)), "the new shop", request.hand)
        except MakersFault as fault:
            return _shown(request, fault.faults)
    request.session.unit = unit
    return go("/tools")


def _shown(request: PageRequest, faults: tuple[Fault, ...] = ()) -> Response:
    with request.record.opened() as store:
        unit = _unit(request, unit_of_shop(request, store))
    kept = {kind: _kept(request, kind) for kind in KINDS}
    said = {name: shown(radius, "mm", unit) for name, radius in usual_radii().items()}
    return request.page(
        "new_shop.html",
        422 if faults else 200,
        title=TITLE,
        faults=faults,
        unit=unit,
        papers=tuple(SIZES),
        usual_paper=USUAL_PAPER[unit],
        kinds=[
            (kind, words, [(name, said.get(name, name), name in kept[kind]) for name in usual_names(kind)])
            for kind, words in KINDS.items()
        ],
        saws=usual_names("saw"),
        jigs=JIGS,
        pieces=range(1, PIECES + 1),
        sized=SIZED,
        typed=lambda key, usual="": request.one(key, usual),
    )


def _unit(request: PageRequest, own: LengthUnit) -> LengthUnit:
    return length_unit(request.one("units"), own)


def _kept(request: PageRequest, kind: str) -> tuple[str, ...]:
    """Which of the usual ones are kept: those that are ticked, at first all."""
    return request.many(kind) if request.form else usual_names(kind)


def _answered(request: PageRequest, unit: LengthUnit) -> NewShop:
    """The answers. Raises MakersFault, each fault at its field."""
    faults = list[Fault]()
    kerfs = dict(_lengths(request, [f"kerf {each}" for each in request.many("saw")], unit, faults))
    jigs = tuple(_jigs(request, unit, faults))
    stock = tuple(_stock(request, unit, faults))
    if faults:
        raise MakersFault(faults)
    places = tuple(each.strip() for each in request.one("places").split(",") if each.strip())
    return NewShop(
        request.one("name") or "My shop",
        unit,
        request.one("paper"),
        {kind: request.many(kind) for kind in KINDS},
        {key.removeprefix("kerf "): value for key, value in kerfs.items()},
        jigs,
        places,
        stock,
    )


def _lengths(request: PageRequest, keys: list[str], unit: LengthUnit, faults: list[Fault]) -> Iterator[tuple[str, str]]:
    """Lengths that were typed, with their unit; what cannot be read is a fault at its field."""
    for key in keys:
        written = request.one(key)
        if not written:
            continue
        try:
            with at_field(key):
                read_length(written, unit)
        except MakersFault as fault:
            faults += fault.faults
        else:
            yield key, f"{written} {unit}" if written[-1:].isdigit() else written


def _jigs(request: PageRequest, unit: LengthUnit, faults: list[Fault]) -> Iterator[Jig]:
    """Jigs whose constant is typed, each with the day on which it was measured, if that is known."""
    for serves in JIGS:
        constant = dict(_lengths(request, [f"jig {serves}"], unit, faults)).get(f"jig {serves}")
        checked = request.one(f"checked {serves}")
        if checked and not constant and not request.one(f"jig {serves}"):
            faults.append(Fault(where=f"jig {serves}", what="no constant", remedy="measure it, or leave out the day"))
        if constant:
            yield Jig(serves, constant, checked)


def _stock(request: PageRequest, unit: LengthUnit, faults: list[Fault]) -> Iterator[Piece]:
    """Pieces of wood whose name is typed."""
    for row in range(1, PIECES + 1):
        name, keys = request.one(f"piece {row}"), [f"{key} {row}" for key in SIZED]
        sizes = dict(_lengths(request, keys, unit, faults))
        if not name:
            continue
        faults += [
            Fault(where=key, what="no size", remedy="measure the piece")
            for key in (f"wood {row}", *keys)
            if not request.one(key)
        ]
        if len(sizes) == len(SIZED):
            length, width, thickness = (sizes[key] for key in keys)
            yield Piece(name, request.one(f"wood {row}"), (length, width, thickness))
