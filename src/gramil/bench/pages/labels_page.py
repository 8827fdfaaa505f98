"""Labels of the pieces in stock and of the pieces that are followed, to print and tie on."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from starlette.responses import Response

from gramil.air.pieces import PIECE
from gramil.air.places import places
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest
from gramil.bench.pages.stock_page import sizes_of
from gramil.bench.pages.tools_page import unit_of_shop
from gramil.description.wood.own_woods import own_woods
from gramil.faults import MakersFault
from gramil.formatter import shown
from gramil.measure import LengthUnit, read_length
from gramil.sheets.labels import Label, labels_pdf
from gramil.shop.instruments import instruments
from gramil.shop.shop_in_store import shop_description
from gramil.shop.stock import Blank, blanks, promises
from gramil.store.items import Item, items, shop_unit
from gramil.store.opening import Store
from gramil.wood.permits import permit_of


def labels_file(request: PageRequest, _: OpenInstruments) -> Response:
    """The labels of the names that were ticked, or of everything that has a name."""
    wanted = set(request.many("name"))
    with request.record.opened() as store:
        found = list(labels_of(store, unit_of_shop(request, store), f"{request.now:%Y-%m-%d}"))
        paper = shop_description(store).shop.shop.paper_of_sheets
    chosen = [each for each in found if not wanted or each.name in wanted]
    if not chosen:
        raise MakersFault.of("no piece was ticked", remedy="tick the pieces that need a label")
    return Response(labels_pdf(chosen, paper), media_type="application/pdf")


def labels_of(store: Store, unit: LengthUnit, day: str) -> Iterator[Label]:
    """A label for each blank, and for each followed piece that is not a blank; protected wood is marked as such."""
    own = own_woods(shop_description(store).shop)
    yield from (replace(each, permit=permit_of(each.wood, own).brief) for each in _labels(store, unit, day))


def _labels(store: Store, unit: LengthUnit, day: str) -> Iterator[Label]:
    followed = {each.name: each for each in items(store, PIECE)}
    named = {each.id: each.name for each in places(store)}
    whose = _whose(store)
    raw = blanks(store)
    for each in raw:
        piece = followed.get(each.name)
        lies = _lies(piece) or named.get(each.place or 0, "")
        lines = (*_lines(lies, whose.get(each.id, ""), each.grain or _sawn(piece)), each.note)
        yield Label(each.name, each.wood, _counted(each, unit), day, tuple(filter(None, lines)))
    for name, piece in followed.items():
        if name not in {each.name for each in raw}:
            lines = _lines(_lies(piece), str(piece.figures.get("for", "")), _sawn(piece))
            part = str(piece.figures.get("part", ""))
            sizes = _sizes(store, piece, unit)
            yield Label(name, str(piece.figures.get("wood", "")), sizes, day, tuple(filter(None, (part, *lines))))


def _counted(blank: Blank, unit: LengthUnit) -> str:
    return sizes_of(blank, unit) + (f", {blank.count} alike" if blank.count > 1 else "")


def _whose(store: Store) -> Mapping[int, str]:
    """Instruments that a blank is promised to, by its number."""
    names = {each.id: each.name for each in instruments(store)}
    found: dict[int, list[str]] = {}
    for each in promises(store):
        if each.blank is not None and not each.used_at:
            found.setdefault(each.blank, []).append(f"{names.get(each.instrument, '')}, {each.need}")
    return {blank: "; ".join(each) for blank, each in found.items()}


def _lines(lies: str, whose: str, grain: str) -> tuple[str, ...]:
    return (f"lies in the {lies}" if lies else "", f"for {whose}" if whose else "", grain)


def _lies(piece: Item | None) -> str:
    stays = piece.figures.get("lay", ()) if piece else ()
    return str(stays[-1].get("place", "")) if stays else ""


def _sawn(piece: Item | None) -> str:
    return f"{piece.figures.get('sawn', 'quarter')}sawn" if piece else ""


def _sizes(store: Store, piece: Item, unit: LengthUnit) -> str:
    """Those sizes of a piece that are known, in the unit shown."""
    own = shop_unit(store)
    written = [piece.figures[key] for key in ("length", "width", "thickness") if key in piece.figures]
    return " × ".join(shown(float(read_length(each, own)), "mm", unit) for each in written)
