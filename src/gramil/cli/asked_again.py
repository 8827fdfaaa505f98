"""A question on the command line: an answer that cannot be is told, and asked for again at once."""

from collections.abc import Callable
from dataclasses import replace

import click

from gramil.faults import MakersFault


def until_right(key: str, ask: Callable[[], str], make: Callable[[str], object]) -> str:
    """What is answered for a key, once something can be made of it. `make` raises MakersFault where nothing can; faults
    of other keys, which may be still to be asked, do not count.
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
