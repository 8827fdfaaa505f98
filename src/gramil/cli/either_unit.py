"""What a command's help says beside its examples in millimetres: an inch shop writes its own lengths."""

import re

import click

IN_EITHER = 'Every length may be in inches as well: "25 1/2 in", 5/64in, .031in.'
"""Said at the end of a help whose words or examples have lengths in millimetres."""
MILLIMETRES = re.compile(r"\d ?mm\b")


def in_either_unit(command: click.Command) -> click.Command:
    """The command, and those of its group that are at hand, with that word at the end of each help that needs it."""
    if isinstance(command, click.Group):
        for each in command.commands.values():
            in_either_unit(each)
    if MILLIMETRES.search(" ".join(_words(command))):
        command.epilog = IN_EITHER
    return command


def _words(command: click.Command) -> list[str]:
    told = [command.help or ""]
    for each in command.params:
        if isinstance(each, click.Option):
            told += [each.help or "", str(each.default) if each.show_default else ""]
    return told
