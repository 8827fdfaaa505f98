"""`gramil readback`: what measurements of finished work mean."""

import click

from gramil.cli.readback_setup import setup
from gramil.cli.readback_slots import slots


@click.group()
def command() -> None:
    """What measurements of finished work mean.

    \b
    gramil readback slots tarn.toml readings.csv
    gramil readback setup tarn.toml set-up.csv
    """


command.add_command(slots)
command.add_command(setup)
