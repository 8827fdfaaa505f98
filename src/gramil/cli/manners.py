"""How the commands behave at a terminal: colours, a pager for what is longer than the screen, and little words."""

import io
import os
import shutil
import sys
from collections.abc import Iterator, Mapping, Sequence
from contextlib import contextmanager

import click

from gramil.cli.own_program import words_of

QUIET = ("--quiet", "-q")
_QUIETLY = "gramil.quietly"
PAGED = frozenset(
    ("air", "book", "check", "cost", "dims", "if-glued", "match", "now", "readback", "ready", "shift", "turn", "weeks")
) | {"why", "wood"}
"""Commands that only tell: none of them asks anything while it runs."""
LESS = ("less", "-R", "-F", "-X")
USUAL_PAGERS: Mapping[str, tuple[str, ...]] = {"win32": ("more",)}
"""Systems whose usual pager is another."""


def colours(around: Mapping[str, str]) -> bool | None:
    """Whether letters are bold or faint: not with NO_COLOR or TERM=dumb (False), else on a terminal (None)."""
    return False if around.get("NO_COLOR") or around.get("TERM") == "dumb" else None


def settle_quiet(context: click.Context, words: list[str]) -> list[str]:
    """The words without `--quiet`, which may stand anywhere before `--`; what is said aside is left out from then."""
    end = words.index("--") if "--" in words else len(words)
    rest = [word for word in words[:end] if word not in QUIET]
    context.meta[_QUIETLY] = len(rest) < end
    return rest + words[end:]


def aside(line: str, err: bool = True) -> None:
    """Say what is not the answer: which shop was found, what was written. Nothing with `--quiet`."""
    context = click.get_current_context(silent=True)
    if context is None or not context.meta.get(_QUIETLY):
        click.echo(line, err=err)


def pager_of(system: str, around: Mapping[str, str]) -> Sequence[str] | None:
    """The program that shows a long answer page by page: that of PAGER, else the usual one; None for none.

    An empty PAGER, or `cat`, and a dumb terminal mean that nobody wants one.
    """
    if around.get("TERM") == "dumb":
        return None
    own = around.get("PAGER")
    words = words_of(system, own) if own is not None else USUAL_PAGERS.get(system, LESS)
    return None if not words or words[0] == "cat" else words


def is_paged(words: Sequence[str]) -> bool:
    """Whether a command only tells, so that its answer can be kept back until it is whole."""
    first = next((word for word in words if not word.startswith("-")), "")
    return first in PAGED and "--json" not in words and "--csv" not in words


@contextmanager
def paged(words: Sequence[str]) -> Iterator[None]:
    """Keep back what a command tells on a terminal, and show it page by page if it is longer than the screen."""
    output, pager = sys.stdout, pager_of(sys.platform, os.environ)
    if not (is_paged(words) and pager and output.isatty() and sys.stdin.isatty()):
        yield
        return
    kept = _Kept()
    sys.stdout = kept
    try:
        yield
    finally:
        sys.stdout = output
        show_long(kept.getvalue(), pager, shutil.get_terminal_size().lines)


class _Kept(io.StringIO):
    """Text that is kept back from a terminal, for which commands write as they would to it."""

    def isatty(self) -> bool:
        return True


def show_long(text: str, pager: Sequence[str], lines: int) -> None:
    """Show a text, by the pager if it has more lines than the screen; without it if it cannot be started."""
    if text.count("\n") < lines or not _shown_by(pager, text):
        sys.stdout.write(text)
        sys.stdout.flush()


def letters_of(pager: Sequence[str], console: str | None) -> str:
    """The encoding in which a pager reads: UTF-8, but Windows' own reads that of its console, such as cp850."""
    return console or "utf-8" if pager[0].lower() in ("more", "more.com") and sys.platform == "win32" else "utf-8"


def _shown_by(pager: Sequence[str], text: str) -> bool:
    letters = letters_of(pager, os.device_encoding(1))
    try:
        import subprocess  # slow to load, and only a terminal needs it

        with subprocess.Popen(pager, stdin=subprocess.PIPE, text=True, encoding=letters, errors="replace") as running:
            assert running.stdin is not None
            try:
                running.stdin.write(text)
                running.stdin.close()
            except OSError:  # the reader has seen enough
                pass
    except OSError:
        return False
    return True
