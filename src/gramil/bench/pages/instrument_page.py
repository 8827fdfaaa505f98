"""The instrument's page: the whole instrument to scale, the section at the section line, and what a draft moves."""

import json
from dataclasses import dataclass, replace
from functools import cached_property
from math import cos, isnan
from urllib.parse import urlencode

from starlette.responses import Response

from gramil import names as n
from gramil.acts import descriptions
from gramil.bench.describing import forms_of
from gramil.bench.draft import Draft, draft_of
from gramil.bench.field_words import in_key_words
from gramil.bench.known_of_came_in import known_of
from gramil.bench.made_here import judged_on, made_on
from gramil.bench.measured_here import MEASURE, Measures, measures, named_places
from gramil.bench.moved import Strip, findings_in_words, moved_between, spoilt_lines, strip_between
from gramil.bench.open_instruments import OpenInstrument, OpenInstruments
from gramil.bench.page_request import Missing, PageRequest, go, whole_number
from gramil.bench.placing import place_of, spot_of
from gramil.bench.plan_layers import PlacedMark, grid_svg, marks_svg, names_svg, parts_svg, sizes_svg
from gramil.bench.plan_view import Plan, box_of_plan, plan_of, side_down, turned_in, with_layers
from gramil.bench.section_view import sections_at
from gramil.bench.shown_rows import Reading, columns_at
from gramil.bench.stale_here import given_on, work_on
from gramil.bench.svg_in_page import Box
from gramil.bench.things import Thing, things_on
from gramil.bench.units import formatter_for
from gramil.bench.wood_grain import grain_svg
from gramil.change.made_words import lost_pieces
from gramil.drawings.body_at import across, chord
from gramil.drawings.hull import hull_at
from gramil.drawings.section_at import Cut, cut_at
from gramil.findings.finding import Finding, InWords
from gramil.formatter import shown
from gramil.graph import Figures
from gramil.prints.whole import findings_of
from gramil.store.failures import Conflict
from gramil.store.opening import Store
from gramil.store.undo import last_change

NEAR = 2.0
"""Stops over the body that lie nearer to one another than this, in mm, are one."""


@dataclass(frozen=True)
class Desk:
    """All that the page shows at once."""

    held: OpenInstrument
    draft: Draft
    cut: Cut
    reading: Reading
    closer: bool

    @property
    def saved(self) -> Figures | None:
        """The saved figures, where a draft differs from them."""
        return self.held.figures if self.draft.changed else None

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """Every finding of what is shown."""
        return findings_of(self.draft.figures) if self.draft.changed else self.held.findings

    @cached_property
    def words(self) -> tuple[InWords, ...]:
        """Every finding in words."""
        return findings_in_words(self.findings, self.reading.now)


def instrument_id(request: PageRequest) -> int:
    """The instrument's number in the address; raises Missing."""
    try:
        return int(request.words["instrument"])
    except ValueError:
        raise Missing("instrument of that number") from None


def desk_of(request: PageRequest, store: Store, open_instruments: OpenInstruments) -> Desk:
    """The desk that a request asks for. Raises Missing and MakersFault."""
    held = open_instruments.held(store, instrument_id(request))
    draft = draft_of(request, held)
    cut = _cut(request, draft.figures)
    saved_cut = cut if not draft.changed else _beside(cut, held.figures)
    now, before = formatter_for(request.session, draft.figures), formatter_for(request.session, held.figures)
    reading = Reading(draft, cut, held.figures, saved_cut, now, before)
    return Desk(held, draft, cut, reading, request.one("view") == "closer")


def _cut(request: PageRequest, figures: Figures) -> Cut:
    """At a fret (`fret`), at x (`x`), on the fret nearest to x (`tap`), or at fret 7 to begin with."""
    last = len(figures[n.fret_position]) - 1
    fret = whole_number(request.one("fret"))
    if fret is not None:
        return cut_at(figures, float(figures[n.fret_position][min(fret, last)]))
    try:
        x = float(request.one("x"))
    except ValueError:
        return cut_at(figures, float(figures[n.fret_position][min(7, last)]))
    low, high = reach(figures)
    x = low if isnan(x) else min(max(x, low), high)
    return cut_at(figures, _tapped(figures, x) if request.one("tap") else x)


def reach(figures: Figures) -> tuple[float, float]:
    """How far the section line goes: from the nut to the body's tail, or to the saddle if no body is described."""
    ends = [figures[n.body_edge] + outline.length for outline in figures[n.body_outlines]]
    return float(figures[n.board_nut_position]), max(float(figures[n.saddle_break_x].max()), *map(float, ends or [0.0]))


def _tapped(figures: Figures, x: float) -> float:
    position = figures[n.fret_position]
    return float(position[abs(position - x).argmin()]) if x <= figures[n.board_tail_position] else x


def _beside(cut: Cut, saved: Figures) -> Cut:
    """The cut of the saved instrument that is shown in grey: at the same fret, or at the same x."""
    if cut.fret is None or cut.fret >= len(saved[n.fret_position]):
        return cut_at(saved, cut.x)
    return cut_at(saved, float(saved[n.fret_position][cut.fret]))


