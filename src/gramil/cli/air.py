"""`gramil air`: reading a logger's file into a place's readings, and how the air of every place stands."""

import re

import click

from gramil.cli.air_log import log
from gramil.cli.air_outlook import outlook
from gramil.cli.air_read import read
from gramil.cli.air_show import show
from gramil.cli.json_option import answers_in_lines


class Air(click.Group):
    """A group whose commands may be left out: two figures are a reading, with a place before them or without."""

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        """The words, with `read` before a reading."""
        is_reading = len(args) >= READING and args[0] not in self.commands and not OPTION.match(args[0])
        return super().parse_args(ctx, ["read", *args] if is_reading else args)


READING = 2
"""Words of a reading, at the least: temperature and humidity, without the place."""
OPTION = re.compile(r"-(?!\.?\d)")
"""What an option begins with; a temperature may be below zero."""


@click.group(cls=Air)
def command() -> None:
    """The air of the shop's places.

    \b
    gramil air 19 45
    gramil air house 20 52
    gramil air outlook shop "thu 42 %" "sat 38 %"
    gramil air log shop logger.csv --shop shop.toml
    gramil air show --shop shop.toml
    """


command.add_command(answers_in_lines(read, "air read"))
command.add_command(answers_in_lines(log, "air log"))
command.add_command(answers_in_lines(outlook, "air outlook"))
command.add_command(show)
