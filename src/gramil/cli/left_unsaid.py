"""What a command line leaves unsaid or writes as one writes numbers: the record by itself, and values below zero."""

import re
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import click

from gramil.cli.which_shop import needed_store

F = TypeVar("F", bound=Callable[..., Any])
_BELOW_ZERO = re.compile(r"-\.?\d.*")
_MINUS = "\N{MINUS SIGN}"
the_store: Callable[[F], F] = click.argument("store", type=click.Path(path_type=Path), metavar="[STORE]")


def _by_itself(context: click.Context, _: click.Parameter, named: Path | None) -> Path | None:
    return named if named is not None or context.resilient_parsing else needed_store()


the_store_alone: Callable[[F], F] = click.argument(
    "store", type=click.Path(path_type=Path), required=False, callback=_by_itself
)
"""The same where nothing stands after it."""


class InTheStore(click.Command):
    """A command about a store, whose STORE may be left out: it is the one that is set, or the only one here."""

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        """The words, the store before them if it was left out."""
        found = None if ctx.resilient_parsing or _names_a_store(args) else needed_store()
        return super().parse_args(ctx, [*([str(found)] if found else []), *args])


class WithValues(click.Command):
    """A command whose values may be below zero: `-0.02` is a value and no option."""

    def parse_args(self, ctx: click.Context, args: list[str]) -> list[str]:
        """The words; while options are looked for, a value's minus is the sign that none begins with."""
        rest = super().parse_args(ctx, [_MINUS + each[1:] if _BELOW_ZERO.fullmatch(each) else each for each in args])
        for name, value in ctx.params.items():
            if isinstance(value, tuple):
                ctx.params[name] = tuple(_plain(each) for each in value)
        return rest


def _plain(word: Any) -> Any:
    return "-" + word[1:] if isinstance(word, str) and word.startswith(_MINUS) else word


def _names_a_store(args: list[str]) -> bool:
    """Whether a store is named, or nothing that could stand after it."""
    first = args[0] if args else "-"
    return first.startswith("-") or first.endswith(".gramil") or Path(first).is_file()
