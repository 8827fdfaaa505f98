"""A question on the command line: what is wrong with an impossible answer is said, and the question is asked again at
once.
"""

from collections.abc import Callable
from dataclasses import replace

import click

from gramil.faults import MakersFault


def until_right(key: str, ask: Callable[[], str], make: Callable[[str], object]) -> str:
    """The answer for a key, asked for until it is a possible one.

    `make` raises MakersFault for an impossible answer; faults at other keys, which may still have to be asked for, do
    not count.
    """
    while True:
        answer = ask()
        try:
            make(answer)
        except MakersFault as fault:
            own = [replace(each, line=None, file=None) for each in fault.faults if (each.where or key).startswith(key)]
            if own:
                click.echo(str(MakersFault(own)), err=True)
                continue
        return answer
