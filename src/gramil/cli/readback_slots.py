"""`gramil readback slots`: caliper readings of cut slots, from the nut line."""

from pathlib import Path

import click

from gramil import names as n
from gramil.change.questioned import faults
from gramil.change.slot_questions import slot_questions
from gramil.change.slot_readings import parse_slot_readings, read_back
from gramil.change.slot_report import report
from gramil.cli.as_read import ANSWER, as_read_option
from gramil.cli.json_option import json_option, told
from gramil.cli.options import file_to_make, instrument_file, opened, shop_file
from gramil.text_file import text_of


@click.command()
@instrument_file
@click.argument("readings", type=click.Path(path_type=Path))
@shop_file
@json_option
@as_read_option
@file_to_make("--plot", ending=".svg", what="Also draw the errors into this SVG file.")
def slots(file: Path, readings: Path, shop: Path | None, as_json: bool, as_read: bool, plot: Path | None) -> None:
    """What the caliper READINGS (CSV: fret,position from the nut line) of the slots cut for FILE mean.

    Bare lengths are in the instrument's unit. Readings that cannot be meant are asked about first.

    \b
    gramil readback slots tarn.toml readings.csv
    gramil readback slots tarn.toml readings.csv --plot errors.svg
    """
    figures, formatter = opened(file, shop)
    last_fret = len(figures[n.fret_position]) - 1
    frets, measured = parse_slot_readings(text_of(readings), readings.name, formatter.first, last_fret)
    found = read_back(figures, frets, measured)
    if not as_read and (asked := slot_questions(found, formatter)):
        raise faults(asked, figures[n.instrument_units], ANSWER, readings.name)
    if as_json:
        from gramil.answers.answer import whose
        from gramil.answers.readings import slots_read

        told("readback slots", [whose(figures)], slots_read(found, formatter))
    else:
        for line in report(found, formatter):
            click.echo(line)
    if plot is not None:
        from gramil.writers.slot_errors import slot_errors_svg

        plot.write_text(slot_errors_svg(found, formatter), encoding="utf-8", newline="\n")
        click.echo(f"The errors are drawn in {plot}.", err=as_json)
