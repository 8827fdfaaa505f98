"""`gramil readback setup`: cents, action, relief and saddle as measured on the strung instrument."""

from pathlib import Path

import click

from gramil import names as n
from gramil.change.set_up_file import as_readings, parse_set_up_readings
from gramil.change.set_up_readings import read_back_set_up
from gramil.change.set_up_report import report
from gramil.cli.as_read import as_read_option, refuse_doubtful
from gramil.cli.json_option import json_option, write_answer
from gramil.cli.options import instrument_file, opened, shop_file
from gramil.text_file import text_of


@click.command()
@instrument_file
@click.argument("readings", type=click.Path(path_type=Path))
@shop_file
@json_option
@as_read_option
def setup(file: Path, readings: Path, shop: Path | None, as_json: bool, as_read: bool) -> None:
    """What READINGS of the strung instrument in FILE ask for: relief, heights, break points, and what is at fault.

    READINGS is CSV with the columns string,what,value; string 1 is at the treble. What: cents@12 (any fret, sharp is
    positive), action@12, nut@1, saddle_height, set_back, nut_forward; and, with the string left empty, relief, and
    slot_treble and slot_bass, from the zero line to the middle of the saddle's slot at its ends.
    Bare lengths are in the instrument's unit. Readings that look like slips are questioned first.

    \b
    gramil readback setup tarn.toml set-up.csv
    """
    figures, formatter = opened(file, shop)
    counts = figures[n.strings_count], figures[n.scale_frets], figures[n.action_fret]
    read = parse_set_up_readings(text_of(readings), readings.name, formatter.first, *counts)
    if not as_read:
        refuse_doubtful(figures, as_readings(read), file=readings.name)
    found = read_back_set_up(figures, read)
    if as_json:
        from gramil.answers.answer import whose
        from gramil.answers.readings import set_up_read

        write_answer("readback setup", [whose(figures)], set_up_read(found, formatter))
        return
    for line in report(found, formatter):
        click.echo(line)
