"""Every command that a page of the documents or a help text writes is one that there is; those of the pages run.

The tutorials are run word for word in `test_tutorials.py`.
"""

import re
import shlex
import shutil
from collections.abc import Iterator
from pathlib import Path

import click
import pytest
from tests.walks import these

from gramil.cli import gramil as program

from .conftest import EXAMPLES
from .in_process import gramil

ROOT = Path(__file__).parents[1]
PAGES = {
    str(page.relative_to(ROOT)): page.read_text(encoding="utf-8")
    for page in (
        *(ROOT / name for name in ("README.md", "CONTRIBUTING.md", "SECURITY.md")),
        *sorted((ROOT / "docs").rglob("*.md")),
    )
}
INLINE = re.compile(r"`gramil (?!= )([^`]+)`")
BLOCK = re.compile(r"^```sh\n(.*?)^```$", re.DOTALL | re.MULTILINE)
IN_HELP = re.compile(r"^  +gramil ((?:.*\\\n)*.+)$", re.MULTILINE)
"""An example under a command's help, which stands on the page of commands."""
UNKNOWN_HERE = re.compile(r"\b[A-Z]{3,}\b|\.jpg|\.png|plan\.dxf|number 12|follow|show |bench|completion|upgrade|\.\.\.")
"""Placeholders, pictures and tables that the reader has, what runs on, and what opens a window."""


def written_on(text: str) -> Iterator[str]:
    """The commands of a page, in their order."""
    found = [(each.start(), each[1]) for each in INLINE.finditer(text)]
    for block in BLOCK.finditer(text):
        lines = block[1].replace("\\\n", " ").splitlines()
        found += [(block.start(), line.removeprefix("gramil ")) for line in lines if line.startswith("gramil ")]
    yield from (words for _, words in sorted(found, key=lambda each: each[0]))


def words_of(written: str) -> list[str]:
    """A command's words, without what is said of it and where its answer goes."""
    bare = re.split(r"\s+(?:>|\\?\|)\s", written.replace("\\\n", " "))[0]
    return shlex.split(bare, comments=True)


def command_of(words: list[str]) -> tuple[click.Command, list[str]]:
    """The command that words name, and the words after it. Fails if there is none."""
    context, rest = click.Context(program), [word for word in words if word not in ("-q", "--quiet")]
    found: click.Command = program
    while isinstance(found, click.Group) and rest and not rest[0].startswith("-"):
        inner = found.get_command(context, rest[0])
        if inner is None and words[0] == "air":  # the word `read` may be left out
            return found.commands["read"], rest
        assert inner is not None, words
        found, rest = inner, rest[1:]
    return found, rest


@pytest.mark.parametrize("page", PAGES)
def test_every_command_on_a_page_is_one_that_there_is_with_the_options_that_it_has(page: str) -> None:
    written = [*written_on(PAGES[page]), *IN_HELP.findall(PAGES[page])]
    for each in written:
        command, rest = command_of(words_of(each))
        known = {option for one in command.params for option in (*one.opts, *one.secondary_opts)} | {"--help", "-h"}
        given = {word.split("=")[0] for word in rest if word.startswith("--")}
        assert given - known == set(), each
    assert written or page not in ("README.md", "docs/commands.md", "docs/begin.md")


RUN = ("begin", "programs", "now", "wood", "photographs")


@pytest.mark.parametrize("name", these(RUN, ("begin", "wood", "photographs")))
def test_what_a_page_says_to_run_runs(name: str, tmp_path: Path) -> None:
    """In a folder with the example files, the example shop's record, and a logger's file."""
    for file in EXAMPLES.iterdir():
        shutil.copy(file, tmp_path)
    shutil.copy(tmp_path / "house-air-invented.csv", tmp_path / "logger.csv")
    assert gramil(tmp_path, "store", "new", "shop.gramil", "--shop", "shop.toml", "tarn.toml").returncode == 0
    ran = 0
    for written in written_on(PAGES[f"docs/{name}.md"]):
        words = words_of(written)
        if (
            UNKNOWN_HERE.search(written)
            or len(words) < 2
            or (words[0] in ("readback", "air", "store") and not words[2:])
        ):
            continue
        if words[0] == "new":
            if "--usual" not in words:  # it asks the reader
                continue
            (tmp_path / words[1]).unlink(missing_ok=True)
        done = gramil(tmp_path, *words)
        assert done.returncode == 0, f"{written}: {done.stderr}"
        ran += 1
    assert ran
