"""A tool written down, changed or removed by form; the page says what this means for the instruments."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Any

from starlette.responses import Response

from gramil.acts.tools import keep_tool as write_down
from gramil.acts.tools import strike_tool
from gramil.air.places import places
from gramil.bare_numbers import length_unit, with_unit
from gramil.bench.consequences import consequences, held_open
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import Missing, PageRequest, go
from gramil.bench.pages.correcting import Correction, question_page
from gramil.bench.pages.tools_page import tool_words, unit_of_shop
from gramil.bench.row_form import by_key, entries, lengths_of, row_typed
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit
from gramil.store.failures import Conflict
from gramil.store.items import Item, items, shop_unit
from gramil.store.opening import Store

ONE = {
    "wire": "Fret wire",
    "saw": "A saw",
    "jig": "A jig",
    "cutter": "A router cutter",
    "block": "A sanding block",
    "template": "An index template",
    "wood": "A wood of your own",
    "piece": "A piece to follow",
    "tapped": "A piece tapped or pushed",
    "pushed": "A push on a strung guitar",
    "finished": "A finished top",
}
"""Kinds of rows that are written by form, each as one of them is called."""


def tool_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The form of a new tool (`kind`), or of an existing one (`item`)."""
    with request.record.opened() as store:
        item, unit = _item(request, store), unit_of_shop(request, store)
        first = {"checked": request.now.date().isoformat()} if item.kind == "jig" and not item.id else {}
        return _form(request, store, item, {**first, "name": item.name, **_in_unit(item, store, unit)}, unit)


def _item(request: PageRequest, store: Store) -> Item:
    """The item that is asked for; a new one of its kind is without a number."""
    if request.one("item"):
        found = next((each for each in items(store) if str(each.id) == request.one("item")), None)
        if found is None or found.kind not in ONE:
            raise Missing("tool of that number")
        return found
    if request.one("kind") not in ONE:
        raise Missing("kind of tool")
    return Item(request.one("kind"), "", {})


def _in_unit(item: Item, store: Store, unit: LengthUnit) -> Mapping[str, Any]:
    """What the item holds; if the page shows another unit than the shop's, bare numbers are given their unit."""
    own = shop_unit(store)
    if own == unit:
        return item.figures
    table = lengths_of(item.kind)
    return {key: _with_unit(value, own) if key in table else value for key, value in item.figures.items()}


def _with_unit(value: Any, unit: LengthUnit) -> Any:
    if isinstance(value, list):
        return [_with_unit(each, unit) for each in value]
    return with_unit(value, "mm", unit)


def _form(
    request: PageRequest,
    store: Store,
    item: Item,
    typed: Mapping[str, Any],
    unit: LengthUnit,
    faults: tuple[Fault, ...] = (),
) -> Response:
    found, rest = by_key(item.kind, faults)
    title = f"Change {item.name}" if item.id else ONE[item.kind]
    return request.page(
        "tool.html",
        422 if faults else 200,
        title=title,
        item=item,
        entries=entries(item.kind, typed, unit, found),
        faults=rest,
        count=len(faults),
        places=[each.name for each in places(store)] if item.kind == "piece" and not item.id else [],
        version=request.one("version", str(item.version)),
    )


def keep_tool(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Save the tool as typed, new or changed; if anything is wrong, it is said beside its field and nothing is
    saved.
    """
    with request.record.opened() as store:
        item, unit = _item(request, store), unit_of_shop(request, store)
        typed = {key: texts[-1] for key, texts in request.form.items()}
        row = _with_nested(request, item, row_typed(item.kind, typed, unit))
        before = held_open(store, open_instruments)
        try:
            _refuse_older(request, item)
            figures = {key: value for key, value in row.items() if key != "name"}
            tool = replace(item, name=str(row.get("name", "")), figures=figures)
            write_down(store, tool, request.hand)
        except Conflict as conflict:
            raise MakersFault.of("somebody else changed it meanwhile", "nothing was saved", conflict.theirs) from None
        except MakersFault as fault:
            return _form(request, store, item, typed, unit, fault.faults)
        request.session.told = (f"{row['name']} is written down.", *consequences(store, open_instruments, before))
    return go("/air?told=1#told" if item.kind == "piece" else "/tools?told=1#told")


def _with_nested(request: PageRequest, item: Item, row: dict[str, Any]) -> dict[str, Any]:
    """The row with what the form does not show: where a piece lay, what it weighed; a new piece lies where the form
    says.
    """
    shown = {entry.key for entry in entries(item.kind, {}, "mm", {})}
    kept = {key: value for key, value in item.figures.items() if key not in shown}
    if item.kind == "piece" and not item.id and request.one("lies"):
        kept["lay"] = [
            {"place": request.one("lies"), "from": request.now.replace(tzinfo=None, microsecond=0).isoformat()}
        ]
    return {**row, **kept}


def _refuse_older(request: PageRequest, item: Item) -> None:
    """Raises MakersFault if the form was opened on another version than the one in the store."""
    if item.id and request.one("version") != str(item.version):
        raise MakersFault.of(
            f"somebody else changed {item.name} meanwhile", "nothing was saved", "open it again: theirs stands there"
        )


def remove_page(request: PageRequest, _: OpenInstruments) -> Response:
    """The question before a tool is removed."""
    with request.record.opened() as store:
        item, own = _item(request, store), shop_unit(store)
    words = tool_words(item, own, length_unit(request.session.unit, own))
    said = "; ".join(f"{name} {value}".strip() for name, value in words)
    wrong = Correction(
        f"Remove {item.name}?",
        said,
        (),
        (("item", str(item.id)), ("version", str(item.version))),
        "/tools/remove",
        "/tools",
        "Remove it",
        "It is no longer listed. A tool that test cuts or printed sheets speak of stays.",
    )
    return question_page(request, wrong)


def remove_tool(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Remove a tool, if it is still as it was seen."""
    with request.record.opened() as store:
        item = _item(request, store)
        before = held_open(store, open_instruments)
        strike_tool(store, replace(item, version=request.number("version")), request.hand)
        request.session.told = (f"{item.name} is removed.", *consequences(store, open_instruments, before))
    return go("/tools?told=1#told")
