"""`gramil air`: reading a logger's file into a place's readings, and how the air of every place stands."""

import click

from gramil.cli.air_log import log
from gramil.cli.air_outlook import outlook
from gramil.cli.air_read import read
from gramil.cli.air_show import show
from gramil.cli.json_option import answers_in_lines


class Air(click.Group):
    """A group whose commands may be left out: a place and two figures are a reading."""

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        if len(args) >= READING and args[0] not in self.commands and not args[0].startswith("-"):
            args = ["read", *args]
        return super().resolve_command(ctx, args)


READING = 3
"""Words of a reading: place, temperature, humidity."""


@click.group(cls=Air)
def command() -> None:
    """The air of the shop's places.

    \b
    gramil air shop 19 45
    gramil air outlook shop "thu 42 %" "sat 38 %"
    gramil air log shop logger.csv --shop shop.toml
    gramil air show --shop shop.toml
    """


command.add_command(answers_in_lines(read, "air read"))
command.add_command(answers_in_lines(log, "air log"))
command.add_command(answers_in_lines(outlook, "air outlook"))
command.add_command(show)
