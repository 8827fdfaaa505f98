"""The revisions of an instrument, and any two of them compared."""

from collections.abc import Mapping
from dataclasses import dataclass

from starlette.responses import Response

from gramil import names as n
from gramil.bench.made_here import made_on
from gramil.bench.moved import moved_between
from gramil.bench.open_instruments import OpenInstruments, named
from gramil.bench.page_request import PageRequest
from gramil.bench.pages.instrument_page import instrument_id
from gramil.bench.plan_view import plan_of
from gramil.bench.svg_in_page import inlined
from gramil.bench.units import formatter_for
from gramil.change.overlay import differences, overlaid
from gramil.formatter import Formatter
from gramil.graph import Figures
from gramil.prints.whole import drawings_of
from gramil.shop.instruments import revisions
from gramil.writers.svg import described, svg_text


def revisions_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Every revision: when, who, why; two of them to be compared."""
    del open_instruments
    with request.record.opened() as store:
        seen = named(store, instrument_id(request))
        found = revisions(store, seen.id)
    return request.page("revisions.html", title=f"{seen.name}, revisions", seen=seen, revisions=found[::-1])


def compare_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """What moved from one revision to another, the old in grey under the new."""
    number = instrument_id(request)
    with request.record.opened() as store:
        old, new = (open_instruments.held(store, number, request.number(key, 1)) for key in ("old", "new"))
        made = made_on(store, open_instruments, new)
    formatter = formatter_for(request.session, new.figures)
    return request.page(
        "compare.html",
        title=f"{new.seen.name}, revisions {old.revision.number} and {new.revision.number}",
        old=old,
        new=new,
        moved=moved_between(old.figures, new.figures, formatter, made),
        plan=None
        if new.figures[n.repair_described] or old.figures[n.repair_described]
        else plan_of(new.figures, old.figures, formatter, closer=False),
        drawn=drawn_over(old.figures, new.figures, formatter, request.one("drawing")),
        unit=formatter.first,
    )


@dataclass(frozen=True)
class DrawnOver:
    """Drawings that differ, by name with their titles, and the one asked for: its title, picture and words."""

    others: Mapping[str, str]
    name: str = ""
    title: str = ""
    picture: str = ""
    words: str = ""


def drawn_over(old: Figures, new: Figures, formatter: Formatter, name: str) -> DrawnOver:
    """Which drawings a change makes untrue, and one of them with the old in grey under the new."""
    before = {drawing.name: drawing for drawing in drawings_of(old)}
    after = {each.name: each for each in drawings_of(new) if each.name in before and before[each.name] != each}
    titles = {each.name: each.title for each in after.values()}
    if name not in after:
        return DrawnOver(titles)
    both, read = overlaid(before[name], after[name], old, new), differences(formatter.said, old, new)
    picture = inlined(svg_text(both, read, captioned=False, unit=formatter.first))
    return DrawnOver(titles, name, both.title, picture, described(both, read, formatter.first))
