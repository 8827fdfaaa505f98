"""The exit codes as they are told: 0 done, 2 for what cannot be read or done as asked, whatever the command."""

from collections.abc import Iterator
from pathlib import Path

import click
import pytest

from gramil.cli import COMMANDS
from gramil.cli import gramil as program
from gramil.cli.kinds import Number

from ..in_process import gramil

RUN_ON = {"bench", "follow", "demo", "show"}
"""Those that run until they are stopped, build packs, or open whatever file there is: asked for help alone."""


def every_command() -> Iterator[tuple[tuple[str, ...], int]]:
    """Each command's words, and how many it wants at least."""
    context = click.Context(program)
    for name in COMMANDS:
        command = program.get_command(context, name)
        inner = command.commands.items() if isinstance(command, click.Group) else [("", command)]
        for word, each in inner:
            wants = sum(isinstance(one, click.Argument) and one.required for one in each.params)
            yield (name, word) if word else (name,), wants


EVERY = dict(every_command())


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("codes")
    (made / "torn.toml").write_text("gramil = 1\n[instrument\n", encoding="utf-8")
    (made / "torn.bin").write_bytes(b"\xff\xfe\x00\x01")
    return made


@pytest.mark.parametrize("words", EVERY, ids=" ".join)
def test_help_is_fine_and_what_cannot_be_done_is_told_with_two(folder: Path, words: tuple[str, ...]) -> None:
    assert gramil(folder, *words, "--help").returncode == 0
    asked = [("--no-such-option",)]
    if words[0] not in RUN_ON:
        asked += [(name,) * max(1, EVERY[words]) for name in ("torn.toml", "torn.bin", "no-such-folder/none.toml")]
    for given in asked:
        done = gramil(folder, *words, *given)
        assert done.returncode == 2, (given, done.stdout, done.stderr)
        assert done.stderr
        assert "Traceback" not in done.stderr
    assert sorted(each.name for each in folder.iterdir()) == ["torn.bin", "torn.toml"]


def test_the_page_for_programs_tells_these_codes() -> None:
    page = (Path(__file__).parents[2] / "docs" / "programs.md").read_text(encoding="utf-8")
    assert all(f"| {code} |" in page for code in (0, 1, 2, 130))


def test_no_option_takes_what_is_no_number() -> None:
    """A number that is asked for is one: click's own kinds let "nan" and "inf" through."""
    plain = [
        (*words, param.name)
        for words in EVERY
        for param in command_at(words).params
        if type(param.type) in (click.types.FloatParamType, click.FloatRange)
    ]
    assert plain == []
    for word in ("nan", "inf", "-inf", "1e400"):
        with pytest.raises(click.BadParameter, match="no number"):
            Number().convert(word, None, None)


def command_at(words: tuple[str, ...]) -> click.Command:
    found: click.Command = program
    for word in words:
        assert isinstance(found, click.Group)
        found = found.get_command(click.Context(found), word) or found
    return found
