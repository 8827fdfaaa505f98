"""Several instruments' files on a command line: a folder of them is a shop, and `*.toml` names it whole."""

import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any, TypeVar

import click

from gramil.cli.manners import aside

F = TypeVar("F", bound=Callable[..., Any])
BESIDE = (".made.toml", ".operations.toml")
"""What lies beside an instrument's file without being one."""


def instrument_files(required: bool = False) -> Callable[[F], F]:
    """The argument `files`: instruments' files, or their names in a store."""
    return click.argument("files", nargs=-1, required=required, callback=_instruments)


def _instruments(_: click.Context, __: click.Parameter, files: tuple[str, ...]) -> tuple[str, ...]:
    """The instruments among several files; what else a folder holds of the shop is left out, and said. A file that is
    named alone is meant.
    """
    if len(files) < 2:
        return files
    found = tuple(file for file in files if _is_instrument(Path(file)))
    if not found:
        return files
    if left := [Path(file).name for file in files if file not in found]:
        aside(f"left out: {', '.join(left)}")
    return found


def _is_instrument(file: Path) -> bool:
    """Whether a file may describe an instrument: what cannot be read at all is told as any other fault of one."""
    if file.name.lower().endswith(BESIDE):
        return False
    try:
        return "shop" not in tomllib.loads(file.read_text(encoding="utf-8-sig"))
    except (OSError, ValueError):
        return True
