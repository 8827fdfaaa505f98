"""The weeks ahead over all open instruments: one pair of hands, jigs, cures, and the air to come."""

from collections.abc import Mapping
from dataclasses import replace
from datetime import date, datetime, time, timedelta
from itertools import groupby

from starlette.responses import Response

from gramil.acts.air import keep_outlook
from gramil.acts.plans import keep_week
from gramil.air.outlooks import Spell
from gramil.bench.field_words import all_read
from gramil.bench.load_picture import letters_of, load_picture
from gramil.bench.open_instruments import OpenInstruments
from gramil.bench.page_request import PageRequest, go
from gramil.bench.stale_here import worked_out
from gramil.faults import Fault, MakersFault
from gramil.now.assumed import rests_on
from gramil.now.blocks import Block, blocks, label
from gramil.now.calendar_entries import CALENDAR, calendar_entries
from gramil.now.finishing import pace_of
from gramil.now.hours import read_hours
from gramil.now.open_now import hours_text
from gramil.now.outlook import typed_outlook
from gramil.now.plan import Plan, greedy_plan, hours_filled_in_words
from gramil.now.promised import promised
from gramil.now.states import Bench, bench_of_store
from gramil.now.tasks import Weeks, weeks_of
from gramil.shop.instruments import instruments
from gramil.shop.kept_plans import kept_weeks, monday_of
from gramil.shop.shop_in_store import shop_description
from gramil.store.opening import Store

HOURS, DAYS, COUNT = "08:30-12:30 13:30-17:30", "mon-fri", "2"


