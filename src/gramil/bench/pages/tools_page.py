"""Tools and jigs: their figures, jigs' constants with the day of the check, saws' test cuts, and the shop as a text."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from importlib.resources import files
from typing import Any

from starlette.responses import Response

from gramil.acts import tools as acts
from gramil.bare_numbers import length_unit, with_unit
from gramil.bench.consequences import consequences, held_open, stale_lines
from gramil.bench.doubts import AS_READ, Doubt, doubts
from gramil.bench.field_words import all_read, at_field
from gramil.bench.measuring import bare
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest, go
from gramil.bench.row_form import lengths_of
from gramil.change.questioned_tools import constant_questioned, cuts_questioned
from gramil.description.reading import DEFAULT_SHOP
from gramil.faults import MakersFault
from gramil.formatter import shown
from gramil.in_shop_units import in_shop_units
from gramil.measure import LengthUnit, read_length
from gramil.shop.tools import kerf
from gramil.store.items import Item, items, shop_unit
from gramil.store.opening import Store

KINDS = {
    "wire": "Fret wire",
    "saw": "Saws",
    "jig": "Jigs",
    "cutter": "Router cutters",
    "block": "Sanding blocks",
    "template": "Index templates",
    "tapped": "Pieces tapped or pushed",
    "pushed": "Pushes on strung guitars",
    "finished": "Finished tops",
}
"""Kinds of items that are tools, in the order in which they are shown."""


@dataclass(frozen=True)
class ToolRow:
    """A tool: what is known of it, in words, and for a saw or a jig its measured figure, ready to be typed again."""

    item: Item
    words: tuple[tuple[str, str], ...]
    used: str


def unit_of_shop(request: PageRequest, store: Store) -> LengthUnit:
    """The unit of bare lengths on pages of the shop: as swapped here, else the shop's own."""
    return length_unit(request.session.unit, shop_unit(store))


def tools_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Every tool by kind, and sheets that a changed tool made stale."""
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
        groups = [(words, [_row(store, each, unit) for each in items(store, kind)]) for kind, words in KINDS.items()]
        stale = list(stale_lines(store, open_instruments, held_open(store, open_instruments)))
    shown_groups = [(words, rows) for words, rows in groups if rows]
    told = request.session.told if request.one("told") else ()
    return request.page(
        "tools.html", title="Tools and jigs", groups=shown_groups, stale=stale, unit=unit, told=told, kinds=KINDS
    )


def _row(store: Store, item: Item, unit: LengthUnit) -> ToolRow:
    used = ""
    if item.kind == "saw":
        found = kerf(store, item)
        used = f"cuts {shown(found.used, 'mm', unit)}"
        used += f", {found.cuts} test cuts, {found.at[:10]}" if found.measured is not None else ", by its label"
    return ToolRow(item, tuple(tool_words(item, shop_unit(store), unit)), used)


def tool_words(item: Item, own: LengthUnit, unit: LengthUnit) -> Iterator[tuple[str, str]]:
    """What is known of a tool; bare lengths, which are in the shop's `own` unit, get their unit or are put into the
    page's. One that was written in mm is told in inches where those are shown.
    """
    lengths = lengths_of(item.kind)
    for key, value in item.figures.items():
        said = _said(value, own, unit) if key in lengths else _said(value)
        yield "" if key == "what" else key.replace("_", " "), said


def _said(value: Any, own: LengthUnit | None = None, unit: LengthUnit | None = None) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, list):
        return ", ".join(_said(each, own, unit) for each in value)
    if own is None or unit is None:
        return str(value)
    if isinstance(value, str):
        return in_shop_units(value, unit)
    return f"{value:g} {unit}" if own == unit else shown(read_length(f"{value} {own}", own), "mm", unit)


def _item(store: Store, request: PageRequest, kind: str) -> Item:
    found = next((each for each in items(store, kind) if str(each.id) == request.one("item")), None)
    if found is None:
        raise MakersFault.of(f"that {kind} is not there any more", remedy="open the page again")
    return found


def check_jig(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Note a jig's constant as just measured, and say what follows."""
    with request.record.opened() as store:
        jig = _item(store, request, "jig")
        unit = unit_of_shop(request, store)
        (constant,) = all_read(constant=lambda: read_length(bare(request.one("constant")), unit))
        written = with_unit(bare(request.one("constant")), "mm", unit)
        if found := doubts(request, constant_questioned(store, jig, constant, written), unit):
            return _is_it_so(request, found, f"jig-{jig.id}")
        before = held_open(store, open_instruments)
        acts.check_jig(store, jig, constant, request.hand)
        request.session.told = (f"{jig.name} is checked.", *consequences(store, open_instruments, before))
    return go("/tools?told=1#told")


def try_saw(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Note the widths of test cuts, separated by commas, and say what follows."""
    with request.record.opened() as store:
        saw, unit = _item(store, request, "saw"), unit_of_shop(request, store)
        (widths,) = all_read(widths=lambda: _widths(request, unit))
        if found := doubts(request, cuts_questioned(store, saw, widths), unit):
            return _is_it_so(request, found, f"saw-{saw.id}")
        before = held_open(store, open_instruments)
        with at_field("widths"):
            acts.try_saw(store, saw, widths, request.hand)
        used = shown(kerf(store, saw).used, "mm", unit)
        request.session.told = (f"{saw.name} cuts {used}.", *consequences(store, open_instruments, before))
    return go("/tools?told=1#told")


def _widths(request: PageRequest, unit: LengthUnit) -> list[float]:
    """The widths of test cuts, in mm. Raises MakersFault, and MeasureError as `read_length` does."""
    return [read_length(each, unit) for each in request.one("widths").replace(";", ",").split(",") if each.strip()]


def _is_it_so(request: PageRequest, found: Mapping[str, Doubt], keep: str) -> Response:
    """The page that asks about a reading of a tool, what was typed kept in it; `keep` is the form's name."""
    fields = [(key, request.one(key)) for key in request.form if key not in ("token", AS_READ)]
    return request.page("doubts.html", 422, title="Is that what was read?", doubts=found, fields=fields, keep=keep)


def bring_in(request: PageRequest, _: OpenInstruments) -> Response:
    """A shop's description brought in: as pasted, or the usual one to begin with."""
    text = request.one("text")
    if request.one("usual"):
        text = (files("gramil") / "data" / DEFAULT_SHOP).read_text(encoding="utf-8")
    with request.record.opened() as store, at_field("text"):
        acts.bring_in_description(store, text, "what was brought in", request.hand)
    return go("/tools")
