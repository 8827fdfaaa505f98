"""Every command of the tutorials runs, in their order, and answers with every line that they show."""

import re
import shlex
from pathlib import Path

import pytest

from gramil.api import read as gramil_read

from .in_process import gramil

TUTORIALS = sorted((Path(__file__).parents[1] / "docs" / "tutorials").glob("*.md"))
PICTURE = re.compile(r"!\[[^]]*\]\((\w+)-([\w-]+)\.svg\)")
"""A picture, named after the file that it is of and the drawing that it shows."""
BLOCK = re.compile(r"^```(\w+)(?: (\S+))?\n(.*?)^```$", re.DOTALL | re.MULTILINE)


def plain(text: str) -> str:
    """A text without its line ends and its spaces in a row: a terminal breaks lines, a page does not."""
    return re.sub(r"\s+", " ", text)


@pytest.mark.parametrize("page", TUTORIALS, ids=lambda path: path.stem)
def test_a_tutorial_followed_word_for_word(page: Path, tmp_path: Path) -> None:
    answer, ran = "", 0
    for kind, name, text in BLOCK.findall(page.read_text(encoding="utf-8")):
        if name:
            (tmp_path / name).write_text(text, encoding="utf-8")
        elif kind == "sh":
            answer = ""
            for line in text.splitlines():
                done = gramil(tmp_path, *shlex.split(line)[1:])
                assert done.returncode == 0, f"{line}: {done.stderr}"
                answer += plain(done.stdout)
                ran += 1
        elif kind == "text":
            for line in text.splitlines():
                assert plain(line.strip()) in answer, line
    assert ran
    pictures = PICTURE.findall(page.read_text(encoding="utf-8"))
    drawn = {name: gramil_read(tmp_path / f"{name}.toml").drawings for name in {name for name, _ in pictures}}
    for name, drawing in pictures:
        shown = (page.parent / f"{name}-{drawing}.svg").read_text(encoding="utf-8")
        assert drawn[name][drawing].svg == shown, "run `make docs`"
    assert pictures or page.stem != "first-template"


def test_the_tutorials_that_are_promised_are_there() -> None:
    assert [page.stem for page in TUTORIALS] == [
        "first-template",
        "from-a-plan",
        "half-way",
        "otherwise",
        "repair",
        "the-day",
    ]
