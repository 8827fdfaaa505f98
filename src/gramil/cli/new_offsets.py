"""Offsets off a plan as a CSV, for a new description: a half-width that stands out is asked about."""

from pathlib import Path

import click

from gramil.description.whole.offsets import Offset, asked_about, offsets_of, standing_out
from gramil.faults import Fault, MakersFault
from gramil.measure import LengthUnit, MeasureError, read_length, show
from gramil.text_file import text_of


def offsets_from(path: Path, unit: LengthUnit, usual: bool) -> tuple[Offset, ...]:
    """The offsets as they are meant. Raises MakersFault; where nothing may be asked, also for one that stands out."""
    offsets = list(offsets_of(text_of(path), path.name, unit))
    doubtful = standing_out(offsets)
    if usual and doubtful:
        remedy = "measure there once more; or leave out --usual, and say that it is meant"
        raise MakersFault(
            Fault(what=asked_about(offsets[row], there, unit), remedy=remedy, file=path.name) for row, there in doubtful
        )
    for row, there in doubtful:
        click.echo(f"{asked_about(offsets[row], there, unit)}.")
        offsets[row] = (offsets[row][0], _half_width(show(offsets[row][1], unit), unit))
    return tuple(offsets)


def _half_width(typed: str, unit: LengthUnit) -> float:
    """What it is meant to be; what was typed stays if that is answered."""
    while True:
        try:
            return read_length(click.prompt("What is it (Enter keeps it)", default=typed), unit)
        except MeasureError as fault:
            click.echo(str(fault), err=True)