@dataclass(frozen=True)
class Placed:
    """A finding with its balloon's number and its place."""

    number: str
    finding: InWords
    x: float


def placed(desk: Desk) -> tuple[Placed, ...]:
    """Every finding that calls for action, numbered as in the drawing."""
    asking = (each for each in desk.words if each.severity in ("stop", "caution", "note"))
    return tuple(
        Placed(str(number), each, place_of(desk.draft.figures, each.address)) for number, each in enumerate(asking, 1)
    )


def instrument_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The page, or only its desk again when a figure was changed."""
    with request.record.opened() as store:
        desk = desk_of(request, store, open_instruments)
        made = made_on(store, open_instruments, desk.held) if desk.draft.changed else {}
        judged = () if desk.draft.changed else judged_on(store, open_instruments, desk.held)
        kept = last_change(store) if request.number("kept") else None
    now, then, found = desk.draft.figures, desk.held.figures, (desk.held.findings, desk.findings)
    strip = strip_between(then, now, made, desk.reading.now, found) if desk.draft.changed else None
    return request.page(
        "instrument.html",
        **_whole(request, desk, strip),
        kept=kept if kept and kept.id == request.number("kept") else None,
        spoilt=spoilt_lines(judged, desk.reading.now),
        lost=lost_pieces(judged),
    )


def moved_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The list behind the strip: all that the draft moves."""
    with request.record.opened() as store:
        desk = desk_of(request, store, open_instruments)
        made, given = made_on(store, open_instruments, desk.held), given_on(store, desk.held)
        work = work_on(store, desk.held)
    found = moved_between(desk.held.figures, desk.draft.figures, desk.reading.now, made, given, work)
    return request.page(
        "moved_page.html", title="What moved", held=desk.held, draft=desk.draft, moved=found, at=address_part(desk)
    )


def cut_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The section alone, with the overlay of the plan: the answer to a moved section line."""
    with request.record.opened() as store:
        desk = desk_of(request, store, open_instruments)
    if desk.draft.figures[n.repair_described]:
        raise Missing("a section: a guitar that came in is not drawn")
    return request.page("cut.html", **_section(request, desk, box_of_plan(desk.draft.figures, desk.closer)))


def measured_part(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """What is measured on the plan: the answer to two places tapped."""
    with request.record.opened() as store:
        desk = desk_of(request, store, open_instruments)
    found = measured_on(request, desk, things_on(desk.draft.figures, side_down(desk.draft.figures, desk.closer)))
    return request.page("measured.html", held=desk.held, draft=desk.draft, at=address_part(desk), measured=found)


def measured_on(request: PageRequest, desk: Desk, things: tuple[Thing, ...]) -> Measures:
    """The distances that a request's address carries."""
    return measures(request.many(MEASURE), things, desk.reading.now)


def _layered(desk: Desk, plan: Plan, things: tuple[Thing, ...], found: tuple[Placed, ...]) -> str:
    """The plan with everything on it that can be switched on and off."""
    figures, formatter, box = desk.draft.figures, desk.reading.now, plan.box
    base, rest = f"/instrument/{desk.held.seen.id}", f"{address_part(desk)}{desk.draft.query}"
    marks = [
        PlacedMark(
            each.number, each.finding.severity, each.finding.name, spot_of(figures, each.finding.address, things)
        )
        for each in found
    ]
    grid = grid_svg(box.left, box.top, box.wide, box.tall, formatter.first)
    return with_layers(
        plan,
        grid + grain_svg(things),
        sizes_svg(figures, plan.side, formatter)
        + parts_svg(things, f"{base}/part?name={{}}&{rest}")
        + names_svg(things)
        + marks_svg(marks, f"{base}/found?{rest}"),
    )


def _undrawn(desk: Desk, strip: Strip | None) -> dict[str, object]:
    """The page of a guitar that came in: what is known of it, and its verdicts, without a drawing."""
    return {
        "desk": desk,
        "held": desk.held,
        "draft": desk.draft,
        "at": "",
        "title": desk.held.seen.name,
        "plan": None,
        "strip": strip,
        "asking": [each for each in desk.words if each.severity in ("stop", "caution", "note")],
        "quiet": [each for each in desk.words if each.severity in ("fine", "not judged")],
        "known": known_of(desk.draft.text, desk.reading.now.first),
        "faults": tuple(map(in_key_words, desk.draft.faults)),
        "changes": desk.draft.sets,
    }


def _whole(request: PageRequest, desk: Desk, strip: Strip | None) -> dict[str, object]:
    if desk.draft.figures[n.repair_described]:
        return _undrawn(desk, strip)
    plan = plan_of(desk.draft.figures, desk.saved, desk.reading.now, desk.closer, sized=True)
    things = things_on(desk.draft.figures, plan.side)
    return {
        **_section(request, desk, plan.box),
        "title": desk.held.seen.name,
        "plan": plan,
        "layered": _layered(desk, plan, things, placed(desk)),
        "measured": measured_on(request, desk, things),
        "described": forms_of(desk.draft.data),
        "places": tuple(named_places(desk.draft.figures)),
        "strip": strip,
        "quiet": [each for each in desk.words if each.severity in ("fine", "not judged")],
        "faults": tuple(map(in_key_words, desk.draft.faults)),
        "changes": desk.draft.sets,
    }


