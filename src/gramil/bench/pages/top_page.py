"""The top under the strings: what the pull does, modes laid over the braces, and what shaving a tapped brace does.

Solving takes some seconds, so it is done only when asked for, beside the page, which shows how far it has come and can
stop it. The top is kept for the few instruments asked for last.
"""

import math
from collections.abc import Iterator
from dataclasses import dataclass
from urllib.parse import urlencode

from starlette.responses import Response

from gramil import names as n
from gramil.bench.open_instruments import OpenInstrument, OpenInstruments
from gramil.bench.page_request import Missing, PageRequest, go, whole_number
from gramil.bench.pages.instrument_page import instrument_id
from gramil.bench.svg_in_page import inlined
from gramil.bench.top_work import begin_top
from gramil.bench.units import formatter_for
from gramil.decimals import signed
from gramil.drawings.marks import Drawing, Mark, Marks, Polyline
from gramil.drawings.pen import handed
from gramil.faults import MakersFault
from gramil.findings.finding import in_words
from gramil.formatter import Formatter, shown
from gramil.graph import Figures
from gramil.measure import LengthUnit, read_length, show_change

STEPS = 72
MAKING = "making"
"""The address names the work that the page waits for by this key."""


@dataclass(frozen=True)
class BraceHere:
    """A brace (or twins) that can be tapped: what it is called, its bars' names, and whether it was tapped."""

    name: str
    bars: tuple[str, ...]
    tapped: bool


def top_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The question and, with `solve`, the answer; with `mode` another mode's picture, with `brace` what shaving does,
    and with `off` that carried out.
    """
    with request.record.opened() as store:
        held = open_instruments.held(store, instrument_id(request))
    title = f"{held.seen.name}, the top under the strings"
    if not request.one("solve"):
        return request.page("top.html", title=title, held=held, told=None, fault="")
    figures = open_instruments.top_of(held.figures)
    if figures is None:
        return _solving(request, open_instruments, held, title)
    if request.part:
        return Response(headers={"HX-Redirect": _asked_for(request)})
    if not figures[n.braced_top]:
        fault = "No body is described: a top is solved on its outline, with its braces and its bridge."
        return request.page("top.html", title=title, held=held, told=None, fault=fault)
    faults = [each.fault for each in (*figures[n.braced_coarse], *figures[n.braced_fine]) if each.fault is not None]
    if faults:
        return request.page("top.html", title=title, held=held, told=None, fault=str(faults[0]))
    formatter = formatter_for(request.session, figures)
    return request.page("top.html", title=title, held=held, fault="", **_what_is_solved(request, figures, formatter))


def _solving(request: PageRequest, open_instruments: OpenInstruments, held: OpenInstrument, title: str) -> Response:
    """How far the solving has come, or that it was stopped.

    If the address names no work that is known, it is begun, and the page is asked for again with its name.
    """
    work = request.works.found(request.one(MAKING)) if request.one(MAKING) else None
    if work is None or work.made is not None:
        begun = begin_top(request.works, open_instruments, held.figures)
        return go(f"{_asked_for(request)}&{urlencode({MAKING: begun.key})}")
    again = f"{_asked_for(request)}&{urlencode({MAKING: work.key})}"
    return request.page(
        "top.html",
        title=title,
        held=held,
        told=None,
        fault=work.fault,
        work=work,
        again=again,
        asked=_asked_for(request),
    )


def _asked_for(request: PageRequest) -> str:
    """The page's address without the work that it waits for."""
    pairs = [(key, each) for key, found in request.query.items() if key != MAKING for each in found]
    return f"{request.path}?{urlencode(pairs)}"


def stop_top(request: PageRequest, _: OpenInstruments) -> Response:
    """Stop solving, forget what is half solved, and go back to the page that was waiting."""
    work = request.works.found(request.one(MAKING))
    if work is None:
        raise Missing("work of that name, or not any more,")
    work.stop.set()
    return go(f"/instrument/{instrument_id(request)}/top?" + urlencode({"solve": 1, MAKING: work.key}))


def _what_is_solved(request: PageRequest, figures: Figures, formatter: Formatter) -> dict[str, object]:
    from gramil.prints.top_rows import (
        NOT_SAID,
        PULLED,
        WITH_AIR,
        picture_words,
        pushes_in_words,
        row_text,
        woods_in_words,
    )

    modes = figures[n.mode_list]
    number = min(max(whole_number(request.one("mode")) or 1, 1), len(modes))
    picture, mode = figures[n.mode_pictures][number - 1], modes[number - 1]
    braces = list(_braces(figures, request.one("brace")))
    tapped = next((each for each in braces if each.tapped), None)
    return {
        "told": [(row.what, row_text(row, formatter)) for row in PULLED],
        "air": [(row.what, row_text(row, formatter)) for row in WITH_AIR],
        "said": figures[n.pulled_said],
        "modes": [(each.name, f"{each.hertz:.0f} Hz ± {each.within:.0f}") for each in modes],
        "mode": number,
        "mode_words": f"{mode.name}, {mode.hertz:.0f} Hz: {picture_words(picture, formatter)}",
        "picture": _picture(figures, number, tapped),
        "braces": braces,
        "tapped": tapped,
        "shaving": _shaving(figures, tapped, formatter),
        "carried": _carried(request, figures, tapped, formatter.first),
        "off": request.one("off"),
        "unit": formatter.first,
        "findings": [in_words(each, formatter) for name in _verdicts(figures) for each in figures[name]],
        "pushes": pushes_in_words(figures, formatter),
        "woods": woods_in_words(figures),
        "not_said": NOT_SAID,
    }


def _verdicts(figures: Figures) -> Iterator[str]:
    return (name for name, each in figures.graph.dimensions.items() if each.part == "verdicts")


