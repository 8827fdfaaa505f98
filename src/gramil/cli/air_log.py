"""`gramil air log`: a data logger's file into a place's own readings, with a report of what was left out."""

from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from typing import get_args

import click

from gramil.air.air_of_places import LARGEST_LOG, load_air, own_air, save_air
from gramil.answers.record import LogRead
from gramil.cli.kinds import Number
from gramil.cli.options import shop_itself
from gramil.description.problems import did_you_mean, nearest
from gramil.description.reading import ShopDescription, read_shop
from gramil.faults import Fault, MakersFault
from gramil.wood.air import AirHistory
from gramil.wood.air_log import LogAnswers, LogReport
from gramil.wood.air_merge import merged
from gramil.wood.clock_changes import ClockAnswer
from gramil.wood.log_times import DateOrder
from gramil.wood.log_units import HumidityUnit
from gramil.wood.log_words import report_lines
from gramil.written_file import alone_with, imprint_in


@click.command()
@click.argument("place")
@click.argument("file", type=click.Path(path_type=Path))
@shop_itself
@click.option("--temperature", type=click.Choice(["C", "F"]), help="Unit of the temperatures in FILE.")
@click.option("--humidity", type=click.Choice(get_args(HumidityUnit)), help="How humidity stands in FILE.")
@click.option("--dates", type=click.Choice(get_args(DateOrder)), help="Order of the dates in FILE.")
@click.option(
    "--clock", type=click.Choice(get_args(ClockAnswer)), help="Whether the logger's clock was put on and back."
)
@click.option("--column", "columns", multiple=True, metavar="WHAT=NAME", help="Column of time, temperature, humidity.")
@click.option(
    "--from-utc", type=Number(-14, 14), metavar="HOURS", help="For times in a zone: your clock, hours ahead of UTC."
)
@click.option("--dry-run", is_flag=True, help="Report only; write nothing.")
def log(
    place: str,
    file: Path,
    shop: Path,
    temperature: str | None,
    humidity: str | None,
    dates: str | None,
    clock: str | None,
    columns: tuple[str, ...],
    from_utc: float | None,
    dry_run: bool,
) -> LogRead:
    """Read a logger's FILE (CSV) into the readings of PLACE, and say what was left out and why.

    \b
    gramil air log shop logger.csv --shop shop.toml
    gramil air log shop logger.csv --shop shop.toml --temperature F --dates "day first"
    gramil air log shop logger.csv --shop shop.toml --column "humidity=Sensor 2 RH"
    """
    target = _target(read_shop(shop), place)
    answers = LogAnswers(temperature, humidity, dates, _columns(columns), clock)  # type: ignore[arg-type]  # click.Choice
    history, report = _asking(file, answers)
    history = _by_the_clock(history, from_utc, file.name)
    for line in report_lines(history, report, file.name):
        click.echo(line)
    begins, ends = (history.moment(history.times[at]) for at in (0, -1))
    if dry_run:
        whole, new = _added(target, history)
        click.echo("Nothing written.")
    else:
        with alone_with(target):  # another import of a log at the same time waits for this one
            seen = imprint_in(target, LARGEST_LOG)
            whole, new = _added(target, history)
            save_air(target, whole, seen)
        click.echo(f"{target.name} has {whole.times.size} readings to {ends:%Y-%m-%d %H:%M}.")
    return LogRead(
        *(place, file.name, report.readings, report.lines_left_out, report.gaps_in_all),
        begins=begins.isoformat(),
        ends=ends.isoformat(),
        kept_in=target.name,
        kept=int(whole.times.size),
        new=new,
        written=not dry_run,
    )


def _added(target: Path, history: AirHistory) -> tuple[AirHistory, int]:
    """The new readings merged with those that the place's own file has already, and how many of them are new to it."""
    if not target.exists():
        return history, int(history.times.size)
    before = own_air(target)
    whole = merged(before, history)
    new = int(whole.times.size - before.times.size)
    click.echo(f"{new} of them are new to {target.name}.")
    return whole, new


def _target(description: ShopDescription, place: str) -> Path:
    """The place's own file. Raises MakersFault for a place that the shop does not have, or whose readings are typed
    in.
    """
    row = next((each for each in description.shop.place if each.name == place), None)
    if row is None or description.folder is None:
        names = [each.name for each in description.shop.place]
        has = f"the shop has {', '.join(names)}" if names else "the shop has no [[place]]"
        raise MakersFault.of(f'no place called "{place}"', has, did_you_mean(nearest(place, names)))
    if row.log is None:
        raise MakersFault.of(f"the {place} has no log", "", f'write log = "{place}-air.csv" under its [[place]]')
    return description.folder / row.log


def _columns(given: tuple[str, ...]) -> dict[str, str]:
    pairs = [each.partition("=") for each in given]
    if wrong := [what for what, _, name in pairs if what not in ("time", "temperature", "humidity") or not name]:
        raise click.BadParameter(f"{wrong[0]!r}: write time=NAME, temperature=NAME or humidity=NAME")
    return {what: name for what, _, name in pairs}


_OPTIONS = {
    "temperature": "--temperature C or F",
    "humidity": "--humidity percent or fraction",
    "time": '--dates "day first" or "month first"',
    "clock": '--clock "changed" or "not changed"',
}


def _asking(file: Path, answers: LogAnswers) -> tuple[AirHistory, LogReport]:
    """The readings read; a question about them names the option that answers it."""
    try:
        return load_air(file, answers)
    except MakersFault as fault:
        raise MakersFault(_with_option(each) for each in fault.faults) from None


def _with_option(fault: Fault) -> Fault:
    if not fault.remedy.startswith("say") and "or say" not in fault.remedy:
        return fault
    which = f"--column {fault.where}=NAME" if "which one" in fault.remedy else _OPTIONS.get(fault.where, "")
    return replace(fault, remedy=f"{fault.remedy} with {which}" if which else fault.remedy)


def _by_the_clock(history: AirHistory, from_utc: float | None, file: str) -> AirHistory:
    if history.origin.tzinfo is None:
        return history
    if from_utc is None:
        why = "the shop goes by its own clock"
        remedy = "say how far that is ahead of UTC, with --from-utc HOURS"
        raise MakersFault([Fault(None, "time", "the times are in a zone", why, remedy, file)])
    return replace(history, origin=history.origin.replace(tzinfo=None) + timedelta(hours=from_utc))
