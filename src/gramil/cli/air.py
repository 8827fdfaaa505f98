"""`gramil air`: reading a logger's file into a place's readings, and how the air of every place stands."""

import click

from gramil.cli.air_log import log
from gramil.cli.air_show import show


@click.group()
def command() -> None:
    """The air of the shop's places.

    \b
    gramil air log shop logger.csv --shop shop.toml
    gramil air show --shop shop.toml
    """


command.add_command(log)
command.add_command(show)