def _section(request: PageRequest, desk: Desk, box: Box) -> dict[str, object]:
    figures, cut = desk.draft.figures, desk.cut
    found = placed(desk)
    old = (desk.held.figures, desk.reading.saved_cut) if desk.draft.changed else None
    low, high = reach(figures)
    return {
        "desk": desk,
        "held": desk.held,
        "draft": desk.draft,
        "cut": cut,
        "where": where(desk),
        "over": turned_in(figures, cut, box),
        "sections": sections_at(figures, cut, old, desk.reading.now),
        "columns": columns_at(desk.reading),
        "findings": found,
        "low": low,
        "high": high,
        "stops": json.dumps([round(x, 4) for x in stops(figures)]),
        "steps": _steps(figures, cut),
        "at": address_part(desk),
        "x_text": f"{cut.x:.4f}",
        "from_zero": shown(cut.x, "mm", desk.reading.now.first),
        "from_edge": shown(hull.along, "mm", desk.reading.now.first) if (hull := hull_at(figures, cut)) else "",
        "unit": desk.reading.now.first,
    }


def address_part(desk: Desk) -> str:
    """Where the section is cut, as part of an address."""
    return urlencode({"x": f"{desk.cut.x:.4f}"}) + ("&view=closer" if desk.closer else "")


def where(desk: Desk) -> str:
    """Where the cut is, in words."""
    position, cut = desk.draft.figures[n.fret_position], desk.cut
    if cut.fret is not None:
        return "at the zero line" if cut.fret == 0 else f"at fret {cut.fret}"
    if cut.x > desk.draft.figures[n.board_tail_position]:
        return _over_body(desk.draft.figures, cut)
    before = int((position < cut.x).sum()) - 1
    if before < 0:
        return "before the zero line"
    if before + 1 >= len(position):
        return "past the last fret"
    return f"between frets {before} and {before + 1}"


def _over_body(figures: Figures, cut: Cut) -> str:
    hull = hull_at(figures, cut)
    if hull is None:
        return "over the body"
    if any(across(each.corners, hull.along) for each in figures[n.brace_bridge]):
        return "over the body, through the bridge"
    holes = [f"the {each.name}" for each in figures[n.opening_list] if chord(each, hull.along)]
    return "over the body" + "".join(f", through {each}" for each in holes)


def stops(figures: Figures) -> tuple[float, ...]:
    """Where the section line stops: at every fret; over the body at each brace, the soundhole, saddle and tail."""
    frets = [float(x) for x in figures[n.fret_position]]
    low, high = reach(figures)
    start, angle = figures[n.piece_plan_turned]
    middles = [(each.start_x + each.stop_x) / 2 for each in figures[n.brace_list]]
    beyond = [float(start) + along * cos(angle) for along in middles if not isnan(along)]
    beyond += [float(figures[name]) for name in (n.soundhole_from_zero, n.saddle_position)]
    found = frets
    for x in sorted(x for x in (*beyond, high) if frets[-1] < x <= high):
        if x - found[-1] >= NEAR:
            found = [*found, x]
    return tuple(each for each in found if each >= low)


def _steps(figures: Figures, cut: Cut) -> tuple[str, str]:
    """The stops before and after the cut, for the buttons beside the section line."""
    places = stops(figures)
    before = [x for x in places if x < cut.x - 0.01] or [places[0]]
    after = [x for x in places if x > cut.x + 0.01] or [places[-1]]
    return f"{before[-1]:.4f}", f"{after[0]:.4f}"


def keep(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Save the draft as the next revision; if somebody saved meanwhile, both are shown and nothing is written."""
    number, who = instrument_id(request), request.one("who")
    request.session.who = who
    with request.record.opened() as store:
        base = open_instruments.held(store, number, request.number("base"))
        draft = draft_of(request, base)
        if draft.faults or not draft.sets:
            return go(f"/instrument/{number}?" + draft.query.lstrip("&"))
        seen = replace(base.seen, version=request.number("version"))
        try:
            descriptions.keep(store, seen, draft.text, request.hand)
        except Conflict:
            return _conflict(request, store, open_instruments, base, draft)
        last = last_change(store)
    return go(f"/instrument/{number}?{request.one('at')}&kept={last.id if last else 0}")


def _conflict(
    request: PageRequest, store: Store, open_instruments: OpenInstruments, base: OpenInstrument, draft: Draft
) -> Response:
    theirs = open_instruments.held(store, base.seen.id)
    formatter = formatter_for(request.session, theirs.figures)
    made = made_on(store, open_instruments, base)
    their_moves = moved_between(
        base.figures, theirs.figures, formatter, made, given_on(store, theirs), work_on(store, theirs)
    )
    return request.page(
        "conflict.html",
        409,
        title=base.seen.name,
        base=base,
        theirs=theirs,
        draft=draft,
        moved=their_moves,
        at=request.one("at"),
    )
