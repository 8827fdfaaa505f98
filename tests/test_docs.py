"""The documents hold: pages made from the program are up to date, links lead somewhere, the README's commands run."""

import json
import re
import shlex
import subprocess
import sys
from pathlib import Path

import pytest

from .in_process import gramil

ROOT = Path(__file__).parents[1]
DOCUMENTS = (ROOT / "README.md", *sorted((ROOT / "docs").glob("*.md")))


def made_pages() -> dict[str, str]:
    """The pages as `make docs` makes them: in a program of its own, where no other test has run a command before."""
    made = "import json, runpy, sys; print(json.dumps(runpy.run_path(sys.argv[1])['pages']()))"
    command = [sys.executable, "-c", made, str(ROOT / "docs" / "build.py")]
    done = subprocess.run(command, capture_output=True, text=True, encoding="utf-8", check=True)
    found: dict[str, str] = json.loads(done.stdout)
    return found


def test_made_pages_are_up_to_date() -> None:
    stale = [name for name, text in made_pages().items() if (ROOT / "docs" / name).read_text(encoding="utf-8") != text]
    assert not stale, "run `make docs`"


@pytest.mark.parametrize("document", DOCUMENTS, ids=lambda path: path.name)
def test_links_lead_somewhere(document: Path) -> None:
    for target in re.findall(r"\]\(([^)#]+)[^)]*\)", document.read_text(encoding="utf-8")):
        assert (document.parent / target).exists(), target


def test_the_readme_commands_run(tmp_path: Path) -> None:
    block = (ROOT / "README.md").read_text(encoding="utf-8").split("## Using it")[1].split("```sh")[1].split("```")[0]
    commands = [line for line in block.splitlines() if line.startswith("gramil ")]
    assert commands
    for line in commands:
        done = gramil(tmp_path, *shlex.split(line)[1:])
        assert done.returncode == 0, f"{line}: {done.stderr}"
