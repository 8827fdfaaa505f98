"""Help that speaks of millimetres says that inches may be written as well, and they may."""

import re
from collections.abc import Iterator

import click
import pytest

from gramil.cli import gramil
from gramil.cli.either_unit import IN_EITHER
from gramil.measure import read_length


def commands(command: click.Command, name: str = "gramil") -> Iterator[tuple[str, click.Command, click.Context]]:
    context = click.Context(command, info_name=name)
    yield name, command, context
    if isinstance(command, click.Group):
        for each in command.list_commands(context):
            found = command.get_command(context, each)
            assert found is not None
            yield from commands(found, f"{name} {each}")


def test_every_help_with_millimetres_in_it_says_so_and_no_other() -> None:
    said, wrong = [], []
    for name, command, context in commands(gramil):
        told = " ".join(command.get_help(context).split())
        body = told.replace(IN_EITHER, "")
        has = re.search(r"\d ?mm\b", body) is not None
        said += [name] if has else []
        wrong += [name] if has != (IN_EITHER in told) else []
    assert wrong == []
    assert {"gramil", "gramil new", "gramil turn", "gramil store measured"} <= set(said)
    assert len(said) > 12


@pytest.mark.parametrize(("written", "length"), [("25 1/2 in", 647.7), ("5/64in", 1.984375), (".031in", 0.7874)])
def test_what_it_says_may_be_written(written: str, length: float) -> None:
    """An inch is 25.4 mm."""
    assert written in IN_EITHER
    assert read_length(written, unit="mm") == pytest.approx(length)
