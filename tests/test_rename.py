"""A dimension is renamed in a copy of the house: the whole graph stands again under the new name."""

import re
import runpy
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[1]
WHOLE = (
    "from gramil.prints.whole import figures_of_files, setups_of, whole_graph\n"
    "from gramil.formatter import formatter_of\n"
    "from gramil.prints.pages import page_text\n"
    "figures = figures_of_files('src/gramil/data/examples/tarn.toml', 'src/gramil/data/examples/shop.toml')\n"
    "assert 'slot_depth_needed' in whole_graph().dimensions and 'slot_need' not in whole_graph().dimensions\n"
    "print([page_text(each, formatter_of(figures)) for each in setups_of(figures) if not each.closed] != [])\n"
)


@pytest.fixture
def house(tmp_path: Path) -> Path:
    for name in ("src", "tools", "docs", "tests"):
        shutil.copytree(ROOT / name, tmp_path / name, ignore=shutil.ignore_patterns("__pycache__", "*.egg-info"))
    shutil.copy(ROOT / "pyproject.toml", tmp_path)
    for command in (["git", "init", "-q"], ["git", "add", "--intent-to-add", "."]):
        subprocess.run(command, cwd=tmp_path, check=True)
    return tmp_path


def run(house: Path, *command: str) -> subprocess.CompletedProcess[str]:
    env = {"PYTHONPATH": str(house / "src"), "PATH": "/usr/bin:/bin", "LC_ALL": "C.UTF-8"}
    return subprocess.run([sys.executable, *command], cwd=house, env=env, capture_output=True, text=True, check=False)


def test_a_dimension_is_renamed_everywhere(house: Path) -> None:
    done = run(house, "tools/rename.py", "slot_need", "slot_depth_needed")
    assert "files changed" in done.stdout, done.stderr
    assert run(house, "tools/names.py").returncode == 0
    stands = run(house, "-c", WHOLE)
    assert stands.stdout.strip() == "True", stands.stderr
    old = re.compile(r"(?<![A-Za-z0-9_])slot_need(?![A-Za-z0-9_])")
    assert not [path for path in (house / "src").rglob("*.*ml") if old.search(path.read_text(encoding="utf-8"))]
    assert not [path for path in (house / "src").rglob("*.py") if old.search(path.read_text(encoding="utf-8"))]
    assert run(house, "-m", "ruff", "format", "--check", "--no-cache", "src", "tests").returncode == 0
    left = run(house, "-m", "ruff", "check", "--no-cache", "--output-format", "concise", "src", "tests").stdout
    lines = [line for line in left.splitlines() if line.startswith(("src/", "tests/"))]
    assert sorted(lines) == sorted(line[9:] for line in done.stdout.splitlines() if line.startswith("by hand: "))


@pytest.mark.parametrize(
    ("old", "new", "why"),
    [
        ("slot_ned", "slot_wanted", "there is no dimension slot_ned"),
        ("board_thickness", "board_thick", "is named after its key"),
        ("slot_need", "slot_depth_setting", "is there already"),
        ("slot_need", "need_of_slot", "does not start with a noun of its module"),
    ],
)
def test_what_may_not_be_renamed_is_refused(old: str, new: str, why: str) -> None:
    assert why in runpy.run_path(str(ROOT / "tools" / "rename.py"))["refusal"](old, new)


def test_whoever_is_refused_is_told_and_nothing_is_changed() -> None:
    done = subprocess.run(
        [sys.executable, str(ROOT / "tools" / "rename.py"), "slot_need", "board_thickness"],
        capture_output=True,
        text=True,
        check=False,
    )
    assert (done.returncode, done.stdout, done.stderr.strip()) == (1, "", "board_thickness is there already")
