"""Completion: what may come next, the list that it is read from, and real shells in which TAB is pressed."""

import os
import pty
import re
import runpy
import select
import shutil
import subprocess
import sys
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
import tree_sitter_powershell
from tree_sitter import Language, Node, Parser

from gramil.cli.complete import ASK, candidates
from gramil.cli.completion import SHELLS

from ..in_process import gramil

ROOT = Path(__file__).parents[2]
PATIENCE = 30.0
"""Seconds that a shell on a busy machine may take until it is given up."""


def test_the_list_is_up_to_date() -> None:
    made = runpy.run_path(str(ROOT / "tools" / "completion.py"))
    assert made["FILE"].read_text(encoding="utf-8") == made["text"](), "run `make names`"


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("che", {"check"}),
        ("check tarn.toml --sh", {"--shop"}),
        ("dims tarn.toml --part slo", {"slots"}),
        ("why slot_left_le", {"slot_left_least"}),
        ("why board.thick", {"board.thickness"}),
        ("done thickn", {"thicknessed"}),
        ("sheet slott", {"slotted"}),
        ("shift tarn.toml --set scale.len", {"scale.length="}),
        ("turn board.thickness tarn.toml --until slot_left_least", {"slot_left_least="}),
        ("store und", {"undo"}),
        ("dims tarn.toml --csv --separator t", {"tab"}),
        ("show tarn.toml moul", {"mould"}),
        ("if-glued bri", {"bridge"}),
        ('store ""', {"new", "undo"}),
    ],
)
def test_what_may_come_next(line: str, words: set[str]) -> None:
    assert words <= set(candidates(line.split()))


@pytest.mark.parametrize("line", ["check ", "done thicknessed ", "dims tarn.toml --shop ", "no-such "])
def test_where_a_file_may_stand_the_shell_completes_it(line: str) -> None:
    assert not candidates(line.split(" "))


def test_the_makers_own_operations_are_completed(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "mine.operations.toml").write_text('[operation.heron_let_in]\nwhat = "Let the heron in"\n')
    (tmp_path / "torn.operations.toml").write_text("[operation\n")
    monkeypatch.chdir(tmp_path)
    assert candidates(["done", "heron"]) == {"heron_let_in": "Let the heron in"}


def test_it_is_asked_without_a_word_of_click(tmp_path: Path) -> None:
    told = gramil(tmp_path, ASK, "che").stdout
    assert told == "check\tWhether it can be made with what the shop has.\n"


@pytest.fixture(scope="module")
def around(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """An environment in which `gramil` is this program, and a home where nobody has set anything."""
    folder = tmp_path_factory.mktemp("home")
    program = folder / "gramil"
    program.write_text(f'#!/bin/sh\nexec "{sys.executable}" -m gramil.cli "$@"\n', encoding="utf-8")
    program.chmod(0o755)
    (folder / "tarn.toml").touch()
    path = os.pathsep.join((str(folder), os.environ["PATH"]))
    return {**os.environ, "PATH": path, "HOME": str(folder), "ZDOTDIR": str(folder), "TERM": "xterm", "PS1": "$ "}


LINES = {
    "gramil compl": "gramil completion",
    "gramil dims tarn.toml --part sad": "gramil dims tarn.toml --part saddle",
    "gramil why slot_left_le": "gramil why slot_left_least",
    "gramil shift tarn.toml --set scale.len": "gramil shift tarn.toml --set scale.length=",
    "gramil check ta": "gramil check tarn.toml",
}
"""What is typed, and what stands on the line after TAB."""
STARTED = {"bash": ("bash", "--norc", "--noprofile", "-i"), "zsh": ("zsh", "-f", "-i")}


def pressed(shell: str, around: dict[str, str]) -> list[str]:
    """What a shell shows of each line in which TAB is pressed."""
    here, there = pty.openpty()
    running = subprocess.Popen(STARTED[shell], stdin=there, stdout=there, stderr=there, env=around,
                               cwd=around["HOME"], start_new_session=True)  # fmt: skip
    os.close(there)
    try:
        typed_until(here, f'eval "$(gramil completion {shell})"; echo read""y\n', "ready")
        shown = [typed_until(here, f"\x15{line}\t", after) for line, after in LINES.items()]
    finally:
        running.kill()
        running.wait()
        os.close(here)
    return shown


def typed_until(terminal: int, keys: str, until: str, patience: float = PATIENCE) -> str:
    """Type, and read what is shown until something appears, or so many seconds have gone by."""
    os.write(terminal, keys.encode())
    shown, end = "", time.monotonic() + patience
    while until not in plain(shown) and time.monotonic() < end:
        if select.select([terminal], [], [], 0.5)[0]:
            shown += os.read(terminal, 65536).decode(errors="replace")
    return plain(shown)


def plain(shown: str) -> str:
    """What a terminal shows, without what moves its cursor."""
    return re.sub(r"\x1b\[[0-9;?]*[A-Za-z]|.\x08|[\r\x07]", "", shown)


@pytest.mark.parametrize("shell", STARTED)
def test_tab_in_a_real_shell(shell: str, around: dict[str, str]) -> None:
    if shutil.which(shell) is None:
        pytest.skip(f"{shell} is not installed")
    for shown, after in zip(pressed(shell, around), LINES.values(), strict=True):
        assert after in shown, shown


def test_tab_in_fish(around: dict[str, str]) -> None:
    """Fish says by itself what TAB would find."""
    if shutil.which("fish") is None:
        pytest.skip("fish is not installed")
    asked = "".join(f"complete -C '{line}'; echo --; " for line in LINES)
    command = ["fish", "--no-config", "-c", f"gramil completion fish | source; {asked}"]
    told = subprocess.run(command, env=around, cwd=around["HOME"], capture_output=True, text=True, check=True).stdout
    for found, after in zip(told.split("--\n"), LINES.values(), strict=False):
        assert after.rsplit(" ", 1)[-1] in found, told


def test_every_shell_has_its_lines(tmp_path: Path) -> None:
    for shell in SHELLS:
        told = gramil(tmp_path, "completion", shell).stdout
        assert ASK in told
        assert "ASK " not in told


def test_the_lines_for_powershell_are_that_language(tmp_path: Path) -> None:
    """PowerShell is not to be had for the tests: an independent parser of the language reads its lines, and finds no
    fault in them (and does when a bracket is left out), and these commands alone. That they run, nobody has seen.
    """
    parser = Parser(Language(tree_sitter_powershell.language()))
    told = gramil(tmp_path, "completion", "powershell").stdout.encode()
    tree = parser.parse(told)
    assert not tree.root_node.has_error
    assert all(parser.parse(told.replace(each, b"", 1)).root_node.has_error for each in (b"{", b")", b"'"))
    named = [told[each.start_byte : each.end_byte].decode() for each in nodes(tree.root_node, "command_name")]
    usual = ["Register-ArgumentCompleter", "Select-Object", "Where-Object", "ForEach-Object"]
    assert named == [*usual, "gramil", "Where-Object", "ForEach-Object"]
    assert f"gramil {ASK} @words 2>$null".encode() in told


def nodes(node: Node, kind: str) -> Iterator[Node]:
    """Every node of a kind, in the order of the text."""
    if node.type == kind:
        yield node
    for each in node.children:
        yield from nodes(each, kind)
