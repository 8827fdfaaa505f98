"""`gramil weeks`: the next weeks over all instruments, for one pair of hands; printed, and as a calendar."""

import itertools
from collections.abc import Iterator
from datetime import datetime, time, timedelta
from pathlib import Path
from typing import Any

import click

from gramil.cli.bench_options import BenchOptions, bench_by_options, bench_options
from gramil.cli.json_option import json_option, whose_by_name, write_answer
from gramil.cli.now import wrapped
from gramil.cli.options import file_to_make
from gramil.cli.store_options import by_the_clock, moment_of
from gramil.now.assumed import rests_on
from gramil.now.blocks import Block, blocks, label
from gramil.now.calendar_entries import CALENDAR, calendar_entries
from gramil.now.finishing import WEEKS, finishing, pace_of, pace_told, runs_dry
from gramil.now.hours import Hours, read_hours
from gramil.now.open_now import hours_text
from gramil.now.plan import Plan, greedy_plan, hours_filled_in_words, waiting
from gramil.now.states import Bench
from gramil.now.tasks import Weeks, weeks_of
from gramil.store.opening import open_store
from gramil.store.writing import Hand


@click.command()
@bench_options
@click.option("--weeks", "count", type=click.IntRange(1, 52), default=2, show_default=True, help="How many.")
@click.option("--hours", default="08:30-12:30 13:30-17:30", show_default=True, help="Hours of a working day.")
@click.option("--days", default="mon-fri", show_default=True, help="Working days.")
@click.option("--finish", is_flag=True, help="Also say when each guitar is finished, as a range; takes some seconds.")
@click.option("--keep", is_flag=True, help="Keep this week's plan in the store, to hold it against what is done.")
@json_option
@file_to_make("--calendar", ending=".ics", what="Also write an iCalendar file (.ics).")
@file_to_make("--print", "printed", ending=".pdf", what="Also write the weeks as a PDF.")
def command(
    count: int,
    hours: str,
    days: str,
    finish: bool,
    keep: bool,
    as_json: bool,
    calendar: Path | None,
    printed: Path | None,
    **wanted: Any,
) -> None:
    """The next weeks on the instruments in FILES: one pair of hands, moulds and dishes, cures, and the air to come.

    \b
    gramil weeks tarn.toml fell.toml --shop shop.toml --outlook "wed 44 %"
    gramil weeks --store shop.gramil --weeks 4 --calendar weeks.ics --print weeks.pdf
    """
    if keep and wanted["store"] is None:
        raise click.UsageError("a plan is kept in a --store")
    bench = bench_by_options(BenchOptions(**wanted), record_days=400.0)
    weeks = weeks_of(bench.instruments, bench.shop, read_hours(hours, days), 7 * count)
    plan = greedy_plan(weeks)
    told = ["", f"Work waits {waiting(plan, weeks):.2f} days on average until it is done."]
    found = blocks(plan, weeks)
    promised = tuple(_promised(bench, read_hours(hours, days), 7 * count)) if finish else ()
    store = wanted["store"]
    kept = (
        ()
        if store is None
        else (
            *_kept(store, wanted["at"]),
            *(_keep(store, bench, read_hours(hours, days), wanted["at"]) if keep else ()),
        )
    )
    says = (*told, *_left(plan, weeks), *_rests_on(bench), *promised, *kept)
    if as_json:
        from gramil.answers.work import weeks_answer

        names = [one.name for one in bench.instruments]
        write_answer("weeks", whose_by_name(names, wanted["store"]), weeks_answer(weeks.start, found, says))
    else:
        for line in (*listing(found), *says):
            click.echo(wrapped(line))
    if calendar is not None:
        calendar.write_bytes(_calendar(found, bench))
        click.echo(f"The calendar is in {calendar}.", err=as_json)
    if printed is not None:
        printed.write_bytes(_printed(found, bench, [*told, *_rests_on(bench)]))
        click.echo(f"The weeks are drawn in {printed}.", err=as_json)


def listing(found: tuple[Block, ...]) -> Iterator[str]:
    """The lines of the plan, with a heading for each day."""
    if not found:
        yield "Nothing can be done in these weeks: ask `gramil now` what closes it."
    for day, group in itertools.groupby(found, key=lambda block: block.begins.date()):
        yield ""
        yield click.style(f"{day:%A} {day.day} {day:%B}", bold=True)
        for block in group:
            cures = f", cures {hours_text(block.operation.clamp)}" if block.cures else ""
            what = f"{label(block)} [{block.operation.name}]"
            yield f"  {block.begins:%H:%M}-{block.ends:%H:%M}  {block.instrument}: {what}{cures}"