def weeks_page(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The plan, day by day."""
    try:
        bench, weeks, plan = _planned(request, open_instruments)
    except MakersFault as fault:
        return _nothing_planned(request, fault.faults)
    if bench is None or weeks is None or plan is None:
        return _nothing_planned(request)
    found = blocks(plan, weeks)
    with request.record.opened() as store:
        kept = kept_weeks(store)[::-1]
    days = [(day, list(group)) for day, group in groupby(found, key=lambda block: block.begins.date())]
    return request.page(
        "weeks.html",
        title="Weeks",
        faults=(),
        days=[(f"{day:%A} {day.day} {day:%B}", [_line(block) for block in group]) for day, group in days],
        picture=load_picture(found, _hours_of(weeks)),
        letters=letters_of(found),
        as_if=_as_if(request, bench),
        hands=hours_filled_in_words(plan, weeks),
        rests=rests_on(bench.shop),
        kept=kept,
        query=request.here.partition("?")[2],
        **_asked_for(request),
    )


def _nothing_planned(request: PageRequest, faults: tuple[Fault, ...] = ()) -> Response:
    """The page without a plan: what was typed cannot be read, or no instrument is open."""
    asked = _asked_for(request)
    return request.page("weeks.html", 422 if faults else 200, title="Weeks", days=[], faults=faults, query="", **asked)


def keep_this_week(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """Keep what this week can promise, to be held against what is done; or the outlook, which then counts by itself."""
    given = _asked_for(request)
    if request.one("do") == "outlook":
        return _keep_said(request, given["outlook"])
    bench = _planned(request, open_instruments)[0]
    if bench is not None:
        until = datetime.combine(monday_of(request.now) + timedelta(days=7), time.min)
        hours = read_hours(given["hours"], given["working"])
        found = promised(bench.instruments, bench.shop, hours, until, pace=pace_of(bench.ratios, bench.noted, hours))
        with request.record.opened() as store:
            keep_week(store, found.work, request.hand)
    return go("/weeks#kept")


def _keep_said(request: PageRequest, written: str) -> Response:
    try:
        all_read(outlook=lambda: _spells(request, written))
        with request.record.opened() as store:
            for where, spells in _said(request, store, written).items():
                keep_outlook(store, where, spells, request.hand)
    except MakersFault as fault:
        return _nothing_planned(request, fault.faults)
    return go("/weeks")


def _hours_of(weeks: Weeks) -> dict[date, float]:
    """The hands' hours of each day."""
    found: dict[date, float] = {}
    for begins, ends in weeks.sessions:
        day = (weeks.start + timedelta(minutes=begins)).date()
        found[day] = found.get(day, 0.0) + (ends - begins) / 60.0
    return found


def _as_if(request: PageRequest, bench: Bench) -> str:
    """Air that would open gluing from tomorrow to the end of the weeks, as it is typed; empty if air to come was given.

    It is written for the last day too: beyond two days an outlook's last spell gives way to the place's own record.
    """
    if request.one("outlook"):
        return ""
    low, high = bench.shop.bands["gluing"].humidity
    tomorrow, last = (request.now + timedelta(days=days) for days in (1, 7 * _count(request)))
    return f"{tomorrow:%a} {(low + high) / 2:.0f} %, {last:%Y-%m-%d} {(low + high) / 2:.0f} %".lower()


def _asked_for(request: PageRequest) -> Mapping[str, str]:
    return {
        "count": request.one("count", COUNT),
        "hours": request.one("hours", HOURS) or HOURS,
        "working": request.one("days", DAYS) or DAYS,
        "outlook": request.one("outlook"),
        "as_if_said": request.one("as_if"),
    }


def _planned(request: PageRequest, open_instruments: OpenInstruments) -> tuple[Bench | None, Weeks | None, Plan | None]:
    given = _asked_for(request)
    all_read(
        hours=lambda: read_hours(given["hours"], DAYS),
        days=lambda: read_hours(HOURS, given["working"]),
        outlook=lambda: _spells(request, given["outlook"]),
    )
    with request.record.opened() as store:
        if not instruments(store, "open"):
            return None, None, None
        bench = bench_of_store(
            store,
            request.now,
            worked_out(open_instruments),
            said=_said(request, store, given["outlook"]),
        )
    weeks = weeks_of(bench.instruments, bench.shop, read_hours(given["hours"], given["working"]), 7 * _count(request))
    return bench, weeks, greedy_plan(weeks)


def _count(request: PageRequest) -> int:
    """How many weeks are planned."""
    return min(max(request.number("count", int(COUNT)), 1), 4)


def _said(request: PageRequest, store: Store, written: str) -> dict[str, tuple[Spell, ...]]:
    """The air to come as typed, such as `thu 42 %, sat 38 %`, for the place where gluing is done."""
    spells = _spells(request, written)
    where = shop_description(store).shop.glued_in
    return {where: spells} if spells and where else {}


def _spells(request: PageRequest, written: str) -> tuple[Spell, ...]:
    """What is typed counts by its chance; what a plan is made as if, wholly."""
    now = request.now.replace(tzinfo=None)
    spells = typed_outlook([each for each in written.split(",") if each.strip()], now)
    return spells if request.one("as_if") else tuple(replace(each, said=now) for each in spells)


def _line(block: Block) -> tuple[str, str, str, str]:
    cures = f"cures {hours_text(block.operation.clamp)}" if block.cures else ""
    return f"{block.begins:%H:%M} to {block.ends:%H:%M}", block.instrument, label(block), cures


def printed_weeks(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The same weeks on paper."""
    from gramil.sheets.weeks_sheet import Entry, weeks_pdf

    bench, weeks, plan = _planned(request, open_instruments)
    if bench is None or weeks is None or plan is None:
        return _nothing_planned(request)
    entries = [
        Entry(whose=each.instrument, what=label(each), begins=each.begins, ends=each.ends, cures=each.cures)
        for each in blocks(plan, weeks)
    ]
    names, rests = ", ".join(one.name for one in bench.instruments), rests_on(bench.shop)
    made = weeks_pdf(entries, names, [rests] if rests else [], bench.shop.paper)
    return Response(made, media_type="application/pdf")


def weeks_calendar(request: PageRequest, open_instruments: OpenInstruments) -> Response:
    """The same weeks as a file for a calendar."""
    from gramil.writers.icalendar import Event, icalendar_bytes

    weeks, plan = _planned(request, open_instruments)[1:]
    found = blocks(plan, weeks) if plan is not None and weeks is not None else ()
    events = [Event(**entry) for entry in calendar_entries(found)]
    headers = {"content-disposition": 'attachment; filename="weeks.ics"'}
    content = icalendar_bytes(events, request.now.astimezone(), CALENDAR)
    return Response(content, media_type="text/calendar; charset=utf-8", headers=headers)