def _braces(figures: Figures, tapped: str) -> Iterator[BraceHere]:
    for bars, each in zip(figures[n.shaving_groups], figures[n.shaving_list], strict=True):
        yield BraceHere(each.name, bars, each.name == tapped)


def _picture(figures: Figures, number: int, tapped: BraceHere | None) -> str:
    """The mode over the braces; the tapped one is drawn thick, and each brace is something to tap."""
    from gramil.writers.beside import labels_on
    from gramil.writers.svg import svg_text

    formatter = Formatter(figures)
    marks = (*_ground(figures, tapped), *figures[n.piece_top_mode_signs][number - 1].marks)
    drawing = handed(
        Drawing("top-mode", f"mode {number} over the braces", "the face", marks, scale=0.0),
        figures[n.instrument_handed],
    )
    svg = svg_text(drawing, labels_on((drawing,), formatter), captioned=False, unit=formatter.first)
    return inlined(svg).replace("</svg>", f"{''.join(_to_tap(figures, number))}</svg>")


def _ground(figures: Figures, tapped: BraceHere | None) -> Marks:
    marks: list[Mark] = []
    for shell in figures[n.body_shells]:
        outline = shell.side.outline
        ring = outline.point([outline.perimeter * step / STEPS for step in range(STEPS)])
        marks.append(Polyline(tuple((float(x), float(y)) for x, y in ring), "old", closed=True))
    for brace in figures[n.brace_list]:
        if brace.plate == "top":
            if tapped and brace.name in tapped.bars:
                marks.append(Polyline(brace.footprint, "outline", closed=True, hatch="along the grain"))
            else:
                marks.append(Polyline(brace.footprint, "dimensions", closed=True))
    marks += [Polyline(each.corners, "core", closed=True) for each in figures[n.brace_bridge]]
    return tuple(marks)


def _to_tap(figures: Figures, number: int) -> Iterator[str]:
    """A see-through shape over each brace that leads to what shaving it does."""
    from urllib.parse import quote

    side = -1.0 if figures[n.instrument_handed] == "left" else 1.0
    names = {bar: each.name for each in _braces(figures, "") for bar in each.bars}
    for brace in figures[n.brace_list]:
        if brace.name in names:
            points = " ".join(f"{x:.2f},{-side * y:.2f}" for x, y in brace.footprint)
            where = f"?solve=1&amp;mode={number}&amp;brace={quote(names[brace.name])}#brace"
            yield (
                f'<a href="{where}" aria-label="Shave {_escaped(brace.name)}"><polygon points="{points}" '
                'fill="transparent" stroke="transparent" stroke-width="10"/></a>'
            )


def _escaped(text: str) -> str:
    from html import escape

    return escape(text, quote=True)


def _shaving(figures: Figures, tapped: BraceHere | None, formatter: Formatter) -> list[tuple[str, str]]:
    """What a unit step off the tapped brace does, in words and figures."""
    from gramil.prints.top_rows import wider_and_aside

    if tapped is None:
        return []
    each, unit = (
        figures[n.shaving_list][[row.name for row in figures[n.shaving_list]].index(tapped.name)],
        formatter.first,
    )
    wider_turn, wider_first, aside_turn, aside_first = wider_and_aside(each)
    return [
        ("the bridge turns", f"{signed(math.degrees(each.turn), 3)}°"),
        ("the top sinks", show_change(each.sink, unit)),
        ("it rises", show_change(each.rise, unit)),
        ("first mode", f"{signed(each.first, 2)} Hz"),
        ("second mode", f"{signed(each.second, 2)} Hz"),
        ("third mode", f"{signed(each.third, 2)} Hz"),
        ("it still has", shown(each.room, "mm", unit)),
        ("made that much wider before it is glued", f"{wider_turn}, first mode {wider_first}"),
        ("glued that far toward the tail", f"{aside_turn}, first mode {aside_first}"),
    ]


def _carried(
    request: PageRequest, figures: Figures, tapped: BraceHere | None, unit: LengthUnit
) -> tuple[str, list[tuple[str, str, str]]] | None:
    """The typed amount taken off and the top solved again: before and after; or why it cannot be."""
    written = request.one("off")
    if tapped is None or not written:
        return None
    from gramil.top.advice import raised
    from gramil.top.derivatives import room_of

    top = figures[n.braced_final][0]
    room = min(room_of(each) for each in top.braced.bars if each.name in tapped.bars)
    try:
        off = float(read_length(written, unit))
    except ValueError as error:
        return (f"{written}: {error}", [])
    if not 0 < off <= room:
        return (f"It has {shown(room, 'mm', unit)}: no more can come off, and no less than 0.", [])
    try:
        after = raised(top, tapped.bars, -off)
        rows = list(_before_after(top, after, unit))
    except MakersFault as fault:
        return (str(fault), [])
    return (f"{shown(off, 'mm', unit)} off {tapped.name}, solved again:", rows)


def _before_after(top: object, after: object, unit: LengthUnit) -> Iterator[tuple[str, str, str]]:
    from gramil.top.braced import Solved

    assert isinstance(top, Solved)
    assert isinstance(after, Solved)
    one, other = top.moved, after.moved
    yield "the bridge turns", f"{math.degrees(one.turn):.2f}°", f"{math.degrees(other.turn):.2f}°"
    for what, old, new in (("sinks", one.sink, other.sink), ("rises", one.rise, other.rise)):
        yield what, shown(old, "mm", unit), shown(new, "mm", unit)
    pairs = zip(top.modes.frequencies.tolist()[:3], after.modes.frequencies.tolist()[:3], strict=True)
    for number, (old, new) in enumerate(pairs, 1):
        yield f"mode {number}", f"{old:.1f} Hz", f"{new:.1f} Hz"