def _left(plan: Plan, weeks: Weeks) -> Iterator[str]:
    yield hours_filled_in_words(plan, weeks)
    for name in dict.fromkeys(task.instrument for task in weeks.tasks):
        own = [place for place, task in enumerate(weeks.tasks) if task.instrument == name]
        left = sum(weeks.tasks[place].minutes for place in own if place not in plan.starts) / 60.0
        yield (
            f"{name}: {left:.0f} hours of hands are left after these weeks." if left else f"{name}: all of it is done."
        )


def _promised(bench: Bench, hours: Hours, days: int) -> Iterator[str]:
    """How much of these days' work is to be expected, when each instrument is finished, when the hands run dry."""
    from gramil.now.promised import promised

    pace = pace_of(bench.ratios, bench.noted, hours)
    expected = promised(bench.instruments, bench.shop, hours, bench.shop.now + timedelta(days), days, pace).hours
    yield f"As hours, lost days and air fall, {expected:.0f} hours of work are to be expected in these weeks."
    for each in finishing(bench.instruments, bench.shop, hours, pace):
        if each.waits:
            yield f"{each.instrument}: no day can be promised: {each.waits}."
            continue
        if each.longest:
            yield (
                f"{each.instrument}: finished {_span(each.half)} in half of all cases, {_span(each.most)} in 9 of 10. "
                f"Longest on its way: {'; '.join(each.longest)}."
            )
    whole = weeks_of(bench.instruments, bench.shop, hours, 7 * WEEKS)
    dry = runs_dry(greedy_plan(whole), whole)
    if dry is not None:
        yield f"The hands run dry in week {dry}: begin another then."
    yield pace_told(pace)


def _span(days: tuple[datetime | None, datetime | None]) -> str:
    first, last = (f"{day.day} {day:%B %Y}" if day else f"later than in {WEEKS} weeks" for day in days)
    return first if first == last else f"{first} to {last}"


def _kept(store: Path, at: str | None) -> Iterator[str]:
    """What was promised in the weeks before against what was done."""
    from gramil.shop.kept_plans import kept_weeks, monday_of

    now = moment_of(at)
    with open_store(store, to_read=True) as opened:
        for each in kept_weeks(opened):
            if each.monday < monday_of(now):
                yield (
                    f"Week of {each.monday}: {len(each.done)} of {len(each.planned)} planned operations were done, "
                    f"{100 * each.share:.0f} %."
                )


def _keep(store: Path, bench: Bench, hours: Hours, at: str | None) -> Iterator[str]:
    """What this week can promise, kept."""
    from gramil.acts.plans import keep_week
    from gramil.now.promised import SURE, promised
    from gramil.shop.kept_plans import monday_of

    now = moment_of(at)
    until = datetime.combine(monday_of(now) + timedelta(days=7), time.min)
    found = promised(bench.instruments, bench.shop, hours, until, pace=pace_of(bench.ratios, bench.noted, hours))
    with open_store(store) as opened:
        keep_week(opened, found.work, Hand(now))
    of = sum(each > 0 for each in found.chances.values())
    yield (
        f"The plan of the week of {monday_of(now)} is kept: {len(found.work)} operations of {of} that may be done, "
        f"those that are done by its end in at least {10 * SURE:.0f} of 10 cases, as hours, days lost and air may be."
    )
    yield from (f"  {owner}: {operation}" for owner, operation in found.work)


def _rests_on(bench: Bench) -> Iterator[str]:
    if rests := rests_on(bench.shop):
        yield rests
    yield "Times are a practised pair of hands' and common practice; your own go into NAME.operations.toml."


def _calendar(found: tuple[Block, ...], bench: Bench) -> bytes:
    from gramil.writers.icalendar import Event, icalendar_bytes

    events = [Event(**entry) for entry in calendar_entries(found)]
    return icalendar_bytes(events, by_the_clock(bench.shop.now), CALENDAR)


def _printed(found: tuple[Block, ...], bench: Bench, notes: list[str]) -> bytes:
    from gramil.sheets.weeks_sheet import Entry, weeks_pdf

    entries = [
        Entry(whose=each.instrument, what=label(each), begins=each.begins, ends=each.ends, cures=each.cures)
        for each in found
    ]
    names = ", ".join(one.name for one in bench.instruments)
    return weeks_pdf(entries, names, [note for note in notes if note], bench.shop.paper)
