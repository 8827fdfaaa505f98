"""What a refusal says: no more than fits a screen, and no name that a file has only while it is written."""

import subprocess
import sys
from pathlib import Path

import pytest

from gramil import __version__
from gramil.cli import _on_a_screen
from gramil.written_file import place_of, staged_beside


@pytest.mark.parametrize("length", [40, 200, 5000])
def test_sixty_faults_are_told_in_a_screen(length: int) -> None:
    """36 lines of 80 letters at the most, but for one fault that is longer by itself, and the rest counted."""
    told = _on_a_screen([f"{row} " + "x" * length for row in range(60)])
    paragraphs = told.split("\n\n")
    assert paragraphs[-1] == f"And {60 - len(paragraphs) + 1} more. Mend these first, then look again."
    assert len(paragraphs) == 2 or sum(-(-len(each) // 80) + 1 for each in paragraphs[:-1]) <= 36
    assert all(each.startswith(f"{row} ") for row, each in enumerate(paragraphs[:-1]))


def test_it_is_a_module_that_runs_too() -> None:
    """For whoever has the Python at hand, and not the folder of its programs on the path."""
    done = subprocess.run([sys.executable, "-m", "gramil", "--version"], capture_output=True, text=True, check=False)
    assert (done.returncode, done.stdout) == (0, f"gramil {__version__}\n")


def test_few_are_told_whole() -> None:
    assert _on_a_screen(["one", "two"]) == "one\n\ntwo"


def test_a_name_that_a_file_has_for_a_while_is_told_as_its_own() -> None:
    path = Path("a") / "b" / "shop.gramil"
    assert place_of(str(staged_beside(path))) == str(path)
    assert place_of(str(path.with_name(".shop.gramil.lock"))) == str(path)
    assert place_of("shop.gramil") == "shop.gramil"
    assert place_of(".hidden.toml") == ".hidden.toml"
