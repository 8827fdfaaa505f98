"""What is done with wood in stock, by form: cut into parts, counted with another, laid elsewhere; a part made ahead."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from starlette.responses import Response

from gramil.acts.wood import join, make_ahead, move, split
from gramil.bench.field_words import all_read, at_field
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import Missing, PageRequest, go
from gramil.bench.pages.tools_page import unit_of_shop
from gramil.faults import MakersFault
from gramil.shop.stock import Blank, Part, blanks
from gramil.shop.written_sizes import read_sizes
from gramil.store.opening import Store

PARTS_EXAMPLE = "bridge = 160 x 40 x 8"


def cut_into_parts(request: PageRequest, _: OpenInstruments) -> Response:
    """One of a kind of wood is cut: its parts are in stock, each with its name and sizes."""
    with request.record.opened() as store:
        unit = unit_of_shop(request, store)
        with at_field("parts"):
            written = _pairs(request.one("parts"), PARTS_EXAMPLE)
            new = [Blank(name, "", *read_sizes(text, unit, "parts")) for name, text in written.items()]
            split(store, _seen(request, store), new, request.hand)
    return go("/stock")


def count_together(request: PageRequest, _: OpenInstruments) -> Response:
    """Two kinds of wood that are alike become one."""
    with request.record.opened() as store:
        other = next((each for each in blanks(store) if str(each.id) == request.one("other")), None)
        if other is None:
            raise Missing("piece of that number")
        join(store, _seen(request, store), other, request.hand)
    return go("/stock")


def lay_elsewhere(request: PageRequest, _: OpenInstruments) -> Response:
    """Wood in stock lies in a place from now on."""
    with request.record.opened() as store:
        move(store, _seen(request, store), request.one("place"), request.hand)
    return go("/stock")


def keep_part(request: PageRequest, _: OpenInstruments) -> Response:
    """A part made ahead is written down, with what it measures."""
    name, figures = all_read(
        name=lambda: _name(request), figures=lambda: _pairs(request.one("figures"), "length = 760 mm")
    )
    part = Part(name, request.one("kind"), figures, request.one("wood"))
    with request.record.opened() as store:
        make_ahead(store, part, request.hand)
    return go("/stock")


def _name(request: PageRequest) -> str:
    if not request.one("name"):
        raise MakersFault.of("the part has no name", remedy="write one on it, and here")
    return request.one("name")


def _seen(request: PageRequest, store: Store) -> Blank:
    """The piece of the form, in the version that was seen."""
    found = next((each for each in blanks(store) if str(each.id) == request.one("blank")), None)
    if found is None:
        raise Missing("piece of that number")
    return replace(found, version=request.number("version", found.version))


def _pairs(text: str, example: str) -> Mapping[str, str]:
    """Names and what they measure, a line for each. Raises MakersFault for a line of any other form."""
    return dict(_lines(text, example))


def _lines(text: str, example: str) -> Iterator[tuple[str, str]]:
    for line in filter(None, map(str.strip, text.splitlines())):
        name, equals, value = (part.strip() for part in line.partition("="))
        if not (name and equals and value):
            raise MakersFault.of(f'"{line}" is not a name and what it measures', remedy=f"write it like {example}")
        yield name, value
