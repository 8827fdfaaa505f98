"""`gramil day`: commands one after another, each without the word gramil: through a day, with dusty hands."""

import re
import sys
from collections.abc import Callable, Iterator

import click

from gramil.cli import STOPPED, run
from gramil.cli.complete import candidates

PROMPT = "gramil> "
ENDS = ("end", "exit", "quit")
SIGNALLED = 128
"""Exit statuses from here on are of a program that was told to stop."""
WORD = re.compile(r"""(?P<before>[^\s"'=]*=)?(?P<quoted>"[^"]*"|'[^']*')(?!\S)|\S+""")
"""A word, or several in quotation marks; one at a word's end is the sign for inches."""
Ask = Callable[[], str]


@click.command()
def command() -> None:
    """Type commands one after another, each without the word gramil; `end` ends it.

    What goes wrong is said, and the next command is asked for. At a terminal TAB completes, and the arrows bring back
    what was typed before.

    \b
    gramil day
    gramil> now
    gramil> done 3 1.5h
    gramil> end
    """
    for words in _typed(_asked() if sys.stdin.isatty() else sys.stdin.readline):
        code = run(words)
        if isinstance(code, int) and code > SIGNALLED and code != STOPPED:
            sys.exit(code)
        if sys.stderr.closed:  # nobody reads on
            return


def _typed(ask: Ask) -> Iterator[list[str]]:
    """The words of each line until the end is said or the input ends; without the word gramil, if it was typed."""
    while line := _line(ask):
        try:
            words = words_of(line)
        except ValueError as error:
            click.echo(error, err=True)
            continue
        if words[:1] and words[0] in ENDS:
            return
        if words:
            yield words


def words_of(line: str) -> list[str]:
    """The words of a line, without the word gramil, out of their quotation marks. Raises ValueError for an open one."""
    found = [_plain(each) for each in WORD.finditer(line)]
    return found[1:] if found[:1] == ["gramil"] else found


def _plain(word: re.Match[str]) -> str:
    if word["quoted"]:
        return f"{word['before'] or ''}{word['quoted'][1:-1]}"
    if word[0].startswith(('"', "'")):
        raise ValueError(f"A quotation mark is not closed: {word[0]}")
    return word[0]


def _line(ask: Ask) -> str:
    """The next line with its end; empty if there is none. A line that is broken off is as if nothing was typed."""
    try:
        return ask()
    except KeyboardInterrupt:
        click.echo()
        return "\n"
    except EOFError:
        click.echo()
        return ""


def _asked() -> Ask:
    """How a line is asked for at a terminal: with a history and completion, where the system has the library."""
    try:
        import readline
    except ImportError:
        return lambda: f"{input(PROMPT)}\n"
    found: list[str] = []

    def complete(begun: str, number: int) -> str | None:
        if number == 0:
            found[:] = candidates((*words_of(readline.get_line_buffer()[: readline.get_begidx()]), begun))
        return f"{found[number]} " if number < len(found) else None

    readline.set_completer_delims(" ")
    readline.set_completer(complete)
    readline.parse_and_bind("bind ^I rl_complete" if "libedit" in (readline.__doc__ or "") else "tab: complete")
    return lambda: f"{input(PROMPT)}\n"
