"""A figure's card: what it is, the formula with numbers in it, the source, what it follows from, what depends on it."""

import re
from collections.abc import Mapping
from dataclasses import dataclass

from starlette.responses import Response

from gramil.address import parse_address
from gramil.bench.chosen import Chosen, Written, chosen
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import Missing, PageRequest
from gramil.bench.pages.instrument_page import address_part, desk_of
from gramil.bench.svg_in_page import in_plain_words
from gramil.formatter import Formatter, shown
from gramil.formula_words import formula_in_words
from gramil.graph import Figures, Origin
from gramil.in_shop_units import in_shop_units
from gramil.measure import LengthUnit
from gramil.prints.extrapolated import extrapolation_remark
from gramil.quantities import axes_of
from gramil.reason import Reason, numbers_in_words, read_doc, why
from gramil.sources import cited

MOST_HANGING = 60
UNSHOWN = ("drawing_", "piece_", "card_")
"""What depends on a figure only as lines of a drawing is told by the drawing."""


@dataclass(frozen=True)
class Beside:
    """A figure above or below another: its address, its words and its value."""

    address: str
    words: str
    text: str


def card_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The card of the figure at the address `at`."""
    address = request.one("at")
    with request.record.opened() as store:
        desk = desk_of(request, store, open_instruments)
    figures, formatter = desk.draft.figures, desk.reading.now
    try:
        reason = why(figures, address, formatter.text).said_in(formatter.first)
        text, other = formatter.both(address)
    except KeyError:
        raise Missing(f"figure {address}") from None
    name, steps = parse_address(address)
    return request.page(
        "card.html",
        title=words_of(figures, name, formatter.first),
        desk=desk,
        held=desk.held,
        draft=desk.draft,
        unit=formatter.first,
        address=address,
        reason=reason,
        remark=extrapolation_remark(figures, name),
        formula=in_pieces(reason),
        numbers=in_plain_words(numbers_in_words(reason, figures, formatter.text)),
        source=cited(reason.source),
        given=in_shop_units(given(reason.origin), formatter.first),
        text=text,
        other=other,
        drawn=_drawn(reason, figures, formatter),
        choice=_choice(figures, name, desk.draft.data),
        turns=name in figures.graph.dimensions and _single(figures.at(address)),
        follows=[_beside(figures, each.address, formatter) for each in reason.follows],
        hangs=hanging(figures, address, formatter),
        every=_every(figures, name, formatter) if not steps else [],
        at=address_part(desk),
    )


@dataclass(frozen=True)
class Piece:
    """A piece of a formula: words, and the address of the figure that they name (or empty)."""

    words: str
    address: str = ""


def in_pieces(reason: Reason) -> tuple[Piece, ...]:
    """The formula split at the figures in it, each shown by its words."""
    words = formula_in_words(reason.formula)
    addresses = {parse_address(each.address)[0]: each.address for each in reason.follows}
    if not addresses or not words:
        return (Piece(words),) if words else ()
    names = "|".join(sorted(addresses, key=len, reverse=True))
    pieces = re.split(rf"\b({names})\b", words)
    return tuple(
        Piece(each.replace("_", " "), addresses[each]) if each in addresses else Piece(each) for each in pieces if each
    )


def given(origin: Origin | None) -> str:
    """Where a chosen figure was given, in words."""
    if origin is None or origin.file is None:
        return str(origin or "")
    place = f"{origin.file}, line {origin.line}" if origin.line else origin.file
    return f"{place}, {origin.note}" if origin.note else place


def _choice(figures: Figures, name: str, data: Written) -> Chosen | None:
    return chosen(name, data) if name in figures.graph.inputs else None


def _single(value: object) -> bool:
    return isinstance(value, float | int) and not isinstance(value, bool)


def _drawn(reason: Reason, figures: Figures, formatter: Formatter) -> str:
    if not reason.pinned:
        return ""
    return shown(reason.drawn, figures.unit_at(reason.address), formatter.first)


def hanging(figures: Figures, address: str, formatter: Formatter) -> list[Beside]:
    """What depends directly on a figure, in the same row if both run over the same frets or strings."""
    name, steps = parse_address(address)
    rows = dict(zip(axes_of(figures.graph.annotation(name)), steps, strict=False))
    found = [each for each in figures.graph.followers[name] if not each.startswith(UNSHOWN)]
    return [_beside(figures, _on_row(figures, each, rows), formatter) for each in found[:MOST_HANGING]]


def _on_row(figures: Figures, name: str, rows: Mapping[str, object]) -> str:
    axes = axes_of(figures.graph.annotation(name))
    wanted = [str(rows[axis]) for axis in axes if axis in rows]
    return f"{name}[{', '.join(wanted)}]" if wanted and len(wanted) == len(axes) else name


def _beside(figures: Figures, address: str, formatter: Formatter) -> Beside:
    name, _ = parse_address(address)
    value = figures.at(address)
    plain = isinstance(value, float | int | str) or bool(axes_of(figures.graph.annotation(name)))
    return Beside(address, words_of(figures, name, formatter.first), formatter.text(address) if plain else "")


def _every(figures: Figures, name: str, formatter: Formatter) -> list[Beside]:
    """Each row of a figure that runs over frets or strings."""
    axes = axes_of(figures.graph.annotation(name))
    if len(axes) != 1 or axes[0] not in ("fret", "string"):
        return []
    start = int(axes[0] == "string")
    rows = range(start, len(figures[name]) + start)
    return [Beside(f"{name}[{row}]", f"{axes[0]} {row}", formatter.text(f"{name}[{row}]")) for row in rows]


def words_of(figures: Figures, name: str, first: LengthUnit) -> str:
    """What a figure is, in its first sentence."""
    graph = figures.graph
    told = graph.inputs[name].what if name in graph.inputs else read_doc(graph.dimensions[name].what).what
    sentence = told.split("\n\n")[0].strip()
    return in_shop_units(sentence[:1].upper() + sentence[1:], first)
