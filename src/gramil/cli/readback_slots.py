"""`gramil readback slots`: caliper readings of cut slots, from the nut line."""

from pathlib import Path

import click

from gramil import names as n
from gramil.change.old_board import read_old_board
from gramil.change.old_board_report import old_board_report
from gramil.change.questioned import faults
from gramil.change.slot_questions import slot_questions
from gramil.change.slot_readings import parse_slot_readings, read_back
from gramil.change.slot_report import report
from gramil.cli.as_read import ANSWER, as_read_option
from gramil.cli.json_option import json_option, write_answer
from gramil.cli.options import file_to_make, instrument_file, opened, shop_file
from gramil.description.shop.limits import LIMITS
from gramil.graph import Figures
from gramil.measure import LengthUnit
from gramil.text_file import text_of

MOST_FRETS = 60
"""As many frets as a board may have."""


@click.command()
@instrument_file
@click.argument("readings", type=click.Path(path_type=Path), required=False)
@click.option("--units", type=click.Choice(["mm", "in"]), default="mm", help="Of an old board read by itself.")
@shop_file
@json_option
@as_read_option
@file_to_make("--plot", ending=".svg", what="Also draw the errors into this SVG file.")
def slots(
    file: Path,
    readings: Path | None,
    units: LengthUnit,
    shop: Path | None,
    as_json: bool,
    as_read: bool,
    plot: Path | None,
) -> None:
    """What the caliper READINGS (CSV: fret,position from the nut line) of the slots cut for FILE mean.

    Bare lengths are in the instrument's unit. Readings that look like slips are questioned first. READINGS alone, or
    those of a guitar that came in, are of an old board: its scale, its rule, its nut's place and what would mend it
    are told from the frets alone, measured from the board's nut end or the nut's face.

    \b
    gramil readback slots tarn.toml readings.csv
    gramil readback slots tarn.toml readings.csv --plot errors.svg
    gramil readback slots readings.csv
    """
    if readings is None:
        _refuse_plot(plot)
        return _old_board(file, units, LIMITS["slot_error_cents"].value, MOST_FRETS, (), as_json)
    figures, formatter = opened(file, shop)
    if figures[n.repair_described]:
        _refuse_plot(plot)
        most, last = figures[n.limit_slot_error_cents], len(figures[n.fret_position]) - 1
        return _old_board(readings, formatter.first, most, last, (figures,), as_json)
    last_fret = len(figures[n.fret_position]) - 1
    frets, measured = parse_slot_readings(text_of(readings), readings.name, formatter.first, last_fret)
    found = read_back(figures, frets, measured)
    if not as_read and (asked := slot_questions(found, formatter)):
        raise faults(asked, figures[n.instrument_units], ANSWER, readings.name)
    if as_json:
        from gramil.answers.answer import whose
        from gramil.answers.readings import slots_read

        write_answer("readback slots", [whose(figures)], slots_read(found, formatter))
    else:
        for line in report(found, formatter):
            click.echo(line)
    if plot is not None:
        from gramil.writers.slot_errors import slot_errors_svg

        plot.write_text(slot_errors_svg(found, formatter), encoding="utf-8", newline="\n")
        click.echo(f"The errors are drawn in {plot}.", err=as_json)
    return None


def _refuse_plot(plot: Path | None) -> None:
    if plot is not None:
        raise click.UsageError("--plot draws errors from what is drawn: an old board has nothing drawn.")


def _old_board(
    readings: Path, unit: LengthUnit, most: float, last: int, owner: tuple[Figures, ...], as_json: bool
) -> None:
    """Tell what an old board's frets say, of a guitar that came in or of none."""
    frets, measured = parse_slot_readings(text_of(readings), readings.name, unit, last)
    found = read_old_board(frets, measured, most)
    if as_json:
        from gramil.answers.answer import whose
        from gramil.answers.readings import old_board_read

        write_answer("readback old-board", [whose(each) for each in owner], old_board_read(found, unit))
        return
    for line in old_board_report(found, unit):
        click.echo(line)
